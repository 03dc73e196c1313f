using Trivet.Store;
using Trivet.Store.Saver;

// Opens the job named, writes for ever and prints a line for each thing that was acknowledged, first of all "open". The process is ended
// from outside. What is written: cells (the third word is not there) or the journal.
if (await JobStore.OpenAsync(JobLocation.Parse(args[0])) is not OpenOutcome.Opened { Store: var store }) return 1;
Lines.Say("open");
if (args is [_, var devices, "journal"]) await WritesJournal.ForEverAsync(store, devices.Split(','));
else await SavesCells.ForEverAsync(store, args[1]);
return 0;

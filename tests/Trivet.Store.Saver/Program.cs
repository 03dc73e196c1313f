using System.Globalization;
using Trivet.Cells;
using Trivet.Store;

// Opens the job named, edits and saves one cell for ever, and prints a line for each thing that was acknowledged:
//   open                        the job is open
//   edit NUMBER                 the edit with these words is on disk
//   saved REVISION HASH NUMBER  the draft was saved after the edit of that number
if (await JobStore.OpenAsync(JobLocation.Parse(args[0])) is not OpenOutcome.Opened { Store: var store }) return 1;
Say("open");

var noon = new DateTimeOffset(2030, 5, 6, 12, 0, 0, TimeSpan.Zero);
await store.CreateAsync("saved", Cell.Empty with { Name = "first" }, new Stamp("saver", noon), "made");
int number = int.Parse(args[1], CultureInfo.InvariantCulture);
while (true)
{
    var draft = (await store.DraftAsync("saved", "saver"))!;
    for (int i = 0; i < 3; i++)
    {
        number++;
        draft = ((DraftOutcome.Kept)await store.EditAsync(draft, Cell.Empty with { Name = $"edit {number}" }, noon, Words(number))).Draft;
        Say($"edit {number}");
    }
    var saved = (SaveOutcome.Saved)await store.SaveDraftAsync(draft, noon, Words(number));
    Say($"saved {saved.Revision.Number} {saved.Revision.Hash} {number}");
}

static string Words(int number) => $"edit {number}";

static void Say(string line)
{
    Console.Out.WriteLine(line);
    Console.Out.Flush();
}

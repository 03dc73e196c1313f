using System.Collections.Immutable;
using System.CommandLine;
using System.Runtime.CompilerServices;
using System.Text;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Papers;
using Trivet.Store;
using Trivet.Views.Journals;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet journal</c>: what happened at the machines of a job.</summary>
internal static class JournalCommand
{
    public static Command Create()
    {
        var job = new Argument<string>("job") { Description = "A job folder, or the connection string of a PostgreSQL database.", HelpName = "JOB" };
        var cell = new Argument<string?>("cell") { Description = "Id of one cell; all cells of the job where it is not given.", HelpName = "CELL", Arity = ArgumentArity.ZeroOrOne };
        var step = new Option<string?>("--step") { Description = "Only entries about this step.", HelpName = "ID" };
        var ask = new Option<string?>("--ask") { Description = "What the step asks that a photograph answers.", HelpName = "ID" };
        var person = new Option<string?>("--person") { Description = "Only entries of this person; with --photograph, --erase and --import, who does it.", HelpName = "ID" };
        var device = new Option<string?>("--device") { Description = "Only entries of this device.", HelpName = "ID" };
        var verify = new Option<bool>("--verify") { Description = "Look through every hash and both chains, and say what does not fit." };
        var export = new Option<string?>("--export") { Description = "Write the whole journal and its photographs as lines that are hashed (docs/journal.md); - for standard output.", HelpName = "FILE" };
        var import = new Option<string?>("--import") { Description = "Take in the entries and photographs of a device, or of another job, brought as a file.", HelpName = "FILE" };
        var steps = new Option<bool>("--steps") { Description = "Where each step of CELL stands: done, weak, out of tolerance, stale, and what it waits for." };
        var stale = new Option<bool>("--stale") { Description = "Only the steps of CELL that are to be done again, and why." };
        var against = new Option<string?>("--against") { Description = "With --stale: what it would cost at the machine if CELL became this cell file.", HelpName = "FILE" };
        var record = new Option<string?>("--record") { Description = "Write the record of CELL to be signed (PDF): what counts, what is open, and the head of the journal.", HelpName = "FILE" };
        var photograph = new Option<string?>("--photograph") { Description = "Keep this photograph (JPEG or PNG) of CELL and record it: pixels only, with step and time burnt in.", HelpName = "FILE" };
        var erase = new Option<string?>("--erase") { Description = "Erase a photograph of CELL; its hash and the reason stay.", HelpName = "HASH" };
        var because = new Option<string?>("--because") { Description = "Why it is erased.", HelpName = "WORDS" };
        var language = new Option<string>("--language") { Description = "en or de: the language of the words.", HelpName = "TAG", DefaultValueFactory = _ => "en" };
        language.AcceptOnlyFromAmong("en", "de");
        var format = Options.Format();
        var outOption = Options.Out("Write the list to this file instead of standard output.");
        var command = new TaughtCommand(
            "journal",
            """
            The journal of a job: what was measured, ticked, switched on, seen and signed, the newest first, with what does not fit together. Its head, printed
            on a signed paper, tells later whether a word before it was changed. Ends with 1 when something does not fit, and with 2 when the input is refused.
            """,
            new Example("journal my-job jar-lids", "What happened at one cell."),
            new Example("journal my-job --verify", "Look through every hash, the chains of the devices and the chain of receipts."),
            new Example("journal my-job --export journal.jsonl", "All entries with their receipts, and all photographs, to be checked without Trivet."),
            new Example("journal my-job --import tablet.jsonl", "What a tablet brought as a file."),
            new Example("journal my-job jar-lids --steps", "Where the work stands."),
            new Example("journal my-job jar-lids --stale --against jar-lids.json", "What a change would make stale, before it is made."),
            new Example("journal my-job jar-lids --record record.pdf", "The record to be signed at hand-over."),
            new Example("journal my-job jar-lids --photograph rail.jpg --step rail-order", "A photograph taken with a telephone."))
        {
            job, cell, step, person, device, verify, export, import, steps, stale, against, record, photograph, ask, erase, because, language, format, outOption,
        };
        command.SetAction((parsed, stop) => RunAsync(
            new Asked(
                parsed, parsed.GetRequiredValue(job), new(parsed.GetValue(cell) ?? "", parsed.GetValue(step) ?? "", parsed.GetValue(person) ?? "", parsed.GetValue(device) ?? ""),
                parsed.GetValue(verify), parsed.GetValue(export), parsed.GetValue(import), parsed.GetValue(language) ?? "",
                parsed.GetValue(format), outOption)
            {
                Steps = parsed.GetValue(steps), Stale = parsed.GetValue(stale), Against = parsed.GetValue(against), Record = parsed.GetValue(record), Photograph = parsed.GetValue(photograph), Ask = parsed.GetValue(ask), Erase = parsed.GetValue(erase), Because = parsed.GetValue(because),
            },
            stop));
        return command;
    }

    private sealed record Asked(
        ParseResult Parsed, string Job, JournalFilter Filter, bool Verify, string? Export, string? Import, string Language, OutputFormat Format, Option<string?> Out)
    {
        public bool Steps { get; init; }
        public bool Stale { get; init; }
        public string? Against { get; init; }
        public string? Record { get; init; }
        public string? Photograph { get; init; }
        public string? Ask { get; init; }
        public string? Erase { get; init; }
        public string? Because { get; init; }
        public JournalWords Words => JournalWords.In(Language);
        public ProcedureWords StepWords => ProcedureWords.In(Language);
        public TextWriter Error => Parsed.InvocationConfiguration.Error;
    }

    // Apart, so that no other command loads the database.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static async Task<int> RunAsync(Asked asked, CancellationToken stop)
    {
        await using var job = await JobInput.OpenAsync(asked.Job, mayBeNew: false, asked.Error, stop);
        if (job is null) return ExitCode.Refused;
        var io = asked.Parsed.InvocationConfiguration;
        string person = asked.Filter.Person.Length > 0 ? asked.Filter.Person : Environment.UserName;
        if (asked.Import is { } from) return await JournalExchange.ImportAsync(job, from, person, asked.Words, io, stop);
        if (asked.Export is { } to) return await JournalExchange.ExportAsync(job, to, asked.Words, io, stop);
        if (asked.Photograph is not null || asked.Erase is not null)
            return await PhotographInput.RunAsync(job, new(asked.Filter, asked.Ask ?? "", asked.Photograph, asked.Erase, asked.Because), io, stop);

        if (asked.Steps || asked.Stale || asked.Against is not null || asked.Record is not null) return await WorkAsync(job, asked, stop);
        var part = await job.JournalAsync(0, stop);
        var faults = asked.Verify ? await job.CheckJournalAsync(stop) : [];
        Kept[] entries = [.. part.Lines.Select(l => l.Kept)];
        // Of one cell it is also held against its procedure.
        var cell = asked.Filter.Cell.Length > 0 ? (await job.HeadAsync(asked.Filter.Cell, stop))?.Read().Cell : null;
        var sheet = JournalSheet.Of(entries, part.Head?.Hash ?? "", asked.Filter, asked.Words, cell is null ? [] : Work.Contradictions(cell, asked.Filter.Cell, entries));
        int written = asked.Verify
            ? Verified(sheet, faults, asked)
            : Options.Write(asked.Parsed, asked.Out, place => place.Text.Write(asked.Format switch
            {
                OutputFormat.Json => JournalForms.Json(sheet),
                OutputFormat.Csv => JournalForms.Csv(sheet),
                OutputFormat.Markdown => JournalForms.Markdown(sheet, asked.Words),
                _ => JournalForms.Text(sheet, asked.Words),
            }));
        foreach (var receipt in part.Damaged)
            asked.Error.WriteLine($"trivet: {JournalSentences.DamagedReceipt(receipt.Number, asked.Words)}");
        if (written != ExitCode.AllHold) return written;
        return faults.IsEmpty && part.Damaged.IsEmpty && sheet.Contradictions.IsEmpty ? ExitCode.AllHold : ExitCode.NotAllHold;
    }

    private static int Verified(JournalSheet sheet, ImmutableArray<string> faults, Asked asked) => Options.Write(asked.Parsed, asked.Out, place =>
    {
        place.Text.WriteLine(sheet.Summary);
        place.Text.WriteLine(faults.IsEmpty ? asked.Words.Sound : JournalSentences.NotSound(faults.Length, asked.Words));
        foreach (string fault in faults) place.Text.WriteLine($"  {fault}");
        place.Text.WriteLine(JournalSentences.Contradictions(sheet.Contradictions.Length, asked.Words));
        foreach (string contradiction in sheet.Contradictions) place.Text.WriteLine($"  {contradiction}");
        place.Text.WriteLine($"{asked.Words.Head}: {(sheet.Head.Length == 0 ? asked.Words.NoHead : sheet.Head)}");
    });

    private static async Task<int> WorkAsync(JobStore job, Asked asked, CancellationToken stop)
    {
        string id = asked.Filter.Cell;
        if (id.Length == 0 || await job.HeadAsync(id, stop) is not { } head)
        {
            asked.Error.WriteLine($"trivet: there is no cell \"{id}\" in this job. Name one behind the job: {string.Join(", ", (await job.CellsAsync(stop)).Select(c => c.Id))}.");
            return ExitCode.Refused;
        }
        if (head.Read() is { Cell: null } unread)
        {
            Refusals.Write(unread.Errors, asked.Error);
            return ExitCode.Refused;
        }
        var (cell, then) = (head.Read().Cell!, (Cell?)null);
        if (asked.Against is { } file)
        {
            var read = CellFile.Load(file);
            if (read.Cell is null)
            {
                Refusals.Write(read.Errors, asked.Error);
                return ExitCode.Refused;
            }
            then = read.Cell;
        }

        var (part, revisions) = await job.JournalOfAsync(id, stop);
        Kept[] entries = [.. part.Lines.Select(l => l.Kept)];
        bool json = asked.Format == OutputFormat.Json;
        if (then is not null)
        {
            var run = Work.Against(cell, then, id, entries, revisions);
            int told = Options.Write(asked.Parsed, asked.Out, place => place.Text.Write(json ? WorkForms.Json(run, cell, head.Revision.Hash) : WorkForms.Text(run, then, asked.Words, asked.StepWords)));
            return told != ExitCode.AllHold ? told : run.Stale.IsEmpty ? ExitCode.AllHold : ExitCode.NotAllHold;
        }

        var progress = Work.Of(cell, id, entries, revisions);
        if (asked.Record is { } paper)
        {
            var sheet = JournalSheet.Of(entries, part.Head?.Hash ?? "", asked.Filter, asked.Words, Work.Contradictions(cell, id, entries));
            var made = RecordFiles.Record(progress, cell, part.Head?.Number ?? 0, sheet.Head, sheet.Contradictions, asked.Language, DateTime.Now);
            try
            {
                await File.WriteAllBytesAsync(paper, made.Bytes, stop);
            }
            catch (Exception e) when (Places.Refuses(e))
            {
                asked.Error.WriteLine($"trivet: {Places.Unwritable(paper, e)}");
                return ExitCode.Refused;
            }
            return ExitCode.AllHold;
        }
        int written = Options.Write(asked.Parsed, asked.Out, place => place.Text.Write(json ? WorkForms.Json(progress, cell, head.Revision.Hash) : WorkForms.Text(progress, cell, asked.Stale, asked.Words, asked.StepWords)));
        if (written != ExitCode.AllHold) return written;
        return progress.Steps.All(s => asked.Stale ? s.Stale.IsEmpty : s.LetsOn) ? ExitCode.AllHold : ExitCode.NotAllHold;
    }
}

using System.CommandLine;
using System.Text;
using Trivet.Store;
using Trivet.Views.Journals;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary>The journal of a job as a file and back: entries with their receipts, and their photographs.</summary>
internal static class JournalExchange
{
    /// <param name="to">Name of the file; - for standard output.</param>
    public static async Task<int> ExportAsync(JobStore job, string to, JournalWords words, InvocationConfiguration io, CancellationToken stop)
    {
        JournalWritten written;
        try
        {
            await using var file = to == "-" ? null : new StreamWriter(to, append: false, new UTF8Encoding(false), 1 << 16);
            written = await job.WriteJournalAsync(file ?? io.Output, stop);
        }
        catch (Exception e) when (e is not StoreFailedException && Places.Refuses(e))
        {
            io.Error.WriteLine($"trivet: {Places.Unwritable(to, e)}");
            return ExitCode.Refused;
        }
        foreach (string failure in written.Failures) io.Error.WriteLine($"trivet: {failure}");
        if (to != "-") io.Output.WriteLine($"{JournalSentences.Exported(written.Part.Lines.Length, written.Photographs, to, words)} {words.Head}: {written.Part.Head?.Hash ?? words.NoHead}");
        return written.Part.Damaged.IsEmpty && written.Failures.IsEmpty ? ExitCode.AllHold : ExitCode.NotAllHold;
    }

    /// <param name="from">Name of the file; - for standard input.</param>
    /// <param name="person">Who brings it.</param>
    public static async Task<int> ImportAsync(JobStore job, string from, string person, JournalWords words, InvocationConfiguration io, CancellationToken stop)
    {
        JournalTaken taken;
        try
        {
            using var text = from == "-" ? Console.In : new StreamReader(from, Encoding.UTF8);
            taken = await job.TakeJournalAsync(text, from == "-" ? "standard input" : from, new Stamp(person, DateTimeOffset.UtcNow), stop);
        }
        catch (Exception e) when (e is not StoreFailedException && Places.Refuses(e))
        {
            io.Error.WriteLine($"trivet: {Places.Unreadable(from, e)}");
            return ExitCode.Refused;
        }
        io.Output.WriteLine($"{JournalSentences.Imported(taken.Entries, taken.EntriesAgain, words)} {words.Head}: {(await job.JournalHeadAsync(stop))?.Hash ?? words.NoHead}");
        if (taken.Photographs + taken.PhotographsAgain + taken.PhotographsErased > 0)
            io.Output.WriteLine(JournalSentences.PhotographsImported(taken.Photographs, taken.PhotographsAgain, taken.PhotographsErased, words));
        if (taken.Errors.IsEmpty) return ExitCode.AllHold;
        Refusals.Write(taken.Errors, io.Error, "these lines were not taken, all others were");
        return ExitCode.Refused;
    }
}

using System.CommandLine;
using Trivet.Journal;
using Trivet.Papers;
using Trivet.Store;
using Trivet.Views.Journals;

namespace Trivet.Cli;

/// <summary>Photographs that a person keeps or erases by command: what is kept, and the entry that says so.</summary>
internal static class PhotographInput
{
    /// <summary>The chain that commands write into.</summary>
    private const string Device = "command";

    /// <param name="About">Cell, step and person.</param>
    internal sealed record Asked(JournalFilter About, string Ask, string? Photograph, string? Erase, string? Because);

    public static async Task<int> RunAsync(JobStore job, Asked asked, InvocationConfiguration io, CancellationToken stop)
    {
        if (asked.About.Cell.Length == 0 || await job.HeadAsync(asked.About.Cell, stop) is not { } head)
            return Refuse(io, $"there is no cell \"{asked.About.Cell}\" in this job. Name one behind the job: {string.Join(", ", (await job.CellsAsync(stop)).Select(c => c.Id))}.");
        var now = DateTimeOffset.Now;
        string person = asked.About.Person.Length > 0 ? asked.About.Person : Environment.UserName;
        if (Stamp.WhyNot(person) is { } why) return Refuse(io, why);

        Statement says;
        if (asked.Erase is { } hash)
        {
            if (string.IsNullOrWhiteSpace(asked.Because)) return Refuse(io, "a photograph is erased for a reason. Give it with --because.");
            if (await job.PhotographAsync(hash, stop) is null) return Refuse(io, $"there is no photograph {hash} in this job. The journal tells their hashes: --format json.");
            says = new Erased(hash, asked.Because);
        }
        else if (await KeepAsync(job, asked, head.Revision.CellId, new Stamp(person, now), io, stop) is { } kept)
        {
            says = new Photographed(kept);
        }
        else
        {
            return ExitCode.Refused;
        }

        var outcome = await job.RecordAsync(
            new Entry
            {
                Device = Device,
                Sequence = 1,
                Previous = "",
                Ticks = now.UtcTicks,
                LocalOffset = (int)now.Offset.TotalMinutes,
                ClockOffset = 0,
                Person = person,
                Cell = head.Revision.CellId,
                Revision = head.Revision.Hash,
                Step = asked.About.Step,
                Ask = asked.Ask,
                Says = says,
            },
            now, stop);
        if (outcome is AppendOutcome.Damaged damaged) return Refuse(io, $"{damaged.Problem} {damaged.Remedy}");
        io.Output.WriteLine(says is Photographed p ? $"Kept as {p.Photograph}." : $"Erased {((Erased)says).Photograph}.");
        return ExitCode.AllHold;
    }

    /// <returns>The hash it is kept under; null where it was refused.</returns>
    private static async Task<string?> KeepAsync(JobStore job, Asked asked, string cell, Stamp by, InvocationConfiguration io, CancellationToken stop)
    {
        byte[] file;
        try
        {
            if (new FileInfo(asked.Photograph!) is { Exists: true, Length: > PhotographFile.LargestFile })
            {
                Refuse(io, $"{asked.Photograph} is larger than {PhotographFile.LargestFile / 1048576} MB. Save it with fewer pixels.");
                return null;
            }
            file = await File.ReadAllBytesAsync(asked.Photograph!, stop);
        }
        catch (Exception e) when (Places.Refuses(e))
        {
            Refuse(io, Places.Unreadable(asked.Photograph!, e));
            return null;
        }

        var made = PhotographFile.Make(file, JournalSentences.BurntIn(cell, asked.About.Step, by.When, by.Person));
        if (made.Jpeg is null)
        {
            Refuse(io, $"{asked.Photograph}: {made.Problem} {made.Remedy}");
            return null;
        }
        switch (await job.AddPhotographAsync(made.Jpeg, by, stop))
        {
            case PhotographOutcome.Stored stored: return stored.Hash;
            case PhotographOutcome.Refused refused: Refuse(io, $"{refused.Problem} {refused.Remedy}"); return null;
            default: Refuse(io, "this photograph was erased before, and is not taken again."); return null;
        }
    }

    private static int Refuse(InvocationConfiguration io, string why)
    {
        io.Error.WriteLine($"trivet: {why}");
        return ExitCode.Refused;
    }
}

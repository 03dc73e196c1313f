using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Store;
using Trivet.Testing;
using Trivet.Views.Procedures;
using Trivet.Views.Words;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary><c>trivet journal</c> as a user calls it.</summary>
public sealed class JournalTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_journal_is_listed_newest_first_with_its_head()
    {
        using var folder = new TemporaryFolder();
        string head = await FillAsync(folder);

        var run = await Run.Trivet("journal", folder.Path);
        Assert.Equal((0, ""), (run.Code, run.Error));
        Assert.True(run.Output.IndexOf("four screws", StringComparison.Ordinal) < run.Output.IndexOf("measured 12,30 mm", StringComparison.Ordinal));
        Assert.Contains($"Head: {head}", run.Output, StringComparison.Ordinal);
        Assert.Contains("2030-05-06 14:00:01", run.Output, StringComparison.Ordinal);

        var german = await Run.Trivet("journal", folder.Path, "--language", "de");
        Assert.Contains("12,30 mm gemessen", german.Output, StringComparison.Ordinal);

        var one = await Run.Trivet("journal", folder.Path, "jar-lids", "--step", "limit-switch:b", "--format", "csv");
        Assert.Equal(2, one.Output.TrimEnd().Split('\n').Length);
        // Of one cell it is held against its procedure, which for an empty one has no switches.
        Assert.Equal(1, one.Code);
        Assert.DoesNotContain("12,30", (await Run.Trivet("journal", folder.Path, "other")).Output, StringComparison.Ordinal);
        foreach (string format in (string[])["json", "markdown"]) Assert.Contains("four screws", (await Run.Trivet("journal", folder.Path, "--format", format)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_export_is_sound_to_the_checker_and_comes_into_another_job_once()
    {
        using TemporaryFolder folder = new(), other = new();
        string head = await FillAsync(folder), file = folder.File("journal.jsonl");
        await FillAsync(other, entries: false);

        Assert.Equal(0, (await Run.Trivet("journal", folder.Path, "--export", file)).Code);
        var (code, output) = OutsideProgram.Python(Repository.File("docs/journal-check.py"), file);
        Assert.Equal((0, $"2 entries, 2 receipts, 0 photographs, 0 not here, head {head}"), (code, output.Trim()));

        Assert.Contains("2 entries received, 0 were here already", (await Run.Trivet("journal", other.Path, "--import", file)).Output, StringComparison.Ordinal);
        Assert.Contains("0 entries received, 2 were here already", (await Run.Trivet("journal", other.Path, "--import", file)).Output, StringComparison.Ordinal);
        Assert.Contains("four screws", (await Run.Trivet("journal", other.Path)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_damaged_line_is_refused_with_its_place_and_keeps_no_other_out()
    {
        using var folder = new TemporaryFolder();
        await FillAsync(folder, entries: false);
        var device = new WritingDevice("tablet-1");
        string file = folder.File("tablet.jsonl");
        await File.WriteAllLinesAsync(file, [EntryText.Of(device.Write(new Begun()).Entry), "{\"entry\":1}", EntryText.Of(device.Write(new Ticked()).Entry)], Stop);

        var run = await Run.Trivet("journal", folder.Path, "--import", file);
        Assert.Equal(2, run.Code);
        Assert.Contains("tablet.jsonl:2:1:", run.Error, StringComparison.Ordinal);
        Assert.Contains("2 entries received", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Verifying_ends_with_1_where_something_does_not_fit()
    {
        using var folder = new TemporaryFolder();
        await FillAsync(folder);
        var sound = await Run.Trivet("journal", folder.Path, "--verify");
        Assert.Equal(0, sound.Code);
        Assert.Contains("one chain", sound.Output, StringComparison.Ordinal);

        var device = new WritingDevice("tablet-2");
        device.Write(new Begun());
        string file = folder.File("tablet.jsonl");
        await File.WriteAllTextAsync(file, EntryText.Of(device.Write(new Ticked()).Entry), Stop);
        await Run.Trivet("journal", folder.Path, "--import", file);
        var gap = await Run.Trivet("journal", folder.Path, "--verify");
        Assert.Equal(1, gap.Code);
        Assert.Contains("tablet-2: entries 1 to 1 are not here", gap.Output, StringComparison.Ordinal);
    }

    /// <summary>Poppler reads the paper (Debian: poppler-utils).</summary>
    [Theory, InlineData("en", "holds", "Signed"), InlineData("de", "hält", "Unterschrieben")]
    public async Task The_record_to_be_signed_tells_what_counts_and_bears_the_head_of_the_journal(string language, string verdict, string signed)
    {
        using var folder = new TemporaryFolder();
        string head = "", paper = folder.File("record.pdf");
        await using (var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(folder.Path), Stop)).Store)
        {
            var cell = CellFile.Load(Repository.Sample("jar-lids")).Cell!;
            await store.CreateAsync("jar-lids", cell, new Stamp("ada", DateTimeOffset.UnixEpoch), "made", Stop);
            var kept = new WritingDevice("tablet-1").Write(new Measured("60.2 Ω", "Ω", 60.2, 0.1), "bus-ohms", "ohms", revision: CellFile.Hash(cell));
            await store.AppendAsync([new Arrival(EntryText.Of(kept.Entry), kept.Hash)], WritingDevice.Noon.AddMinutes(1), Stop);
            head = (await store.JournalHeadAsync(Stop))!.Hash;
        }
        Assert.Equal(0, (await Run.Trivet("journal", folder.Path, "jar-lids", "--record", paper, "--language", language)).Code);
        var text = OutsideProgram.PdfText(paper);
        Assert.SkipWhen(text.NotRun.Length > 0, text.NotRun);
        string first = text.Output.Split('\f')[0];
        Assert.Contains(head, first, StringComparison.Ordinal);
        Assert.Contains(signed, text.Output, StringComparison.Ordinal);
        string row = Assert.Single(first.Split('\n'), l => l.Contains("60.2", StringComparison.Ordinal));
        Assert.Contains(verdict, row, StringComparison.Ordinal);
        // About what is accepted of a reading taken blind is told with it, once it is taken.
        Assert.Matches(@"\d+([.,]\d+)? ohm \w+ \d+", row);
        Assert.All(text.Output.TrimEnd('\f', '\n').Split('\f'), page => Assert.Contains(head[..16], page, StringComparison.Ordinal));
        Assert.Equal(2, (await Run.Trivet("journal", folder.Path, "nothing", "--record", paper)).Code);
    }

    [Fact]
    public async Task What_is_no_job_is_refused()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Trivet("journal", folder.Path);
        Assert.Equal(2, run.Code);
        Assert.Contains("no job folder", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Before_a_change_is_saved_it_is_told_which_steps_it_makes_stale_and_after_it_they_are()
    {
        using var folder = new TemporaryFolder();
        var lids = CellFile.Load(Repository.Sample("jar-lids")).Cell!;
        var steps = CellProcedure.Of(lids).Steps;
        // Any step that rests on a length that is stated, answered in the simplest way.
        var (rests, field) = steps.SelectMany(s => s.Inputs.Select(i => (Step: s, Field: CellFields.Find(lids, i)))).First(x => x.Field is { Dimension: Dimension.Length, Si: > 0 });
        await using (var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(folder.Path), Stop)).Store)
        {
            await store.CreateAsync("jar-lids", lids, new Stamp("ada", DateTimeOffset.UnixEpoch), "made", Stop);
            var device = new WritingDevice("tablet-1");
            var kept = device.Write(new Ticked(), rests.Id, revision: CellFile.Hash(lids));
            await store.AppendAsync([new Arrival(EntryText.Of(kept.Entry))], WritingDevice.Noon.AddMinutes(1), Stop);
        }
        var listed = await Run.Trivet("journal", folder.Path, "jar-lids", "--steps");
        // What is left is planned for one person and for two, and told who then waits for whom.
        Assert.Matches(@"(?s)Left: \d+ h .* for one person, \d+ h .* for two; .*Who waits for whom\n  After .* person [12] waits ", listed.Output);
        Assert.Equal(1, listed.Code);
        Assert.Contains(rests.Id, listed.Output, StringComparison.Ordinal);
        Assert.Contains(StepTexts.Title(rests, EnglishSteps.Words), listed.Output, StringComparison.Ordinal);
        Assert.Contains(StepTexts.Title(rests, GermanSteps.Words), (await Run.Trivet("journal", folder.Path, "jar-lids", "--steps", "--language", "de")).Output, StringComparison.Ordinal);
        Assert.Equal(0, (await Run.Trivet("journal", folder.Path, "jar-lids", "--stale")).Code);

        var changed = CellFields.SetSi(lids, field!.Pointer, field.Si!.Value + 0.001);
        string file = folder.File("changed.json");
        await File.WriteAllTextAsync(file, CellFile.Write(changed), Stop);
        var dry = await Run.Trivet("journal", folder.Path, "jar-lids", "--stale", "--against", file);
        Assert.Equal((1, ""), (dry.Code, dry.Error));
        Assert.Contains($"{StepTexts.Title(rests, EnglishSteps.Words)} ({rests.Id}): {Math.Ceiling(rests.Minutes)} min, since", dry.Output, StringComparison.Ordinal);
        Assert.Contains($"was {field.Text}, is {CellFields.Find(changed, field.Pointer)!.Text}", dry.Output, StringComparison.Ordinal);
        Assert.Contains("\"stale\"", (await Run.Trivet("journal", folder.Path, "jar-lids", "--stale", "--against", file, "--format", "json")).Output, StringComparison.Ordinal);
        // The same file costs nothing.
        Assert.Equal(0, (await Run.Trivet("journal", folder.Path, "jar-lids", "--stale", "--against", Repository.Sample("jar-lids"))).Code);

        await using (var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(folder.Path), Stop)).Store)
            await store.SaveAsync("jar-lids", 1, changed, new Stamp("ada", DateTimeOffset.UnixEpoch), "renamed", Stop);
        var stale = await Run.Trivet("journal", folder.Path, "jar-lids", "--stale");
        Assert.Equal(1, stale.Code);
        Assert.Contains(rests.Id, stale.Output, StringComparison.Ordinal);
    }

    /// <returns>The head.</returns>
    private static async Task<string> FillAsync(TemporaryFolder folder, bool entries = true)
    {
        await using var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(folder.Path), Stop)).Store;
        await store.CreateAsync("jar-lids", Cell.Empty, new Stamp("ada", DateTimeOffset.UnixEpoch), "made", Stop);
        if (!entries) return "";
        var device = new WritingDevice("tablet-1");
        Kept[] written = [device.Write(new Measured("12,30 mm", "m", 0.0123, 1e-5), "limit-switch:a", "gap"), device.Write(new Differs("four screws instead of six"), "limit-switch:b")];
        await store.AppendAsync([.. written.Select(k => new Arrival(EntryText.Of(k.Entry), k.Hash))], WritingDevice.Noon.AddMinutes(1), Stop);
        return (await store.JournalHeadAsync(Stop))!.Hash;
    }
}

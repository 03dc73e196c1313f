using System.Text.Json;
using Trivet.Files;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>The ledger from the command line: what it says, how it ends, and that a refused file leaves standard output empty.</summary>
public sealed class CheckTests
{
    [Fact]
    public async Task The_complete_sample_holds_and_ends_with_0()
    {
        var run = await Run.Trivet("check", Repository.Sample("jar-lids"));
        Assert.StartsWith("Jar lids\n0 falling short, 0 open,", run.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.AllHold, run.Code);
    }

    [Fact]
    public async Task A_question_nobody_answered_is_open_and_ends_with_1()
    {
        using var folder = new TemporaryFolder();
        var cell = CellFile.Read(File.ReadAllBytes(Repository.Sample("jar-lids")), "jar-lids.json").Cell!;
        var (id, question) = cell.Brief.OpenQuestions.First();
        var asked = cell.Brief with { OpenQuestions = cell.Brief.OpenQuestions.SetItem(id, question with { Answer = null }) };
        await File.WriteAllTextAsync(folder.File("asked.json"), CellFile.Write(cell with { Brief = asked }), TestContext.Current.CancellationToken);
        var run = await Run.Trivet("check", folder.File("asked.json"));
        Assert.StartsWith("Jar lids\n0 falling short, 1 open,", run.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.NotAllHold, run.Code);
    }

    [Fact]
    public async Task A_tray_out_of_reach_falls_short_and_ends_with_1()
    {
        var run = await Run.Trivet("check", Repository.Sample("tight-corner"));
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        Assert.Contains("falls short", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_half_filled_cell_is_open_and_ends_with_1()
    {
        using var folder = new TemporaryFolder();
        string file = folder.File("mine.json");
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("new", file)).Code);
        var run = await Run.Trivet("check", file);
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        Assert.Contains("open", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_error_of_a_broken_file_has_its_place_and_nothing_goes_to_standard_output()
    {
        string file = Repository.Sample("broken");
        var run = await Run.Trivet("check", file, "--format", "json");
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Empty(run.Output);
        string[] lines = run.Error.TrimEnd().Split('\n');
        Assert.Equal($"{lines.Length - 1} errors; the file was not used.", lines[^1]);
        Assert.All(lines[..^1], line => Assert.Matches($@"^{System.Text.RegularExpressions.Regex.Escape(file)}:\d+:\d+: /\S+.*: .+; .+$", line));
    }

    [Theory]
    [InlineData("not-there.json", "there is no such file")]
    [InlineData(".", "no job folder")]
    public async Task What_cannot_be_read_is_refused_with_a_way_on(string path, string words)
    {
        var run = await Run.Trivet("check", path);
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Json_says_the_same_as_the_exit_code_and_is_the_same_twice()
    {
        var run = await Run.Trivet("check", Repository.Sample("jar-lids"), "--format", "json");
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal("trivet-assessment", json.RootElement.GetProperty("format").GetString());
        Assert.Equal(run.Code == ExitCode.AllHold, json.RootElement.GetProperty("summary").GetProperty("allHold").GetBoolean());
        Assert.Equal(64, json.RootElement.GetProperty("cell").GetProperty("revision").GetString()!.Length);
        Assert.Equal(run.Output, (await Run.Trivet("check", Repository.Sample("jar-lids"), "--format", "json")).Output);
    }

    [Theory]
    [InlineData("csv", "verdict,rule,subject,")]
    [InlineData("markdown", "# Jar lids\n")]
    [InlineData("MARKDOWN", "# Jar lids\n")]
    public async Task Each_format_begins_as_documented(string format, string beginning)
    {
        var run = await Run.Trivet("check", Repository.Sample("jar-lids"), "--format", format);
        Assert.StartsWith(beginning, run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_format_there_is_not_is_refused()
    {
        var run = await Run.Trivet("check", Repository.Sample("jar-lids"), "--format", "pdf");
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains("Give text, json, csv or markdown.", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_ledger_written_to_a_file_leaves_standard_output_empty()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Trivet("check", Repository.Sample("jar-lids"), "--out", folder.File("ledger.txt"));
        Assert.Empty(run.Output);
        Assert.StartsWith("Jar lids\n", await File.ReadAllTextAsync(folder.File("ledger.txt"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }
}

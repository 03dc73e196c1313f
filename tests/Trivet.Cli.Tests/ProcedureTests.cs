using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>The procedure as the command tells it.</summary>
public sealed class ProcedureTests
{
    [Fact]
    public async Task The_steps_of_a_cell_whose_description_is_whole_are_all_there()
    {
        var lids = await Run.Trivet("procedure", Repository.Sample("jar-lids"));
        Assert.Equal((ExitCode.AllHold, ""), (lids.Code, lids.Error));
        Assert.Matches(@"# +\d+  Prove the stop chain, motor supply locked off +control supply only +safety person +2", lids.Output);
        var german = await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--language", "de", "--people", "1");
        Assert.Matches(@"Haltkette nachweisen", german.Output);
        Assert.DoesNotContain("Prove", german.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_step_says_all_it_has_to_say_and_a_wrong_name_is_answered_with_the_right_one()
    {
        var one = await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--step", "small-jog:a");
        Assert.Contains("Caution: Props stand under the chains", one.Output, StringComparison.Ordinal);
        Assert.Contains("Held by: a, b, c: prop beneath", one.Output, StringComparison.Ordinal);
        var wrong = await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--step", "smal-jog:a");
        Assert.Equal(ExitCode.Refused, wrong.Code);
        Assert.Contains("Is \"small-jog:a\" meant?", wrong.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--people", "3")).Code);
    }

    [Fact]
    public async Task Cards_are_a_file_to_be_printed()
    {
        using var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "cards.pdf");
        var made = await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--cards", file);
        Assert.Equal(ExitCode.AllHold, made.Code);
        Assert.Equal("%PDF"u8.ToArray(), (await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken))[..4]);
    }
}

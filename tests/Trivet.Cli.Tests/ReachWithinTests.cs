using System.Text.Json;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>The reach within further limits, from the command line.</summary>
public sealed class ReachWithinTests
{
    [Fact]
    public async Task Limits_take_from_the_volume_and_are_named()
    {
        string cell = Repository.Sample("jar-lids");
        var run = await Run.Trivet("reach", cell, "--within", "swing,condition", "--format", "json");
        Assert.Equal(ExitCode.AllHold, run.Code);
        using JsonDocument limited = JsonDocument.Parse(run.Output), all = JsonDocument.Parse((await Run.Trivet("reach", cell, "--format", "json")).Output);
        Assert.Equal(["travel", "swing", "condition"], limited.RootElement.GetProperty("within").EnumerateArray().Select(w => w.GetString()));
        Assert.Equal(["travel"], all.RootElement.GetProperty("within").EnumerateArray().Select(w => w.GetString()));
        Assert.True(Row(limited, "volume") < 0.9 * Row(all, "volume"));
        Assert.True(Row(limited, "volume") > 0.3 * Row(all, "volume"));
    }

    [Fact]
    public async Task A_limit_that_is_none_or_not_stated_is_refused()
    {
        var unknown = await Run.Trivet("reach", Repository.Sample("jar-lids"), "--within", "speed");
        Assert.Equal(ExitCode.Refused, unknown.Code);
        Assert.Contains("There is no limit 'speed'", unknown.Error, StringComparison.Ordinal);

        using var folder = new TemporaryFolder();
        string bare = folder.File("bare.json");
        string text = await File.ReadAllTextAsync(Repository.Sample("jar-lids"), TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(bare, text.Replace("\"largestCondition\": 5,", "", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        var missing = await Run.Trivet("reach", bare, "--within", "condition");
        Assert.Equal(ExitCode.Refused, missing.Code);
        Assert.Contains("/robot/dexterity/largestCondition: Not stated", missing.Error, StringComparison.Ordinal);
    }

    private static double Row(JsonDocument sheet, string id) =>
        sheet.RootElement.GetProperty("rows").EnumerateArray().Single(r => r.GetProperty("id").GetString() == id).GetProperty("value").GetDouble();
}

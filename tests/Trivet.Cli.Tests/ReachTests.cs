using System.Globalization;
using System.Text.Json;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>The reach of a cell on the command line. The numbers themselves are held in the tests of reach; here it is what is told, and how it ends.</summary>
public sealed class ReachTests
{
    [Fact]
    public async Task Text_and_json_tell_the_same_reach()
    {
        var text = await Run.Trivet("reach", Repository.Sample("jar-lids"));
        Assert.Equal(ExitCode.AllHold, text.Code);
        Assert.StartsWith("Jar lids\n", text.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("plane", text.Output, StringComparison.Ordinal);

        using var json = JsonDocument.Parse((await Run.Trivet("reach", Repository.Sample("jar-lids"), "--format", "json")).Output);
        Assert.Equal("trivet-reach", json.RootElement.GetProperty("format").GetString());
        var rows = Rows(json);
        foreach (string id in new[] { "volume", "cylinder-radius", "box-z-to", "homing-together", "station-belt" }) Assert.Contains(id, rows.Keys);
        string litres = (rows["volume"] * 1000).ToString("0.0", CultureInfo.InvariantCulture);
        Assert.Contains($"{litres} l", text.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Under_a_plane_cylinder_and_box_stay_below_it()
    {
        using var json = JsonDocument.Parse((await Run.Trivet("reach", Repository.Sample("jar-lids"), "--under", "-65 cm", "--format", "json")).Output);
        var rows = Rows(json);
        Assert.Equal(-0.65, rows["under"], 1e-12);
        Assert.InRange(rows["cylinder-from"] + rows["cylinder-height"], -0.7, -0.65 + 1e-9);
        Assert.InRange(rows["box-z-to"], -0.7, -0.65 + 1e-9);

        var text = await Run.Trivet("reach", Repository.Sample("jar-lids"), "--under", "-3 m");
        Assert.Contains("nothing is reached under it", text.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Largest upright", text.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reach_that_falls_short_ends_with_1_and_a_better_mount_is_told()
    {
        var run = await Run.Trivet("reach", Repository.Sample("tight-corner"), "--place-mount", "--format", "json");
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        using var json = JsonDocument.Parse(run.Output);
        var rows = Rows(json);
        Assert.True(rows["mount-margin-now"] < 0);
        Assert.True(rows["mount-margin"] > rows["mount-margin-now"]);
    }

    private static Dictionary<string, double> Rows(JsonDocument json) => json.RootElement.GetProperty("rows").EnumerateArray()
        .ToDictionary(r => r.GetProperty("id").GetString()!, r => r.GetProperty("value").ValueKind == JsonValueKind.Null ? double.NaN : r.GetProperty("value").GetDouble());
}

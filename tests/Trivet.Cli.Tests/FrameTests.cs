using System.Globalization;
using System.Text.Json;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>The frame of a cell from the command line.</summary>
public sealed class FrameTests
{
    [Fact]
    public async Task Modes_sag_settling_and_feet_come_as_json()
    {
        var run = await Run.Trivet("frame", Repository.Sample("jar-lids"), "--format", "json", "--braces");
        Assert.Equal(ExitCode.AllHold, run.Code);
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal("trivet-frame", json.RootElement.GetProperty("format").GetString());
        var rows = json.RootElement.GetProperty("rows").EnumerateArray().ToArray();
        double last = 0;
        for (int i = 1; i <= 10; i++)
        {
            var mode = rows.Single(r => r.GetProperty("id").GetString() == $"mode-{i}");
            double low = mode.GetProperty("low").GetDouble();
            Assert.True(low >= last && low < mode.GetProperty("high").GetDouble());
            last = low;
        }

        foreach (string id in new[] { "mass", "sag", "tilt", "give-x", "settle-place", "settle-pick", "residual-place", "foot-largest", "overturning", "brace-1" })
            Assert.Contains(rows, r => r.GetProperty("id").GetString() == id);
    }

    [Fact]
    public async Task A_reaction_from_elsewhere_is_taken_beside_the_cycles()
    {
        using var folder = new TemporaryFolder();
        // A pull along x that swells and fades within 0.4 s, then rest; any unit may stand in the head.
        var rows = Enumerable.Range(0, 41).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i * 20},{(i < 20 ? 0.03 * Math.Sin(Math.PI * i / 20) : 0):R},0,-30"));
        await File.WriteAllTextAsync(folder.File("pull.csv"), "t[ms],fx[kN],fy[N],fz[N]\n" + string.Join('\n', rows), TestContext.Current.CancellationToken);
        var run = await Run.Trivet("frame", Repository.Sample("jar-lids"), "--reaction", folder.File("pull.csv"), "--format", "csv");
        Assert.Equal(ExitCode.AllHold, run.Code);
        Assert.StartsWith("group,id,low,high,unit\r\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("pull.csv,settle-end,", run.Output, StringComparison.Ordinal);
        Assert.Contains("to-left,settle-place,", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_model_lacks_is_said_with_its_place()
    {
        var run = await Run.Trivet("frame", Repository.Sample("labels"));
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("has no frame", run.Error, StringComparison.Ordinal);
        var tight = await Run.Trivet("frame", Repository.Sample("tight-corner"));
        Assert.Contains("/frame/joints/stiffnessFrom: Not stated", tight.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_table_that_is_none_is_refused_with_line_and_column()
    {
        using var folder = new TemporaryFolder();
        await File.WriteAllTextAsync(folder.File("bad.csv"), "t[s],fx[N],fy[N],fz[N]\n0,1,2\n", TestContext.Current.CancellationToken);
        var run = await Run.Trivet("frame", Repository.Sample("jar-lids"), "--reaction", folder.File("bad.csv"));
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("bad.csv:2:", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Readings_by_tape_and_level_say_which_foot_to_raise_and_what_to_measure_next()
    {
        using var folder = new TemporaryFolder();
        // The right posts' tops stand 1 mm low over 1 m; the level's own zero is off by 0.3 mm/m, which reading it turned takes out.
        await File.WriteAllTextAsync(folder.File("readings.csv"), """
            from,to,distance[mm],height[mm],level[mm/m],reversed[mm/m]
            post-front-left.top,post-front-right.top,,,-0.7,1.3
            post-back-left.top,post-back-right.top,,,-0.7,1.3
            post-front-left.top,post-back-left.top,,,0.3,0.3
            post-front-left.foot,post-front-right.top,2059.1,,,
            post-front-left.top,,,1800.2,,
            """, TestContext.Current.CancellationToken);
        var run = await Run.Trivet("frame", Repository.Sample("jar-lids"), "--readings", folder.File("readings.csv"), "--format", "csv");
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        double Value(string id) => double.Parse(run.Output.Split("\r\n").Single(l => l.StartsWith(id + ",", StringComparison.Ordinal)).Split(',')[2], CultureInfo.InvariantCulture);
        Assert.Equal(-0.001, Value("set-up,level-x"), 1e-4);
        Assert.Equal(0.001, Value("feet,post-front-right"), 2e-4);
        Assert.Contains("next,next-1:", run.Output, StringComparison.Ordinal);
        var text = await Run.Trivet("frame", Repository.Sample("jar-lids"), "--readings", folder.File("readings.csv"));
        Assert.Contains("turns of the spindle", text.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_corner_that_is_not_there_is_refused_with_those_that_are()
    {
        using var folder = new TemporaryFolder();
        await File.WriteAllTextAsync(folder.File("readings.csv"), "from,to,distance[mm]\npost-front.top,post-back-left.top,900\n", TestContext.Current.CancellationToken);
        var run = await Run.Trivet("frame", Repository.Sample("jar-lids"), "--readings", folder.File("readings.csv"));
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("readings.csv:2:1: there is no corner \"post-front.top\"", run.Error, StringComparison.Ordinal);
    }
}

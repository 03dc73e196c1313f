using System.Globalization;
using System.Text.Json;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>The cycles of a cell from the command line.</summary>
public sealed class CycleOfCellTests
{
    [Fact]
    public async Task The_three_laws_of_each_cycle_come_as_json_with_the_settings_that_are_typed()
    {
        var run = await Run.Trivet("cycle", Repository.Sample("jar-lids"), "--fastest", "--format", "json");
        Assert.Equal(ExitCode.AllHold, run.Code);
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal("trivet-cycle", json.RootElement.GetProperty("format").GetString());
        var rows = json.RootElement.GetProperty("rows").EnumerateArray().ToArray();
        double Of(string id) => rows.First(r => r.GetProperty("cycle").GetString() == "to-left" && r.GetProperty("id").GetString() == id).GetProperty("value").GetDouble();
        Assert.True(Of("bound-cycle-time") < Of("states-cycle-time"));
        Assert.True(Of("states-cycle-time") < Of("controller-cycle-time"));
        Assert.Equal(1 / Of("controller-cycle-time"), Of("controller-rate"), 1e-12);
        Assert.Equal(Of("controller-cycle-time"), Of("variant-seven-phase-path-cycle-time"));
        Assert.True(Of("variant-trapezoid-path-cycle-time") < Of("controller-cycle-time"));
        Assert.True(Of("variant-trapezoid-path-use") is > 0 and < 1);
        Assert.DoesNotContain(rows, r => r.GetProperty("id").GetString() == "variant-seven-phase-axes-use");
        var speed = json.RootElement.GetProperty("settings").EnumerateArray().Single(s => s.GetProperty("field").GetString() == "/motion/settings/pathSpeed");
        Assert.Equal("mm/s", speed.GetProperty("unit").GetString());
    }

    [Fact]
    public async Task One_cycle_over_time_is_written_with_units_in_its_header_and_ends_as_it_begins()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Trivet("cycle", Repository.Sample("jar-lids"), "--cycle", "to-left", "--out", folder.File("series.csv"));
        Assert.Equal(ExitCode.AllHold, run.Code);
        string[] lines = await File.ReadAllLinesAsync(folder.File("series.csv"), TestContext.Current.CancellationToken);
        Assert.StartsWith("t[s],x[mm],y[mm],z[mm],speed[mm/s],acceleration[mm/s2],q_a[mm],v_a[mm/s],a_a[mm/s2],f_a[N],", lines[0], StringComparison.Ordinal);
        Assert.EndsWith("mount_fx[N],mount_fy[N],mount_fz[N],mount_mx[N m],mount_my[N m],mount_mz[N m],power[W],voltage[V]", lines[0], StringComparison.Ordinal);
        double[] first = Numbers(lines[1]), last = Numbers(lines[^1]);
        for (int k = 1; k <= 4; k++) Assert.Equal(first[k], last[k], 1e-6);

        static double[] Numbers(string line) => [.. line.Split(',').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
    }

    [Fact]
    public async Task A_cycle_that_is_not_there_is_refused_with_those_that_are()
    {
        var run = await Run.Trivet("cycle", Repository.Sample("jar-lids"), "--cycle", "up");
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("to-left, to-right", run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }
}

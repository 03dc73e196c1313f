using System.Collections.Immutable;
using System.Globalization;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Views.Charts;
using Trivet.Views.Motion;
using Trivet.Views.Tests.Drawings;

namespace Trivet.Views.Tests.Motion;

public sealed class MotionSheetTests
{
    internal static Cell Sample(string name) => CellFile.Read(File.ReadAllBytes(Repository.PathOf($"samples/{name}.json")), name).Cell!;

    private static readonly Cell Lids = Sample("jar-lids");

    public static TheoryData<string, string> Cycles => new()
    {
        { "jar-lids", "to-left" }, { "jar-lids", "to-right" },
        { "biscuits", Sample("biscuits").Motion.Cycles.InOrder().First().Key },
        { "labels", Sample("labels").Motion.Cycles.InOrder().First().Key },
    };

    [Theory, MemberData(nameof(Cycles))]
    public void Every_chart_of_every_law_is_sane(string sample, string cycle)
    {
        var sheet = MotionSheet.Of(Sample(sample), cycle);
        new SvgPage(ChartSvg.Render(MotionCharts.Laws(sheet, TimingLaw.Controller), 620, 230)).AssertTextsAreApart();
        foreach (var law in Enum.GetValues<TimingLaw>())
        {
            var run = MotionRun.Of(sheet, law)!;
            foreach (bool rotary in new[] { false, true })
            {
                if (!run.AxesOf(rotary).Any()) continue;
                foreach (var chart in MotionCharts.OverTime(run, rotary))
                {
                    Assert.Equal(chart.Chart.Series.Length, chart.Tracks.Length);
                    Assert.All(chart.Chart.Series, s => Assert.Equal(s.X.Length, s.Y.Length));
                    var page = new SvgPage(ChartSvg.Render(chart.Chart, 620, 230));
                    page.AssertTextsAreApart();
                    Assert.DoesNotContain("NaN", page.Drawing.Svg, StringComparison.Ordinal);
                }
            }
        }
    }

    [Theory, InlineData(0.001, false), InlineData(2.0, true)]
    public void A_rounding_that_a_leg_cuts_short_is_told(double blend, bool told)
    {
        var plan = CycleInputs.Read(Lids, "to-left", new(), blend).Plan!;
        var cuts = RoundingCut.Of(plan);
        Assert.Equal(told ? [true, false] : [], cuts.Select(c => c.Loaded));
        Assert.All(cuts, c => Assert.True(c.Asked == blend && c.Least > 0 && c.Least < blend && c.Corners > 0));
        Assert.All(cuts, c => Assert.StartsWith("asked for 2000 mm, cut short at ", c.Why, StringComparison.Ordinal));
    }

    [Theory, InlineData("jar-lids", 4), InlineData("biscuits", 3)]
    public void Windings_warm_up_to_the_end_of_the_shift(string sample, int motors)
    {
        var cell = Sample(sample);
        var run = MotionRun.Of(MotionSheet.Of(cell, cell.Motion.Cycles.InOrder().First().Key), TimingLaw.Controller)!;
        var chart = MotionCharts.Warming(run)!.Chart;
        Assert.Equal(motors, chart.Series.Length);
        Assert.Equal(cell.Brief.Shift!.Value / 3600, chart.Series[0].X[^1], 1e-9);
        Assert.All(chart.Series, s => Assert.Equal(cell.Drives.Supply.Ambient!.Value, s.Y[0], 1e-9));
        Assert.All(chart.Series.Zip(run.Drives!.Axes), s => Assert.Equal(s.Second.Value.Warming!.Value.AtEnd, s.First.Y[^1], 1e-9));
        Assert.Single(chart.Guides, g => g.Upright);
        new SvgPage(ChartSvg.Render(chart, 620, 230)).AssertTextsAreApart();
    }

    [Fact]
    public void Charts_say_the_same_under_any_culture()
    {
        var before = CultureInfo.CurrentCulture;
        string there = Everything();
        try
        {
            CultureInfo.CurrentCulture = new("de-DE");
            Assert.Equal(there, Everything());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        static string Everything()
        {
            var run = MotionRun.Of(MotionSheet.Of(Lids, "to-left"), TimingLaw.Controller)!;
            return string.Concat(MotionCharts.OverTime(run, false).Append(MotionCharts.Cloud(run, "a")!).Select(c => ChartSvg.Render(c.Chart).Svg)) + run.Csv;
        }
    }

    [Fact]
    public void The_quick_answer_has_the_time_of_the_whole_one()
    {
        var quick = MotionSheet.Quick(Lids, "to-right");
        Assert.Null(quick.Result);
        Assert.Equal(MotionSheet.Of(Lids, "to-right").CycleTime, quick.CycleTime);
    }

    [Fact]
    public void The_table_has_the_three_laws_and_tells_how_far_each_is_from_the_peak_rate()
    {
        var sheet = MotionSheet.Of(Lids, "to-left");
        var rows = sheet.Laws();
        Assert.Equal(Enum.GetValues<TimingLaw>(), rows.Select(r => r.Law));
        double time = double.Parse(rows[0].CycleTime.Split(' ')[0], CultureInfo.InvariantCulture);
        double above = double.Parse(rows[0].ToPeak.Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.Equal(1 / time / Lids.Brief.PeakRate!.Value - 1, above / 100, 0.006);
        Assert.NotEmpty(sheet.HeldBack());
    }

    [Fact]
    public void What_is_not_stated_is_named_and_nothing_is_timed()
    {
        var cell = Lids with { Motion = Lids.Motion with { Settings = Lids.Motion.Settings with { PathSpeed = null } } };
        var sheet = MotionSheet.Of(cell, "to-left");
        Assert.Null(sheet.Result);
        Assert.Contains("/motion/settings/pathSpeed", sheet.Missing);
        Assert.True(double.IsNaN(sheet.CycleTime));
    }

    [Fact]
    public void Without_masses_there_is_motion_but_no_force_and_no_torque()
    {
        var run = MotionRun.Of(MotionSheet.Of(Lids with { Robot = Lids.Robot with { PlatformMass = null } }, "to-left"), TimingLaw.Controller)!;
        string[] charts = [.. MotionCharts.OverTime(run, false).Select(c => c.Id)];
        Assert.Contains("speed", charts);
        Assert.DoesNotContain("force", charts);
        Assert.Null(MotionCharts.Cloud(run, "a"));
    }

    [Fact]
    public void The_cloud_stays_within_the_curve_exactly_when_the_drives_say_so()
    {
        var run = MotionRun.Of(MotionSheet.Of(Lids, "to-left"), TimingLaw.Controller)!;
        var cloud = MotionCharts.Cloud(run, "c")!.Chart;
        var curve = run.Drives!.Axes["c"].Load.Drive.Curve;
        var points = cloud.Series[0];
        bool within = points.X.Zip(points.Y).All(p => Math.Abs(p.Second) <= curve.At(p.First * Math.PI / 30, run.Voltage.Min()));
        Assert.Equal(run.Drives.Axes["c"].Use.Max() <= 1, within);
    }

    [Fact]
    public void Rods_keep_their_length_and_the_tool_its_way_while_it_plays()
    {
        var now = Assess.Preview(Lids);
        var run = MotionRun.Of(MotionSheet.Of(Lids, "to-left"), TimingLaw.Bound)!;
        var play = Playback.Of(now, run);
        for (int i = 0; i <= play.Steps; i++)
        {
            for (int c = 0; c < 3; c++)
                Assert.Equal(now.Geometry.Robot!.Chains[c].Rod, (Point(2 * c, i) - Point(2 * c + 1, i)).Norm, 3e-5);
            Assert.InRange(Point(7, i).Z, 0.84 - 1e-4, 1.1);
        }
        Assert.Equal(run.Trace.Tool_C[0].X, Point(7, 0).X, 1e-5);
        Assert.Equal(run.Trace.Duration, play.Duration);
        Assert.All(play.Tracks.Values, t => Assert.Equal(play.Steps + 1, t.Length));

        Vec3 Point(int point, int i) => new(play.Points[point][3 * i], play.Points[point][3 * i + 1], play.Points[point][3 * i + 2]);
    }

    [Fact]
    public void The_table_of_values_has_units_in_its_head_and_a_row_for_each_time()
    {
        var run = MotionRun.Of(MotionSheet.Of(Lids, "to-left"), TimingLaw.Controller)!;
        string[] lines = run.Csv.TrimEnd().Split("\r\n");
        Assert.Equal(run.Trace.Times.Length + 1, lines.Length);
        Assert.StartsWith("t[s],x[mm],y[mm],z[mm],speed[mm/s],", lines[0], StringComparison.Ordinal);
        Assert.Contains("f_a[N]", lines[0], StringComparison.Ordinal);
        Assert.Contains("f_rotary[N m]", lines[0], StringComparison.Ordinal);
        int columns = lines[0].Split(',').Length;
        Assert.All(lines, l => Assert.Equal(columns, l.Split(',').Length));
    }
}

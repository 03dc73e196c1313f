using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Xunit;

namespace Trivet.Core.Tests.Motion;

/// <summary>Whether ball joints stay closed over a cycle.</summary>
public sealed class PreloadChecksTests
{
    private static Finding[] Of(Cell cell) => [.. Assess.Preview(cell).Ledger.Findings.Where(f => f.Rule == MotionRules.JointPreload)];

    /// <summary>
    /// At a creeping speed the pull is that of a two-bar bracket (method of joints, any statics text): each bar carries its pair's share of everything below,
    /// half of its own weight at either end, and at its upper end half of its own weight along it besides.
    /// </summary>
    [Fact]
    public void A_creeping_platform_pulls_as_a_bracket_of_bars()
    {
        const double G = 9.80665;
        var cell = WithPreload(MotionCells.Planar, 100).With(s => s with { PathSpeed = 0.02, PathAcceleration = 0.02, PathJerk = 0.2 });
        var input = MotionCells.Input(cell, "across");
        var robot = input.Plan.Loaded.Robot;
        double bar = 0.05, below = 0.3 + 0.2 + 0.02 + 4 * bar / 2;
        double[] most = [0, 0];
        for (int i = 0; i <= 2000; i++)
        {
            var p = input.Plan.Loaded.At(input.Plan.Loaded.Length * i / 2000).Platform.P;
            var q = robot.Inverse(p);
            var up = robot.Chains.Select((c, k) => (c.Foot + q[k] * c.E - p - c.B).Unit()).ToArray();
            double area = up[0].X * up[1].Z - up[1].X * up[0].Z;
            for (int k = 0; k < 2; k++)
            {
                double pair = (k == 0 ? -up[1].X : up[0].X) * below * G / area;
                most[k] = Math.Max(most[k], pair / 2 + bar * G * up[k].Z / 2);
            }
        }
        var found = Of(cell).OfType<Judged>().ToArray();
        Assert.Equal(2, found.Length);
        // The part hangs in the plane, so both rods of a pair bear alike; what is left is the creeping's own acceleration.
        for (int k = 0; k < 2; k++) Assert.Equal(most[k], found[k].Value, 0.004 * most[k]);
        Assert.All(found, f => Assert.Equal(1 - f.Value / 100, f.Margin, 1e-12));
    }

    [Fact]
    public void A_spring_too_weak_falls_short_and_the_one_advised_holds()
    {
        var weak = WithPreload(MotionCells.Planar, 1);
        var short_ = Of(weak).Where(f => f.Verdict == Verdict.FallsShort).ToArray();
        Assert.NotEmpty(short_);
        foreach (var finding in short_)
        {
            var advice = Assert.Single(finding.Advice);
            Assert.Equal("/robot/common/jointPreload", advice.Pointer);
            var then = Of(WithPreload(MotionCells.Planar, advice.To)).Single(f => f.Id == finding.Id);
            Assert.Equal(Verdict.Holds, then.Verdict);
            Assert.Equal(advice.MarginThen, then.Margin, 1e-12);
        }
    }

    [Fact]
    public void A_preload_not_stated_is_asked_for_where_rods_are_pulled_and_not_before_the_depth_of_building()
    {
        var silent = WithPreload(MotionCells.Planar, null);
        Assert.All(Of(silent), f => Assert.Equal($"/robot/chains/{f.Subject.Case}/jointPreload", Assert.Single(Assert.IsType<Unjudged>(f).Missing)));
        Assert.NotEmpty(Of(silent));
        Assert.Empty(Of(silent with { Depth = Depth.Quote }));
        Assert.All(Of(WithPreload(MotionCells.Planar, 0)), f => Assert.Equal(MotionReasons.NotPositive, Assert.IsType<Unjudged>(f).Detail));
    }

    /// <summary>Standing on its rods the platform only pushes while it moves slowly, and no spring is asked for.</summary>
    [Fact]
    public void Rods_that_are_only_pushed_need_no_spring()
    {
        var standing = WithPreload(MotionCells.Planar, null).With(s => s with { PathSpeed = 0.1, PathAcceleration = 0.5, PathJerk = 5 });
        standing = standing with { Mount = standing.Mount with { TiltX = Math.PI, Z = 0.2 } };
        Assert.True(CycleTiming.Controller(MotionCells.Input(standing, "across"), 0).Found);
        Assert.Empty(Of(standing));
    }

    private static Cell WithPreload(Cell cell, double? newtons) => cell with
    {
        Depth = Depth.Build,
        Robot = cell.Robot with { Common = cell.Robot.Common with { JointPreload = newtons, RodSpacing = cell.Robot.Common.RodSpacing ?? 0.06 } },
    };
}

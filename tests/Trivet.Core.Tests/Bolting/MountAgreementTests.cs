using System.Text;
using Trivet.Bolting;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Motion;
using Xunit;

namespace Trivet.Core.Tests.Bolting;

/// <summary>Frame, mount and lift of one robot. Expected values by hand: geometry, and F = m·g with g = 9.80665 m/s² (ISO 80000-3).</summary>
public sealed class MountAgreementTests
{
    private static readonly Cell Lids = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;

    private static Judged Of(Cell cell, Rule rule) => Assert.IsType<Judged>(Assert.Single(JointStage.Of(cell, TimedCycle.Of(cell), new()).Findings, f => f.Rule == rule));

    [Fact]
    public void The_sample_tells_of_one_robot()
    {
        foreach (var rule in new[] { JointRules.MountPoints, JointRules.MountWeight, JointRules.LiftedMass }) Assert.Equal(Verdict.Holds, Of(Lids, rule).Verdict);
    }

    [Fact]
    public void A_pattern_of_another_robot_is_as_far_off_as_its_circle_is_larger()
    {
        var wide = Lids with { Interfaces = Lids.Interfaces.SetItem("robot-feet", Lids.Interfaces["robot-feet"] with { Circle = 0.620 }) };
        var found = Of(wide, JointRules.MountPoints);
        Assert.Equal(Verdict.FallsShort, found.Verdict);
        Assert.Equal(0.310 - 0.2 * Math.Sqrt(2), found.Value, 1e-6);
        // The base turned or moved with its frame keeps its screws: what counts is the base frame.
        var turned = Lids with { Mount = Lids.Mount with { Yaw = Math.PI / 2 } };
        Assert.Equal(Of(Lids, JointRules.MountPoints).Value, Of(turned, JointRules.MountPoints).Value, 1e-9);
        Assert.Equal(0.05, Of(Lids with { Mount = Lids.Mount with { X = 0.05 } }, JointRules.MountPoints).Value, 1e-5);
    }

    [Fact]
    public void A_weight_of_another_robot_or_none_falls_short()
    {
        Joint mount = Lids.Joints["mount"];
        Cell With(double? force) => Lids with { Joints = Lids.Joints.SetItem("mount", mount with { ForceZ = force }) };
        Assert.Equal(320 / (16 * 9.80665) - 1, Of(With(-320), JointRules.MountWeight).Value, 1e-12);
        Assert.Equal(Verdict.FallsShort, Of(With(-320), JointRules.MountWeight).Verdict);
        Assert.Equal(1, Of(With(null), JointRules.MountWeight).Value, 1e-12);
        var heavy = Lids with { Handling = Lids.Handling with { Hanging = Lids.Handling.Hanging with { Mass = 38 } } };
        Assert.Equal(Verdict.FallsShort, Of(heavy, JointRules.LiftedMass).Verdict);
    }

    [Fact]
    public void Where_one_side_is_not_stated_nothing_is_compared_and_the_field_is_named()
    {
        var silent = Lids with { Frame = Lids.Frame with { RobotMass = null } };
        var plan = JointStage.Of(silent, TimedCycle.Of(silent), new());
        Assert.DoesNotContain(plan.Findings, f => f.Rule == JointRules.MountWeight || f.Rule == JointRules.LiftedMass);
        Assert.Contains("/frame/robotMass", Assert.Single(plan.Coverage, c => c.Rule == JointRules.MountWeight).Reason.Fields);
    }
}

using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Reach;

/// <summary>The reach within further limits.</summary>
public static class ReachLimitsTests
{
    /// <summary>By counting: a place is in when it closes within travel and swing and condition, each computed at the pose, are within their limits.</summary>
    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public static void A_place_is_reached_where_every_limit_asked_for_is_kept(bool swing, bool condition)
    {
        var cell = Tight;
        var reading = new Reading();
        var limits = ReachLimits.Read(cell, swing, condition, reading);
        Assert.True(reading.Complete);
        Assert.Equal((swing, condition), (limits.Swing, limits.Condition));
        var robot = RobotInputs.Geometry(cell.Robot, new()).Robot!;
        var joints = RobotInputs.Joints(cell.Robot, new());
        double most = cell.Robot.Dexterity.LargestCondition!.Value;
        ReachableSet all = new(robot), within = new(robot, limits);
        int kept = 0, left = 0;
        for (int i = 0; i < 20_000; i++)
        {
            // A lattice that does not repeat (the fractional parts of multiples of irrational numbers).
            Vec3 p = all.Box.Low + new Vec3(Part(i, 0.7548776662), Part(i, 0.5698402910), Part(i, 0.4196433777)).Times(all.Box.Size);
            if (!all.Contains(p))
            {
                Assert.False(within.Contains(p));
                continue;
            }
            var pose = PoseResult.At(robot, p);
            bool holds = (!condition || pose.Condition <= most) && (!swing || Enumerable.Range(0, 3).All(k => Swing.Of(robot.Chains[k], joints[k], p, pose.Q[k]) <= joints[k].Limit));
            Assert.Equal(holds, within.Contains(p));
            if (holds) kept++;
            else left++;
        }
        Assert.True(kept > 100 && left > 100, $"{kept} kept, {left} left");

        static double Part(int i, double of) => i * of - Math.Floor(i * of);
    }

    [Fact]
    public static void A_solid_within_limits_is_smaller_kept_by_its_corners_and_called_sampled()
    {
        var robot = RobotInputs.Geometry(Tight.Robot, new()).Robot!;
        ReachableSet all = new(robot), within = new(robot, ReachLimits.Read(Tight, true, true, new()));
        var box = LargestFit.Box(within, stop: TestContext.Current.CancellationToken)!;
        Assert.Equal(Assurance.Sampled, box.Assurance);
        var cylinder = LargestFit.Cylinder(within, stop: TestContext.Current.CancellationToken)!;
        Assert.True(cylinder.Volume < LargestFit.Cylinder(all, stop: TestContext.Current.CancellationToken)!.Volume);
        for (int corner = 0; corner < 8; corner++)
        {
            Vec3 share = new(corner & 1, (corner >> 1) & 1, corner >> 2);
            Assert.True(within.Contains(box.Low + (0.001 * Vec3.UnitX + 0.001 * Vec3.UnitY + 0.001 * Vec3.UnitZ + 0.998 * share).Times(box.Size)));
        }
    }

    [Fact]
    public static void What_is_not_stated_is_missing_and_does_not_count()
    {
        var silent = ReachCells.Rail with { Robot = ReachCells.Rail.Robot with { Dexterity = new(), Common = ReachCells.Rail.Robot.Common with { SwingLimit = null } } };
        var reading = new Reading();
        Assert.False(ReachLimits.Read(silent, true, true, reading).Any);
        Assert.Equal(["/robot/common/swingLimit", "/robot/dexterity/largestCondition"], reading.MissingFields);
    }

    private static readonly Cell Tight = ReachCells.Rail with
    {
        Robot = ReachCells.Rail.Robot with
        {
            Common = ReachCells.Rail.Robot.Common with { SwingLimit = Math.PI / 12 },
            Dexterity = ReachCells.Rail.Robot.Dexterity with { LargestCondition = 3 },
        },
    };

    private static Vec3 Times(this Vec3 a, Vec3 b) => new(a.X * b.X, a.Y * b.Y, a.Z * b.Z);
}

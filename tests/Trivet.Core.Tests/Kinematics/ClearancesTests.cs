using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Kinematics;

public class ClearancesTests
{
    private static readonly ImmutableArray<RodPair> Rods = [new(0.08, 0.01), new(0.08, 0.01), new(0.08, 0.01)];

    /// <summary>Second opinion: points along every rod, every pair measured.</summary>
    [Fact]
    public void Rod_distances_agree_with_sampled_points() => RandomRobots.Rails.Holds(20, c =>
    {
        var pose = PoseResult.At(c.Robot, c.P);
        const int n = 200;
        var points = new List<(int Chain, Vec3 Point)>();
        for (int i = 0; i < 3; i++)
            foreach (int side in new[] { -1, 1 })
            {
                var chain = c.Robot.Chains[i];
                for (int k = 0; k <= n; k++)
                    points.Add((i, chain.Joint(pose.Q[i]) + (double)k / n * chain.RodVector(pose.P, pose.Q[i]) + side * 0.04 * chain.Side));
            }
        double sampled = double.PositiveInfinity;
        foreach (var a in points)
            foreach (var b in points)
                if (a.Chain < b.Chain) sampled = Math.Min(sampled, (a.Point - b.Point).Norm - 0.01);
        double exact = Clearances.RodToRod(c.Robot, Rods, pose);
        // A point every 3 mm along both rods: the nearest pair is off by half of that on each, at most.
        Assert.InRange(sampled - exact, -1e-12, 0.0035);
    });

    [Fact]
    public void Rods_that_cross_have_a_negative_distance()
    {
        var robot = Robots.Rail(0.35, 0.05, 0.5, azimuths: [0, 120, 240]);
        var wide = Rods.Select(r => r with { Spacing = 0.3 }).ToImmutableArray();
        Assert.True(Clearances.RodToRod(robot, Rods, PoseResult.At(robot, new(0, 0, -0.6))) > 0);
        Assert.True(Clearances.RodToRod(robot, wide, PoseResult.At(robot, new(0, 0, -0.6))) < 0.1);
    }

    [Fact]
    public void A_pose_out_of_reach_has_no_distance()
    {
        var robot = Robots.Rail(0.35, 0.05, 0.5);
        Assert.True(double.IsNaN(Clearances.RodToRod(robot, Rods, PoseResult.At(robot, new(1, 0, -0.6)))));
    }

    [Fact]
    public void Seat_swing_is_the_angle_to_the_seat_axis()
    {
        // 3-4-5 triangle: in the centre the rod leans 0.3 inward over 0.4 down, atan2(4, 3) below the horizontal.
        var robot = Robots.Rail(0.35, 0.05, 0.5);
        var pose = PoseResult.At(robot, new(0, 0, -0.6));
        double lean = Math.Atan2(4, 3);
        Assert.Equal(0, Swing.Of(robot.Chains[0], new(JointKind.Seat, 0.5, lean), pose.P, pose.Q.X), 1e-12);
        Assert.Equal(0.2, Swing.Of(robot.Chains[0], new(JointKind.Seat, 0.5, lean - 0.2), pose.P, pose.Q.X), 1e-12);
        Assert.Equal(0, Swing.Of(robot.Chains[0], new(JointKind.CrossBar, 0.5, 0), pose.P, pose.Q.X), 1e-12);
    }

    [Fact]
    public void The_seat_at_an_elbow_turns_with_the_arm()
    {
        // Arms level: both seats are parallel. Arm turned by q: the elbow's seat has turned by q away from the platform's.
        var robot = Robots.Crank(0.25, 0.05, 0.25, 0.75);
        Assert.Equal(0, robot.Chains[0].SeatSwing(Math.Atan2(600, 450), new(0, 0, -0.6), 0), 1e-12);
        var pose = PoseResult.At(robot, new(0, 0, -0.7));
        var rod = pose.Rods.Row0.Unit();
        double atPlatform = Math.Asin(-rod.Z) - 0.9, atElbow = Math.Asin(-rod.Z) - 0.9 + pose.Q.X;
        Assert.Equal(Math.Max(Math.Abs(atPlatform), Math.Abs(atElbow)), robot.Chains[0].SeatSwing(0.9, pose.P, pose.Q.X), 1e-12);
    }
}

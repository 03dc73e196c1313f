using MathNet.Numerics.LinearAlgebra;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Kinematics;

/// <summary>There and back, derivatives against differences, singular values against Math.NET Numerics; robots without any symmetry.</summary>
public class PosePropertiesTests
{
    [Fact]
    public void Forward_pose_undoes_the_inverse() => RandomRobots.All.Holds(2000, c =>
    {
        var q = c.Robot.Inverse(c.P);
        Assert.True(q.IsFinite);
        Assert.Equal(0, (ForwardPose.Of(c.Robot, q).Working - c.P).Norm, 1e-12);
    });

    [Fact]
    public void Both_forward_roots_keep_every_rod_at_its_length() => RandomRobots.All.Holds(2000, c =>
    {
        var q = c.Robot.Inverse(c.P);
        var pose = ForwardPose.Of(c.Robot, q);
        for (int i = 0; i < c.Robot.Chains.Length; i++)
        {
            Assert.Equal(c.Robot.Chains[i].Rod, c.Robot.Chains[i].RodVector(pose.Working, q[i]).Norm, 1e-13);
            Assert.Equal(c.Robot.Chains[i].Rod, c.Robot.Chains[i].RodVector(pose.Mirror, q[i]).Norm, 1e-13);
        }
    });

    [Fact]
    public void Both_inverse_solutions_of_a_chain_keep_its_rod_at_its_length() => RandomRobots.All.Holds(1000, c =>
    {
        foreach (var chain in c.Robot.Chains)
        {
            Assert.Equal(chain.Rod, chain.RodVector(c.P, chain.Inverse(c.P)).Norm, 1e-13);
            Assert.Equal(chain.Rod, chain.RodVector(c.P, chain.Inverse(c.P, farSide: true)).Norm, 1e-13);
        }
    });

    [Fact]
    public void Rates_agree_with_central_differences_of_the_inverse() => RandomRobots.All.Holds(1000, c =>
    {
        const double h = 1e-5;
        var pose = PoseResult.At(c.Robot, c.P);
        for (int axis = 0; axis < 3; axis += c.Robot.Planar ? 2 : 1)
        {
            var step = h * (axis == 0 ? Vec3.UnitX : axis == 1 ? Vec3.UnitY : Vec3.UnitZ);
            var difference = (c.Robot.Inverse(c.P + step) - c.Robot.Inverse(c.P - step)) / (2 * h);
            Assert.Equal(0, (difference - pose.DqDp.Column(axis)).Norm, 1e-6 * (1 + difference.Norm));
        }
    });

    [Fact]
    public void Velocities_agree_with_central_differences_of_the_forward_pose() => RandomRobots.All.Holds(1000, c =>
    {
        const double h = 1e-5;
        var pose = PoseResult.At(c.Robot, c.P);
        for (int i = 0; i < c.Robot.Chains.Length; i++)
        {
            var step = h * (i == 0 ? Vec3.UnitX : i == 1 ? Vec3.UnitY : Vec3.UnitZ);
            var difference = (ForwardPose.Of(c.Robot, pose.Q + step).Working - ForwardPose.Of(c.Robot, pose.Q - step).Working) / (2 * h);
            Assert.Equal(0, (difference - pose.DpDq.Column(i)).Norm, 1e-6 * (1 + difference.Norm));
        }
    });

    [Fact]
    public void Condition_and_gains_agree_with_a_library() => RandomRobots.All.Holds(1000, c =>
    {
        var pose = PoseResult.At(c.Robot, c.P);
        int n = c.Robot.Chains.Length;
        int[] axes = c.Robot.Planar ? [0, 2] : [0, 1, 2];
        var j = Matrix<double>.Build.Dense(n, n, (row, column) => pose.DpDq.Column(column)[axes[row]]);
        var values = j.Svd(computeVectors: false).S;
        for (int i = 0; i < n; i++) Assert.Equal(values[i], pose.Gains[i], 1e-12 * values[0]);
        Assert.Equal(values[0] / values[n - 1], pose.Condition, 1e-11 * pose.Condition);
        Assert.Equal(1 / pose.Condition, pose.Dexterity, 1e-15);
    });

    [Fact]
    public void Measures_of_singularity_lie_between_zero_and_one_in_the_working_mode() => RandomRobots.All.Holds(1000, c =>
    {
        var pose = PoseResult.At(c.Robot, c.P);
        Assert.InRange(pose.Parallel, 0, 1);
        for (int i = 0; i < c.Robot.Chains.Length; i++) Assert.InRange(pose.Serial[i], 0, 1);
    });

    [Fact]
    public void The_serial_measure_vanishes_where_a_rod_only_just_reaches()
    {
        var robot = Robots.Rail(0.35, 0.05, 0.5);
        // Chain a points along −y: at y = +0.2 its rod lies level, 0.3 + 0.2 = its length.
        Assert.True(PoseResult.At(robot, new(0, 0.2 - 1e-9, -0.6)).Serial.X < 1e-3);
        Assert.True(double.IsNaN(PoseResult.At(robot, new(0, 0.2 + 1e-9, -0.6)).Condition));
    }

    [Fact]
    public void The_parallel_measure_vanishes_where_the_forward_roots_meet()
    {
        var robot = Robots.Rail(0.35, 0.05, 0.3 + 1e-10);
        var pose = PoseResult.At(robot, new(0, 0, -0.6));
        Assert.True(pose.Parallel < 1e-3);
        Assert.True(ForwardPose.Of(robot, pose.Q).HeightSquared is >= 0 and < 1e-8);
    }

    [Fact]
    public void Carriages_too_far_apart_in_height_can_not_be_joined()
    {
        var robot = Robots.Rail(0.35, 0.05, 0.5);
        Assert.Equal(Closure.Closes, ForwardPose.Of(robot, new(0.1, 0.1, 0.1)).Closure);
        var apart = ForwardPose.Of(robot, new(0.1, 0.1, 1.0));
        Assert.Equal(Closure.Apart, apart.Closure);
        Assert.True(apart.HeightSquared < 0 && !apart.Working.IsFinite);
        Assert.Equal(Closure.Unknown, ForwardPose.Of(robot, new(0.1, double.NaN, 0.1)).Closure);
    }

    [Fact]
    public void Centres_on_one_point_do_not_determine_the_platform() =>
        Assert.Equal(Closure.InLine, ForwardPose.Of(Robots.Rail(0.05, 0.05, 0.5), Vec3.Zero).Closure);

    [Fact]
    public void A_drive_step_moves_the_platform_by_its_column() => RandomRobots.All.Holds(300, c =>
    {
        var pose = PoseResult.At(c.Robot, c.P);
        double[] steps = [2e-6, 1e-6, 3e-6];
        double worst = 0;
        for (int i = 0; i < c.Robot.Chains.Length; i++)
        {
            var step = steps[i] * (i == 0 ? Vec3.UnitX : i == 1 ? Vec3.UnitY : Vec3.UnitZ);
            worst = Math.Max(worst, (ForwardPose.Of(c.Robot, pose.Q + step).Working - pose.P).Norm);
        }
        Assert.Equal(worst, pose.StepMovement(steps.AsSpan(0, c.Robot.Chains.Length)), 1e-3 * worst);
    });
}

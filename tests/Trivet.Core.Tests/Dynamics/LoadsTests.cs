using MathNet.Numerics.LinearAlgebra;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Dynamics;

/// <summary>
/// Rod forces against a general six by six solution by Math.NET Numerics; the reaction at the mount, which comes from momentum, against the
/// forces that rods and gravity put on every carriage and arm; and small cases by hand.
/// </summary>
public class LoadsTests
{
    [Fact]
    public void Six_rod_forces_balance_the_platform_as_a_library_solves_it() => RandomDynamics.Spatial.Holds(500, c =>
    {
        var d = c.Dynamics;
        var loads = Loads.Of(d, c.State);
        var (force, moment) = PlatformNeeds(d, c.State);
        var wrenches = Matrix<double>.Build.Dense(6, 6);
        var needed = Vector<double>.Build.Dense(6);
        double[] found = new double[6], at = new double[6];
        var pose = PoseResult.At(d.Robot, c.State.P);
        var demand = d.Demand(c.State);
        for (int i = 0; i < 3; i++)
        {
            var (chain, body) = (d.Robot.Chains[i], d.Chains[i]);
            var along = Row(pose.Rods, i).Unit();
            var carried = body.RodMass * (JointAcceleration(d, demand, pose, i) / 6 + c.State.A / 3 - d.Gravity_B / 2);
            foreach (int side in new[] { 1, -1 })
            {
                int k = 2 * i + (side > 0 ? 0 : 1);
                var arm = chain.B + side * body.RodSpacing / 2 * chain.Side;
                // Tension pulls the platform towards the carriage; across the rod it carries the rod's own inertia and weight.
                var across = carried - along.Dot(carried) * along;
                Vec3 pull = -along, turn = arm.Cross(pull);
                wrenches.SetColumn(k, [pull.X, pull.Y, pull.Z, turn.X, turn.Y, turn.Z]);
                force += across;
                moment += arm.Cross(across);
                found[k] = side > 0 ? loads.Rods(i).Plus.AtPlatform : loads.Rods(i).Minus.AtPlatform;
            }
        }
        needed.SetValues([force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z]);
        var solved = wrenches.Solve(needed);
        double size = 1 + solved.AbsoluteMaximum();
        for (int k = 0; k < 6; k++) Assert.Equal(solved[k], found[k], 1e-9 * size);
    });

    [Fact]
    public void Reaction_from_momentum_is_the_sum_of_what_rods_and_drives_put_on_the_frame() => RandomDynamics.Spatial.Holds(500, c =>
    {
        var d = c.Dynamics;
        var demand = d.Demand(c.State);
        var loads = Loads.Of(d, c.State);
        var pose = PoseResult.At(d.Robot, c.State.P);
        Vec3 force = Vec3.Zero, moment = Vec3.Zero;
        for (int i = 0; i < 3; i++)
        {
            var (chain, body) = (d.Robot.Chains[i], d.Chains[i]);
            var acceleration = JointAcceleration(d, demand, pose, i);
            Vec3 joint = chain.Joint(pose.Q[i]), along = Row(pose.Rods, i).Unit(), path = chain.JointRate(pose.Q[i]);
            // Force of the joint on each rod: what carries its mass across, and the tension at its end along it.
            var carried = body.RodMass * (acceleration / 3 + c.State.A / 6 - d.Gravity_B / 2);
            Vec3 across = carried - along.Dot(carried) * along, onRods = Vec3.Zero, momentOnRods = Vec3.Zero;
            foreach (int side in new[] { 1, -1 })
            {
                double tension = side > 0 ? loads.Rods(i).Plus.AtJoint : loads.Rods(i).Minus.AtJoint;
                var one = across - tension * along;
                onRods += one;
                momentOnRods += (joint + side * body.RodSpacing / 2 * chain.Side).Cross(one);
            }

            // The frame carries the moving part, its weight, and the rods.
            double reading = demand.Acceleration[i];
            if (chain.Family == RobotFamily.RailDelta)
            {
                var mirrored = chain.Foot + (chain.TravelFrom + chain.TravelTo + chain.HomeOffset - pose.Q[i]) * chain.E;
                Vec3 carriage = body.Carriage * (acceleration - d.Gravity_B), counterweight = body.Counterweight * (-acceleration - d.Gravity_B);
                force += onRods + carriage + counterweight;
                moment += momentOnRods + joint.Cross(carriage) + mirrored.Cross(counterweight);
                // Along the rail the frame holds by the drive alone. It moves the counterweight too, the other way.
                double drive = (onRods + carriage - counterweight).Dot(path) + body.RotorInertia * reading + body.FrictionAt(demand.Speed[i]);
                Assert.Equal(drive, demand.Force[i], 1e-9 * (1 + Math.Abs(drive)));
            }
            else
            {
                Vec3 centre = body.ArmCentre / chain.Arm * (joint - chain.Foot), arm = body.ArmMass * (body.ArmCentre / chain.Arm * acceleration - d.Gravity_B);
                var axis = chain.E.Cross(chain.F);
                double own = body.ArmInertia - body.ArmMass * body.ArmCentre * body.ArmCentre;
                Vec3 momentArm = (chain.Foot + centre).Cross(arm) + own * reading * axis;
                force += onRods + arm;
                moment += momentOnRods + momentArm;
                // About the shoulder's axis the frame holds by the drive alone.
                double drive = (momentOnRods + momentArm - chain.Foot.Cross(onRods + arm)).Dot(axis)
                    + body.RotorInertia * reading + body.FrictionAt(demand.Speed[i]);
                Assert.Equal(drive, demand.Force[i], 1e-9 * (1 + Math.Abs(drive)));
            }
        }
        Assert.Equal(0, (loads.Force_B + force).Norm, 1e-9 * (1 + force.Norm));
        Assert.Equal(0, (loads.Moment_B + moment).Norm, 1e-9 * (1 + moment.Norm));
    });

    [Fact]
    public void At_rest_the_mount_carries_the_weight() => RandomDynamics.All.Holds(200, c =>
    {
        var d = c.Dynamics;
        double mass = d.PlatformMass + d.Chains.Sum(b => b.Carriage + b.Counterweight + b.ArmMass + b.Pair);
        var loads = Loads.Of(d, new(c.State.P, Vec3.Zero, Vec3.Zero, new(c.State.Turn.Angle)));
        Assert.Equal(0, (loads.Force_B - mass * d.Gravity_B).Norm, 1e-10);
    });

    /// <summary>By hand: a symmetrical robot at its middle, weightless rods. Each rod has a sixth of the weight over the cosine of its
    /// lean; the platform hangs below its carriages, so it is tension.</summary>
    [Fact]
    public void A_hanging_weight_pulls_evenly_on_the_rods_of_a_symmetrical_robot()
    {
        // Rod of 0.5 m over a radius difference of 0.3 m: its upright part is 0.4 m.
        var d = Symmetrical(new(2, Vec3.Zero));
        var loads = Loads.Of(d, new(new(0, 0, -0.6), Vec3.Zero, Vec3.Zero));
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(2 * 9.80665 / 6 * 0.5 / 0.4, loads.Rods(i).Plus.AtPlatform, 1e-12);
            Assert.Equal(2 * 9.80665 / 6 * 0.5 / 0.4, loads.Rods(i).Minus.AtJoint, 1e-12);
        }
        Assert.Equal(2 * 9.80665 / 6 * 0.5 / 0.4, loads.One.Most, 1e-12);
    }

    /// <summary>By hand: a torque about the upright axis is met by the differences D of the pairs; the level part of D/2, on either side at half
    /// the spacing from the middle, makes each pair's couple.</summary>
    [Fact]
    public void A_turning_axis_loads_the_rods_of_a_pair_differently()
    {
        var d = Symmetrical(new(0, Vec3.Zero, new(0, Vec3.Zero, 0.01, 0)));
        var loads = Loads.Of(d, new(new(0, 0, -0.6), Vec3.Zero, Vec3.Zero, new(0, 0, 50)));
        // 0.01 kg·m² times 50 rad/s² is 0.5 N·m = 3·D·0.03·0.6, with 0.6 = 0.3/0.5 the level part of a rod; no force, so the rods of a pair are opposite.
        double half = 0.5 / (3 * 0.03 * 0.6) / 2;
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(half, Math.Abs(loads.Rods(i).Plus.AtPlatform), 1e-9);
            Assert.Equal(-loads.Rods(i).Plus.AtPlatform, loads.Rods(i).Minus.AtPlatform, 1e-9);
        }
        // Turned up counter-clockwise, the tool pushes the mount clockwise.
        Assert.Equal(-0.5, loads.Moment_B.Z, 1e-12);
    }

    [Fact]
    public void Two_chains_share_a_weight_as_a_bracket_of_two_bars()
    {
        var robot = Robots.Rail(0.35, 0.05, 0.5, azimuths: [0, 180]);
        var d = new RobotDynamics(robot, [Weightless, Weightless], new(2, Vec3.Zero), -9.80665 * Vec3.UnitZ);
        var loads = Loads.Of(d, new(new(0, 0, -0.6), Vec3.Zero, Vec3.Zero));
        Assert.Equal(2 * 9.80665 / 4 * 0.5 / 0.4, loads.One.Plus.AtPlatform, 1e-12);
        Assert.Equal(2 * 9.80665 / 4 * 0.5 / 0.4, loads.Two.Minus.AtPlatform, 1e-12);
        // A weight 20 mm aside, out of the plane, moves 2·g·0.02 from one rod of each pair to the other.
        var aside = Loads.Of(d.With(new PlatformBodies(2, new(0, 0.02, 0))), new(new(0, 0, -0.6), Vec3.Zero, Vec3.Zero));
        Assert.Equal(loads.One.Plus.AtPlatform + loads.One.Minus.AtPlatform, aside.One.Plus.AtPlatform + aside.One.Minus.AtPlatform, 1e-12);
        // Side of the first chain is +y: its pair's couple 0.06·D·0.8/2 with the second's equal one is 2·g·0.02.
        Assert.Equal(2 * 9.80665 * 0.02 / (2 * 0.03 * 0.8), aside.One.Plus.AtPlatform - aside.One.Minus.AtPlatform, 1e-12);
    }

    [Fact]
    public void Extremes_and_preload_over_a_motion()
    {
        var d = Symmetrical(new(2, Vec3.Zero));
        MotionState rest = new(new(0, 0, -0.6), Vec3.Zero, Vec3.Zero);
        double hanging = 2 * 9.80665 / 6 * 0.5 / 0.4;
        var series = LoadSeries.Along(d, [0, 0.1, 0.2], [rest, rest with { A = new(0, 0, 9.80665) }, rest with { A = new(0, 0, -2 * 9.80665) }]);
        Assert.Equal((3, 3), (series.Reaction.Force_B.Length, series.Rods.Length));
        Assert.All(series.Rods, r =>
        {
            Assert.Equal(2 * hanging, r.PreloadNeeded, 1e-12);
            Assert.Equal((1, 2), (r.TensionAt, r.CompressionAt));
            Assert.Equal(hanging, r.Compression, 1e-12);
        });
        Assert.Equal(-2 * 2 * 9.80665, series.Reaction.Force_B[1].Z, 1e-12);
        var lost = LoadSeries.Along(d, [0, 1, 2], [rest, rest with { P = new(3, 0, 0) }, rest]);
        Assert.All(lost.Rods, r => Assert.True(double.IsNaN(r.PreloadNeeded)));
    }

    private static readonly ChainBodies Weightless = ChainBodies.Rail(0, 0, 0.06);

    private static RobotDynamics Symmetrical(PlatformBodies platform) =>
        new(Robots.Rail(0.35, 0.05, 0.5), [Weightless, Weightless, Weightless], platform, -9.80665 * Vec3.UnitZ);

    private static Vec3 Row(Mat3 m, int i) => i == 0 ? m.Row0 : i == 1 ? m.Row1 : m.Row2;

    private static Vec3 JointAcceleration(RobotDynamics d, in DriveDemand demand, in PoseResult pose, int i)
    {
        const double h = 1e-4;
        var chain = d.Robot.Chains[i];
        var bend = (chain.JointRate(pose.Q[i] + h) - chain.JointRate(pose.Q[i] - h)) / (2 * h);
        if (chain.Family == RobotFamily.CrankDelta) bend = -(chain.Joint(pose.Q[i]) - chain.Foot);
        return demand.Acceleration[i] * chain.JointRate(pose.Q[i]) + demand.Speed[i] * demand.Speed[i] * bend;
    }

    /// <summary>Newton and Euler for the platform with what it carries, about its reference point.</summary>
    private static (Vec3 Force, Vec3 Moment) PlatformNeeds(RobotDynamics d, MotionState s)
    {
        var (still, turning) = (d.Platform, d.Platform.Turning);
        var centre = Mat3.RotationZ(s.Turn.Angle) * turning.Centre;
        Vec3 spin = s.Turn.Speed * Vec3.UnitZ, faster = s.Turn.Acceleration * Vec3.UnitZ;
        Vec3 one = still.Mass * (s.A - d.Gravity_B);
        Vec3 two = turning.Mass * (s.A + faster.Cross(centre) + spin.Cross(spin.Cross(centre)) - d.Gravity_B);
        double own = turning.Inertia - turning.Mass * (centre with { Z = 0 }).NormSquared;
        return (one + two, still.Centre.Cross(one) + centre.Cross(two) + own * faster);
    }
}

using CsCheck;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using static Trivet.Testing.FixedCases;

namespace Trivet.Core.Tests.Dynamics;

/// <summary>Random robots of which no two chains are alike, with masses, friction, a tilted mount and an eccentric part on a rotary axis, in motion.</summary>
internal static class RandomDynamics
{
    public static readonly Gen<(RobotDynamics Dynamics, MotionState State)> Spatial = Of(Gen.OneOf(RandomRobots.Rails, RandomRobots.Cranks));
    public static readonly Gen<(RobotDynamics Dynamics, MotionState State)> Rails = Of(RandomRobots.Rails);
    public static readonly Gen<(RobotDynamics Dynamics, MotionState State)> Cranks = Of(RandomRobots.Cranks);
    public static readonly Gen<(RobotDynamics Dynamics, MotionState State)> Planar = Of(Gen.OneOf(RandomRobots.PlanarRails, RandomRobots.PlanarCranks));
    public static readonly Gen<(RobotDynamics Dynamics, MotionState State)> All = Of(RandomRobots.All);

    private static Gen<(RobotDynamics Dynamics, MotionState State)> Of(Gen<(DeltaRobot Robot, Vec3 P)> robots) =>
        Gen.Select(robots, Between(-1, 1).Array[60], (robot, n) => Made(robot.Robot, robot.P, n));

    private static (RobotDynamics, MotionState) Made(DeltaRobot robot, Vec3 p, double[] n)
    {
        int next = 0;
        double Near(double middle, double spread) => middle + spread * n[next++];
        Vec3 Any(double size) => new(Near(0, size), Near(0, size), Near(0, size));
        bool rail = robot.Family == RobotFamily.RailDelta;
        var chains = robot.Chains.Select(_ =>
        {
            var bodies = rail
                ? ChainBodies.Rail(Near(0.8, 0.3), Near(0.08, 0.04), Near(0.07, 0.02)) with { Counterweight = Near(0.3, 0.2), RotorInertia = Near(0.5, 0.3) }
                : ChainBodies.Crank(Near(0.9, 0.3), Near(0.08, 0.1), Near(0.02, 0.01), Near(0.08, 0.04), Near(0.07, 0.02)) with { RotorInertia = Near(0.02, 0.01) };
            return bodies with { Viscous = Near(2, 1), Coulomb = Near(3, 1) };
        }).ToArray();
        // Inertia about the axis is at least that of the mass at its centre.
        TurningBody turning = new(Near(0.4, 0.2), Any(0.03), 0, 0.02);
        turning = turning with { Inertia = turning.Mass * turning.Centre.NormSquared + Near(2e-4, 1e-4) };
        var gravity = RobotDynamics.StandardGravity * (Mat3.RotationX(Near(0, 0.4)) * (Mat3.RotationY(Near(0, 0.4)) * -Vec3.UnitZ));
        var dynamics = new RobotDynamics(robot, [.. chains], new(Near(1.2, 0.5), new(Near(0, 0.01), Near(0, 0.01), Near(-0.03, 0.02)), turning), gravity);
        Vec3 v = Any(1.5), a = Any(30);
        if (robot.Planar) (v, a) = (v with { Y = 0 }, a with { Y = 0 });
        return (dynamics, new(p, v, a, new(Near(0, 3), Near(0, 8), Near(0, 60))));
    }
}

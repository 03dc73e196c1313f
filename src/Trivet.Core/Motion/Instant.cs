using System.Collections.Immutable;
using Trivet.Dynamics;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Motion;

/// <summary>One instant of a cycle. Axes in the order of the chains; with two chains the third component is zero.</summary>
/// <param name="T">Seconds from the start of the move or of the cycle.</param>
/// <param name="S">Along the path, metres; not a number where the law does not follow the path.</param>
/// <param name="State">Platform and rotary axis, base frame.</param>
/// <param name="Q">Drive readings, and by time their speeds, accelerations and jerks.</param>
/// <param name="TurnJerk">Of the rotary axis, rad/s³.</param>
public readonly record struct Instant(
    double T, double S, MotionState State, Vec3 Q, Vec3 Speed, Vec3 Acceleration, Vec3 Jerk, double TurnJerk)
{
    /// <summary>On a path, while s moves so: m/s, m/s², m/s³.</summary>
    public static Instant On(PlatformPath path, double t, double s, double speed, double acceleration, double jerk)
    {
        var at = path.At(s);
        var p = at.Platform;
        double speed2 = speed * speed, speed3 = speed2 * speed, mixed = 3 * speed * acceleration;
        return Of(path.Robot, t, s,
            new(p.P, speed * p.D1, speed2 * p.D2 + acceleration * p.D1, speed3 * p.D3 + mixed * p.D2 + jerk * p.D1),
            new(at.Angle, speed * at.Angle1, speed2 * at.Angle2 + acceleration * at.Angle1), speed3 * at.Angle3 + mixed * at.Angle2 + jerk * at.Angle1);
    }

    /// <summary>The platform's place with its derivatives by time.</summary>
    public static Instant Of(DeltaRobot robot, double t, double s, in PathPoint byTime, Turn turn, double turnJerk)
    {
        AxisPoint a = ChainAlong.Of(robot.Chains[0], byTime), b = ChainAlong.Of(robot.Chains[1], byTime);
        var c = robot.Planar ? default : ChainAlong.Of(robot.Chains[2], byTime);
        return new(t, s, new(byTime.P, byTime.D1, byTime.D2, turn), new(a.Q, b.Q, c.Q), new(a.D1, b.D1, c.D1), new(a.D2, b.D2, c.D2), new(a.D3, b.D3, c.D3), turnJerk);
    }

    /// <summary>What drive readings mean for the platform, the other way round: place by the rods, velocity by ∂p/∂q, and the acceleration that remains of
    /// the drives' once what the velocity alone asks of them is taken off.</summary>
    public static Instant OfDrives(DeltaRobot robot, double t, Vec3 q, Vec3 speed, Vec3 acceleration, Vec3 jerk, Turn turn, double turnJerk)
    {
        var p = ForwardPose.Of(robot, q).Working;
        var pose = PoseResult.At(robot, p, q);
        var v = pose.DpDq * speed;
        var still = new PathPoint(p, v, Vec3.Zero, Vec3.Zero);
        var excess = new Vec3(ChainAlong.Of(robot.Chains[0], still).D2, ChainAlong.Of(robot.Chains[1], still).D2, robot.Planar ? 0 : ChainAlong.Of(robot.Chains[2], still).D2);
        return new(t, double.NaN, new(p, v, pose.DpDq * (acceleration - excess), turn), q, speed, acceleration, jerk, turnJerk);
    }

    public Instant After(double seconds) => this with { T = T + seconds };
}

/// <summary>A move, or a wait, over time.</summary>
/// <param name="Instants">In order of time; at least two. A jump is two at one time.</param>
public sealed record MoveTrace(ImmutableArray<Instant> Instants)
{
    public double Duration => Instants[^1].T;
}

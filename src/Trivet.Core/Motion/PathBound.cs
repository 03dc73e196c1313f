using System.Collections.Immutable;
using Trivet.Dynamics;
using Trivet.Numerics;
using Trivet.Numerics.Profiles;

namespace Trivet.Motion;

/// <summary>What holds back the fastest traversal, and over which part of its time.</summary>
public readonly record struct HeldBack(string Axis, LimitKind Kind, double Share);

/// <summary>The fastest traversal of a path.</summary>
/// <param name="HeldBack">The largest share first.</param>
public sealed record BoundMove(TimedMove Move, PathTraversal Traversal, ImmutableArray<HeldBack> HeldBack);

/// <summary>
/// The bound: the shortest time in which the path can be run at all, under the axes' speeds and accelerations, the force of each motor against its
/// speed, and the force in each rod. Jerk is free. Along the path a force is A·s̈ + B·ṡ² + C: the three follow from the forces at rest, under s̈ = 1 and under
/// ṡ = 1. Coulomb friction goes with the direction of the path, which never turns back; friction that grows with speed is taken off what the motor
/// brings, braking too, where it would help.
/// </summary>
public static class PathBound
{
    public const int UsualPoints = 300;

    /// <summary>Steps within the shortest piece of a path.</summary>
    private const int LeastParts = 12;

    /// <param name="dynamics">Null where masses are not described: forces then limit nothing.</param>
    /// <param name="points">Points along the path; durations converge with the square of their distance.</param>
    public static BoundMove Solve(
        PlatformPath path, ImmutableArray<AxisCapacity> axes, RobotDynamics? dynamics, double startSpeed, double endSpeed, int points = UsualPoints)
    {
        // Rods seldom limit and there are many of their ends: they join in once a solution without them asks too much.
        var found = Solve(path, axes, dynamics, startSpeed, endSpeed, points, rods: false);
        bool tooMuch = found.Move.Trace is { } trace && dynamics is not null
            && LimitUse.Of(trace.Instants, axes, dynamics).Any(u => u.Kind == LimitKind.RodForce && u.Use > 1);
        return tooMuch ? Solve(path, axes, dynamics, startSpeed, endSpeed, points, rods: true) : found;
    }

    private static BoundMove Solve(
        PlatformPath path, ImmutableArray<AxisCapacity> axes, RobotDynamics? dynamics, double startSpeed, double endSpeed, int points, bool rods)
    {
        double[] s = Grid(path, points);
        var limits = new PathLimits(s) { StartSpeed = startSpeed, EndSpeed = endSpeed };
        var named = new List<(string Axis, LimitKind Kind)>();
        var along = new PlatformPoint[s.Length];
        for (int i = 0; i < s.Length; i++) along[i] = path.At(s[i]);
        var forces = dynamics is null ? null : ForcesAlong.Of(dynamics.WithoutFriction(), along, rods);

        double[] d1 = new double[s.Length], d2 = new double[s.Length];
        for (int axis = 0; axis < axes.Length; axis++)
        {
            var capacity = axes[axis];
            bool rotary = capacity.Axis == AxisCapacity.Rotary;
            for (int i = 0; i < s.Length; i++)
            {
                var at = rotary ? new AxisPoint(0, along[i].Angle1, along[i].Angle2, 0) : path.Axis(axis, along[i].Platform);
                (d1[i], d2[i]) = (at.D1, at.D2);
            }
            if (double.IsFinite(capacity.Limits.Speed))
            {
                limits.Velocity(d1, capacity.Limits.Speed);
                named.Add((capacity.Axis, LimitKind.Speed));
            }
            if (double.IsFinite(capacity.Limits.Acceleration))
            {
                limits.Band(d1, d2, -capacity.Limits.Acceleration, capacity.Limits.Acceleration);
                named.Add((capacity.Axis, LimitKind.Acceleration));
            }
            if (forces is null) continue;
            if (capacity.Force is { } envelope)
            {
                var body = rotary ? default : dynamics!.Chains[axis];
                double coulomb = rotary ? dynamics!.Platform.Turning.Friction : body.Coulomb;
                var (a, b, c) = rotary ? forces.Rotary : forces.Drives[axis];
                double[] constant = [.. c.Select((f, i) => f + coulomb * Math.Sign(d1[i]))];
                limits.Effort(a, b, constant, d1, Lowered(envelope, body.Viscous));
                named.Add((capacity.Axis, LimitKind.Force));
            }
            if (!rods || rotary || !double.IsFinite(capacity.RodForce)) continue;
            foreach (var (a, b, c) in forces.Rods[axis])
            {
                limits.Band(a, b, c, -capacity.RodForce, capacity.RodForce);
                named.Add((capacity.Axis, LimitKind.RodForce));
            }
        }

        var found = new PathTiming().Solve(limits);
        return new(new(found.Found ? Trace(path, found) : null), found, found.Found ? Shares(found, named) : []);
    }

    /// <summary>Even steps within each piece of the path, so that its joints are points of the grid.</summary>
    private static double[] Grid(PlatformPath path, int points)
    {
        var grid = new List<double> { 0 };
        double step = path.Length / points, last = 0;
        foreach (double joint in path.Path.Joints.Append(path.Turn.Begin).Append(path.Turn.End).Where(j => j > 0 && j <= path.Length).Order())
        {
            if (joint - last < 1e-9) continue;
            int parts = Math.Max(LeastParts, (int)Math.Ceiling((joint - last) / step));
            for (int i = 1; i < parts; i++) grid.Add(last + (joint - last) * i / parts);
            grid.Add(joint);
            last = joint;
        }
        grid[^1] = path.Length;
        return [.. grid];
    }

    private static SpeedCurve Lowered(Drives.ForceEnvelope envelope, double viscous)
    {
        var points = ImmutableArray.CreateBuilder<(double, double)>();
        for (int i = 0; i < envelope.Speeds.Length; i++)
        {
            double speed = envelope.Speeds[i], left = envelope.Forces[i] - viscous * speed;
            if (left < 0)
            {
                double before = envelope.Speeds[i - 1], leftBefore = envelope.Forces[i - 1] - viscous * before;
                points.Add((before + (speed - before) * leftBefore / (leftBefore - left), 0));
                break;
            }
            points.Add((speed, left));
        }
        return new(points.ToImmutable());
    }

    private static MoveTrace Trace(PlatformPath path, PathTraversal found)
    {
        int steps = found.U.Length;
        var instants = ImmutableArray.CreateBuilder<Instant>(steps + 2);
        instants.Add(Instant.On(path, 0, 0, Math.Sqrt(found.X[0]), found.U[0], 0));
        for (int i = 0; i < steps; i++)
        {
            // Limits are kept in the middle of each step, where s̈ holds; ṡ² is linear in s there.
            double s = (found.S[i] + found.S[i + 1]) / 2;
            instants.Add(Instant.On(path, found.TimeAt(s), s, Math.Sqrt((found.X[i] + found.X[i + 1]) / 2), found.U[i], 0));
        }
        instants.Add(Instant.On(path, found.Duration, path.Length, Math.Sqrt(found.X[^1]), found.U[^1], 0));
        return new(instants.MoveToImmutable());
    }

    private static ImmutableArray<HeldBack> Shares(PathTraversal found, List<(string Axis, LimitKind Kind)> named) =>
        [.. Enumerable.Range(0, found.Limiting.Length).Where(i => found.Limiting[i] >= 0)
            .GroupBy(i => named[found.Limiting[i]], i => found.T[i + 1] - found.T[i])
            .Select(g => new HeldBack(g.Key.Axis, g.Key.Kind, g.Sum() / found.Duration))
            .OrderByDescending(h => h.Share).ThenBy(h => h.Axis, StringComparer.Ordinal)];
}

using System.Collections.Immutable;
using Trivet.Dynamics;
using Trivet.Numerics;
using Trivet.Numerics.Profiles;

namespace Trivet.Motion;

/// <summary>
/// Each axis as fast as its speed, acceleration and jerk allow, all together from state to state: from the start through the middle of every
/// rounded corner to the end. There the tool moves along the planned path at a fraction of the speed that the bound has at that place, the one
/// fraction for which the whole takes least time, and the axes have no acceleration. In between it leaves the path; how far is told. Where a corner is
/// not rounded it stops.
/// </summary>
public static class StateLaw
{
    private const int Fractions = 20, StepsPerLeg = 150;

    private readonly record struct Knot(double S, double Speed);

    /// <param name="speedAt">ṡ of the bound along the path, m/s.</param>
    public static TimedMove Run(PlatformPath path, ImmutableArray<AxisCapacity> axes, double startSpeed, double endSpeed, Func<double, double> speedAt)
    {
        Numerics.Profiles.AxisLimits[] limits = [.. axes.Select(a => new Numerics.Profiles.AxisLimits(a.Limits.Speed, a.Limits.Acceleration, a.Limits.Jerk))];
        var middle = path.Path.Corners.Where(c => c.Asked > 0).Select(c => new Knot(c.S, c.Half > 0 ? speedAt(c.S) : 0)).ToArray();
        // Legs shorter than the speed of a belt needs to build up are left out: they only shape how the belt is met.
        double best = double.PositiveInfinity;
        Knot[]? chosen = null;
        for (int i = 0; i <= Fractions; i++)
        {
            double fraction = i / (double)Fractions;
            Knot[] knots = [new(0, startSpeed), .. middle.Select(k => k with { Speed = fraction * k.Speed }), new(path.Length, endSpeed)];
            double duration = 0;
            for (int k = 0; k + 1 < knots.Length; k++) duration += Synchronised.Duration(Moves(path, axes, knots[k], knots[k + 1]), limits);
            if (!(duration < best)) continue;
            (best, chosen) = (duration, knots);
        }
        if (chosen is null) return new(null);

        var instants = ImmutableArray.CreateBuilder<Instant>();
        var profiles = new Profile[axes.Length];
        double began = 0;
        for (int k = 0; k + 1 < chosen.Length; k++)
        {
            var leg = Synchronised.Solve(Moves(path, axes, chosen[k], chosen[k + 1]), limits, profiles);
            if (!leg.Found) return new(null);
            for (int i = 0; i <= StepsPerLeg; i++) instants.Add(At(path, axes, profiles, leg.Duration * i / StepsPerLeg).After(began));
            began += leg.Duration;
        }
        return TimedMove.Of(path, instants.ToImmutable());
    }

    private static AxisMove[] Moves(PlatformPath path, ImmutableArray<AxisCapacity> axes, Knot from, Knot to)
    {
        PlatformPoint a = path.At(from.S), b = path.At(to.S);
        return [.. axes.Select((axis, i) =>
        {
            if (axis.Axis == AxisCapacity.Rotary) return new AxisMove(a.Angle, b.Angle, a.Angle1 * from.Speed, b.Angle1 * to.Speed);
            AxisPoint first = path.Axis(i, a.Platform), last = path.Axis(i, b.Platform);
            return new AxisMove(first.Q, last.Q, first.D1 * from.Speed, last.D1 * to.Speed);
        })];
    }

    private static Instant At(PlatformPath path, ImmutableArray<AxisCapacity> axes, Profile[] profiles, double t)
    {
        Span<double> q = stackalloc double[3], v = stackalloc double[3], a = stackalloc double[3], j = stackalloc double[3];
        q.Clear(); v.Clear(); a.Clear(); j.Clear();
        var turn = new Turn(path.Turn.From);
        double turnJerk = 0;
        for (int i = 0; i < axes.Length; i++)
        {
            var now = profiles[i].At(t);
            if (axes[i].Axis == AxisCapacity.Rotary) (turn, turnJerk) = (new(now.Position, now.Velocity, now.Acceleration), now.Jerk);
            else (q[i], v[i], a[i], j[i]) = (now.Position, now.Velocity, now.Acceleration, now.Jerk);
        }
        return Instant.OfDrives(path.Robot, t, new(q[0], q[1], q[2]), new(v[0], v[1], v[2]), new(a[0], a[1], a[2]), new(j[0], j[1], j[2]), turn, turnJerk);
    }
}

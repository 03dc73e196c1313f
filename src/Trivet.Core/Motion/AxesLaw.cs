using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Numerics;
using Trivet.Numerics.Profiles;

namespace Trivet.Motion;

/// <summary>
/// The controller's law of moving the axes by themselves. Each straight leg of the way becomes one move of all axes together: readings go in
/// proportion from those at its beginning to those at its end, by one profile that keeps every axis within its limits and the leg's length within the
/// limits along the path. The next leg begins when what is left of the leg is the corner's blend; the two then add up. The tool runs neither straight
/// nor round the planned corners; how far it leaves them is told. Begins and ends at rest.
/// </summary>
public static class AxesLaw
{
    private const int Steps = 400;

    private readonly record struct Leg(Vec3 Change, double Turn, Profile Profile, double Begin);

    public static TimedMove Run(PlatformPath path, ControllerSettings settings, ImmutableArray<AxisCapacity> axes) =>
        Instants(path, settings, axes, Steps) is { } instants ? TimedMove.Of(path, instants) : new(null);

    /// <summary>The motion alone; null where there is none.</summary>
    internal static ImmutableArray<Instant>? Instants(PlatformPath path, ControllerSettings settings, ImmutableArray<AxisCapacity> axes, int steps)
    {
        var corners = path.Path.Corners;
        var places = corners.Select(c => c.At).Prepend(path.Path.At(0).P).Append(path.Path.At(path.Length).P).ToArray();
        var angles = corners.Select(c => path.Turn.At(c.S).Angle).Prepend(path.Turn.From).Append(path.Turn.To).ToArray();
        var q = places.Zip(angles, (p, angle) => path.Robot.Inverse(path.PlatformFor(p, angle))).ToArray();
        if (q.Any(v => !v.IsFinite)) return null;

        var legs = new List<Leg>();
        double begin = 0;
        for (int k = 0; k + 1 < places.Length; k++)
        {
            var change = q[k + 1] - q[k];
            double turn = angles[k + 1] - angles[k], length = (places[k + 1] - places[k]).Norm;
            var found = AxisProfiles.Fastest(new(0, 1), Limits(change, turn, length, settings, axes));
            if (!found.Found) return null;
            legs.Add(new(change, turn, found.Profile, begin));
            if (k < corners.Length) begin += TimeAt(found.Profile, 1 - corners[k].Half / length);
        }

        double duration = legs.Max(l => l.Begin + l.Profile.Duration);
        var instants = ImmutableArray.CreateBuilder<Instant>(steps + 1);
        for (int i = 0; i <= steps; i++)
        {
            double t = duration * i / steps, angle = angles[0], turning = 0, turnAcceleration = 0, turnJerk = 0;
            Vec3 at = q[0], speed = Vec3.Zero, acceleration = Vec3.Zero, jerk = Vec3.Zero;
            foreach (var leg in legs)
            {
                var now = leg.Profile.At(t - leg.Begin);
                bool moving = t >= leg.Begin && t < leg.Begin + leg.Profile.Duration;
                at += now.Position * leg.Change;
                angle += now.Position * leg.Turn;
                if (!moving) continue;
                (speed, acceleration, jerk) = (speed + now.Velocity * leg.Change, acceleration + now.Acceleration * leg.Change, jerk + now.Jerk * leg.Change);
                (turning, turnAcceleration, turnJerk) = (turning + now.Velocity * leg.Turn, turnAcceleration + now.Acceleration * leg.Turn, turnJerk + now.Jerk * leg.Turn);
            }
            instants.Add(Instant.OfDrives(path.Robot, t, at, speed, acceleration, jerk, new Turn(angle, turning, turnAcceleration), turnJerk));
        }
        return instants.MoveToImmutable();
    }

    /// <summary>Limits of the share of a leg that is done, 1/s and so on.</summary>
    private static Numerics.Profiles.AxisLimits Limits(Vec3 change, double turn, double length, ControllerSettings settings, ImmutableArray<AxisCapacity> axes)
    {
        double speed = settings.Speed / length, acceleration = settings.Acceleration / length;
        double jerk = settings.Profile == ProfileKind.SevenPhase ? settings.Jerk / length : double.PositiveInfinity;
        for (int i = 0; i < axes.Length; i++)
        {
            double moves = Math.Abs(axes[i].Axis == AxisCapacity.Rotary ? turn : change[i]);
            if (!(moves > 1e-12)) continue;
            speed = Math.Min(speed, axes[i].Limits.Speed / moves);
            acceleration = Math.Min(acceleration, axes[i].Limits.Acceleration / moves);
            if (settings.Profile == ProfileKind.SevenPhase) jerk = Math.Min(jerk, axes[i].Limits.Jerk / moves);
        }
        return new(speed, acceleration, jerk);
    }

    /// <summary>When a profile from 0 to 1 reaches a share; it never turns back.</summary>
    private static double TimeAt(in Profile profile, double share)
    {
        double low = 0, high = profile.Duration;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            if (profile.At(middle).Position < share) low = middle;
            else high = middle;
        }
        return high;
    }
}

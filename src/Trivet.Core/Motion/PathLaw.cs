using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Numerics.Profiles;

namespace Trivet.Motion;

/// <summary>
/// The controller's law along the path: one profile of s from start to end, trapezoidal or of seven phases, without regard to how the path bends.
/// On a belt it begins or ends with the belt's speed.
/// </summary>
public static class PathLaw
{
    /// <summary>Even steps of time in which a move is told.</summary>
    internal const int Steps = 300;

    public static TimedMove Run(PlatformPath path, ControllerSettings settings, double startSpeed, double endSpeed)
    {
        var found = AxisProfiles.Fastest(new(0, path.Length, startSpeed, endSpeed), new(settings.Speed, settings.Acceleration, settings.Jerk));
        return found.Found ? new(Trace(path, found.Profile)) : new TimedMove(null);
    }

    /// <summary>Duration alone, seconds; not a number where there is none.</summary>
    public static double Duration(double length, ControllerSettings settings, double startSpeed, double endSpeed) =>
        AxisProfiles.FastestDuration(new(0, length, startSpeed, endSpeed), new(settings.Speed, settings.Acceleration, settings.Jerk));

    private static MoveTrace Trace(PlatformPath path, in Profile profile)
    {
        var instants = ImmutableArray.CreateBuilder<Instant>(Steps + 1 + 2 * Profile.MostPhases);
        double began = 0;
        double step = profile.Duration / Steps;
        // Each phase is told with its own acceleration and jerk at both ends: where two meet, they jump.
        foreach (var phase in profile.Phases)
        {
            int parts = Math.Max(1, (int)Math.Ceiling(phase.Duration / step));
            var start = profile.At(began);
            for (int i = 0; i <= parts; i++)
            {
                double t = i * phase.Duration / parts, a = phase.Acceleration + phase.Jerk * t;
                double v = start.Velocity + t * (phase.Acceleration + a) / 2;
                double s = start.Position + t * (start.Velocity + t * (phase.Acceleration / 2 + t * phase.Jerk / 6));
                instants.Add(Instant.On(path, began + t, Math.Clamp(s, 0, path.Length), Math.Max(0, v), a, phase.Jerk));
            }
            began += phase.Duration;
        }
        return new(instants.ToImmutable());
    }
}

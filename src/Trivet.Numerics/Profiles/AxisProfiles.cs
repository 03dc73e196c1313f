namespace Trivet.Numerics.Profiles;

/// <summary>A profile, the pattern it follows, or why there is none.</summary>
public readonly record struct ProfileResult(Profile Profile, ProfilePattern Pattern, ProfileProblem Problem)
{
    public bool Found => Problem == ProfileProblem.None;

    internal static ProfileResult No(ProfileProblem problem) => new(default, ProfilePattern.None, problem);
}

/// <summary>
/// Moves of one coordinate between two states under limits on velocity, acceleration and jerk: the fastest one, and one for a given
/// duration. Never throws for numbers; whatever is returned was integrated from the start, phase by phase, and found to end where it
/// should and to keep its limits.
/// <para>
/// The fastest profile goes up to one highest velocity (or down to one lowest) between two ramps. Which of the two follows from the
/// displacement of the direct ramp: see <see cref="Excursion"/>. With moving ends the durations for which an axis has a profile may
/// have one gap.
/// </para>
/// </summary>
public static class AxisProfiles
{
    /// <summary>Allowed when a profile is confirmed: end state and limits, relative to what occurs.</summary>
    private const double Tolerance = 1e-9;

    /// <summary>A displacement that a duration misses by less than this part of it is reached: rounding.</summary>
    private const double Rounding = 1e-15;

    /// <summary>The fastest profile.</summary>
    public static ProfileResult Fastest(in AxisMove move, in AxisLimits limits)
    {
        var problem = Check(move, limits);
        if (problem != ProfileProblem.None) return ProfileResult.No(problem);
        var course = new Course(move, limits);
        var parts = course.Ahead.Fastest(course.Distance, out var pattern);
        return Confirmed(Build(move, course.Sign, parts, limits.Acceleration, limits.Jerk), move, limits, pattern);
    }

    /// <summary>Duration of <see cref="Fastest"/> alone, without building and confirming it; not a number where there is none.</summary>
    public static double FastestDuration(in AxisMove move, in AxisLimits limits)
    {
        if (Check(move, limits) != ProfileProblem.None) return double.NaN;
        var course = new Course(move, limits);
        return course.Ahead.Fastest(course.Distance, out _).Duration;
    }

    /// <summary>The duration itself, or the far end of the gap it lies in; for durations above the fastest.</summary>
    internal static double BeyondGap(in Course course, double duration)
    {
        // Turning back takes longest where both ends move ahead; with an end at rest there is always time to wait.
        if (course.Low <= 0) return duration;
        var back = course.Back;
        double distance = -course.Distance;
        return back.Farthest(duration) >= distance - Rounding * course.Scale(duration) ? duration : back.Fastest(distance, out _).Duration;
    }

    /// <summary>
    /// A profile of a given duration, seconds: of all shares of acceleration and jerk (the same of both) it takes the smallest that does it,
    /// so the axis with time to spare moves gently. The velocity limit stays whole.
    /// </summary>
    public static ProfileResult InTime(in AxisMove move, in AxisLimits limits, double duration)
    {
        var problem = Check(move, limits);
        if (problem != ProfileProblem.None) return ProfileResult.No(problem);
        if (!double.IsFinite(duration)) return ProfileResult.No(ProfileProblem.NotFinite);
        var gentle = Gentle.Of(move, limits, duration);
        if (!(gentle.Share <= 1 + Tolerance)) return ProfileResult.No(ProfileProblem.NotInThisTime);
        var profile = Build(move, gentle.Sign, gentle.Parts, gentle.Share * limits.Acceleration, gentle.Share * limits.Jerk);
        return Confirmed(profile, move, limits, ProfilePattern.Gentle);
    }

    internal static ProfileProblem Check(in AxisMove move, in AxisLimits limits)
    {
        if (!double.IsFinite(move.From) || !double.IsFinite(move.To) || !double.IsFinite(move.StartVelocity) || !double.IsFinite(move.EndVelocity))
            return ProfileProblem.NotFinite;
        if (!(limits.Velocity > 0) || !(limits.Acceleration > 0) || !(limits.Jerk > 0) || double.IsInfinity(limits.Velocity) || double.IsInfinity(limits.Acceleration))
            return ProfileProblem.LimitNotPositive;
        return Math.Max(Math.Abs(move.StartVelocity), Math.Abs(move.EndVelocity)) <= limits.Velocity ? ProfileProblem.None : ProfileProblem.VelocityBeyondLimit;
    }

    private static Profile Build(in AxisMove move, double sign, in ExcursionParts parts, double acceleration, double jerk)
    {
        bool lowFirst = sign * move.StartVelocity < sign * move.EndVelocity;
        var profile = new Profile(move.From, move.StartVelocity);
        profile.AppendRamp(lowFirst ? parts.Low : parts.High, sign * acceleration, jerk);
        profile.Append(parts.Cruise, 0, 0);
        profile.AppendRamp(lowFirst ? parts.High : parts.Low, -sign * acceleration, jerk);
        return profile;
    }

    private static ProfileResult Confirmed(in Profile profile, in AxisMove move, in AxisLimits limits, ProfilePattern pattern)
    {
        profile.Integrate(out double position, out double velocity, out var peaks);
        double most = 1 + Tolerance, length = Math.Abs(move.From) + Math.Abs(move.Distance) + limits.Velocity * profile.Duration;
        bool confirmed = Math.Abs(position - move.To) <= Tolerance * length
            && Math.Abs(velocity - move.EndVelocity) <= Tolerance * limits.Velocity
            && peaks.Velocity <= limits.Velocity * most && peaks.Acceleration <= limits.Acceleration * most && peaks.Jerk <= limits.Jerk * most;
        return confirmed ? new(profile, pattern, ProfileProblem.None) : ProfileResult.No(ProfileProblem.NotConfirmed);
    }
}

/// <summary>A move seen so that its excursion leads ahead: mirrored where the direct ramp would already lead too far.</summary>
internal readonly struct Course
{
    public Course(in AxisMove move, in AxisLimits limits)
    {
        double v0 = move.StartVelocity, v1 = move.EndVelocity, distance = move.Distance;
        Limits = limits;
        double direct = new Excursion(v0, v1, limits).Ramp(Math.Abs(v1 - v0)), beyond = distance - (v0 + v1) / 2 * direct;
        // Rounding must not turn the direct ramp into one that has to come back: on its own displacement the way both ends move is ahead.
        bool same = Math.Abs(beyond) <= 1e-12 * (Math.Abs(move.From) + Math.Abs(move.To) + limits.Velocity * direct);
        Sign = (same ? v0 + v1 : beyond) >= 0 ? 1 : -1;
        Distance = Sign * distance;
        (v0, v1) = (Sign * v0, Sign * v1);
        (Low, High) = v0 < v1 ? (v0, v1) : (v1, v0);
    }

    private AxisLimits Limits { get; }

    /// <summary>1, or −1 where the coordinate is mirrored.</summary>
    public double Sign { get; }

    public double Distance { get; }
    public double Low { get; }
    public double High { get; }

    public Excursion Ahead => new(Low, High, Limits);

    /// <summary>The excursion the other way, in the mirrored coordinate.</summary>
    public Excursion Back => new(-High, -Low, Limits);

    /// <summary>What a displacement is measured against for rounding, metres or radians.</summary>
    public double Scale(double duration) => Math.Abs(Distance) + Limits.Velocity * duration;
}

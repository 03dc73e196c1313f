namespace Trivet.Numerics.Profiles;

/// <summary>
/// Moves of several axes that begin and end together, in the smallest time for which every axis has a profile. With moving ends that can
/// be longer than the slowest axis needs: the durations an axis can take may have a gap.
/// </summary>
public static class Synchronised
{
    /// <summary>The smallest common duration, seconds; not a number where an axis has no profile.</summary>
    public static double Duration(ReadOnlySpan<AxisMove> moves, ReadOnlySpan<AxisLimits> limits)
    {
        if (moves.Length != limits.Length) throw new ArgumentException($"Each axis has a move and limits ({moves.Length}, {limits.Length}).", nameof(limits));
        double duration = 0;
        bool mayHaveGap = false;
        for (int i = 0; i < moves.Length; i++)
        {
            double fastest = AxisProfiles.FastestDuration(moves[i], limits[i]);
            if (double.IsNaN(fastest)) return double.NaN;
            duration = Math.Max(duration, fastest);
            mayHaveGap |= moves[i].StartVelocity * moves[i].EndVelocity > 0;
        }

        if (!mayHaveGap) return duration;
        // Each round passes at least one gap for good, and an axis has one.
        for (int i = 0, settled = 0; settled < moves.Length; i = (i + 1) % moves.Length, settled++)
        {
            double next = AxisProfiles.BeyondGap(new(moves[i], limits[i]), duration);
            if (next > duration) (duration, settled) = (next, 0);
        }

        return duration;
    }

    /// <summary>
    /// The profiles of the smallest common duration. The slowest axis runs at its limits, the others with the smallest share of acceleration
    /// and jerk that lets them arrive with it.
    /// </summary>
    /// <param name="profiles">One for each axis; where the result says there is none they mean nothing.</param>
    /// <returns>Duration, seconds, and why there is none: the first axis without a profile, or −1.</returns>
    public static SynchronisedResult Solve(ReadOnlySpan<AxisMove> moves, ReadOnlySpan<AxisLimits> limits, Span<Profile> profiles)
    {
        double duration = Duration(moves, limits);
        for (int i = 0; i < moves.Length; i++)
        {
            double own = AxisProfiles.FastestDuration(moves[i], limits[i]);
            var result = own >= duration || double.IsNaN(duration) ? AxisProfiles.Fastest(moves[i], limits[i]) : AxisProfiles.InTime(moves[i], limits[i], duration);
            if (!result.Found) return new(double.NaN, i, result.Problem);
            profiles[i] = result.Profile;
        }

        return new(duration, -1, ProfileProblem.None);
    }
}

/// <param name="Duration">Seconds; not a number where there is none.</param>
/// <param name="Axis">The first axis that has no profile, or −1.</param>
public readonly record struct SynchronisedResult(double Duration, int Axis, ProfileProblem Problem)
{
    public bool Found => Problem == ProfileProblem.None;
}

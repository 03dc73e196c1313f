using System.Runtime.Intrinsics;
using Trivet.Numerics.Lanes;

namespace Trivet.Numerics.Profiles;

/// <summary>
/// Durations of many moves from rest to rest, as <see cref="AxisProfiles.FastestDuration"/> gives them one by one, to 1e-12 of themselves. Spans
/// are structure of arrays: entry i of each belongs to move i. Nothing is allocated. Axes that move together take the largest of their
/// durations: from rest to rest there are no gaps.
/// </summary>
public static class ProfileBatch
{
    /// <param name="distance">Of either sign.</param>
    /// <param name="velocity">Limits as in <see cref="AxisLimits"/>.</param>
    /// <param name="duration">Seconds; not a number where there is none.</param>
    public static void RestToRest(
        ReadOnlySpan<double> distance, ReadOnlySpan<double> velocity, ReadOnlySpan<double> acceleration, ReadOnlySpan<double> jerk, Span<double> duration)
    {
        int n = distance.Length, done = 0;
        if (velocity.Length != n || acceleration.Length != n || jerk.Length != n || duration.Length < n)
            throw new ArgumentException($"Moves and limits are of equal length ({n}, {velocity.Length}, {acceleration.Length}, {jerk.Length}) and durations at least as long ({duration.Length}).");
        if (Vector512.IsHardwareAccelerated) done += RestToRest<Lanes512>(distance, velocity, acceleration, jerk, duration);
        if (Vector256.IsHardwareAccelerated)
            done += RestToRest<Lanes256>(distance[done..], velocity[done..], acceleration[done..], jerk[done..], duration[done..]);
        RestToRest<Lanes1>(distance[done..], velocity[done..], acceleration[done..], jerk[done..], duration[done..]);
    }

    /// <summary>The same in one given width, whole lanes only. Returns how many moves that were.</summary>
    public static int RestToRest<T>(
        ReadOnlySpan<double> distance, ReadOnlySpan<double> velocity, ReadOnlySpan<double> acceleration, ReadOnlySpan<double> jerk, Span<double> duration)
        where T : struct, ILanes<T>
    {
        int i = 0;
        T zero = T.All(0), two = T.All(2), half = T.All(0.5), nan = T.All(double.NaN), infinite = T.All(double.PositiveInfinity);
        for (; i <= distance.Length - T.Count; i += T.Count)
        {
            T d = T.Abs(T.Load(distance, i)), v = T.Load(velocity, i), a = T.Load(acceleration, i), j = T.Load(jerk, i);
            T round = a / j, knee = a * round, inverse = T.All(1) / (v * a);

            // The velocity limit is reached; then the acceleration limit alone. The cube root of what reaches neither is left to the second pass.
            T ramp = T.WhereLess(v, knee, two * T.Sqrt(v / j), T.Fma(v * v, inverse, round));
            T cruising = T.Fma(d * a, inverse, ramp);
            T middle = half * knee, root = T.Sqrt(T.Fma(a, d, middle * middle));
            T braking = T.WhereLess(d, two * knee * round, nan, T.Fma(two * v * inverse, root - middle, two * round));
            T time = T.WhereLess(d, v * ramp, braking, cruising);

            // Limits that are none.
            T least = T.WhereLess(v, a, v, a);
            least = T.WhereLess(least, j, least, j);
            T most = T.WhereLess(v, a, a, v);
            time = T.WhereLess(zero, least, T.WhereLess(most, infinite, time, nan), nan);
            time.Store(duration, i);
        }

        for (int k = 0; k < i; k++)
            if (double.IsNaN(duration[k])) duration[k] = AxisProfiles.FastestDuration(new(0, distance[k]), new(velocity[k], acceleration[k], jerk[k]));
        return i;
    }
}

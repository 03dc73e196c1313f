namespace Trivet.Numerics.Profiles;

/// <summary>
/// Uniform stretch of time: the same motion run k times as long. Velocities fall with 1/k, accelerations with 1/k², jerks with 1/k³; forces of
/// motion with 1/k², what stands (gravity) not at all. A result below 1 says by how much the motion could be quickened.
/// </summary>
public static class Stretch
{
    /// <summary>The smallest k with which peaks keep within limits.</summary>
    public static double ToKeep(in AxisLimits peaks, in AxisLimits limits)
    {
        double jerk = double.IsInfinity(limits.Jerk) ? 0 : Math.Cbrt(peaks.Jerk / limits.Jerk);
        return Math.Max(peaks.Velocity / limits.Velocity, Math.Max(Math.Sqrt(peaks.Acceleration / limits.Acceleration), jerk));
    }

    /// <summary>
    /// The smallest k with which |moving/k² + standing| stays within a limit at every sample; infinite where what stands alone is beyond it, not a
    /// number where a sample is not.
    /// </summary>
    public static double ToKeep(ReadOnlySpan<double> moving, ReadOnlySpan<double> standing, double most)
    {
        if (moving.Length != standing.Length) throw new ArgumentException($"As many of each ({moving.Length}, {standing.Length}).", nameof(standing));
        double k = 0;
        for (int i = 0; i < moving.Length; i++)
        {
            if (Math.Abs(standing[i]) > most) k = double.IsNaN(k) ? k : double.PositiveInfinity;
            else k = Math.Max(k, moving[i] == 0 ? 0 : Math.Sqrt(Math.Abs(moving[i]) / (most - Math.CopySign(1, moving[i]) * standing[i])));
        }

        return k;
    }
}

namespace Trivet.Numerics.Profiles;

/// <summary>Laws from rest to rest that are one smooth formula in place of phases, with τ = t/T from 0 to 1.</summary>
public enum RestLaw
{
    /// <summary>10τ³ − 15τ⁴ + 6τ⁵: no jump of acceleration.</summary>
    FifthOrder,
    /// <summary>τ − sin(2πτ)/(2π): no jump of acceleration.</summary>
    Cycloid,
    /// <summary>35τ⁴ − 84τ⁵ + 70τ⁶ − 20τ⁷: no jump of jerk either.</summary>
    SeventhOrder,
}

/// <summary>
/// What these laws ask. Over distance d in time T the largest velocity is kv·d/T, the largest acceleration ka·d/T² and the largest jerk kj·d/T³.
/// Elementary; kv and ka as in [Biagiotti2008] (from memory), kj by differentiating.
/// </summary>
public static class RestLaws
{
    /// <summary>kv, ka and kj.</summary>
    public static (double Velocity, double Acceleration, double Jerk) Factors(RestLaw law) => law switch
    {
        RestLaw.FifthOrder => (15.0 / 8, 10 / Math.Sqrt(3), 60),
        RestLaw.Cycloid => (2, Math.Tau, Math.Tau * Math.Tau),
        RestLaw.SeventhOrder => (35.0 / 16, 84 / (5 * Math.Sqrt(5)), 52.5),
        _ => throw new ArgumentOutOfRangeException(nameof(law), law, "There is no such law."),
    };

    /// <summary>The shortest time within limits, seconds; not a number where a limit or the distance is none.</summary>
    public static double Duration(RestLaw law, double distance, in AxisLimits limits)
    {
        if (AxisProfiles.Check(new(0, distance), limits) != ProfileProblem.None) return double.NaN;
        var (kv, ka, kj) = Factors(law);
        double d = Math.Abs(distance);
        return Math.Max(kv * d / limits.Velocity, Math.Max(Math.Sqrt(ka * d / limits.Acceleration), Math.Cbrt(kj * d / limits.Jerk)));
    }

    /// <summary>State at a time from the start, seconds, of a move that begins at zero; held at the ends beyond them.</summary>
    /// <param name="duration">Seconds, above zero.</param>
    public static AxisState At(RestLaw law, double distance, double duration, double time)
    {
        double x = Math.Clamp(time / duration, 0, 1), y = 1 - x, w = x * y, turn = y - x;
        var (sin, cos) = Math.SinCos(Math.Tau * x);
        var (p, v, a, j) = law switch
        {
            RestLaw.FifthOrder => (x * x * x * (10 - x * (15 - 6 * x)), 30 * w * w, 60 * w * turn, 60 * (1 - 6 * w)),
            RestLaw.Cycloid => (x - sin / Math.Tau, 1 - cos, Math.Tau * sin, Math.Tau * Math.Tau * cos),
            RestLaw.SeventhOrder => (x * x * x * x * (35 - x * (84 - x * (70 - 20 * x))), 140 * w * w * w, 420 * w * w * turn, 840 * w * (1 - 5 * w)),
            _ => throw new ArgumentOutOfRangeException(nameof(law), law, "There is no such law."),
        };
        double k = distance / duration;
        return new(distance * p, k * v, k / duration * a, k / (duration * duration) * j);
    }
}

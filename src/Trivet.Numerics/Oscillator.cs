namespace Trivet.Numerics;

/// <summary>
/// A damped oscillator q̈ + 2ζω·q̇ + ω²·q = p(t), followed exactly where p is straight between its times ([NigamJennings1969], from memory): the
/// straight part moves along q = (p₀ + s·t)/ω² − 2ζ·s/ω³, the rest rings down.
/// </summary>
/// <param name="Omega">ω, rad/s, above zero.</param>
/// <param name="Damping">ζ, 0 to below 1.</param>
public readonly record struct Oscillator(double Omega, double Damping)
{
    /// <summary>Position and speed a time later, the load going from p0 to p1 meanwhile.</summary>
    public (double Q, double V) After(double q, double v, double p0, double p1, double time)
    {
        if (!(time > 0)) return (q, v);
        double w2 = Omega * Omega, slope = (p1 - p0) / time, lag = 2 * Damping * slope / (w2 * Omega);
        var (y, z) = Free(q - p0 / w2 + lag, v - slope / w2, time);
        return (y + p1 / w2 - lag, z + slope / w2);
    }

    /// <summary>Position and speed a time later without load.</summary>
    public (double Q, double V) Free(double q, double v, double time)
    {
        double fading = Damping * Omega, ringing = Omega * Math.Sqrt(1 - Damping * Damping), left = Math.Exp(-fading * time);
        var (s, c) = Math.SinCos(ringing * time);
        return (left * (q * (c + fading / ringing * s) + v / ringing * s), left * (v * (c - fading / ringing * s) - q * Omega * Omega / ringing * s));
    }

    /// <summary>
    /// Position and speed at the beginning of a load that repeats for ever, so that they are the same at its end; not numbers without damping where the
    /// load's time is a multiple of the period.
    /// </summary>
    /// <param name="times">Rising; two equal times are a jump.</param>
    public (double Q, double V) Periodic(ReadOnlySpan<double> times, ReadOnlySpan<double> load)
    {
        double q = 0, v = 0;
        for (int i = 1; i < times.Length; i++) (q, v) = After(q, v, load[i - 1], load[i], times[i] - times[i - 1]);
        double whole = times[^1] - times[0];
        var (a, c) = Free(1, 0, whole);
        var (b, d) = Free(0, 1, whole);
        // (I − A)·x = what is left of rest after one time round.
        double determinant = (1 - a) * (1 - d) - b * c;
        return ((q * (1 - d) + b * v) / determinant, (v * (1 - a) + c * q) / determinant);
    }
}

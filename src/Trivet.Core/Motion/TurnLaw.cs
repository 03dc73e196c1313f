using Trivet.Numerics;

namespace Trivet.Motion;

/// <summary>
/// The rotary angle along a path, radians: from one angle to another between two values of s by
/// <c>φ = φ₀ + Δφ·(10σ³ − 15σ⁴ + 6σ⁵)</c>, σ from 0 to 1: at rest, without acceleration by s, at both ends; unmoved before and after.
/// </summary>
public readonly record struct TurnLaw(double From, double To, double Begin, double End)
{
    public double Change => To - From;

    /// <summary>Angle and its derivatives by s.</summary>
    public (double Angle, double D1, double D2, double D3) At(double s)
    {
        if (Change == 0) return (From, 0, 0, 0);
        double length = End - Begin, x = (s - Begin) / length;
        if (x <= 0) return (From, 0, 0, 0);
        if (x >= 1) return (To, 0, 0, 0);
        double rest = 1 - x, per = Change / length;
        return (From + Change * x * x * x * (10 + x * (6 * x - 15)), per * 30 * x * x * rest * rest,
            per / length * 60 * x * rest * (1 - 2 * x), per / (length * length) * 60 * (1 - 6 * x * rest));
    }

    /// <summary>Angle and first derivative for all s of an interval. The angle runs one way; its rate rises to the middle and falls after it.</summary>
    internal (Interval Angle, Interval D1) Over(double low, double high)
    {
        if (Change == 0) return (From, 0);
        double length = End - Begin;
        Interval a = Share(low, Begin, length), b = Share(high, Begin, length);
        var share = new Interval(Math.Max(0, Advance(a).Lower), Math.Min(1, Advance(b).Upper));
        Interval atLow = Rate(a), atHigh = Rate(b);
        var rate = atLow.Hull(atHigh);
        if (a.Lower <= 0.5 && b.Upper >= 0.5) rate = rate.Hull(30.0 / 16);
        return (From + Change * share, Change * (rate / length));

        static Interval Share(double s, double begin, double length)
        {
            var x = ((Interval)s - begin) / length;
            return new(Math.Clamp(x.Lower, 0, 1), Math.Clamp(x.Upper, 0, 1));
        }

        static Interval Advance(Interval x) => Interval.Square(x) * x * (10.0 + x * (6.0 * x - 15.0));
        static Interval Rate(Interval x) => 30.0 * Interval.Square(x * (1.0 - x));
    }

    /// <summary>
    /// The angle to turn to: of all that differ from the wanted one by whole turns and lie within the travel, the nearest. The wanted one where
    /// none does, for the check of travel to judge.
    /// </summary>
    public static double Nearest(double from, double wanted, double travelFrom, double travelTo)
    {
        double best = wanted;
        bool found = false;
        for (double k = Math.Ceiling((travelFrom - 1e-9 - wanted) / Math.Tau); wanted + k * Math.Tau <= travelTo + 1e-9; k++)
        {
            double angle = wanted + k * Math.Tau;
            if (found && Math.Abs(angle - from) >= Math.Abs(best - from) - 1e-9) continue;
            (best, found) = (angle, true);
        }
        return best;
    }
}

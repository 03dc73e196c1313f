namespace Trivet.Numerics.Profiles;

/// <summary>
/// The smallest share of acceleration and jerk with which a move takes a given time. A ramp of length τ changes the velocity by
/// share·u(τ), u(τ) = a·(τ − a/j) or j·τ²/4 where it is rounded throughout; since both limits shrink alike, only the share changes a ramp
/// of given length. Derived in this project.
/// </summary>
/// <param name="Sign">1, or −1 where the excursion goes to a lowest velocity.</param>
/// <param name="Share">0 for uniform motion; above 1 where there is no profile of this duration. Infinite where the duration is too short for
/// any share.</param>
internal readonly record struct Gentle(double Sign, ExcursionParts Parts, double Share)
{
    public static Gentle Of(in AxisMove move, in AxisLimits limits, double duration)
    {
        double v0 = move.StartVelocity, v1 = move.EndVelocity, excess = move.Distance - (v0 + v1) / 2 * duration;
        double sign = excess >= 0 ? 1 : -1;
        double low = Math.Min(sign * v0, sign * v1), high = Math.Max(sign * v0, sign * v1);
        if (!(duration > 0)) return new(sign, default, v0 == v1 && excess == 0 && duration == 0 ? 0 : double.PositiveInfinity);
        var ramp = new RampShape(limits);
        excess = Math.Abs(excess);

        double brief = Brief(ramp, high - low, excess, duration), lengthy = duration - brief;
        double uLong = ramp.Change(lengthy), uBrief = ramp.Change(brief);
        // Either equation gives the share; their sum does also where one of them is 0 = 0.
        double share = ((high - low) * duration + 2 * excess) / ((uLong - uBrief) * duration + uLong * brief + uBrief * lengthy);
        if (low + share * uLong <= limits.Velocity) return new(sign, new(lengthy, 0, brief), share);

        double rise = limits.Velocity - low, fall = limits.Velocity - high;
        double lost = 2 * (limits.Velocity * duration - sign * move.Distance);
        lengthy = Lengthy(ramp, rise, fall, lost);
        brief = fall > 0 ? (lost - rise * lengthy) / fall : 0;
        return new(sign, new(lengthy, duration - lengthy - brief, brief), lengthy > 0 ? rise / ramp.Change(lengthy) : double.PositiveInfinity);
    }

    /// <summary>
    /// Length of the shorter ramp, without cruising. With ramps τ₁ ≥ τ₂, τ₁ + τ₂ = T: w = share·(u₁ − u₂) is the difference of the
    /// velocities at the ends, excess = share·(u₁τ₂ + u₂τ₁)/2 the displacement beyond their mean times T. Their quotient knows no share.
    /// </summary>
    private static double Brief(in RampShape ramp, double w, double excess, double time)
    {
        double wt = w * time, r = ramp.Round;
        if (excess == 0) return wt == 0 ? time / 2 : 0;

        double brief = 4 * excess * time / (wt + 4 * excess + Math.Sqrt(wt * wt + 16 * excess * excess));
        if (time - brief <= 2 * r) return brief;

        double both = wt * (wt - 2 * w * r) + 4 * excess * excess;
        brief = both >= 0 ? (2 * excess + w * r) * time / (wt + 2 * excess + Math.Sqrt(both)) : 0;
        if (brief >= 2 * r) return brief;

        // One ramp rounded throughout: a cubic, rising through zero once between these ends.
        double from = 0, to = Math.Min(2 * r, time / 2);
        double x = to;
        for (int i = 0; i < 100 && from < to; i++)
        {
            double q = x * x / (4 * r), q1 = x / (2 * r), left = time - x;
            double f = w * ((left - r) * x + q * left) - 2 * excess * (left - r - q);
            double slope = w * (left - r - x + q1 * left - q) + 2 * excess * (1 + q1);
            if (f > 0) to = x;
            else from = x;
            double next = x - f / slope;
            if (!(next > from && next < to)) next = (from + to) / 2;
            if (Math.Abs(next - x) <= 1e-16 * time) break;
            x = next;
        }

        return x;
    }

    /// <summary>Length of the longer ramp where the velocity limit is reached: rise·τ₁ + fall·τ₂ = lost, rise/u(τ₁) = fall/u(τ₂).</summary>
    private static double Lengthy(in RampShape ramp, double rise, double fall, double lost)
    {
        double r = ramp.Round;
        if (fall <= 0) return lost / rise;
        double root = Math.Sqrt(fall / rise), lengthy = lost / (rise + fall * root);
        if (lengthy <= 2 * r) return lengthy;

        double k = fall / rise;
        lengthy = (lost - fall * r * (1 - k)) / (rise + fall * k);
        if (r + (lengthy - r) * k >= 2 * r) return lengthy;

        // τ₁ = r + τ₂²/(4·r·k), a quadratic in τ₂.
        double c2 = rise / (4 * r * k), c0 = lost - rise * r;
        double brief = 2 * c0 / (fall + Math.Sqrt(Math.Max(0, fall * fall + 4 * c2 * c0)));
        return r + brief * brief / (4 * r * k);
    }
}

/// <summary>Change of velocity of a ramp by its length.</summary>
internal readonly struct RampShape(in AxisLimits limits)
{
    private readonly double _a = limits.Acceleration, _j = limits.Jerk;

    /// <summary>Length of a rounded end, seconds; zero without a limit of jerk.</summary>
    public double Round { get; } = limits.Acceleration / limits.Jerk;

    public double Change(double length) => length >= 2 * Round ? _a * (length - Round) : _j * length * length / 4;
}

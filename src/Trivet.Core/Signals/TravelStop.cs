namespace Trivet.Signals;

/// <summary>What an axis needs behind a switch, in its drive coordinate: metres or radians.</summary>
/// <param name="Delay">v·t run before the stop begins.</param>
/// <param name="Braking">v²/(2a).</param>
public readonly record struct TravelStop(double Delay, double Braking, double Hysteresis, double Tolerance)
{
    /// <summary>Distance from switch to hard stop that is needed.</summary>
    public double Needed => Delay + Braking + Hysteresis + Tolerance;

    /// <summary>Distance from the end of the used travel to the switch that is needed: it must have let go again, and may sit a tolerance off.</summary>
    public double Clear => Hysteresis + Tolerance;

    /// <param name="speed">At which it is run at, per second, not negative.</param>
    /// <param name="deceleration">Per second squared, positive; else the distance is not a number.</param>
    /// <param name="delay">Seconds from switching to the beginning of the stop.</param>
    public static TravelStop Of(double speed, double deceleration, double delay, double hysteresis, double tolerance) =>
        new(speed * delay, deceleration > 0 ? speed * speed / (2 * deceleration) : double.NaN, hysteresis, tolerance);

    /// <summary>Where it switches at best: in the middle of what both sides leave free; not a number where that is nothing.</summary>
    /// <param name="end">End of the used travel.</param>
    /// <param name="stop">Hard stop behind it, on either side.</param>
    public double Place(double end, double stop)
    {
        if (!double.IsFinite(stop - end) || !double.IsFinite(Needed)) return double.NaN;
        double side = Math.Sign(stop - end), near = end + side * Clear, far = stop - side * Needed;
        return side * (far - near) >= 0 ? (near + far) / 2 : double.NaN;
    }

    /// <summary>Distance up to which a target is surely seen: 0.81 of the rated one, 0.9 for the sample's spread and 0.9 for temperature and voltage [IEC-60947-5-2].</summary>
    public static double AssuredDistance(double rated, double targetFactor) => 0.81 * rated * targetFactor;
}

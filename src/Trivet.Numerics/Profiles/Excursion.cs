namespace Trivet.Numerics.Profiles;

/// <summary>Lengths of an excursion's parts, seconds.</summary>
/// <param name="Low">Ramp at the end with the lower velocity: the longer one.</param>
/// <param name="Cruise">At the velocity between the ramps.</param>
/// <param name="High">Ramp at the end with the higher velocity.</param>
internal readonly record struct ExcursionParts(double Low, double Cruise, double High)
{
    public double Duration => Low + Cruise + High;
}

/// <summary>
/// How far a coordinate can get in a given time, and the other way round: from one velocity up to a highest one and down to another, with
/// no acceleration at the ends. All profiles within convex limits that take the same time form a convex set, so the displacements they
/// reach in time T fill an interval; this is its upper end, the lower one is that of the mirrored move. Derived in this project.
/// <para>
/// With peaks a₁, a₂ of the two ramps and highest velocity p, d(displacement)/dT = p + a₁·a₂/(2·jerk), which grows with T: the upper end is
/// convex in T until p reaches its limit, and a straight line of slope v from there. So a Newton iteration that begins to the right of a
/// root can't overshoot it.
/// </para>
/// </summary>
internal readonly struct Excursion
{
    private readonly double _low, _high, _v, _a, _j, _round, _knee;

    /// <param name="low">The smaller of the velocities at the ends; their order has no bearing on times and displacements.</param>
    public Excursion(double low, double high, in AxisLimits limits)
    {
        (_low, _high, _v, _a, _j) = (low, high, limits.Velocity, limits.Acceleration, limits.Jerk);
        _round = _a / _j;
        _knee = _a * _round;
    }

    /// <summary>Duration of a ramp by this change of velocity.</summary>
    public double Ramp(double change) => change >= _knee ? change / _a + _round : 2 * Math.Sqrt(change / _j);

    /// <summary>Displacement by way of this highest velocity, without staying there.</summary>
    private double By(double peak) => ((_low + peak) * Ramp(peak - _low) + (_high + peak) * Ramp(peak - _high)) / 2;

    /// <summary>True where the root sought lies at or above this highest velocity: the displacement is not reached yet, or still shrinks with time.</summary>
    private bool Beyond(double peak, double distance, double product) => distance >= By(peak) || peak + product / (2 * _j) < 0;

    /// <summary>
    /// The fastest excursion by a displacement. Of two the later: the earlier one then is on the falling branch, where more time leads less
    /// far. Exists for every displacement from the lowest point of the curve on.
    /// </summary>
    public ExcursionParts Fastest(double distance, out ProfilePattern pattern)
    {
        double reached = By(_v);
        if (distance >= reached)
        {
            pattern = ProfilePattern.VelocityReached;
            return new(Ramp(_v - _low), (distance - reached) / _v, Ramp(_v - _high));
        }

        double sum = _low + _high;
        double both = _high + _knee, one = Math.Max(_high, _low + _knee);
        if (both <= _v && (_knee == 0 || Beyond(both, distance, _a * _a)))
        {
            double half = _knee / 2;
            double peak = Math.Sqrt(Math.Max(0, half * half - half * sum + (_low * _low + _high * _high) / 2 + _a * distance)) - half;
            peak = Math.Clamp(peak, _high, _v);
            pattern = ProfilePattern.AccelerationReachedTwice;
            return new((peak - _low) / _a + _round, 0, (peak - _high) / _a + _round);
        }

        if (one <= _v && (_low + _knee <= _high || Beyond(one, distance, _a * Math.Sqrt((one - _high) * _j))))
        {
            double y = OneFlat(distance, Math.Min(_round, Math.Sqrt((_v - _high) / _j)));
            pattern = ProfilePattern.AccelerationReachedOnce;
            return new((_high - _low + _j * y * y) / _a + _round, 0, 2 * y);
        }

        double s = NoneFlat(distance, Math.Min(_v, _low + _knee)), skew = s > 0 ? (_high - _low) / (_j * s) : 0;
        pattern = ProfilePattern.JerkOnly;
        return new(s + skew, 0, s - skew);
    }

    /// <summary>Half the length of the shorter, rounded ramp where the longer one reaches the acceleration limit: a quartic.</summary>
    private double OneFlat(double distance, double y)
    {
        double k = _j / _a, c4 = k * _j / 2, c2 = _high * k + _a / 2;
        double c0 = (_low + _high) / 2 * ((_high - _low) / _a + _round) - distance;
        for (int i = 0; i < MostSteps; i++)
        {
            double f = (((c4 * y + _j) * y + c2) * y + 2 * _high) * y + c0;
            double slope = ((4 * c4 * y + 3 * _j) * y + 2 * c2) * y + 2 * _high;
            double next = Math.Max(0, y - f / slope);
            if (!(next < y)) break;
            y = next;
        }

        return y;
    }

    /// <summary>
    /// Half the duration s where jerk alone limits. With √ of both changes over jerk as x and y, s = x + y and x − y = δ/s:
    /// displacement = (low + high)·s + jerk·(s⁴ − δ²)/(4s), a quartic without its cubic term.
    /// </summary>
    private double NoneFlat(double distance, double highest)
    {
        double sum = _low + _high, delta = (_high - _low) / _j;
        double least = Math.Sqrt(delta), far = Math.Max(0, 4 * distance / _j + delta * least);
        if (sum == 0 && delta == 0) return Math.Cbrt(far);

        double end = Math.Sqrt((highest - _low) / _j) + Math.Sqrt(Math.Max(0, highest - _high) / _j);
        double a = 4 * sum / _j, b = -4 * distance / _j;
        // Beyond the root for sure: what the cube alone needs, and what falls back without it.
        double s = Math.Max(least, Math.Min(end, Math.Cbrt(far) + (a < 0 ? Math.Sqrt(-a) : 0)));
        for (int i = 0; i < MostSteps; i++)
        {
            double s2 = s * s;
            double f = (s2 + a) * s2 + b * s - delta * delta;
            double slope = (4 * s2 + 2 * a) * s + b;
            double next = Math.Max(least, s - f / slope);
            if (!(next < s)) break;
            s = next;
        }

        return s;
    }

    private const int MostSteps = 100;

    /// <summary>The farthest displacement in a time, which must be at least that of the ramp from one end's velocity to the other's.</summary>
    public double Farthest(double time)
    {
        double whole = Ramp(_v - _low) + Ramp(_v - _high);
        if (time >= whole) return By(_v) + _v * (time - whole);

        double sum = _low + _high, s = time / 2, delta = (_high - _low) / _j;
        double x = s > 0 ? (s + delta / s) / 2 : 0;
        if (x < _round) return s > 0 ? sum * s + _j * (s * s * s - delta * delta / s) / 4 : 0;

        double peak = (sum + _a * (time - 2 * _round)) / 2, brief = 0;
        if (_knee == 0 || peak - _high >= _knee) brief = (peak - _high) / _a + _round;
        else
        {
            double left = (time - _round - (_high - _low) / _a) / _round;
            double y = _round * (Math.Sqrt(1 + Math.Max(0, left)) - 1);
            (peak, brief) = (_high + _j * y * y, 2 * y);
        }

        return ((_low + peak) * (time - brief) + (_high + peak) * brief) / 2;
    }
}

using System.Runtime.CompilerServices;

namespace Trivet.Numerics.Profiles;

/// <summary>
/// The pairs (u, x) that linear limits allow. Each limit is a stripe of u between two parallel lines low + slope·x and high + slope·x; one more
/// stripe leads to what the next point allows; x has bounds of its own. The gap, highest lower line less lowest upper line, is convex
/// and piecewise linear in x; a Newton iteration from outside ends after finitely many steps exactly at the edge. That eliminates u without
/// trying every pair of lines. And any pair that crosses gives an outside start: the pair of the step before mostly ends it at once.
/// </summary>
internal ref struct Wedge
{
    /// <summary>Stands for the line that only leads to what the next point allows.</summary>
    public const int Ahead = -2;

    /// <summary>A coefficient of u this small beside that of x over the length of the path limits x alone.</summary>
    private const double Nothing = 1e-12;

    /// <summary>Relative to the lines' own size: below it a gap is rounding.</summary>
    private const double Rounding = 1e-13;

    /// <summary>Stands for no bound of x, and still may be multiplied.</summary>
    private const double Unlimited = 1e150;

    private readonly Span<double> _high, _low, _slope;
    private readonly Span<int> _limit;
    private int _count;
    private double _aheadHigh = double.PositiveInfinity, _aheadLow = double.NegativeInfinity, _aheadSlope = 0;
    // The lines at x = 0.
    private double _restHigh = double.PositiveInfinity, _restLow = double.NegativeInfinity;

    /// <param name="high">Room for the stripes: two for each limit; as the next three.</param>
    /// <param name="count">How many stripes are in it already.</param>
    public Wedge(Span<double> high, Span<double> low, Span<double> slope, Span<int> limit, int count = 0)
    {
        _high = high;
        _low = low;
        _slope = slope;
        _limit = limit;
        _count = count;
    }

    public readonly int Count => _count;

    public double Least { get; private set; } = 0;
    public double Most { get; private set; } = Unlimited;

    /// <summary>The limit behind <see cref="Most"/>.</summary>
    public int MostLimit { get; private set; } = PathTraversal.NoLimit;

    /// <summary>x ≤ most.</summary>
    public void Cap(double most, int limit)
    {
        if (most < Most) (Most, MostLimit) = (most, limit);
    }

    /// <summary>u between (least − x)/step and (most − x)/step: leads to an x between the two over the step.</summary>
    public void Lead(double least, double most, double step)
    {
        double inverse = 1 / step;
        (_aheadHigh, _aheadLow, _aheadSlope) = (most * inverse, least * inverse, -inverse);
    }

    /// <summary>A limit along a step of length h from point i on.</summary>
    /// <param name="length">Of the whole path, to judge what is nothing.</param>
    public void Along(PathRow row, int i, double h, double length)
    {
        if (row.Faint[i])
        {
            At(row.Points[i], 0, length, row.Limit);
            At(row.Points[i + 1], 2 * h, length, row.Limit);
        }
        else At(row.Middles[i], h, length, row.Limit);
    }

    /// <summary>A limit at one place, where x is lead·u more than the x meant.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void At(in PathBand band, double lead, double length, int limit)
    {
        double b = band.B, a = band.A + lead * b, low = band.Low, high = band.High;
        if (Math.Abs(a) > Nothing * length * Math.Abs(b))
        {
            double inverse = 1 / a, one = low * inverse, two = high * inverse;
            double above = double.MaxNative(one, two), below = double.MinNative(one, two);
            int k = _count++;
            (_high[k], _low[k], _slope[k], _limit[k]) = (above, below, -b * inverse, limit);
            _restHigh = double.MinNative(_restHigh, above);
            _restLow = double.MaxNative(_restLow, below);
        }
        else Bound(b, low, high, limit);
    }

    private void Bound(double b, double low, double high, int limit)
    {
        if (b == 0)
        {
            if (!(low <= 0 && high >= 0)) Cap(double.NegativeInfinity, limit);
            return;
        }

        Cap(b > 0 ? high / b : low / b, limit);
        Least = Math.Max(Least, b > 0 ? low / b : high / b);
    }

    /// <summary>The largest u at x, and the limit that says so.</summary>
    public readonly double Highest(double x, out int limit)
    {
        double u = _aheadHigh + _aheadSlope * x;
        limit = Ahead;
        for (int k = 0; k < _count; k++)
        {
            double here = _high[k] + _slope[k] * x;
            limit = here < u ? _limit[k] : limit;
            u = double.MinNative(u, here);
        }

        return u;
    }

    private readonly double Gap(double x, out double size)
    {
        double u = _aheadHigh + _aheadSlope * x, l = _aheadLow + _aheadSlope * x;
        for (int k = 0; k < _count; k++)
        {
            double rise = _slope[k] * x;
            u = double.MinNative(u, _high[k] + rise);
            l = double.MaxNative(l, _low[k] + rise);
        }

        size = Math.Abs(u) + Math.Abs(l);
        return l - u;
    }

    /// <summary>The lines that rule at x: the lowest upper and the highest lower one; −1 is the line that leads on.</summary>
    private readonly (int Upper, int Lower) Ruling(double x)
    {
        int upper = -1, lower = -1;
        double u = _aheadHigh + _aheadSlope * x, l = _aheadLow + _aheadSlope * x;
        for (int k = 0; k < _count; k++)
        {
            double rise = _slope[k] * x, high = _high[k] + rise, low = _low[k] + rise;
            if (high < u) (u, upper) = (high, k);
            if (low > l) (l, lower) = (low, k);
        }

        return (upper, lower);
    }

    /// <summary>Where two lines cross, not a number where the gap between them does not grow with x.</summary>
    private readonly double Crossing(int upper, int lower)
    {
        double rise = (lower < 0 ? _aheadSlope : _slope[lower]) - (upper < 0 ? _aheadSlope : _slope[upper]);
        return rise > 0 ? ((upper < 0 ? _aheadHigh : _high[upper]) - (lower < 0 ? _aheadLow : _low[lower])) / rise : double.NaN;
    }

    /// <summary>
    /// The largest x with some u, not a number where there is none, and the limit that bounds it (or contradicts). Of two lines that meet
    /// there the lower one is named, unless that only leads on.
    /// </summary>
    /// <param name="pair">Lines that met in the step before, and then those that meet here: only a place to begin.</param>
    public readonly double LargestX(ref (int Upper, int Lower) pair, out int limit)
    {
        double x = Most;
        limit = MostLimit;
        if (!(x >= Least)) return double.NaN;
        if (pair.Upper < _count && pair.Lower < _count && Crossing(pair.Upper, pair.Lower) is var start && start < x && start >= Least)
        {
            x = start;
            limit = Named(pair);
        }

        for (int i = 0; i <= 2 * _count + 2; i++)
        {
            double gap = Gap(x, out double size);
            if (gap <= Rounding * size) return x;
            pair = Ruling(x);
            limit = Named(pair);
            double next = Crossing(pair.Upper, pair.Lower);
            if (!(next < x)) return double.IsNaN(next) ? double.NaN : x;
            x = next;
            if (!(x >= Least)) return Least == 0 && _restLow <= _restHigh && _aheadLow <= _restHigh && _restLow <= _aheadHigh ? 0 : double.NaN;
        }

        return x;
    }

    private readonly int Named((int Upper, int Lower) pair) => pair.Lower >= 0 ? _limit[pair.Lower] : pair.Upper >= 0 ? _limit[pair.Upper] : PathTraversal.NoLimit;

    /// <summary>The smallest x with some u; for a wedge that has some.</summary>
    public readonly double SmallestX(double largest)
    {
        if (Least == 0 && double.MaxNative(_restLow, _aheadLow) <= double.MinNative(_restHigh, _aheadHigh)) return 0;
        double x = Least;
        for (int i = 0; i <= 2 * _count + 2 && x < largest; i++)
        {
            double gap = Gap(x, out double size);
            if (gap <= Rounding * size) return x;
            var (upper, lower) = Ruling(x);
            // The gap shrinks as x grows: the same crossing with the lines' parts changed.
            double fall = (upper < 0 ? _aheadSlope : _slope[upper]) - (lower < 0 ? _aheadSlope : _slope[lower]);
            double next = x + gap / fall;
            if (!(next > x)) return x;
            x = next;
        }

        return Math.Min(x, largest);
    }
}

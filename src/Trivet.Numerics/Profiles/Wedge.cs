using System.Runtime.CompilerServices;

namespace Trivet.Numerics.Profiles;

/// <summary>
/// The pairs (u, x) that linear limits allow: u under each upper line and over each lower line offset + slope·x, x between bounds. The gap,
/// highest lower line less lowest upper line, is convex and piecewise linear in x; so a Newton iteration from outside ends after finitely
/// many steps exactly at the edge. That eliminates u without trying every pair of lines.
/// </summary>
internal ref struct Wedge
{
    /// <summary>A coefficient of u this small beside that of x over the length of the path limits x alone.</summary>
    private const double Nothing = 1e-12;

    /// <summary>Relative to the lines' own size: below it a gap is rounding.</summary>
    private const double Rounding = 1e-13;

    /// <summary>Stands for no bound of x, and still may be multiplied.</summary>
    private const double Unlimited = 1e150;

    // Upper lines from the front, lower lines from the back.
    private readonly Span<Line> _lines;
    private int _uppers, _lowers;

    internal record struct Line(double Offset, double Slope, int Limit);

    public Wedge(Span<Line> room)
    {
        _lines = room;
        _lowers = room.Length;
    }

    /// <summary>How many upper lines there are: the first ones of the room given.</summary>
    public readonly int Uppers => _uppers;

    public double Least { get; private set; } = 0;
    public double Most { get; private set; } = Unlimited;

    /// <summary>The limit behind <see cref="Most"/>.</summary>
    public int MostLimit { get; private set; } = PathTraversal.NoLimit;

    /// <summary>x ≤ most.</summary>
    public void Cap(double most, int limit)
    {
        if (most < Most) (Most, MostLimit) = (most, limit);
    }

    /// <summary>A limit along a step of length h from point i on.</summary>
    /// <param name="length">Of the whole path, to judge what is nothing.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Along(PathRow row, int i, double h, double length)
    {
        if (row.Faint[i])
        {
            Between(row.Points, i, 0, length, row.Limit);
            Between(row.Points, i + 1, 2 * h, length, row.Limit);
        }
        else Between(row.Middles, i, h, length, row.Limit);
    }

    /// <summary>Both sides of a limit at one place, where x is lead·u more than the x meant.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Between(PathLines lines, int at, double lead, double length, int limit)
    {
        double a = lines.A[at], up = lines.BUp[at], down = lines.BDown[at];
        Under(a + lead * up, up, lines.Up[at], length, limit);
        Under(-(a + lead * down), -down, -lines.Down[at], length, limit);
    }

    /// <summary>a·u + b·x ≤ c.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Under(double a, double b, double c, double length, int limit)
    {
        if (Math.Abs(a) > Nothing * length * Math.Abs(b))
        {
            double inverse = 1 / a;
            _lines[a > 0 ? _uppers++ : --_lowers] = new(c * inverse, -b * inverse, limit);
        }
        else if (b > 0) Cap(c / b, limit);
        else if (b < 0) Least = Math.Max(Least, c / b);
        else if (c < 0) Cap(double.NegativeInfinity, limit);
    }

    /// <summary>u between (least − x)/step and (most − x)/step: leads to an x between the two over the step.</summary>
    public void Lead(double least, double most, double step, int limit)
    {
        double inverse = 1 / step;
        _lines[_uppers++] = new(most * inverse, -inverse, limit);
        _lines[--_lowers] = new(least * inverse, -inverse, limit);
    }

    /// <summary>The largest u at x.</summary>
    public readonly double Highest(double x)
    {
        double u = double.PositiveInfinity;
        foreach (ref readonly var line in _lines[.._uppers]) u = Math.Min(u, line.Offset + line.Slope * x);
        return u;
    }

    /// <summary>The smallest u at x.</summary>
    public readonly double Lowest(double x)
    {
        double u = double.NegativeInfinity;
        foreach (ref readonly var line in _lines[_lowers..]) u = Math.Max(u, line.Offset + line.Slope * x);
        return u;
    }

    /// <summary>The upper line that rules at x.</summary>
    public readonly Line UpperAt(double x)
    {
        var best = _lines[0];
        foreach (ref readonly var line in _lines[1.._uppers])
            if (line.Offset + line.Slope * x < best.Offset + best.Slope * x) best = line;
        return best;
    }

    private readonly Line LowerAt(double x)
    {
        var best = _lines[^1];
        foreach (ref readonly var line in _lines[_lowers..^1])
            if (line.Offset + line.Slope * x > best.Offset + best.Slope * x) best = line;
        return best;
    }

    /// <summary>
    /// The largest x with some u, not a number where there is none, and the limit that bounds it (or contradicts). Of two lines that meet
    /// there the lower one is named, unless that only leads on.
    /// </summary>
    public readonly double LargestX(out int limit)
    {
        double x = Most;
        limit = MostLimit;
        if (!(x >= Least)) return double.NaN;
        for (int i = 0; i <= 2 * _lines.Length; i++)
        {
            double high = Highest(x), low = Lowest(x), gap = low - high;
            if (gap <= 0) return x;
            Line upper = UpperAt(x), lower = LowerAt(x);
            limit = lower.Limit >= 0 ? lower.Limit : upper.Limit;
            double rise = lower.Slope - upper.Slope;
            if (!(rise > 0)) return gap <= Rounding * (Math.Abs(high) + Math.Abs(low)) ? x : double.NaN;
            double next = (upper.Offset - lower.Offset) / rise;
            if (!(next < x)) return x;
            x = next;
            if (!(x >= Least)) return x >= -Rounding * Most && Least == 0 ? 0 : double.NaN;
        }

        return x;
    }

    /// <summary>The smallest x with some u, where there is one below a given x.</summary>
    public readonly double SmallestX(double most)
    {
        double x = Least;
        for (int i = 0; i <= 2 * _lines.Length && x < most; i++)
        {
            double gap = Lowest(x) - Highest(x);
            if (gap <= 0) return x;
            Line upper = UpperAt(x), lower = LowerAt(x);
            double next = (upper.Offset - lower.Offset) / (lower.Slope - upper.Slope);
            if (!(next > x)) return x;
            x = next;
        }

        return Math.Min(x, most);
    }
}

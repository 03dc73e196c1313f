namespace Trivet.Numerics.Profiles;

/// <summary>A limit at every point of the grid and at the middle of every step.</summary>
internal sealed class PathRow
{
    private readonly SpeedCurve? _curve;
    private readonly bool _faster;
    private readonly double[] _rate = [], _rateMiddle = [];

    /// <summary>low ≤ a·u + b·x + c ≤ high.</summary>
    public PathRow(int limit, ReadOnlySpan<double> s, ReadOnlySpan<double> a, ReadOnlySpan<double> b, ReadOnlySpan<double> c, double low, double high)
        : this(limit, s, a, b, c)
    {
        Points.Between(low, high);
        Middles.Between(low, high);
    }

    /// <summary>|a·u + b·x + c| ≤ effort by a curve, of which this is one of two lines; <see cref="Linearise"/> puts it in place.</summary>
    public PathRow(
        int limit, ReadOnlySpan<double> s, ReadOnlySpan<double> a, ReadOnlySpan<double> b, ReadOnlySpan<double> c,
        ReadOnlySpan<double> rate, SpeedCurve curve, bool faster)
        : this(limit, s, a, b, c)
    {
        (_curve, _faster) = (curve, faster);
        _rate = rate.ToArray();
        _rateMiddle = Middle(rate);
    }

    private PathRow(int limit, ReadOnlySpan<double> s, ReadOnlySpan<double> a, ReadOnlySpan<double> b, ReadOnlySpan<double> c)
    {
        Limit = limit;
        Points = new(a.ToArray(), b.ToArray(), c.ToArray());
        Middles = new(Middle(a), Middle(b), Middle(c));
        Faint = new bool[s.Length - 1];
        for (int i = 0; i < Faint.Length; i++)
            Faint[i] = a[i] * a[i + 1] <= 0 || Math.Abs(a[i] + a[i + 1]) <= 2 * (s[i + 1] - s[i]) * Math.Abs(b[i] + b[i + 1]);
    }

    public int Limit { get; }
    public PathLines Points { get; }
    public PathLines Middles { get; }

    /// <summary>
    /// Steps where the coefficient of u passes through zero, or is so small that u over the step changes b·x by as much as a·u: the middle alone
    /// would leave u almost free there, so such a step keeps the limit at both its ends.
    /// </summary>
    public bool[] Faint { get; }

    public bool FallsWithSpeed => _curve is not null;

    /// <summary>Puts a limit that falls with speed into lines that touch it at the speeds of a solution; leaves others alone.</summary>
    /// <param name="x">ṡ² at each point; empty for the effort at standstill all along.</param>
    public void Linearise(ReadOnlySpan<double> x)
    {
        if (_curve is null) return;
        if (x.IsEmpty)
        {
            Points.Between(-_curve.AtRest, _curve.AtRest);
            Middles.Between(-_curve.AtRest, _curve.AtRest);
            return;
        }

        Points.Touch(_curve, _faster, _rate, x);
        Middles.Touch(_curve, _faster, _rateMiddle, Middle(x));
    }

    private static double[] Middle(ReadOnlySpan<double> values)
    {
        double[] middle = new double[values.Length - 1];
        for (int i = 0; i < middle.Length; i++) middle[i] = (values[i] + values[i + 1]) / 2;
        return middle;
    }
}

/// <summary>A limit as lines at many places: A·u + BUp·x ≤ Up and A·u + BDown·x ≥ Down.</summary>
internal sealed class PathLines(double[] a, double[] b, double[] c)
{
    public double[] A { get; } = a;
    public double[] BUp { get; } = [.. b];
    public double[] BDown { get; } = [.. b];
    public double[] Up { get; } = new double[a.Length];
    public double[] Down { get; } = new double[a.Length];

    public void Between(double low, double high)
    {
        for (int i = 0; i < Up.Length; i++) (BUp[i], BDown[i], Up[i], Down[i]) = (b[i], b[i], high - c[i], low - c[i]);
    }

    /// <summary>
    /// √x is replaced by its tangent, which lies above it, so whatever keeps the line keeps the curve.
    /// </summary>
    /// <param name="rate">dq/ds of the coordinate whose speed counts.</param>
    /// <param name="x">ṡ² where the lines touch, above zero.</param>
    public void Touch(SpeedCurve curve, bool faster, ReadOnlySpan<double> rate, ReadOnlySpan<double> x)
    {
        for (int i = 0; i < Up.Length; i++)
        {
            double root = Math.Sqrt(x[i]), speed = Math.Min(Math.Abs(rate[i]) * root, curve.Fastest);
            var falls = curve.Falls(speed);
            double fall = faster ? falls.Faster : falls.Slower, slope = fall * Math.Abs(rate[i]) / (2 * root);
            double most = curve.At(speed) + fall * (speed - Math.Abs(rate[i]) * root / 2);
            (BUp[i], BDown[i], Up[i], Down[i]) = (b[i] + slope, b[i] - slope, most - c[i], -most - c[i]);
        }
    }
}

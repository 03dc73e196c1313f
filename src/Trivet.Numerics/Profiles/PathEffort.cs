namespace Trivet.Numerics.Profiles;

/// <summary>
/// A limit that falls with speed, |a·u + b·x + c| ≤ curve(|q′|·√x), as four rows: two lines that stand for the curve, on either side of zero.
/// √x is replaced by its tangent at the last solution. The tangent lies above √x, so whatever keeps the line keeps the curve; and it touches, so
/// the last solution stays possible and the next is no slower.
/// </summary>
internal sealed class PathEffort
{
    private readonly Place[] _points, _middles;
    private readonly SpeedCurve _curve;

    /// <summary>b, c and |q′| at one place.</summary>
    private readonly record struct Place(double B, double C, double Rate);

    public PathEffort(
        int limit, ReadOnlySpan<double> s, ReadOnlySpan<double> a, ReadOnlySpan<double> b, ReadOnlySpan<double> c, ReadOnlySpan<double> rate, SpeedCurve curve)
    {
        _curve = curve;
        _points = new Place[s.Length];
        _middles = new Place[s.Length - 1];
        for (int i = 0; i < s.Length; i++) _points[i] = new(b[i], c[i], Math.Abs(rate[i]));
        for (int i = 0; i < _middles.Length; i++)
            _middles[i] = new((b[i] + b[i + 1]) / 2, (c[i] + c[i + 1]) / 2, Math.Abs(rate[i] + rate[i + 1]) / 2);

        double most = curve.AtRest, none = double.PositiveInfinity;
        Rows = [new(limit, s, a, b, c, -none, most), new(limit, s, a, b, c, -none, most), new(limit, s, a, b, c, -most, none), new(limit, s, a, b, c, -most, none)];
    }

    /// <summary>Above zero for slower and for faster than the last solution, then below zero.</summary>
    public PathRow[] Rows { get; }

    /// <summary>Takes the effort at standstill for every speed: more than there is, but a place to begin.</summary>
    public void Relax()
    {
        for (int i = 0; i < _points.Length; i++) Put(i, _points[i], atPoint: true, new(0, _curve.AtRest), new(0, _curve.AtRest));
        for (int i = 0; i < _middles.Length; i++) Put(i, _middles[i], atPoint: false, new(0, _curve.AtRest), new(0, _curve.AtRest));
    }

    /// <summary>Puts the lines where they touch the curve at the speeds of a solution.</summary>
    /// <param name="x">ṡ² at each point, above zero.</param>
    public void Touch(ReadOnlySpan<double> x)
    {
        for (int i = 0; i < x.Length; i++) Touch(i, _points[i], atPoint: true, x[i]);
        for (int i = 0; i < _middles.Length; i++) Touch(i, _middles[i], atPoint: false, (x[i] + x[i + 1]) / 2);
    }

    private void Touch(int i, in Place place, bool atPoint, double x)
    {
        double along = place.Rate * Math.Sqrt(x), speed = Math.Min(along, _curve.Fastest), effort = _curve.At(speed);
        var (slower, faster) = _curve.Falls(speed);
        // effort − fall·(q̇ − speed) with q̇ = |q′|·√x below |q′|·(√x̂ + x/√x̂)/2.
        Line Below(double fall) => new(fall * along / (2 * x), effort + fall * (speed - along / 2));
        Put(i, place, atPoint, Below(slower), Below(faster));
    }

    /// <summary>most − slope·x.</summary>
    private readonly record struct Line(double Slope, double Most);

    private void Put(int i, in Place place, bool atPoint, Line slower, Line faster)
    {
        for (int side = 0; side < 2; side++)
        {
            var line = side == 0 ? slower : faster;
            ref var up = ref (atPoint ? Rows[side].Points : Rows[side].Middles)[i];
            ref var down = ref (atPoint ? Rows[2 + side].Points : Rows[2 + side].Middles)[i];
            (up.B, up.High) = (place.B + line.Slope, line.Most - place.C);
            (down.B, down.Low) = (place.B - line.Slope, -line.Most - place.C);
        }
    }
}

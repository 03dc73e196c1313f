using System.Runtime.InteropServices;

namespace Trivet.Numerics.Profiles;

/// <summary>
/// A path sampled on a grid of its parameter s, with limits on how it may be run through: with x = ṡ² and u = s̈, each limit is linear in
/// (u, x) at each point. For a coordinate q(s): q̇ = q′·√x, q̈ = q′·u + q″·x; a force that is linear in q̇² and q̈ has the same form.
/// Limits are numbered in the order they are added; the number names them in the result.
/// </summary>
public sealed class PathLimits
{
    private readonly double[] _s;
    private readonly List<PathRow> _rows = [];
    private readonly List<PathEffort> _efforts = [];

    /// <param name="s">Strictly rising, two points at least, finite: metres or any other measure along the path.</param>
    public PathLimits(ReadOnlySpan<double> s)
    {
        if (s.Length < 2) throw new ArgumentException("A path has two points at least.", nameof(s));
        for (int i = 0; i < s.Length; i++)
            if (!double.IsFinite(s[i]) || (i > 0 && !(s[i] > s[i - 1]))) throw new ArgumentException($"The parameter rises from point to point: not so at point {i}.", nameof(s));
        _s = s.ToArray();
        Faint = new bool[s.Length - 1];
        Cap = new double[s.Length];
        CapLimit = new int[s.Length];
        Array.Fill(Cap, double.PositiveInfinity);
        Array.Fill(CapLimit, PathTraversal.NoLimit);
    }

    public ReadOnlySpan<double> S => _s;
    public int Points => _s.Length;

    /// <summary>How many limits were added.</summary>
    public int Count { get; private set; }

    /// <summary>ṡ at the first point, 0 or more.</summary>
    public double StartSpeed { get; init; }

    /// <summary>ṡ at the last point, 0 or more.</summary>
    public double EndSpeed { get; init; }

    /// <summary>The first coefficient that is not finite.</summary>
    internal (int Point, int Limit)? Broken { get; private set; }

    /// <summary>Steps where the coefficient of u of some row is near zero.</summary>
    internal bool[] Faint { get; }

    internal double[] Cap { get; }
    internal int[] CapLimit { get; }
    internal ReadOnlySpan<PathRow> Rows => CollectionsMarshal.AsSpan(_rows);
    internal List<PathEffort> Efforts => _efforts;

    /// <summary>Limits |q̇|: q′ at each point, and the largest magnitude.</summary>
    public int Velocity(ReadOnlySpan<double> rate, double most)
    {
        Expect(rate);
        for (int i = 0; i < rate.Length; i++)
        {
            double speed = most / Math.Abs(rate[i]);
            Lower(i, speed * speed, Count);
        }

        return Count++;
    }

    /// <summary>low ≤ a·u + b·x + c ≤ high at each point.</summary>
    public int Band(ReadOnlySpan<double> a, ReadOnlySpan<double> b, ReadOnlySpan<double> c, double low, double high)
    {
        Expect(a);
        Expect(b);
        Expect(c);
        Add(new(Count, _s, a, b, c, low, high));
        return Count++;
    }

    /// <summary>The same with c = 0: an acceleration, a = q′ and b = q″.</summary>
    public int Band(ReadOnlySpan<double> a, ReadOnlySpan<double> b, double low, double high) => Band(a, b, new double[Points], low, high);

    /// <summary>|a·u + b·x + c| ≤ effort at the speed |q′|·√x: a force against a curve that falls with speed.</summary>
    /// <param name="rate">q′ at each point.</param>
    public int Effort(ReadOnlySpan<double> a, ReadOnlySpan<double> b, ReadOnlySpan<double> c, ReadOnlySpan<double> rate, SpeedCurve curve)
    {
        Expect(a);
        Expect(b);
        Expect(c);
        Expect(rate);
        var effort = new PathEffort(Count, _s, a, b, c, rate, curve);
        _efforts.Add(effort);
        foreach (var row in effort.Rows) Add(row);
        for (int i = 0; i < Points; i++)
        {
            double speed = curve.Fastest / Math.Abs(rate[i]);
            Lower(i, speed * speed, Count);
        }

        return Count++;
    }

    private void Add(PathRow row)
    {
        _rows.Add(row);
        for (int i = 0; i < Faint.Length; i++) Faint[i] |= row.Faint[i];
    }

    private void Lower(int point, double cap, int limit)
    {
        if (!(cap < Cap[point])) return;
        (Cap[point], CapLimit[point]) = (cap, limit);
    }

    private void Expect(ReadOnlySpan<double> values)
    {
        if (values.Length != Points) throw new ArgumentException($"Each coefficient has a value at each of the {Points} points, not {values.Length}.", nameof(values));
        int broken = values.IndexOfAnyExceptInRange(double.MinValue, double.MaxValue);
        if (broken >= 0) Broken ??= (broken, Count);
    }
}

namespace Trivet.Numerics.Profiles;

/// <summary>low ≤ a·u + b·x ≤ high at one place.</summary>
internal record struct PathBand(double A, double B, double Low, double High)
{
    /// <summary>The mean of two, coefficient by coefficient.</summary>
    public static PathBand Between(in PathBand one, in PathBand two) => new((one.A + two.A) / 2, (one.B + two.B) / 2, (one.Low + two.Low) / 2, (one.High + two.High) / 2);
}

/// <summary>A limit at every point of the grid and at the middle of every step.</summary>
internal sealed class PathRow
{
    /// <param name="c">What a·u + b·x comes on top of.</param>
    public PathRow(int limit, ReadOnlySpan<double> s, ReadOnlySpan<double> a, ReadOnlySpan<double> b, ReadOnlySpan<double> c, double low, double high)
    {
        Limit = limit;
        Points = new PathBand[s.Length];
        Middles = new PathBand[s.Length - 1];
        Faint = new bool[s.Length - 1];
        for (int i = 0; i < s.Length; i++) Points[i] = new(a[i], b[i], low - c[i], high - c[i]);
        for (int i = 0; i < Middles.Length; i++)
        {
            Middles[i] = PathBand.Between(Points[i], Points[i + 1]);
            Faint[i] = a[i] * a[i + 1] <= 0 || Math.Abs(Middles[i].A) <= 2 * (s[i + 1] - s[i]) * Math.Abs(Middles[i].B);
        }
    }

    public int Limit { get; }
    public PathBand[] Points { get; }
    public PathBand[] Middles { get; }

    /// <summary>
    /// Steps where the coefficient of u passes through zero, or is so small that u over the step changes b·x by as much as a·u: the middle alone
    /// would leave u almost free there, so such a step keeps the limit at both its ends.
    /// </summary>
    public bool[] Faint { get; }
}

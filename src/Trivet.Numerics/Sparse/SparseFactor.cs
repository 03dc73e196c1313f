namespace Trivet.Numerics.Sparse;

/// <summary>
/// A symmetric matrix as L·D·Lᵀ, L with ones on its diagonal, without pivoting: for positive definite matrices always possible, for others with
/// luck. The signs in D are those of the eigenvalues (Sylvester's law of inertia; [GolubVanLoan2013, 8.1.5], from memory).
/// </summary>
public sealed class SparseFactor
{
    /// <summary>A pivot of less than this part of what stood on its place to begin with is a rounding, not a number.</summary>
    private const double Vanishing = 1e-13;

    private readonly Pattern _pattern;
    private readonly double[] _panels;
    private readonly double[] _pivots;

    private SparseFactor(Pattern pattern)
    {
        _pattern = pattern;
        _panels = new double[pattern.Entries];
        _pivots = new double[pattern.Unknowns];
    }

    /// <summary>First unknown whose pivot vanished: nothing holds it; −1 where all is well. A factor with such a pivot solves nothing.</summary>
    public int Vanished { get; private set; } = -1;

    /// <summary>Number of negative pivots: of eigenvalues below zero.</summary>
    public int Negative { get; private set; }

    /// <summary>Factors Σ patches + shift·Σ shifted; both lists over the unknowns that the pattern was made with, in its order.</summary>
    public static SparseFactor Of(Pattern pattern, IReadOnlyList<Patch> patches, IReadOnlyList<Patch>? shifted = null, double shift = 0)
    {
        var factor = new SparseFactor(pattern);
        factor.Add(patches, 1, 0);
        if (shifted is not null) factor.Add(shifted, shift, patches.Count);
        factor.Eliminate();
        return factor;
    }

    /// <summary>Solves in place.</summary>
    public void Solve(Span<double> x)
    {
        var order = _pattern.Order;
        foreach (int g in order)
        {
            int s = _pattern.Size(g), at = _pattern.PanelStart[g], first = _pattern.First(g);
            int[] rows = _pattern.PanelRows[g];
            for (int r = 1; r < rows.Length; r++)
            {
                double sum = 0;
                int row = at + r * s, filled = Math.Min(r, s);
                for (int k = 0; k < filled; k++) sum += _panels[row + k] * x[first + k];
                x[rows[r]] -= sum;
            }
        }

        for (int i = 0; i < x.Length; i++) x[i] /= _pivots[i];
        for (int o = order.Length - 1; o >= 0; o--)
        {
            int g = order[o], s = _pattern.Size(g), at = _pattern.PanelStart[g], first = _pattern.First(g);
            int[] rows = _pattern.PanelRows[g];
            for (int r = rows.Length - 1; r >= 1; r--)
            {
                int row = at + r * s, filled = Math.Min(r, s);
                double value = x[rows[r]];
                for (int k = 0; k < filled; k++) x[first + k] -= _panels[row + k] * value;
            }
        }
    }

    /// <param name="from">Index in the pattern of the first patch of the list.</param>
    private void Add(IReadOnlyList<Patch> patches, double factor, int from)
    {
        if (from + patches.Count > _pattern.Maps.Length) throw new ArgumentException("The pattern was made of fewer patches.", nameof(patches));
        for (int p = 0; p < patches.Count; p++)
        {
            int[] map = _pattern.Maps[from + p];
            double[] values = patches[p].Values;
            for (int i = 0; i < map.Length; i++)
                if (map[i] >= 0) _panels[map[i]] += factor * values[i];
        }
    }

    private void Eliminate()
    {
        double[] times = [];
        foreach (int g in _pattern.Order)
        {
            int s = _pattern.Size(g), at = _pattern.PanelStart[g], first = _pattern.First(g), rows = _pattern.PanelRows[g].Length;
            if (times.Length < rows * s) times = new double[rows * s];
            if (!Panel(at, s, first, rows)) return;
            for (int r = s; r < rows; r++)
                for (int k = 0; k < s; k++) times[r * s + k] = _panels[at + r * s + k] * _pivots[first + k];

            // What is left of the rows below, pair by pair of neighbours, goes into the panel of the earlier one.
            var later = _pattern.Later(g);
            for (int a = 0; a < later.Length; a++)
            {
                int ga = later[a], sa = _pattern.Size(ga), target = _pattern.PanelStart[ga], fromA = _pattern.RowOf(g, a);
                for (int b = a; b < later.Length; b++)
                {
                    int gb = later[b], fromB = _pattern.RowOf(g, b), sb = _pattern.Size(gb), into = b == a ? 0 : _pattern.RowOfGroup(ga, gb);
                    for (int i = 0; i < sb; i++)
                    {
                        int row = target + (into + i) * sa, own = at + (fromB + i) * s, end = b == a ? i + 1 : sa;
                        for (int j = 0; j < end; j++)
                        {
                            double sum = 0;
                            int other = (fromA + j) * s;
                            for (int k = 0; k < s; k++) sum += _panels[own + k] * times[other + k];
                            _panels[row + j] -= sum;
                        }
                    }
                }
            }
        }
    }

    /// <summary>Factors one panel by its own columns.</summary>
    private bool Panel(int at, int s, int first, int rows)
    {
        for (int k = 0; k < s; k++)
        {
            int rowK = at + k * s;
            double stood = Math.Abs(_panels[rowK + k]);
            for (int r = k; r < rows; r++)
            {
                int row = at + r * s;
                double value = _panels[row + k];
                for (int j = 0; j < k; j++) value -= _panels[row + j] * _panels[rowK + j] * _pivots[first + j];
                if (r > k)
                {
                    _panels[row + k] = value / _pivots[first + k];
                    continue;
                }

                if (!(Math.Abs(value) > Vanishing * stood))
                {
                    Vanished = first + k;
                    return false;
                }

                _pivots[first + k] = value;
                if (value < 0) Negative++;
            }
        }

        return true;
    }
}

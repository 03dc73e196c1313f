using System.Collections.Immutable;

namespace Trivet.Numerics.Sparse;

/// <summary>Why the search for modes came to its end.</summary>
public enum ModesEnd
{
    /// <summary>All found, and none lies between that was missed.</summary>
    Found,
    /// <summary>Something can move without any stiffness against it; see <see cref="Modes.Loose"/>.</summary>
    Loose,
    /// <summary>The effort allowed did not suffice. What is there is not to be used.</summary>
    NotConverged,
}

/// <summary>The lowest modes of K·φ = λ·M·φ.</summary>
/// <param name="Values">λ rising.</param>
/// <param name="Vectors">φ of each, with φᵀ·M·φ = 1.</param>
/// <param name="Loose">An unknown that nothing holds; −1 where all are held.</param>
/// <param name="Steps">Solutions with K that it took.</param>
public sealed record Modes(ModesEnd End, ImmutableArray<double> Values, ImmutableArray<double[]> Vectors, int Loose, int Steps)
{
    public bool Usable => End == ModesEnd.Found;
}

/// <summary>
/// Lanczos' method on K⁻¹·M with several starting vectors at once, so that a mode that occurs two or three times is found as often, every vector
/// orthogonalised twice against all ("band Lanczos"; [Parlett1998, 13], from memory). K is positive definite, M may be singular.
/// <para>
/// Candidate, then check: K − σ·M with σ just above the last mode has as many negative pivots as there are modes below σ. Where that is more than
/// were found, the search goes on with a new starting vector.
/// </para>
/// </summary>
public static class LowestModes
{
    private const int Block = 3;

    /// <summary>Largest part of 1/λ that a mode may be off its place; λ itself is then off by the square of it.</summary>
    private const double Converged = 1e-7;

    /// <summary>Modes closer than this part of λ are one place when they are counted.</summary>
    private const double Apart = 1e-4;

    /// <param name="pattern">Of the patches of stiffness, then those of mass.</param>
    /// <param name="factor">Of the stiffness alone.</param>
    /// <param name="count">Modes wanted; fewer come back where there are fewer.</param>
    public static Modes Of(Pattern pattern, SparseFactor factor, IReadOnlyList<Patch> stiffness, IReadOnlyList<Patch> mass, int count)
    {
        if (factor.Vanished >= 0) return new(ModesEnd.Loose, [], [], factor.Vanished, 0);
        return new Search(pattern, factor, stiffness, mass, count).Run();
    }

    private sealed class Search(Pattern pattern, SparseFactor factor, IReadOnlyList<Patch> stiffness, IReadOnlyList<Patch> mass, int count)
    {
        private readonly int _n = pattern.Unknowns;
        private readonly int _most = Math.Min(pattern.Unknowns, 10 * count + 60);
        private readonly List<double[]> _basis = [];
        private readonly List<double[]> _massTimes = [];
        /// <summary>Column j: K⁻¹·M·v_j in terms of the basis.</summary>
        private readonly List<double[]> _columns = [];
        private ulong _seed = 0x9E3779B97F4A7C15;

        public Modes Run()
        {
            for (int i = 0; i < Block; i++) Begin();
            int next = 2 * count + 6;
            while (true)
            {
                while (_columns.Count < Math.Min(next, _basis.Count) && _columns.Count < _most) Step();
                bool all = _columns.Count == _basis.Count || _columns.Count >= _n;
                var (values, vectors) = Ritz();
                int found = Math.Min(count, values.Length);
                if (all || Worst(values, vectors, found) <= Converged)
                {
                    int missed = Missed(values, found);
                    if (missed == 0) return Result(values, vectors, found);
                    if (all && !Begin()) return missed < 0 ? Result(values, vectors, found) : Nothing();
                    if (!all) Begin();
                }

                if (_columns.Count >= _most) return Nothing();
                next += 4;
            }
        }

        private Modes Nothing() => new(ModesEnd.NotConverged, [], [], -1, _columns.Count);

        /// <summary>Another starting vector; false where nothing new is left.</summary>
        private bool Begin()
        {
            var x = new double[_n];
            for (int i = 0; i < _n; i++) x[i] = Random();
            x = Multiply(x);
            factor.Solve(x);
            return Append(x, new double[_basis.Count + 1]);
        }

        private void Step()
        {
            var w = (double[])_massTimes[_columns.Count].Clone();
            factor.Solve(w);
            var column = new double[_basis.Count + 1];
            _columns.Add(column);
            Append(w, column);
        }

        /// <summary>Takes from w what lies along the basis, notes how much that was, and appends the rest where there is one.</summary>
        private bool Append(double[] w, double[] along)
        {
            double before = Math.Sqrt(Math.Max(0, Dense.Dot(w, Multiply(w))));
            for (int pass = 0; pass < 2; pass++)
            {
                for (int i = 0; i < _basis.Count; i++)
                {
                    double h = Dense.Dot(_massTimes[i], w);
                    along[i] += h;
                    Dense.AddScaled(-h, _basis[i], w);
                }
            }

            var mw = Multiply(w);
            double norm = Math.Sqrt(Math.Max(0, Dense.Dot(w, mw)));
            if (!(norm > 1e-11 * before)) return false;
            along[_basis.Count] = norm;
            for (int i = 0; i < _n; i++) (w[i], mw[i]) = (w[i] / norm, mw[i] / norm);
            _basis.Add(w);
            _massTimes.Add(mw);
            return true;
        }

        /// <summary>1/λ falling, and the vectors in terms of the basis that was stepped from.</summary>
        private (double[] Values, double[] Vectors) Ritz()
        {
            int m = _columns.Count;
            var t = new double[m * m];
            for (int j = 0; j < m; j++)
                for (int i = 0; i < m; i++)
                    t[i * m + j] = i < _columns[j].Length && j < _columns[i].Length ? (_columns[j][i] + _columns[i][j]) / 2 : i < _columns[j].Length ? _columns[j][i] : _columns[i][j];
            return SymmetricEigen.Of(t, m);
        }

        private double Worst(double[] values, double[] vectors, int found)
        {
            int m = _columns.Count;
            double worst = 0;
            for (int k = 0; k < found; k++)
            {
                double square = 0;
                for (int i = m; i < _basis.Count; i++)
                {
                    double sum = 0;
                    for (int j = 0; j < m; j++)
                        if (i < _columns[j].Length) sum += _columns[j][i] * vectors[k * m + j];
                    square += sum * sum;
                }

                worst = Math.Max(worst, Math.Sqrt(square) / Math.Max(values[k], double.Epsilon));
            }

            return worst;
        }

        /// <summary>Modes below a place just above the last one found, less those found; negative where the count can not be had.</summary>
        private int Missed(double[] values, int found)
        {
            int last = found;
            // A place between two modes that are told apart; what lies between was found too.
            while (last < values.Length && 1 / values[last] < (1 + Apart) / values[last - 1]) last++;
            double below = 1 / values[last - 1], above = last < values.Length && values[last] > 0 ? 1 / values[last] : 2 * below;
            var shifted = SparseFactor.Of(pattern, stiffness, mass, -(below + Math.Min(above, 1.5 * below)) / 2);
            return shifted.Vanished >= 0 ? -1 : shifted.Negative - last;
        }

        private Modes Result(double[] values, double[] inBasis, int found)
        {
            int m = _columns.Count;
            var vectors = ImmutableArray.CreateBuilder<double[]>(found);
            for (int k = 0; k < found; k++)
            {
                var x = new double[_n];
                for (int j = 0; j < m; j++) Dense.AddScaled(inBasis[k * m + j], _basis[j], x);
                vectors.Add(x);
            }

            return new(ModesEnd.Found, [.. values.Take(found).Select(v => 1 / v)], vectors.ToImmutable(), -1, m);
        }

        private double[] Multiply(double[] x)
        {
            var y = new double[_n];
            foreach (var patch in mass) patch.AddProduct(x, y);
            return y;
        }

        /// <summary>Between −1 and 1, always the same sequence (xorshift; Marsaglia 2003, from memory).</summary>
        private double Random()
        {
            _seed ^= _seed << 13;
            _seed ^= _seed >> 7;
            _seed ^= _seed << 17;
            return (_seed >> 11) * (2.0 / (1L << 53)) - 1;
        }
    }
}

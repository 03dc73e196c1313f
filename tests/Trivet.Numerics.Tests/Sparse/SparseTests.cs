using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using Trivet.Numerics.Sparse;
using Xunit;

namespace Trivet.Numerics.Tests.Sparse;

/// <summary>Factor, eigenvalues and modes against Math.NET's dense algorithms, on random chains of springs and masses.</summary>
public class SparseTests
{
    /// <summary>Groups of three unknowns in a ring with some chords, each tied to its neighbours by a random positive definite patch.</summary>
    private sealed class Ring
    {
        public readonly int[] Groups;
        public readonly List<Patch> Stiffness = [], Mass = [];
        public readonly Pattern Pattern;

        public Ring(int groups, int seed, bool massless = false)
        {
            var random = new Random(seed);
            Groups = [.. Enumerable.Repeat(3, groups)];
            for (int g = 0; g < groups; g++)
            {
                Stiffness.Add(Make(g, (g + 1) % groups));
                if (g % 4 == 0) Stiffness.Add(Make(g, (g + groups / 2) % groups));
                // Every third group may be without mass: the mass matrix is then singular.
                if (!massless || g % 3 != 0) Mass.Add(Make(g, g));
            }

            Pattern = new(Groups, [.. Stiffness.Concat(Mass).Select(p => p.Unknowns)]);

            Patch Make(int a, int b)
            {
                ImmutableArray<int> unknowns = a == b ? [.. Of(a)] : [.. Of(a), .. Of(b)];
                int m = unknowns.Length;
                var q = Matrix<double>.Build.Dense(m, m, (_, _) => random.NextDouble() - 0.5);
                var values = q * q.Transpose() + 0.1 * Matrix<double>.Build.DenseIdentity(m);
                return new(unknowns, values.ToRowMajorArray());
            }
        }

        public Matrix<double> Dense(List<Patch> patches)
        {
            var sum = Matrix<double>.Build.Dense(Pattern.Unknowns, Pattern.Unknowns);
            foreach (var p in patches)
                for (int i = 0; i < p.Size; i++)
                    for (int j = 0; j < p.Size; j++) sum[p.Unknowns[i], p.Unknowns[j]] += p.Values[i * p.Size + j];
            return sum;
        }

        private static IEnumerable<int> Of(int g) => [3 * g, 3 * g + 1, 3 * g + 2];
    }

    [Theory, InlineData(4, 1), InlineData(17, 2), InlineData(40, 3)]
    public void A_factor_solves_as_a_dense_one(int groups, int seed)
    {
        var ring = new Ring(groups, seed);
        var right = Vector<double>.Build.Dense(ring.Pattern.Unknowns, i => Math.Sin(i + seed));
        double[] x = right.ToArray();
        SparseFactor.Of(ring.Pattern, ring.Stiffness).Solve(x);
        var expected = ring.Dense(ring.Stiffness).Solve(right);
        for (int i = 0; i < x.Length; i++) Assert.Equal(expected[i], x[i], 1e-9);
    }

    [Fact]
    public void Negative_pivots_count_eigenvalues_below_the_shift()
    {
        var ring = new Ring(12, 5);
        var all = Generalised(ring);
        for (int k = 1; k < 20; k += 3)
        {
            double between = (all[k - 1] + all[k]) / 2;
            Assert.Equal(k, SparseFactor.Of(ring.Pattern, ring.Stiffness, ring.Mass, -between).Negative);
        }
    }

    [Fact]
    public void An_unknown_that_nothing_holds_is_named()
    {
        Patch held = new([0, 1, 2], [2, 0, 0, 0, 2, 0, 0, 0, 2]), loose = new([3, 4, 5], [1, 0, 0, 0, 0, 0, 0, 0, 1]);
        var pattern = new Pattern([3, 3], [held.Unknowns, loose.Unknowns]);
        Assert.Equal(4, SparseFactor.Of(pattern, [held, loose]).Vanished);
    }

    [Theory, InlineData(1, 6), InlineData(9, 8), InlineData(30, 10), InlineData(30, 3)]
    public void The_lowest_modes_are_those_of_a_dense_solver(int groups, int count)
    {
        var ring = new Ring(groups, 7 + groups);
        var modes = LowestModes.Of(ring.Pattern, SparseFactor.Of(ring.Pattern, ring.Stiffness), ring.Stiffness, ring.Mass, count);
        var expected = Generalised(ring);
        Assert.Equal(ModesEnd.Found, modes.End);
        Assert.Equal(Math.Min(count, expected.Length), modes.Values.Length);
        var (k, m) = (ring.Dense(ring.Stiffness), ring.Dense(ring.Mass));
        for (int i = 0; i < modes.Values.Length; i++)
        {
            Assert.Equal(expected[i], modes.Values[i], 1e-8 * expected[i]);
            var v = Vector<double>.Build.Dense(modes.Vectors[i]);
            Assert.Equal(1, v * m * v, 1e-9);
            Assert.True((k * v - modes.Values[i] * (m * v)).L2Norm() < 1e-4 * (k * v).L2Norm(), $"mode {i + 1}");
        }
    }

    [Fact]
    public void Unknowns_without_mass_do_no_harm()
    {
        var ring = new Ring(12, 11, massless: true);
        var modes = LowestModes.Of(ring.Pattern, SparseFactor.Of(ring.Pattern, ring.Stiffness), ring.Stiffness, ring.Mass, 5);
        // Finite eigenvalues of the pencil are the inverses of those of K⁻¹·M above zero.
        var inverse = ring.Dense(ring.Stiffness).Cholesky().Solve(ring.Dense(ring.Mass)).Evd().EigenValues.Select(e => e.Real).OrderDescending().ToArray();
        Assert.Equal(ModesEnd.Found, modes.End);
        for (int i = 0; i < 5; i++) Assert.Equal(1 / inverse[i], modes.Values[i], 1e-7 / inverse[i]);
    }

    [Theory, InlineData(1), InlineData(2), InlineData(5), InlineData(24), InlineData(60)]
    public void Dense_eigenvalues_and_vectors_are_those_of_a_library(int n)
    {
        var random = new Random(n);
        var a = Matrix<double>.Build.Dense(n, n, (_, _) => random.NextDouble() - 0.5);
        a += a.Transpose();
        var (values, vectors) = SymmetricEigen.Of(a.ToRowMajorArray(), n);
        var expected = a.Evd(Symmetricity.Symmetric).EigenValues.Select(e => e.Real).OrderDescending().ToArray();
        for (int k = 0; k < n; k++)
        {
            Assert.Equal(expected[k], values[k], 1e-12 * n);
            var v = Vector<double>.Build.Dense([.. vectors.Skip(k * n).Take(n)]);
            Assert.True((a * v - values[k] * v).L2Norm() < 1e-12 * n);
        }
    }

    private static double[] Generalised(Ring ring)
    {
        var lower = ring.Dense(ring.Mass).Cholesky().Factor.Inverse();
        return [.. (lower * ring.Dense(ring.Stiffness) * lower.Transpose()).Evd(Symmetricity.Symmetric).EigenValues.Select(e => e.Real).Order()];
    }
}

using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Trivet.Testing;
using Xunit;
using static Trivet.Testing.FixedCases;

namespace Trivet.Numerics.Tests;

/// <summary>Second opinion: singular values and eigenvalues of Math.NET Numerics (LAPACK's algorithms, managed).</summary>
public class SpectrumTests
{
    private static readonly Gen<double> Entry = Between(-2, 2);
    private static readonly Gen<Vec3> Row = Gen.Select(Entry, Entry, Entry, (x, y, z) => new Vec3(x, y, z));
    private static readonly Gen<Mat3> AnyMatrix = Gen.Select(Row, Row, Row, (a, b, c) => new Mat3(a, b, c));

    private static Matrix<double> ToMathNet(Mat3 m) => Matrix<double>.Build.Dense(3, 3, (i, j) => (i == 0 ? m.Row0 : i == 1 ? m.Row1 : m.Row2)[j]);

    /// <summary>The squares of the singular values are good to some ε of the largest; that bound, and its square root at worst.</summary>
    private static void AssertSingularValues(Mat3 m)
    {
        // The library loses digits of matrices that are tiny as a whole, so it gets them scaled to 1, and of those with entries tiny beside the rest
        // (1e-71 beside 1 cost it the middle value's fourth digit), so it gets zeros there: that moves no value by more than such an entry.
        double scale = ToMathNet(m).Enumerate().Max(Math.Abs);
        if (scale < 1e-35) return; // eighth powers would vanish, as Spectrum says
        var expected = ToMathNet(1 / scale * m).Map(v => Math.Abs(v) < 1e-30 ? 0 : v).Svd(computeVectors: false).S * scale;
        var actual = m.SingularValues();
        for (int i = 0; i < 3; i++)
        {
            double tolerance = Math.Min(1e-7 * expected[0], 4e-15 * expected[0] * expected[0] / Math.Max(expected[1], 1e-15 * expected[0]));
            Assert.True(Math.Abs(expected[i] - actual[i]) <= tolerance, $"{m}: value {i} is {actual[i]}, not {expected[i]}");
        }
    }

    [Fact]
    public void Singular_values_agree_with_a_library() => AnyMatrix.Holds(5000, AssertSingularValues);

    /// <summary>CsCheck's doubles are hostile on purpose: zeros, subnormals, tiny beside large.</summary>
    [Fact]
    public void Singular_values_of_hostile_matrices_agree_with_a_library()
    {
        var row = Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[-2, 2], (x, y, z) => new Vec3(x, y, z));
        Gen.Select(row, row, row, (a, b, c) => new Mat3(a, b, c)).Holds(5000, AssertSingularValues);
    }

    /// <summary>Equal singular values are where a closed form by arccos would lose half its digits.</summary>
    [Fact]
    public void Equal_and_nearly_equal_singular_values_keep_their_digits() =>
        Gen.Select(AnyMatrix, AnyMatrix, Between(0.5, 2), Between(0.5, 2), Gen.Int[0, 4].Select(i => new[] { 0, 1e-14, 1e-11, 1e-8, 1e-5 }[i]), Gen.Bool).Holds(5000, c =>
        {
            var (a, b, one, two, apart, larger) = c;
            Mat3 u = Turn(a), v = Turn(b);
            double twin = larger ? Math.Max(one, two) : Math.Min(one, two), single = larger ? Math.Min(one, two) : Math.Max(one, two);
            var m = u * new Mat3(new(twin, 0, 0), new(0, twin * (1 + apart), 0), new(0, 0, single)) * v;
            var values = m.SingularValues();
            Vec3 expected = larger ? new(twin * (1 + apart), twin, single) : new(single, twin * (1 + apart), twin);
            Assert.True((values - expected).Norm < 2e-14, $"{values} for {expected}");
        });

    [Fact]
    public void A_badly_conditioned_matrix_keeps_the_digits_of_its_smallest_singular_value() =>
        Gen.Select(AnyMatrix, AnyMatrix, Between(1, 9)).Holds(2000, c =>
        {
            var (a, b, digits) = c;
            double small = Math.Pow(10, -digits);
            var m = Turn(a) * new Mat3(new(1, 0, 0), new(0, 0.7, 0), new(0, 0, small)) * Turn(b);
            // The matrix itself was rounded when it was made: that alone moves the smallest value by about ε.
            Assert.True(Math.Abs(m.SingularValues().Z - small) < 1e-15, $"{m.SingularValues().Z} for {small}");
        });

    [Fact]
    public void Eigenvalues_of_a_symmetric_matrix_agree_with_a_library() => AnyMatrix.Holds(2000, m =>
    {
        var symmetric = m + m.Transpose();
        var expected = ToMathNet(symmetric).Evd(Symmetricity.Symmetric).EigenValues.Select(v => v.Real).OrderDescending().ToArray();
        var actual = Spectrum.Symmetric(symmetric);
        for (int i = 0; i < 3; i++) Assert.Equal(expected[i], actual[i], 1e-13);
    });

    [Fact]
    public void Singular_values_of_two_by_two_agree_with_a_library() => AnyMatrix.Holds(2000, m =>
    {
        double a = m.Row0.X, b = m.Row0.Y, c = m.Row1.X, d = m.Row1.Y;
        var expected = Matrix<double>.Build.DenseOfRowMajor(2, 2, [a, b, c, d]).Svd(computeVectors: false).S;
        var (larger, smaller) = Spectrum.SingularValues(a, b, c, d);
        Assert.Equal(expected[0], larger, 1e-14);
        Assert.Equal(expected[1], smaller, 1e-14);
    });

    [Fact]
    public void Identity_zero_and_rank_one_have_their_plain_values()
    {
        Assert.Equal(new(1, 1, 1), Mat3.Identity.SingularValues());
        Assert.Equal(1, Mat3.Identity.ConditionNumber());
        Assert.Equal(Vec3.Zero, new Mat3(Vec3.Zero, Vec3.Zero, Vec3.Zero).SingularValues());
        var rankOne = new Mat3(new(1, 2, 2), new(2, 4, 4), Vec3.Zero);
        Assert.Equal(Math.Sqrt(45), rankOne.SingularValues().X, 1e-14);
        Assert.Equal(0, rankOne.SingularValues().Z);
        Assert.Equal(double.PositiveInfinity, rankOne.ConditionNumber());
    }

    [Fact]
    public void Not_a_number_shows_in_every_value()
    {
        var values = new Mat3(Vec3.UnitX, new(0, double.NaN, 0), Vec3.UnitZ).SingularValues();
        Assert.True(double.IsNaN(values.X) && double.IsNaN(values.Y) && double.IsNaN(values.Z));
    }

    /// <summary>Rows made orthonormal: a turn, or a turn with a reflection.</summary>
    private static Mat3 Turn(Mat3 m)
    {
        var x = m.Row0.Unit();
        var y = (m.Row1 - m.Row1.Dot(x) * x).Unit();
        y = (y - y.Dot(x) * x).Unit();
        return new(x, y, x.Cross(y));
    }
}

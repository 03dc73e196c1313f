using CsCheck;
using Trivet.Numerics.Lanes;
using Trivet.Testing;
using Xunit;

namespace Trivet.Numerics.Tests;

/// <summary>Polynomials against the library's Atan2, and against <see cref="Mat3.ConditionNumber"/>, which is itself held against Math.NET.</summary>
public class LaneMathTests
{
    private static double Angle<T>(double cos, double sin) where T : struct, ILanes<T>
    {
        Span<double> result = stackalloc double[T.Count];
        LaneMath.Angle(T.All(cos), T.All(sin)).Store(result, 0);
        return result[^1];
    }

    private static void AssertAngle(double angle)
    {
        var (s, c) = Math.SinCos(angle);
        // 4e-16 stated, and what rounding cosine and sine does to the length.
        Assert.Equal(Math.Atan2(s, c), Angle<Lanes512>(c, s), 1e-15);
        Assert.Equal(Math.Atan2(s, c), Angle<Lanes256>(c, s), 1e-15);
        Assert.Equal(Math.Atan2(s, c), Angle<Lanes1>(c, s), 1e-15);
    }

    [Fact]
    public void Angle_of_a_unit_vector_agrees_all_around()
    {
        for (int i = -100_000; i <= 100_000; i++) AssertAngle(i * (Math.PI / 100_000));
    }

    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(0, 1, Math.PI / 2)]
    [InlineData(-1, 0, Math.PI)]
    [InlineData(0, -1, -Math.PI / 2)]
    public void Angle_is_exact_along_the_axes(double cos, double sin, double angle) => Assert.Equal(angle, Angle<Lanes512>(cos, sin));

    [Fact]
    public void A_small_angle_keeps_its_relative_accuracy()
    {
        for (double angle = 1e-300; angle < 1e-3; angle *= 10) Assert.Equal(angle, Angle<Lanes256>(Math.Cos(angle), Math.Sin(angle)), 4e-16 * angle);
    }

    [Fact]
    public void Not_a_number_gives_not_a_number()
    {
        Assert.True(double.IsNaN(Angle<Lanes512>(double.NaN, 1)));
        Assert.True(double.IsNaN(Angle<Lanes256>(1, double.NaN)));
    }

    [Fact]
    public void Condition_number_agrees_in_every_width()
    {
        var entry = FixedCases.Between(-2, 2);
        entry.Array[9].Holds(5000, m =>
        {
            var matrix = new Mat3(new(m[0], m[1], m[2]), new(m[3], m[4], m[5]), new(m[6], m[7], m[8]));
            var values = matrix.SingularValues();
            // Both take the smallest singular value from the determinant, which is good to some ε of the largest: ε·κ of the whole.
            double expected = matrix.ConditionNumber(), spread = values.X / values.Y, tolerance = expected * (1e-14 * spread * spread + 1e-15 * expected);
            Assert.Equal(expected, Condition<Lanes512>(m), tolerance);
            Assert.Equal(expected, Condition<Lanes256>(m), tolerance);
            Assert.Equal(expected, Condition<Lanes1>(m), tolerance);
        });
    }

    private static double Condition<T>(double[] m) where T : struct, ILanes<T>
    {
        Span<double> result = stackalloc double[T.Count];
        LaneMath.ConditionNumber(T.All(m[0]), T.All(m[1]), T.All(m[2]), T.All(m[3]), T.All(m[4]), T.All(m[5]), T.All(m[6]), T.All(m[7]), T.All(m[8])).Store(result, 0);
        return result[^1];
    }
}

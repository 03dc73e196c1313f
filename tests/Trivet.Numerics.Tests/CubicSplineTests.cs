using Xunit;

namespace Trivet.Numerics.Tests;

/// <summary>Exact for cubics; between two ways of closing the ends only the ends differ, so the inside is held against Math.NET Numerics.</summary>
public class CubicSplineTests
{
    private static readonly double[] X = [.. Enumerable.Range(0, 41).Select(i => i + 0.3 * Math.Sin(i))];

    [Theory, InlineData(4), InlineData(5), InlineData(9)]
    public void A_cubic_is_given_back_exactly(int samples)
    {
        double[] x = X[..samples], first = new double[samples], second = new double[samples];
        CubicSpline.Derivatives(x, [.. x.Select(v => 2 - v + 0.5 * v * v - 0.1 * v * v * v)], first, second);
        for (int i = 0; i < samples; i++)
        {
            Assert.Equal(-1 + x[i] - 0.3 * x[i] * x[i], first[i], 1e-10);
            Assert.Equal(1 - 0.6 * x[i], second[i], 1e-10);
        }
    }

    [Fact]
    public void Two_samples_give_a_line_and_three_a_parabola()
    {
        double[] first = new double[2], second = new double[2];
        CubicSpline.Derivatives([1, 3], [1, 7], first, second);
        Assert.Equal([3, 3], first);
        Assert.Equal([0, 0], second);

        (first, second) = (new double[3], new double[3]);
        CubicSpline.Derivatives([0, 1, 3], [0, 1, 9], first, second);
        Assert.All(new[] { 0.0, 2, 6 }.Zip(first), p => Assert.Equal(p.First, p.Second, 1e-12));
        Assert.All(second, v => Assert.Equal(2, v, 1e-12));
    }

    [Fact]
    public void Inside_it_agrees_with_another_spline()
    {
        double[] y = [.. X.Select(v => Math.Sin(v / 2))], first = new double[X.Length], second = new double[X.Length];
        CubicSpline.Derivatives(X, y, first, second);
        var other = MathNet.Numerics.Interpolation.CubicSpline.InterpolateNaturalSorted(X, y);
        // What the ends do dies away by a factor of 2 + √3 from knot to knot.
        for (int i = 18; i < 23; i++)
        {
            Assert.Equal(other.Differentiate(X[i]), first[i], 1e-9);
            Assert.Equal(other.Differentiate2(X[i]), second[i], 1e-9);
        }
    }
}

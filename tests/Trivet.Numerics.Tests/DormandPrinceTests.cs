using Trivet.Numerics;
using Xunit;

namespace Trivet.Numerics.Tests;

/// <summary>Against motions with a closed form.</summary>
public class DormandPrinceTests
{
    /// <summary>A mass on a spring: (cos t, −sin t). Halving the step divides the error by 2⁵, the estimate's by 2⁵ as well (one step).</summary>
    [Fact]
    public void The_error_falls_with_the_fifth_power_of_the_step()
    {
        static bool Spring(ReadOnlySpan<double> y, Span<double> rates)
        {
            rates[0] = y[1];
            rates[1] = -y[0];
            return true;
        }

        double Run(int steps)
        {
            double[] y = [1, 0], next = new double[2], error = new double[2];
            for (int i = 0; i < steps; i++)
            {
                Assert.True(DormandPrince.Step(Spring, y, 2.0 / steps, next, error));
                (y, next) = (next, y);
            }
            return Math.Abs(y[0] - Math.Cos(2)) + Math.Abs(y[1] + Math.Sin(2));
        }

        double coarse = Run(10), fine = Run(20);
        Assert.InRange(coarse, 1e-9, 1e-5);
        Assert.InRange(coarse / fine, 24, 42);
    }

    [Fact]
    public void A_fall_is_exact_and_its_estimated_error_vanishes()
    {
        double[] next = new double[2], error = new double[2];
        Assert.True(DormandPrince.Step((y, r) => { r[0] = y[1]; r[1] = 9.81; return true; }, [0.1, 0.5], 0.3, next, error));
        Assert.Equal(0.1 + 0.5 * 0.3 + 9.81 / 2 * 0.09, next[0], 1e-14);
        Assert.Equal(0.5 + 9.81 * 0.3, next[1], 1e-14);
        Assert.True(Math.Abs(error[0]) + Math.Abs(error[1]) < 1e-14);
    }

    [Fact]
    public void The_estimate_is_of_the_size_of_the_error()
    {
        double[] next = new double[1], error = new double[1];
        Assert.True(DormandPrince.Step((y, r) => { r[0] = y[0]; return true; }, [1.0], 0.2, next, error));
        // The estimate is that of the fourth order formula, so larger than the error of the fifth.
        double true5 = Math.Abs(next[0] - Math.Exp(0.2));
        Assert.InRange(Math.Abs(error[0]), true5, 1e4 * true5);
        Assert.InRange(Math.Abs(error[0]), 1e-9, 1e-5);
    }

    [Fact]
    public void A_step_into_the_undefined_says_so()
    {
        double[] next = new double[1], error = new double[1];
        Assert.False(DormandPrince.Step((y, r) => { r[0] = 1; return y[0] < 1; }, [0.9], 0.2, next, error));
    }
}

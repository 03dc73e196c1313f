using CsCheck;
using Xunit;
using Trivet.Testing;

namespace Trivet.Numerics.Tests;

/// <summary>Searches against functions whose largest value is known in closed form.</summary>
public sealed class BranchAndBoundTests
{
    private static SearchResult Maximise<T>(T f, ReadOnlySpan<double> low, ReadOnlySpan<double> high, SearchLimits limits) where T : IBoundable =>
        BranchAndBound.Maximise(f, low, high, limits, TestContext.Current.CancellationToken);

    /// <summary>−Σ (x_k − c_k)²: largest at the point of the box nearest to c.</summary>
    private sealed class Paraboloid(double[] peak) : IBoundable
    {
        public double At(ReadOnlySpan<double> x)
        {
            double sum = 0;
            for (int k = 0; k < x.Length; k++) sum += (x[k] - peak[k]) * (x[k] - peak[k]);
            return -sum;
        }

        public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
        {
            monotone = 0;
            var sum = Interval.Zero;
            for (int k = 0; k < low.Length; k++)
            {
                var d = new Interval(low[k], high[k]) - peak[k];
                sum += Interval.Square(d);
                rise[k] = -d.Mid;
                spread[k] = d.Width * d.Magnitude;
                if (!d.Contains(0)) monotone |= 1 << k;
            }
            return -sum.Lower;
        }
    }

    /// <summary>x·sin x with naive bounds only: no slope, no steering.</summary>
    private sealed class Wave : IBoundable
    {
        public double At(ReadOnlySpan<double> x) => x[0] * Math.Sin(x[0]);

        public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
        {
            monotone = 0;
            var x = new Interval(low[0], high[0]);
            return (x * Interval.Sin(x)).Upper;
        }
    }

    /// <summary>√x, not defined below zero.</summary>
    private sealed class Root : IBoundable
    {
        public double At(ReadOnlySpan<double> x) => Math.Sqrt(x[0]);

        public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
        {
            monotone = 0;
            return Interval.Sqrt(new(low[0], high[0])).Upper;
        }
    }

    [Fact]
    public void The_largest_value_lies_between_attained_and_bound() =>
        Gen.Select(Gen.Double[-2, 2].Array[1, 4], Gen.Int[0, 1000]).Sample((peak, _) =>
        {
            var low = peak.Select(_ => -1.0).ToArray();
            var high = peak.Select(_ => 1.0).ToArray();
            double exact = -peak.Sum(c => Math.Pow(c - Math.Clamp(c, -1, 1), 2));
            var found = Maximise(new Paraboloid(peak), low, high, new(double.PositiveInfinity, 1e-6));
            Assert.Equal(SearchStop.WithinTolerance, found.Stop);
            Assert.InRange(exact, found.Attained - 1e-15, found.Bound);
            Assert.InRange(found.Bound - found.Attained, 0, 1e-6);
        }, seed: "0N0XIzNsQ0O2", iter: Effort.Cases(200));

    [Fact]
    public void A_monotone_function_is_settled_at_its_corner_at_once()
    {
        var found = Maximise(new Paraboloid([3, -3, 3]), [-1, -1, -1], [1, 1, 1], new(double.PositiveInfinity, 1e-12));
        Assert.Equal(-12, found.Attained, 12);
        Assert.True(found.Boxes <= 2);
    }

    /// <summary>x·sin x on [0, 10] is largest at the root of sin x + x·cos x near 7.98 (found here by bisection), where it is 7.916727371587.</summary>
    [Fact]
    public void A_wave_without_slopes_is_bounded_too()
    {
        double a = 7.9, b = 8.1;
        for (int i = 0; i < 200; i++)
        {
            double m = (a + b) / 2;
            if (Math.Sin(m) + m * Math.Cos(m) > 0) a = m;
            else b = m;
        }
        var found = Maximise(new Wave(), [0], [10], new(double.PositiveInfinity, 1e-5));
        Assert.Equal(a * Math.Sin(a), found.Attained, 1e-5);
        Assert.True(found.Bound >= a * Math.Sin(a));
        Assert.Equal(SearchStop.WithinTolerance, found.Stop);
    }

    [Fact]
    public void A_limit_far_away_is_decided_early()
    {
        var near = Maximise(new Wave(), [0], [10], new(100, 1e-5));
        var far = Maximise(new Wave(), [0], [10], new(100, 1e-5, FarTolerance: 0.05));
        Assert.Equal(SearchStop.LimitDecided, far.Stop);
        Assert.True(far.Boxes < near.Boxes);
        Assert.True(far.Bound <= 100 && far.Bound >= near.Attained);
    }

    [Fact]
    public void A_violated_limit_is_decided_by_what_was_attained()
    {
        var found = Maximise(new Wave(), [0], [10], new(1, 1e-5, FarTolerance: 0.05));
        Assert.Equal(SearchStop.LimitDecided, found.Stop);
        Assert.True(found.Attained > 1);
    }

    [Fact]
    public void A_budget_ends_the_search_with_a_bound_that_still_holds()
    {
        var found = Maximise(new Wave(), [0], [10], new(double.PositiveInfinity, 0, MaxBoxes: 9));
        Assert.Equal(SearchStop.Budget, found.Stop);
        Assert.True(found.Bound >= 7.916727371587 && found.Boxes <= 11);
    }

    [Fact]
    public void A_gap_of_zero_is_not_waited_for_for_ever()
    {
        var found = Maximise(new Wave(), [0], [10], new(double.PositiveInfinity, 0));
        Assert.Equal(SearchStop.Budget, found.Stop);
        Assert.InRange(found.Bound - found.Attained, 0, 1e-6);
    }

    [Fact]
    public void A_place_where_the_function_is_not_defined_stops_the_search()
    {
        var found = Maximise(new Root(), [-1], [1], new(10, 1e-9));
        Assert.Equal(SearchStop.Undefined, found.Stop);
        Assert.Equal(-1, found.UndefinedAt[0]);
        Assert.Equal(double.PositiveInfinity, found.Bound);
    }

    [Fact]
    public void A_cancelled_search_keeps_what_it_has()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        var found = BranchAndBound.Maximise(new Wave(), [0], [10], new(double.PositiveInfinity, 1e-9), source.Token);
        Assert.Equal(SearchStop.Cancelled, found.Stop);
        Assert.True(found.Bound >= 7.916727371587);
    }

    [Fact]
    public void A_box_without_extent_is_a_point()
    {
        var found = Maximise(new Paraboloid([0, 0]), [1, 2], [1, 2], new(double.PositiveInfinity, 1e-9));
        Assert.Equal(-5, found.Attained, 12);
        Assert.Equal(SearchStop.WithinTolerance, found.Stop);
    }

    [Fact]
    public void The_same_search_gives_the_same_result()
    {
        SearchResult Run() => Maximise(new Wave(), [0], [10], new(8, 1e-5));
        var first = Run();
        var second = Run();
        Assert.Equal((first.Attained, first.Bound, first.Boxes, first.At[0]), (second.Attained, second.Bound, second.Boxes, second.At[0]));
    }
}

using CsCheck;
using Xunit;
using Trivet.Testing;

namespace Trivet.Numerics.Tests;

/// <summary>
/// Intervals against exact arithmetic where there is any (decimal numbers hold sums and products of short fractions exactly), else
/// against points drawn from the operands.
/// </summary>
public sealed class IntervalTests
{
    private static readonly Gen<(Interval Range, double Point)> Any =
        Gen.Select(Gen.Double[-10, 10], Gen.Double[0, 5], Gen.Double[0, 1], (low, width, t) => (new Interval(low, low + width), Within(low, low + width, t)));

    private static double Within(double low, double high, double t) => Math.Clamp(low + t * (high - low), low, high);

    [Fact]
    public void Sum_difference_and_product_contain_the_exact_result() =>
        Gen.Select(Gen.Int[-99999, 99999], Gen.Int[-99999, 99999]).Sample((i, j) =>
        {
            double x = i / 1000.0, y = j / 1000.0;
            // The exact value of a double in this range needs more digits than decimal has; its neighbours bound it.
            Assert.True(((Interval)x + y).Contains(x + y) && ((Interval)x - y).Contains(x - y) && ((Interval)x * y).Contains(x * y));
            Assert.True(((Interval)x + y).Width > 0);
        }, seed: "0N0XIzNsQ0O2", iter: Effort.Cases(1000));

    [Fact]
    public void One_third_lies_between_the_ends_of_one_by_three()
    {
        var third = (Interval)1.0 / 3.0;
        // In thirds of the last place: 3·lower < 1 < 3·upper, exactly, by fused multiply and add.
        Assert.True(Math.FusedMultiplyAdd(3, third.Lower, -1) < 0);
        Assert.True(Math.FusedMultiplyAdd(3, third.Upper, -1) > 0);
    }

    [Fact]
    public void Every_operation_contains_what_it_does_to_points() =>
        Gen.Select(Any, Any).Sample((a, b) =>
        {
            Assert.True((a.Range + b.Range).Contains(a.Point + b.Point), "+");
            Assert.True((a.Range - b.Range).Contains(a.Point - b.Point), "-");
            Assert.True((a.Range * b.Range).Contains(a.Point * b.Point), "*");
            Assert.True((b.Point * a.Range).Contains(a.Point * b.Point), "scaled");
            Assert.True(b.Range.Contains(0) ? a.Range / b.Range == Interval.Whole : (a.Range / b.Range).Contains(a.Point / b.Point), "/");
            Assert.True(Interval.Abs(a.Range).Contains(Math.Abs(a.Point)), "abs");
            Assert.True(Interval.Square(a.Range).Contains(a.Point * a.Point), "square");
            Assert.True(Interval.Sin(a.Range).Contains(Math.Sin(a.Point)), "sin");
            Assert.True(Interval.Cos(a.Range).Contains(Math.Cos(a.Point)), "cos");
            Assert.True(Interval.Atan2(a.Range, b.Range).Contains(Math.Atan2(a.Point, b.Point)), "atan2");
            Assert.True(a.Range.Hull(b.Range).Contains(a.Point) && a.Range.Hull(b.Range).Contains(b.Point), "hull");
            if (a.Range.Lower >= 0) Assert.True(Interval.Sqrt(a.Range).Contains(Math.Sqrt(a.Point)), "sqrt");
            if (a.Range.Magnitude <= 1) Assert.True(Interval.Acos(a.Range).Contains(Math.Acos(a.Point)), "acos");
        }, seed: "0N0XIzNsQ0O2", iter: Effort.Cases(20_000));

    [Fact]
    public void Acos_contains_its_points_up_to_the_ends() =>
        Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[0, 1]).Sample((a, b, t) =>
        {
            double low = Math.Min(a, b), high = Math.Max(a, b);
            Assert.True(Interval.Acos(new(low, high)).Contains(Math.Acos(Within(low, high, t))));
        }, seed: "0N0XIzNsQ0O2", iter: Effort.Cases(2000));

    [Fact]
    public void Cosine_reaches_one_at_a_whole_turn_and_not_before()
    {
        Assert.Equal(1, Interval.Cos(new(6, 6.5)).Upper);
        Assert.True(Interval.Cos(new(6, 6.2)).Upper < 1);
        Assert.Equal(-1, Interval.Cos(new(3, 3.3)).Lower);
        Assert.Equal(new Interval(-1, 1), Interval.Cos(new(0, 7)));
        Assert.Equal(1, Interval.Sin(new(1.5, 1.6)).Upper);
    }

    [Fact]
    public void What_is_not_defined_everywhere_gives_the_whole_line()
    {
        Assert.Equal(Interval.Whole, Interval.Sqrt(new(-1e-300, 4)));
        Assert.Equal(Interval.Whole, Interval.Acos(new(0.5, 1.0000000000000002)));
        Assert.Equal(Interval.Whole, Interval.Atan2(new(-1, 1), new(-2, -1)));
        Assert.Equal(Interval.Whole, (Interval)1.0 / new Interval(-1, 1));
        Assert.Equal(Interval.Whole, (Interval)1.0 / new Interval(0, 1));
    }

    [Fact]
    public void Not_a_number_never_narrows()
    {
        Assert.Equal(Interval.Whole, (Interval)double.NaN);
        Assert.Equal(Interval.Whole, new Interval(double.NaN, 1));
        Assert.Equal(Interval.Whole, new Interval(0, double.NaN));
        Assert.Equal(Interval.Whole, Interval.Zero * Interval.Whole);
        Assert.Equal(Interval.Whole, Interval.Around(double.NaN, 1));
        Assert.Equal(Interval.Whole, Interval.Around(1, double.NaN));
        Assert.Equal(new Interval(-1, 1), Interval.Cos(Interval.Whole));
        Assert.Equal(Interval.Whole, Interval.Sqrt(Interval.Whole));
        Assert.False(Interval.Whole.IsBounded);
    }

    [Fact]
    public void Enclosures_that_do_not_meet_give_the_whole_line() =>
        Assert.Equal(Interval.Whole, new Interval(0, 1).And(new(2, 3)));

    [Fact]
    public void Ends_in_the_wrong_order_are_no_interval() => Assert.Equal(Interval.Whole, new Interval(2, 1));

    [Fact]
    public void Middle_and_radius_span_the_interval() => Any.Sample(a =>
    {
        double mid = a.Range.Mid;
        Assert.True(a.Range.Contains(mid));
        Assert.True(Math.Abs(a.Point - mid) <= a.Range.RadiusAbout(mid));
        Assert.True(a.Range.Magnitude >= Math.Abs(a.Point) && a.Range.Mignitude <= Math.Abs(a.Point));
    }, seed: "0N0XIzNsQ0O2", iter: Effort.Cases(1000));

    [Fact]
    public void Vectors_contain_what_their_points_do() =>
        Gen.Select(Gen.Select(Any, Any, Any), Gen.Select(Any, Any, Any)).Sample((a, b) =>
        {
            IntervalVec3 u = new(a.Item1.Range, a.Item2.Range, a.Item3.Range), v = new(b.Item1.Range, b.Item2.Range, b.Item3.Range);
            Vec3 p = new(a.Item1.Point, a.Item2.Point, a.Item3.Point), q = new(b.Item1.Point, b.Item2.Point, b.Item3.Point);
            Assert.True(u.Contains(p) && (u + v).Contains(p + q) && (u - v).Contains(p - q));
            Assert.True(u.NormSquared.Contains(p.NormSquared));
            Assert.True(Widened(u.Dot(v)).Contains(p.Dot(q)) && Widened(u.Dot(q)).Contains(p.Dot(q)));
            Assert.True((p - u.Mid).Norm <= u.RadiusAbout(u.Mid));
        }, seed: "0N0XIzNsQ0O2", iter: Effort.Cases(2000));

    /// <summary>A dot product of points is itself rounded.</summary>
    private static Interval Widened(Interval a) => new(a.Lower - 1e-12, a.Upper + 1e-12);
}

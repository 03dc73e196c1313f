using CsCheck;
using Trivet.Testing;
using Xunit;

namespace Trivet.Numerics.Tests;

/// <summary>Second opinion: the distance is a convex function of both parameters, so a search by thirds within a search by thirds finds it.</summary>
public class SegmentsTests
{
    private static readonly Gen<Vec3> Point = Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[-1, 1], (x, y, z) => new Vec3(x, y, z));

    private static double BySearch(Vec3 a0, Vec3 a1, Vec3 b0, Vec3 b1) =>
        LeastOf(s => LeastOf(t => (a0 + s * (a1 - a0) - b0 - t * (b1 - b0)).Norm));

    /// <summary>Least value over 0 to 1 of a convex function, by thirds.</summary>
    private static double LeastOf(Func<double, double> convex)
    {
        double low = 0, high = 1;
        for (int i = 0; i < 60; i++)
        {
            double left = low + (high - low) / 3, right = high - (high - low) / 3;
            if (convex(left) < convex(right)) high = right;
            else low = left;
        }
        return Math.Min(convex((low + high) / 2), Math.Min(convex(0), convex(1)));
    }

    private static void AssertAgrees(Vec3 a0, Vec3 a1, Vec3 b0, Vec3 b1, double tolerance)
    {
        var closest = Segments.Closest(a0, a1, b0, b1);
        Assert.Equal(BySearch(a0, a1, b0, b1), closest.Distance, tolerance);
        Assert.Equal(closest.Distance, (closest.OnFirst - closest.OnSecond).Norm);
        Assert.True(Segments.Distance(a0, a1, closest.OnFirst) < 1e-14 && Segments.Distance(b0, b1, closest.OnSecond) < 1e-14);
    }

    [Fact]
    public void Distance_agrees_with_a_search() =>
        Gen.Select(Point, Point, Point, Point).Holds(100, c => AssertAgrees(c.Item1, c.Item2, c.Item3, c.Item4, 1e-8));

    [Fact]
    public void Parallel_nearly_parallel_and_crossing_segments_agree_with_a_search() =>
        Gen.Select(Point, Point, Point, Gen.Int[0, 4].Select(i => new[] { 0, 1e-15, 1e-12, 1e-9, 1e-6 }[i]), Gen.Double[-2, 2], Gen.Double[-1, 1]).Holds(60, c =>
        {
            var (a0, direction, shift, tilt, scale, slide) = c;
            var b0 = a0 + slide * direction + shift;
            AssertAgrees(a0, a0 + direction, b0, b0 + scale * direction + tilt * shift, 1e-8);
            AssertAgrees(a0, a0 + direction, a0 + 0.5 * direction - shift, a0 + 0.5 * direction + shift, 1e-8);
        });

    [Fact]
    public void Segments_of_no_length_are_points()
    {
        Assert.Equal(5, Segments.Closest(Vec3.Zero, Vec3.Zero, new(3, 4, 0), new(3, 4, 0)).Distance);
        Assert.Equal(1, Segments.Closest(Vec3.Zero, Vec3.Zero, new(-1, 1, 0), new(1, 1, 0)).Distance);
        Assert.Equal(1, Segments.Closest(new(-1, 1, 0), new(1, 1, 0), Vec3.Zero, Vec3.Zero).Distance);
    }

    [Fact]
    public void Capsules_that_overlap_have_a_negative_clearance()
    {
        Capsule post = new(Vec3.Zero, Vec3.UnitZ, 0.02), rod = new(new(0.05, -1, 0.5), new(0.05, 1, 0.5), 0.005);
        Assert.Equal(0.025, post.ClearanceTo(rod), 1e-15);
        Assert.Equal(-0.03, (post with { Radius = 0.075 }).ClearanceTo(rod), 1e-15);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void An_end_that_is_not_a_number_gives_not_a_number(int which)
    {
        Vec3[] ends = [Vec3.Zero, Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ];
        ends[which] = new(0, double.NaN, 0);
        Assert.True(double.IsNaN(Segments.Closest(ends[0], ends[1], ends[2], ends[3]).Distance));
    }
}

using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Reach;
using Xunit;

namespace Trivet.Tests.Reach;

public class LargestFitTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private const double D = 0.3, L = 0.5, Stroke = 0.6;
    private static readonly ReachableSet Upright = new(ExampleRobots.Rail(0.35, 0.05, L, Stroke));

    /// <summary>
    /// Upright rails alike, worked by hand: over a disc of radius r a rod's horizontal offset runs from D − r to D + r, so a cylinder of
    /// radius r is S − (√(l² − (D − r)²) − √(l² − (D + r)²)) high. Its largest volume over r is found here on a fine grid.
    /// </summary>
    [Fact]
    public void Cylinder_of_upright_rails_agrees_with_the_formula()
    {
        double most = 0;
        for (double r = 0.001; r < L - D; r += 1e-5)
        {
            double height = Stroke - (Math.Sqrt(L * L - (D - r) * (D - r)) - Math.Sqrt(L * L - (D + r) * (D + r)));
            most = Math.Max(most, Math.PI * r * r * height);
        }

        var found = LargestFit.Cylinder(Upright, null, Stop);
        Assert.NotNull(found);
        Assert.Equal(Assurance.Proved, found.Assurance);
        Assert.InRange(found.Volume, 0.985 * most, most);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Proved_solids_hold_every_random_point(bool crank)
    {
        var set = crank ? new ReachableSet(ExampleRobots.Williams) : Upright;
        double plane = crank ? -1.0 : -0.7;
        var cylinder = LargestFit.Cylinder(set, plane, Stop)!;
        var box = LargestFit.Box(set, plane, Stop)!;
        Assert.Equal(Assurance.Proved, cylinder.Assurance);
        Assert.Equal(Assurance.Proved, box.Assurance);
        Assert.True(cylinder.Low.Z + cylinder.Height <= plane);
        Assert.True(box.High.Z <= plane);
        var random = new Random(3);
        for (int n = 0; n < 20_000; n++)
        {
            // Most of them near the border, where a mistake would show.
            double r = cylinder.Radius * Math.Pow(random.NextDouble(), 0.1);
            var (s, c) = Math.SinCos(Math.Tau * random.NextDouble());
            Assert.True(set.Contains(cylinder.Low + new Vec3(r * c, r * s, cylinder.Height * random.NextDouble())));
            Assert.True(set.Contains(box.Low + new Vec3(box.Size.X * random.NextDouble(), box.Size.Y * random.NextDouble(), box.Size.Z * random.NextDouble())));
        }
    }

    /// <summary>For upright rails alike a box inside the reach is smaller than the cylinder round it would be: its volume stays below.</summary>
    [Fact]
    public void Box_is_no_larger_than_its_reach_and_no_smaller_than_the_square_in_the_cylinder()
    {
        var cylinder = LargestFit.Cylinder(Upright, null, Stop)!;
        Vec3 size = LargestFit.Box(Upright, null, Stop)!.Size;
        double inscribed = 2 * cylinder.Radius * cylinder.Radius * cylinder.Height;
        Assert.InRange(size.X * size.Y * size.Z, 0.99 * inscribed, ReachableVolume.Volume(Upright).CubicMetres);
    }

    [Fact]
    public void Two_chains_have_a_flat_box_and_no_cylinder()
    {
        var set = new ReachableSet(ExampleRobots.TwoRails(0.25, 0.05, 0.4, 0.5));
        Assert.Null(LargestFit.Cylinder(set, null, Stop));
        var box = LargestFit.Box(set, null, Stop)!;
        Assert.Equal(0, box.Size.Y);
        Assert.Equal(Assurance.Proved, box.Assurance);
    }

    [Fact]
    public void Nothing_fits_under_a_plane_below_the_reach()
    {
        Assert.Null(LargestFit.Cylinder(Upright, -1.2, Stop));
        Assert.Null(LargestFit.Box(Upright, -1.2, Stop));
    }
}

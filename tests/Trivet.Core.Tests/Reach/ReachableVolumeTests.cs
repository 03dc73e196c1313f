using System.Globalization;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;
using Xunit;

namespace Trivet.Tests.Reach;

public class ReachableVolumeTests
{
    // A stroke so long that the travel does not cut the section: the area is then that of the three circles alone.
    private static DeltaRobot Published(double stroke) => ExampleRobots.Rail(0.35, 0.05, 0.5, stroke);

    /// <summary>tests/reference/reachable-space.csv, K27: closed form.</summary>
    [Fact]
    public void Section_area_without_stroke_limit_agrees_with_closed_form()
    {
        var row = ReferenceRow("K27");
        var outline = ReachableVolume.HorizontalSection(new(Published(stroke: 4)), -2, 160);
        Assert.Single(outline.Loops);
        Assert.Equal(row.Value * 1e-6, outline.Area(), row.Value * 1e-6 * row.Tolerance);
    }

    /// <summary>tests/reference/reachable-space.csv, K28: quadrature of the stroke left over the section.</summary>
    [Fact]
    public void Volume_of_upright_rails_agrees_with_quadrature()
    {
        var row = ReferenceRow("K28");
        var volume = ReachableVolume.Volume(new(Published(stroke: 0.6)), 96);
        Assert.Equal(row.Value * 1e-9, volume.CubicMetres, row.Value * 1e-9 * row.Tolerance);
        Assert.True(volume.Error < row.Value * 1e-9 * 0.002);
    }

    /// <summary>tests/reference/reachable-space.csv, K29: outward branch, arm -30° to 80°, z ≤ -0.3 m.</summary>
    [Fact]
    public void Volume_of_crank_delta_agrees_with_grid_count()
    {
        var row = ReferenceRow("K29");
        var set = new ReachableSet(ExampleRobots.Williams);
        var volume = ReachableVolume.Volume(set, 96);
        Assert.Equal(row.Value, volume.CubicMetres, row.Value * row.Tolerance);
    }

    /// <summary>Second opinion of another kind: counting hits of random points, fixed seed, within four standard deviations.</summary>
    [Fact]
    public void Volume_of_inclined_rails_agrees_with_random_points()
    {
        var set = new ReachableSet(ExampleRobots.Rail(0.4, 0.06, 0.45, 0.6, Math.PI / 6));
        var box = set.Box;
        var random = new Random(20);
        const int Points = 400_000;
        int hits = 0;
        for (int n = 0; n < Points; n++)
        {
            if (set.Contains(box.Low + new Vec3(random.NextDouble() * box.Size.X, random.NextDouble() * box.Size.Y, random.NextDouble() * box.Size.Z))) hits++;
        }

        double whole = box.Size.X * box.Size.Y * box.Size.Z, share = hits / (double)Points;
        double deviation = whole * Math.Sqrt(share * (1 - share) / Points);
        Assert.Equal(whole * share, ReachableVolume.Volume(set).CubicMetres, 4 * deviation);
    }

    /// <summary>Every edge is walked once each way: closed, and turned the same way throughout. Triangles of no area are allowed.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Surface_is_closed_and_turned_outward(int robot)
    {
        var mesh = ReachableVolume.Surface(new(robot == 0 ? Published(0.6) : ExampleRobots.Williams), 24);
        var edges = new HashSet<(int, int)>();
        for (int t = 0; t < mesh.Triangles.Length; t++)
        {
            int first = t - t % 3;
            Assert.True(edges.Add((mesh.Triangles[t], mesh.Triangles[first + (t + 1) % 3])));
        }

        Assert.All(edges, edge => Assert.Contains((edge.Item2, edge.Item1), edges));
        Assert.True(mesh.Volume() > 0);
    }

    [Fact]
    public void Surface_lies_in_the_reach_and_its_outside_does_not()
    {
        var set = new ReachableSet(Published(0.6));
        var mesh = ReachableVolume.Surface(set, 24);
        for (int v = 0; v < mesh.Vertices.Length / 3; v++) Assert.True(set.Contains(mesh.Vertex(v)));
        // Upright rails of stroke 0.6 m: the readings are alike on the axis, so it is reached from s = 0.4 m to 1 m below the rails' top.
        // The lowest point is a peak, of which the grid cuts off up to a step.
        Assert.InRange(mesh.Box().Low.Z, -1.0, -1.0 + 0.6 / 24);
        Assert.False(set.Contains(new(0, 0, -0.3999)));
        Assert.True(set.Contains(new(0, 0, -0.4001)));
    }

    /// <summary>Two chains of upright rails: the overlap of two circles' lower halves, swept along the stroke; the integral of the stroke
    /// left is the closed form ∫ max(0, S − |s₁ − s₂|) dx, here by a fine midpoint sum.</summary>
    [Fact]
    public void Area_of_two_chains_agrees_with_quadrature()
    {
        const double D = 0.2, L = 0.4, Stroke = 0.5;
        double expected = 0;
        const int Steps = 200_000;
        double width = 2 * (L - D);
        for (int n = 0; n < Steps; n++)
        {
            double x = -width / 2 + (n + 0.5) * width / Steps;
            double right = Math.Sqrt(L * L - (x - D) * (x - D)), left = Math.Sqrt(L * L - (x + D) * (x + D));
            expected += Math.Max(0, Stroke - Math.Abs(right - left)) * width / Steps;
        }

        var set = new ReachableSet(ExampleRobots.TwoRails(0.25, 0.05, L, Stroke));
        Assert.Equal(expected, ReachableVolume.VerticalSection(set, Vec3.Zero, 0, 120).Area(), 2e-4 * expected);
        Assert.True(ReachableVolume.Surface(set).IsEmpty);
        Assert.Empty(ReachableVolume.HorizontalSection(set, -0.6).Loops);
    }

    [Fact]
    public void Vertical_section_runs_counter_clockwise_on_the_border()
    {
        var set = new ReachableSet(ExampleRobots.Williams);
        var outline = ReachableVolume.VerticalSection(set, Vec3.Zero, 0.3, 60);
        Assert.True(outline.Area() > 0);
        foreach (var point in outline.Loops.SelectMany(loop => loop)) Assert.True(set.Contains(point));
    }

    private static (double Value, double Tolerance) ReferenceRow(string id)
    {
        string row = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "reference", "reachable-space.csv"))
            .Single(line => line.StartsWith(id + ",", StringComparison.Ordinal));
        string[] fields = row.Split(',');
        return (double.Parse(fields[6], CultureInfo.InvariantCulture), double.Parse(fields[8], CultureInfo.InvariantCulture));
    }
}

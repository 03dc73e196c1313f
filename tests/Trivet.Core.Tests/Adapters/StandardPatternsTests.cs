using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Findings;
using Xunit;

namespace Trivet.Core.Tests.Adapters;

/// <summary>
/// The patterns against what is published of them. Diameters of ISO 9409-1 follow the R10 series of preferred numbers (ISO 3, from memory), which is
/// computed here: the face one step above the circle, the bore two steps below. Holes of 50 and 80 mm as makers' drawings of such flanges show them.
/// </summary>
public sealed class StandardPatternsTests
{
    private static readonly double[] R10 = [10, 12.5, 16, 20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200];

    public static TheoryData<string> Flanges => [.. StandardPatterns.All.Select(p => p.Designation).Where(d => d.StartsWith("ISO", StringComparison.Ordinal))];

    [Theory, MemberData(nameof(Flanges))]
    public void The_diameters_of_a_flange_are_preferred_numbers_in_their_steps(string designation)
    {
        var p = StandardPatterns.Find(designation)!;
        string[] parts = designation.Split('-');
        Assert.Equal(double.Parse(parts[2], System.Globalization.CultureInfo.InvariantCulture), p.Circle);
        Assert.Equal(parts[3], p.Holes.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(parts[4], p.Thread);
        int step = Array.IndexOf(R10, p.Circle);
        // 160 to 200 and 31.5 to 40 are one step as well.
        Assert.Equal(R10[step + 1], p.Face);
        Assert.Equal(R10[step - 2], p.CentringDiameter);
    }

    [Theory]
    [InlineData("ISO 9409-1-50-4-M6", 4, 25, 17.678, 17.678)]
    [InlineData("ISO 9409-1-80-6-M8", 6, 40, 34.641, 20)]
    public void Holes_stand_beside_the_pin_as_drawings_show_them(string designation, int holes, double pinX, double x, double y)
    {
        var pattern = StandardPatterns.Find(designation)!.Pattern(Cell.Empty, "/", new Reading())!;
        Assert.Equal(holes, pattern.Points.Length);
        Assert.Equal(pinX, 1000 * pattern.Pins.Single().At.X, 9);
        Assert.Equal(x, 1000 * pattern.Points[0].X, 3);
        Assert.Equal(y, 1000 * pattern.Points[0].Y, 3);
    }

    /// <summary>NEMA ICS 16 in inches, spacings as catalogues print them.</summary>
    [Theory]
    [InlineData("NEMA 17", 1.725, 30.982, 0.866)]
    [InlineData("nema  23", 2.625, 47.146, 1.5)]
    public void Motor_faces_have_their_circle_spacing_and_pilot(string designation, double circle, double spacing, double pilot)
    {
        var p = StandardPatterns.Find(designation)!;
        Assert.Equal(circle * 25.4, p.Circle, 1e-9);
        Assert.Equal(pilot * 25.4, p.CentringDiameter, 0.01);
        var points = p.Pattern(Cell.Empty, "/", new Reading())!.Points;
        Assert.Equal(spacing, 1000 * (points[0] - points[1]).Norm, 1e-3);
    }

    /// <summary>Tensile stress areas as ISO 898-1 prints them (from memory), and an area for stripping worked out with other numbers.</summary>
    [Theory]
    [InlineData("M3", 5.03)]
    [InlineData("M4", 8.78)]
    [InlineData("M6", 20.1)]
    [InlineData("M8", 36.6)]
    [InlineData("M12", 84.3)]
    public void Stress_areas_are_those_of_the_tables(string thread, double area) => Assert.Equal(area, 1e6 * MetricThread.Find(thread)!.StressArea, area < 10 ? 0.005 : 0.05);
}

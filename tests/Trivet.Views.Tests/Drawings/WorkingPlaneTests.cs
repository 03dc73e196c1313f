using System.Collections.Immutable;
using System.Globalization;
using Trivet.Reach;
using Trivet.Views.Drawings;

namespace Trivet.Views.Tests.Drawings;

public sealed class WorkingPlaneTests
{
    public static TheoryData<string, PlaneQuantity> Sheets =>
        new(HandMadeCells.All.SelectMany(c => Enum.GetValues<PlaneQuantity>().Select(q => (c.Name, q))));

    [Theory, MemberData(nameof(Sheets))]
    public void No_two_texts_overlap_and_none_leaves_the_page(string name, PlaneQuantity quantity) =>
        new SvgPage(CellDrawings.WorkingPlane(HandMadeCells.All.Single(c => c.Name == name).Cell, 0.82, quantity)).AssertTextsAreApart();

    // A cone has circles for contours: every point of a line lies at the radius of its level.
    [Fact]
    public void Contours_of_a_cone_are_circles()
    {
        var map = Map(81, (x, y) => 1 - Math.Sqrt(x * x + y * y));
        foreach (double level in (double[])[0.3, 0.5, 0.7])
        {
            var line = Assert.Single(Contours.At(map, level));
            Assert.Equal(line[0], line[^1]);
            Assert.All(line, p => Assert.Equal(1 - level, Math.Sqrt(p.X * p.X + p.Y * p.Y), 2e-3));
            Assert.Equal(Math.PI * (1 - level) * (1 - level), Math.Abs(Area(line)), 0.02);
        }
    }

    [Fact]
    public void A_contour_ends_where_the_reach_ends_and_keeps_all_its_points()
    {
        var map = Map(41, (x, y) => y > 0.01 ? double.NaN : x);
        var line = Assert.Single(Contours.At(map, 0.21));
        Assert.All(line, p => Assert.Equal(0.21, p.X, 1e-9));
        Assert.Equal(-1, line.Min(p => p.Y), 1e-9);
        Assert.Equal(0, line.Max(p => p.Y), 1e-9);
    }

    [Fact]
    public void A_level_that_is_not_met_has_no_line() => Assert.Empty(Contours.At(Map(21, (x, _) => x), 5));

    [Fact]
    public void The_limit_of_the_description_is_a_line_of_its_own()
    {
        var cell = HandMadeCells.RailDelta;
        string without = CellDrawings.WorkingPlane(cell, 0.82, PlaneQuantity.Dexterity).Svg;
        var limited = cell with { Cell = cell.Cell with { Robot = cell.Cell.Robot with { Dexterity = new() { LargestCondition = 2.2 } } } };
        Assert.DoesNotContain("class=\"x\"", without);
        Assert.Contains("class=\"x\"", CellDrawings.WorkingPlane(limited, 0.82, PlaneQuantity.Dexterity).Svg);
    }

    /// <summary>A limit that is one of the levels is drawn and named once.</summary>
    [Theory, InlineData(2), InlineData(2.5), InlineData(3)]
    public void A_limit_at_a_level_is_named_once(double limit)
    {
        var cell = HandMadeCells.RailDelta;
        var limited = cell with { Cell = cell.Cell with { Robot = cell.Cell.Robot with { Dexterity = cell.Cell.Robot.Dexterity with { LargestCondition = limit } } } };
        string[] texts = [.. new SvgPage(CellDrawings.WorkingPlane(limited, 0.82, PlaneQuantity.Dexterity)).Texts().Select(t => t.Text)];
        string value = limit.ToString(System.Globalization.CultureInfo.InvariantCulture);
        Assert.Contains($"limit {value}", texts);
        Assert.DoesNotContain(value, texts);
    }

    [Fact]
    public void What_is_seen_is_told_in_full()
    {
        var words = Trivet.Views.Words.Locale.English.Language.Drawing;
        foreach (var (_, cell) in HandMadeCells.All)
        {
            string[] texts = [.. new SvgPage(CellDrawings.WorkingPlane(cell, 0.82, PlaneQuantity.Travel)).Texts().Select(t => t.Text)];
            Assert.Contains(texts, t => t == words.OwnPlaneSeen || t == Trivet.Views.Words.Locale.Fill(words.PlaneSeen, ("z", "820 mm")));
        }
    }

    [Fact]
    public void A_plane_out_of_reach_says_so() =>
        Assert.Contains("The robot reaches no point of this plane.", new SvgPage(CellDrawings.WorkingPlane(HandMadeCells.RailDelta, 0.1, PlaneQuantity.Travel)).Texts().Select(t => t.Text));

    [Fact]
    public void A_plane_is_drawn_the_same_under_every_culture_of_the_thread()
    {
        string before = CellDrawings.WorkingPlane(HandMadeCells.RailDelta, 0.82, PlaneQuantity.Travel).Svg;
        var culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(before, CellDrawings.WorkingPlane(HandMadeCells.RailDelta, 0.82, PlaneQuantity.Travel).Svg);
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    private static PlaneMap Map(int n, Func<double, double, double> f)
    {
        double step = 2.0 / (n - 1);
        var values = ImmutableArray.CreateBuilder<double>();
        for (int j = 0; j < n; j++)
            for (int i = 0; i < n; i++) values.Add(f(-1 + i * step, -1 + j * step));
        return new(MapQuantity.Condition, WorkingPlane.Level(0), -1, -1, step, n, n, values.ToImmutable());
    }

    private static double Area(List<(double X, double Y)> ring)
    {
        double twice = 0;
        for (int i = 1; i < ring.Count; i++) twice += ring[i - 1].X * ring[i].Y - ring[i].X * ring[i - 1].Y;
        return twice / 2;
    }
}

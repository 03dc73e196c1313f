using System.Globalization;
using Trivet.Assessment;
using Trivet.Numerics;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Tests.Drawings;

public sealed class CellDrawingsTests
{
    public static TheoryData<string> Cells => [.. HandMadeCells.All.Select(c => c.Name)];

    private static Assessed Cell(string name) => HandMadeCells.All.Single(c => c.Name == name).Cell;

    private static IEnumerable<SvgPage> Sheets(Assessed cell) =>
        new[] { null, HandMadeCells.Marked, HandMadeCells.Marked with { Worst = null } }
            .SelectMany(marked => new[] { CellDrawings.Plan(cell, marked), CellDrawings.Elevation(cell, marked) }).Select(d => new SvgPage(d));

    [Theory, MemberData(nameof(Cells))]
    public void No_two_texts_overlap_and_none_leaves_the_page(string cell) => Assert.All(Sheets(Cell(cell)), page => page.AssertTextsAreApart());

    [Theory, MemberData(nameof(Cells))]
    public void A_sheet_stands_alone_and_says_what_it_shows(string cell)
    {
        foreach (var page in Sheets(Cell(cell)))
        {
            Assert.Equal(page.Drawing.Title, page.All("title").First().Value);
            Assert.NotEmpty(page.All("desc").Single().Value);
            Assert.DoesNotContain("NaN", page.Drawing.Svg);
            Assert.DoesNotContain("href", page.Drawing.Svg);
        }
    }

    /// <summary>The outline within limits lies inside that by travel, is named as what it is, and leaves the texts apart.</summary>
    [Theory, InlineData("jar-lids"), InlineData("biscuits"), InlineData("labels")]
    public void The_reach_can_be_drawn_within_limits(string sample)
    {
        var cell = HandMadeCells.Samples.Single(s => s.Name == sample).Cell;
        var limits = Trivet.Reach.ReachLimits.Read(cell.Cell, swing: true, condition: true, new());
        Assert.True(limits is { Swing: true, Condition: true });
        foreach (var (all, within) in new[]
        {
            (CellDrawings.Plan(cell), CellDrawings.Plan(cell, limits: limits)), (CellDrawings.Elevation(cell), CellDrawings.Elevation(cell, limits: limits)),
        })
        {
            var page = new SvgPage(within);
            page.AssertTextsAreApart();
            if (!new SvgPage(all).Texts().Any(t => t.Text.StartsWith("reach", StringComparison.Ordinal))) continue;
            Assert.Contains(page.Texts(), t => t.Text.StartsWith("reach within limits", StringComparison.Ordinal));
        }
        ReachableArea(Trivet.Reach.ReachLimits.None, out double by);
        ReachableArea(limits, out double kept);
        Assert.InRange(kept, 0.1 * by, by);

        void ReachableArea(Trivet.Reach.ReachLimits with, out double area) =>
            area = Trivet.Reach.ReachableVolume.VerticalSection(new(cell.Geometry.Robot!, with), Vec3.Zero, 0, 40).Area();
    }

    [Theory, InlineData("rail"), InlineData("crank"), InlineData("planar")]
    public void Every_placed_station_can_be_grasped_by_its_pointer(string name)
    {
        var cell = Cell(name);
        var page = new SvgPage(CellDrawings.Plan(cell));
        Assert.Equal(
            cell.Geometry.Stations.Select(s => "/stations/" + s.Id).Order(StringComparer.Ordinal),
            page.All("g").Where(g => g.Attribute("class")?.Value == "station").Select(g => g.Attribute("data-pointer")!.Value).Order(StringComparer.Ordinal));
    }

    // The map that docs/drawings.md promises: a page turns a pixel back into metres by it.
    [Fact]
    public void The_view_says_how_pixels_become_metres()
    {
        foreach (var (drawing, view) in ((Drawing, string)[])[(CellDrawings.Plan(HandMadeCells.RailDelta), "plan"), (CellDrawings.Elevation(HandMadeCells.RailDelta), "elevation")])
        {
            var page = new SvgPage(drawing);
            var group = page.All("g").Single(g => g.Attribute("data-view")?.Value == view);
            double ox = SvgPage.Number(group, "data-origin-x"), oy = SvgPage.Number(group, "data-origin-y"), scale = SvgPage.Number(group, "data-scale");
            var post = group.Descendants().First(g => g.Attribute("data-pointer")?.Value == "/frame/members/m01").Descendants().Single(e => e.Name.LocalName == "polygon");
            var corners = post.Attribute("points")!.Value.Split(' ').Select(p => p.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray()).ToList();
            // The first post stands at x 0 to 40 mm; seen from above y 0 to 40 mm, from the side z 0 to 1760 mm.
            Assert.Equal(0, (corners.Min(c => c[0]) - ox) / scale, 1e-4);
            Assert.Equal(0.04, (corners.Max(c => c[0]) - ox) / scale, 1e-4);
            Assert.Equal(0, (oy - corners.Max(c => c[1])) / scale, 1e-4);
            Assert.Equal(view == "plan" ? 0.04 : 1.76, (oy - corners.Min(c => c[1])) / scale, 1e-4);
        }
    }

    [Fact]
    public void Dimensions_state_the_size_of_the_frame_and_the_height_of_the_base()
    {
        Assert.Superset(new HashSet<string> { "1200", "1000", "600", "500" }, new SvgPage(CellDrawings.Plan(HandMadeCells.RailDelta)).Texts().Select(t => t.Text).ToHashSet());
        Assert.Superset(new HashSet<string> { "1800", "1750", "820", "800" }, new SvgPage(CellDrawings.Elevation(HandMadeCells.RailDelta)).Texts().Select(t => t.Text).ToHashSet());
    }

    [Fact]
    public void A_marked_finding_is_drawn_where_it_is_worst_and_told_in_words()
    {
        var page = new SvgPage(CellDrawings.Plan(HandMadeCells.RailDelta, HandMadeCells.Marked));
        var view = page.All("g").Single(g => g.Attribute("data-view") is not null);
        var mark = page.All("g").Single(g => g.Attribute("class")?.Value == "worst").Elements().First();
        double scale = SvgPage.Number(view, "data-scale");
        Assert.Equal(0.86, (SvgPage.Number(mark, "cx") - SvgPage.Number(view, "data-origin-x")) / scale, 1e-3);
        Assert.Equal(0.78, (SvgPage.Number(view, "data-origin-y") - SvgPage.Number(mark, "cy")) / scale, 1e-3);
        Assert.Contains("16 %", string.Join(' ', page.Texts().Select(t => t.Text)));
        Assert.DoesNotContain("class=\"worst\"", CellDrawings.Plan(HandMadeCells.RailDelta).Svg);
    }

    [Fact]
    public void Names_that_read_like_markup_stay_text()
    {
        var cell = HandMadeCells.RailDelta with { Cell = HandMadeCells.RailDelta.Cell with { Name = "<script>\"&'\u0001</script>" } };
        Assert.Contains("<script>\"&' </script>", new SvgPage(CellDrawings.Plan(cell)).Texts().Select(t => t.Text));
    }

    [Fact]
    public void A_drawing_is_the_same_under_every_culture_of_the_thread()
    {
        string before = CellDrawings.Plan(HandMadeCells.RailDelta).Svg;
        var culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(before, CellDrawings.Plan(HandMadeCells.RailDelta).Svg);
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Fact]
    public void Numbers_on_a_drawing_follow_the_culture_it_is_made_for()
    {
        var cell = HandMadeCells.RailDelta with { Cell = HandMadeCells.RailDelta.Cell with { Mount = new() { X = 0.6005, Y = 0.5, Z = 1.75 } } };
        Assert.Contains("600,5", new SvgPage(CellDrawings.Plan(cell, locale: Locale.English with { Culture = CultureInfo.GetCultureInfo("de-DE") })).Texts().Select(t => t.Text));
    }

    [Fact]
    public void The_robot_is_drawn_in_a_posture_that_closes()
    {
        var posture = Posture.Representative(HandMadeCells.RailDelta, null)!;
        Assert.True(posture is { Closed: true, WithinTravel: true });
        Assert.All(posture.Chains, c => Assert.Equal(0.45, (c.PlatformJoint - c.Joint).Norm, 1e-9));
        Assert.True((posture.Tcp - posture.Platform - new Vec3(0, 0, -0.12)).Norm < 1e-12);
    }
}

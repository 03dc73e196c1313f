using System.Globalization;
using System.Text.RegularExpressions;
using Trivet.Assessment;
using Trivet.Views.Drawings;
using Trivet.Views.Pictures;
using Trivet.Views.Tests.Drawings;

namespace Trivet.Views.Tests.Pictures;

/// <summary>Whole pictures of whole cells, read back by the platform's XML reader.</summary>
public sealed partial class StepPicturesTests
{
    /// <summary>Every cell with every part that it names.</summary>
    public static TheoryData<string> Cells => [.. HandMadeCells.All.Select(c => c.Name)];

    [Theory, MemberData(nameof(Cells))]
    public void Every_part_has_a_picture_that_keeps_to_its_page(string name)
    {
        var cell = HandMadeCells.All.First(c => c.Name == name).Cell;
        foreach (string pointer in Parts(cell))
        {
            if (StepPictures.Of(cell, pointer) is not { } drawing) continue;
            var page = new SvgPage(drawing);
            Assert.Equal((PicturePage.Width, PicturePage.Height), (drawing.Width, drawing.Height));
            page.AssertTextsAreApart();
            foreach (var (x, y) in Points(page)) Assert.True(x >= 0 && x <= drawing.Width && y >= 0 && y <= drawing.Height, $"{drawing.Title}: ({x}, {y}) is off the page.");
        }
    }

    [Fact]
    public void A_cell_without_anything_placed_has_no_picture() => Assert.Null(StepPictures.Of(HandMadeCells.Nothing, ""));

    [Fact]
    public void The_marked_part_is_told_by_width_and_hatch_and_by_its_name_outside()
    {
        var cell = Sample("jar-lids");
        var page = new SvgPage(StepPictures.Of(cell, "/stations/tray-left")!);
        Assert.Contains(page.All("path"), p => p.Attribute("class")!.Value == "r");
        Assert.Contains(page.All("path"), p => p.Attribute("class")!.Value == "n");
        Assert.Equal("Left tray", Assert.Single(page.Texts()).Text);
        // No text and no digit within the drawing: the only one stands in the band.
        Assert.True(page.Texts().Single().Box.Y > PicturePage.Height - PicturePage.Band - PicturePage.Margin || page.Texts().Single().Box.Bottom < PicturePage.Band + PicturePage.Margin);
        Assert.DoesNotContain(new SvgPage(StepPictures.Of(cell, "")!).All("path"), p => p.Attribute("class")!.Value is "r" or "n");
    }

    [Fact]
    public void What_is_not_fitted_yet_is_not_drawn()
    {
        var cell = Sample("jar-lids");
        double all = Ink(cell, Fitted.All), none = Ink(cell, Fitted.All & ~(Fitted.Rods | Fitted.Platform | Fitted.Tool)), frame = Ink(cell, Fitted.Frame);
        Assert.True(frame < none && none < all, $"{frame}, {none}, {all}");
        Assert.DoesNotContain(CellSolids.Of(cell, Fitted.All & ~Fitted.Rods & ~Fitted.Platform), p => p.Pointers.Any(o => o.EndsWith("/rod", StringComparison.Ordinal)));

        static double Ink(Assessed cell, Fitted fitted) => CellSolids.Of(cell, fitted).Length;
    }

    [Theory, InlineData("/robot/chains/b", PictureKind.Detail), InlineData("/io/switches/low-a", PictureKind.Detail), InlineData("/stations/belt/z", PictureKind.Whole)]
    public void The_part_decides_what_is_shown(string pointer, PictureKind kind)
    {
        Assert.Equal(kind, StepPictures.KindOf(pointer));
        var cell = Sample("jar-lids");
        Assert.Equal(StepPictures.Of(cell, pointer, kind)!.Svg, StepPictures.Of(cell, pointer)!.Svg);
    }

    [Fact]
    public void A_field_stands_for_its_part() =>
        Assert.Equal(StepPictures.Of(Sample("jar-lids"), "/stations/belt")!.Svg, StepPictures.Of(Sample("jar-lids"), "/stations/belt/z")!.Svg);

    [Fact]
    public void A_part_behind_others_is_drawn_dashed_where_asked()
    {
        var cell = Sample("jar-lids");
        Assert.Contains(new SvgPage(StepPictures.Of(cell, "/stations/tray-right", hidden: true)!).All("path"), p => p.Attribute("class")!.Value == "v");
        Assert.DoesNotContain(new SvgPage(StepPictures.Of(cell, "/stations/tray-right")!).All("path"), p => p.Attribute("class")!.Value == "v");
    }

    private static Assessed Sample(string name) => HandMadeCells.Samples.First(s => s.Name == name).Cell;

    private static IEnumerable<string> Parts(Assessed assessed)
    {
        var cell = assessed.Cell;
        return
        [
            "", "/frame", "/frame/feet", "/mount/z", "/robot", "/robot/chains", "/robot/platform", "/robot/rotary", "/tool", "/cabinet",
            .. cell.Robot.Chains.Keys.Select(k => "/robot/chains/" + k), .. cell.Stations.Keys.Select(k => "/stations/" + k),
            .. cell.Cabling.Devices.Keys.Select(k => "/cabling/devices/" + k), .. cell.Cabling.Ways.Keys.Select(k => "/cabling/ways/" + k),
            .. cell.Io.Switches.Keys.Select(k => "/io/switches/" + k), .. cell.Tool.Parts.Keys.Select(k => "/tool/parts/" + k),
            .. cell.Guarding.Devices.Keys.Select(k => "/guarding/devices/" + k), .. cell.Cabinet.Modules.Keys.Select(k => "/cabinet/modules/" + k), .. cell.Cables.Keys.Select(k => "/cables/" + k),
        ];
    }

    /// <summary>All points of all shapes: paths hold only absolute moves and relative lines.</summary>
    private static IEnumerable<(double X, double Y)> Points(SvgPage page)
    {
        foreach (var path in page.All("path"))
        {
            double x = 0, y = 0;
            foreach (Match m in Step().Matches(path.Attribute("d")!.Value))
            {
                double dx = double.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture), dy = double.Parse(m.Groups[3].Value, CultureInfo.InvariantCulture);
                (x, y) = m.Groups[1].Value == "M" ? (dx, dy) : (x + dx, y + dy);
                yield return (x, y);
            }
        }

        foreach (var line in page.All("line"))
        {
            yield return (SvgPage.Number(line, "x1"), SvgPage.Number(line, "y1"));
            yield return (SvgPage.Number(line, "x2"), SvgPage.Number(line, "y2"));
        }

        foreach (var polygon in page.All("polygon"))
            foreach (string pair in polygon.Attribute("points")!.Value.Split(' '))
                yield return (double.Parse(pair.Split(',')[0], CultureInfo.InvariantCulture), double.Parse(pair.Split(',')[1], CultureInfo.InvariantCulture));
        foreach (var rectangle in page.All("rect"))
        {
            if (rectangle.Attribute("x") is null) continue;
            yield return (SvgPage.Number(rectangle, "x"), SvgPage.Number(rectangle, "y"));
            yield return (SvgPage.Number(rectangle, "x") + SvgPage.Number(rectangle, "width"), SvgPage.Number(rectangle, "y") + SvgPage.Number(rectangle, "height"));
        }
    }

    [GeneratedRegex("([Ml])(-?[0-9.]+) (-?[0-9.]+)")]
    private static partial Regex Step();
}

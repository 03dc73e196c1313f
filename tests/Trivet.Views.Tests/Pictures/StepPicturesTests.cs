using System.Globalization;
using System.Text.RegularExpressions;
using Trivet.Assessment;
using Trivet.Procedures;
using Trivet.Views.Drawings;
using Trivet.Views.Pictures;
using Trivet.Views.Tests.Drawings;

namespace Trivet.Views.Tests.Pictures;

/// <summary>Whole pictures of whole cells, read back by the platform's XML reader.</summary>
public sealed partial class StepPicturesTests
{
    /// <summary>Every cell, with parts of every kind that it names.</summary>
    public static TheoryData<string> Cells => [.. HandMadeCells.All.Select(c => c.Name)];

    [Theory, MemberData(nameof(Cells))]
    public void Every_part_has_a_picture_that_keeps_to_its_page(string name)
    {
        var cell = HandMadeCells.All.First(c => c.Name == name).Cell;
        foreach (string pointer in Parts(cell))
        {
            if (StepPictures.Of(cell, pointer) is not { } drawing) continue;
            var page = new SvgPage(drawing);
            // The strip of all modules is a drawing that was there before.
            if (drawing.Width > PicturePage.Width) continue;
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

    /// <summary>Every step of every sample that is about something with a place has its picture, and steps with one name have one picture.</summary>
    [Theory, InlineData("jar-lids", 40), InlineData("biscuits", 20)]
    public void Steps_have_the_picture_of_their_part(string name, int least)
    {
        var cell = Sample(name);
        var procedure = Procedure.Of(cell.Cell, []);
        var byName = new Dictionary<string, string?>(StringComparer.Ordinal);
        foreach (var step in procedure.Steps)
        {
            string? svg = StepPictures.Of(cell, procedure, step)?.Svg;
            string key = StepPictures.NameOf(procedure, step);
            if (byName.TryGetValue(key, out string? before)) Assert.Equal(before, svg);
            byName[key] = svg;
        }

        Assert.True(byName.Values.Count(v => v is not null) >= least, $"{byName.Values.Count(v => v is not null)} pictures of {procedure.Steps.Length} steps.");
    }

    [Fact]
    public void A_set_has_each_picture_once()
    {
        var cell = Sample("biscuits");
        var procedure = Procedure.Of(cell.Cell, []);
        var set = PictureSet.Of(cell, procedure);
        Assert.Equal(set.Pictures.Count, set.Pictures.Values.Distinct(StringComparer.Ordinal).Count());
        Assert.All(set.OfSteps, s => Assert.Equal(StepPictures.Of(cell, procedure, procedure.Steps.First(p => p.Id == s.Key))!.Svg, set.Pictures[s.Value]));
    }

    [Fact]
    public void Rods_platform_and_tool_come_with_the_step_that_fits_them()
    {
        var procedure = Procedure.Of(Sample("jar-lids").Cell, []);
        Fitted At(string kind) => StepPictures.FittedAt(procedure, procedure.Steps.First(s => s.Kind == kind));
        Assert.False(At("frame-level").HasFlag(Fitted.Robot));
        Assert.True(At("base-marks").HasFlag(Fitted.Robot) && !At("base-marks").HasFlag(Fitted.Rods));
        Assert.True(At("rods-and-platform").HasFlag(Fitted.Rods | Fitted.Platform) && !At("rods-and-platform").HasFlag(Fitted.Tool));
        Assert.True(At("tool-mounted").HasFlag(Fitted.Tool));
    }

    [Fact]
    public void A_robot_from_above_has_its_chains_by_number_outside_the_drawing()
    {
        var page = new SvgPage(StepPictures.Of(Sample("jar-lids"), "/robot/chains")!);
        Assert.Equal(["+X", "+Y", "1 · a", "2 · b", "3 · c"], page.Texts().Select(t => t.Text).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_module_shows_what_its_switches_must_read()
    {
        // Address 12 on two rotary switches.
        var texts = new SvgPage(StepPictures.Of(Sample("jar-lids"), "/cabinet/modules/axis-b")!).Texts().Select(t => t.Text);
        Assert.Equal(["1", "2", "Axis second rail"], texts.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_cable_shows_which_plugs_may_be_taken_for_its_own()
    {
        var texts = new SvgPage(StepPictures.Of(Sample("jar-lids"), "/cables/motor-b")!).Texts().Select(t => t.Text).ToArray();
        Assert.Contains("W1B", texts);
        Assert.Contains("W1A", texts);
        Assert.Contains("W1C", texts);
        Assert.Equal(2, texts.Count(t => t == "not this one"));
    }

    [Fact]
    public void A_push_goes_both_ways_along_the_travel_and_a_foot_goes_up()
    {
        static double Tip(SvgPage page, int arrow) => double.Parse(page.All("polygon").ElementAt(arrow).Attribute("points")!.Value.Split(' ')[3].Split(',')[1], CultureInfo.InvariantCulture);
        var push = new SvgPage(StepPictures.Of(Sample("jar-lids"), "/robot/chains/b", PictureKind.Push)!);
        // The first way is along the travel, down an upright rail.
        Assert.Equal(2, push.All("polygon").Count());
        Assert.True(Tip(push, 0) > Tip(push, 1));
        var foot = new SvgPage(StepPictures.Of(Sample("jar-lids"), "/frame/feet/post-front-left")!);
        double y = double.Parse(foot.All("polygon").Single().Attribute("points")!.Value.Split(' ')[0].Split(',')[1], CultureInfo.InvariantCulture);
        Assert.True(Tip(foot, 0) < y);
    }

    [Theory, InlineData("/frame"), InlineData("/mount"), InlineData("/robot")]
    public void Levels_lie_both_ways(string pointer)
    {
        var page = new SvgPage(StepPictures.Of(Sample("jar-lids"), pointer, PictureKind.Level)!);
        Assert.Equal("spirit level", Assert.Single(page.Texts()).Text);
        Assert.Contains(page.All("path"), p => p.Attribute("class")!.Value == "n");
    }

    private static Assessed Sample(string name) => HandMadeCells.Samples.First(s => s.Name == name).Cell;

    private static IEnumerable<string> Parts(Assessed assessed)
    {
        var cell = assessed.Cell;
        return
        [
            "", "/frame", "/frame/feet", "/mount/z", "/robot", "/robot/chains", "/cabinet/modules", "/robot/platform", "/robot/rotary", "/tool", "/cabinet",
            .. cell.Robot.Chains.Keys.Select(k => "/robot/chains/" + k), .. cell.Stations.Keys.Select(k => "/stations/" + k),
            .. cell.Cabling.Devices.Keys.Take(2).Select(k => "/cabling/devices/" + k), .. cell.Cabling.Ways.Keys.Take(2).Select(k => "/cabling/ways/" + k),
            .. cell.Io.Switches.Keys.Take(2).Select(k => "/io/switches/" + k), .. cell.Tool.Parts.Keys.Take(2).Select(k => "/tool/parts/" + k),
            .. cell.Guarding.Devices.Keys.Take(2).Select(k => "/guarding/devices/" + k), .. cell.Cabinet.Modules.Keys.Take(2).Select(k => "/cabinet/modules/" + k), .. cell.Cables.Keys.Take(2).Select(k => "/cables/" + k),
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

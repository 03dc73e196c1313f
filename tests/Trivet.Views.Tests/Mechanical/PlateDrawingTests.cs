using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Views.Mechanical;
using Trivet.Views.Papers;
using Trivet.Views.Words;
using Xunit;

namespace Trivet.Views.Tests.Mechanical;

/// <summary>The drawing of a plate: where its marks and texts stand, before anyone renders it.</summary>
public sealed class PlateDrawingTests
{
    private static readonly Cell Cell = Cells.Cell.Empty with
    {
        Interfaces = Cells.Cell.Empty.Interfaces.Add("tool", new()
        {
            Shape = PatternShape.Circle, Circle = 0.040, Holes = 4, Thread = "M5", Tapped = true, ThreadDepth = 0.010, Material = "steel", FaceDiameter = 0.060,
        }),
        Plates = Cells.Cell.Empty.Plates.Add("adapter", new() { Above = "ISO 9409-1-50-4-M6", Below = "tool", Material = "aluminium", Pieces = 2, Lighten = true }),
    };

    private static readonly AdapterResult Result = PlateSearch.Solve(AdapterInput.Read(Cell, "adapter", new Reading(), [])!);

    public static TheoryData<int> Pieces => [0, 1];

    private static Paper Drawn(int piece) => PlateDrawing.Of(Result.Stack[piece], new("Test plate", "", "a cell", "12345678", "2026-01-01"));

    [Theory, MemberData(nameof(Pieces))]
    public void Every_mark_stands_on_the_paper(int piece)
    {
        var paper = Drawn(piece);
        Assert.True(paper.Marks.Length > 100);
        foreach (var mark in paper.Marks)
        {
            Vec2[] corners = mark switch
            {
                Stroke s => [.. s.Points],
                FillMark f => [.. f.Points],
                ArcMark a => [a.Centre - new Vec2(a.Radius, a.Radius), a.Centre + new Vec2(a.Radius, a.Radius)],
                Label l => [l.At],
                _ => [],
            };
            Assert.NotEmpty(corners);
            Assert.All(corners, c => Assert.True(c.X >= 0 && c.Y >= 0 && c.X <= paper.Width && c.Y <= paper.Height, $"{mark}"));
        }
    }

    [Theory, MemberData(nameof(Pieces))]
    public void Every_hole_is_lettered_in_the_view_and_placed_in_the_table(int piece)
    {
        var plate = Result.Stack[piece];
        string[] texts = [.. Drawn(piece).Marks.OfType<Label>().Select(l => l.Text)];
        foreach (var group in HoleCallouts.Of(plate, Locale.English))
        {
            Assert.Contains(group.Callout, texts);
            for (int i = 0; i < group.Holes.Length; i++)
            {
                Assert.Equal(2, texts.Count(t => t == $"{group.Letter}{i + 1}"));
                Assert.Contains(HoleCallouts.Millimetres(group.Holes[i].At.X, Locale.English), texts);
            }
        }
        Assert.Equal(plate.Holes.Length, HoleCallouts.Of(plate, Locale.English).Sum(g => g.Holes.Length));
        Assert.Contains("ISO 2768-mK", texts);
        Assert.Contains(HoleCallouts.Millimetres(plate.Thickness, Locale.English), texts);
    }

    /// <summary>Each plate shows the circles of its own two faces; both show and dimension the ring that joins them.</summary>
    [Fact]
    public void A_stacks_drawings_show_the_circles_of_each_plate()
    {
        double ring = Result.Stack[0].Below.Radius;
        Assert.Equal(ring, Result.Stack[1].Above.Radius, 1e-12);
        foreach (var (piece, radius, others) in new[] { (0, 0.025, 0.020), (1, 0.020, 0.025) })
        {
            var marks = Drawn(piece).Marks;
            double scale = marks.OfType<ArcMark>().Where(a => a.Pen == Pen.Centre).Max(a => a.Radius) / ring;
            double[] circles = [.. marks.OfType<ArcMark>().Where(a => a.Pen == Pen.Centre).Select(a => a.Radius / scale)];
            Assert.Contains(circles, c => Math.Abs(c - radius) < 1e-9);
            Assert.DoesNotContain(circles, c => Math.Abs(c - others) < 1e-9);
            string[] texts = [.. marks.OfType<Label>().Select(l => l.Text)];
            Assert.Contains($"Ø{HoleCallouts.Millimetres(2 * ring, Locale.English)}", texts);
            Assert.Contains($"Ø{HoleCallouts.Millimetres(2 * radius, Locale.English)}", texts);
        }
    }

    /// <summary>A blind recess in the lower face can not be seen from above: ISO 128 draws it dashed. One in the upper face is seen.</summary>
    [Theory]
    [InlineData(true, Pen.Outline), InlineData(false, Pen.Hidden)]
    public void A_blind_recess_is_seen_on_its_own_side_alone(bool above, Pen pen)
    {
        var flange = Cell with { Plates = Cell.Plates.SetItem("adapter", Cell.Plates["adapter"] with { Pieces = 1, Lighten = false, Above = above ? "ISO 9409-1-50-4-M6" : "small", Below = above ? "small" : "ISO 9409-1-50-4-M6" }) };
        flange = flange with
        {
            Interfaces = flange.Interfaces.Add("small", new()
            {
                Shape = PatternShape.Rectangle, Width = 0.090, Depth = 0.090, Thread = "M4", Tapped = false, Grip = 0.006, Material = "aluminium", FaceWidth = 0.110, FaceDepth = 0.110,
            })
        };
        var found = PlateSearch.Solve(AdapterInput.Read(flange, "adapter", new Reading(), [])!);
        var plate = found.Works[0];
        var recess = plate.Holes.Single(h => h.Kind == HoleKind.Pilot);
        Assert.Equal(above ? PlateFace.Above : PlateFace.Below, recess.From);
        var marks = PlateDrawing.Of(plate, new("Test plate", "", "a cell", "12345678", "2026-01-01")).Marks.OfType<ArcMark>().ToArray();
        double ring = marks.Where(a => a.Pen == Pen.Centre).Max(a => a.Radius) / Math.Max(plate.Above.Radius, plate.Below.Radius);
        Assert.Equal(pen, marks.Single(a => Math.Abs(a.Radius - ring * recess.Widest) < 1e-9 && a.Pen is Pen.Outline or Pen.Hidden).Pen);
    }

    /// <summary>No text of the view stands on another one, nor a tag on a hole that is not its own.</summary>
    [Theory, MemberData(nameof(Pieces))]
    public void Texts_of_the_view_stand_free_of_each_other(int piece)
    {
        var marks = Drawn(piece).Marks;
        var view = marks.OfType<ArcMark>().First(a => a.Pen == Pen.Centre).Centre;
        Label[] labels = [.. marks.OfType<Label>().Where(l => !l.Upright && (l.At - view).Norm < 95 && l.At.X < 236)];
        Assert.True(labels.Length > Result.Stack[piece].Holes.Length);
        for (int i = 0; i < labels.Length; i++)
            for (int j = 0; j < i; j++) Assert.False(Overlap(Box(labels[i]), Box(labels[j])), $"{labels[i].Text} on {labels[j].Text}");
        double scale = marks.OfType<ArcMark>().Where(a => a.Pen == Pen.Centre).Max(a => a.Radius) / Result.Stack[0].Below.Radius;
        foreach (var group in HoleCallouts.Of(Result.Stack[piece], Locale.English))
            for (int i = 0; i < group.Holes.Length; i++)
            {
                var (least, most) = Box(labels.Single(l => l.Text == $"{group.Letter}{i + 1}"));
                foreach (var hole in Result.Stack[piece].Holes)
                {
                    var at = view + scale * hole.At;
                    Vec2 near = new(Math.Clamp(at.X, least.X, most.X), Math.Clamp(at.Y, least.Y, most.Y));
                    Assert.True((near - at).Norm > scale * hole.Widest - 1e-9, $"{group.Letter}{i + 1}");
                }
            }

        static (Vec2 Least, Vec2 Most) Box(Label l)
        {
            double w = DraftingTable.WidthOf(l.Text, l.Size), left = l.At.X - (l.Anchor == TextAnchor.Middle ? w / 2 : l.Anchor == TextAnchor.End ? w : 0);
            return (new(left, l.At.Y), new(left + w, l.At.Y + 0.75 * l.Size));
        }
        static bool Overlap((Vec2 Least, Vec2 Most) a, (Vec2 Least, Vec2 Most) b) => a.Least.X < b.Most.X && b.Least.X < a.Most.X && a.Least.Y < b.Most.Y && b.Least.Y < a.Most.Y;
    }

    /// <summary>The section goes through a counterbore where there is one, and tells its depth: ISO 4762 head of M6 6 mm and half a millimetre.</summary>
    [Fact]
    public void The_section_cuts_a_counterbore()
    {
        Assert.Contains(Result.Stack[0].Holes, h => h.Kind == HoleKind.Counterbored);
        Assert.Contains("6.5", Drawn(0).Marks.OfType<Label>().Where(l => l.Upright).Select(l => l.Text));
    }

    /// <summary>The outline can be made from the paper: each corner's radius stands beside its hole, and is hole and edge wall together.</summary>
    [Theory, MemberData(nameof(Pieces))]
    public void Corner_radii_are_told(int piece)
    {
        var plate = Result.Stack[piece];
        var arcs = plate.Outline.Pieces.Where(p => p.IsArc).ToArray();
        Assert.True(arcs.Length > 1);
        string[] texts = [.. Drawn(piece).Marks.OfType<Label>().Select(l => l.Text)];
        Assert.Contains("R", texts);
        foreach (var arc in arcs)
        {
            var hole = Assert.Single(plate.Holes, h => (h.At - arc.Centre).Norm < 1e-9);
            Assert.Equal(hole.Widest + 0.003, arc.Radius, 1e-9);
            Assert.Contains(HoleCallouts.Millimetres(arc.Radius, Locale.English), texts);
        }
    }

    [Fact]
    public void Stiffness_is_told_to_three_digits_and_long_names_stand_clear_of_their_values()
    {
        var sheets = ImmutableArray.Create(PlateSheet.Of(Cell, Result, "12345678", "2026-01-01"));
        Assert.Equal("850000 N/mm", Numbers.Rough(850_006_123, "N/m"));
        Assert.Equal("5840 N", Numbers.Rough(5843.3, "N"));
        foreach (var (what, shown) in sheets[0].Facts) Assert.Matches($"{what} {{2,}}{System.Text.RegularExpressions.Regex.Escape(shown)}", PlateForms.Text(sheets));
    }

    [Fact]
    public void Callouts_say_thread_counterbore_and_depth()
    {
        string[] upper = [.. HoleCallouts.Of(Result.Stack[0], Locale.English).Select(g => g.Callout)];
        Assert.Contains("Ø6.6 through, counterbore Ø11 × 6.5 deep from below", upper);
        Assert.Contains("M5 - 6H through", HoleCallouts.Of(Result.Stack[1], Locale.English).Select(g => g.Callout).Concat(upper));
        Assert.Contains(upper, c => c.StartsWith("Ø31.5 H7 × 3 deep from above", StringComparison.Ordinal));
    }

    [Fact]
    public void The_picture_is_one_drawing_with_every_text_of_the_paper()
    {
        var paper = Drawn(0);
        string svg = PaperSvg.Of(paper).Svg;
        foreach (var label in paper.Marks.OfType<Label>()) Assert.Contains($">{System.Net.WebUtility.HtmlEncode(label.Text).Replace("&#216;", "Ø", StringComparison.Ordinal).Replace("&#215;", "×", StringComparison.Ordinal).Replace("&#176;", "°", StringComparison.Ordinal)}</text>", svg, StringComparison.Ordinal);
    }
}

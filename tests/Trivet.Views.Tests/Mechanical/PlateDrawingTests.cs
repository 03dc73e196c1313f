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

    private static Paper Drawn(int piece) => PlateDrawing.Of(Result.Stack[piece], Result.Input, new("Test plate", "", "a cell", "12345678", "2026-01-01"));

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

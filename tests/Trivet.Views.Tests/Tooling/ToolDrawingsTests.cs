using Trivet.Cells;
using Trivet.Files;
using Trivet.Views.Drawings;
using Trivet.Views.Tests.Drawings;
using Trivet.Views.Tooling;

namespace Trivet.Views.Tests.Tooling;

/// <summary>The stack drawing and the pneumatic diagram: texts apart and on the page, every part named, valves of the kind that their user needs.</summary>
public sealed class ToolDrawingsTests
{
    private static Cell Sample(string name) => CellFile.Read(System.Text.Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    public static TheoryData<string> Names => ["jar-lids", "labels"];

    [Theory, MemberData(nameof(Names))]
    public void Texts_are_apart_and_every_part_is_named(string name)
    {
        var cell = Sample(name);
        foreach (var drawing in new[] { StackDrawing.Of(cell)!, PneumaticDiagram.Of(cell)! })
        {
            var page = new SvgPage(drawing);
            page.AssertTextsAreApart();
            Assert.DoesNotContain("NaN", drawing.Svg, StringComparison.Ordinal);
            Assert.NotEmpty(page.All("desc").Single().Value);
        }
        string[] texts = [.. new SvgPage(StackDrawing.Of(cell)!).All("text").Select(t => t.Value)];
        Assert.All(cell.Tool.Parts.Values, p => Assert.Contains(p.Name!, texts));
        texts = [.. new SvgPage(PneumaticDiagram.Of(cell)!).All("text").Select(t => t.Value)];
        Assert.All(cell.Pneumatics.Users.Values, u => Assert.Contains(u.Valve!, texts));
    }

    [Fact]
    public void Eight_thin_parts_still_have_their_texts_apart()
    {
        var cell = Cell.Empty;
        for (int i = 0; i < 8; i++)
            cell = cell with { Tool = cell.Tool with { Parts = cell.Tool.Parts.Add($"p{i}", new() { Order = i, Name = $"plate {i} with a name that is rather long", Mass = 0.1, Height = 0.002 }) } };
        new SvgPage(StackDrawing.Of(cell)!).AssertTextsAreApart();
    }

    [Fact]
    public void Where_there_is_nothing_nothing_is_drawn()
    {
        Assert.Null(StackDrawing.Of(Cell.Empty));
        Assert.Null(PneumaticDiagram.Of(Cell.Empty));
    }

    /// <summary>Jar lids by hand: 32 + 420 + 85 g; centre (32·4 + 420·30 + 85·71)/537 = 34.9 mm below the interface.</summary>
    [Fact]
    public void The_sheet_says_what_the_sums_are()
    {
        var sheet = ToolSheet.Of(Sample("jar-lids"));
        Assert.Equal(["537 g", "546 g"], sheet.Sums.Select(s => s.Mass));
        Assert.Equal("0, 0, -34.9 mm", sheet.Sums[0].Centre);
        Assert.Equal(["part:plate", "part:turn", "part:cup"], sheet.Parts.Select(p => p.Id));
        Assert.True(sheet.Parts[2].Turns);
        var reached = sheet.Lines.Single(l => l.Id == "vacuum-reached");
        Assert.InRange(reached.Si, 40_000, 75_000);
        // Straight down a lid has no speed left and right: every line about what is thrown has a finite energy.
        Assert.All(sheet.Lines.Where(l => l.Id.StartsWith("thrown:", StringComparison.Ordinal)), l => Assert.InRange(l.Si, 1e-6, 1));
        Assert.Equal(8, sheet.Lines.Count(l => l.Id.StartsWith("thrown:", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_stack_of_masses_alone_says_that_its_inertia_is_not_known() =>
        Assert.Equal("not known", ToolSheet.Of(Sample("biscuits")).Sums[0].Inertia);
}

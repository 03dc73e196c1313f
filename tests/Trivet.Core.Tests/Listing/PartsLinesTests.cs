using System.Text;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Listing;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Listing;

/// <summary>The parts list against what was counted by hand in the sample's description.</summary>
public sealed class PartsLinesTests
{
    private static Cell JarLids => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;

    private static PartsLine Line(Cell cell, string pointer) => PartsLines.Of(cell).Lines.First(l => l.Pointers.Contains(pointer));

    [Fact]
    public void Equal_things_are_one_line_with_their_number()
    {
        Assert.Equal((6, PartKind.Rod), (Line(JarLids, "/robot/chains/b").Quantity, Line(JarLids, "/robot/chains/b").Kind));
        Assert.Equal(3, Line(JarLids, "/drives/motors/rail-motor").Quantity);
        Assert.Equal(1, Line(JarLids, "/drives/motors/turn-motor").Quantity);
        // Four posts, two along x, four short ones of the same section, two of the bridge; then braces of two lengths, two brackets at each joint, and a foot below each post.
        // Joints: both ends of 4 top beams, 2 bridges, 2 low beams and 8 braces, 32 in all.
        var frame = PartsLines.Of(JarLids).Lines.Where(l => l.Group == PartGroup.Frame).ToArray();
        Assert.Equal([4, 2, 4, 2, 4, 4, 64, 4], frame.Select(l => l.Quantity));
        Assert.Equal(PartKind.Foot, frame[^1].Kind);
        // Four screws hold the robot, four and four the adapter plate.
        Assert.Equal([4, 4, 4], PartsLines.Of(JarLids).Lines.Where(l => l.Kind == PartKind.Screw).Select(l => l.Quantity));
        Assert.Equal((PartKind.Bracket, 64), (Line(JarLids, "/frame/joints").Kind, Line(JarLids, "/frame/joints").Quantity));
        // The platform's pattern has one pin of 5 mm (ISO 9409-1); the 8 mm plate takes it through, and 1.5 · 5 mm go into the platform: 15.5 mm of room.
        var pin = Line(JarLids, "/plates/adapter/pins");
        Assert.Equal((PartKind.Pin, 1), (pin.Kind, pin.Quantity));
        Assert.Equal([0.005, 0.014], pin.Sizes.Select(s => Math.Round(s, 9)));
        Assert.Equal([0.06, 0.06, 1.8], frame[0].Sizes.Select(s => Math.Round(s, 9)));
        Assert.Equal(9, PartsLines.Of(JarLids).Lines.Count(l => l.Group == PartGroup.Cabinet));
    }

    [Fact]
    public void A_rod_of_another_length_is_a_line_of_its_own()
    {
        var cell = JarLids;
        cell = cell with { Robot = cell.Robot with { Chains = cell.Robot.Chains.SetItem("c", cell.Robot.Chains["c"] with { Rod = 0.561 }) } };
        Assert.Equal([4, 2], PartsLines.Of(cell).Lines.Where(l => l.Kind == PartKind.Rod).Select(l => l.Quantity));
    }

    [Fact]
    public void What_is_said_of_a_line_counts_and_what_is_not_is_the_usual()
    {
        var rods = Line(JarLids, "/robot/chains/a");
        Assert.Equal((Supplied.Made, true, 2, "invented drawing 014"), (rods.Supplied, rods.Stated, rods.Spares, rods.Article));
        var cup = Line(JarLids, "/tool/parts/cup");
        Assert.Equal((Supplied.Bought, false, 5), (cup.Supplied, cup.Stated, cup.Spares));
        Assert.Equal((PartGroup.Further, 2), (Line(JarLids, "/partsList/dowels").Group, Line(JarLids, "/partsList/dowels").Quantity));
    }

    [Fact]
    public void A_line_that_speaks_of_nothing_is_told()
    {
        var cell = JarLids with { PartsList = JarLids.PartsList.SetItem("cup", new() { Of = "/tool/parts/sucker" }) };
        var finding = Assert.Single(PartsChecks.Check(cell, new()).Findings);
        Assert.Equal(("/partsList/cup/of", Verdict.Open), (finding.Subject.Pointer, finding.Verdict));
        Assert.Empty(PartsChecks.Check(JarLids, new()).Findings);
    }

    /// <summary>The part of the stack that is the plate stands for it; without the link both are listed, and each plate with its pieces.</summary>
    [Fact]
    public void A_designed_plate_is_listed_with_its_pieces_unless_a_part_of_the_stack_is_it()
    {
        static PartsLine[] Plates(Cell cell) => [.. PartsLines.Of(cell).Lines.Where(l => l.Kind != PartKind.Pin && l.Pointers.Any(p => p.StartsWith("/plates/", StringComparison.Ordinal)))];
        Assert.Empty(Plates(JarLids));
        Cell Linked(string? plate) => JarLids with { Tool = JarLids.Tool with { Parts = JarLids.Tool.Parts.SetItem("plate", JarLids.Tool.Parts["plate"] with { Plate = plate }) } };
        Assert.Equal(1, Assert.Single(Plates(Linked(null))).Quantity);
        Assert.Equal("/tool/parts/plate/plate", Assert.Single(PartsChecks.Check(Linked("another"), new()).Findings).Subject.Pointer);
        // One plate can't do it and nobody asked for two: the stack that was found counts, as it does where it is asked for and where the stack's part is it.
        Assert.Equal(2, Assert.Single(Plates(AdapterCells.Covered)).Quantity);
        Assert.Equal(2, Assert.Single(Plates(AdapterCells.With(AdapterCells.Covered, p => p with { Pieces = 2 }))).Quantity);
        Assert.Equal(1, Assert.Single(Plates(AdapterCells.Simple)).Quantity);
        var part = AdapterCells.Covered with { Tool = Cell.Empty.Tool with { Parts = Cell.Empty.Tool.Parts.Add("p", new() { Kind = ToolPartKind.Plate, Plate = "adapter" }) } };
        Assert.Empty(Plates(part));
        Assert.Equal(2, Line(part, "/tool/parts/p").Quantity);
    }

    [Fact]
    public void A_cell_with_nothing_in_it_has_no_parts() => Assert.Empty(PartsLines.Of(Cell.Empty).Lines);
}

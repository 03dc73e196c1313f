using Trivet.Cells;
using Xunit;

namespace Trivet.Files.Tests;

public sealed class FieldMovesTests
{
    private static readonly Cell Lids = CellFile.Read(System.Text.Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;

    [Fact]
    public void The_same_value_in_another_unit_is_no_move()
    {
        string text = Samples.Find("jar-lids")!.Text;
        var other = CellFile.Read(System.Text.Encoding.UTF8.GetBytes(CellFile.Canonical(Lids)), "canonical").Cell!;
        Assert.NotEqual(text, CellFile.Canonical(Lids));
        Assert.Empty(FieldMoves.Of(Lids, other));
    }

    [Fact]
    public void A_changed_field_is_told_with_both_texts_and_moves_no_collection()
    {
        string id = Lids.Stations.Keys.First(), pointer = $"/stations/{id}/z";
        double z = Lids.Stations[id].Z!.Value;
        var move = Assert.Single(FieldMoves.Of(Lids, CellFields.SetSi(Lids, pointer, z + 0.01)));
        Assert.Equal((pointer, CellFields.Find(Lids, pointer)!.Text), (move.Pointer, move.From));
        Assert.NotEqual(move.From, move.To);
    }

    [Fact]
    public void An_entry_that_comes_or_changes_its_place_moves_its_collection()
    {
        var more = CellFields.Add(Lids, "/cabinet/modules/another").Cell!;
        Assert.Contains(FieldMoves.Of(Lids, more), m => m.Pointer == "/cabinet/modules" && m.To.EndsWith(", another", StringComparison.Ordinal));
        string last = Lids.Cabinet.Modules.InOrder().Last().Key;
        var first = Lids with { Cabinet = Lids.Cabinet with { Modules = Lids.Cabinet.Modules.SetItem(last, Lids.Cabinet.Modules[last] with { Order = -1 }) } };
        Assert.Contains(FieldMoves.Of(Lids, first), m => m.Pointer == "/cabinet/modules" && m.To.StartsWith(last + ", ", StringComparison.Ordinal));
        // A collection within an entry counts like any other.
        string cable = Lids.Cables.Keys.First();
        Assert.Contains(FieldMoves.Of(Lids, CellFields.Add(Lids, $"/cables/{cable}/cores/spare-9").Cell!), m => m.Pointer == $"/cables/{cable}/cores");
    }
}

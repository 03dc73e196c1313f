using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Floor;

namespace Trivet.Desk.Sync;

public sealed class BundleShelfTests
{
    private static readonly Cell First = Made.Cell, Second = Made.Cell with { Name = "Jar lids, lower" };

    [Fact]
    public async Task A_bundle_is_made_once_for_all_who_ask_and_anew_where_the_cell_or_the_revisions_behind_it_change()
    {
        var shelf = new BundleShelf(new Assessor());
        var all = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => shelf.OfAsync("lids", First, CellFile.Hash(First), Earlier())));
        Assert.All(all, b => Assert.Same(all[0], b));
        var read = FloorBundleFile.Read(all[0].Utf8);
        Assert.Equal((BundleProblem.None, CellFile.Hash(First)), (read.Problem, read.Bundle!.Revision));

        var later = await shelf.OfAsync("lids", Second, CellFile.Hash(Second), Earlier());
        Assert.NotEqual(all[0].Hash, later.Hash);
        var beside = await shelf.OfAsync("lids", Second, CellFile.Hash(Second), Earlier(First));
        Assert.NotEqual(later.Hash, beside.Hash);
        Assert.Contains(FloorBundleFile.Read(beside.Utf8).Bundle!.Moves[CellFile.Hash(First)], m => m.Pointer == "/name");
        Assert.NotSame(beside, await shelf.OfAsync("other", Second, CellFile.Hash(Second), Earlier(First)));
    }

    private static ImmutableDictionary<string, Cell> Earlier(params Cell[] cells) => cells.ToImmutableDictionary(c => CellFile.Hash(c));
}

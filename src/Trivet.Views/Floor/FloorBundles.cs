using System.Collections.Immutable;
using Trivet.AsBuilt;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Floor;
using Trivet.Views.Drawings;

namespace Trivet.Views.Floor;

/// <summary>Makes the bundle of a cell: the steps of its procedure in the words of each language, with the drawings its steps are shown on.</summary>
public static class FloorBundles
{
    internal const string Plan = "plan", Elevation = "elevation";

    /// <param name="cellId">Id of the cell in its job.</param>
    /// <param name="earlier">Earlier revisions that the journal names, by hash.</param>
    public static FloorBundle Of(string cellId, Cell cell, Assessor assessor, CancellationToken stop, IReadOnlyDictionary<string, Cell>? earlier = null)
    {
        var assessed = assessor.Preview(cell);
        string revision = CellFile.Hash(cell);
        var pictures = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        pictures[Plan] = CellDrawings.Plan(assessed).Svg;
        pictures[Elevation] = CellDrawings.Elevation(assessed).Svg;
        var moves = (earlier ?? ImmutableDictionary<string, Cell>.Empty).Where(e => e.Key != revision)
            .ToImmutableSortedDictionary(e => e.Key, e => FieldMoves.Of(e.Value, cell), StringComparer.Ordinal);
        return new(cellId, cell.Name ?? cellId, revision, LengthSteps.Of(CellProcedure.Of(assessor.Complete(cell, stop).Cell), cell), Releasing.Of(cell.Recording), moves, pictures.ToImmutable());
    }
}

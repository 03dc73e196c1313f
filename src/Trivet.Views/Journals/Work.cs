using System.Collections.Immutable;
using Trivet.AsBuilt;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Journal;

namespace Trivet.Views.Journals;

/// <summary>Where the work at a cell stands, from the cell, its journal and the revisions that the journal names.</summary>
public static class Work
{
    /// <param name="cellId">Id of the cell in its job; entries of other cells are passed over.</param>
    /// <param name="entries">The journal of the job.</param>
    /// <param name="revisions">Cells by the hash of their revision, as far as entries name them.</param>
    public static Progress Of(Cell cell, string cellId, IEnumerable<Kept> entries, IReadOnlyDictionary<string, Cell> revisions) =>
        Fold.Of(CellProcedure.Of(cell).Steps, Of(cellId, entries), Releasing.Of(cell.Recording), Moves(revisions, cell));

    /// <summary>What in the journal does not fit the procedure, besides what is wrong with the chains.</summary>
    public static ImmutableArray<Mismatch> Contradictions(Cell cell, string cellId, IEnumerable<Kept> entries) =>
        Of(cell, cellId, entries, ImmutableDictionary<string, Cell>.Empty).Mismatches;

    /// <summary>What it would cost at the machine if the cell became another one.</summary>
    public static DryRun Against(Cell now, Cell then, string cellId, IReadOnlyCollection<Kept> entries, IReadOnlyDictionary<string, Cell> revisions) =>
        DryRun.Of(Of(now, cellId, entries, revisions), CellProcedure.Of(then).Steps, Of(cellId, entries), Releasing.Of(then.Recording), Moves(revisions, then));

    private static IEnumerable<Kept> Of(string cellId, IEnumerable<Kept> entries) => entries.Where(k => k.Entry.Cell == cellId);

    private static Dictionary<string, ImmutableArray<FieldMove>> Moves(IReadOnlyDictionary<string, Cell> revisions, Cell now) =>
        revisions.ToDictionary(r => r.Key, r => FieldMoves.Of(r.Value, now), StringComparer.Ordinal);
}

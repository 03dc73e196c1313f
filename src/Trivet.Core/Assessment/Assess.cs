using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Reach;

namespace Trivet.Assessment;

/// <summary>A cell with all that was derived from it: one immutable snapshot for a page, a command or a paper to show.</summary>
/// <param name="Proved">False for a preview: reach findings are sampled and marked open until the proof has run.</param>
public sealed record Assessed(Cell Cell, CellGeometry Geometry, Ledger Ledger, bool Proved)
{
    /// <summary>The cell with what is computed in the place of what it leaves to computation: what its findings speak of, and pages draw and time.</summary>
    public Cell Planned { get; init; } = Cell;

    /// <summary>The settling time that each cycle is timed with, and how it is known.</summary>
    public ImmutableArray<CycleWait> Waits { get; init; } = [];
}

/// <summary>
/// The one place that sees all trades: runs their stages in order and gathers the ledger. Pure; no clock, file or culture. One
/// who asks again and again while a cell is edited keeps an <see cref="Assessor"/>, which remembers what an edit leaves untouched.
/// </summary>
public static class Assess
{
    /// <summary>The fast answer while a person edits: closed forms, and reach sampled instead of proved.</summary>
    public static Assessed Preview(Cell cell) => new Assessor().Preview(cell);

    /// <summary>The full answer, reach proved by interval bounds. Cancelling gives the findings reached so far, the rest open.</summary>
    /// <param name="progress">Fraction done, 0 to 1.</param>
    public static Assessed Prove(Cell cell, IProgress<double>? progress, CancellationToken stop) => new Assessor().Prove(cell, progress, stop);
}

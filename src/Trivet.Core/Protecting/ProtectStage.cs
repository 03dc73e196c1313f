using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;

namespace Trivet.Protecting;

/// <summary>What handling and guarding have to say of a cell.</summary>
public static class ProtectStage
{
    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles) => LiftChecks.Of(cell) + GuardChecks.Of(cell, cycles);
}

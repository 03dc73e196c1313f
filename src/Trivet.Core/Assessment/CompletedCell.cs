using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Assessment;

/// <summary>How the settling time of a cycle is known.</summary>
public enum WaitKnown
{
    /// <summary>Typed; it is held against what the frame asks.</summary>
    Typed,
    /// <summary>What the frame asks, of the cell as it is.</summary>
    Computed,
    /// <summary>What the frame asked when it was last computed; a newer value follows with the proof.</summary>
    LastComputed,
    /// <summary>Not computed yet: the cycle is timed as if it needed none, and its rate is open.</summary>
    NotComputed,
    /// <summary>Sought and not found: the frame does not settle within what is tried, or masses it would answer are not described. The cycle is timed as if it needed none, and its rate is open.</summary>
    NotFound,
    /// <summary>No frame or no tolerance is stated: none is planned.</summary>
    NotPlanned,
}

/// <summary>The settling time a cycle is timed with.</summary>
/// <param name="Wait">Seconds after each of its moves.</param>
public sealed record CycleWait(string Cycle, WaitKnown Known, double Wait);

/// <summary>Values computed in the place of fields.</summary>
/// <param name="At">Pointer of the field, or of what holds the fields.</param>
/// <param name="From">Pointers of all that they were computed from.</param>
internal sealed record StandIn(string At, ImmutableArray<string> From)
{
    public bool Holds(string pointer) => pointer == At || (pointer.StartsWith(At, StringComparison.Ordinal) && pointer[At.Length] == '/');
}

/// <summary>
/// A description with what is computed in the place of what it leaves to computation: the body of a part that is a designed plate, the settling time that the frame
/// asks. All trades work on it and know of nothing else; a finding that looked at such a value rests on what the value was computed from.
/// </summary>
/// <param name="Stated">As it was typed.</param>
/// <param name="Cell">With computed values laid in; the same object where there are none.</param>
/// <param name="Differs">Findings about what is typed beside a computed value.</param>
public sealed record CompletedCell(Cell Stated, Cell Cell, ImmutableArray<CycleWait> Waits, ImmutableArray<Finding> Differs)
{
    internal ImmutableArray<StandIn> StandIns { get; init; } = [];

    /// <summary>The cycles whose settling time is what the frame asks.</summary>
    public IReadOnlySet<string> Computed => Waits.Where(w => w.Known is WaitKnown.Computed or WaitKnown.LastComputed).Select(w => w.Cycle).ToHashSet(StringComparer.Ordinal);

    /// <summary>The cycles whose settling time the frame should say and has not said, with why.</summary>
    internal IReadOnlyDictionary<string, OpenReason> Unsettled => Waits.Where(w => w.Known is WaitKnown.NotComputed or WaitKnown.NotFound)
        .ToDictionary(w => w.Cycle, w => w.Known == WaitKnown.NotFound ? OpenReason.Failed : OpenReason.NotComputed, StringComparer.Ordinal);

    internal Finding WithSources(Finding finding)
    {
        string[] more = [.. StandIns.Where(s => finding.Inputs.Any(s.Holds)).SelectMany(s => s.From)];
        return more.Length == 0 ? finding : finding with { Inputs = [.. finding.Inputs.Concat(more).Distinct().Order(StringComparer.Ordinal)] };
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>
/// A cycle of a cell, read once and timed by the controller's law once, when first asked for: what motion, drives and every trade that takes forces
/// over time share while a cell is assessed. What it tells depends on the cell alone; safe to ask from several threads.
/// </summary>
public sealed class TimedCycle
{
    private readonly CycleInput.Outcome _outcome;
    private readonly Reading _reading, _planReading;
    private readonly Lazy<CycleResult?> _byController;
    private readonly Lazy<CycleTrace?> _trace;

    private TimedCycle(Cell cell, string id)
    {
        Id = id;
        _planReading = new();
        Plan = CycleInputs.Read(cell, id, _planReading);
        _reading = new(_planReading);
        _outcome = CycleInput.Read(cell, id, _reading, Plan);
        _byController = new(() => Input is { } input ? CycleTiming.ByController(input) : null);
        _trace = new(() => ByController is { } timed ? CycleTrace.Of(timed, TimingLaw.Controller) : null);
    }

    public string Id { get; }

    /// <summary>One of the cell's cycles.</summary>
    public static TimedCycle Of(Cell cell, string id) => new(cell, id);

    /// <summary>The cycle's geometry, or why there is none.</summary>
    public CycleRead Plan { get; }

    /// <summary>Null while something is missing, contradicts itself or is of a kind that is not judged.</summary>
    public CycleInput? Input => _outcome.Input;

    public ImmutableArray<Contradiction> Contradictions => _outcome.Contradictions;
    public Reason? NotJudged => _outcome.NotJudged;

    /// <summary>Under the controller's law alone; null without input.</summary>
    public CycleResult? ByController => _byController.Value;

    /// <summary>The same over time; null without input and where the law has no motion.</summary>
    public CycleTrace? Trace => _trace.Value;

    /// <summary>There is a motion by the controller's law.</summary>
    public bool Moves => ByController is { Controller: { Loaded.Trace: not null, Empty.Trace: not null } };

    /// <summary>The masses that move are described, with the part and without.</summary>
    public bool HasMasses => Input is { Loaded: not null, Empty: not null };

    /// <summary>A reading of one's own that begins with all that the timing rests on, or with the geometry alone.</summary>
    public Reading Reading(bool planOnly = false) => new(planOnly ? _planReading : _reading);

    /// <summary>The cell's cycles, in their order.</summary>
    public static ImmutableArray<TimedCycle> Of(Cell cell) => [.. cell.Motion.Cycles.InOrder().Select(c => new TimedCycle(cell, c.Key))];
}

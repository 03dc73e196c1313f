using System.Collections.Immutable;
using Trivet.Cabinets;
using Trivet.Cabling;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Powering;
using Trivet.Wiring;

namespace Trivet.Assessment;

/// <summary>
/// A stage that rests on some sections of the description alone, and is kept while none of them is replaced: an edit makes a new record of the section it is in and leaves the others the same
/// objects. A dragged station so costs nothing of the cabinet. Safe to ask from several threads: at worst a stage is done twice.
/// </summary>
/// <param name="sections">Pointers of all that the stage reads; a test holds what its findings declare against them.</param>
public sealed class KeptStage(Func<Cell, StagePlan> stage, ImmutableArray<string> sections)
{
    private Kept? _kept;

    public ImmutableArray<string> Sections => sections;

    public StagePlan Of(Cell cell)
    {
        object?[] on = [.. sections.Select(s => Section(cell, s))];
        if (_kept is { } kept && kept.On.AsSpan().SequenceEqual(on, Identity)) return kept.Plan;
        var plan = stage(cell);
        _kept = new(on, plan);
        return plan;
    }

    /// <summary>The stages of the cabinet that are kept, in the order of the assessment.</summary>
    public static ImmutableArray<KeptStage> Electrical() =>
    [
        new(CabinetStage.Of, ["/cabinet", "/depth"]),
        new(PowerStage.Of, ["/cabinet", "/cables", "/depth"]),
        new(WiringStage.Of, ["/cabinet", "/depth"]),
        new(CablingStage.Laid, ["/cabinet", "/cables", "/cabling", "/frame", "/depth"]),
    ];

    private static object? Section(Cell cell, string pointer) => pointer switch
    {
        "/cabinet" => cell.Cabinet,
        "/cables" => cell.Cables,
        "/cabling" => cell.Cabling,
        "/frame" => cell.Frame,
        _ => cell.Depth,
    };

    private static IEqualityComparer<object?> Identity { get; } = EqualityComparer<object?>.Create((a, b) => ReferenceEquals(a, b) || a is Depth && a.Equals(b));

    private sealed record Kept(object?[] On, StagePlan Plan);
}

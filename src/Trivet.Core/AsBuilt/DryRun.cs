using System.Collections.Immutable;
using Trivet.Journal;
using Trivet.Procedures;

namespace Trivet.AsBuilt;

/// <summary>A step that a change of the cell would make stale.</summary>
public sealed record Costs(Step Step, ImmutableArray<Staleness> Why, double Minutes);

/// <summary>What a change of the cell would cost at the machine, told before it is made.</summary>
/// <param name="Stale">Steps that are done, and would have to be done again; not those that are stale already.</param>
/// <param name="New">Steps that the procedure does not have now.</param>
/// <param name="Gone">Steps that it would have no longer; what was recorded about them stays in the journal.</param>
public sealed record DryRun(ImmutableArray<Costs> Stale, ImmutableArray<Step> New, ImmutableArray<StepState> Gone)
{
    /// <summary>Minutes to do again what would be stale, and to do what is new.</summary>
    public double Minutes => Stale.Sum(s => s.Minutes) + New.Sum(s => s.Minutes);

    /// <param name="now">Where the work stands with the cell as it is.</param>
    /// <param name="stepsThen">The procedure of the cell as it would be.</param>
    /// <param name="movesThen">For each revision that entries name: the fields that would not be what they were.</param>
    public static DryRun Of(
        Progress now, ImmutableArray<Step> stepsThen, IEnumerable<Kept> entries, Releasing releasingThen, IReadOnlyDictionary<string, ImmutableArray<FieldMove>> movesThen)
    {
        var then = Fold.Of(stepsThen, entries, releasingThen, movesThen);
        var before = now.Steps.ToDictionary(s => s.Step.Id, StringComparer.Ordinal);
        return new(
            [
                .. then.Steps.Where(s => !s.Stale.IsEmpty && before.TryGetValue(s.Step.Id, out var old) && old.Stale.IsEmpty)
                    .Select(s => new Costs(s.Step, s.Stale, s.Step.Minutes)),
            ],
            [.. stepsThen.Where(s => !before.ContainsKey(s.Id))],
            [.. now.Steps.Where(s => then.Of(s.Step.Id) is null)]);
    }
}

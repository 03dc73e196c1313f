using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.AsBuilt;

/// <summary>Who must let a deviation stand. Somebody always must; these ask for a second person.</summary>
/// <param name="BySecond">Deviations that who found them can not let stand alone.</param>
/// <param name="People">Ids of those who may; empty where any second person may.</param>
public sealed record Releasing(ImmutableHashSet<Deviation> BySecond, ImmutableHashSet<string> People)
{
    public static Releasing Of(Recording recording)
    {
        var bySecond = ImmutableHashSet.CreateBuilder<Deviation>();
        // What is not as planned needs a second person unless the cell says otherwise; for the rest the cell must ask.
        Add(Deviation.OutOfTolerance, recording.ReleaseOutOfTolerance ?? true);
        Add(Deviation.Differs, recording.ReleaseDiffers ?? true);
        Add(Deviation.NotPossible, recording.ReleaseNotPossible ?? true);
        Add(Deviation.Weak, recording.ReleaseWeak ?? false);
        Add(Deviation.HoldPoint, recording.ReleaseHoldPoints ?? false);
        return new(bySecond.ToImmutable(), [.. recording.People.Where(p => p.Value.Releases == true).Select(p => p.Key)]);

        void Add(Deviation deviation, bool asked)
        {
            if (asked) bySecond.Add(deviation);
        }
    }

    /// <summary>Whether a person may, as a second one, let stand what others wrote.</summary>
    public bool May(string person, IEnumerable<string> writers) => !writers.Contains(person) && (People.IsEmpty || People.Contains(person));
}

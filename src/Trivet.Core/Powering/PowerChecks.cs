using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Conductors;
using Trivet.Drives;
using Trivet.Findings;

namespace Trivet.Powering;

/// <summary>Holds sources against their loads, and branches against their wires.</summary>
internal static class PowerChecks
{
    /// <summary>A third more than what is drawn (common practice, no source).</summary>
    public const double Reserve = 1.3;

    private static readonly Source Practice = new(SourceKind.CommonPractice, "");

    public static IEnumerable<Finding> Of(FeedSource source, ImmutableArray<FeedBranch> branches)
    {
        ImmutableArray<FeedBranch> own = [.. branches.Where(b => b.Source.Id == source.Id)];
        if (own.IsEmpty || double.IsNaN(source.Current)) yield break;
        var inputs = Pointers.Joined([["/cabinet/branches"], .. own.Select(b => b.Inputs)]);
        var subject = new Subject(source.At);
        yield return new Judged(PowerRules.Reserve, subject, inputs, own.Sum(b => b.Steady), Limit.AtMost(source.Current / Reserve, Practice), Assurance.Exact);

        // A peak that lasts longer than the source bears one has to be borne without end.
        double longest = own.SelectMany(b => b.Loads).Where(l => l.Peak > l.Steady).Select(l => l.PeakTime).DefaultIfEmpty(0).Max();
        bool bears = longest <= source.PeakTime;
        yield return new Judged(PowerRules.Peak, subject, inputs, own.Sum(b => b.Peak),
            Limit.AtMost(bears ? source.PeakCurrent : source.Current, new(SourceKind.Cell, source.At + (bears ? "/peakCurrent" : "/current"))), Assurance.Exact);
    }

    public static IEnumerable<Finding> Of(FeedBranch branch)
    {
        var subject = new Subject(branch.At);
        var inputs = branch.Inputs;
        if (!branch.Source.Alternating && branch.Loads.Length > 0)
        {
            var purposes = branch.Loads.Select(l => l.Purpose).Distinct().ToArray();
            yield return new YesNo(PowerRules.Separate, subject, inputs, purposes.Length == 1, [.. branch.Loads.Select(l => l.At)]);
            foreach (var load in branch.Loads.Where(l => l.Purpose != LoadPurpose.Motors))
                yield return new Judged(PowerRules.Voltage, new(load.At), inputs, branch.VoltageAt(load), Limit.AtLeast(load.Lowest, VoltageSource(load)), Assurance.Exact);
        }
        var rating = new Source(SourceKind.Cell, branch.At + "/rating");
        yield return new Judged(PowerRules.Load, subject, inputs, branch.Steady, Limit.AtMost(branch.Rating, rating), Assurance.Exact);

        var (weakest, bears) = branch.Wires.Select(w => (w.At, w.Wire.Capacity)).OrderBy(w => double.IsNaN(w.Capacity) ? double.NegativeInfinity : w.Capacity).First();
        yield return double.IsNaN(bears)
            ? new Unjudged(PowerRules.Wires, subject, inputs, OpenReason.Failed, [], PowerReasons.BeyondTables)
            : new Judged(PowerRules.Wires, subject, inputs, branch.Rating * Tripping.WireFactor(branch.Protection),
                Limit.AtMost(bears, new(SourceKind.Cell, weakest + "/section")), Assurance.Exact)
            { Advice = Thicker(branch, weakest, bears) };

        yield return new Judged(PowerRules.Trip, subject, inputs, branch.LeastShort.Current, Limit.AtLeast(branch.Trip, rating), Assurance.Exact);
        if (Inrush(branch) is var (sum, passes))
            yield return new Judged(PowerRules.Inrush, subject, inputs, sum, Limit.AtMost(passes, rating), Assurance.Exact);
    }

    /// <summary>The next section that bears what protects it, where the weakest wire does not.</summary>
    private static ImmutableArray<Advice> Thicker(FeedBranch branch, string at, double bears)
    {
        double asked = branch.Rating * Tripping.WireFactor(branch.Protection);
        var wire = branch.Wires.First(w => w.At == at).Wire;
        if (asked <= bears) return [];
        foreach (double section in Copper.Sections.Select(s => s * 1e-6))
            if (wire with { Section = section } is { Capacity: var then } && then >= asked) return [new(at + "/section", wire.Section, section, 1 - asked / then)];
        return [];
    }

    private static Source VoltageSource(FeedLoad load) =>
        load.At.StartsWith("/cabinet/consumers", StringComparison.Ordinal) ? new(SourceKind.Cell, load.At + "/lowestVoltage") : new(SourceKind.FromMemory, "IEC-61131-2", "24 V less 15 %");

    /// <summary>Sum of all that a branch draws while its loads are switched on, and what its protection lets pass; null where a surge is not known, or there is none.</summary>
    public static (double Sum, double Passes)? Inrush(FeedBranch branch)
    {
        FeedLoad[] surging = [.. branch.Loads.Where(l => l.Purpose == LoadPurpose.Mains || l.Peak > l.Steady)];
        if (surging.Length == 0) return null;
        double sum = branch.Loads.Sum(l => l.Purpose == LoadPurpose.Mains ? l.Inrush : l.PeakSum), lasting = surging.Max(l => l.PeakTime);
        double passes = Tripping.LetsPass(branch.Protection, branch.Rating, branch.Trip, lasting);
        return sum > 0 && passes > 0 ? (sum, passes) : null;
    }

    /// <summary>Why the surges of a branch are not judged; null where they are, or there is none.</summary>
    public static Reason? NoInrush(FeedBranch branch) =>
        !branch.Loads.Any(l => l.Purpose == LoadPurpose.Mains) || Inrush(branch) is not null ? null : PowerReasons.NoInrush;

    /// <summary>What has to go on when the mains fail hangs on a source that does, long enough.</summary>
    public static IEnumerable<Finding> BackedUp(FeedBranch branch, double? holds)
    {
        foreach (var load in branch.Loads.Where(l => l.BackedUp))
        {
            string at = branch.Source.At + "/holdTime";
            ImmutableArray<string> inputs = Pointers.Joined([branch.Inputs, [at]]);
            if (branch.Source.Alternating || holds is null) yield return new YesNo(PowerRules.BackedUp, new(load.At), inputs, false, [load.At + "/backedUp", at]);
            else yield return new Judged(PowerRules.HoldTime, new(load.At), inputs, holds.Value, Limit.AtLeast(load.HoldTime, new(SourceKind.Cell, load.At + "/holdTime")), Assurance.Exact);
        }
    }
}

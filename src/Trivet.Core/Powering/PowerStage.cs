using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Powering;

/// <summary>What sources, branches and wires of the cabinet have to say of a cell. Closed forms, so nothing is left to a task.</summary>
public static class PowerStage
{
    public static StagePlan Of(Cell cell)
    {
        var cabinet = cell.Cabinet;
        if (cabinet.Sources.IsEmpty && cabinet.Branches.IsEmpty && cabinet.Consumers.IsEmpty)
            return new([], [new(PowerRules.Reserve, new("/cabinet"), PowerReasons.NoSources)], []);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        bool asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;
        var feed = Feed.Read(cell);
        foreach (var wrong in feed.Wrong) findings.Add(new Unjudged(PowerRules.Described, new(wrong.Pointer), [wrong.Pointer], OpenReason.Failed, [], wrong.Reason));
        foreach (var (at, reading) in feed.Lacking)
        {
            // Asked for once the cell is to be built; before that it waits.
            if (asked) findings.Add(new Unjudged(PowerRules.Described, new(at), [.. reading.Inputs.Append("/depth").Order(StringComparer.Ordinal)], OpenReason.Missing, reading.MissingFields));
            else coverage.Add(new(PowerRules.Described, new(at), CommonReasons.NotAskedYet));
        }
        // A source of which a branch is not known would look less loaded than it is.
        foreach (var source in feed.Sources)
            if (cabinet.Branches.Where(b => b.Value.From == source.Id).All(b => feed.Branches.Any(k => k.Id == b.Key))) findings.AddRange(PowerChecks.Of(source, feed.Branches));
        foreach (var branch in feed.Branches)
        {
            findings.AddRange(PowerChecks.Of(branch));
            findings.AddRange(PowerChecks.BackedUp(branch, cabinet.Sources[branch.Source.Id].HoldTime));
            if (PowerChecks.NoInrush(branch) is { } why) coverage.Add(new(PowerRules.Inrush, new(branch.At), why));
        }
        return new(findings.ToImmutable(), coverage.ToImmutable(), []);
    }
}

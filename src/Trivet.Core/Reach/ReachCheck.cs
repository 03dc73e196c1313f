using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Reach;

/// <summary>One check of a station's volume or of a path.</summary>
/// <param name="Case">Tells checks of one rule apart.</param>
/// <param name="NeededAt">Depth from which what it needs is asked for; before that it waits, unless everything is stated anyway.</param>
/// <param name="Nothing">Why there may be nothing to ask.</param>
internal sealed record ReachCheck(
    Rule Rule, string Case, Depth NeededAt, Func<ReachCase, Reading, IEnumerable<ReachSearch>> Ask, Reason? Nothing = null)
{
    public static ImmutableArray<ReachCheck> All { get; } =
    [
        new(ReachRules.Closure, "", Depth.Quote, ReachChecks.Closure),
        new(ReachRules.Travel, "", Depth.Quote, ReachChecks.Travel),
        new(ReachRules.Dexterity, "", Depth.Quote, ReachChecks.Dexterity),
        new(ReachRules.Swing, "", Depth.Build, ReachChecks.Swing),
        new(ReachRules.Step, "", Depth.Build, ReachChecks.Step),
        new(ReachRules.RodClearance, "rods", Depth.Build, ReachChecks.RodsToRods),
        new(ReachRules.RodClearance, "frame", Depth.Build, ReachChecks.RodsToFrame, ReachReasons.NoFrame),
        new(ReachRules.RodClearance, "walls", Depth.Build, ReachChecks.RodsToWalls, ReachReasons.NoWalls),
        new(ReachRules.ToolClearance, "frame", Depth.Build, ReachChecks.ToolToFrame, ReachReasons.NoFrame),
        new(ReachRules.ToolClearance, "walls", Depth.Build, ReachChecks.ToolToWalls, ReachReasons.NoWalls),
    ];

    /// <summary>Those that a path is asked: where a drive's steps are too coarse matters at the stations only.</summary>
    public static ImmutableArray<ReachCheck> AlongPaths { get; } = [.. All.Where(c => c.Rule != ReachRules.Step)];

    /// <summary>Its searches as one piece of work.</summary>
    public StageTask Task(Subject subject, Reading reading, ImmutableArray<ReachSearch> searches) => new(
        $"{Rule.Id}:{subject.Pointer}:{subject.Case}", reading.Key,
        () => ImmutableArray.CreateRange(searches, s => s.Sample()),
        stop => ImmutableArray.CreateRange(searches, s => s.Prove(stop)));
}

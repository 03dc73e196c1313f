using System.Collections.Immutable;
using Trivet.Reach;

namespace Trivet.Views.Words;

/// <summary>Texts of what a robot can reach.</summary>
public sealed record ReachWords
{
    /// <summary>Whose places the numbers are, and within which limits: {limits}.</summary>
    public required string Places { get; init; }
    /// <summary>Travel, which always counts, ball joints' swing, and condition number.</summary>
    public required string LimitTravel { get; init; }
    public required string LimitSwing { get; init; }
    public required string LimitCondition { get; init; }
    public required string HeadWhat { get; init; }
    public required string HeadValue { get; init; }
    public required string HeadKnown { get; init; }

    // {error} {axis} {z} {below} {chain} {station} {rule} {bound}
    public required string Volume { get; init; }
    public required string Area { get; init; }
    public required string Counted { get; init; }
    public required string CountedWithin { get; init; }
    public required string OfSurface { get; init; }
    public required string Reach { get; init; }
    public required string From { get; init; }
    public required string To { get; init; }
    public required string Under { get; init; }
    public required string UnderPlane { get; init; }
    public required string NothingUnder { get; init; }
    public required string AsAsked { get; init; }
    public required string CylinderRadius { get; init; }
    public required string CylinderHeight { get; init; }
    public required string CylinderFrom { get; init; }
    public required string Box { get; init; }
    public required string HomingAlone { get; init; }
    public required string HomingTogether { get; init; }
    public required string HomingProved { get; init; }
    public required string HomingSearched { get; init; }
    public required string HomingNone { get; init; }
    public required string StationMargin { get; init; }
    public required string NotJudged { get; init; }
    public required string SampledOnly { get; init; }
    public required string MountNow { get; init; }
    public required string MountBest { get; init; }
    public required string MountAt { get; init; }
    public required string MountTrade { get; init; }
    public required string LimitedBy { get; init; }
    /// <summary>Why the search for a mount ended, in the order of <see cref="MountStop"/>.</summary>
    public required ImmutableArray<string> MountStops { get; init; }
}

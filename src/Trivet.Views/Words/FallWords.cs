using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Motion;

namespace Trivet.Views.Words;

/// <summary>Texts about what falls when drives let go.</summary>
public sealed record FallWords
{
    public required string Title { get; init; }
    /// <summary>What the numbers are, and what they are not: stands over every table of them.</summary>
    public required string Caution { get; init; }
    /// <summary>What the two outcomes of each line mean.</summary>
    public required string HeldNote { get; init; }
    public required string GoneNote { get; init; }
    /// <summary>In the order of <see cref="FallPoint"/>; {subject}.</summary>
    public required ImmutableArray<string> Points { get; init; }
    /// <summary>In the order of <see cref="FallEnd"/>.</summary>
    public required ImmutableArray<string> Ends { get; init; }
    /// <summary>In the order of <see cref="Cells.Holding"/>.</summary>
    public required ImmutableArray<string> Holdings { get; init; }
    // {holding} {force}
    public required string HoldsForce { get; init; }
    public required string HoldsUnknown { get; init; }
    public required string AllChains { get; init; }
    public required string HeadChain { get; init; }
    public required string HeadHeldBy { get; init; }
    public required string HeadLoad { get; init; }
    public required string HeadAsHeld { get; init; }
    public required string HeadGone { get; init; }
    public required string HeadEnd { get; init; }
    public required string HeadTime { get; init; }
    public required string HeadDrop { get; init; }
    public required string HeadSpeed { get; init; }
    public required string HeadEnergy { get; init; }
    /// <summary>Nothing to compute from: {fields}.</summary>
    public required string Waits { get; init; }
    public required string NoPlaces { get; init; }
    public required string Looking { get; init; }
    public required string Show { get; init; }
    public required string Hide { get; init; }
    public required string ShowNote { get; init; }
}

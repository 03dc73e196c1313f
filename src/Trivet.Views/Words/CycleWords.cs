using System.Collections.Immutable;
using Trivet.Motion;

namespace Trivet.Views.Words;

/// <summary>Texts of the lines that a cycle is told in on the command line.</summary>
public sealed record CycleWords
{
    /// <summary>In the order of <see cref="TimingLaw"/>.</summary>
    public required ImmutableArray<string> Laws { get; init; }
    // {law} {variant} {limits} {tried}
    public required string Loaded { get; init; }
    public required string Empty { get; init; }
    public required string Whole { get; init; }
    public required string Rate { get; init; }
    public required string Leaves { get; init; }
    public required string AsStated { get; init; }
    public required string Largest { get; init; }
    public required string Gap { get; init; }
    public required string HeldBack { get; init; }
    public required string VariantCycle { get; init; }
    public required string VariantLeaves { get; init; }
    public required string VariantUse { get; init; }
    // {asked} {corners}
    public required string RoundingLoaded { get; init; }
    public required string RoundingEmpty { get; init; }
    public required string RoundingCut { get; init; }
    public required string RoundingCutOne { get; init; }
    public required string Temperature { get; init; }
    public required string TemperatureSteady { get; init; }
    public required string Energy { get; init; }
    public required string MeanPower { get; init; }
    public required string FromSupply { get; init; }
    public required string Fastest { get; init; }
    public required string Tried { get; init; }
    public required string FastestNone { get; init; }
    public required string FastestSettings { get; init; }
    public required string SpeedAlong { get; init; }
    public required string AccelerationAlong { get; init; }
    public required string JerkAlong { get; init; }
    public required string Blend { get; init; }
    public required string Units { get; init; }
    public required string TypedIn { get; init; }
    public required string Now { get; init; }
    public required string Caution { get; init; }
}

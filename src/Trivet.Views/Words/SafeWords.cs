using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>How this cell is made safe, in one language. Words in braces are filled in.</summary>
public sealed record SafeWords
{
    // Heading of what stays live.
    public required string WhatStaysLive { get; init; }
    /// <summary>A device and what sets it off: {name} {where}</summary>
    public required string Press { get; init; }
    /// <summary>{name}</summary>
    public required string PressNowhere { get; init; }
    public required string NoStop { get; init; }
    /// <summary>In the order of <see cref="Cells.StopCategory"/>: {time} until all stands, {torque} until the torque goes.</summary>
    public required ImmutableArray<string> Categories { get; init; }
    public required string NoCategory { get; init; }
    public required string NoTime { get; init; }
    /// <summary>{what}</summary>
    public required string TakesAway { get; init; }
    public required string TakesUnknown { get; init; }
    public required string NoIsolator { get; init; }
    /// <summary>The longest of them and each: {time} {each}</summary>
    public required string Wait { get; init; }
    /// <summary>{names}</summary>
    public required string WaitUnknown { get; init; }
    public required string NoCharges { get; init; }
    /// <summary>Supplies: {names}</summary>
    public required string StayLive { get; init; }
    public required string NoSupplies { get; init; }
    /// <summary>Devices: {names}</summary>
    public required string AirGoes { get; init; }
    public required string AirStays { get; init; }
    public required string AirUnknown { get; init; }
    // When something comes down: {what}
    public required string AtStop { get; init; }
    public required string WithoutSupply { get; init; }
    public required string Both { get; init; }
    /// <summary>In the order of <see cref="Stopping.ChainAtStop"/>: {chains} {by} {sink}</summary>
    public required ImmutableArray<string> Becomes { get; init; }
    /// <summary>What keeps a chain up, in the order of <see cref="Cells.Holding"/>.</summary>
    public required ImmutableArray<string> Holdings { get; init; }
    public required string FallUnknown { get; init; }
    // Of the estimate of what comes down.
    public required string Estimate { get; init; }
    public required string GripHolds { get; init; }
    public required string GripLetsGo { get; init; }
    public required string GripUnknown { get; init; }
    // Heads of the list of who is inside, on paper.
    public required string InAt { get; init; }
    public required string OutAt { get; init; }
}

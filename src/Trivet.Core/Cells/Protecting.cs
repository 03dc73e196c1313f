using System.Collections.Immutable;

namespace Trivet.Cells;

public enum LiftDuration
{
    /// <summary>Up to one hour.</summary>
    Short,
    /// <summary>Up to two hours.</summary>
    Moderate,
    /// <summary>Up to eight hours.</summary>
    Long,
}

public enum Coupling
{
    Good,
    Fair,
    Poor,
}

/// <summary>How heavy things are lifted and hung when the cell is put up.</summary>
public sealed record Handling
{
    public string? Note { get; init; }
    /// <summary>Height above which nobody lifts by hand, metres above the floor.</summary>
    public double? ShoulderHeight { get; init; }
    public ImmutableSortedDictionary<string, Lift> Lifts { get; init; } = Keyed.Empty<Lift>();
    public Hanging Hanging { get; init; } = new();
}

/// <summary>One lift. Heights are of the hands above the floor, reaches from the ankles forward to the hands, metres.</summary>
public sealed record Lift : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public double? Mass { get; init; }
    public double? FromHeight { get; init; }
    public double? ToHeight { get; init; }
    public double? FromReach { get; init; }
    public double? ToReach { get; init; }
    /// <summary>Turn of the load from straight ahead, radians.</summary>
    public double? FromTurn { get; init; }
    public double? ToTurn { get; init; }
    /// <summary>Lifts per second.</summary>
    public double? Frequency { get; init; }
    public LiftDuration? Duration { get; init; }
    public Coupling? Coupling { get; init; }
    /// <summary>The load must be held back or placed with care at its destination.</summary>
    public bool? Controlled { get; init; }
    /// <summary>People who would have to lift together.</summary>
    public int? People { get; init; }
    /// <summary>The lifting aid that is planned, and what it may carry.</summary>
    public string? Aid { get; init; }
    public double? AidCapacity { get; init; }
}

/// <summary>What holds the robot at the frame before the lifting aid may let go and hands may leave.</summary>
public sealed record Hanging
{
    public string? Note { get; init; }
    /// <summary>Mass that hangs, kilograms.</summary>
    public double? Mass { get; init; }
    /// <summary>Bolts that are tightened before anything lets go.</summary>
    public int? Bolts { get; init; }
    /// <summary>Smallest distance between two of them, metres.</summary>
    public double? BoltSpacing { get; init; }
    /// <summary>Distance of the hanging mass from their middle, metres.</summary>
    public double? Offset { get; init; }
    /// <summary>Pull that one bolt may bear in its thread, newtons, and where that comes from.</summary>
    public double? LargestBoltForce { get; init; }
    public string? BoltForceSource { get; init; }
    public double? Safety { get; init; }
}

/// <summary>Editions of ISO 13855 whose formula is on record here.</summary>
public enum DistanceEdition
{
    Iso13855From2010,
}

public enum ApproachDirection
{
    /// <summary>Straight through the field.</summary>
    Normal,
    /// <summary>Along the field.</summary>
    Parallel,
}

public enum OpeningShape
{
    Slot,
    Square,
    Round,
}

/// <summary>Parts of the body, as gaps against crushing name them.</summary>
public enum BodyPart
{
    Body,
    Head,
    Leg,
    Foot,
    Toes,
    Arm,
    Hand,
    Finger,
}

/// <summary>What keeps people away from what moves.</summary>
public sealed record Guarding
{
    public string? Note { get; init; }
    public DistanceEdition? Edition { get; init; }
    public ImmutableSortedDictionary<string, ProtectiveDevice> Devices { get; init; } = Keyed.Empty<ProtectiveDevice>();
    public ImmutableSortedDictionary<string, Fence> Fences { get; init; } = Keyed.Empty<Fence>();
    public ImmutableSortedDictionary<string, CrushingGap> Gaps { get; init; } = Keyed.Empty<CrushingGap>();
}

/// <summary>A device that sees people come (a light curtain). Times in seconds, each with its source.</summary>
public sealed record ProtectiveDevice : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public ApproachDirection? Approach { get; init; }
    /// <summary>Smallest thing it sees, metres.</summary>
    public double? Resolution { get; init; }
    /// <summary>Height of a field that people approach along, metres above the floor.</summary>
    public double? FieldHeight { get; init; }
    /// <summary>Distance from the nearest place of danger, metres, where its line on the floor is not stated.</summary>
    public double? Distance { get; init; }
    /// <summary>The line on the floor where people first enter its field, cell frame, metres.</summary>
    public double? FromX { get; init; }
    public double? FromY { get; init; }
    public double? ToX { get; init; }
    public double? ToY { get; init; }
    /// <summary>It is muted while material passes: by what, and what keeps people out meanwhile.</summary>
    public bool? Muted { get; init; }
    public string? MutedBy { get; init; }
    public string? MutedKeeps { get; init; }
    public double? SensingTime { get; init; }
    public string? SensingSource { get; init; }
    public double? LogicTime { get; init; }
    public string? LogicSource { get; init; }
    public double? DriveTime { get; init; }
    public string? DriveSource { get; init; }
    public double? StopTime { get; init; }
    public string? StopSource { get; init; }
    /// <summary>The worst stop was measured at this machine.</summary>
    public bool? StopMeasured { get; init; }
}

/// <summary>A straight upright guard on the floor, cell frame, metres.</summary>
public sealed record Fence : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public double? FromX { get; init; }
    public double? FromY { get; init; }
    public double? ToX { get; init; }
    public double? ToY { get; init; }
    public double? Height { get; init; }
    /// <summary>A part of it opens without tools: a door, a flap.</summary>
    public bool? Opens { get; init; }
    /// <summary>Open height between floor and guard.</summary>
    public double? FloorGap { get; init; }
    public OpeningShape? Opening { get; init; }
    /// <summary>Width of a slot, side of a square or diameter of a round opening; closed where not stated.</summary>
    public double? OpeningSize { get; init; }
    /// <summary>Energy that it stops, joules, and where that comes from.</summary>
    public double? LargestImpact { get; init; }
    public string? ImpactSource { get; init; }
}

/// <summary>A gap that closes, or stays, between what moves and what stands.</summary>
public sealed record CrushingGap : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public BodyPart? Body { get; init; }
    /// <summary>Smallest width it gets, metres.</summary>
    public double? Width { get; init; }
}

public enum Supplied
{
    Bought,
    Made,
}

/// <summary>A line of the parts list, or what is to be said of one that follows from the description.</summary>
public sealed record ListedPart : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Pointer of the part of the description it speaks of; a line of its own where not stated.</summary>
    public string? Of { get; init; }
    public int? Quantity { get; init; }
    public Supplied? Supplied { get; init; }
    public int? Spares { get; init; }
    /// <summary>What to order or draw by, in the user's own words.</summary>
    public string? Article { get; init; }
}

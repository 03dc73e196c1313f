using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>What the cables of a cell share: where they leave the cabinet, what they lead to, and the ways they are laid in.</summary>
public sealed record CablingPlan
{
    public string? Note { get; init; }
    /// <summary>Where cables leave the cabinet, cell frame, metres.</summary>
    public double? CabinetX { get; init; }
    public double? CabinetY { get; init; }
    public double? CabinetZ { get; init; }
    /// <summary>Length from there to the terminals of a module, metres.</summary>
    public double? InsideCabinet { get; init; }
    /// <summary>Length from a module's terminals to the duct that runs along its rail, metres.</summary>
    public double? DuctDrop { get; init; }
    /// <summary>Length that each cable has in reserve, metres.</summary>
    public double? Slack { get; init; }
    /// <summary>Length within which power and signals may run side by side, metres.</summary>
    public double? LeastParting { get; init; }
    public ImmutableSortedDictionary<string, CabledDevice> Devices { get; init; } = Keyed.Empty<CabledDevice>();
    public ImmutableSortedDictionary<string, CableWay> Ways { get; init; } = Keyed.Empty<CableWay>();
}

/// <summary>What a device moves with.</summary>
public enum Carrier
{
    Nothing,
    /// <summary>The platform: its place is from the platform reference point, in the axes of the base frame.</summary>
    Platform,
}

/// <summary>Something outside the cabinet that a cable leads to.</summary>
public sealed record CabledDevice : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Cell frame, or from the platform reference point for what moves with it, metres.</summary>
    public double? X { get; init; }
    public double? Y { get; init; }
    public double? Z { get; init; }
    public Carrier? MovesWith { get; init; }
    /// <summary>Devices of one face are so near to each other that their plugs can be taken for each other.</summary>
    public string? Face { get; init; }
}

public enum CableWayKind
{
    Duct,
    EnergyChain,
    /// <summary>Hangs free between its only point and the platform.</summary>
    Loop,
}

/// <summary>A way that cables are laid in.</summary>
public sealed record CableWay : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public CableWayKind? Kind { get; init; }
    /// <summary>Id of the frame's member that it runs along, in place of points.</summary>
    public string? Along { get; init; }
    public ImmutableSortedDictionary<string, WayPoint> Points { get; init; } = Keyed.Empty<WayPoint>();
    /// <summary>Inside, metres.</summary>
    public double? Width { get; init; }
    public double? Height { get; init; }
    /// <summary>Largest share of its inside that cables may fill.</summary>
    public double? LargestFill { get; init; }
    /// <summary>Smallest radius to which it bends a cable, metres.</summary>
    public double? BendRadius { get; init; }
    /// <summary>A wall of metal parts power from signals.</summary>
    public bool? Divider { get; init; }
    /// <summary>Energy chain: travel of its moving end, metres.</summary>
    public double? Travel { get; init; }
    /// <summary>Energy chain: distance of its fixed end from the middle of the travel, metres.</summary>
    public double? FixedOffset { get; init; }
    /// <summary>Loop: length that hangs free, metres.</summary>
    public double? Length { get; init; }
}

public sealed record WayPoint : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    public double? X { get; init; }
    public double? Y { get; init; }
    public double? Z { get; init; }
}

public enum CableKind
{
    Motor,
    Feedback,
    Brake,
    LimitSwitch,
    Tool,
    InputOutput,
    Network,
    Supply,
    Earth,
}

public enum ContactGender
{
    Pins,
    Sockets,
    /// <summary>Bare ends under clamps.</summary>
    Terminals,
}

/// <summary>One end of a cable.</summary>
public sealed record CableEnd
{
    public string? Note { get; init; }
    /// <summary>Size or kind of the connector: M12, D-sub 9.</summary>
    public string? Connector { get; init; }
    public string? Coding { get; init; }
    public ContactGender? Gender { get; init; }
    public int? Contacts { get; init; }
    /// <summary>The socket or the terminals it goes to: X3.</summary>
    public string? Socket { get; init; }
    /// <summary>The shield is clamped here all round.</summary>
    public bool? Bonded { get; init; }
}

/// <summary>One core of a cable.</summary>
public sealed record CableCore : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    /// <summary>Colour in the letters of IEC 60757, or the number printed on it.</summary>
    public string? Colour { get; init; }
    public string? Function { get; init; }
    /// <summary>Contact or terminal at the one end.</summary>
    public string? FromPin { get; init; }
    public string? ToPin { get; init; }
}

public sealed record Cable : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public string? From { get; init; }
    public string? To { get; init; }
    public double? Length { get; init; }
    public CableKind? Kind { get; init; }
    /// <summary>Chain id, "rotary" or "linear", for a cable that belongs to an axis.</summary>
    public string? Axis { get; init; }
    public string? Type { get; init; }
    public int? CoreCount { get; init; }
    /// <summary>Of one core, square metres.</summary>
    public double? CoreArea { get; init; }
    /// <summary>Outside, metres.</summary>
    public double? Diameter { get; init; }
    public bool? Shielded { get; init; }
    /// <summary>Smallest bend radius over the diameter, at rest and moving.</summary>
    public double? StaticBend { get; init; }
    public double? MovingBend { get; init; }
    /// <summary>What it carries at most, direct current there and back.</summary>
    public double? Voltage { get; init; }
    public double? Current { get; init; }
    /// <summary>Largest share of the voltage that may be lost on it.</summary>
    public double? LargestDrop { get; init; }
    /// <summary>Ids of the ways it is laid in, in their order, parted by commas.</summary>
    public string? Route { get; init; }
    public double? Slack { get; init; }
    /// <summary>Text on both ends; the id where nothing is stated.</summary>
    public string? Label { get; init; }
    /// <summary>What tells it from others whose plugs are alike: a ring of a colour.</summary>
    public string? Mark { get; init; }
    /// <summary>What was cut, and what was left when it was fitted, metres; by whom, and when.</summary>
    public double? CutLength { get; init; }
    public double? FittedLength { get; init; }
    public string? InstalledBy { get; init; }
    public string? InstalledOn { get; init; }
    public CableEnd FromEnd { get; init; } = new();
    public CableEnd ToEnd { get; init; } = new();
    public ImmutableSortedDictionary<string, CableCore> Cores { get; init; } = Keyed.Empty<CableCore>();
}

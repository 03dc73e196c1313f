namespace Trivet.Cells;

/// <summary>What switches a branch off.</summary>
public enum Protection
{
    Fuse,
    BreakerB,
    BreakerC,
    BreakerD,
    Electronic,
}

/// <summary>How wires are laid (IEC 60204-1).</summary>
public enum WireLaying
{
    /// <summary>Single conductors in conduit or trunking.</summary>
    B1,
    /// <summary>Cables in conduit or trunking.</summary>
    B2,
    /// <summary>Cables on walls.</summary>
    C,
    /// <summary>Cables on open trays.</summary>
    E,
}

/// <summary>What a consumer is fed for; kinds that disturb each other want branches of their own.</summary>
public enum LoadPurpose
{
    Logic,
    Outputs,
    Brakes,
    Motors,
    Mains,
}

/// <summary>Something that feeds branches: the incoming mains, or a supply.</summary>
public sealed record PowerSource : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of the branch that feeds it; none for what comes in from outside.</summary>
    public string? FedBy { get; init; }
    public bool? Alternating { get; init; }
    public double? Voltage { get; init; }
    /// <summary>Amperes without end, at the temperature inside.</summary>
    public double? Current { get; init; }
    /// <summary>Amperes for <see cref="PeakTime"/> seconds.</summary>
    public double? PeakCurrent { get; init; }
    public double? PeakTime { get; init; }
    /// <summary>Amperes into a short circuit: of mains what the network gives, of a supply what it is limited to.</summary>
    public double? ShortCircuitCurrent { get; init; }
    /// <summary>Amperes it takes from its own branch at full load, and the peak when it is switched on.</summary>
    public double? InputCurrent { get; init; }
    public double? Inrush { get; init; }
    /// <summary>Seconds that it goes on at its load when the mains fail: with a battery or a capacitor.</summary>
    public double? HoldTime { get; init; }
}

/// <summary>A protected branch: what protects it and the wire behind.</summary>
public sealed record PowerBranch : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of the source.</summary>
    public string? From { get; init; }
    public Protection? Protection { get; init; }
    /// <summary>Rated or set current, amperes.</summary>
    public double? Rating { get; init; }
    /// <summary>Amperes at which an electronic protection switches off at once.</summary>
    public double? TripCurrent { get; init; }
    /// <summary>Square metres of copper.</summary>
    public double? Section { get; init; }
    /// <summary>Metres one way.</summary>
    public double? Length { get; init; }
    public WireLaying? Laying { get; init; }
    /// <summary>Loaded circuits that lie together, this one included.</summary>
    public int? Grouped { get; init; }
    /// <summary>Air around the wire, degrees Celsius.</summary>
    public double? Ambient { get; init; }
    /// <summary>Copper at load, degrees Celsius.</summary>
    public double? ConductorTemperature { get; init; }
}

/// <summary>A consumer outside the modules: valves, brakes, sensors, lamps.</summary>
public sealed record PowerConsumer : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public string? Branch { get; init; }
    public LoadPurpose? Purpose { get; init; }
    public int? Count { get; init; }
    /// <summary>Amperes of one.</summary>
    public double? Steady { get; init; }
    public double? Peak { get; init; }
    /// <summary>Seconds that the peak lasts.</summary>
    public double? PeakTime { get; init; }
    /// <summary>Share of them that is on at a time, 0 to 1.</summary>
    public double? Simultaneity { get; init; }
    public bool? BackedUp { get; init; }
    /// <summary>Seconds that it has to go on then.</summary>
    public double? HoldTime { get; init; }
    /// <summary>Square metres of copper of the wire from the branch to one.</summary>
    public double? Section { get; init; }
    /// <summary>Metres one way; where not stated, those of <see cref="Cable"/>.</summary>
    public double? Length { get; init; }
    /// <summary>Id of the cable it hangs on.</summary>
    public string? Cable { get; init; }
    public double? LowestVoltage { get; init; }
}

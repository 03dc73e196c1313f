using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>Inputs and outputs: the banks of channels that modules have, the signals, and the switches that end an axis' travel.</summary>
public sealed record SignalPlan
{
    public string? Note { get; init; }
    /// <summary>Lowest voltage of the control supply at the devices, volts.</summary>
    public double? LowestVoltage { get; init; }
    public ImmutableSortedDictionary<string, ChannelBank> Banks { get; init; } = Keyed.Empty<ChannelBank>();
    public ImmutableSortedDictionary<string, Signal> Signals { get; init; } = Keyed.Empty<Signal>();
    public ImmutableSortedDictionary<string, TravelSwitch> Switches { get; init; } = Keyed.Empty<TravelSwitch>();
    public ImmutableSortedDictionary<string, BusNode> Nodes { get; init; } = Keyed.Empty<BusNode>();
}

/// <summary>A CANopen device as its electronic data sheet describes it.</summary>
public sealed record BusNode : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of the module that it is.</summary>
    public string? Module { get; init; }
    public string? Vendor { get; init; }
    public int? VendorNumber { get; init; }
    public string? Product { get; init; }
    public int? ProductNumber { get; init; }
    public int? Revision { get; init; }
    public ImmutableSortedDictionary<string, ObjectEntry> Objects { get; init; } = Keyed.Empty<ObjectEntry>();
}

/// <summary>Static data types of CiA 301.</summary>
public enum ObjectType
{
    Boolean,
    Integer8,
    Integer16,
    Integer32,
    Unsigned8,
    Unsigned16,
    Unsigned32,
    Real32,
    VisibleString,
}

public enum ObjectAccess
{
    ReadOnly,
    WriteOnly,
    ReadWrite,
    Constant,
}

/// <summary>An entry of a device's object dictionary.</summary>
public sealed record ObjectEntry : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public int? Index { get; init; }
    /// <summary>Nothing for an object that is one value.</summary>
    public int? SubIndex { get; init; }
    public ObjectType? Type { get; init; }
    public ObjectAccess? Access { get; init; }
    public string? DefaultValue { get; init; }
    public bool? Mappable { get; init; }
}

public enum SignalDirection
{
    Input,
    Output,
}

/// <summary>Types of digital inputs (IEC 61131-2).</summary>
public enum InputType
{
    Type1,
    Type3,
}

/// <summary>Which way a channel or a sensor takes the current.</summary>
public enum Switching
{
    /// <summary>Switches the positive side: a PNP sensor, an output to ground, and the inputs that sink its current.</summary>
    Pnp,
    /// <summary>Switches the negative side.</summary>
    Npn,
}

/// <summary>Equal channels of a module, numbered on.</summary>
public sealed record ChannelBank : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of the module.</summary>
    public string? Module { get; init; }
    public SignalDirection? Direction { get; init; }
    public int? FirstChannel { get; init; }
    public int? Channels { get; init; }
    /// <summary>What its terminals are called; the channel's number follows.</summary>
    public string? Terminal { get; init; }
    public InputType? InputType { get; init; }
    public Switching? Switching { get; init; }
    /// <summary>Of one channel without end, amperes.</summary>
    public double? ChannelCurrent { get; init; }
    /// <summary>Of one channel for the moment of switching on, amperes.</summary>
    public double? ChannelInrush { get; init; }
    public double? GroupCurrent { get; init; }
    /// <summary>Its outputs limit the voltage of a coil that is switched off.</summary>
    public bool? Suppresses { get; init; }
    /// <summary>Made for safety functions.</summary>
    public bool? Safety { get; init; }
}

public enum ContactKind
{
    NormallyOpen,
    NormallyClosed,
}

public sealed record Signal : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public SignalDirection? Direction { get; init; }
    /// <summary>Id of the device that sends or takes it, or words.</summary>
    public string? Device { get; init; }
    /// <summary>Id of the cable that carries it.</summary>
    public string? Cable { get; init; }
    public string? Bank { get; init; }
    public int? Channel { get; init; }
    public Switching? Switching { get; init; }
    public ContactKind? Contact { get; init; }
    /// <summary>Its absence must stop something.</summary>
    public bool? Stops { get; init; }
    /// <summary>State that is safe when its wire or the supply fails: on or off.</summary>
    public bool? SafeOn { get; init; }
    /// <summary>Input: lost over the sensor while on, volts. Output: not used.</summary>
    public double? SensorDrop { get; init; }
    /// <summary>Input: what the sensor lets through while off, amperes.</summary>
    public double? OffCurrent { get; init; }
    /// <summary>Output: current of the load, amperes.</summary>
    public double? Load { get; init; }
    public double? Inrush { get; init; }
    public bool? Inductive { get; init; }
    public bool? Suppressed { get; init; }
    public bool? OnAtRest { get; init; }
    public bool? OnWhenActed { get; init; }
    /// <summary>Input: how long a change must last to be taken for one, seconds.</summary>
    public double? FilterTime { get; init; }
    /// <summary>Where it is read or written over the bus: index, sub-index and bit of an object of its module.</summary>
    public int? ObjectIndex { get; init; }
    public int? SubIndex { get; init; }
    public int? Bit { get; init; }
}

public enum SwitchKind
{
    Mechanical,
    Inductive,
    Optical,
}

/// <summary>A switch at an end of an axis' travel.</summary>
public sealed record TravelSwitch : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of the signal.</summary>
    public string? Signal { get; init; }
    /// <summary>Chain id, "rotary" or "linear".</summary>
    public string? Axis { get; init; }
    public SwitchKind? Kind { get; init; }
    /// <summary>Drive coordinate at which it switches, metres or radians.</summary>
    public double? At { get; init; }
    /// <summary>Drive coordinate of the hard stop behind it.</summary>
    public double? HardStop { get; init; }
    /// <summary>Speed at which it is run at while homing, per second.</summary>
    public double? HomingSpeed { get; init; }
    public double? Deceleration { get; init; }
    /// <summary>From switching to the beginning of the stop: switch, filter, controller, seconds.</summary>
    public double? Delay { get; init; }
    public double? Hysteresis { get; init; }
    /// <summary>Of setting and of switching, one way.</summary>
    public double? Tolerance { get; init; }
    /// <summary>Inductive: distance from its target, and the rated one, metres.</summary>
    public double? Gap { get; init; }
    public double? RatedDistance { get; init; }
    /// <summary>Inductive: reduction for the target's material, 1 for steel.</summary>
    public double? TargetFactor { get; init; }
}

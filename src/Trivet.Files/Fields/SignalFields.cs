using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of inputs and outputs.</summary>
internal static class SignalFields
{
    private static readonly Shape Bank = new Table<ChannelBank>(new ChannelBank())
        .Whole("order", b => b.Order, (b, v) => b with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", b => b.Name, (b, v) => b with { Name = v }, "What people call it.")
        .Text("module", b => b.Module, (b, v) => b with { Module = v }, "Id of the cabinet's module that has it.")
        .Choice("direction", Words.SignalDirection, b => b.Direction, (b, v) => b with { Direction = v }, "Inputs or outputs.", Depth.Build)
        .Whole("firstChannel", b => b.FirstChannel, (b, v) => b with { FirstChannel = v }, "Number of its first channel; 0 where nothing is stated.")
        .Whole("channels", b => b.Channels, (b, v) => b with { Channels = v }, "How many channels it has.", Depth.Build)
        .Text("terminal", b => b.Terminal, (b, v) => b with { Terminal = v }, "What its terminals are called; the channel's number follows.")
        .Choice("inputType", Words.InputType, b => b.InputType, (b, v) => b with { InputType = v }, "Type of its inputs after IEC 61131-2.")
        .Choice("switching", Words.Switching, b => b.Switching, (b, v) => b with { Switching = v }, "PNP: inputs that take the current of sensors that switch plus, outputs that switch plus. NPN: the other way about.")
        .Quantity("channelCurrent", Dimension.Current, b => b.ChannelCurrent, (b, v) => b with { ChannelCurrent = v }, "Outputs: current of one channel without end.")
        .Quantity("channelInrush", Dimension.Current, b => b.ChannelInrush, (b, v) => b with { ChannelInrush = v }, "Outputs: current of one channel for the moment of switching on.")
        .Quantity("groupCurrent", Dimension.Current, b => b.GroupCurrent, (b, v) => b with { GroupCurrent = v }, "Outputs: current of all its channels together.")
        .YesNo("suppresses", b => b.Suppresses, (b, v) => b with { Suppresses = v }, "Whether its outputs limit the voltage of a coil that is switched off.")
        .YesNo("safety", b => b.Safety, (b, v) => b with { Safety = v }, "Whether it is made for safety functions.")
        .Text("note", b => b.Note, (b, v) => b with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Signal = new Table<Signal>(new Signal())
        .Whole("order", s => s.Order, (s, v) => s with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", s => s.Name, (s, v) => s with { Name = v }, "What it tells or does, in plain words.")
        .Choice("direction", Words.SignalDirection, s => s.Direction, (s, v) => s with { Direction = v }, "Input or output of the controller.", Depth.Build)
        .Text("device", s => s.Device, (s, v) => s with { Device = v }, "Id of the device that sends or takes it, or words.")
        .Text("cable", s => s.Cable, (s, v) => s with { Cable = v }, "Id of the cable that carries it.")
        .Text("bank", s => s.Bank, (s, v) => s with { Bank = v }, "Id of the bank it is connected to.", Depth.Build)
        .Whole("channel", s => s.Channel, (s, v) => s with { Channel = v }, "Number of its channel.", Depth.Build)
        .Choice("switching", Words.Switching, s => s.Switching, (s, v) => s with { Switching = v }, "Whether the sensor switches plus (PNP) or minus (NPN); nothing for a plain contact.")
        .Choice("contact", Words.ContactKind, s => s.Contact, (s, v) => s with { Contact = v }, "Whether it is on when acted (normally open) or at rest (normally closed).")
        .YesNo("stops", s => s.Stops, (s, v) => s with { Stops = v }, "Whether it has to stop something.")
        .YesNo("safeOn", s => s.SafeOn, (s, v) => s with { SafeOn = v }, "Output: whether on is the state that is safe when the supply fails.")
        .Quantity("sensorDrop", Dimension.Voltage, s => s.SensorDrop, (s, v) => s with { SensorDrop = v }, "Input: voltage lost over the sensor while on.")
        .Quantity("offCurrent", Dimension.Current, s => s.OffCurrent, (s, v) => s with { OffCurrent = v }, "Input: current that the sensor lets through while off.")
        .Quantity("load", Dimension.Current, s => s.Load, (s, v) => s with { Load = v }, "Output: current of the load.")
        .Quantity("inrush", Dimension.Current, s => s.Inrush, (s, v) => s with { Inrush = v }, "Output: current of the load as it is switched on.")
        .YesNo("inductive", s => s.Inductive, (s, v) => s with { Inductive = v }, "Output: whether the load is a coil.")
        .YesNo("suppressed", s => s.Suppressed, (s, v) => s with { Suppressed = v }, "Output: whether the coil is suppressed where it is.")
        .YesNo("onAtRest", s => s.OnAtRest, (s, v) => s with { OnAtRest = v }, "Whether it is on at rest.")
        .YesNo("onWhenActed", s => s.OnWhenActed, (s, v) => s with { OnWhenActed = v }, "Whether it is on when acted.")
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Switch = new Table<TravelSwitch>(new TravelSwitch())
        .Whole("order", s => s.Order, (s, v) => s with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", s => s.Name, (s, v) => s with { Name = v }, "What people call it.")
        .Text("signal", s => s.Signal, (s, v) => s with { Signal = v }, "Id of its signal.")
        .Text("axis", s => s.Axis, (s, v) => s with { Axis = v }, "Id of the chain, or \"rotary\" or \"linear\".")
        .Choice("kind", Words.SwitchKind, s => s.Kind, (s, v) => s with { Kind = v }, "How it sees its target.")
        .Quantity("at", Dimension.DriveCoordinate, s => s.At, (s, v) => s with { At = v }, "Drive coordinate at which it switches.", Depth.Build)
        .Quantity("hardStop", Dimension.DriveCoordinate, s => s.HardStop, (s, v) => s with { HardStop = v }, "Drive coordinate of the hard stop behind it.", Depth.Build)
        .Quantity("homingSpeed", Dimension.DriveSpeed, s => s.HomingSpeed, (s, v) => s with { HomingSpeed = v }, "Speed at which it is run at while homing.", Depth.Build)
        .Quantity("deceleration", Dimension.DriveAcceleration, s => s.Deceleration, (s, v) => s with { Deceleration = v }, "Deceleration of the stop then.", Depth.Build)
        .Quantity("delay", Dimension.Time, s => s.Delay, (s, v) => s with { Delay = v }, "Time from switching to the beginning of the stop: switch, filter, controller.", Depth.Build, "ms")
        .Quantity("hysteresis", Dimension.DriveCoordinate, s => s.Hysteresis, (s, v) => s with { Hysteresis = v }, "Way back until it lets go; none where nothing is stated.")
        .Quantity("tolerance", Dimension.DriveCoordinate, s => s.Tolerance, (s, v) => s with { Tolerance = v }, "Of setting and of switching, one way; none where nothing is stated.")
        .Quantity("gap", Dimension.Length, s => s.Gap, (s, v) => s with { Gap = v }, "Inductive: largest distance from its target.")
        .Quantity("ratedDistance", Dimension.Length, s => s.RatedDistance, (s, v) => s with { RatedDistance = v }, "Inductive: its rated operating distance.")
        .Quantity("targetFactor", Dimension.One, s => s.TargetFactor, (s, v) => s with { TargetFactor = v }, "Inductive: reduction for what the target is made of; 1, steel, where nothing is stated.")
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Io = new Table<SignalPlan>(new SignalPlan())
        .Quantity("lowestVoltage", Dimension.Voltage, s => s.LowestVoltage, (s, v) => s with { LowestVoltage = v }, "Lowest voltage of the control supply at the devices; 20.4 V where nothing is stated.")
        .Keyed("banks", Bank, s => s.Banks, (s, v) => s with { Banks = v }, "Equal channels of a module, numbered on.")
        .Keyed("signals", Signal, s => s.Signals, (s, v) => s with { Signals = v }, "The signals.")
        .Keyed("switches", Switch, s => s.Switches, (s, v) => s with { Switches = v }, "The switches at the ends of travel.")
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();
}

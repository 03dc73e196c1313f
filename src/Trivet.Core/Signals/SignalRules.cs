using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Signals;

/// <summary>The rules by which inputs, outputs and travel switches are judged.</summary>
public static class SignalRules
{
    public static Rule Described { get; } = Of("signal.described", "Signals and banks are described and do not contradict themselves", "1", Sense.AtLeast, 0);

    /// <summary>The signal has a channel of a bank that suits it, and has it alone.</summary>
    public static Rule Channel { get; } = Of("signal.channel", "The signal has a channel of its own that suits it", "1", Sense.AtLeast, 0);

    /// <summary>A bus device states the objects that every one has.</summary>
    public static Rule Objects { get; } = new(
        "signal.objects", "The bus device states the objects that every one has", Trade.Electrical, "1", Sense.AtLeast, 0, new(SourceKind.FromMemory, "CiA301", "mandatory entries of the object dictionary"));

    /// <summary>A signal is read where its module has it, and alone.</summary>
    public static Rule Mapped { get; } = new(
        "signal.mapped", "The signal has a bit of its module to itself", Trade.Electrical, "1", Sense.AtLeast, 0, new(SourceKind.FromMemory, "CiA301", "static data types"));

    /// <summary>A sensor that switches plus goes to an input that sinks, one that switches minus to one that sources.</summary>
    public static Rule Switching { get; } = Of("signal.switching", "Sensor and input take the current the same way", "1", Sense.AtLeast, 0);

    /// <summary>Value: volts at the input while the sensor is on and the supply lowest.</summary>
    public static Rule OnLevel { get; } = new(
        "signal.on-level", "The input sees a sensor that is on", Trade.Electrical, "V", Sense.AtLeast, 0.05, new(SourceKind.FromMemory, "IEC-61131-2", "standard operating ranges of digital inputs"));

    /// <summary>Value: what the sensor lets through while off, amperes.</summary>
    public static Rule OffCurrent { get; } = new(
        "signal.off-current", "The input sees a sensor that is off", Trade.Electrical, "A", Sense.AtMost, 0.1, new(SourceKind.FromMemory, "IEC-61131-2", "standard operating ranges of digital inputs"));

    /// <summary>Value: current of the load, amperes.</summary>
    public static Rule Load { get; } = Of("signal.load", "The channel carries the load", "A", Sense.AtMost, 0.1);

    /// <summary>Value: current as the load is switched on, amperes.</summary>
    public static Rule Inrush { get; } = Of("signal.inrush", "The channel carries the inrush", "A", Sense.AtMost, 0.1);

    /// <summary>Value: sum of the loads of a bank, amperes.</summary>
    public static Rule Group { get; } = Of("signal.group", "The bank carries all its loads at once", "A", Sense.AtMost, 0.1);

    public static Rule Suppression { get; } = Of("signal.suppression", "A coil that is switched off is suppressed", "1", Sense.AtLeast, 0);

    /// <summary>A broken wire acts as the signal itself.</summary>
    public static Rule BrokenWire { get; } = new(
        "signal.broken-wire", "A broken wire stops what the signal stops", Trade.Electrical, "1", Sense.AtLeast, 0, new(SourceKind.FromMemory, "IEC-60204-1", "9.4"));

    /// <summary>An output whose safe state is on is lost with the supply.</summary>
    public static Rule SafeState { get; } = Of("signal.safe-state", "Without supply the output is in its safe state", "1", Sense.AtLeast, 0);

    /// <summary>What is told of rest and acted goes with the contact.</summary>
    public static Rule Rest { get; } = Of("signal.rest", "Rest and acted values go with the contact", "1", Sense.AtLeast, 0);

    /// <summary>Value: distance from the switch to the hard stop, metres or radians by the axis. Limit: what stopping, hysteresis and tolerance take.</summary>
    public static Rule SwitchStop { get; } = Switch("signal.switch-stop", "The axis stops between switch and hard stop", "m");

    public static Rule SwitchStopTurn { get; } = Switch("signal.switch-stop-angle", "The axis stops between switch and hard stop", "rad");

    /// <summary>Value: distance from the end of the travel to the switch.</summary>
    public static Rule SwitchClear { get; } = Switch("signal.switch-clear", "The switch lets the whole travel be used", "m");

    public static Rule SwitchClearTurn { get; } = Switch("signal.switch-clear-angle", "The switch lets the whole travel be used", "rad");

    /// <summary>Value: gap of an inductive switch and its tolerance, metres.</summary>
    public static Rule Gap { get; } = new(
        "signal.switch-gap", "The target comes near enough to the switch", Trade.Electrical, "m", Sense.AtMost, 0.1, new(SourceKind.FromMemory, "IEC-60947-5-2", "assured operating distance"));

    public static ImmutableArray<Rule> Rules { get; } =
        [Described, Channel, Objects, Mapped, Switching, OnLevel, OffCurrent, Load, Inrush, Group, Suppression, BrokenWire, SafeState, Rest, SwitchStop, SwitchStopTurn, SwitchClear, SwitchClearTurn, Gap];

    private static Rule Of(string id, string title, string unit, Sense sense, double comfort) =>
        new(id, title, Trade.Electrical, unit, sense, comfort, new(SourceKind.CommonPractice, ""));

    private static Rule Switch(string id, string title, string unit) => new(id, title, Trade.Electrical, unit, Sense.AtLeast, 0.1, new(SourceKind.Derived, "", "docs/signals.md"));
}

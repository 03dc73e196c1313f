using Trivet.Findings;

namespace Trivet.Powering;

/// <summary>The rules by which supplies, branches and wires of a cabinet are judged. Those against fire and shock never say more than tight.</summary>
public static class PowerRules
{
    /// <summary>Sources, branches and consumers are described as far as a check needs. Appears only while they are not.</summary>
    public static Rule Described { get; } = Practice("power.described", "Supplies and branches are described and do not contradict themselves", "1", Sense.AtLeast, 0);

    /// <summary>Value: current that a source gives all the time, amperes.</summary>
    public static Rule Reserve { get; } = Practice("power.reserve", "The supply has a reserve", "A", Sense.AtMost, 0);

    /// <summary>Value: largest current that all its consumers together may draw, amperes.</summary>
    public static Rule Peak { get; } = Practice("power.peak", "The supply bears the peaks", "A", Sense.AtMost, 0.05);

    /// <summary>Logic, outputs and brakes have branches of their own.</summary>
    public static Rule Separate { get; } = Practice("power.separate", "Logic, outputs and brakes are fed apart", "1", Sense.AtLeast, 0);

    /// <summary>Value: voltage at the consumer while its whole branch draws its peak, volts.</summary>
    public static Rule Voltage { get; } = new(
        "power.voltage", "The voltage reaches the far end", Trade.Electrical, "V", Sense.AtLeast, 0.02, new(SourceKind.Standard, "IEC-60228", "resistance of conductors"));

    /// <summary>Value: current of the branch, amperes.</summary>
    public static Rule Load { get; } = Practice("power.load", "The protection carries the load", "A", Sense.AtMost, 0.05);

    /// <summary>Value: rating of the protection, amperes; of a fuse what a wire must bear for it.</summary>
    public static Rule Wires { get; } = new(
        "power.wire", "The protection protects the wire", Trade.Electrical, "A", Sense.AtMost, double.PositiveInfinity, new(SourceKind.Standard, "IEC-60204-1", "table 6, tables D.1 and D.2"));

    /// <summary>Value: least current into a short circuit at the end of the wires, amperes.</summary>
    public static Rule Trip { get; } = new(
        "power.trip", "A short circuit at the far end trips the protection", Trade.Electrical, "A", Sense.AtLeast, double.PositiveInfinity, new(SourceKind.Standard, "IEC-60898-1", "instantaneous tripping"));

    /// <summary>What has to go on when the mains fail hangs on a source that goes on.</summary>
    public static Rule BackedUp { get; } = Practice("power.backed-up", "What must go on without mains hangs on a source that does", "1", Sense.AtLeast, 0);

    /// <summary>Value: how long the source goes on when the mains fail, seconds.</summary>
    public static Rule HoldTime { get; } = Practice("power.hold-time", "The source goes on long enough without mains", "s", Sense.AtLeast, 0.1);

    /// <summary>Value: peak of all that a branch feeds, switched on together, amperes.</summary>
    public static Rule Inrush { get; } = new(
        "power.inrush", "Switching on does not trip the protection", Trade.Electrical, "A", Sense.AtMost, 0.1, new(SourceKind.Standard, "IEC-60898-1", "instantaneous tripping"));

    /// <summary>Value: mean power drawn from the motors' source over the cycle, watts.</summary>
    public static Rule MotorContinuous { get; } = Practice("power.motor-continuous", "The motors' source has a reserve", "W", Sense.AtMost, 0);

    /// <summary>Value: highest voltage at the drives while all axes stop together, volts.</summary>
    public static Rule StopVoltage { get; } = Derived("power.stop-voltage", "All axes may stop together", "V", 0.02);

    /// <summary>Value: energy that the braking resistor burns in that stop, joules.</summary>
    public static Rule BrakeEnergy { get; } = Derived("power.brake-energy", "The braking resistor bears one stop", "J", 0.1);

    /// <summary>Value: current of the brake chopper at the voltage reached, amperes.</summary>
    public static Rule BrakeCurrent { get; } = Derived("power.brake-current", "The braking resistor is not too small for its chopper", "A", 0.05);

    private static Rule Derived(string id, string title, string unit, double comfort) =>
        new(id, title, Trade.Electrical, unit, Sense.AtMost, comfort, new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md"));

    private static Rule Practice(string id, string title, string unit, Sense sense, double comfort) =>
        new(id, title, Trade.Electrical, unit, sense, comfort, new(SourceKind.CommonPractice, ""));
}

/// <summary>Why a check of supplies and branches does not apply, or what can not be.</summary>
public static class PowerReasons
{
    public static Reason NoSources { get; } = new("power.no-sources");
    public static Reason NoSuchSource { get; } = new("power.no-such-source");
    public static Reason NoSuchBranch { get; } = new("power.no-such-branch");
    public static Reason NoSuchCable { get; } = new("power.no-such-cable");
    /// <summary>A section that wires are not made with.</summary>
    public static Reason NoSuchSection { get; } = new("power.no-such-section");
    public static Reason NotPositive { get; } = new("power.not-positive");
    public static Reason Negative { get; } = new("power.negative");
    public static Reason NotAShare { get; } = new("power.not-a-share");
    /// <summary>The tables end before such a wire, temperature or number of circuits.</summary>
    public static Reason BeyondTables { get; } = new("power.beyond-tables");
    /// <summary>Motion, masses, drives or their supply are not described far enough.</summary>
    public static Reason NoMotorFeed { get; } = new("power.no-motor-feed");
    public static Reason NoBrakeLimit { get; } = new("power.no-brake-limit");
    public static Reason NoInrush { get; } = new("power.no-inrush");
}

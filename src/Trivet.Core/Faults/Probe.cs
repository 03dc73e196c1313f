namespace Trivet.Faults;

/// <summary>
/// The ways in which people look for what was mis-wired or mis-mounted, in the order of the energy they need. A step of the procedure
/// says which of them it does, a fault of the catalogue what each of them would show.
/// </summary>
public enum Probe
{
    /// <summary>Ohms between the bus wires, all off: 60 with both terminators.</summary>
    BusOhms,
    /// <summary>Polarity, shorts and continuity of the supply before it is switched on.</summary>
    SupplyPolarity,
    /// <summary>Continuity of the protective bonding and of shields.</summary>
    Bonding,
    /// <summary>Cores and labels of a cable against the plan, both ends.</summary>
    CableContinuity,
    /// <summary>What stands where, which way up, against plan or photograph.</summary>
    PlacesAgainstPlan,
    /// <summary>Level in two directions, diagonals, parallel rails.</summary>
    LevelAndDiagonals,
    /// <summary>Control supply on, indicators read.</summary>
    Indicators,
    /// <summary>Five seconds of the bus, listened to only.</summary>
    BusListening,
    /// <summary>Inputs as they are with nothing moved.</summary>
    RestingInputs,
    /// <summary>A carriage or an arm moved by hand, drives off.</summary>
    HandMove,
    /// <summary>The whole platform lifted and pushed by hand, drives off.</summary>
    PlatformPush,
    /// <summary>A target held to a switch.</summary>
    SwitchTarget,
    /// <summary>Every device of the stop chain alone, every channel alone.</summary>
    StopChain,
    /// <summary>A few millimetres by one enabled axis, current limited.</summary>
    SmallJog,
    /// <summary>Homing, slowly.</summary>
    Homing,
    /// <summary>Drive disabled over a prop; what sinks is watched.</summary>
    DisableAndWatch,
    /// <summary>Level on the platform at several places.</summary>
    PlatformLevel,
    /// <summary>Slow moves along x and y, the direction seen on the floor.</summary>
    SlowCartesian,
    /// <summary>A travel measured by ruler or tape against counts.</summary>
    TravelByRuler,
    /// <summary>Quarter turns of the rotary axis over a mark.</summary>
    RotaryTurn,
    /// <summary>Outputs one by one, first empty, then with a part.</summary>
    Outputs,
    /// <summary>Vacuum or grip: how much of it, and how fast it comes.</summary>
    GripRise,
    /// <summary>Belt: a stretch by tape against its encoder's counts.</summary>
    BeltByTape,
    /// <summary>A dial at one stop, before and after many fast cycles.</summary>
    DialAfterCycles,
    /// <summary>A pull and a dial, or a tap: what gives and how it rings.</summary>
    PullOrTap,
    /// <summary>All axes stop together at full speed, supplies logged.</summary>
    StopAllAxes,
    /// <summary>An hour of work, temperatures and error counters read.</summary>
    LongRun,
    /// <summary>Typed settings read back and compared with the plan.</summary>
    SettingsReadBack,
}

using System.Collections.Immutable;
using static Trivet.Faults.FaultNeeds;
using static Trivet.Faults.FaultScope;
using static Trivet.Faults.Probe;

namespace Trivet.Faults;

/// <summary>
/// The faults of a first power-up. Odds are common practice and have no source; they are rough, and only their order of size is used. A probe that is not named for
/// a fault shows nothing of it.
/// </summary>
public static class FaultCatalogue
{
    public static ImmutableArray<Fault> All { get; } =
    [
        // Motors and what the drives know of their position.
        F(1, "motor-cables-swapped", AxisPair, Nothing, 25, SmallJog,
            (SmallJog, "foreign-carriage", .93), (Homing, "time-out", .6), (Homing, "away-to-end", .2), (CableContinuity, "differs", .9)),
        F(2, "feedback-cables-swapped", AxisPair, Feedback, 20, SmallJog,
            (HandMove, "foreign-channel", .96), (PlatformPush, "differs", .98), (SmallJog, "foreign-feedback", .93), (Homing, "time-out", .7), (Homing, "away-to-end", .2),
            (CableContinuity, "differs", .9)),
        F(3, "motor-and-feedback-swapped", AxisPair, Feedback, 20, SlowCartesian,
            (HandMove, "foreign-channel", .96), (PlatformPush, "differs", .98), (SmallJog, "foreign-axis", .95), (Homing, "foreign-carriage", .9), (SlowCartesian, "mirrored", .9),
            (CableContinuity, "differs", .9)),
        F(4, "axes-rotated", Robot, Feedback | ThreeChains, 4, SlowCartesian,
            (HandMove, "foreign-channel", .96), (SmallJog, "foreign-axis", .95), (Homing, "foreign-carriage", .9), (SlowCartesian, "turned", .9), (CableContinuity, "differs", .9)),
        F(5, "switches-swapped", AxisPair, Switch, 20, Homing,
            (SwitchTarget, "foreign-input", .96), (Homing, "away-to-end", .55), (Homing, "time-out", .35), (CableContinuity, "differs", .9)),
        F(6, "motor-phases-reversed", Axis, Nothing, 12, SmallJog,
            (BusListening, "current-message", .05), (SmallJog, "runs-off", .5), (SmallJog, "hums", .4), (Homing, "time-out", .7), (CableContinuity, "differs", .6)),
        F(7, "feedback-reversed", Axis, Feedback, 12, SmallJog,
            (HandMove, "wrong-sign", .95), (PlatformPush, "differs", .98), (SmallJog, "runs-off", .55), (SmallJog, "hums", .35), (Homing, "time-out", .6)),
        F(8, "motor-and-feedback-reversed", Axis, Feedback, 15, Homing,
            (HandMove, "wrong-sign", .95), (PlatformPush, "differs", .98), (SmallJog, "backwards", .95), (Homing, "away-to-end", .9)),
        F(9, "motor-phase-open", Axis, Nothing, 8, SmallJog,
            (BusListening, "current-message", .1), (SmallJog, "hums", .5), (SmallJog, "rough", .4), (Homing, "time-out", .5), (CableContinuity, "differs", .9)),
        F(10, "feedback-open", Axis, Feedback, 12, SmallJog,
            (Indicators, "fault-lamp", .4), (BusListening, "sensor-message", .6), (HandMove, "nothing", .95), (SmallJog, "runs-off", .3), (SmallJog, "hums", .5),
            (Homing, "time-out", .8), (CableContinuity, "differs", .8)),
        F(11, "feedback-noisy", Axis, Feedback, 8, null,
            (BusListening, "sensor-message", .1), (HandMove, "noisy", .4), (HandMove, "not-repeated", .4), (SmallJog, "rough", .3), (Homing, "scatters", .7), (LongRun, "differs", .6)),

        // Addresses and the bus.
        F(12, "wrong-address", Module, Bus, 25, null,
            (Indicators, "bus-lamps", .2), (BusListening, "node-missing", .97), (HandMove, "nothing", .9), (SmallJog, "nothing", .9), (PlacesAgainstPlan, "differs", .8)),
        F(13, "duplicate-address", Cabinet, Bus, 15, SmallJog,
            (Indicators, "bus-lamps", .3), (BusListening, "double-rate", .7), (BusListening, "error-frames", .25), (HandMove, "foreign-channel", .4), (SwitchTarget, "two-inputs", .4),
            (SmallJog, "another-sags", .3), (SmallJog, "foreign-axis", .3), (Homing, "time-out", .5), (PlacesAgainstPlan, "differs", .8)),
        F(14, "terminator-missing", Cabinet, CanBus, 15, AllAxesProbe, (BusOhms, "differs", .98), (BusListening, "error-frames", .35), (SmallJog, "rough", .05)),
        F(15, "terminator-too-many", Cabinet, CanBus, 10, AllAxesProbe, (BusOhms, "differs", .98), (BusListening, "error-frames", .25)),
        F(16, "node-bit-rate", Module, CanBus, 10, null,
            (Indicators, "bus-lamps", .7), (BusListening, "error-frames", .9), (HandMove, "nothing", .9), (SwitchTarget, "nothing", .5), (SmallJog, "nothing", .9)),
        F(17, "own-bit-rate", Cabinet, CanBus, 5, null,
            (Indicators, "bus-lamps", .5), (BusListening, "silence", .5), (BusListening, "error-frames", .5), (HandMove, "nothing", .95), (SwitchTarget, "nothing", .95),
            (SmallJog, "nothing", .95), (Homing, "time-out", .95)),
        F(18, "bus-wires-swapped", Module, CanBus, 8, null,
            (Indicators, "bus-lamps", .6), (BusListening, "node-missing", .9), (HandMove, "nothing", .9), (SmallJog, "nothing", .9)),
        F(19, "bus-open", Cabinet, Bus, 15, null,
            (BusOhms, "differs", .9), (Indicators, "bus-lamps", .4), (BusListening, "node-missing", .95), (HandMove, "nothing", .9), (SmallJog, "nothing", .9)),
        F(20, "module-order", Cabinet, Bus, 15, SlowCartesian,
            (PlacesAgainstPlan, "differs", .9), (BusListening, "identity", .5), (HandMove, "foreign-channel", .7), (SwitchTarget, "foreign-input", .7), (SmallJog, "foreign-axis", .7),
            (Homing, "foreign-carriage", .6)),
        F(21, "wrong-module", Module, Bus, 8, SmallJog,
            (PlacesAgainstPlan, "differs", .8), (Indicators, "fault-lamp", .1), (BusListening, "identity", .95), (SmallJog, "hums", .2)),

        // Supplies and the stop chain.
        F(22, "control-supply-missing", Module, Nothing, 12, null,
            (Indicators, "module-dark", .98), (BusListening, "node-missing", .97), (HandMove, "nothing", .95), (SwitchTarget, "nothing", .9), (SmallJog, "nothing", .97)),
        F(23, "control-supply-reversed", Cabinet, Nothing, 4, Indicators,
            (SupplyPolarity, "differs", .98), (Indicators, "module-dark", .5), (Indicators, "supply-trips", .4), (BusListening, "node-missing", .95)),
        F(24, "control-supply-sags", Cabinet, Nothing, 15, StopAllAxes,
            (BusListening, "double-rate", .2), (BusListening, "voltage-message", .1), (SwitchTarget, "flickers", .1), (SmallJog, "another-sags", .2), (Homing, "limp", .1),
            (StopAllAxes, "differs", .8)),
        F(25, "stop-chain-open", Cabinet, Nothing, 20, null,
            (Indicators, "fault-lamp", .2), (BusListening, "voltage-message", .2), (StopChain, "differs", .95), (SmallJog, "nothing", .97), (Homing, "time-out", .9)),
        F(26, "motor-supply-wrong", Cabinet, Nothing, 5, SmallJog,
            (SupplyPolarity, "differs", .9), (Indicators, "fault-soon", .2), (BusListening, "voltage-message", .4), (StopAllAxes, "differs", .8)),
        F(27, "braking-over-voltage", Cabinet, Nothing, 8, StopAllAxes, (Homing, "limp", .02), (StopAllAxes, "differs", .9)),
        F(28, "motor-data-wrong", Axis, Nothing, 10, LongRun,
            (SettingsReadBack, "differs", .9), (SmallJog, "hums", .3), (SmallJog, "rough", .3), (Homing, "time-out", .2), (LongRun, "differs", .7)),

        // Brakes, belts and what turns into travel.
        F(29, "brake-not-released", Axis, Brake, 8, null, (HandMove, "stuck", .95), (SmallJog, "hums", .9), (Homing, "time-out", .9)),
        F(30, "brake-always-released", Axis, Brake, 4, Homing, (Homing, "limp", .7), (DisableAndWatch, "differs", .95)),
        F(31, "belt-slips", Axis, BeltDrive, 15, null, (HandMove, "not-repeated", .1), (SmallJog, "rough", .2), (Homing, "scatters", .4), (DialAfterCycles, "differs", .8)),
        F(32, "coupling-loose", Axis, Nothing, 12, DialAfterCycles,
            (HandMove, "not-repeated", .5), (HandMove, "nothing", .1), (SmallJog, "wrong-distance", .3), (Homing, "scatters", .6), (DialAfterCycles, "differs", .8)),
        F(33, "wrong-scale", Axis, Nothing, 15, Homing,
            (SettingsReadBack, "differs", .8), (HandMove, "wrong-distance", .9), (SmallJog, "wrong-distance", .95), (Homing, "scatters", .1), (TravelByRuler, "differs", .98)),

        // Switches and homing.
        F(34, "switch-too-far", Axis, Switch, 15, Homing,
            (PlacesAgainstPlan, "differs", .7), (SwitchTarget, "wrong-place", .6), (SwitchTarget, "nothing", .2), (Homing, "time-out", .4), (Homing, "at-once", .1)),
        F(35, "contact-inverse", Axis, Switch, 20, null, (RestingInputs, "differs", .97), (SwitchTarget, "inverse", .97), (SmallJog, "nothing", .3), (Homing, "at-once", .9)),
        F(36, "switching-mismatch", Axis, Switch, 12, Homing,
            (SwitchTarget, "nothing", .8), (SwitchTarget, "inverse", .15), (Homing, "away-to-end", .5), (Homing, "time-out", .4)),
        F(37, "switch-wire-broken", Axis, Switch, 12, Homing,
            (CableContinuity, "differs", .8), (SwitchTarget, "nothing", .95), (Homing, "away-to-end", .4), (Homing, "at-once", .5)),
        F(38, "homing-direction", Axis, Chain, 15, Homing, (SettingsReadBack, "differs", .9), (Homing, "away-to-end", .95)),
        F(39, "switch-soft", Axis, Switch, 8, null, (SwitchTarget, "flickers", .2), (Homing, "scatters", .8), (DialAfterCycles, "differs", .8)),
        F(40, "disabled-after-homing", Axis, Chain, 10, Homing, (Homing, "limp", .95), (DisableAndWatch, "differs", .5)),

        // What was mounted.
        F(41, "joint-preload-lost", Robot, Nothing, 8, DialAfterCycles, (SmallJog, "rough", .1), (Homing, "scatters", .1), (PlatformLevel, "differs", .5), (DialAfterCycles, "differs", .6)),
        F(42, "rods-crossed", Robot, Nothing, 8, SlowCartesian,
            (PlacesAgainstPlan, "differs", .7), (HandMove, "stuck", .3), (PlatformPush, "differs", .4), (SmallJog, "rough", .3), (Homing, "time-out", .2), (PlatformLevel, "differs", .8)),
        F(43, "rod-pair-unequal", Robot, Nothing, 8, null, (PlatformLevel, "differs", .9)),
        F(44, "base-turned", Robot, Nothing, 12, SlowCartesian, (PlacesAgainstPlan, "differs", .7), (PlatformPush, "differs", .95), (SlowCartesian, "turned", .95)),
        F(45, "axes-mirrored", Robot, ThreeChains, 10, SlowCartesian, (PlatformPush, "differs", .95), (SlowCartesian, "mirrored", .95)),
        F(46, "out-of-level", Frame, Nothing, 20, null, (LevelAndDiagonals, "differs", .95)),
        F(47, "not-square", Frame, Nothing, 15, null, (LevelAndDiagonals, "differs", .8), (HandMove, "stuck", .1), (SmallJog, "rough", .1)),
        F(48, "platform-turned", Robot, ThreeChains, 10, null, (PlacesAgainstPlan, "differs", .95)),
        F(49, "tool-off-centre", Tool, Nothing, 15, SlowCartesian, (PlacesAgainstPlan, "differs", .6), (RotaryTurn, "differs", .9)),
        F(50, "outputs-swapped", Tool, FaultNeeds.Outputs, 15, Probe.Outputs, (Probe.Outputs, "differs", .98)),
        F(51, "air-wrong", Tool, Air, 12, Probe.Outputs, (GripRise, "differs", .95)),
        F(52, "shield-not-bonded", Cabinet, Nothing, 12, LongRun,
            (Bonding, "differs", .8), (BusListening, "error-frames", .15), (HandMove, "noisy", .05), (SwitchTarget, "flickers", .2), (SmallJog, "rough", .2), (Homing, "scatters", .3),
            (LongRun, "differs", .7)),
        F(53, "fan-blocked", Cabinet, Fan, 6, null, (Indicators, "fault-soon", .05), (LongRun, "differs", .9)),
        F(54, "rotary-sense", Axis, Rotary, 10, null, (SettingsReadBack, "differs", .7), (HandMove, "wrong-sign", .4), (SmallJog, "backwards", .4), (Homing, "time-out", .2), (RotaryTurn, "differs", .95)),
        F(55, "chain-cable-breaks", Robot, EnergyChain, 8, LongRun,
            (BusListening, "node-missing", .1), (BusListening, "communication-message", .1), (HandMove, "noisy", .3), (SwitchTarget, "flickers", .3), (SmallJog, "runs-off", .1),
            (Homing, "time-out", .2), (LongRun, "differs", .7)),
        F(56, "belt-counts", Belt, Nothing, 12, null, (BeltByTape, "differs", .98)),
        F(57, "frame-loose", Frame, Nothing, 10, null, (SmallJog, "rough", .1), (PullOrTap, "differs", .8), (DialAfterCycles, "differs", .6)),
        F(58, "heartbeat-times", Cabinet, Bus, 10, null, (SettingsReadBack, "differs", .95), (BusListening, "communication-message", .3), (SmallJog, "nothing", .2), (Homing, "limp", .2)),
    ];

    // The first probe for which all axes work together: a bus that drops a node then drops it mid-move.
    private const Probe AllAxesProbe = SlowCartesian;

    private static Fault F(int number, string id, FaultScope scope, FaultNeeds needs, double weight, Probe? harmfulFrom, params ImmutableArray<(Probe, string, double)> signs) =>
        new(number, id, scope, needs, weight, harmfulFrom, [.. signs.Select(s => new Sign(s.Item1, s.Item2, s.Item3))]);
}

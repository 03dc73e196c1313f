using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Faults;

/// <summary>What a fault sits in, so that it is counted once for each of them that the cell has.</summary>
public enum FaultScope
{
    Axis,
    /// <summary>Two axes whose plugs or parts were taken for each other.</summary>
    AxisPair,
    Module,
    /// <summary>The cabinet with its supplies, or the bus as a whole.</summary>
    Cabinet,
    Robot,
    Frame,
    Tool,
    Belt,
}

/// <summary>What a cell must have for a fault to be possible at all.</summary>
[Flags]
public enum FaultNeeds
{
    Nothing = 0,
    Feedback = 1,
    Brake = 1 << 1,
    Switch = 1 << 2,
    BeltDrive = 1 << 3,
    Bus = 1 << 4,
    CanBus = 1 << 5,
    Fan = 1 << 6,
    EnergyChain = 1 << 7,
    Outputs = 1 << 8,
    Air = 1 << 9,
    ThreeChains = 1 << 10,
    /// <summary>The axis is one of the robot's chains.</summary>
    Chain = 1 << 11,
    /// <summary>The axis is the one that turns the tool.</summary>
    Rotary = 1 << 12,
}

/// <summary>What a probe shows of a fault: one of its outcomes, and how often.</summary>
/// <param name="Outcome">Id out of the probe's alphabet (<see cref="Outcomes"/>).</param>
/// <param name="Probability">Of this outcome where the fault is there, 0 to 1.</param>
public sealed record Sign(Probe Probe, string Outcome, double Probability);

/// <summary>
/// One thing that can be wired, set or mounted wrong. Data only: what it is, what people see, its harm and its remedy are worded in the views by its id.
/// </summary>
/// <param name="Number">Its place in the catalogue, from 1.</param>
/// <param name="Weight">Expected number in a thousand first power-ups. Common practice, no source: rough odds until counts of one's own replace them.</param>
/// <param name="HarmfulFrom">The first probe with which it can do harm; null where it does none worth the name.</param>
public sealed record Fault(int Number, string Id, FaultScope Scope, FaultNeeds Needs, double Weight, Probe? HarmfulFrom, ImmutableArray<Sign> Signs)
{
    public static Source Source { get; } = new(SourceKind.CommonPractice, "", "rough odds, to be replaced by counts");

    /// <summary>
    /// How likely a probe is to show that something is wrong: the outcomes named for it, and of what is not named three tenths, since the rest of it would look as
    /// planned. Zero where the probe says nothing of the fault.
    /// </summary>
    public double ShownBy(Probe probe)
    {
        double named = 0;
        foreach (var sign in Signs)
            if (sign.Probe == probe) named += sign.Probability;
        return named == 0 ? 0 : named + UnnamedShown * (1 - named);
    }

    private const double UnnamedShown = 0.3;
}

/// <summary>The outcomes that each probe can have besides the planned one.</summary>
public static class Outcomes
{
    /// <summary>For a probe that is only asked whether all is as planned.</summary>
    public const string Differs = "differs";

    public static ImmutableArray<string> Of(Probe probe) => probe switch
    {
        Probe.Indicators => ["module-dark", "fault-lamp", "supply-trips", "fault-soon", "all-dark", "bus-lamps"],
        Probe.BusListening =>
        [
            "node-missing", "stranger", "double-rate", "error-frames", "silence", "voltage-message", "sensor-message", "current-message", "identity", "communication-message",
        ],
        Probe.HandMove => ["foreign-channel", "wrong-sign", "nothing", "wrong-distance", "stuck", "not-repeated", "noisy"],
        Probe.SwitchTarget => ["foreign-input", "inverse", "nothing", "two-inputs", "flickers", "wrong-place"],
        Probe.SmallJog =>
        [
            "foreign-axis", "foreign-carriage", "foreign-feedback", "backwards", "runs-off", "hums", "nothing", "wrong-distance", "another-sags", "rough",
        ],
        Probe.Homing => ["away-to-end", "time-out", "foreign-carriage", "scatters", "at-once", "limp"],
        Probe.SlowCartesian => ["turned", "mirrored"],
        _ => [Differs],
    };
}

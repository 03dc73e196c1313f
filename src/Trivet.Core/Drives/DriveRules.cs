using Trivet.Findings;

namespace Trivet.Drives;

/// <summary>
/// The rules by which the drives of a cell are judged. Values along a motion are taken at finitely many times of a motion that is itself a plan, so
/// they are sampled, and none of these rules claims a proof.
/// </summary>
public static class DriveRules
{
    /// <summary>Motors, transmissions and supply are described as far as a check needs. Appears only while they are not.</summary>
    public static Rule Described { get; } = Of("drive.described", "The drives are described and do not contradict themselves", "1", Sense.AtLeast, 0);

    /// <summary>Value: largest share of the torque that the curve has at the speed and voltage of the moment.</summary>
    public static Rule Torque { get; } = Of("drive.torque", "The motor has the torque that the motion asks", "1", Sense.AtMost, 0.1);

    /// <summary>Value: largest share of the speed at which the curve ends, at the voltage of the moment.</summary>
    public static Rule Speed { get; } = Of("drive.speed", "The motor turns no faster than its curve goes", "1", Sense.AtMost, 0.05);

    /// <summary>Value: root of the mean square of the torque over the cycle, newton metres.</summary>
    public static Rule Continuous { get; } = Of("drive.continuous", "The motor bears the cycle without end", "N m", Sense.AtMost, 0.1);

    /// <summary>Value: temperature of the winding at the end of the shift, degrees Celsius; after a long time where no shift is stated.</summary>
    public static Rule Temperature { get; } = Of("drive.temperature", "The winding stays cool enough", "°C", Sense.AtMost, 0.1) with { Scale = 100 };

    /// <summary>Stepper motors without feedback. Value: largest load angle, electrical radians; a quarter turn is where it falls out of step.</summary>
    public static Rule LostStep { get; } = Of("drive.lost-step", "The stepper motor keeps its step", "rad", Sense.AtMost, 0.1);

    /// <summary>Value: largest inertia of the load over that of rotor and transmission.</summary>
    public static Rule InertiaRatio { get; } = Of("drive.inertia-ratio", "The load is not too heavy for the rotor", "1", Sense.AtMost, 0);

    /// <summary>Value: largest pull in the tight strand of the belt, newtons.</summary>
    public static Rule Strand { get; } = Of("drive.strand", "The belt bears its tight strand", "N", Sense.AtMost, 0.1);

    /// <summary>Value: largest share of the pretension that the slack strand loses.</summary>
    public static Rule Slack { get; } = Of("drive.slack", "The slack strand of the belt stays tight", "1", Sense.AtMost, 0.1);

    /// <summary>Value: largest force on a tooth of the belt, newtons.</summary>
    public static Rule Tooth { get; } = Of("drive.tooth", "The teeth of the belt bear the force", "N", Sense.AtMost, 0.1);

    /// <summary>Value: largest share of what gear or screw may pass on.</summary>
    public static Rule Transmission { get; } = Of("drive.transmission", "Gear or screw bears the force", "1", Sense.AtMost, 0.1);

    /// <summary>Value: relative difference of the stated drive step and the one that motor and transmission give.</summary>
    public static Rule Resolution { get; } = Of("drive.resolution", "The drive step is that of motor and transmission", "1", Sense.AtMost, 0);

    /// <summary>Value: largest yield of the axis under the forces of the motion, metres at the joint.</summary>
    public static Rule Following { get; } = Of("drive.following", "The axis follows within the tolerance", "m", Sense.AtMost, 0.1);

    /// <summary>Value: swing that is left when the axis stops, metres at the joint.</summary>
    public static Rule Resonance { get; } = Of("drive.resonance", "The axis swings less than the tolerance when it stops", "m", Sense.AtMost, 0.1);

    /// <summary>Value: lowest voltage at the drives, volts.</summary>
    public static Rule VoltageLow { get; } = Of("drive.voltage-low", "The voltage does not sag too far", "V", Sense.AtLeast, 0.05);

    /// <summary>Value: highest voltage at the drives, volts.</summary>
    public static Rule VoltageHigh { get; } = Of("drive.voltage-high", "What comes back does not lift the voltage too far", "V", Sense.AtMost, 0.02);

    /// <summary>Value: mean power of the braking resistor, watts.</summary>
    public static Rule Braking { get; } = Of("drive.braking", "The braking resistor bears what comes back", "W", Sense.AtMost, 0.1);

    /// <summary>Value: largest power drawn from the source, watts.</summary>
    public static Rule SupplyPower { get; } = Of("drive.supply-power", "The source has the power", "W", Sense.AtMost, 0.1);

    private static Rule Of(string id, string title, string unit, Sense sense, double comfort) =>
        new(id, title, Trade.Motion, unit, sense, comfort, new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md"));
}

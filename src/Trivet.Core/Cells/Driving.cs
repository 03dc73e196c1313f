using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>Motors as data, how each axis is driven, and the supply that feeds the motors.</summary>
public sealed record Drives
{
    public string? Note { get; init; }
    /// <summary>Speed limit of a chain's drive coordinate, metres or radians per second.</summary>
    public double? LargestSpeed { get; init; }
    public double? LargestAcceleration { get; init; }
    public double? LargestJerk { get; init; }
    public ImmutableSortedDictionary<string, Motor> Motors { get; init; } = Keyed.Empty<Motor>();
    /// <summary>What the drives of all chains share; an axis overrides it field by field. The rotary and the linear axis don't take from it.</summary>
    public AxisDrive Common { get; init; } = new();
    /// <summary>Keyed by chain id, "rotary" or "linear".</summary>
    public ImmutableSortedDictionary<string, AxisDrive> Axes { get; init; } = Keyed.Empty<AxisDrive>();
    public MotorSupply Supply { get; init; } = new();
}

public enum MotorKind
{
    Servo,
    Stepper,
}

/// <summary>A motor as its data sheet states it.</summary>
public sealed record Motor : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public MotorKind? Kind { get; init; }
    /// <summary>Largest torque against speed at <see cref="CurveVoltage"/>, at least two points; straight between them.</summary>
    public ImmutableSortedDictionary<string, TorquePoint> Curve { get; init; } = Keyed.Empty<TorquePoint>();
    /// <summary>Supply voltage at which the curve holds, volts.</summary>
    public double? CurveVoltage { get; init; }
    /// <summary>Torque that may be asked for without end, newton metres.</summary>
    public double? ContinuousTorque { get; init; }
    public double? RotorInertia { get; init; }
    /// <summary>Time constant of the winding with its housing, seconds.</summary>
    public double? ThermalTimeConstant { get; init; }
    /// <summary>Rise of the winding over its surroundings at the continuous torque, kelvin.</summary>
    public double? TemperatureRise { get; init; }
    /// <summary>Largest winding temperature, degrees Celsius.</summary>
    public double? LargestTemperature { get; init; }
    /// <summary>Torque per ampere, newton metres per ampere.</summary>
    public double? TorqueConstant { get; init; }
    /// <summary>Resistance of the winding as the torque constant's current sees it, ohms.</summary>
    public double? Resistance { get; init; }
    /// <summary>Full steps (stepper) or pole pairs (servo) per turn.</summary>
    public int? StepsPerTurn { get; init; }
    /// <summary>Smallest increments of the drive per turn: micro-steps or encoder counts.</summary>
    public int? CountsPerTurn { get; init; }
    /// <summary>Torque per angle by which the shaft lags its command, newton metres per radian.</summary>
    public double? FollowingStiffness { get; init; }
}

/// <summary>One point of a torque–speed curve.</summary>
public sealed record TorquePoint : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    /// <summary>Radians per second.</summary>
    public double? Speed { get; init; }
    /// <summary>Newton metres.</summary>
    public double? Torque { get; init; }
}

/// <summary>What turns a motor's turns into the drive coordinate.</summary>
public enum TransmissionKind
{
    /// <summary>A toothed belt on a pulley: 2π·radius/ratio per motor turn.</summary>
    Belt,
    /// <summary>A screw: lead/ratio per motor turn.</summary>
    Screw,
    /// <summary>A gear, or none at all, on a turning axis: one turn/ratio per motor turn.</summary>
    Gear,
}

/// <summary>The drive of one axis: motor and transmission.</summary>
public sealed record AxisDrive : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of the motor.</summary>
    public string? Motor { get; init; }
    public TransmissionKind? Transmission { get; init; }
    /// <summary>Motor turns per turn of pulley, screw or axis.</summary>
    public double? Ratio { get; init; }
    /// <summary>Pitch radius of the belt's pulley, metres.</summary>
    public double? PulleyRadius { get; init; }
    /// <summary>Travel per turn of the screw, metres.</summary>
    public double? Lead { get; init; }
    /// <summary>Inertia of pulleys, screw, gear and brake as the motor shaft sees it, kilogram square metres.</summary>
    public double? Inertia { get; init; }
    /// <summary>Output over input power, 0 to 1, when the motor drives.</summary>
    public double? Efficiency { get; init; }
    /// <summary>Stiffness between motor shaft and carriage or arm: newtons per metre or newton metres per radian.</summary>
    public double? Stiffness { get; init; }
    /// <summary>Pull in either strand of the resting belt, newtons.</summary>
    public double? Pretension { get; init; }
    /// <summary>Largest pull in a strand of the belt, newtons.</summary>
    public double? LargestStrandForce { get; init; }
    /// <summary>Teeth of the smaller pulley in mesh.</summary>
    public int? TeethInMesh { get; init; }
    /// <summary>Largest force on one tooth of the belt, newtons.</summary>
    public double? LargestToothForce { get; init; }
    /// <summary>Largest torque or force that gear or screw may pass on, at the drive coordinate: newtons or newton metres.</summary>
    public double? LargestForce { get; init; }
    /// <summary>Speed, acceleration and jerk limit of this axis, in place of those of all chains.</summary>
    public double? LargestSpeed { get; init; }
    public double? LargestAcceleration { get; init; }
    public double? LargestJerk { get; init; }
}

/// <summary>The supply of the motors: a source behind a resistance, a capacitor, a brake chopper.</summary>
public sealed record MotorSupply
{
    public string? Note { get; init; }
    /// <summary>Voltage without load, volts.</summary>
    public double? Voltage { get; init; }
    /// <summary>Resistance of source and cable up to the drives together, there and back, ohms.</summary>
    public double? Resistance { get; init; }
    /// <summary>Largest power the source delivers, watts.</summary>
    public double? LargestPower { get; init; }
    /// <summary>Capacitance at the drives, farads.</summary>
    public double? Capacitance { get; init; }
    /// <summary>Voltage above which the brake chopper burns energy, volts; none where not stated.</summary>
    public double? BrakingVoltage { get; init; }
    public double? BrakingResistance { get; init; }
    /// <summary>Power the braking resistor takes without end, watts.</summary>
    public double? BrakingPower { get; init; }
    /// <summary>Largest current of the brake chopper, amperes.</summary>
    public double? BrakingCurrent { get; init; }
    /// <summary>Energy the braking resistor takes in one pulse, joules.</summary>
    public double? BrakingEnergy { get; init; }
    /// <summary>Power the source delivers without end, watts.</summary>
    public double? ContinuousPower { get; init; }
    /// <summary>Share of the energy of motion that comes back when all axes stop, 0 to 1.</summary>
    public double? ReturnedShare { get; init; }
    /// <summary>Voltages at which a drive switches off, volts.</summary>
    public double? LowestVoltage { get; init; }
    public double? HighestVoltage { get; init; }
    /// <summary>Power drawn by all drives at rest, watts.</summary>
    public double? IdlePower { get; init; }
    /// <summary>Temperature around the motors, degrees Celsius.</summary>
    public double? Ambient { get; init; }
}

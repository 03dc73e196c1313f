using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;

namespace Trivet.Drives;

/// <summary>Something read from the description, with the pointers it was read from.</summary>
internal sealed record Part<T>(T Value, ImmutableArray<string> Inputs);

/// <summary>What a motor bears.</summary>
/// <param name="Continuous">N·m.</param>
/// <param name="Shift">Seconds that the motor warms up from its surroundings' temperature; infinite where not stated.</param>
internal sealed record MotorHeat(double Continuous, double TimeConstant, double Rise, double Largest, double Ambient, double Shift);

/// <summary>A belt's pull.</summary>
/// <param name="ForcePerDrive">Pull of the belt by the force at the drive coordinate: 1, or 1/pulley radius where the axis turns.</param>
internal readonly record struct BeltPull(double ForcePerDrive, double Pretension, double LargestStrand);

/// <summary>A belt's teeth.</summary>
internal readonly record struct BeltTeeth(double ForcePerDrive, int InMesh, double Largest);

/// <summary>
/// Reads what the checks need of an axis beyond its <see cref="Drive"/>, concern by concern. Each returns null while its reading misses something or
/// where the concern does not arise.
/// </summary>
internal static class DriveParts
{
    /// <summary>Torque constant and resistance; a stepper motor without feedback is held at the current of its continuous torque.</summary>
    public static ElectricSide Electric(Motor motor, string at, bool openLoop, Reading reading)
    {
        double constant = reading.Need(motor.TorqueConstant, $"{at}/torqueConstant"), resistance = reading.Need(motor.Resistance, $"{at}/resistance");
        double held = openLoop ? reading.Need(motor.ContinuousTorque, $"{at}/continuousTorque") / constant : double.NaN;
        return new(constant, resistance, held);
    }

    public static MotorHeat Heat(Cell cell, Motor motor, string at, Reading reading) => new(
        reading.Need(motor.ContinuousTorque, $"{at}/continuousTorque"), reading.Need(motor.ThermalTimeConstant, $"{at}/thermalTimeConstant"),
        reading.Need(motor.TemperatureRise, $"{at}/temperatureRise"), reading.Need(motor.LargestTemperature, $"{at}/largestTemperature"),
        reading.Need(cell.Drives.Supply.Ambient, "/drives/supply/ambient"), reading.Or(cell.Brief.Shift, "/brief/shift", double.PositiveInfinity));

    /// <summary>True for a stepper motor whose drive does not know where the shaft is. The rotary and the linear axis state no feedback.</summary>
    public static bool OpenLoop(Cell cell, string axis, MotorKind kind, Reading reading)
    {
        if (kind != MotorKind.Stepper) return false;
        return !cell.Robot.Chains.TryGetValue(axis, out var chain)
            || new ChainReading(cell.Robot, axis, chain, reading).Need("feedback", c => c.Feedback, Feedback.None) == Feedback.None;
    }

    /// <summary>Pull of the belt for a force of one at the drive coordinate.</summary>
    public static double BeltForce(AxisReading fields, bool turns) => turns ? 1 / fields.Need("pulleyRadius", d => d.PulleyRadius) : 1;

    /// <summary>Stiffness of the axis; null where nothing but rigid parts is stated, or a belt or screw without its stiffness.</summary>
    public static Compliance? Yield(Drive drive, Motor motor, string at, bool openLoop, AxisReading fields, TransmissionKind kind, Reading reading)
    {
        double? lag = Stated(motor.FollowingStiffness, $"{at}/followingStiffness");
        reading.Used($"{at}/stepsPerTurn", motor.StepsPerTurn);
        if (lag is null && openLoop && motor.StepsPerTurn is { } steps and > 0) lag = Compliance.OfStepper(drive.Curve.Standstill, steps);
        double? transmission = fields.Stated("stiffness", d => d.Stiffness);
        if (!(lag is null or > 0) || !(transmission is null or > 0) || (transmission is null && (kind != TransmissionKind.Gear || lag is null))) return null;
        return new(
            lag is { } l ? l * drive.Gearing * drive.Gearing : double.PositiveInfinity, transmission ?? double.PositiveInfinity, drive.ReflectedInertia);

        double? Stated(double? value, string pointer)
        {
            reading.Used(pointer, value);
            return value;
        }
    }

    /// <summary>The smallest tolerance of place that the brief states, with its pointer; null where it states none.</summary>
    public static (double Tolerance, string Pointer)? Tolerance(Brief brief, Reading reading)
    {
        reading.Used("/brief/requirements", string.Join('\n', brief.Requirements.Keys));
        (double, string)? least = null;
        foreach (var (id, requirement) in brief.Requirements)
        {
            string at = $"/brief/requirements/{id}/tolerance";
            reading.Used(at, requirement.Tolerance);
            if (requirement.Tolerance is { } t and > 0 && !(t >= least?.Item1)) least = (t, at);
        }

        return least;
    }

    /// <summary>The supply; contradictions in it are added to the problems.</summary>
    public static Supply Supply(MotorSupply s, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        const string at = "/drives/supply";
        double voltage = Positive(reading.Need(s.Voltage, $"{at}/voltage"), "voltage"), resistance = Positive(reading.Need(s.Resistance, $"{at}/resistance"), "resistance");
        double power = Positive(reading.Need(s.LargestPower, $"{at}/largestPower"), "largestPower"), capacitance = Positive(reading.Need(s.Capacitance, $"{at}/capacitance"), "capacitance");
        double chopper = reading.Or(s.BrakingVoltage, $"{at}/brakingVoltage", double.PositiveInfinity), resistor = double.NaN;
        if (double.IsFinite(chopper))
        {
            resistor = Positive(reading.Need(s.BrakingResistance, $"{at}/brakingResistance"), "brakingResistance");
            if (chopper <= voltage) problems.Add(new($"{at}/brakingVoltage", DriveReasons.ChopperBelowSource));
        }

        double idle = reading.Or(s.IdlePower, $"{at}/idlePower", 0);
        if (idle < 0) problems.Add(new($"{at}/idlePower", DriveReasons.Negative));
        return new(voltage, resistance, power, capacitance, chopper, resistor, idle);

        double Positive(double value, string name)
        {
            if (value <= 0) problems.Add(new($"{at}/{name}", DriveReasons.NotPositive));
            return value;
        }
    }
}

using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of the drives: motors, how each axis is driven, the motors' supply.</summary>
internal static class DriveFields
{
    private static readonly Shape Point = new Table<TorquePoint>(new TorquePoint())
        .Whole("order", p => p.Order, (p, v) => p with { Order = v }, "Place in lists; the curve itself runs by speed.")
        .Quantity("speed", Dimension.AngularSpeed, p => p.Speed, (p, v) => p with { Speed = v }, "Speed of the shaft.", Depth.Build, "1/min")
        .Quantity("torque", Dimension.Torque, p => p.Torque, (p, v) => p with { Torque = v }, "Largest torque at that speed.", Depth.Build)
        .Text("note", p => p.Note, (p, v) => p with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Motor = new Table<Motor>(new Motor())
        .Whole("order", m => m.Order, (m, v) => m with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", m => m.Name, (m, v) => m with { Name = v }, "What people call it.")
        .Choice("kind", Words.MotorKind, m => m.Kind, (m, v) => m with { Kind = v }, "A servo motor, or a stepper motor.", Depth.Build)
        .Keyed("curve", Point, m => m.Curve, (m, v) => m with { Curve = v }, "Largest torque against speed, at least two points, straight between them.")
        .Quantity("curveVoltage", Dimension.Voltage, m => m.CurveVoltage, (m, v) => m with { CurveVoltage = v },
            "Supply voltage at which the curve holds.", Depth.Build)
        .Quantity("continuousTorque", Dimension.Torque, m => m.ContinuousTorque, (m, v) => m with { ContinuousTorque = v },
            "Torque that may be asked for without end.", Depth.Build)
        .Quantity("rotorInertia", Dimension.Inertia, m => m.RotorInertia, (m, v) => m with { RotorInertia = v }, "Inertia of the rotor.", Depth.Build)
        .Quantity("thermalTimeConstant", Dimension.Time, m => m.ThermalTimeConstant, (m, v) => m with { ThermalTimeConstant = v },
            "Time constant of the winding with its housing.", Depth.Build, "min")
        .Quantity("temperatureRise", Dimension.TemperatureRise, m => m.TemperatureRise, (m, v) => m with { TemperatureRise = v },
            "Rise of the winding over its surroundings at the continuous torque.", Depth.Build)
        .Quantity("largestTemperature", Dimension.Temperature, m => m.LargestTemperature, (m, v) => m with { LargestTemperature = v },
            "Largest temperature of the winding.", Depth.Build)
        .Quantity("torqueConstant", Dimension.TorquePerCurrent, m => m.TorqueConstant, (m, v) => m with { TorqueConstant = v },
            "Torque for each ampere.", Depth.Build)
        .Quantity("resistance", Dimension.Resistance, m => m.Resistance, (m, v) => m with { Resistance = v },
            "Resistance of the winding as that current sees it.", Depth.Build)
        .Whole("stepsPerTurn", m => m.StepsPerTurn, (m, v) => m with { StepsPerTurn = v }, "Full steps for each turn of a stepper motor.")
        .Whole("countsPerTurn", m => m.CountsPerTurn, (m, v) => m with { CountsPerTurn = v },
            "Smallest increments for each turn: micro-steps of the drive or counts of the encoder.", Depth.Build)
        .Quantity("followingStiffness", Dimension.AngularStiffness, m => m.FollowingStiffness, (m, v) => m with { FollowingStiffness = v },
            "Torque for each angle by which the shaft lags its command.")
        .Text("note", m => m.Note, (m, v) => m with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Axis = new Table<AxisDrive>(new AxisDrive())
        .Whole("order", a => a.Order, (a, v) => a with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("motor", a => a.Motor, (a, v) => a with { Motor = v }, "Id of the motor.", Depth.Build)
        .Choice("transmission", Words.Transmission, a => a.Transmission, (a, v) => a with { Transmission = v },
            "A toothed belt, a screw, or a gear on a turning axis (ratio 1 for none).", Depth.Build)
        .Quantity("ratio", Dimension.One, a => a.Ratio, (a, v) => a with { Ratio = v },
            "Motor turns for each turn of pulley, screw or axis; 1 where nothing is stated.")
        .Quantity("pulleyRadius", Dimension.Length, a => a.PulleyRadius, (a, v) => a with { PulleyRadius = v }, "Belt: pitch radius of its pulley.", Depth.Build)
        .Quantity("lead", Dimension.Length, a => a.Lead, (a, v) => a with { Lead = v }, "Screw: travel for each of its turns.", Depth.Build)
        .Quantity("inertia", Dimension.Inertia, a => a.Inertia, (a, v) => a with { Inertia = v },
            "Inertia of pulleys, screw, gear and brake as the motor's shaft sees it; none where nothing is stated.")
        .Quantity("efficiency", Dimension.One, a => a.Efficiency, (a, v) => a with { Efficiency = v },
            "Output over input power when the motor drives, above 0 up to 1; 1 where nothing is stated.")
        .Quantity("stiffness", Dimension.DriveStiffness, a => a.Stiffness, (a, v) => a with { Stiffness = v },
            "Stiffness between the motor's shaft and carriage or arm.")
        .Quantity("pretension", Dimension.Force, a => a.Pretension, (a, v) => a with { Pretension = v }, "Belt: pull in either strand at rest.", Depth.Build)
        .Quantity("largestStrandForce", Dimension.Force, a => a.LargestStrandForce, (a, v) => a with { LargestStrandForce = v },
            "Belt: largest pull in a strand.", Depth.Build)
        .Whole("teethInMesh", a => a.TeethInMesh, (a, v) => a with { TeethInMesh = v }, "Belt: teeth of the smaller pulley in mesh.", Depth.Build)
        .Quantity("largestToothForce", Dimension.Force, a => a.LargestToothForce, (a, v) => a with { LargestToothForce = v },
            "Belt: largest force on one tooth.", Depth.Build)
        .Quantity("largestForce", Dimension.DriveForce, a => a.LargestForce, (a, v) => a with { LargestForce = v },
            "Gear or screw: largest torque or force it may pass on, at the drive coordinate.", Depth.Build)
        .Quantity("largestSpeed", Dimension.DriveSpeed, a => a.LargestSpeed, (a, v) => a with { LargestSpeed = v },
            "Speed limit of this axis, in place of that of all chains.")
        .Quantity("largestAcceleration", Dimension.DriveAcceleration, a => a.LargestAcceleration, (a, v) => a with { LargestAcceleration = v },
            "Acceleration limit of this axis, in place of that of all chains.")
        .Quantity("largestJerk", Dimension.DriveJerk, a => a.LargestJerk, (a, v) => a with { LargestJerk = v },
            "Jerk limit of this axis, in place of that of all chains.")
        .Text("note", a => a.Note, (a, v) => a with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Supply = new Table<MotorSupply>(new MotorSupply())
        .Quantity("voltage", Dimension.Voltage, s => s.Voltage, (s, v) => s with { Voltage = v }, "Voltage without load.", Depth.Build)
        .Quantity("resistance", Dimension.Resistance, s => s.Resistance, (s, v) => s with { Resistance = v },
            "Resistance of source and cable up to the drives, there and back.", Depth.Build)
        .Quantity("largestPower", Dimension.Power, s => s.LargestPower, (s, v) => s with { LargestPower = v }, "Largest power the source delivers.", Depth.Build)
        .Quantity("capacitance", Dimension.Capacitance, s => s.Capacitance, (s, v) => s with { Capacitance = v }, "Capacitance at the drives.", Depth.Build)
        .Quantity("brakingVoltage", Dimension.Voltage, s => s.BrakingVoltage, (s, v) => s with { BrakingVoltage = v },
            "Voltage above which the brake chopper burns energy; there is none where nothing is stated.")
        .Quantity("brakingResistance", Dimension.Resistance, s => s.BrakingResistance, (s, v) => s with { BrakingResistance = v }, "Resistance of the braking resistor.")
        .Quantity("brakingPower", Dimension.Power, s => s.BrakingPower, (s, v) => s with { BrakingPower = v }, "Power the braking resistor takes without end.")
        .Quantity("brakingCurrent", Dimension.Current, s => s.BrakingCurrent, (s, v) => s with { BrakingCurrent = v }, "Largest current of the brake chopper.")
        .Quantity("brakingEnergy", Dimension.Energy, s => s.BrakingEnergy, (s, v) => s with { BrakingEnergy = v }, "Energy the braking resistor takes in one pulse.")
        .Quantity("continuousPower", Dimension.Power, s => s.ContinuousPower, (s, v) => s with { ContinuousPower = v }, "Power the source delivers without end; its largest where nothing is stated.")
        .Quantity("returnedShare", Dimension.One, s => s.ReturnedShare, (s, v) => s with { ReturnedShare = v },
            "Share of the energy of motion that comes back when all axes stop together, 0 to 1; 1, which is the worst, where nothing is stated.")
        .Quantity("lowestVoltage", Dimension.Voltage, s => s.LowestVoltage, (s, v) => s with { LowestVoltage = v }, "Voltage below which a drive switches off.", Depth.Build)
        .Quantity("highestVoltage", Dimension.Voltage, s => s.HighestVoltage, (s, v) => s with { HighestVoltage = v }, "Voltage above which a drive switches off.", Depth.Build)
        .Quantity("idlePower", Dimension.Power, s => s.IdlePower, (s, v) => s with { IdlePower = v }, "Power drawn by all drives at rest; none where nothing is stated.")
        .Quantity("ambient", Dimension.Temperature, s => s.Ambient, (s, v) => s with { Ambient = v }, "Temperature around the motors.", Depth.Build)
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Drives = new Table<Cells.Drives>(new Cells.Drives())
        .Quantity("largestSpeed", Dimension.DriveSpeed, d => d.LargestSpeed, (d, v) => d with { LargestSpeed = v },
            "Speed limit of a chain's drive coordinate.", Depth.Build)
        .Quantity("largestAcceleration", Dimension.DriveAcceleration, d => d.LargestAcceleration, (d, v) => d with { LargestAcceleration = v },
            "Acceleration limit of a chain's drive coordinate.", Depth.Build)
        .Quantity("largestJerk", Dimension.DriveJerk, d => d.LargestJerk, (d, v) => d with { LargestJerk = v },
            "Jerk limit of a chain's drive coordinate.", Depth.Build)
        .Keyed("motors", Motor, d => d.Motors, (d, v) => d with { Motors = v }, "The kinds of motor that are used, as their data sheets state them.")
        .Section("common", Axis, d => d.Common, (d, v) => d with { Common = v }, "What the drives of all chains share; an axis's own field overrides it.")
        .Keyed("axes", Axis, d => d.Axes, (d, v) => d with { Axes = v }, "The axes, by chain id, or \"rotary\" or \"linear\".")
        .Section("supply", Supply, d => d.Supply, (d, v) => d with { Supply = v }, "The supply of the motors.")
        .Text("note", d => d.Note, (d, v) => d with { Note = v }, "Anything worth keeping.")
        .Done();
}

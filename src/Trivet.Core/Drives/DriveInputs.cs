using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Drives;

/// <summary>What became of reading a drive. <see cref="Drive"/> is null while a field is missing (the reading lists it) or a problem stands.</summary>
public sealed record DriveRead(Drive? Drive, ImmutableArray<Contradiction> Problems);

/// <summary>The limits of an axis at its drive coordinate, as stated for it or for all chains; infinite where not stated.</summary>
/// <param name="Speed">m/s or rad/s.</param>
/// <param name="Acceleration">m/s² or rad/s².</param>
/// <param name="Jerk">m/s³ or rad/s³.</param>
public readonly record struct AxisLimits(double Speed, double Acceleration, double Jerk);

/// <summary>
/// Reads the drives into computing form. Each concern is its own function, so that a finding declares only the fields that could move it.
/// <para>
/// Motor angle per drive coordinate, with ratio i: a belt along a straight axis, i / pulley radius; a screw, 2π·i / lead; a gear or a belt to a
/// turning axis, i. A screw does not turn an axis, and a gear alone does not move one along; a belt does either. The belt of a turning axis
/// runs on a pulley of the stated radius on the axis itself.
/// </para>
/// Defaults: ratio 1, transmission without inertia, efficiency 1. Nothing else is assumed.
/// </summary>
public static class DriveInputs
{
    /// <summary>The axes that have drives: the chains in their order, then "rotary" and "linear" where fitted.</summary>
    public static ImmutableArray<string> Axes(Robot robot, Reading reading)
    {
        reading.Used("/robot/chains", string.Join('\n', robot.Chains.Keys));
        foreach (var (id, chain) in robot.Chains) reading.Used($"/robot/chains/{id}/order", chain.Order);
        bool rotary = reading.Or(robot.Rotary.Fitted, "/robot/rotary/fitted", false), linear = reading.Or(robot.LinearAxis.Fitted, "/robot/linearAxis/fitted", false);
        ImmutableArray<string> axes = [.. robot.Chains.InOrder().Select(c => c.Key)];
        if (rotary) axes = axes.Add("rotary");
        return linear ? axes.Add("linear") : axes;
    }

    /// <summary>Motor and transmission of an axis: all that torque needs.</summary>
    /// <param name="axis">Chain id, "rotary" or "linear".</param>
    public static DriveRead Read(Cell cell, string axis, Reading reading)
    {
        var problems = ImmutableArray.CreateBuilder<Contradiction>();
        var fields = new AxisReading(cell, axis, reading);
        bool turns = Turns(cell, fields, axis, reading);
        double gearing = Gearing(fields, turns, problems), transmission = TransmissionInertia(fields, problems);
        double efficiency = fields.Or("efficiency", d => d.Efficiency, 1);
        if (!(efficiency > 0)) problems.Add(At("efficiency", d => d.Efficiency is not null, DriveReasons.NotPositive));
        if (efficiency > 1) problems.Add(At("efficiency", d => d.Efficiency is not null, DriveReasons.EfficiencyAboveOne));
        if (Motor(cell, fields, reading, problems) is not var (id, motor)) return new(null, problems.ToImmutable());

        var kind = reading.Need(motor.Kind, $"{MotorPointer(id)}/kind", MotorKind.Servo);
        double rotor = RotorInertia(id, motor, reading, problems);
        var curve = Curve(id, motor, reading, problems);
        return !reading.Complete || problems.Count > 0 || curve is null
            ? new(null, problems.ToImmutable())
            : new(new(axis, turns, kind, curve, gearing, rotor + transmission, efficiency), []);

        Contradiction At(string name, Func<AxisDrive, bool> stated, Reason reason) => new(fields.PointerOf(name, stated), reason);
    }

    /// <summary>
    /// Inertia of rotor and transmission as felt at the drive coordinate, kg or kg·m²: what dynamics needs of a drive. Not a number while
    /// something is missing or impossible.
    /// </summary>
    public static double ReflectedInertia(Cell cell, string axis, Reading reading)
    {
        var problems = ImmutableArray.CreateBuilder<Contradiction>();
        var fields = new AxisReading(cell, axis, reading);
        double gearing = Gearing(fields, Turns(cell, fields, axis, reading), problems), transmission = TransmissionInertia(fields, problems);
        if (Motor(cell, fields, reading, problems) is not var (id, motor)) return double.NaN;
        double rotor = RotorInertia(id, motor, reading, problems);
        return problems.Count > 0 ? double.NaN : (rotor + transmission) * gearing * gearing;
    }

    /// <summary>Speed, acceleration and jerk limit of an axis. The rotary and the linear axis have their own only.</summary>
    public static AxisLimits Limits(Cell cell, string axis, Reading reading)
    {
        var own = cell.Drives.Axes.GetValueOrDefault(axis) ?? new();
        bool chain = axis is not ("rotary" or "linear");
        return new(
            Limit("largestSpeed", own.LargestSpeed, cell.Drives.LargestSpeed),
            Limit("largestAcceleration", own.LargestAcceleration, cell.Drives.LargestAcceleration),
            Limit("largestJerk", own.LargestJerk, cell.Drives.LargestJerk));

        double Limit(string name, double? mine, double? all)
        {
            reading.Used($"/drives/axes/{axis}/{name}", mine);
            if (chain) reading.Used($"/drives/{name}", all);
            return mine ?? (chain ? all : null) ?? double.PositiveInfinity;
        }
    }

    /// <summary>The motor an axis names, with its id; null while that is missing or there is no such motor.</summary>
    internal static (string Id, Motor Motor)? Motor(Cell cell, AxisReading fields, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        if (fields.Need("motor", d => d.Motor) is not { } id) return null;
        var motors = cell.Drives.Motors;
        reading.Used("/drives/motors", string.Join('\n', motors.Keys));
        if (motors.TryGetValue(id, out var motor)) return (id, motor);
        problems.Add(new(
            fields.PointerOf("motor", d => d.Motor is not null),
            motors.IsEmpty ? DriveReasons.NoMotors : DriveReasons.NoSuchMotor.Naming([.. motors.Keys.Select(MotorPointer)])));
        return null;
    }

    internal static string MotorPointer(string id) => $"/drives/motors/{id}";

    private static bool Turns(Cell cell, AxisReading fields, string axis, Reading reading) =>
        fields.IsChain ? reading.Need(cell.Robot.Family, "/robot/family", RobotFamily.RailDelta) == RobotFamily.CrankDelta : axis == "rotary";

    /// <summary>Motor angle per drive coordinate.</summary>
    internal static double Gearing(AxisReading fields, bool turns, ImmutableArray<Contradiction>.Builder problems)
    {
        var kind = fields.Need("transmission", d => d.Transmission, TransmissionKind.Belt);
        double ratio = Positive("ratio", d => d.Ratio, fields.Or("ratio", d => d.Ratio, 1));
        switch (kind)
        {
            case TransmissionKind.Screw when turns:
                problems.Add(new(fields.PointerOf("transmission", d => d.Transmission is not null), DriveReasons.ScrewTurns));
                return double.NaN;
            case TransmissionKind.Gear when !turns:
                problems.Add(new(fields.PointerOf("transmission", d => d.Transmission is not null), DriveReasons.GearIsStraight));
                return double.NaN;
            case TransmissionKind.Screw:
                return Math.Tau * ratio / Positive("lead", d => d.Lead, fields.Need("lead", d => d.Lead));
            case TransmissionKind.Belt when !turns:
                return ratio / Positive("pulleyRadius", d => d.PulleyRadius, fields.Need("pulleyRadius", d => d.PulleyRadius));
            default:
                return ratio;
        }

        double Positive(string name, Func<AxisDrive, double?> field, double value)
        {
            if (value <= 0) problems.Add(new(fields.PointerOf(name, d => field(d) is not null), DriveReasons.NotPositive));
            return value;
        }
    }

    private static double TransmissionInertia(AxisReading fields, ImmutableArray<Contradiction>.Builder problems)
    {
        double inertia = fields.Or("inertia", d => d.Inertia, 0);
        if (inertia < 0) problems.Add(new(fields.PointerOf("inertia", d => d.Inertia is not null), DriveReasons.Negative));
        return inertia;
    }

    private static double RotorInertia(string id, Motor motor, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        double inertia = reading.Need(motor.RotorInertia, $"{MotorPointer(id)}/rotorInertia");
        if (inertia < 0) problems.Add(new($"{MotorPointer(id)}/rotorInertia", DriveReasons.Negative));
        return inertia;
    }

    private static TorqueCurve? Curve(string id, Motor motor, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        string at = $"{MotorPointer(id)}/curve";
        double voltage = reading.Need(motor.CurveVoltage, $"{MotorPointer(id)}/curveVoltage");
        if (voltage <= 0) problems.Add(new($"{MotorPointer(id)}/curveVoltage", DriveReasons.NotPositive));
        reading.Used(at, string.Join('\n', motor.Curve.Keys));
        if (motor.Curve.IsEmpty) reading.Missing(at);
        if (motor.Curve.Count == 1) problems.Add(new(at, DriveReasons.OneCurvePoint));

        var points = motor.Curve.Select(p => (
            At: $"{at}/{p.Key}", Speed: reading.Need(p.Value.Speed, $"{at}/{p.Key}/speed"), Torque: reading.Need(p.Value.Torque, $"{at}/{p.Key}/torque"))).ToArray();
        if (points.Any(p => double.IsNaN(p.Speed + p.Torque))) return null;
        // Ties fall back on the id, so that the same curve always gives the same problems.
        points = [.. points.OrderBy(p => p.Speed).ThenBy(p => p.At, StringComparer.Ordinal)];
        int before = problems.Count;
        for (int i = 0; i < points.Length; i++)
        {
            if (points[i].Speed < 0) problems.Add(new($"{points[i].At}/speed", DriveReasons.Negative));
            if (points[i].Torque < 0) problems.Add(new($"{points[i].At}/torque", DriveReasons.Negative));
            if (i == 0) continue;
            if (points[i].Speed == points[i - 1].Speed) problems.Add(new($"{points[i].At}/speed", DriveReasons.SameCurveSpeed.Naming(points[i - 1].At)));
            else if (points[i].Torque > points[i - 1].Torque) problems.Add(new($"{points[i].At}/torque", DriveReasons.CurveRises.Naming(points[i - 1].At)));
        }

        if (points.Length < 2 || problems.Count > before || !(voltage > 0)) return null;
        if (!(points[0].Torque > 0))
        {
            problems.Add(new($"{points[0].At}/torque", DriveReasons.NotPositive));
            return null;
        }

        double[] speeds = [.. points.Select(p => p.Speed)], torques = [.. points.Select(p => p.Torque)];
        return speeds[0] > 0 ? new([0, .. speeds], [torques[0], .. torques], voltage) : new([.. speeds], [.. torques], voltage);
    }
}

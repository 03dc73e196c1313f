using Trivet.Cells;
using Trivet.Testing;

namespace Trivet.Core.Tests.Drives;

/// <summary>Invented cells with drives.</summary>
internal static class DrivenCells
{
    /// <summary>Three rails on belts and a turn on a stepper motor.</summary>
    public static Cell Rail { get; } = ReachCells.Rail with
    {
        Drives = new()
        {
            LargestSpeed = 2,
            LargestAcceleration = 20,
            LargestJerk = 800,
            Motors = Keyed.Empty<Motor>()
                .Add("rail", new()
                {
                    Kind = MotorKind.Servo, Curve = Curve((0, 2.4), (300, 2.4), (450, 0.6)), CurveVoltage = 48, ContinuousTorque = 0.8, RotorInertia = 3e-5,
                    ThermalTimeConstant = 1000, TemperatureRise = 80, LargestTemperature = 130, TorqueConstant = 0.1, Resistance = 0.35,
                    CountsPerTurn = 4000, FollowingStiffness = 300,
                })
                .Add("turn", new()
                {
                    Kind = MotorKind.Stepper, Curve = Curve((0, 0.4), (60, 0.3), (180, 0.08)), CurveVoltage = 48, ContinuousTorque = 0.3, RotorInertia = 5e-6,
                    ThermalTimeConstant = 900, TemperatureRise = 70, LargestTemperature = 120, TorqueConstant = 0.24, Resistance = 1.2,
                    StepsPerTurn = 200, CountsPerTurn = 36000,
                }),
            Common = new()
            {
                Motor = "rail", Transmission = TransmissionKind.Belt, PulleyRadius = 0.04 / Math.Tau, Inertia = 1e-5, Efficiency = 0.95, Stiffness = 2.5e5,
                Pretension = 160, LargestStrandForce = 480, TeethInMesh = 10, LargestToothForce = 45,
            },
            Axes = Keyed.Empty<AxisDrive>()
                .Add("rotary", new() { Motor = "turn", Transmission = TransmissionKind.Gear, Stiffness = 200, LargestForce = 0.6 }),
            Supply = new()
            {
                Voltage = 48, Resistance = 0.1, LargestPower = 500, Capacitance = 0.01, BrakingVoltage = 56, BrakingResistance = 8, BrakingPower = 50,
                LowestVoltage = 38, HighestVoltage = 60, IdlePower = 15, Ambient = 35,
            },
        },
    };

    public static System.Collections.Immutable.ImmutableSortedDictionary<string, TorquePoint> Curve(params ReadOnlySpan<(double Speed, double Torque)> points)
    {
        var curve = Keyed.Empty<TorquePoint>();
        foreach (var (speed, torque) in points) curve = curve.Add($"p{curve.Count}", new() { Speed = speed, Torque = torque });
        return curve;
    }

    /// <summary>The same cell with other fields of the drives all chains share.</summary>
    public static Cell WithCommon(this Cell cell, Func<AxisDrive, AxisDrive> change) =>
        cell with { Drives = cell.Drives with { Common = change(cell.Drives.Common) } };

    public static Cell WithMotor(this Cell cell, string id, Func<Motor, Motor> change) =>
        cell with { Drives = cell.Drives with { Motors = cell.Drives.Motors.SetItem(id, change(cell.Drives.Motors[id])) } };

    public static Cell WithSupply(this Cell cell, Func<MotorSupply, MotorSupply> change) =>
        cell with { Drives = cell.Drives with { Supply = change(cell.Drives.Supply) } };
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Findings;
using Trivet.Kinematics;

namespace Trivet.Settings;

/// <summary>Reads what a parameter holds of one axis: travel as the controller counts it, limits, steps, gearing, currents.</summary>
internal sealed class AxisQuantity(Cell cell, string axis, string at, Reading reading, ImmutableArray<Contradiction>.Builder wrong)
{
    private readonly bool _isChain = axis is not ("rotary" or "linear");

    public HeldQuantity? Read(SettingQuantity quantity)
    {
        bool turns = _isChain ? reading.Need(cell.Robot.Family, "/robot/family", RobotFamily.RailDelta) == RobotFamily.CrankDelta : axis == "rotary";
        string length = turns ? "rad" : "m";
        var shown = ControllerAxis.Of(cell.Controller, axis, turns, reading);
        SettingScale reads = new(shown.Reversed, false, shown.ZeroAt, shown.PerUnit), counts = new(false, false, 0, shown.PerUnit), plain = new(false, false, 0, 1), current = new(false, false, 0, double.NaN);
        switch (quantity)
        {
            case SettingQuantity.SmallestReading or SettingQuantity.LargestReading:
                var (from, fromAt, to, toAt) = Travel();
                bool least = quantity == SettingQuantity.SmallestReading;
                // Counted the other way, the end of the travel is where the controller shows least.
                return new(reversed => least == reversed ? to : from, reversed => least == reversed ? toAt : fromAt, length, reads, Math.Abs(to - from));
            case SettingQuantity.ReadingAtHome:
                double travel = double.NaN;
                if (!_isChain)
                {
                    var (begin, _, end, _) = Travel();
                    travel = Math.Abs(end - begin);
                }
                return new(_ => 0, _ => Mapped("zeroAt"), length, reads, travel);
            case SettingQuantity.Direction:
                return new(_ => shown.Reversed ? -1 : 1, _ => Mapped("reversed"), "1", plain);
            case SettingQuantity.AxisSpeed or SettingQuantity.AxisAcceleration or SettingQuantity.AxisJerk:
                var limits = DriveInputs.Limits(cell, axis, reading);
                var (limit, name, per) = quantity switch
                {
                    SettingQuantity.AxisSpeed => (limits.Speed, "largestSpeed", "/s"),
                    SettingQuantity.AxisAcceleration => (limits.Acceleration, "largestAcceleration", "/s²"),
                    _ => (limits.Jerk, "largestJerk", "/s³"),
                };
                var own = cell.Drives.Axes.GetValueOrDefault(axis);
                bool stated = !_isChain || (quantity switch { SettingQuantity.AxisSpeed => own?.LargestSpeed, SettingQuantity.AxisAcceleration => own?.LargestAcceleration, _ => own?.LargestJerk }) is not null;
                string field = stated ? $"/drives/axes/{axis}/{name}" : $"/drives/{name}";
                if (!double.IsFinite(limit)) reading.Missing(field);
                return new(_ => limit, _ => field, length + per, counts);
            case SettingQuantity.DriveStep:
                var (step, stepAt) = DriveStep();
                return new(_ => step, _ => stepAt, length, counts);
            case SettingQuantity.Ratio:
                var drive = new AxisReading(cell, axis, reading);
                double ratio = drive.Or("ratio", d => d.Ratio, 1);
                return new(_ => ratio, _ => drive.PointerOf("ratio", d => d.Ratio is not null), "1", plain);
            case SettingQuantity.TravelPerTurn:
                // What is impossible of a drive, the drives' own findings say.
                var problems = ImmutableArray.CreateBuilder<Contradiction>();
                double gearing = DriveInputs.Gearing(new(cell, axis, reading), turns, problems);
                return problems.Count > 0 || !reading.Complete ? null : new(_ => Math.Tau / gearing, _ => "", length, counts);
            default:
                return OfMotor(quantity, plain, current);
        }
    }

    private HeldQuantity? OfMotor(SettingQuantity quantity, SettingScale plain, SettingScale current)
    {
        if (DriveInputs.Motor(cell, new(cell, axis, reading), reading, ImmutableArray.CreateBuilder<Contradiction>()) is not var (id, motor)) return null;
        string of = DriveInputs.MotorPointer(id);
        if (quantity == SettingQuantity.CountsPerTurn)
        {
            double counts = reading.Need(motor.CountsPerTurn, of + "/countsPerTurn", 0);
            return new(_ => counts, _ => of + "/countsPerTurn", "1", plain);
        }
        double constant = reading.Need(motor.TorqueConstant, of + "/torqueConstant"), torque;
        if (quantity == SettingQuantity.ContinuousCurrent) torque = reading.Need(motor.ContinuousTorque, of + "/continuousTorque");
        else
        {
            reading.Used(of + "/curve", string.Join('\n', motor.Curve.Keys));
            if (motor.Curve.IsEmpty) reading.Missing(of + "/curve");
            torque = motor.Curve.Select(p => reading.Need(p.Value.Torque, $"{of}/curve/{p.Key}/torque")).Append(0).Max();
        }
        return new(_ => torque / constant, _ => "", "A", current);
    }

    private (double From, string FromAt, double To, string ToAt) Travel()
    {
        switch (axis)
        {
            case "rotary":
                return (reading.Need(cell.Robot.Rotary.TravelFrom, "/robot/rotary/travelFrom"), "/robot/rotary/travelFrom", reading.Need(cell.Robot.Rotary.TravelTo, "/robot/rotary/travelTo"), "/robot/rotary/travelTo");
            case "linear":
                return (reading.Need(cell.Robot.LinearAxis.TravelFrom, "/robot/linearAxis/travelFrom"), "/robot/linearAxis/travelFrom",
                    reading.Need(cell.Robot.LinearAxis.TravelTo, "/robot/linearAxis/travelTo"), "/robot/linearAxis/travelTo");
            default:
                var chain = new ChainReading(cell.Robot, axis, cell.Robot.Chains[axis], reading);
                return (chain.Need("travelFrom", c => c.TravelFrom), chain.PointerOf("travelFrom", c => c.TravelFrom), chain.Need("travelTo", c => c.TravelTo), chain.PointerOf("travelTo", c => c.TravelTo));
        }
    }

    private (double Step, string At) DriveStep()
    {
        switch (axis)
        {
            case "rotary":
                return (reading.Need(cell.Robot.Rotary.DriveStep, "/robot/rotary/driveStep"), "/robot/rotary/driveStep");
            case "linear":
                wrong.Add(new(at + "/of", SettingReasons.NotAxis));
                return (double.NaN, "");
            default:
                var chain = new ChainReading(cell.Robot, axis, cell.Robot.Chains[axis], reading);
                return (chain.Need("driveStep", c => c.DriveStep), chain.PointerOf("driveStep", c => c.DriveStep));
        }
    }

    /// <summary>A field of the controller's axis that drives this one.</summary>
    private string Mapped(string name) => cell.Controller.Axes.InOrder().FirstOrDefault(a => a.Value.Drives == axis).Key is { } id ? $"/controller/axes/{id}/{name}" : "/controller/axes";
}

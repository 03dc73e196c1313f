using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Stopping;

/// <summary>A device by which the cell is stopped or isolated, as the description has it.</summary>
/// <param name="Where">What sets it off, in the words of the description; empty where it does not say.</param>
/// <param name="Ramp">Seconds until everything stands; not a number where not stated.</param>
/// <param name="Torque">Seconds of torque after standstill; zero where not stated.</param>
/// <param name="Isolates">What it takes away, in the words of the description; empty where it does not say.</param>
/// <param name="AirOff">Null where the description does not say.</param>
public sealed record SafeDevice(string Name, string Where, StopCategory? Category, double Ramp, double Torque, string Isolates, bool? AirOff);

/// <summary>Something that keeps a charge after it was switched off.</summary>
/// <param name="Seconds">Not a number where the description does not say.</param>
public sealed record Discharging(string Name, double Seconds);

/// <summary>
/// How this cell is made safe: what to press, what that takes away, what stays live and for how long, and what then comes down. What the description does not say stays empty or not a number, so that whoever
/// reads it is told the general rule. An aid: it knows the plan, not the machine.
/// </summary>
/// <param name="Stops">Emergency stops in their order.</param>
/// <param name="Isolators">What keeps it from starting while people are at work in it.</param>
/// <param name="Sources">Supplies of the cabinet by name.</param>
/// <param name="AtStop">At the emergency stop that keeps its torque for the shortest time; null where none states its category, or the robot is not described far enough.</param>
/// <param name="WithoutSupply">When the supply fails or is switched off: torque goes at once.</param>
/// <param name="Turns">The chains' coordinates are angles: their sinking is in radians, else in metres.</param>
/// <param name="Grips">It has a gripper.</param>
/// <param name="GripHolds">That keeps its part without air and supply; null where the description does not say.</param>
public sealed record MakingSafe(
    ImmutableArray<SafeDevice> Stops, ImmutableArray<SafeDevice> Isolators, ImmutableArray<string> Sources, ImmutableArray<Discharging> Charges, StopFall? AtStop, StopFall? WithoutSupply, bool Grips, bool? GripHolds, bool Turns)
{
    /// <summary>Seconds after which nothing has a charge; not a number where one does not say, or nothing is described.</summary>
    public double Longest => Charges.IsEmpty || Charges.Any(c => double.IsNaN(c.Seconds)) ? double.NaN : Charges.Max(c => c.Seconds);

    public static MakingSafe Of(Cell cell)
    {
        var stops = Functions(SafetyKind.EmergencyStop);
        var places = StopStage.Places(cell);
        // Of one that does not say how it stops nothing is told: the reader counts on every chain coming down.
        var worst = stops.Any(f => f.StopCategory is null) ? null : stops.OrderBy(f => f.StopCategory).ThenBy(f => f.StopCategory == StopCategory.One ? f.TorqueTime ?? 0 : 0).FirstOrDefault();
        return new(
            [.. stops.Select(Device)], [.. Functions(SafetyKind.UnexpectedStart).Select(Device)],
            [.. cell.Cabinet.Sources.InOrder().Select(s => Named(s.Value.Name, s.Key))],
            [.. cell.Cabinet.Modules.InOrder().Where(m => m.Value.DischargeTime is not null || m.Value.MotorBranch is not null).Select(m => new Discharging(Named(m.Value.Name, m.Key), m.Value.DischargeTime ?? double.NaN))],
            worst is null ? null : StopFall.Of(cell, worst, places, new Reading()),
            StopFall.Of(cell, new() { StopCategory = StopCategory.Zero }, places, new Reading()),
            cell.Tool.Vacuum.Cups is not null || cell.Tool.Fingers.Count is not null, cell.Stopping.GripHolds, cell.Robot.Family == RobotFamily.CrankDelta);

        ImmutableArray<SafetyFunction> Functions(SafetyKind kind) => [.. cell.Stopping.Functions.InOrder().Where(f => f.Value.Kind == kind).Select(f => f.Value with { Name = Named(f.Value.Name, f.Key) })];

        static SafeDevice Device(SafetyFunction f) =>
            new(f.Name!, f.Trigger?.Trim() ?? "", f.StopCategory, f.RampTime ?? double.NaN, f.TorqueTime ?? 0, f.Isolates?.Trim() ?? "", f.AirOff);

        static string Named(string? name, string id) => string.IsNullOrWhiteSpace(name) ? id : name;
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>The controller's motion law as it is set.</summary>
/// <param name="Speed">Along the path, m/s.</param>
/// <param name="Acceleration">Along the path, m/s².</param>
/// <param name="Jerk">Along the path, m/s³; infinite for a trapezoid.</param>
/// <param name="Comfort">Fraction of every limit kept in reserve, from 0, below 1.</param>
public sealed record ControllerSettings(ProfileKind Profile, ProfileAlong Along, double Speed, double Acceleration, double Jerk, double Blend, double Comfort)
{
    private const string At = "/motion/settings";

    /// <summary>The reserve where none is stated (common practice, no source).</summary>
    public const double UsualComfort = 0.1;

    /// <summary>The settings of a cell for one cycle. Null while something is missing or impossible.</summary>
    public static ControllerSettings? Read(Cell cell, string cycle, Reading reading, ImmutableArray<Contradiction>.Builder wrong)
    {
        var s = cell.Motion.Settings;
        var own = cell.Motion.Cycles[cycle];
        var profile = reading.Need(s.Profile, $"{At}/profile", ProfileKind.SevenPhase);
        var along = reading.Need(s.Along, $"{At}/along", ProfileAlong.Path);
        double speed = Positive(s.PathSpeed, "pathSpeed"), acceleration = Positive(s.PathAcceleration, "pathAcceleration");
        double jerk = profile == ProfileKind.SevenPhase ? Positive(s.PathJerk, "pathJerk") : double.PositiveInfinity;
        reading.Used($"{CyclePlan.Pointer(cycle)}/blend", own.Blend);
        double blend = own.Blend ?? reading.Need(s.Blend, $"{At}/blend");
        double comfort = reading.Or(s.Comfort, $"{At}/comfort", UsualComfort);
        if (comfort < 0) wrong.Add(new($"{At}/comfort", MotionReasons.Negative));
        if (comfort >= 1) wrong.Add(new($"{At}/comfort", MotionReasons.ComfortTooLarge));
        return reading.Complete && wrong.Count == 0 ? new(profile, along, speed, acceleration, jerk, blend, comfort) : null;

        double Positive(double? value, string name)
        {
            double v = reading.Need(value, $"{At}/{name}");
            if (v <= 0) wrong.Add(new($"{At}/{name}", MotionReasons.NotPositive));
            return v;
        }
    }
}

/// <summary>What one axis may do, at its drive coordinate; infinite where nothing is stated.</summary>
/// <param name="Axis">Chain id, or "rotary".</param>
/// <param name="Turns">The coordinate is an angle.</param>
/// <param name="Limits">Speed, acceleration, jerk.</param>
/// <param name="Force">What motor and transmission bring against speed at the supply's voltage without load; null where not described.</param>
/// <param name="RodForce">Largest pull or push in one rod of the chain, newtons; infinite where not stated.</param>
public sealed record AxisCapacity(string Axis, bool Turns, AxisLimits Limits, ForceEnvelope? Force, double RodForce)
{
    public const string Rotary = "rotary";

    /// <summary>All axes of the robot that move in a cycle: the chains in their order, then the rotary axis.</summary>
    public static ImmutableArray<AxisCapacity> Read(Cell cell, Reading reading)
    {
        var turns = reading.Need(cell.Robot.Family, "/robot/family", RobotFamily.RailDelta) == RobotFamily.CrankDelta;
        double? voltage = cell.Drives.Supply.Voltage;
        return [.. DriveInputs.Axes(cell.Robot, reading).Where(a => a != "linear").Select(axis =>
        {
            // Drives that are not described yet limit nothing; what is missing there is the drives' matter.
            var drives = new Reading();
            var drive = DriveInputs.Read(cell, axis, drives).Drive;
            reading.Used(drives);
            reading.Used("/drives/supply/voltage", voltage);
            return new AxisCapacity(axis, axis == Rotary || turns, DriveInputs.Limits(cell, axis, reading),
                drive is null ? null : drive.Envelope(voltage ?? drive.Curve.Voltage, 0), axis == Rotary ? double.PositiveInfinity : Rod(axis));
        })];

        double Rod(string chain)
        {
            double? own = cell.Robot.Chains[chain].RodForceLimit, common = cell.Robot.Common.RodForceLimit;
            reading.Used($"/robot/chains/{chain}/rodForceLimit", own);
            reading.Used("/robot/common/rodForceLimit", common);
            return own ?? common ?? double.PositiveInfinity;
        }
    }
}

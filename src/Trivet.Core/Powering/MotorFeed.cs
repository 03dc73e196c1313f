using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Findings;
using Trivet.Motion;

namespace Trivet.Powering;

/// <summary>The supply of the motors under one cycle: the time-aligned power of all axes, and all of them stopping together.</summary>
/// <param name="Run">The supply over the repeated cycle.</param>
/// <param name="Continuous">Power that it gives without end, W.</param>
/// <param name="LargestBraking">Current of the chopper, A; not a number where not stated. So for the resistor's pulse, J.</param>
public sealed record MotorFeed(
    string Cycle, Supply Supply, SupplyRun Run, AllStop Stop, double Continuous, double HighestVoltage, double LargestBraking, double LargestPulse, double BrakingPower)
{
    /// <summary>Ohms below which the chopper would have to carry more than it may, at its threshold; not a number where that is not stated.</summary>
    public double LeastOhms => Supply.BrakingVoltage / LargestBraking;

    /// <summary>Ohms above which the resistor can not take the beginning of the stop at the highest voltage that drives bear.</summary>
    public double MostOhms => HighestVoltage * HighestVoltage / Stop.PeakPower;

    /// <summary>Stops in an hour that the resistor bears besides the cycle, as long as it cools between.</summary>
    public double StopsPerHour => (BrakingPower - Run.MeanBrakingPower) * 3600 / Stop.Braking;

    /// <summary>Null where the drives, their supply or the cycle are not described far enough: those who need them ask for it.</summary>
    public static MotorFeed? Of(Cell cell, TimedCycle cycle, DriveCase drives, Reading reading)
    {
        foreach (var (pointer, value) in drives.Used) reading.Used(pointer, value);
        var s = cell.Drives.Supply;
        const string at = "/drives/supply";
        double factor = FrameRun.LoadFactor(cell, reading), share = reading.Or(s.ReturnedShare, at + "/returnedShare", 1);
        reading.Used(at + "/highestVoltage", s.HighestVoltage);
        double pulse = reading.Or(s.BrakingEnergy, at + "/brakingEnergy", double.NaN), current = reading.Or(s.BrakingCurrent, at + "/brakingCurrent", double.NaN);
        double power = reading.Or(s.BrakingPower, at + "/brakingPower", double.NaN);
        reading.Used(at + "/continuousPower", s.ContinuousPower);
        if (drives.Supply?.Supply.Value is not { } supply || cycle.Trace is not { } trace) return null;
        if (DriveChecks.Judge(drives, trace.Series).Supply is not { Usable: true } run) return null;
        var stop = AllStop.Of(cycle, supply, Math.Max(run.Highest.Value, supply.Voltage), Slowing, factor, share);
        return stop is null ? null : new(cycle.Id, supply, run, stop, s.ContinuousPower ?? supply.LargestPower, s.HighestVoltage ?? double.NaN, current, pulse, power);

        // Where the description sets no limit the motion's own is taken.
        double Slowing(string axis)
        {
            double stated = DriveInputs.Limits(cell, axis, reading).Acceleration;
            return double.IsFinite(stated) ? stated : trace.Series.Axes.Where(a => a.Axis == axis).SelectMany(a => a.Acceleration).Select(Math.Abs).DefaultIfEmpty(double.NaN).Max();
        }
    }
}

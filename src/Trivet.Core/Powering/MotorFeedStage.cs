using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Findings;
using Trivet.Motion;

namespace Trivet.Powering;

/// <summary>What the supply of the motors has to say of a cell, cycle by cycle. It waits while an edit is previewed.</summary>
public static class MotorFeedStage
{
    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles) => Of(cell, cycles, DriveCase.Of(cell));

    /// <param name="drives">The drives of the cell, where another trade has read them already.</param>
    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles, DriveCase drives)
    {
        var tasks = ImmutableArray.CreateBuilder<StageTask>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        if (cycles.IsEmpty) return new([], [], []);
        foreach (var cycle in cycles)
        {
            var subject = new Subject(CyclePlan.Pointer(cycle.Id));
            // Motion and drives ask for what they lack.
            if (cycle.Input?.Loaded is null || !drives.VoltageKnown || cell.Drives.Supply.HighestVoltage is null)
            {
                coverage.Add(new(PowerRules.StopVoltage, subject, PowerReasons.NoMotorFeed));
                continue;
            }
            if (cell.Drives.Supply.BrakingVoltage is null || cell.Drives.Supply is { BrakingEnergy: null, BrakingCurrent: null })
                coverage.Add(new(PowerRules.BrakeEnergy, subject, PowerReasons.NoBrakeLimit));
            var reading = cycle.Reading();
            // Reads what the proof will, and computes nothing yet.
            foreach (var (pointer, value) in drives.Used) reading.Used(pointer, value);
            Limits(cell, reading);
            tasks.Add(new($"motor-feed:{cycle.Id}", reading.Key, () => [new Unjudged(PowerRules.StopVoltage, subject, reading.Inputs, OpenReason.NotComputed, [])], _ =>
                MotorFeed.Of(cell, cycle, drives, new()) is { } feed ? [.. Judge(feed, subject, reading.Inputs)] : [new Unjudged(PowerRules.StopVoltage, subject, reading.Inputs, OpenReason.Failed, [], PowerReasons.NoMotorFeed)]));
        }
        return new([], coverage.ToImmutable(), tasks.ToImmutable());
    }

    private static void Limits(Cell cell, Reading reading)
    {
        var s = cell.Drives.Supply;
        FrameRun.LoadFactor(cell, reading);
        foreach (string axis in DriveInputs.Axes(cell.Robot, reading)) DriveInputs.Limits(cell, axis, reading);
        foreach (var (name, value) in new[] { ("returnedShare", s.ReturnedShare), ("highestVoltage", s.HighestVoltage), ("brakingEnergy", s.BrakingEnergy), ("brakingCurrent", s.BrakingCurrent), ("brakingPower", s.BrakingPower), ("continuousPower", s.ContinuousPower) })
            reading.Used("/drives/supply/" + name, value);
    }

    private static IEnumerable<Finding> Judge(MotorFeed feed, Subject subject, ImmutableArray<string> inputs)
    {
        const string at = "/drives/supply/";
        yield return new Judged(PowerRules.MotorContinuous, subject, inputs, feed.Run.MeanSourcePower,
            Limit.AtMost(feed.Continuous / PowerChecks.Reserve, new(SourceKind.CommonPractice, "")), Assurance.Sampled);
        yield return new Judged(PowerRules.StopVoltage, subject, inputs, feed.Stop.Highest, Limit.AtMost(feed.HighestVoltage, new(SourceKind.Cell, at + "highestVoltage")), Assurance.Estimated)
        {
            WorstTime = feed.Stop.At,
        };
        if (!feed.Supply.HasChopper) yield break;
        if (!double.IsNaN(feed.LargestPulse))
            yield return new Judged(PowerRules.BrakeEnergy, subject, inputs, feed.Stop.Braking, Limit.AtMost(feed.LargestPulse, new(SourceKind.Cell, at + "brakingEnergy")), Assurance.Estimated);
        if (!double.IsNaN(feed.LargestBraking))
            yield return new Judged(PowerRules.BrakeCurrent, subject, inputs, Math.Max(feed.Stop.Highest, feed.Supply.BrakingVoltage) / feed.Supply.BrakingResistance,
                Limit.AtMost(feed.LargestBraking, new(SourceKind.Cell, at + "brakingCurrent")), Assurance.Estimated);
    }
}

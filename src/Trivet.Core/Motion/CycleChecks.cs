using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>Holds a cycle's timing against its limits.</summary>
internal static class CycleChecks
{
    /// <summary>Share of the controller's time that the bound may save (common practice, no source: where the controller takes three times the
    /// bound, other settings, larger blends or another law are worth more than a stronger drive).</summary>
    private const double LargestGap = 2.0 / 3;

    /// <summary>Standard uncertainty of dwell and settling as fractions of themselves, until they are measured (common practice, no source).</summary>
    private const double WaitUncertainty = 0.1;

    /// <summary>All that one cycle is judged by. What is not limited or not known goes to the coverage.</summary>
    public static IEnumerable<Finding> Of(Cell cell, CycleResult result)
    {
        var (input, plan) = (result.Input, result.Input.Plan);
        string at = CyclePlan.Pointer(plan.Id);
        if (result.Controller.Why is { } why)
        {
            yield return new Unjudged(MotionRules.Law, new(at), input.Inputs, OpenReason.Failed, [], why);
        }
        else
        {
            foreach (var finding in Uses(result)) yield return finding;
            foreach (var finding in PreloadChecks.Of(cell, result)) yield return finding;
            if (result.Bound.Why is { } none && none != MotionReasons.NoLimit) yield return new Unjudged(MotionRules.Law, new(at), input.Inputs, OpenReason.Failed, [], none);
            else if (result.Bound.Found)
                yield return new Judged(MotionRules.Law, new(at), input.Inputs, Math.Max(0, result.Gap),
                    Limit.AtMost(LargestGap, new(SourceKind.CommonPractice, "")), Assurance.Sampled);
            if (input.Settings.Along == ProfileAlong.Axes && cell.Robot.Dexterity.ToolClearance is { } clearance && HasObstacles(cell))
                yield return new Judged(MotionRules.Stray, new(at), input.Inputs, Math.Max(result.Controller.Loaded.Leaves, result.Controller.Empty.Leaves),
                    Limit.AtMost(clearance, new(SourceKind.Cell, "/robot/dexterity/toolClearance")), Assurance.Sampled);
        }
        foreach (var contact in new[] { plan.Pick, plan.Place })
        {
            if (!contact.Moves) continue;
            yield return new Judged(MotionRules.Window, new(at, contact.Station), input.Inputs, contact.WindowUsed,
                Limit.AtMost(contact.Window, new(SourceKind.Cell, $"/stations/{contact.Station}/window")), Assurance.Exact)
            { Worst = new(contact.End_C, double.NaN, plan.Loaded.PlatformFor(contact.End_C, contact.Angle), plan.Loaded.LinearAxisAt) };
        }
    }

    public static bool HasObstacles(Cell cell) => Frames.FrameMembers.Any(cell.Frame) || cell.Stations.Values.Any(s => s.WallHeight > 0);

    /// <summary>The worse of both moves for each axis and kind of limit.</summary>
    private static IEnumerable<Finding> Uses(CycleResult result)
    {
        var input = result.Input;
        string at = CyclePlan.Pointer(input.Plan.Id);
        var worst = result.LoadedUse.Select(u => (Use: u, Path: input.Plan.Loaded)).Concat(result.EmptyUse.Select(u => (Use: u, Path: input.Plan.Empty)))
            .GroupBy(u => (u.Use.Axis, u.Use.Kind)).Select(g => g.MaxBy(u => double.IsNaN(u.Use.Use) ? double.PositiveInfinity : u.Use.Use));
        foreach (var (use, path) in worst)
        {
            if (use.Kind == LimitKind.Jerk && input.Settings.Profile == ProfileKind.Trapezoidal) continue;
            bool turns = input.Axes.Single(a => a.Axis == use.Axis).Turns;
            var (p, turn) = (use.At.State.P, use.At.State.Turn.Angle);
            yield return new Judged(MotionRules.Of(use.Kind, turns), new(at, use.Axis), input.Inputs, use.Value, Limit.AtMost(use.Limit, SourceOf(use)), Assurance.Sampled)
            {
                Worst = new(path.ToolOf(p, turn), input.Axes.Any(a => a.Axis == AxisCapacity.Rotary) ? turn : double.NaN, p, path.LinearAxisAt),
                WorstTime = Began(result, ReferenceEquals(path, input.Plan.Loaded)) + use.At.T,
            };
        }
    }

    /// <summary>When a move begins, from the start of the cycle, seconds.</summary>
    private static double Began(CycleResult result, bool loaded)
    {
        var plan = result.Input.Plan;
        return loaded ? plan.Pick.Duration : plan.Pick.Duration + result.Controller.Loaded.Duration + plan.Place.Duration;
    }

    private static Source SourceOf(LimitUse use) => new(SourceKind.Cell, use.Kind switch
    {
        LimitKind.Force => $"/drives/axes/{use.Axis}/motor",
        LimitKind.RodForce => $"/robot/chains/{use.Axis}/rodForceLimit",
        LimitKind.Speed => $"/drives/axes/{use.Axis}/largestSpeed",
        LimitKind.Acceleration => $"/drives/axes/{use.Axis}/largestAcceleration",
        _ => $"/drives/axes/{use.Axis}/largestJerk",
    });

    /// <summary>The promised rates. Dwell and settling are estimates until they are measured, and say so in the uncertainty.</summary>
    public static IEnumerable<Finding> Rates(Cell cell, ImmutableArray<CycleResult> results, Reading reading)
    {
        double? mean = cell.Brief.MeanRate, peak = cell.Brief.PeakRate;
        reading.Used("/brief/meanRate", mean);
        reading.Used("/brief/peakRate", peak);
        var timed = results.Select(r => r.Controller).ToArray();
        if (timed.Length == 0 || timed.Any(t => !t.Found)) yield break;
        var slowest = timed.MaxBy(t => t.CycleTime)!;
        if (mean is { } m) yield return Rate(MotionRules.MeanRate, timed.Average(t => t.CycleTime), timed.Average(t => t.Waits), m, "/brief/meanRate");
        if (peak is { } p) yield return Rate(MotionRules.PeakRate, slowest.CycleTime, slowest.Waits, p, "/brief/peakRate");

        Judged Rate(Rule rule, double time, double waits, double limit, string pointer) =>
            new(rule, new("/motion"), reading.Inputs, 1 / time, Limit.AtLeast(limit, new(SourceKind.Cell, pointer)), Assurance.Estimated)
            {
                Uncertainty = WaitUncertainty * waits / (time * time),
            };
    }
}

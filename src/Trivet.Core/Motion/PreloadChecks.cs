using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>
/// Holds the pull in the rods over a cycle against what keeps their ball joints closed. A seat pushes its ball and can not pull it, so a joint opens
/// as soon as the tension at either end of a rod is more than the preload along it (elementary statics).
/// </summary>
internal static class PreloadChecks
{
    /// <summary>Each chain of a cycle under the controller's law; nothing while masses are not described or nothing moves.</summary>
    public static IEnumerable<Finding> Of(Cell cell, CycleResult result)
    {
        var (input, plan) = (result.Input, result.Input.Plan);
        if (result is not { LoadedLoads: { } there, EmptyLoads: { } back, Controller: { Loaded.Trace: { } loaded, Empty.Trace: { } empty } }) yield break;
        for (int i = 0; i < there.Rods.Length; i++)
        {
            string chain = plan.Loaded.Robot.ChainIds[i];
            var (worst, instant, path, began) = Worse(there.Rods[i], back.Rods[i])
                ? (there.Rods[i], loaded.Instants[there.Rods[i].TensionAt], plan.Loaded, plan.Pick.Duration)
                : (back.Rods[i], empty.Instants[back.Rods[i].TensionAt], plan.Empty, plan.Pick.Duration + result.Controller.Loaded.Duration + plan.Place.Duration);
            var (p, angle) = (instant.State.P, instant.State.Turn.Angle);
            if (Judge(cell, input, chain, worst.PreloadNeeded) is not { } finding) continue;
            yield return finding with
            {
                Worst = new(path.ToolOf(p, angle), input.Axes.Any(a => a.Axis == AxisCapacity.Rotary) ? angle : double.NaN, p, path.LinearAxisAt),
                WorstTime = began + instant.T,
            };
        }
    }

    /// <summary>Fields besides those of the cycle that the findings rest on.</summary>
    public static void Used(Cell cell, Reading reading)
    {
        foreach (string chain in cell.Robot.Chains.Keys)
        {
            foreach (string pointer in Pointers(chain)) reading.Used(pointer, Stated(cell, chain, pointer));
        }
        reading.Used("/depth", cell.Depth);
    }

    /// <summary>Null where nothing pulls, so that no spring is needed.</summary>
    private static Finding? Judge(Cell cell, CycleInput input, string chain, double pull)
    {
        var robot = cell.Robot;
        string own = $"/robot/chains/{chain}/jointPreload", common = "/robot/common/jointPreload";
        string at = robot.Chains[chain].JointPreload is null && robot.Common.JointPreload is not null ? common : own;
        double? preload = robot.Chains[chain].JointPreload ?? robot.Common.JointPreload;
        var subject = new Subject(CyclePlan.Pointer(input.Plan.Id), chain);
        ImmutableArray<string> inputs = [.. input.Inputs.Union([.. Pointers(chain), "/depth"]).Order(StringComparer.Ordinal)];
        if (double.IsNaN(pull) && (robot.Chains[chain].RodSpacing ?? robot.Common.RodSpacing) is null)
            return Asked(cell) ? new Unjudged(MotionRules.JointPreload, subject, inputs, OpenReason.Missing, [$"/robot/chains/{chain}/rodSpacing"]) : null;
        if (pull <= 0) return null;
        if (preload is not { } fitted)
            return Asked(cell) ? new Unjudged(MotionRules.JointPreload, subject, inputs, OpenReason.Missing, [own]) : null;
        if (fitted <= 0) return new Unjudged(MotionRules.JointPreload, subject, inputs, OpenReason.Failed, [], MotionReasons.NotPositive);
        var judged = new Judged(MotionRules.JointPreload, subject, inputs, pull, Limit.AtMost(fitted, new(SourceKind.Cell, at)), Assurance.Sampled);
        return judged.Verdict == Verdict.FallsShort ? judged with { Advice = [Stronger(at, fitted, pull)] } : judged;
    }

    /// <summary>The spring that would do, two figures rounded up. Its force is not in the motion, so nothing else changes.</summary>
    private static Advice Stronger(string pointer, double fitted, double pull)
    {
        double needed = pull / (1 - MotionRules.JointPreload.ComfortBand), unit = Math.Pow(10, Math.Floor(Math.Log10(needed)) - 1);
        double to = Math.Ceiling(needed / unit) * unit;
        return new(pointer, fitted, to, 1 - pull / to);
    }

    private static bool Asked(Cell cell) => (cell.Depth ?? Depth.Quote) >= Depth.Build;

    /// <summary>What is not a number is the worse.</summary>
    private static bool Worse(RodExtremes a, RodExtremes b) => double.IsNaN(a.PreloadNeeded) || a.PreloadNeeded >= b.PreloadNeeded;

    private static IEnumerable<string> Pointers(string chain) =>
        [$"/robot/chains/{chain}/jointPreload", "/robot/common/jointPreload", $"/robot/chains/{chain}/rodSpacing", "/robot/common/rodSpacing"];

    private static double? Stated(Cell cell, string chain, string pointer)
    {
        var from = pointer.StartsWith("/robot/common/", StringComparison.Ordinal) ? cell.Robot.Common : cell.Robot.Chains[chain];
        return pointer.EndsWith("jointPreload", StringComparison.Ordinal) ? from.JointPreload : from.RodSpacing;
    }
}

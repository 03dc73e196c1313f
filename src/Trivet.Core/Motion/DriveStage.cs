using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>
/// What the drives have to say of a cell: how they are described, and what each cycle asks of them as the controller times it. A cycle that can not
/// be timed, or whose masses are not described, is waited for.
/// </summary>
public static class DriveStage
{
    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles) => Of(cell, cycles, DriveCase.Of(cell));

    /// <param name="drives">The drives of the cell, which other trades take too.</param>
    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles, DriveCase drives)
    {
        if (cell.Motion.Cycles.IsEmpty)
        {
            // Nothing moves, so nothing is asked for yet; what is stated must still be possible.
            return new(
                [.. drives.Findings.Where(f => f is not Unjudged { Reason: OpenReason.Missing })],
                [new(DriveRules.Described, new("/drives"), DriveReasons.NoCycles)], []);
        }

        var coverage = drives.Coverage.ToBuilder();
        var tasks = ImmutableArray.CreateBuilder<StageTask>();
        foreach (var cycle in cycles)
        {
            if (cycle.Input?.Loaded is null)
            {
                bool early = cycle.Input is not null && (cell.Depth ?? Depth.Quote) < Depth.Build;
                coverage.Add(new(
                    DriveRules.Torque, new(CyclePlan.Pointer(cycle.Id)), early ? CommonReasons.NotAskedYet : DriveReasons.WaitsFor.Naming(CyclePlan.Pointer(cycle.Id))));
                continue;
            }

            var reading = cycle.Reading();
            foreach (var (pointer, value) in drives.Used) reading.Used(pointer, value);
            tasks.Add(new($"drives:{cycle.Id}", reading.Key, () => Judge(drives, cycle), _ => [.. Judge(drives, cycle).Select(f => Advised(cell, cycle, f))]));
        }

        return new(drives.Findings, coverage.ToImmutable(), tasks.ToImmutable());
    }

    private static ImmutableArray<Finding> Judge(DriveCase drives, TimedCycle cycle) =>
        cycle.Trace is { } trace ? DriveChecks.Judge(drives, trace.Series).Findings : [];

    /// <summary>What falls short gets its advice with the proof: each change is tried on the drives, which takes longer than an edit may.</summary>
    private static Finding Advised(Cell cell, TimedCycle cycle, Finding finding) =>
        finding.Verdict == Verdict.FallsShort ? finding with { Advice = DriveAdvice.For(cell, [cycle.Trace!.Series], finding) } : finding;
}

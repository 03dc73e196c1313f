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
    public static StagePlan Of(Cell cell)
    {
        var drives = DriveCase.Of(cell);
        if (cell.Motion.Cycles.IsEmpty)
        {
            // Nothing moves, so nothing is asked for yet; what is stated must still be possible.
            return new(
                [.. drives.Findings.Where(f => f is not Unjudged { Reason: OpenReason.Missing })],
                [new(DriveRules.Described, new("/drives"), DriveReasons.NoCycles)], []);
        }

        var coverage = drives.Coverage.ToBuilder();
        var tasks = ImmutableArray.CreateBuilder<StageTask>();
        foreach (var (id, _) in cell.Motion.Cycles.InOrder())
        {
            var reading = new Reading();
            var input = CycleInput.Read(cell, id, reading).Input;
            if (input?.Loaded is null)
            {
                bool early = input is not null && (cell.Depth ?? Depth.Quote) < Depth.Build;
                coverage.Add(new(
                    DriveRules.Torque, new(CyclePlan.Pointer(id)), early ? CommonReasons.NotAskedYet : DriveReasons.WaitsFor.Naming(CyclePlan.Pointer(id))));
                continue;
            }

            foreach (var (pointer, value) in drives.Used) reading.Used(pointer, value);
            tasks.Add(new($"drives:{id}", reading.Key, () => Judge(cell, id), _ => Judge(cell, id)));
        }

        return new(drives.Findings, coverage.ToImmutable(), tasks.ToImmutable());
    }

    /// <summary>A cycle's findings, those that fall short with advice. As quick as a sample, so preview and proof are one.</summary>
    private static ImmutableArray<Finding> Judge(Cell cell, string id)
    {
        if (SeriesOf(cell, id) is not { } series) return [];
        var drives = DriveCase.Of(cell);
        return [.. DriveChecks.Judge(drives, series).Findings.Select(f =>
            f.Verdict == Verdict.FallsShort ? f with { Advice = DriveAdvice.For(cell, [series], f) } : f)];
    }

    /// <summary>A cycle over time under the controller's law; null where it has no motion, which motion itself tells.</summary>
    private static CycleSeries? SeriesOf(Cell cell, string id) =>
        CycleInput.Read(cell, id, new()).Input is { } input ? CycleTrace.Of(CycleTiming.ByController(input), TimingLaw.Controller)?.Series : null;
}

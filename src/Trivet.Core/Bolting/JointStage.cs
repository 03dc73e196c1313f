using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;

namespace Trivet.Bolting;

/// <summary>What bolted joints have to say of a cell.</summary>
public static class JointStage
{
    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles, FoundPlates plates)
    {
        if (cell.Joints.IsEmpty) return new([], [new(JointRules.Described, new("/joints"), JointReasons.NoJoints)], []);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        var tasks = ImmutableArray.CreateBuilder<StageTask>();
        foreach (var (id, _) in cell.Joints.InOrder())
        {
            var subject = new Subject(JointInputs.Pointer(id));
            var reading = new Reading();
            var wrong = new List<Contradiction>();
            bool asked = reading.Or(cell.Depth, "/depth", Depth.Quote) >= Depth.Build;
            var input = JointInputs.Read(cell, id, plates, reading, wrong);
            // What the load lacks is told by the trades that it comes from; its own kind is asked for here.
            var ofLoad = new Reading();
            ofLoad.Need(cell.Joints[id].Load, $"{subject.Pointer}/load", JointLoad.Stated);
            foreach (var problem in wrong) findings.Add(new Unjudged(JointRules.Described, new(problem.Pointer), reading.Inputs, OpenReason.Failed, [], problem.Reason));
            if (input is null || !ofLoad.Complete)
            {
                ImmutableArray<string> missing = [.. reading.MissingFields.Concat(ofLoad.MissingFields).Distinct().Order(StringComparer.Ordinal)];
                reading.Used(ofLoad);
                if (missing.IsEmpty) continue;
                if (asked) findings.Add(new Unjudged(JointRules.Described, subject, reading.Inputs, OpenReason.Missing, missing));
                else coverage.Add(new(JointRules.Described, subject, CommonReasons.NotAskedYet));
                continue;
            }
            var loadWrong = new List<Contradiction>();
            var loadReading = new Reading();
            var load = JointLoads.Of(cell, id, cycles, loadReading, loadWrong);
            reading.Used(loadReading);
            foreach (var problem in loadWrong) findings.Add(new Unjudged(JointRules.Described, new(problem.Pointer), reading.Inputs, OpenReason.Failed, [], problem.Reason));
            if (load is null)
                foreach (var rule in new[] { JointRules.Separation, JointRules.Slip, JointRules.Fatigue }) coverage.Add(new(rule, subject, JointReasons.NoMotion));
            if (double.IsNaN(input.SlotNutForce)) coverage.Add(new(JointRules.SlotNut, subject, JointReasons.NoSlotNut));
            tasks.Add(new($"joint:{id}", reading.Key, Judged, _ => Judged()));

            ImmutableArray<Finding> Judged() => JointChecks.Of(JointResult.Solve(input, load?.Invoke()), load is not null, reading.Inputs);
        }
        return new StagePlan(findings.ToImmutable(), coverage.ToImmutable(), tasks.ToImmutable()) + MountAgreement.Of(cell, cycles);
    }

    /// <summary>The joints that can be calculated, in the order of tightening.</summary>
    public static ImmutableArray<JointResult> Results(Cell cell) => [.. Calculated(cell, new()).Select(c => c.Result)];

    /// <summary>The same, each with the fields that it rests on.</summary>
    public static IEnumerable<(JointResult Result, Reading Reading)> Calculated(Cell cell, FoundPlates plates)
    {
        var cycles = TimedCycle.Of(cell);
        foreach (var (id, _) in cell.Joints.InOrder())
        {
            var (reading, wrong) = (new Reading(), new List<Contradiction>());
            if (JointInputs.Read(cell, id, plates, reading, wrong) is { } input) yield return (JointResult.Solve(input, JointLoads.Of(cell, id, cycles, reading, wrong)?.Invoke()), reading);
        }
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;

namespace Trivet.Reach;

/// <summary>What reach has to say of the stations.</summary>
public static class StationStage
{
    public static StagePlan Of(Cell cell)
    {
        var plan = new Builder(cell);
        var shared = plan.Describe();
        if (cell.Stations.IsEmpty) plan.Missing("/stations", ["/stations"], ["/stations"]);
        foreach (var (id, _) in cell.Stations.InOrder()) plan.Station(id, shared);
        return plan.Done();
    }

    private sealed class Builder(Cell cell)
    {
        private readonly List<Finding> _findings = [];
        private readonly List<NotApplicable> _coverage = [];
        private readonly List<StageTask> _tasks = [];
        private readonly HashSet<ReachCheck> _lacking = [];

        public StagePlan Done() => new([.. _findings], [.. _coverage], [.. _tasks]);

        public void Missing(string subject, ImmutableArray<string> inputs, ImmutableArray<string> missing) =>
            _findings.Add(new Unjudged(ReachRules.Described, new(subject), inputs, OpenReason.Missing, missing));

        /// <summary>What all stations rest on. Returns the parts that are not complete.</summary>
        public ImmutableArray<string> Describe()
        {
            var waiting = new List<string>();
            var robot = new Reading();
            var read = RobotInputs.Geometry(cell.Robot, robot);
            foreach (var problem in read.Problems) Contradicted(problem, robot.Inputs);
            if (!robot.Complete) Missing("/robot", robot.Inputs, robot.MissingFields);
            if (read.Robot is null) waiting.Add("/robot");
            Part("/mount", r => PlacingInputs.Mount(cell.Mount, r));
            Part("/tool", r => PlacingInputs.Tcp(cell.Tool, r));
            return [.. waiting];

            void Part(string pointer, Action<Reading> read)
            {
                var reading = new Reading();
                read(reading);
                if (reading.Complete) return;
                Missing(pointer, reading.Inputs, reading.MissingFields);
                waiting.Add(pointer);
            }
        }

        public void Station(string id, ImmutableArray<string> shared)
        {
            var subject = new Subject(StationInputs.Pointer(id));
            var own = new Reading();
            var read = StationInputs.Read(cell, id, own);
            foreach (var wrong in read.Contradictions) Contradicted(wrong, own.Inputs);
            if (!own.Complete) Missing(subject.Pointer, own.Inputs, own.MissingFields);

            var waitsFor = read.Box is null ? shared.Add(subject.Pointer) : shared;
            if (waitsFor.Length > 0)
            {
                foreach (var check in ReachCheck.All) _coverage.Add(new(check.Rule, subject with { Case = check.Case }, ReachReasons.WaitsFor.Naming(waitsFor)));
                return;
            }
            var reading = new Reading();
            var complete = Complete(id, reading);
            _findings.AddRange(ReachChecks.Plain(cell, complete, reading.Inputs));
            if (cell.Robot.Rotary.Fitted != true) _coverage.Add(new(ReachRules.Turn, subject with { Case = "rotary" }, ReachReasons.NoRotary));
            if (cell.Robot.LinearAxis.Fitted != true) _coverage.Add(new(ReachRules.Travel, subject with { Case = "linear" }, ReachReasons.NoLinearAxis));
            if (!complete.Reach.Robot.Planar) _coverage.Add(new(ReachRules.Plane, subject, ReachReasons.ThreeChains));
            foreach (var check in ReachCheck.All) Ask(check, id, subject);
        }

        private void Ask(ReachCheck check, string id, Subject station)
        {
            var subject = station with { Case = check.Case };
            var reading = new Reading();
            var read = Complete(id, reading);
            ImmutableArray<ReachSearch> searches = [.. check.Ask(read.Reach, reading)];
            if (reading.Complete && searches.IsEmpty)
            {
                _coverage.Add(new(check.Rule, subject, check.Nothing ?? throw new InvalidOperationException($"{check.Rule.Id} asks nothing and has no reason for it.")));
            }
            else if (reading.Complete)
            {
                _tasks.Add(check.Task(subject, reading, searches));
            }
            else if (reading.Or(cell.Depth, "/depth", Depth.Quote) < check.NeededAt)
            {
                _coverage.Add(new(check.Rule, subject, CommonReasons.NotAskedYet));
            }
            else if (_lacking.Add(check))
            {
                // The station itself is complete, so what is missing serves all stations: said once.
                _findings.Add(new Unjudged(check.Rule, new("/stations", check.Case), reading.Inputs, OpenReason.Missing, reading.MissingFields));
            }
        }

        private StationCase Complete(string id, Reading reading) => StationCase.Read(cell, id, reading)
            ?? throw new InvalidOperationException($"Station '{id}' was read as complete, and now is not.");

        private void Contradicted(Contradiction wrong, ImmutableArray<string> inputs) =>
            _findings.Add(new Unjudged(ReachRules.Described, new(wrong.Pointer), inputs, OpenReason.Failed, [], wrong.Reason));
    }
}

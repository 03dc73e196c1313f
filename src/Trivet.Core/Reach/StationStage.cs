using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;

namespace Trivet.Reach;

/// <summary>One piece of work that can be done apart from the others and remembered under what it used.</summary>
/// <param name="Name">Rule and station.</param>
/// <param name="Used">Every field it was read from, with its value.</param>
/// <param name="Sample">The fast answer.</param>
/// <param name="Prove">The full answer.</param>
public sealed record ReachTask(
    string Name, ImmutableSortedDictionary<string, object?> Used,
    Func<ImmutableArray<Finding>> Sample, Func<CancellationToken, ImmutableArray<Finding>> Prove);

/// <summary>What reach has to say of the stations: what is known without work, and the tasks that remain.</summary>
public sealed record StationPlan(ImmutableArray<Finding> Findings, ImmutableArray<NotApplicable> Coverage, ImmutableArray<ReachTask> Tasks)
{
    /// <summary>A check of a station's volume.</summary>
    /// <param name="Case">Tells checks of one rule apart.</param>
    /// <param name="NeededAt">Depth from which what it needs is asked for; before that it waits, unless everything is stated anyway.</param>
    /// <param name="Nothing">Why there may be nothing to ask.</param>
    private sealed record Check(
        Rule Rule, string Case, Depth NeededAt, Func<StationCase, Reading, IEnumerable<StationSearch>> Ask, Reason? Nothing = null);

    private static readonly ImmutableArray<Check> Checks =
    [
        new(ReachRules.Closure, "", Depth.Quote, StationChecks.Closure),
        new(ReachRules.Travel, "", Depth.Quote, StationChecks.Travel),
        new(ReachRules.Dexterity, "", Depth.Quote, StationChecks.Dexterity),
        new(ReachRules.Swing, "", Depth.Build, StationChecks.Swing),
        new(ReachRules.Step, "", Depth.Build, StationChecks.Step),
        new(ReachRules.RodClearance, "rods", Depth.Build, StationChecks.RodsToRods),
        new(ReachRules.RodClearance, "frame", Depth.Build, StationChecks.RodsToFrame, ReachReasons.NoFrame),
        new(ReachRules.RodClearance, "walls", Depth.Build, StationChecks.RodsToWalls, ReachReasons.NoWalls),
        new(ReachRules.ToolClearance, "frame", Depth.Build, StationChecks.ToolToFrame, ReachReasons.NoFrame),
        new(ReachRules.ToolClearance, "walls", Depth.Build, StationChecks.ToolToWalls, ReachReasons.NoWalls),
    ];

    public static StationPlan Of(Cell cell)
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
        private readonly List<ReachTask> _tasks = [];
        private readonly HashSet<Check> _lacking = [];

        public StationPlan Done() => new([.. _findings], [.. _coverage], [.. _tasks]);

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
                foreach (var check in Checks) _coverage.Add(new(check.Rule, subject with { Case = check.Case }, ReachReasons.WaitsFor.Naming(waitsFor)));
                return;
            }
            var reading = new Reading();
            var complete = Complete(id, reading);
            _findings.AddRange(StationChecks.Plain(cell, complete, reading.Inputs));
            if (cell.Robot.Rotary.Fitted != true) _coverage.Add(new(ReachRules.Turn, subject with { Case = "rotary" }, ReachReasons.NoRotary));
            if (cell.Robot.LinearAxis.Fitted != true) _coverage.Add(new(ReachRules.Travel, subject with { Case = "linear" }, ReachReasons.NoLinearAxis));
            if (!complete.Robot.Planar) _coverage.Add(new(ReachRules.Plane, subject, ReachReasons.ThreeChains));
            foreach (var check in Checks) Ask(check, id, subject);
        }

        private void Ask(Check check, string id, Subject station)
        {
            var subject = station with { Case = check.Case };
            var reading = new Reading();
            var read = Complete(id, reading);
            ImmutableArray<StationSearch> searches = [.. check.Ask(read, reading)];
            if (reading.Complete && searches.IsEmpty)
            {
                _coverage.Add(new(check.Rule, subject, check.Nothing ?? throw new InvalidOperationException($"{check.Rule.Id} asks nothing and has no reason for it.")));
            }
            else if (reading.Complete)
            {
                _tasks.Add(new(
                    $"{check.Rule.Id}:{subject.Pointer}:{subject.Case}", reading.Key,
                    () => ImmutableArray.CreateRange(searches, s => s.Sample()),
                    stop => ImmutableArray.CreateRange(searches, s => s.Prove(stop))));
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

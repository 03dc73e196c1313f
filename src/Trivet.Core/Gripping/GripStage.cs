using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Tooling;

namespace Trivet.Gripping;

/// <summary>
/// What gripping has to say of a cell: cycle by cycle, whether cups or fingers hold the part and in the time they have; the moment of the tool; compressed air.
/// </summary>
public static class GripStage
{
    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles)
    {
        var builder = new Builder(cell);
        builder.Level();
        foreach (var cycle in cycles) builder.Cycle(cycle);
        return builder.Done() + AirChecks.Of(cell, cycles);
    }

    private sealed class Builder(Cell cell)
    {
        private readonly List<Finding> _findings = [];
        private readonly List<NotApplicable> _coverage = [];
        private readonly List<StageTask> _tasks = [];
        private readonly HashSet<string> _told = [];
        private readonly bool _asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;

        public StagePlan Done() => new([.. _findings], [.. _coverage], [.. _tasks]);

        public void Level()
        {
            var reading = new Reading();
            if (!GripInputs.HasVacuum(cell, reading))
            {
                _coverage.Add(new(GripRules.VacuumLevel, new(GripInputs.VacuumAt), GripReasons.NoVacuum));
                return;
            }
            if (Known(GripInputs.Flow(cell, reading), GripRules.VacuumLevel, new(GripInputs.VacuumAt), reading) is { } flow)
                _findings.Add(GripChecks.Level(flow, Evacuation.Of(flow), reading));
        }

        public void Cycle(TimedCycle cycle)
        {
            var subject = new Subject(CyclePlan.Pointer(cycle.Id));
            bool cups = GripInputs.HasVacuum(cell, new()), fingers = GripInputs.HasFingers(cell, new());
            if (cups) Times(cycle.Id, GripInputs.Flow(cell, new()).Grip);
            if (fingers) Times(cycle.Id);
            if (!cups) _coverage.Add(new(GripRules.VacuumForce, subject, GripReasons.NoVacuum));
            if (!fingers) _coverage.Add(new(GripRules.FingerForce, subject, GripReasons.NoFingers));

            string? part = cell.Motion.Cycles[cycle.Id].Part;
            if ((cups || fingers) && (part is null || !cell.Brief.Parts.ContainsKey(part))) _coverage.Add(new(GripRules.Described, subject, GripReasons.NoPart));
            else
            {
                if (cups) Cups(cycle, subject, part!);
                if (fingers) Fingers(cycle, subject, part!);
            }
            Moment(cycle, subject);
        }

        private void Cups(TimedCycle cycle, Subject subject, string part)
        {
            var reading = Basis(cycle, part);
            GripInputs.HasVacuum(cell, reading);
            if (Known(GripInputs.Cups(cell, part, reading), GripRules.VacuumForce, subject, reading) is { } hold)
                Ask("grip.cups", cycle, subject, GripRules.VacuumForce, reading, motion => GripChecks.Cups(cell, cycle, motion, hold, part, reading));
        }

        private void Fingers(TimedCycle cycle, Subject subject, string part)
        {
            var reading = Basis(cycle, part);
            GripInputs.HasFingers(cell, reading);
            if (Known(GripInputs.Fingers(cell, part, reading), GripRules.FingerForce, subject, reading) is { } hold)
                Ask("grip.fingers", cycle, subject, GripRules.FingerForce, reading, motion => [GripChecks.Fingers(cell, cycle, motion, hold, part, reading)]);
        }

        private void Moment(TimedCycle cycle, Subject subject)
        {
            if (!MomentChecks.Asked(cell)) return;
            var reading = cycle.Reading();
            CarriedMotion.Used(cell, reading);
            reading.Used("/tool/largestMoment", cell.Tool.LargestMoment);
            foreach (var (id, part) in cell.Tool.Parts) reading.Used(ToolInputs.Pointer(id) + "/largestLoadMoment", part.LargestLoadMoment);
            if (ToolSums.Of(cell, reading) is { } sums)
                Ask("tool.moment", cycle, subject, ToolRules.Moment, reading, motion => MomentChecks.Of(cell, cycle, motion, sums, reading));
        }

        /// <summary>The dwells are the cycle's own fields; whether it moves at all does not matter here.</summary>
        private void Times(string cycle, CupFlow? flow)
        {
            if (flow is null) return;
            var evacuation = Evacuation.Of(flow);
            if (double.IsFinite(evacuation.UntilHeld)) Dwell(GripRules.PickTime, cycle, "vacuum", evacuation.UntilHeld, pick: true, r => GripInputs.Flow(cell, r));
            else _coverage.Add(new(GripRules.PickTime, new(CyclePlan.Pointer(cycle), "vacuum"), GripReasons.NeverReached));
            if (double.IsFinite(evacuation.UntilFree)) Dwell(GripRules.ReleaseTime, cycle, "vacuum", evacuation.UntilFree, pick: false, r => GripInputs.Flow(cell, r));
            else _coverage.Add(new(GripRules.ReleaseTime, new(CyclePlan.Pointer(cycle), "vacuum"), GripReasons.NoBlowOff));
        }

        private void Times(string cycle)
        {
            foreach (var (rule, name, stated, pick) in new[]
                { (GripRules.PickTime, "closingTime", cell.Tool.Fingers.ClosingTime, true), (GripRules.ReleaseTime, "openingTime", cell.Tool.Fingers.OpeningTime, false) })
            {
                string at = $"{GripInputs.FingersAt}/{name}";
                if (stated is { } time) Dwell(rule, cycle, "fingers", time, pick, r => r.Used(at, time));
                else _coverage.Add(new(rule, new(CyclePlan.Pointer(cycle), "fingers"), GripReasons.WaitsFor.Naming(at)));
            }
        }

        private void Dwell(Rule rule, string cycle, string way, double time, bool pick, Action<Reading> basis)
        {
            string field = $"{CyclePlan.Pointer(cycle)}/{(pick ? "pickDwell" : "placeDwell")}";
            var reading = new Reading();
            basis(reading);
            reading.Used(way == "vacuum" ? GripInputs.VacuumAt + "/cups" : GripInputs.FingersAt + "/count", way);
            double dwell = reading.Need(pick ? cell.Motion.Cycles[cycle].PickDwell : cell.Motion.Cycles[cycle].PlaceDwell, field);
            if (dwell > 0) _findings.Add(GripChecks.Time(rule, cycle, way, time, dwell, field, reading));
            else _coverage.Add(new(rule, new(CyclePlan.Pointer(cycle), way), GripReasons.WaitsFor.Naming(field)));
        }

        /// <summary>All that the motion of a carried part rests on.</summary>
        private Reading Basis(TimedCycle cycle, string part)
        {
            var reading = cycle.Reading();
            CarriedMotion.Used(cell, reading);
            ToolInputs.Carried(cell, part, reading);
            return reading;
        }

        /// <summary>What was read; where something is missing it is asked for at the depth that needs it, and what can not be is told once.</summary>
        private T? Known<T>(GripRead<T> read, Rule rule, Subject subject, Reading reading) where T : class
        {
            foreach (var problem in read.Problems.Where(p => _told.Add(p.Pointer)))
                _findings.Add(new Unjudged(GripRules.Described, new(problem.Pointer), reading.Inputs, OpenReason.Failed, [], problem.Reason));
            if (read.Grip is not null) return read.Grip;
            if (read.Problems.IsEmpty && _asked) _findings.Add(new Unjudged(rule, subject, [.. reading.Inputs.Append("/depth").Order(StringComparer.Ordinal)], OpenReason.Missing, reading.MissingFields));
            else _coverage.Add(new(rule, subject, read.Problems.IsEmpty ? CommonReasons.NotAskedYet : GripReasons.WaitsFor.Naming([.. read.Problems.Select(p => p.Pointer)])));
            return null;
        }

        /// <summary>A task over the cycle's motion; a cycle that is not timed is waited for.</summary>
        private void Ask(string name, TimedCycle cycle, Subject subject, Rule rule, Reading reading, Func<CarriedMotion, IEnumerable<Finding>> judge)
        {
            if (cycle.Input is null)
            {
                _coverage.Add(new(rule, subject, GripReasons.WaitsFor.Naming(CyclePlan.Pointer(cycle.Id))));
                return;
            }
            _tasks.Add(new($"{name}:{cycle.Id}", reading.Key, Judge, _ => Judge()));

            ImmutableArray<Finding> Judge() => CarriedMotion.Of(cell, cycle) is { } motion ? [.. judge(motion)] : [];
        }
    }
}

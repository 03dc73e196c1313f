using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Motion;

/// <summary>
/// What motion has to say of a cell: each cycle's ways judged by the rules of reach, over their whole length by bounds; the controller's law against
/// every limit and against the bound; the promised rates.
/// </summary>
public static class MotionStage
{
    /// <param name="unsettled">Cycles that are timed without the settling time they need, and why it is not known: no rate is promised with them.</param>
    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles, IReadOnlyDictionary<string, OpenReason> unsettled)
    {
        var plan = new Builder(cell);
        if (cycles.IsEmpty) return new([], [new(MotionRules.Described, new("/motion"), MotionReasons.NoCycles)], []);
        foreach (var cycle in cycles) plan.Cycle(cycle);
        plan.Rates(cycles, unsettled);
        return plan.Done();
    }

    /// <summary>Points of the bound along a path while a person edits.</summary>
    private const int PreviewPoints = 100;

    private sealed class Builder(Cell cell)
    {
        private readonly List<Finding> _findings = [];
        private readonly List<NotApplicable> _coverage = [];
        private readonly List<StageTask> _tasks = [];

        public StagePlan Done() => new([.. _findings], [.. _coverage], [.. _tasks]);

        public void Cycle(TimedCycle cycle)
        {
            var (subject, reading) = (new Subject(CyclePlan.Pointer(cycle.Id)), cycle.Reading());
            foreach (var problem in cycle.Contradictions.Where(w => w.Pointer.StartsWith("/motion", StringComparison.Ordinal)))
                _findings.Add(new Unjudged(MotionRules.Described, new(problem.Pointer), reading.Inputs, OpenReason.Failed, [], problem.Reason));
            if (cycle.NotJudged is not null) _coverage.Add(new(MotionRules.Law, subject, cycle.NotJudged));
            if (cycle.Input is null)
            {
                Waits(subject, reading, cycle.Contradictions);
                return;
            }
            Limits(subject, cycle.Input, reading);
            _tasks.Add(Timing(cycle, reading));
            foreach (bool loaded in new[] { true, false })
                foreach (var check in ReachCheck.AlongPaths) Ask(check, cycle, loaded);
        }

        /// <summary>What is not stated: asked for here where it is the cycle's own, and from the depth on that asks for motion; else waited for.</summary>
        private void Waits(Subject subject, Reading reading, ImmutableArray<Contradiction> wrong)
        {
            ImmutableArray<string> own = [.. reading.MissingFields.Where(f => f.StartsWith("/motion", StringComparison.Ordinal))];
            ImmutableArray<string> others = [.. reading.MissingFields.Except(own).Concat(wrong.Select(w => w.Pointer).Where(p => !p.StartsWith("/motion", StringComparison.Ordinal))).Distinct()];
            bool asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;
            if (own.Length > 0 && asked) _findings.Add(new Unjudged(MotionRules.Described, subject, [.. reading.Inputs.Append("/depth").Order(StringComparer.Ordinal)], OpenReason.Missing, own));
            else if (own.Length > 0) _coverage.Add(new(MotionRules.Described, subject, CommonReasons.NotAskedYet));
            else if (others.Length > 0) _coverage.Add(new(MotionRules.Described, subject, ReachReasons.WaitsFor.Naming(others)));
        }

        /// <summary>Which limits do not apply, and why.</summary>
        private void Limits(Subject subject, CycleInput input, Reading reading)
        {
            bool built = (cell.Depth ?? Depth.Quote) >= Depth.Build;
            var chain = input.Axes[0];
            foreach (var (kind, limit) in new[] { (LimitKind.Speed, chain.Limits.Speed), (LimitKind.Acceleration, chain.Limits.Acceleration) })
                if (double.IsPositiveInfinity(limit)) _coverage.Add(new(MotionRules.Of(kind, chain.Turns), subject, MotionReasons.NoLimit));
            if (input.Settings.Profile == ProfileKind.Trapezoidal) _coverage.Add(new(MotionRules.Of(LimitKind.Jerk, chain.Turns), subject, MotionReasons.TrapezoidJerks));
            else if (double.IsPositiveInfinity(chain.Limits.Jerk)) _coverage.Add(new(MotionRules.Of(LimitKind.Jerk, chain.Turns), subject, MotionReasons.NoLimit));

            var force = MotionRules.Of(LimitKind.Force, chain.Turns);
            if (input.Loaded is null && built) _findings.Add(new Unjudged(force, subject, input.Inputs, OpenReason.Missing, input.Lacking));
            else if (input.Loaded is null) _coverage.Add(new(force, subject, CommonReasons.NotAskedYet));
            else if (input.Axes.Any(a => a.Force is null)) _coverage.Add(new(force, subject, MotionReasons.NoMotor));
            if (double.IsPositiveInfinity(chain.RodForce) || input.Loaded is null) _coverage.Add(new(MotionRules.RodForce, subject, input.Loaded is null ? CommonReasons.NotAskedYet : MotionReasons.NoLimit));

            if (!input.Plan.Pick.Moves && !input.Plan.Place.Moves) _coverage.Add(new(MotionRules.Window, subject, MotionReasons.NoBelt));
            if (input.Settings.Along == ProfileAlong.Path) _coverage.Add(new(MotionRules.Stray, subject, MotionReasons.FollowsPath));
            else if (!CycleChecks.HasObstacles(cell)) _coverage.Add(new(MotionRules.Stray, subject, MotionReasons.NothingNear));
        }

        /// <summary>Timing is nearly as quick as a sample: preview and proof differ in how finely the bound is resolved.</summary>
        private StageTask Timing(TimedCycle cycle, Reading reading)
        {
            CommonlyUsed(reading);
            return new($"motion:{cycle.Id}", reading.Key, () => Judge(PreviewPoints), _ => Judge(PathBound.UsualPoints));

            ImmutableArray<Finding> Judge(int points)
            {
                var result = CycleTiming.Solve(cycle.ByController!, points, states: false);
                return [.. CycleChecks.Of(cell, result with { Input = result.Input with { Inputs = reading.Inputs } })];
            }
        }

        /// <summary>What the checks of a cycle look at besides what its timing rests on.</summary>
        private void CommonlyUsed(Reading reading)
        {
            reading.Used("/robot/dexterity/toolClearance", cell.Robot.Dexterity.ToolClearance);
            reading.Used("/frame/members", string.Join('\n', cell.Frame.Members.Keys));
            PreloadChecks.Used(cell, reading);
            reading.Used("/frame/box/width", cell.Frame.Box.Width);
            reading.Used("/stations", string.Join('\n', cell.Stations.Keys));
            foreach (var (station, stated) in cell.Stations) reading.Used(StationInputs.Pointer(station) + "/wallHeight", stated.WallHeight);
        }

        public void Rates(ImmutableArray<TimedCycle> cycles, IReadOnlyDictionary<string, OpenReason> unsettled)
        {
            var reading = new Reading();
            foreach (var cycle in cycles)
            {
                reading.Used($"{CyclePlan.Pointer(cycle.Id)}/order", cell.Motion.Cycles[cycle.Id].Order);
                reading.Used(cycle.Reading());
            }
            reading.Used("/motion/cycles", string.Join('\n', cell.Motion.Cycles.Keys));
            reading.Used("/brief/meanRate", cell.Brief.MeanRate);
            reading.Used("/brief/peakRate", cell.Brief.PeakRate);
            if (cycles.Any(c => c.Input is null))
            {
                foreach (var rule in new[] { MotionRules.MeanRate, MotionRules.PeakRate })
                    _coverage.Add(new(rule, new("/motion"), ReachReasons.WaitsFor.Naming([.. cycles.Select(c => CyclePlan.Pointer(c.Id))])));
                return;
            }
            if (unsettled.Count > 0)
            {
                // One that was sought and not found stays so; one that is being computed is open only until then.
                var why = unsettled.Values.Contains(OpenReason.Failed) ? OpenReason.Failed : OpenReason.NotComputed;
                var waits = MotionReasons.WaitNotKnown.Naming([.. unsettled.Where(u => u.Value == why).Select(u => CyclePlan.Pointer(u.Key) + "/settle").Order(StringComparer.Ordinal)]);
                foreach (var (rule, promised) in new[] { (MotionRules.MeanRate, cell.Brief.MeanRate), (MotionRules.PeakRate, cell.Brief.PeakRate) })
                    if (promised is not null) _findings.Add(new Unjudged(rule, new("/motion"), [.. reading.Inputs.Concat(waits.Fields).Distinct().Order(StringComparer.Ordinal)], why, [], waits));
                return;
            }
            _tasks.Add(new("motion.rates", reading.Key, Judge, _ => Judge()));

            ImmutableArray<Finding> Judge() => [.. CycleChecks.Rates(cell, [.. cycles.Select(c => c.ByController!)], reading)];
        }

        private void Ask(ReachCheck check, TimedCycle cycle, bool loaded)
        {
            var (id, plan, reading) = (cycle.Id, cycle.Plan.Plan!, cycle.Reading(planOnly: true));
            string? part = cell.Motion.Cycles[id].Part;
            reading.Used($"{CyclePlan.Pointer(id)}/part", part);
            var path = loaded ? plan.Loaded : plan.Empty;
            var reach = new ReachCase(cell, plan.Geometry, path.Robot, path, CyclePlan.Pointer(id))
            {
                Way = loaded ? "loaded" : "empty",
                Carried = loaded && part is not null && cell.Brief.Parts.ContainsKey(part) ? r => [CarriedPart(part, r)] : _ => [],
            };
            var subject = reach.SubjectOf(check.Case);
            ImmutableArray<ReachSearch> searches = [.. check.Ask(reach, reading)];
            if (!reading.Complete) _coverage.Add(new(check.Rule, subject, ReachReasons.WaitsFor.Naming(reading.MissingFields)));
            else if (searches.IsEmpty) _coverage.Add(new(check.Rule, subject, check.Nothing!));
            else _tasks.Add(check.Task(subject, reading, searches));
        }

        /// <summary>A part below the tool centre point: a capsule of half its largest horizontal size as radius, as long as the part is high.</summary>
        private MovingBody CarriedPart(string part, Reading reading)
        {
            var size = cell.Brief.Parts[part].Size;
            string at = $"/brief/parts/{part}/size";
            double width = reading.Need(size.Width, at + "/width"), depth = reading.Need(size.Depth, at + "/depth"), height = reading.Need(size.Height, at + "/height");
            return new(Anchor.Tcp, Vec3.Zero, Anchor.Tcp, new(0, 0, -height), Math.Max(width, depth) / 2);
        }
    }
}

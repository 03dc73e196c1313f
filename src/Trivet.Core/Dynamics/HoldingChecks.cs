using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Reach;

namespace Trivet.Dynamics;

/// <summary>The rules by which it is judged whether a chain stays up with its drive off.</summary>
public static class HoldingRules
{
    /// <summary>Margin under which holding is called tight: a brake for one and a half times the load (common practice, no source).</summary>
    private const double OneAndAHalf = 1.0 / 3;

    /// <summary>Rails. Value: largest force that the drive holds at rest, newtons; limit: what the description says brake, counterweight or measured
    /// friction hold.</summary>
    public static Rule Rail { get; } = new(
        "motion.hold", "Each chain stays up with its drive off", Trade.Motion, "N", Sense.AtMost, OneAndAHalf,
        new(SourceKind.Derived, "trivet", "docs/rules/motion.hold.md"), NeedsProof: true);

    /// <summary>As <see cref="Rail"/>, for arms that turn, newton metres.</summary>
    public static Rule Crank { get; } = Rail with
    {
        Id = "motion.hold-turn",
        Unit = "N m",
        Title = "Each arm stays up with its drive off",
        Method = new(SourceKind.Derived, "trivet", "docs/rules/motion.hold-turn.md"),
    };
}

/// <summary>
/// Judges what keeps each chain up, over every station's volume, with the gripper empty and with the heaviest part. How fast a chain falls
/// that nothing keeps up, <see cref="Fall"/> says.
/// </summary>
public static class HoldingChecks
{
    /// <summary>A bound on the load within this fraction of what is held is close enough.</summary>
    private const double CloseEnough = 0.005;

    public static StagePlan Of(Cell cell)
    {
        var robot = RobotInputs.Geometry(cell.Robot, new()).Robot;
        return robot is null ? new([], [], []) : new Builder(cell, robot).Done();
    }

    private sealed class Builder
    {
        private readonly List<Finding> _findings = [];
        private readonly List<NotApplicable> _coverage = [];
        private readonly List<StageTask> _tasks = [];
        private readonly Cell _cell;
        private readonly Rule _rule;

        public Builder(Cell cell, DeltaRobot robot)
        {
            (_cell, _rule) = (cell, robot.Family == RobotFamily.RailDelta ? HoldingRules.Rail : HoldingRules.Crank);
            var chains = RobotInputs.Chains(cell.Robot, new());
            for (int i = 0; i < chains.Length; i++) Chain(chains[i].Id, i);
        }

        public StagePlan Done() => new([.. _findings], [.. _coverage], [.. _tasks]);

        private void Chain(string id, int i)
        {
            var reading = new Reading();
            RobotInputs.Geometry(_cell.Robot, reading);
            var all = RobotInputs.Chains(_cell.Robot, reading);
            foreach (var other in all)
            {
                // Whether others state it decides where a value that this chain lacks is missing.
                reading.Used(other.Fields.Pointer + "/holding", other.Own.Holding);
                reading.Used(other.Fields.Pointer + "/holdingForce", other.Own.HoldingForce);
            }
            var fields = all[i].Fields;
            var subject = new Subject(fields.Pointer);
            var kind = fields.Need("holding", d => d.Holding, Holding.Nothing);
            if (reading.Complete && kind == Holding.Prop)
            {
                _coverage.Add(new(_rule, subject, DynamicsReasons.HeldByProp));
                return;
            }
            if (reading.Complete && kind == Holding.Nothing)
            {
                _findings.Add(new YesNo(_rule, subject, reading.Inputs, false, [fields.PointerOf("holding", d => d.Holding is null ? null : 0)]));
                return;
            }

            // Friction that nobody measured, or a brake that nobody knows the force of, holds nothing that can be counted on.
            double holds = fields.Need("holdingForce", d => d.HoldingForce);
            if (reading.Complete && !(holds > 0))
            {
                _findings.Add(new YesNo(_rule, subject, reading.Inputs, false, [fields.PointerOf("holdingForce", d => d.HoldingForce)]));
                return;
            }
            var read = DynamicsInputs.AtRest(_cell, reading);
            var loaded = read.Dynamics is { } bare ? Loaded(bare, reading) : null;
            if (!reading.Complete) Missing(subject, reading);
            else if (read.Dynamics is { } empty && loaded is not null) Stations(id, i, fields.PointerOf("holdingForce", d => d.HoldingForce), holds, empty, loaded, reading);
            else
            {
                foreach (var wrong in read.Problems)
                    _findings.Add(new Unjudged(_rule, new(wrong.Pointer, id), reading.Inputs, OpenReason.Failed, [], wrong.Reason));
            }
        }

        private void Missing(Subject subject, Reading reading)
        {
            if (reading.Or(_cell.Depth, "/depth", Depth.Quote) < Depth.Build) _coverage.Add(new(_rule, subject, CommonReasons.NotAskedYet));
            else _findings.Add(new Unjudged(_rule, subject, reading.Inputs, OpenReason.Missing, reading.MissingFields));
        }

        /// <summary>With the heaviest part of the brief; null while a mass is missing.</summary>
        private RobotDynamics? Loaded(RobotDynamics empty, Reading reading)
        {
            reading.Used("/brief/parts", string.Join('\n', _cell.Brief.Parts.Keys));
            double heaviest = 0;
            foreach (var (id, part) in _cell.Brief.Parts) heaviest = Math.Max(heaviest, reading.Need(part.Mass, $"/brief/parts/{id}/mass"));
            return double.IsFinite(heaviest) ? empty.With(empty.Platform with { Mass = empty.Platform.Mass + heaviest }) : null;
        }

        private void Stations(string chain, int i, string limitAt, double holds, RobotDynamics empty, RobotDynamics loaded, Reading robot)
        {
            foreach (var (id, _) in _cell.Stations.InOrder())
            {
                var reading = new Reading();
                reading.Used(robot);
                // What a station lacks, reach says.
                if (StationCase.Read(_cell, id, reading) is not { } station) continue;
                var at = station.Reach.SubjectOf(chain);
                var search = new ReachSearch(
                    _rule, at, station.Motion, new HoldingSearch(station.Motion, empty, loaded, station.Reach.Chains, i), holds, CloseEnough * holds,
                    (v, _) => v, Limit.AtMost(holds, new(SourceKind.Cell, limitAt)), reading.Inputs);
                _tasks.Add(new($"{_rule.Id}:{at.Pointer}:{chain}", reading.Key, () => [search.Sample()], stop => [search.Prove(stop)]));
            }
        }
    }
}

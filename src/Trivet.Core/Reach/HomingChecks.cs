using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;

namespace Trivet.Reach;

/// <summary>The rules by which homing is judged. Values are differences of drive readings: metres for rails, radians for cranks.</summary>
public static class HomingRules
{
    /// <summary>
    /// One chain moved alone against the others, as when each is homed by itself. Value: the difference at which a ball joint is levered or
    /// the platform loses its hold; limit: the travel that homing alone may ask for.
    /// </summary>
    public static Rule Alone { get; } = new(
        "reach.homing-alone", "One chain may be homed alone", Trade.Reach, "m", Sense.AtLeast, 0.1, Derived("docs/rules/reach.homing-alone.md"), NeedsProof: true);

    /// <summary>As <see cref="Alone"/>, for arms that turn.</summary>
    public static Rule AloneTurn { get; } = Alone with { Id = "reach.homing-alone-turn", Unit = "rad", Title = "One arm may be homed alone", Method = Derived("docs/rules/reach.homing-alone-turn.md") };

    /// <summary>
    /// All chains homed together from readings that differ. Value: the largest band of readings in which every pose is sound; limit: the
    /// difference that the description allows at the start.
    /// </summary>
    public static Rule Together { get; } = new(
        "reach.homing-together", "The chains may be homed together from where they stand", Trade.Reach, "m", Sense.AtLeast, 0.25,
        Derived("docs/rules/reach.homing-together.md"), NeedsProof: true);

    /// <summary>As <see cref="Together"/>, for arms that turn.</summary>
    public static Rule TogetherTurn { get; } = Together with
    {
        Id = "reach.homing-together-turn",
        Unit = "rad",
        Title = "The arms may be homed together from where they stand",
        Method = Derived("docs/rules/reach.homing-together-turn.md"),
    };

    private static Source Derived(string page) => new(SourceKind.Derived, "trivet", page);
}

/// <summary>
/// Judges homing. Where the description states the largest difference of readings at its start, the chains are homed together and that band
/// is judged; where it does not, each is homed alone over its whole travel, which few rail deltas survive.
/// </summary>
public static class HomingChecks
{
    private const string DifferencePointer = "/robot/homingDifference";

    public static StagePlan Of(Cell cell)
    {
        var reading = new Reading();
        var robot = RobotInputs.Geometry(cell.Robot, reading).Robot;
        if (robot is null) return new([], [], []);

        bool turns = robot.Family == RobotFamily.CrankDelta;
        Rule alone = turns ? HomingRules.AloneTurn : HomingRules.Alone, together = turns ? HomingRules.TogetherTurn : HomingRules.Together;
        var subject = new Subject("/robot");
        var joints = RobotInputs.Joints(cell.Robot, reading);
        double? stated = cell.Robot.HomingDifference;
        reading.Used(DifferencePointer, stated);
        var rule = stated is null ? alone : together;
        var other = stated is null
            ? new NotApplicable(together, subject, ReachReasons.HomedAlone)
            : new NotApplicable(alone, subject, ReachReasons.HomedTogether);
        if (!reading.Complete)
        {
            return (cell.Depth ?? Depth.Quote) < Depth.Build
                ? new([], [other, new(rule, subject, CommonReasons.NotAskedYet)], [])
                : new([new Unjudged(rule, subject, reading.Inputs, OpenReason.Missing, reading.MissingFields)], [other], []);
        }

        var homing = new Homing(robot, joints);
        var question = new Question(homing, robot, rule, reading.Inputs);
        StageTask task = stated is { } difference
            ? new(rule.Id, reading.Key, () => [question.Together(difference, sampled: true, default)], stop => [question.Together(difference, sampled: false, stop)])
            : new(rule.Id, reading.Key, () => question.Alone(together, sampled: true, default), stop => question.Alone(together, sampled: false, stop));
        return new([], [other], [task]);
    }

    private sealed record Question(Homing Homing, DeltaRobot Robot, Rule Rule, ImmutableArray<string> Inputs)
    {
        /// <summary>Boxes for a preview: enough to see a violation, not to prove its absence.</summary>
        private const int PreviewBoxes = 400;
        private const int ProofBoxes = 40_000;

        public Finding Together(double difference, bool sampled, CancellationToken stop)
        {
            var found = Homing.Together(sampled ? PreviewBoxes : ProofBoxes, stop);
            if (stop.IsCancellationRequested) return Stopped(new("/robot"));
            // No spread can be larger than the travel, so where nothing bad was met the travel is the answer.
            double most = Homing.LargestTravel;
            return new Judged(Rule, new("/robot"), Inputs, Math.Min(found.Attained, most), Limit.AtLeast(difference, new(SourceKind.Cell, DifferencePointer)),
                sampled ? Assurance.Sampled : Assurance.Proved)
            {
                Bound = Math.Min(sampled ? found.Attained : found.Bound, most),
            };
        }

        /// <summary>
        /// A finding for each chain. One chain against equal others is one of the ways in which all may differ, so the proved band of those
        /// bounds this value too.
        /// </summary>
        public ImmutableArray<Finding> Alone(Rule together, bool sampled, CancellationToken stop)
        {
            var band = sampled ? default : Homing.Together(ProofBoxes, stop);
            if (stop.IsCancellationRequested) return [.. Robot.ChainIds.Select(id => (Finding)Stopped(new("/robot", id)))];
            double need = Homing.LargestTravel;
            var limit = Limit.AtLeast(need, Rule.Method);
            return [.. Robot.ChainIds.Select((id, i) =>
            {
                // Homing that never meets a bad pose could do with more travel than there is; that it has all it needs is the most to be said.
                double value = Math.Min((sampled ? Homing.Alone(i, 32, 6) : Homing.Alone(i)).Attained, need * (1 + 2 * Rule.ComfortBand));
                var judged = new Judged(Rule, new("/robot", id), Inputs, value, limit, sampled ? Assurance.Sampled : Assurance.Proved)
                {
                    Bound = sampled ? value : Math.Min(value, band.Bound),
                };
                return (Finding)(sampled || judged.Verdict == Verdict.Holds ? judged : judged with { Advice = HomeTogether(together, band) });
            })];
        }

        /// <summary>The remedy is not a longer joint but another order of work: state a band, and home together from within it.</summary>
        private static ImmutableArray<Advice> HomeTogether(Rule together, HomingAllowance band)
        {
            // A round step a person would state: whole millimetres or milliradians.
            double to = Math.Floor(band.Bound / (1 + together.ComfortBand) * 1000 - 1e-9) / 1000;
            return to > 0 ? [new(DifferencePointer, double.NaN, to, band.Bound / to - 1)] : [];
        }

        private Unjudged Stopped(Subject subject) => new(Rule, subject, Inputs, OpenReason.NotComputed, [], CommonReasons.Stopped);
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>The rules by which a fall is judged. They need proof and a fall is an estimate, so they fall short or stay open, and never hold.</summary>
public static class FallRules
{
    /// <summary>Value: largest speed of the platform in any fall after one fault at most, m/s.</summary>
    public static Rule Speed { get; } = Of("motion.fall-speed", "A falling platform is no faster than the risk assessment allows", "m/s");

    /// <summary>Value: largest kinetic energy of everything that falls, joules.</summary>
    public static Rule Energy { get; } = Of("motion.fall-energy", "A falling platform carries no more than the risk assessment allows", "J");

    private static Rule Of(string id, string title, string unit) =>
        new(id, title, Trade.Motion, unit, Sense.AtMost, 0, new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md"), NeedsProof: true);
}

/// <summary>Holds the falls at stations and cycles against what the cell allows, where it states a limit.</summary>
public static class FallChecks
{
    public static StagePlan Of(Cell cell)
    {
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        var tasks = ImmutableArray.CreateBuilder<StageTask>();
        foreach (var (rule, pointer, limit, value) in new[]
        {
            (FallRules.Speed, "/robot/largestFallSpeed", cell.Robot.LargestFallSpeed, (Func<Fall, double>)(f => f.FastestPlatform)),
            (FallRules.Energy, "/robot/largestFallEnergy", cell.Robot.LargestFallEnergy, f => f.Energy),
        })
        {
            if (limit is not { } allowed) coverage.Add(new(rule, new("/robot"), MotionReasons.NoLimit));
            else foreach (string place in Falls.PointersOf(cell)) Ask(rule, pointer, allowed, value, place);
        }
        return new([], coverage.ToImmutable(), tasks.ToImmutable());

        void Ask(Rule rule, string pointer, double allowed, Func<Fall, double> value, string place)
        {
            var reading = new Reading();
            var problems = ImmutableArray.CreateBuilder<Contradiction>();
            reading.Used(pointer, allowed);
            if (Falls.Readable(cell, place, reading, problems))
            {
                tasks.Add(new($"{rule.Id}:{place}", reading.Key,
                    () => [new Unjudged(rule, new(place), reading.Inputs, OpenReason.NotComputed, [])], _ => [Judge(rule, pointer, allowed, value, place, reading.Inputs)]));
            }
            else
            {
                // What a station or a cycle lacks, its own findings say.
                coverage.Add(new(rule, new(place), Reach.ReachReasons.WaitsFor.Naming([.. reading.MissingFields.Concat(problems.Select(p => p.Pointer)).DefaultIfEmpty(place).Distinct()])));
            }
        }

        Finding Judge(Rule rule, string pointer, double allowed, Func<Fall, double> value, string place, ImmutableArray<string> inputs)
        {
            var falls = Falls.At(cell, place, new(), ImmutableArray.CreateBuilder<Contradiction>());
            var (at, worst) = falls.SelectMany(f => f.WithOneFault.Select(o => (f, o.Fall))).MaxBy(f => double.IsNaN(value(f.Fall)) ? double.PositiveInfinity : value(f.Fall));
            var judged = new Judged(rule, new(place), inputs, value(worst), Limit.AtMost(allowed, new(SourceKind.Cell, pointer)), Assurance.Estimated)
            {
                Worst = new(at.Tool_C, double.NaN, at.P_B),
            };
            bool lost = falls.Any(f => f.WithOneFault.Any(o => o.Fall.End is FallEnd.LosesHold or FallEnd.StillMoving));
            return lost && judged.Verdict != Verdict.FallsShort ? new Unjudged(rule, new(place), inputs, OpenReason.Failed, [], MotionReasons.FallNotFollowed) : judged;
        }
    }
}

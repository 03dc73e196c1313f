using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Frames;

namespace Trivet.Motion;

/// <summary>What the frame has to say of a cell: by itself, and under each cycle as the controller times it.</summary>
public static class FrameStage
{
    private static readonly (string Name, Func<FrameLimits, double?> Of, Rule Rule)[] OptionalLimits =
    [
        ("lowestFrequency", l => l.LowestFrequency, FrameRules.Frequency),
        ("largestSag", l => l.LargestSag, FrameRules.Sag),
        ("largestTilt", l => l.LargestTilt, FrameRules.Tilt),
        ("largestFootLoad", l => l.LargestFootLoad, FrameRules.FootLoad),
    ];

    /// <param name="computed">Cycles whose settling time is not typed but what the frame asks.</param>
    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles, FoundFrames frames, IReadOnlySet<string> computed)
    {
        var subject = new Subject("/frame");
        if (!FrameMembers.Any(cell.Frame)) return new([], [new(FrameRules.Described, subject, FrameReasons.None)], []);
        bool asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;
        var reading = new Reading();
        var read = FrameRun.Read(cell, cycles, reading);
        var anchoring = new Reading();
        anchoring.Need(cell.Frame.Feet.Anchored, "/frame/feet/anchored", false);
        if (cell.Frame.Feet.Anchored == true)
        {
            anchoring.Need(cell.Frame.Limits.LargestAnchorPull, "/frame/limits/largestAnchorPull");
            // A foot that turns freely passes no moment to its anchors.
            if (anchoring.Or(cell.Frame.Feet.Hold, "/frame/feet/hold", FootHold.Joint) != FootHold.Pinned) anchoring.Need(cell.Frame.Feet.AnchorSpacing, "/frame/feet/anchorSpacing");
        }

        ImmutableArray<string> inputs = [.. reading.Inputs.Append("/depth").Distinct().Order(StringComparer.Ordinal)];
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        foreach (var problem in read.Problems) findings.Add(new Unjudged(FrameRules.Described, new(problem.Pointer), inputs, OpenReason.Failed, [], problem.Reason));
        Lacking(reading.MissingFields.Where(f => f.StartsWith("/frame", StringComparison.Ordinal)), FrameRules.Described, inputs);
        if (reading.MissingFields.Any(f => !f.StartsWith("/frame", StringComparison.Ordinal)))
            coverage.Add(new(FrameRules.Frequency, subject, FrameReasons.WaitsFor.Naming([.. reading.MissingFields.Where(f => !f.StartsWith("/frame", StringComparison.Ordinal))])));
        Lacking(anchoring.MissingFields, cell.Frame.Feet.Anchored == true ? FrameRules.Anchor : FrameRules.Overturning, [.. anchoring.Inputs.Append("/depth").Order(StringComparer.Ordinal)]);
        if (read.Input is not { } input) return new(findings.ToImmutable(), coverage.ToImmutable(), []);

        foreach (var (name, of, rule) in OptionalLimits)
            if (of(cell.Frame.Limits) is null) coverage.Add(new(rule, subject, FrameReasons.NoLimit.Naming("/frame/limits/" + name)));
        if (cell.Frame.Feet.Anchored is { } anchored)
            coverage.Add(new(anchored ? FrameRules.Overturning : FrameRules.Anchor, subject, anchored ? FrameReasons.Anchored : FrameReasons.NotAnchored));
        foreach (var rule in new[] { FrameRules.AnchorShear, FrameRules.AnchorTogether })
            if (cell.Frame.Feet.Anchored == true && cell.Frame.Limits.LargestAnchorShear is null) coverage.Add(new(rule, subject, FrameReasons.NoLimit.Naming("/frame/limits/largestAnchorShear")));
        if (cell.Frame.Measured is { TapFrequency: null, PullDeflection: null }) coverage.Add(new(FrameRules.Measured, subject, FrameReasons.NotMeasured));

        // One study serves all tasks of this plan.
        FrameRun.UseMeasured(cell.Frame.Measured, reading);
        var study = frames.Of(input, cell.Frame.Measured, reading);
        var still = new Reading();
        still.Used(reading);
        foreach (var (name, of, _) in OptionalLimits) still.Used("/frame/limits/" + name, of(cell.Frame.Limits));
        var tasks = ImmutableArray.CreateBuilder<StageTask>();
        tasks.Add(new("frame", still.Key, () => Later(FrameRules.Frequency, subject, reading.Inputs), _ => Still()));

        var tolerance = FrameRun.Tolerance(cell, new());
        if (tolerance is null) coverage.Add(new(FrameRules.Settle, subject, FrameReasons.NoTolerance));
        if (cell.Motion.Cycles.IsEmpty) coverage.Add(new(FrameRules.Settle, subject, FrameReasons.NoCycles));
        foreach (var cycle in cycles)
        {
            var own = new Reading(reading);
            own.Used(cycle.Reading());
            var of = new Subject(CyclePlan.Pointer(cycle.Id));
            if (cycle.Input?.Loaded is null)
            {
                coverage.Add(new(FrameRules.Settle, of, FrameReasons.WaitsFor.Naming(of.Pointer)));
                continue;
            }

            FrameRun.Tolerance(cell, own);
            own.Used("/frame/limits/largestFootLoad", cell.Frame.Limits.LargestFootLoad);
            own.Used("/frame/limits/largestAnchorPull", cell.Frame.Limits.LargestAnchorPull);
            own.Used("/frame/limits/largestAnchorShear", cell.Frame.Limits.LargestAnchorShear);
            own.Used("/frame/feet/anchorSpacing", cell.Frame.Feet.AnchorSpacing);
            own.Used("/frame/limits/overturningSafety", cell.Frame.Limits.OverturningSafety);
            own.Used("/frame/feet/anchored", cell.Frame.Feet.Anchored);
            string settle = of.Pointer + "/settle";
            tasks.Add(new($"frame:{cycle.Id}", own.Key, () => Later(FrameRules.Settle, of, own.Inputs), _ => Advised(Under(s => s.FineJoints))));

            ImmutableArray<Finding> Under(Func<FrameStudy, JointSamples> joints) => FrameRun.Load(cell, cycle) is { } load
                ? FrameChecks.Under(
                    study.Value, joints(study.Value), cell.Frame, load, FrameRun.LoadFactor(cell, new()), of, tolerance, (cell.Motion.Cycles[cycle.Id].Settle ?? 0, settle, computed.Contains(cycle.Id)), own.Inputs)
                : [];

            // A wait not planned counts as none: what the frame needs is then told as the field to set, so that no rate is promised without it.
            ImmutableArray<Finding> Advised(ImmutableArray<Finding> found)
            {
                Judged[] short_ = [.. found.OfType<Judged>().Where(f => f.Rule == FrameRules.Settle && f.Verdict == Verdict.FallsShort)];
                if (short_.Length == 0 || tolerance is not var (allowed, _)) return found;
                double planned = cell.Motion.Cycles[cycle.Id].Settle ?? double.NaN;
                double enough = FrameRun.EnoughSettle(cell, cycle.Id, study.Value, allowed, short_.Max(f => f.Value));
                return double.IsNaN(enough) ? found : [.. found.Select(f => short_.Contains(f) ? f with { Advice = [new(settle, planned, enough, double.NaN)] } : f)];
            }
        }

        return new(findings.ToImmutable(), coverage.ToImmutable(), tasks.ToImmutable());

        // Beams take longer than an edit may: the fast answer says so, and the proof has them.
        static ImmutableArray<Finding> Later(Rule rule, Subject of, ImmutableArray<string> inputs) => [new Unjudged(rule, of, inputs, OpenReason.NotComputed, [])];

        ImmutableArray<Finding> Still() => FrameChecks.Still(study.Value, cell.Frame, reading.Inputs);

        void Lacking(IEnumerable<string> missing, Rule rule, ImmutableArray<string> from)
        {
            string[] all = [.. missing];
            if (all.Length == 0) return;
            if (asked) findings.Add(new Unjudged(rule, subject, from, OpenReason.Missing, [.. all]));
            else coverage.Add(new(rule, subject, CommonReasons.NotAskedYet));
        }
    }
}

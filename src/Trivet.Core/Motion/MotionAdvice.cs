using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Reach;

namespace Trivet.Motion;

/// <summary>
/// Single changes of the controller's settings, the blend, a dwell or a tracking window that lift a finding about motion, rate or drives to its
/// comfort band, or where none does so, to its limit.
/// <para>
/// A motion slowed down evenly by λ asks 1/λ of the speeds, 1/λ² of the accelerations and 1/λ³ of the jerks; one setting alone does so only where
/// it rules. So each setting is tried by itself, in steps of a twentieth rounded as a person would type, and the least step that does is found by halving.
/// Whatever is offered was timed anew, all cycles of the cell with their drives, and makes nothing else fall short that did not; but for the distance of the
/// law from the bound, which every slower motion lets grow and which the advice tells as worst elsewhere.
/// </para>
/// How it goes wrong: halving takes for granted that more of a change does no less; where that is not so, a smaller change may be missed. That the ways stay in
/// reach with another blend is proved when it is taken.
/// </summary>
public static class MotionAdvice
{
    private const int MostOffered = 3, Steps = 28, More = 6;
    private const double Step = 1.05, BarelyHolds = 0.005;

    private sealed record Lever(string Pointer, double From, bool Up, Func<double, Cell> With)
    {
        /// <summary>After some steps, as it is typed.</summary>
        public double To(int steps) => FastestSettings.Typed(Up ? From * Math.Pow(Step, steps) : From / Math.Pow(Step, steps), Up);
    }

    /// <summary>Whether a slower or faster motion could matter to the rule at all.</summary>
    public static bool Covers(Rule rule) => IsRate(rule) || Limits.Contains(rule.Id) || OfDrives.Contains(rule.Id);

    private static readonly ImmutableHashSet<string> Limits =
    [
        MotionRules.Speed.Id, MotionRules.TurnSpeed.Id, MotionRules.Acceleration.Id, MotionRules.TurnAcceleration.Id, MotionRules.Jerk.Id, MotionRules.TurnJerk.Id,
        MotionRules.Force.Id, MotionRules.Torque.Id, MotionRules.RodForce.Id, MotionRules.JointPreload.Id, MotionRules.Stray.Id, MotionRules.Window.Id,
    ];

    private static readonly ImmutableHashSet<string> OfDrives =
    [
        DriveRules.Torque.Id, DriveRules.Speed.Id, DriveRules.Continuous.Id, DriveRules.Temperature.Id, DriveRules.LostStep.Id, DriveRules.Strand.Id,
        DriveRules.Slack.Id, DriveRules.Tooth.Id, DriveRules.Transmission.Id, DriveRules.Following.Id, DriveRules.Resonance.Id, DriveRules.VoltageLow.Id,
        DriveRules.VoltageHigh.Id, DriveRules.Braking.Id, DriveRules.SupplyPower.Id,
    ];

    private static bool IsRate(Rule rule) => rule.Id == MotionRules.MeanRate.Id || rule.Id == MotionRules.PeakRate.Id || rule.Id == MotionRules.Law.Id;

    /// <summary>Changes that help, the smallest first; empty when none does, or when stopped.</summary>
    public static ImmutableArray<Advice> For(Cell cell, Finding finding, CancellationToken stop)
    {
        if (finding is not Judged || !Covers(finding.Rule)) return [];
        var before = Margins(cell, bound: true, drives: true);
        if (!before.ContainsKey(finding.Id)) return [];
        var found = new List<(Advice Advice, double Change)>();
        foreach (var lever in Levers(cell, finding))
        {
            if (stop.IsCancellationRequested) return [];
            if (!(lever.From > 0) || Least(finding, lever, stop) is not { } least) continue;
            // Where the smallest change that helps harms something else, a little more of it may not: limits of a motion don't rise evenly.
            for (int steps = least; steps <= Math.Min(least + More, Steps) && !stop.IsCancellationRequested; steps++)
            {
                double to = lever.To(steps);
                if (to == lever.From || Offered(finding, lever, to, before) is not { } advice) continue;
                found.Add((advice, Math.Abs(Math.Log(to / lever.From))));
                break;
            }
        }
        return [.. found.OrderBy(f => f.Change).ThenBy(f => f.Advice.Pointer, StringComparer.Ordinal).Select(f => f.Advice).Take(MostOffered)];
    }

    /// <summary>The advice, where the change keeps what it promises and makes nothing else fall short.</summary>
    private static Advice? Offered(Finding finding, Lever lever, double to, Dictionary<string, double> before)
    {
        var then = Margins(lever.With(to), bound: true, drives: true);
        if (!then.TryGetValue(finding.Id, out double margin) || !(margin >= 0)) return null;
        if (then.Any(t => t.Key != finding.Id && !t.Key.StartsWith(MotionRules.Law.Id, StringComparison.Ordinal) && !(t.Value >= 0) && !(t.Value >= before.GetValueOrDefault(t.Key))))
            return null;
        double elsewhere = then.Where(t => t.Key != finding.Id).Select(t => t.Value).DefaultIfEmpty(double.NaN).Min();
        return new(lever.Pointer, lever.From, to, margin, elsewhere);
    }

    /// <summary>The smallest step of a lever that lifts the finding to its comfort band; to its limit where the largest step does no more; null where not even that.</summary>
    private static int? Least(Finding finding, Lever lever, CancellationToken stop)
    {
        double most = Margin(Steps);
        double target = most >= Math.Max(finding.Rule.ComfortBand, BarelyHolds) ? Math.Max(finding.Rule.ComfortBand, BarelyHolds) : BarelyHolds;
        if (!(most >= target)) return null;
        int low = 0, high = Steps;
        while (high - low > 1 && !stop.IsCancellationRequested)
        {
            int middle = (low + high) / 2;
            if (Margin(middle) >= target) high = middle;
            else low = middle;
        }
        return high;

        double Margin(int steps) =>
            Margins(lever.With(lever.To(steps)), finding.Rule.Id == MotionRules.Law.Id, OfDrives.Contains(finding.Rule.Id)).GetValueOrDefault(finding.Id, double.NaN);
    }

    private static IEnumerable<Lever> Levers(Cell cell, Finding finding)
    {
        var settings = cell.Motion.Settings;
        bool faster = IsRate(finding.Rule);
        string id = finding.Subject.Pointer.StartsWith("/motion/cycles/", StringComparison.Ordinal) ? finding.Subject.Pointer[15..] : Slowest(cell);
        if (finding.Rule.Id == MotionRules.Window.Id)
        {
            string belt = finding.Subject.Case;
            if (cell.Stations.TryGetValue(belt, out var station))
                yield return new($"/stations/{belt}/window", station.Window ?? double.NaN, true, v => cell with { Stations = cell.Stations.SetItem(belt, station with { Window = v }) });
            foreach (var dwell in Dwells()) yield return dwell;
            yield break;
        }
        if (finding.Rule.Id == MotionRules.Stray.Id)
        {
            yield return Blend(up: false);
            yield break;
        }
        yield return Setting("pathSpeed", settings.PathSpeed, (s, v) => s with { PathSpeed = v });
        yield return Setting("pathAcceleration", settings.PathAcceleration, (s, v) => s with { PathAcceleration = v });
        if (settings.Profile != ProfileKind.Trapezoidal) yield return Setting("pathJerk", settings.PathJerk, (s, v) => s with { PathJerk = v });
        yield return Blend(up: true);
        if (faster && finding.Rule.Id != MotionRules.Law.Id)
        {
            foreach (var dwell in Dwells()) yield return dwell;
        }

        Lever Setting(string name, double? from, Func<MotionSettings, double, MotionSettings> with) =>
            new($"/motion/settings/{name}", from ?? double.NaN, faster, v => cell with { Motion = cell.Motion with { Settings = with(settings, v) } });

        Lever Blend(bool up) => cell.Motion.Cycles[id].Blend is { } own
            ? new($"{CyclePlan.Pointer(id)}/blend", own, up, v => OfCycle(c => c with { Blend = v }))
            : new("/motion/settings/blend", settings.Blend ?? double.NaN, up, v => cell with { Motion = cell.Motion with { Settings = settings with { Blend = v } } });

        IEnumerable<Lever> Dwells() =>
        [
            new($"{CyclePlan.Pointer(id)}/pickDwell", cell.Motion.Cycles[id].PickDwell ?? double.NaN, false, v => OfCycle(c => c with { PickDwell = v })),
            new($"{CyclePlan.Pointer(id)}/placeDwell", cell.Motion.Cycles[id].PlaceDwell ?? double.NaN, false, v => OfCycle(c => c with { PlaceDwell = v })),
        ];

        Cell OfCycle(Func<Cycle, Cycle> change) =>
            cell with { Motion = cell.Motion with { Cycles = cell.Motion.Cycles.SetItem(id, change(cell.Motion.Cycles[id])) } };
    }

    private static string Slowest(Cell cell) => TimedCycle.Of(cell).MaxBy(c => c.ByController?.Controller.CycleTime ?? 0)!.Id;

    /// <summary>What the controller's moves ask, without the bound.</summary>
    private static CycleResult Used(CycleResult by)
    {
        var (input, law) = (by.Input, by.Controller);
        LoadSeries? full = CycleTiming.LoadsOf(law.Loaded, input.Loaded), bare = CycleTiming.LoadsOf(law.Empty, input.Empty);
        return by with
        {
            LoadedUse = CycleTiming.Use(law.Loaded, input, input.Loaded, full),
            EmptyUse = CycleTiming.Use(law.Empty, input, input.Empty, bare),
            LoadedLoads = full,
            EmptyLoads = bare,
        };
    }

    /// <summary>Margins of all findings about motion, and of the drives' where asked for, by their ids; what has no margin is left out.</summary>
    private static Dictionary<string, double> Margins(Cell cell, bool bound, bool drives)
    {
        var cycles = TimedCycle.Of(cell);
        var all = new Dictionary<string, double>(StringComparer.Ordinal);
        if (cycles.Any(c => c.ByController is null)) return all;
        foreach (var cycle in cycles)
        {
            var by = cycle.ByController!;
            var result = bound
                ? CycleTiming.Solve(by, PathBound.UsualPoints, states: false)
                : Used(by);
            Add(CycleChecks.Of(cell, result));
        }
        Add(CycleChecks.Rates(cell, [.. cycles.Select(c => c.ByController!)], new()));
        if (drives && cycles.All(c => c.Input?.Loaded is not null))
            Add(DriveChecks.Of(cell, [.. cycles.Select(c => c.Trace?.Series).OfType<CycleSeries>()]).Findings);
        return all;

        // What was judged before and can not be now counts as worse than anything.
        void Add(IEnumerable<Finding> findings)
        {
            foreach (var f in findings)
                if (f is Judged judged) all[f.Id] = double.IsNaN(judged.Margin) ? double.NegativeInfinity : judged.Margin;
                else if (f is Unjudged { Reason: OpenReason.Failed or OpenReason.NotComputed }) all[f.Id] = double.NegativeInfinity;
        }
    }
}

using System.Collections.Concurrent;
using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Bolting;
using Trivet.Cabling;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Gripping;
using Trivet.Listing;
using Trivet.Motion;
using Trivet.Powering;
using Trivet.Procedures;
using Trivet.Protecting;
using Trivet.Reach;
using Trivet.Settings;
using Trivet.Signals;
using Trivet.Stopping;
using Trivet.Tooling;

namespace Trivet.Assessment;

/// <summary>
/// Assesses one cell as it is edited. Each task's findings are remembered under the values of the fields it used, so that an edit
/// repeats only the tasks that looked at the edited field. Safe to call from several threads; what it proves depends on the cell alone, a preview also on the settling times proved before.
/// <para>
/// Stages, in this order: what the brief leaves open; reach, station by station and rule by rule; homing; motion and drives, cycle by cycle; the tool stack; the frame. The tasks of reach run side by
/// side; their findings are gathered in the order of the plan, so the number of threads changes nothing.
/// </para>
/// </summary>
public sealed class Assessor
{
    // Advice takes some hundred judgements each; what falls short most is said first.
    private const int MostAdvised = 4;

    // An old entry costs some kilobytes; after this many the memory starts afresh.
    private const int MostRemembered = 4096;

    private readonly ConcurrentDictionary<ReadKey, ImmutableArray<Finding>> _proved = new();
    private readonly FoundPlates _plates = new();
    private readonly FoundFrames _frames = new();
    private readonly Completion _completion;
    private readonly ImmutableArray<KeptStage> _electrical = KeptStage.Electrical();
    private volatile LastFound? _procedure;

    public Assessor() => _completion = new(_plates, _frames);

    /// <summary>Tasks proved side by side at most; a page that must stay quick while it proves leaves itself a core.</summary>
    public int MostSideBySide { get; init; } = -1;

    /// <summary>A cell with what is computed in the place of what it leaves to computation: plates, and the settling times that its frame asks.</summary>
    public CompletedCell Complete(Cell cell, CancellationToken stop) => _completion.Of(cell, compute: true, stop);

    /// <summary>The fast answer: closed forms, what was proved before, and the rest of reach sampled. A settling time not computed yet is the last there was.</summary>
    public Assessed Preview(Cell cell)
    {
        var whole = _completion.Of(cell, compute: false, CancellationToken.None);
        return Preview(whole, PlanOf(whole));
    }

    private Assessed Preview(CompletedCell cell, StagePlan plan)
    {
        var findings = new ImmutableArray<Finding>[plan.Tasks.Length];
        int known = 0;
        Parallel.For(0, findings.Length, i =>
        {
            var task = plan.Tasks[i];
            if (_proved.TryGetValue(new(task.Name, task.Used), out findings[i])) Interlocked.Increment(ref known);
            else findings[i] = task.Sample();
        });
        return Gather(cell, plan, findings, proved: known == findings.Length && cell.Waits.All(w => w.Known is not (WaitKnown.LastComputed or WaitKnown.NotComputed)));
    }

    /// <summary>
    /// Reach of the stations, every task sampled with the same effort, whatever was proved before: for holding many variants of a cell
    /// against each other. A proof is stricter than samples, so one variant that was proved would look worse than its neighbours.
    /// </summary>
    public static Ledger SampledReach(Cell cell)
    {
        var plan = StationStage.Of(cell);
        return Ledger.Of(plan.Findings.Concat(plan.Tasks.SelectMany(t => t.Sample())), plan.Coverage);
    }

    /// <summary>The full answer.</summary>
    /// <param name="progress">Fraction done, 0 to 1.</param>
    /// <exception cref="OperationCanceledException">Stopped; what was proved until then is remembered.</exception>
    /// <param name="withAdvice">Advice tries many changes and may take longer than the proof; a page shows the verdicts first.</param>
    public Assessed Prove(Cell cell, IProgress<double>? progress, CancellationToken stop, bool withAdvice = true)
    {
        if (_proved.Count > MostRemembered) _proved.Clear();
        var whole = Complete(cell, stop);
        var plan = PlanOf(whole);
        var results = new ImmutableArray<Finding>[plan.Tasks.Length];
        int done = 0;
        Parallel.For(0, results.Length, SideBySide(stop), i =>
        {
            var key = new ReadKey(plan.Tasks[i].Name, plan.Tasks[i].Used);
            if (!_proved.TryGetValue(key, out results[i]))
            {
                results[i] = plan.Tasks[i].Prove(stop);
                if (!stop.IsCancellationRequested) _proved[key] = results[i];
            }
            progress?.Report(Interlocked.Increment(ref done) / (double)results.Length);
        });
        stop.ThrowIfCancellationRequested();
        var assessed = Gather(whole, plan, results, proved: true);
        return withAdvice ? Advised(assessed, stop) : assessed;
    }

    /// <summary>Single changes that would make a finding hold, each tried out on the fast answer; empty when none does.</summary>
    /// <remarks>A change is tried on stations and homing; on cycles only where the finding is one of theirs, since those take far longer. Other trades are
    /// judged once it is taken.</remarks>
    public ImmutableArray<Advice> Advise(Cell cell, Finding finding, CancellationToken stop)
    {
        cell = _completion.Of(cell, compute: false, stop).Cell;
        if (finding.Rule.Trade == Trade.Motion) return MotionAdvice.For(cell, finding, stop);
        bool ofCycle = finding.Subject.Pointer.StartsWith("/motion", StringComparison.Ordinal);
        return AdviceSearch.For(cell, finding, changed => Preview(new CompletedCell(changed, changed, [], []), ofCycle ? OfReach(changed) + MotionStage.Of(changed, TimedCycle.Of(changed), ImmutableDictionary<string, OpenReason>.Empty) : OfReach(changed)).Ledger, stop);
    }

    /// <summary>The worst of what falls short, with advice; a finding that brought its own keeps it.</summary>
    private Assessed Advised(Assessed assessed, CancellationToken stop)
    {
        var findings = assessed.Ledger.Findings;
        var asking = findings.Where(f => f is { Verdict: Verdict.FallsShort, Advice.IsEmpty: true } && (f.Rule.Trade == Trade.Reach || MotionAdvice.Covers(f.Rule)))
            .GroupBy(f => f.Rule.Trade).SelectMany(g => g.Take(MostAdvised)).ToArray();
        var advice = new ImmutableArray<Advice>[asking.Length];
        Parallel.For(0, asking.Length, SideBySide(stop), i => advice[i] = Advise(assessed.Cell, asking[i], stop));
        for (int i = 0; i < asking.Length; i++) findings = findings.Replace(asking[i], asking[i] with { Advice = advice[i] });
        return assessed with { Ledger = assessed.Ledger with { Findings = findings } };
    }

    private ParallelOptions SideBySide(CancellationToken stop) => new() { MaxDegreeOfParallelism = MostSideBySide, CancellationToken = stop };

    /// <summary>What the frame alone has to say, proved.</summary>
    public ImmutableArray<Finding> OfFrame(CompletedCell whole, CancellationToken stop)
    {
        var stage = FrameStage.Of(whole.Cell, TimedCycle.Of(whole.Cell), _frames, whole.Computed);
        return [.. Ledger.Of([.. stage.Findings.Concat(stage.Tasks.SelectMany(t => t.Prove(stop))).Select(whole.WithSources)], []).Findings];
    }

    private StagePlan PlanOf(CompletedCell whole)
    {
        var cell = whole.Cell;
        // Each cycle is read and timed once, for all trades that take its motion.
        var cycles = TimedCycle.Of(cell);
        var drives = DriveCase.Of(cell);
        return OfReach(cell)
            + MotionStage.Of(cell, cycles, whole.Unsettled)
            + DriveStage.Of(cell, cycles, drives)
            + FallChecks.Of(cell)
            + ToolChecks.Of(cell)
            + GripStage.Of(cell, cycles)
            + ProtectStage.Of(cell, cycles)
            + AdapterChecks.Of(cell, _plates)
            + JointStage.Of(cell, cycles, _plates)
            + MotorFeedStage.Of(cell, cycles, drives)
            + _electrical.Select(k => k.Of(cell)).Aggregate((a, b) => a + b)
            + CablingStage.Loops(cell)
            + SignalStage.Of(cell)
            + SettingStage.Of(cell)
            + StopStage.Of(cell)
            + HazardStage.Of(cell)
            + PartsChecks.Check(cell, _plates)
            + FrameStage.Of(cell, cycles, _frames, whole.Computed)
            + ProcedureStage.Of(cell, _procedure?.Findings, found => _procedure = new(found));
    }

    private sealed record LastFound(ImmutableArray<Finding> Findings);

    private static StagePlan OfReach(Cell cell) => StationStage.Of(cell) + HomingChecks.Of(cell) + HoldingChecks.Of(cell);

    private static Assessed Gather(CompletedCell whole, StagePlan plan, IEnumerable<ImmutableArray<Finding>> tasks, bool proved)
    {
        var findings = BriefChecks.Check(whole.Stated).Concat(whole.Differs).Concat(plan.Findings).Concat(tasks.SelectMany(f => f)).Select(whole.WithSources);
        return new(whole.Stated, CellGeometry.Of(whole.Cell), Ledger.Of(findings, plan.Coverage), proved) { Planned = whole.Cell, Waits = whole.Waits };
    }
}

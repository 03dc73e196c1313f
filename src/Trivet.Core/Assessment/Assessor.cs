using System.Collections.Concurrent;
using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Bolting;
using Trivet.Cabinets;
using Trivet.Cabling;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Gripping;
using Trivet.Listing;
using Trivet.Motion;
using Trivet.Powering;
using Trivet.Protecting;
using Trivet.Reach;
using Trivet.Signals;
using Trivet.Tooling;
using Trivet.Wiring;

namespace Trivet.Assessment;

/// <summary>
/// Assesses one cell as it is edited. Each task's findings are remembered under the values of the fields it used, so that an edit
/// repeats only the tasks that looked at the edited field. Safe to call from several threads; what it returns depends on the cell alone.
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

    /// <summary>Tasks proved side by side at most; a page that must stay quick while it proves leaves itself a core.</summary>
    public int MostSideBySide { get; init; } = -1;

    /// <summary>The fast answer: closed forms, what was proved before, and the rest of reach sampled.</summary>
    public Assessed Preview(Cell cell) => Preview(cell, PlanOf(cell));

    private Assessed Preview(Cell cell, StagePlan plan)
    {
        var findings = new ImmutableArray<Finding>[plan.Tasks.Length];
        int known = 0;
        Parallel.For(0, findings.Length, i =>
        {
            var task = plan.Tasks[i];
            if (_proved.TryGetValue(new(task.Name, task.Used), out findings[i])) Interlocked.Increment(ref known);
            else findings[i] = task.Sample();
        });
        return Gather(cell, plan, findings, proved: known == findings.Length);
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
        var plan = PlanOf(cell);
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
        var assessed = Gather(cell, plan, results, proved: true);
        return withAdvice ? Advised(assessed, stop) : assessed;
    }

    /// <summary>Single changes that would make a finding hold, each tried out on the fast answer; empty when none does.</summary>
    /// <remarks>A change is tried on stations and homing; on cycles only where the finding is one of theirs, since those take far longer. Other trades are
    /// judged once it is taken.</remarks>
    public ImmutableArray<Advice> Advise(Cell cell, Finding finding, CancellationToken stop)
    {
        if (finding.Rule.Trade == Trade.Motion) return MotionAdvice.For(cell, finding, stop);
        bool ofCycle = finding.Subject.Pointer.StartsWith("/motion", StringComparison.Ordinal);
        return AdviceSearch.For(cell, finding, changed => Preview(changed, ofCycle ? OfReach(changed) + MotionStage.Of(changed, TimedCycle.Of(changed)) : OfReach(changed)).Ledger, stop);
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

    private StagePlan PlanOf(Cell cell)
    {
        // Each cycle is read and timed once, for all trades that take its motion.
        var cycles = TimedCycle.Of(cell);
        var drives = DriveCase.Of(cell);
        return OfReach(cell)
            + MotionStage.Of(cell, cycles)
            + DriveStage.Of(cell, cycles, drives)
            + FallChecks.Of(cell)
            + ToolChecks.Of(cell)
            + GripStage.Of(cell, cycles)
            + ProtectStage.Of(cell, cycles)
            + AdapterChecks.Of(cell, _plates)
            + JointStage.Of(cell, cycles, _plates)
            + CabinetStage.Of(cell)
            + PowerStage.Of(cell)
            + MotorFeedStage.Of(cell, cycles, drives)
            + WiringStage.Of(cell)
            + CablingStage.Of(cell)
            + SignalStage.Of(cell)
            + PartsChecks.Check(cell, _plates)
            + FrameStage.Of(cell, cycles);
    }

    private static StagePlan OfReach(Cell cell) => StationStage.Of(cell) + HomingChecks.Of(cell) + HoldingChecks.Of(cell);

    private static Assessed Gather(Cell cell, StagePlan plan, IEnumerable<ImmutableArray<Finding>> tasks, bool proved)
    {
        var findings = BriefChecks.Check(cell).Concat(plan.Findings).Concat(tasks.SelectMany(f => f));
        return new(cell, CellGeometry.Of(cell), Ledger.Of(findings, plan.Coverage), proved);
    }
}

using System.Collections.Immutable;
using Trivet.Journal;
using Trivet.Procedures;

namespace Trivet.AsBuilt;

/// <summary>A field that is not as it was.</summary>
/// <param name="From">As it was, with its unit; empty where it was not stated.</param>
public sealed record FieldMove(string Pointer, string From, string To);

/// <summary>
/// Lays the journal over the procedure. It is a fold: the same entries give the same answer in whatever order they came, and every entry is
/// found again in the result, whether it still counts or not.
/// </summary>
public sealed class Fold
{
    private readonly ImmutableArray<Step> _steps;
    private readonly Releasing _releasing;
    private readonly IReadOnlyDictionary<string, ImmutableArray<FieldMove>> _moves;
    private readonly ImmutableArray<Kept> _order;
    private readonly Dictionary<string, Step> _byId;
    private readonly Dictionary<string, List<(int Index, Kept Kept)>> _about = new(StringComparer.Ordinal);
    private readonly ImmutableArray<Kept>.Builder _loose = ImmutableArray.CreateBuilder<Kept>();
    private readonly ImmutableArray<Mismatch>.Builder _mismatches = ImmutableArray.CreateBuilder<Mismatch>();
    private readonly Dictionary<string, Weakness> _flaws = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ImmutableArray<string>> _holdPoints = new(StringComparer.Ordinal);
    private readonly List<(int Index, Kept Kept, Upset Upset)> _upsets = [];
    private EnergyLevel? _level;
    private Kept? _levelEntry;

    private Fold(
        ImmutableArray<Step> steps, IEnumerable<Kept> entries, Releasing releasing, IReadOnlyDictionary<string, ImmutableArray<FieldMove>> moves)
    {
        (_steps, _releasing, _moves, _order) = (steps, releasing, moves, Ordering.Of(entries));
        _byId = steps.ToDictionary(s => s.Id, StringComparer.Ordinal);
    }

    /// <param name="steps">The procedure of the cell as it is now.</param>
    /// <param name="entries">The journal of this cell.</param>
    /// <param name="moves">For each revision that entries name: the fields that are not now what they were then. A revision that is not in it is not known.</param>
    public static Progress Of(
        ImmutableArray<Step> steps, IEnumerable<Kept> entries, Releasing releasing, IReadOnlyDictionary<string, ImmutableArray<FieldMove>> moves)
    {
        var fold = new Fold(steps, entries, releasing, moves);
        fold.Sort();
        fold.Walk();
        return fold.Finish();
    }

    /// <summary>Finds the step of each entry: its own, or that of the entry it names.</summary>
    private void Sort()
    {
        var stepOf = new Dictionary<string, string>(StringComparer.Ordinal);
        for (int i = 0; i < _order.Length; i++)
        {
            var (entry, hash) = (_order[i].Entry, _order[i].Hash);
            string step = entry.Says switch
            {
                Corrected corrected when stepOf.TryGetValue(corrected.Entry, out string? named) => named,
                Released released when stepOf.TryGetValue(released.Entry, out string? named) => named,
                _ => entry.Step,
            };
            stepOf[hash] = step;
            if (!_byId.TryGetValue(step, out var known))
            {
                _loose.Add(_order[i]);
                if (step.Length > 0) Tell(MismatchKind.UnknownStep, _order[i]);
                continue;
            }
            if (!_about.TryGetValue(step, out var about)) _about[step] = about = [];
            about.Add((i, _order[i]));
            if (entry.Ask.Length > 0 && known.Asks.All(a => a.Id != entry.Ask)) Tell(MismatchKind.UnknownAsk, _order[i]);
        }
    }

    /// <summary>Goes through the journal once, as it happened: what was switched on, what was upset, and what was done when it should not have been.</summary>
    private void Walk()
    {
        var withdrawn = _order.Select(k => k.Entry.Says).OfType<Corrected>().Select(c => c.Entry).ToHashSet(StringComparer.Ordinal);
        for (int i = 0; i < _order.Length; i++)
        {
            var kept = _order[i];
            switch (kept.Entry.Says)
            {
                case EnergyDeclared declared:
                    bool measured = declared.Level > EnergyLevel.ControlSupplyOnly || (declared.Dead is { Unit: "V" } dead && Math.Abs(dead.Value) <= MeasuredDead.Volts);
                    if (!measured) Tell(MismatchKind.NotMeasuredDead, kept);
                    if (measured && !withdrawn.Contains(kept.Hash)) (_level, _levelEntry) = (declared.Level, kept);
                    else Unknown();
                    break;
                case Happened happened when !withdrawn.Contains(kept.Hash):
                    _upsets.Add((i, kept, happened.Upset));
                    if (happened.Upset is Upset.PowerCycled or Upset.Transported) Unknown();
                    break;
                case Interrupted when !withdrawn.Contains(kept.Hash):
                    Unknown();
                    break;
                case Begun or Measured or Chosen or Counted or Ticked or Photographed when _byId.TryGetValue(kept.Entry.Step, out var step):
                    Hold(i, kept, step);
                    break;
            }
        }
    }

    private void Unknown() => (_level, _levelEntry) = (null, null);

    /// <summary>What is done at the machine is held against what was live, and against the hold points before it.</summary>
    private void Hold(int index, Kept kept, Step step)
    {
        if (_level > step.Energy)
        {
            Tell(MismatchKind.MorePowerThanAllowed, kept);
            _flaws[kept.Hash] = Weakness.MorePowerThanAllowed;
        }
        if (HoldPointsBefore(step).Any(h => !Judge(_byId[h], index).LetsOn))
        {
            Tell(MismatchKind.BeforeHoldPoint, kept);
            _flaws.TryAdd(kept.Hash, Weakness.BeforeHoldPoint);
        }
    }

    private Progress Finish()
    {
        var judged = _steps.ToDictionary(s => s.Id, s => Judge(s), StringComparer.Ordinal);
        var stale = _steps.ToDictionary(s => s.Id, s => judged[s.Id].Closed ? StaleBy(s, judged[s.Id]) : [], StringComparer.Ordinal);
        bool LetsOn(string id) => judged[id].LetsOn && stale[id].IsEmpty;

        var states = ImmutableArray.CreateBuilder<StepState>(_steps.Length);
        foreach (var step in _steps)
        {
            var (judgement, why) = (judged[step.Id], stale[step.Id]);
            foreach (var vain in judgement.Vain) Tell(MismatchKind.ReleaseDoesNotCount, vain);
            Apart(step, judgement);
            bool over = judgement.Closed && why.IsEmpty && judgement.Standing != Standing.OutOfTolerance;
            states.Add(new StepState
            {
                Step = step,
                Standing = why.Length > 0 ? Standing.Stale
                    : judgement.Standing == Standing.NotBegun && WaitsFor(step).Any() ? Standing.Waiting
                    : judgement.Standing,
                Asks = judgement.Asks,
                LetsOn = LetsOn(step.Id),
                WaitsFor = [.. WaitsFor(step)],
                // In the shop and on the way nothing is connected, unless someone declares it.
                EnergyFits = _level is { } level ? level <= step.Energy : step.Place != StepPlace.Site,
                Stale = why,
                Weaknesses = judgement.Weaknesses,
                ToRelease = judgement.ToRelease,
                ReleaseNames = judgement.ReleaseNames,
                Words = judgement.Words,
                MinutesLeft = over ? 0 : step.Minutes,
                History = [.. About(step).Select(a => a.Kept)],
            });
        }
        var all = states.MoveToImmutable();
        return new(all, _level, _levelEntry, _loose.ToImmutable(), _mismatches.ToImmutable(), all.Sum(s => s.MinutesLeft), LongestChain(all));

        // What comes directly before is told; a hold point farther off only where all between it and the step is done all the same.
        IEnumerable<string> WaitsFor(Step step)
        {
            string[] directly = [.. step.After.Where(id => _byId.ContainsKey(id) && !LetsOn(id)).Order(StringComparer.Ordinal)];
            return directly.Length > 0 ? directly : HoldPointsBefore(step).Where(id => !LetsOn(id)).Order(StringComparer.Ordinal);
        }
    }

    private ImmutableArray<Staleness> StaleBy(Step step, StepJudged judged)
    {
        var why = new List<Staleness>();
        foreach (var evidence in judged.Counting)
        {
            string revision = evidence.Written.Entry.Revision;
            if (_moves.TryGetValue(revision, out var moves))
                why.AddRange(moves.Where(m => step.Inputs.Contains(m.Pointer)).Select(m => new Staleness.Field(m.Pointer, m.From, m.To)));
            else
                why.Add(new Staleness.UnknownRevision(revision));
            why.AddRange(_upsets.Where(u => u.Index > evidence.Index && step.UpsetBy.Contains(u.Upset)).Select(u => new Staleness.Upset(u.Upset, u.Kept.Hash)));
        }
        if (judged.Counting.Length > 0)
            foreach (string id in step.After)
                if (_byId.TryGetValue(id, out var before)) why.AddRange(ResultsSince(before, judged.Counting[0].Index));
        return [.. why.Distinct()];
    }

    /// <summary>What an earlier step answers otherwise than when a step that comes after it was done.</summary>
    private IEnumerable<Staleness> ResultsSince(Step before, int index)
    {
        Replay then = Replay.Of(About(before), index), now = Replay.Of(About(before));
        foreach (var asked in before.Asks)
            if (then.Last(asked.Id) is { } old && now.Last(asked.Id) is { } latest && ReadingChecks.Differs(asked, old.Answer, latest.Answer))
                yield return new Staleness.Result(before.Id, asked.Id, latest.Kept.Hash);
    }

    /// <summary>Two devices answered the same otherwise, and the later could not have known of the earlier: it had not been received.</summary>
    private void Apart(Step step, StepJudged judged)
    {
        var live = Replay.Of(About(step)).Live;
        foreach (var counting in judged.Counting.Where(c => c.Ask.Length > 0))
        {
            var asked = step.Asks.First(a => a.Id == counting.Ask);
            foreach (var other in live.Where(e => e.Ask == counting.Ask && e.Index < counting.Index && e.Written.Entry.Device != counting.Written.Entry.Device))
                if (other.Written.Receipt is { } receipt && receipt.Ticks > Ordering.TicksOf(counting.Written) && ReadingChecks.Differs(asked, other.Answer, counting.Answer))
                    Tell(MismatchKind.AnsweredApart, counting.Kept, other.Kept.Hash);
        }
    }

    private StepJudged Judge(Step step, int before = int.MaxValue) => StepChecks.Of(step, Replay.Of(About(step), before), _releasing, _flaws);

    private List<(int Index, Kept Kept)> About(Step step) => _about.GetValueOrDefault(step.Id) ?? [];

    /// <summary>The hold points that a step comes after, directly or by way of others, nearest first.</summary>
    private ImmutableArray<string> HoldPointsBefore(Step step)
    {
        if (_holdPoints.TryGetValue(step.Id, out var known)) return known;
        var found = ImmutableArray.CreateBuilder<string>();
        var seen = new HashSet<string>(StringComparer.Ordinal) { step.Id };
        var next = new Queue<string>(step.After);
        while (next.TryDequeue(out string? id))
        {
            if (!seen.Add(id) || !_byId.TryGetValue(id, out var before)) continue;
            if (before.HoldPoint) found.Add(id);
            foreach (string further in before.After) next.Enqueue(further);
        }
        return _holdPoints[step.Id] = found.ToImmutable();
    }

    /// <summary>Minutes of the longest way through what is left, each step after those it waits for.</summary>
    private static double LongestChain(ImmutableArray<StepState> states)
    {
        var byId = states.ToDictionary(s => s.Step.Id, StringComparer.Ordinal);
        var known = new Dictionary<string, double>(StringComparer.Ordinal);
        return states.Select(s => Until(s.Step.Id)).DefaultIfEmpty(0).Max();

        double Until(string id)
        {
            if (!byId.TryGetValue(id, out var state)) return 0;
            if (known.TryGetValue(id, out double minutes)) return minutes;
            // A ring of steps would wait for ever; each counts once here, so that this ends.
            known[id] = 0;
            return known[id] = state.MinutesLeft + state.Step.After.Select(Until).DefaultIfEmpty(0).Max();
        }
    }

    private void Tell(MismatchKind kind, Kept kept, params ImmutableArray<string> others) =>
        _mismatches.Add(new(kind, kept.Entry.Device, kept.Entry.Sequence, [kept.Hash, .. others]));
}

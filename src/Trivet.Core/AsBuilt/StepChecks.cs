using System.Collections.Immutable;
using Trivet.Findings;
using Trivet.Journal;
using Trivet.Procedures;

namespace Trivet.AsBuilt;

/// <summary>A step judged by what was answered, before it is asked whether that still stands.</summary>
internal sealed record StepJudged(
    Standing Standing, bool Closed, bool LetsOn, ImmutableArray<AskState> Asks, ImmutableArray<Evidence> Counting, ImmutableArray<Weakness> Weaknesses,
    ImmutableArray<Deviation> ToRelease, string? ReleaseNames, ImmutableArray<Kept> Vain, string Words);

/// <summary>Judges a step by its answers.</summary>
internal static class StepChecks
{
    /// <param name="flaws">Weaknesses that entries have from when they were written.</param>
    public static StepJudged Of(Step step, Replay replay, Releasing releasing, IReadOnlyDictionary<string, Weakness> flaws)
    {
        // Of the step as a whole only these two speak; a photograph or words beside it are evidence, and end nothing.
        var whole = replay.Live.LastOrDefault(e => e.Ask.Length == 0 && e.Answer is (Ticked or NotPossible));
        var differs = replay.Live.LastOrDefault(e => e.Answer is Differs && (e.Ask.Length == 0 || replay.Last(e.Ask) == e));
        Evidence[] given = [.. step.Asks.Select(a => replay.Last(a.Id)).OfType<Evidence>()];
        ImmutableArray<Evidence> counting = [.. given.Append(whole).Append(differs).OfType<Evidence>().Distinct().OrderBy(e => e.Index)];
        // "Not possible" of the whole step stands until somebody answers after all.
        var impossible = whole is { Answer: NotPossible } && given.All(e => e.Index < whole.Index) ? whole : given.LastOrDefault(e => e.Answer is NotPossible);

        ImmutableArray<AskState> asks = [.. step.Asks.Select(a => StateOf(a, replay))];
        bool saidDone = whole?.Answer is Ticked;
        bool answered = step.Asks.Length > 0 && asks.All(a => a.Answer is not null);
        bool closed = answered || saidDone || differs is not null || (impossible is not null && impossible.Ask.Length == 0);

        var weaknesses = asks.SelectMany(a => a.Weaknesses).ToHashSet();
        if (answered || saidDone)
        {
            if (!answered && step.Asks.Length > 0) weaknesses.Add(Weakness.NotAnswered);
            if (asks.All(a => a.Answer is null or Ticked)) weaknesses.Add(Weakness.TickOnly);
        }
        foreach (var evidence in counting)
            if (flaws.TryGetValue(evidence.Written.Hash, out var flaw)) weaknesses.Add(flaw);

        var deviations = new List<Deviation>();
        if (asks.Any(a => a.Verdict == Verdict.FallsShort)) deviations.Add(Deviation.OutOfTolerance);
        if (differs is not null) deviations.Add(Deviation.Differs);
        if (impossible is not null) deviations.Add(Deviation.NotPossible);
        if (weaknesses.Count > 0) deviations.Add(Deviation.Weak);
        ImmutableArray<Deviation> toRelease =
        [
            .. deviations.Where(d => d != Deviation.Weak || step.HoldPoint || releasing.BySecond.Contains(d)),
            .. step.HoldPoint && releasing.BySecond.Contains(Deviation.HoldPoint) ? [Deviation.HoldPoint] : ImmutableArray<Deviation>.Empty,
        ];

        // A release names the newest evidence, so that what is answered later needs another one.
        var newest = closed && toRelease.Length > 0 ? counting.MaxBy(e => e.Index) : null;
        bool second = toRelease.Any(releasing.BySecond.Contains);
        string[] writers = [.. replay.Live.Select(e => e.Kept.Entry.Person).Concat(replay.Live.Select(e => e.Written.Entry.Person)).Distinct()];
        Kept[] naming = [.. replay.Releases.Where(r => ((Released)r.Entry.Says).Entry == newest?.Kept.Hash)];
        Kept[] count = [.. naming.Where(r => !second || releasing.May(r.Entry.Person, writers))];
        bool released = newest is not null && count.Length > 0;

        return new(
            StandingOf(), closed, closed && (released || toRelease.IsEmpty), asks, counting, [.. weaknesses.Order()],
            closed && !released ? toRelease : [], released ? null : newest?.Kept.Hash, [.. naming.Except(count)],
            differs?.Answer is Differs d ? d.Words : impossible?.Answer is NotPossible n ? n.Reason : "");

        Standing StandingOf() =>
            !closed ? (replay.Begun || replay.Live.Length > 0 ? Standing.InProgress : Standing.NotBegun)
            : released ? (deviations.Count > 0 ? Standing.Released : Standing.Done)
            : deviations.Contains(Deviation.OutOfTolerance) ? Standing.OutOfTolerance
            : deviations.Contains(Deviation.Differs) ? Standing.Differs
            : deviations.Contains(Deviation.NotPossible) ? Standing.NotPossible
            : toRelease.Length > 0 ? Standing.PendingRelease
            : weaknesses.Count > 0 ? Standing.DoneWeak
            : Standing.Done;
    }

    private static AskState StateOf(Asked asked, Replay replay)
    {
        if (replay.Last(asked.Id) is not { } last) return new(asked, null, null, Verdict.Open, double.NaN, []);
        var (verdict, fits) = (asked, last.Answer) switch
        {
            (_, NotPossible or Differs) => (Verdict.Open, true),
            (AskedValue value, Measured reading) => (ReadingChecks.Of(value, reading), reading.Unit == value.Unit),
            (AskedChoice choice, Chosen chosen) => (chosen.Option == choice.Expected ? Verdict.Holds : choice.Expected.Length == 0 ? Verdict.Open : Verdict.FallsShort, choice.Options.Contains(chosen.Option)),
            (AskedCount count, Counted counted) => (counted.Count == count.Expected ? Verdict.Holds : Verdict.FallsShort, true),
            (AskedText, Written) or (AskedTick, Ticked) or (AskedPhotograph, Photographed) or (AskedSignature, Signed) => (Verdict.Open, true),
            _ => (Verdict.Open, false),
        };
        var weaknesses = ImmutableArray.CreateBuilder<Weakness>();
        if (!fits) weaknesses.Add(Weakness.OtherThanAsked);
        if (asked is AskedValue { ShownAfter: true } && WasShown()) weaknesses.Add(Weakness.NotBlind);
        if ((asked, last.Answer) is (AskedSignature signature, Signed signed) && signed.As != signature.By) weaknesses.Add(Weakness.OtherCapacity);
        return new(asked, last.Answer, last.Kept, verdict, last.Answer is Measured m ? ReadingChecks.UncertaintyOf(m) : double.NaN, weaknesses.ToImmutable());

        // The expected value is told to whoever has taken the reading; another person's eyes are still blind.
        bool WasShown() => last.Kept.Hash != last.Written.Hash
            || replay.Live.Any(e => e.Ask == asked.Id && e.Answer is Measured && e.Index < last.Index && e.Written.Entry.Person == last.Written.Entry.Person);
    }
}

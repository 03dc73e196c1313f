using System.Collections.Immutable;
using Trivet.Findings;
using Trivet.Journal;
using Trivet.Procedures;

namespace Trivet.AsBuilt;

/// <summary>Where a step stands, in the order of the work.</summary>
public enum Standing
{
    NotBegun,
    /// <summary>Not begun, and <see cref="StepState.WaitsFor"/> says for which steps.</summary>
    Waiting,
    InProgress,
    /// <summary>All that was asked is answered, and holds.</summary>
    Done,
    /// <summary>Said to be done, with values missing, a tick in the place of a value, or another weakness.</summary>
    DoneWeak,
    /// <summary>A reading lies outside its limit, or an answer is not the expected one.</summary>
    OutOfTolerance,
    /// <summary>The machine is not as planned, and a second person has yet to let it stand.</summary>
    Differs,
    NotPossible,
    /// <summary>A hold point that is done and waits for the second person.</summary>
    PendingRelease,
    /// <summary>A deviation, let stand by a second person.</summary>
    Released,
    /// <summary>Was done, and what it rested on changed: it is to be done again.</summary>
    Stale,
}

/// <summary>What in a step is not as it should be. Which of them a second person must let stand is told by the cell.</summary>
public enum Deviation
{
    OutOfTolerance,
    Differs,
    NotPossible,
    Weak,
    /// <summary>No deviation: a hold point that asks for a second pair of eyes.</summary>
    HoldPoint,
}

/// <summary>Why an answer is weak.</summary>
public enum Weakness
{
    /// <summary>Done, they say; nothing else was recorded.</summary>
    TickOnly,
    /// <summary>Something asked has no answer.</summary>
    NotAnswered,
    /// <summary>Answered in another way than asked: a tick for a value, another unit, an option that is none.</summary>
    OtherThanAsked,
    /// <summary>The expected value had been shown before this reading was taken.</summary>
    NotBlind,
    /// <summary>Signed in another capacity than asked.</summary>
    OtherCapacity,
    /// <summary>Done while the journal says that more was switched on than the step allows.</summary>
    MorePowerThanAllowed,
    /// <summary>Done before a hold point that it depends on.</summary>
    BeforeHoldPoint,
}

/// <summary>Why a step is stale. Closed.</summary>
public abstract record Staleness
{
    private protected Staleness() { }

    /// <summary>A field that it depends on changed since.</summary>
    /// <param name="From">As it was in the revision the step was done against, with its unit; empty where it was not stated.</param>
    public sealed record Field(string Pointer, string From, string To) : Staleness;

    /// <summary>An earlier step's result changed after this one was done.</summary>
    /// <param name="Entry">Hash of the entry that changed it.</param>
    public sealed record Result(string Step, string Ask, string Entry) : Staleness;

    /// <summary>Something happened to the machine.</summary>
    /// <param name="Entry">Hash of the entry that says so.</param>
    public sealed record Upset(Procedures.Upset What, string Entry) : Staleness;

    /// <summary>It was done against a revision that is not known here, so nothing can be compared.</summary>
    public sealed record UnknownRevision(string Revision) : Staleness;
}

/// <summary>What a step asks, and how far it is answered.</summary>
/// <param name="Answer">The answer that counts; null where there is none.</param>
/// <param name="Entry">The entry that gave it, or that corrected it to it; null where there is none.</param>
/// <param name="Verdict">Of the answer against what is accepted; <see cref="Findings.Verdict.Open"/> where there is none, or nothing to hold it against.</param>
/// <param name="Uncertainty">Standard uncertainty of a reading, SI; not a number where it is not known.</param>
public sealed record AskState(Asked Asked, Answer? Answer, Kept? Entry, Verdict Verdict, double Uncertainty, ImmutableArray<Weakness> Weaknesses)
{
    /// <summary>A blind reading's expected value is told only when it has been taken.</summary>
    public bool ExpectedMayBeShown => Asked is not AskedValue { ShownAfter: true } || Answer is Measured;
}

/// <summary>Where one step stands, and why.</summary>
public sealed record StepState
{
    public required Step Step { get; init; }
    public required Standing Standing { get; init; }

    /// <summary>In the order of <see cref="Step.Asks"/>.</summary>
    public required ImmutableArray<AskState> Asks { get; init; }

    /// <summary>Whether steps that come after may go on.</summary>
    public required bool LetsOn { get; init; }

    /// <summary>Ids of the steps before it that do not let it begin: those directly before, or else hold points farther off.</summary>
    public ImmutableArray<string> WaitsFor { get; init; } = [];

    /// <summary>False while more is switched on than the step allows, and at the machine also while the journal does not say what is.</summary>
    public required bool EnergyFits { get; init; }

    /// <summary>May be begun now.</summary>
    public bool MayBegin => WaitsFor.IsEmpty && EnergyFits;

    public ImmutableArray<Staleness> Stale { get; init; } = [];
    public ImmutableArray<Weakness> Weaknesses { get; init; } = [];

    /// <summary>What a second person has yet to let stand.</summary>
    public ImmutableArray<Deviation> ToRelease { get; init; } = [];

    /// <summary>The entry a second person is to name: the newest that counts. Null where there is nothing to release.</summary>
    public string? ReleaseNames { get; init; }

    /// <summary>The reason given with not possible, or the words of a difference; empty where there are none.</summary>
    public string Words { get; init; } = "";

    /// <summary>Minutes still to be spent on it; 0 where it lets on and is not stale.</summary>
    public required double MinutesLeft { get; init; }

    /// <summary>All entries about it, those that no longer count included, in order.</summary>
    public ImmutableArray<Kept> History { get; init; } = [];
}

/// <summary>The procedure with the journal laid over it.</summary>
/// <param name="Level">What may be live, as last declared and not upset since; null where the journal does not say.</param>
/// <param name="LevelEntry">The entry that declared it; null where none did.</param>
/// <param name="Loose">Entries about no step of this procedure.</param>
/// <param name="MinutesLeft">All that is left, one after the other.</param>
/// <param name="MinutesAtBest">The longest chain of it: what is left with as many people as can work at once.</param>
public sealed record Progress(
    ImmutableArray<StepState> Steps, EnergyLevel? Level, Kept? LevelEntry, ImmutableArray<Kept> Loose, ImmutableArray<Mismatch> Mismatches,
    double MinutesLeft, double MinutesAtBest)
{
    public StepState? Of(string step) => Steps.FirstOrDefault(s => s.Step.Id == step);
}

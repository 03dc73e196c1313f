using System.Collections.Immutable;
using Trivet.Files.Floor;
using Trivet.Findings;

namespace Trivet.Views.Words;

/// <summary>What keeps a chain up, in a word, and what it means for whoever stands below.</summary>
public sealed record HeldWords(string By, string Falls);

/// <summary>The floor page in one language; a language is one file with one value of this record. Words in braces are filled in.</summary>
public sealed record FloorWords
{
    /// <summary>BCP 47 tag.</summary>
    public required string Tag { get; init; }

    /// <summary>Numbers are written with a decimal comma.</summary>
    public required bool DecimalComma { get; init; }

    /// <summary>In the order of <see cref="Verdict"/>.</summary>
    public required ImmutableArray<string> Verdicts { get; init; }

    /// <summary>By the ids of <see cref="Trivet.Procedures.ChainHeld"/>.</summary>
    public required ImmutableDictionary<string, HeldWords> Held { get; init; }

    // The strip.
    public required string Step { get; init; }
    public required string Machine { get; init; }
    public required string NotDeclared { get; init; }
    public required string HeldUp { get; init; }
    public required string NothingFitted { get; init; }
    public required string NextStep { get; init; }
    public required string LastStep { get; init; }
    public required string Language { get; init; }
    public required string MakeSafe { get; init; }
    public required string AllSteps { get; init; }
    public required string Back { get; init; }
    public required string Next { get; init; }
    public required string Close { get; init; }

    // What waits.
    public required string Waiting { get; init; }
    public required string NoneWaiting { get; init; }
    public required string LastReceipt { get; init; }
    public required string NoReceipt { get; init; }
    public required string NoDesk { get; init; }
    public required string SignInFirst { get; init; }
    public required string OtherAt { get; init; }
    public required string SameStep { get; init; }
    public required string HeldBack { get; init; }

    /// <summary>Why the desk has not taken entries, by the ids of <see cref="EntryRefusals"/>, each with what to do.</summary>
    public required ImmutableDictionary<string, string> EntryRefusals { get; init; }

    // Without a bundle.
    public required string NoBundle { get; init; }
    public required string OtherSteps { get; init; }
    public required string BundleIs { get; init; }
    public required string OpenBundle { get; init; }
    public required string Example { get; init; }
    public required string BackTo { get; init; }
    public required string NotFetched { get; init; }
    public required string BundleNotKept { get; init; }

    // By the link of a label. {cell} {step}
    /// <summary>Stands on the label of a cabinet's door.</summary>
    public required string DoorLabel { get; init; }
    public required string CellNotFetched { get; init; }
    public required string CellNotThere { get; init; }
    public required string SignInToFetch { get; init; }
    public required string StepNotThere { get; init; }

    /// <summary>Why a bundle is not taken, each with what to do, in the order of <see cref="BundleProblem"/> after the first, which is none.</summary>
    public required ImmutableArray<string> BundleProblems { get; init; }

    // The step.
    public required string Caution { get; init; }
    public required string Allows { get; init; }
    public required string TooMuch { get; init; }
    public required string LevelUnknown { get; init; }
    public required string WaitsFor { get; init; }
    public required string WhoDoes { get; init; }
    public required string HoldPoint { get; init; }
    public required string Tools { get; init; }
    public required string Picture { get; init; }
    public required string Stale { get; init; }
    public required string Contradiction { get; init; }
    public required string Planned { get; init; }
    public required string Accepted { get; init; }
    public required string To { get; init; }
    public required string AtMost { get; init; }
    public required string AtLeast { get; init; }
    public required string ShownAfter { get; init; }

    // Answers.
    public required string Reading { get; init; }
    public required string TypeIt { get; init; }
    public required string Understood { get; init; }
    public required string UnderstoodPlain { get; init; }
    public required string NotUnderstood { get; init; }
    public required string WriteLike { get; init; }
    public required string WholeNumber { get; init; }
    public required string More { get; init; }
    public required string Less { get; init; }
    public required string AsPlanned { get; init; }
    public required string TooCoarse { get; init; }
    public required string Keep { get; init; }
    public required string Kept { get; init; }
    public required string Count { get; init; }
    public required string Words { get; init; }
    public required string Done { get; init; }
    public required string TickIsWeak { get; init; }
    public required string TakePhotograph { get; init; }
    public required string PhotographHere { get; init; }
    public required string NoPhotograph { get; init; }
    /// <summary>In the state of what is sent: {n}</summary>
    public required string PhotographsWait { get; init; }
    /// <summary>Why, and what to do: {n}</summary>
    public required string PhotographsRefused { get; init; }
    public required string SignAs { get; init; }
    public required string Pending { get; init; }
    public required string Again { get; init; }
    public required string Correct { get; init; }
    public required string WhyCorrect { get; init; }
    public required string Otherwise { get; init; }
    public required string Why { get; init; }
    public required string NotPossible { get; init; }
    public required string Differs { get; init; }
    public required string MoreFields { get; init; }
    public required string Instrument { get; init; }
    public required string Note { get; init; }
    public required string SecondPerson { get; init; }
    public required string LetStand { get; init; }
    public required string NotYou { get; init; }
    public required string StepDone { get; init; }
    public required string NotKept { get; init; }
    public required string NoRoom { get; init; }
    public required string NoStorage { get; init; }
    public required string Damaged { get; init; }
    public required string DamagedWhat { get; init; }
    public required string SaveFile { get; init; }

    // People.
    public required string WhoAreYou { get; init; }
    public required string Person { get; init; }
    public required string ThatIsMe { get; init; }
    public required string Pin { get; init; }
    public required string SignIn { get; init; }
    public required string SignInWrong { get; init; }
    public required string SignInLocked { get; init; }
    public required string NotPaired { get; init; }
    public required string IsHolding { get; init; }
    public required string Change { get; init; }

    // Making safe.
    public required string SafeTitle { get; init; }
    public required string SafeDefer { get; init; }
    public required string SafeStop { get; init; }
    public required string SafeOut { get; init; }
    public required string SafeProp { get; init; }
    public required string SafeLock { get; init; }
    public required string SafeMeasure { get; init; }
    public required string SafeAir { get; init; }
    public required string WhatFalls { get; init; }
    public required string WhoIsInside { get; init; }
    public required string NobodySaid { get; init; }
    public required string GoIn { get; init; }
    public required string ComeOut { get; init; }

    // What the machine may do.
    public required string DeclareLevel { get; init; }
    public required string DeclareWhat { get; init; }
    public required string MeasuredDead { get; init; }
    public required string DeadFirst { get; init; }

    // Coming back.
    public required string Interrupt { get; init; }
    public required string WelcomeBack { get; init; }
    public required string WhatHappened { get; init; }
    public required string PowerCycled { get; init; }
    public required string PlugsMoved { get; init; }
    public required string Transported { get; init; }
    public required string NothingHappened { get; init; }
    public required string ThenGoOn { get; init; }

    // All steps.
    public required string Progress { get; init; }
    public required string NoEntry { get; init; }
    public required string FromPaper { get; init; }
    public required string PaperHow { get; init; }
    public required string PaperWho { get; init; }
    public required string PaperWhen { get; init; }
    public required string PaperOption { get; init; }
    public required string PaperTick { get; init; }
    public required string PaperSkip { get; init; }
    public required string PaperDone { get; init; }
    public required string Revision { get; init; }

    // The page itself.
    public required string Opening { get; init; }
    public required string Newer { get; init; }
    public required string TakeNewer { get; init; }
    public required string Ready { get; init; }
    public required string Offline { get; init; }
    public required string OnlineOnly { get; init; }
    public required string NotSecure { get; init; }
    public required string NoWorker { get; init; }
    public required string StorageNotKept { get; init; }

    /// <summary>The languages of the page, the first one first.</summary>
    public static ImmutableArray<FloorWords> All => [EnglishFloor.Words, GermanFloor.Words];

    /// <summary>The words of a language; of the first one where the page does not have it.</summary>
    /// <param name="wanted">BCP 47 tags, the best first; English where none of them is spoken.</param>
    public static FloorWords Of(params IEnumerable<string> wanted) => Spoken.Of(All, w => w.Tag, wanted);

    /// <summary>Journal words of the same language.</summary>
    public JournalWords Journal => JournalWords.In(Tag);

    /// <summary>Fills the words in braces.</summary>
    public static string Fill(string template, params ReadOnlySpan<(string Name, string Value)> values) => Locale.Fill(template, values);
}

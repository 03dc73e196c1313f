using System.Collections.Immutable;
using Trivet.AsBuilt;
using Trivet.Procedures;

namespace Trivet.Files.Floor;

/// <summary>What the page at the machine is handed: the steps with their limits, words and pictures, and nothing of the store.</summary>
/// <param name="CellId">Id of the cell in its job, or of the file it came from.</param>
/// <param name="CellName">Name as people say it.</param>
/// <param name="Revision">Hash of the revision the steps were made from.</param>
/// <param name="Releasing">Who must let a deviation stand.</param>
/// <param name="Moves">For each earlier revision of this cell: the fields that are not now what they were then. The present one is not among them.</param>
/// <param name="Pictures">SVG texts by name.</param>
/// <param name="Safe">How this cell is made safe, by BCP 47 tag.</param>
public sealed record FloorBundle(
    string CellId, string CellName, string Revision, ImmutableArray<FloorStep> Steps, Releasing Releasing,
    ImmutableSortedDictionary<string, ImmutableArray<FieldMove>> Moves, ImmutableSortedDictionary<string, string> Pictures,
    ImmutableSortedDictionary<string, SafeText> Safe)
{
    /// <summary>The steps alone, as they are folded.</summary>
    public ImmutableArray<Step> Procedure => [.. Steps.Select(s => s.Step)];
}

/// <summary>One screen: a step with its words by language. The numbers and probes of a step are told by its words and not carried beside them.</summary>
/// <param name="Words">By BCP 47 tag: <c>en</c>, <c>de</c>.</param>
/// <param name="Picture">Name of the picture that goes with it, or empty.</param>
public sealed record FloorStep(Step Step, ImmutableSortedDictionary<string, FloorText> Words, string Picture);

/// <summary>The words of a step in one language.</summary>
/// <param name="Title">A few words.</param>
/// <param name="How">What to do, and why.</param>
/// <param name="Caution">What can hurt here and how to make safe now; empty where nothing can.</param>
/// <param name="Bad">What a bad result means and where to go on.</param>
/// <param name="Labels">Words by id: of what is asked (<c>gap</c>), of an option (<c>lock=fitted</c>), of a tool (<c>tool:voltmeter</c>).</param>
public sealed record FloorText(string Title, string How, string Caution, string Bad, ImmutableSortedDictionary<string, string> Labels)
{
    /// <summary>The words for an id; where there are none, the id with blanks for its hyphens.</summary>
    public string Label(string id) => Labels.GetValueOrDefault(id) ?? id[(id.LastIndexOfAny(['=', ':']) + 1)..].Replace('-', ' ');
}

/// <summary>How a cell is made safe, in one language: lines for each of the general steps, and what comes down.</summary>
/// <param name="Stop">What to press and what that does.</param>
/// <param name="Lock">What isolates, and is locked.</param>
/// <param name="Wait">For how long what keeps a charge.</param>
/// <param name="Live">What stays live.</param>
/// <param name="Air">Whether the stop takes it away.</param>
/// <param name="Falls">What holds each chain at a stop and without supply, and what becomes of the part.</param>
public sealed record SafeText(
    ImmutableArray<string> Stop, ImmutableArray<string> Lock, ImmutableArray<string> Wait, ImmutableArray<string> Live, ImmutableArray<string> Air, ImmutableArray<string> Falls)
{
    public static SafeText None { get; } = new([], [], [], [], [], []);
}

/// <summary>Why a text is refused as a bundle; the page has the words.</summary>
public enum BundleProblem
{
    None,
    TooLarge,
    NotABundle,
    LaterVersion,
    EarlierVersion,
    StepTwice,
    /// <summary>Cut or altered: its hash does not fit.</summary>
    Altered,
    Unreadable,
}

/// <summary>A bundle read from text, or why it was refused.</summary>
public sealed record FloorBundleRead(FloorBundle? Bundle, BundleProblem Problem);

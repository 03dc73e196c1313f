using System.Collections.Immutable;
using Trivet.Procedures;

namespace Trivet.Views.Words;

/// <summary>What people read about one kind of step. Words in braces are filled in: <c>{names}</c>, <c>{name}</c> (the first), <c>{of}</c>, and the step's numbers by their ids.</summary>
/// <param name="Title">A few words.</param>
/// <param name="What">What to do.</param>
/// <param name="Why">What it is for.</param>
/// <param name="Hazard">What can hurt or break; empty where nothing can.</param>
/// <param name="Caution">What to do about it, and how to make safe at once.</param>
/// <param name="Bad">What a bad result means and where to go on.</param>
/// <param name="More">What the cell lets be told besides, behind what to do, where it states all that this names.</param>
/// <param name="Else">The general rule in its place.</param>
public sealed record StepText(string Title, string What, string Why, string Hazard, string Caution, string Bad, string More = "", string Else = "");

/// <summary>The steps of bring-up in one language; a language is one file with one value of this record.</summary>
public sealed record ProcedureWords
{
    /// <summary>BCP 47 tag.</summary>
    public required string Tag { get; init; }
    public required string Name { get; init; }

    /// <summary>By the kind of a step.</summary>
    public required ImmutableDictionary<string, StepText> Kinds { get; init; }

    /// <summary>What is asked, by <c>kind.ask</c>, or by <c>ask</c> where it is the same in every kind.</summary>
    public required ImmutableDictionary<string, string> Asks { get; init; }

    /// <summary>Answers to choose from, by <c>ask.option</c>, or by <c>option</c>.</summary>
    public required ImmutableDictionary<string, string> Options { get; init; }

    public required ImmutableDictionary<string, string> Tools { get; init; }

    /// <summary>What a step is done to, where its id says it by a word of ours and not of the cell: <c>rotary</c>, <c>empty</c>.</summary>
    public required ImmutableDictionary<string, string> Of { get; init; }

    /// <summary>A chain: {id}.</summary>
    public required string Chain { get; init; }

    /// <summary>What keeps a chain up, by its id in the step.</summary>
    public required ImmutableDictionary<string, string> Held { get; init; }

    /// <summary>In the order of <see cref="EnergyLevel"/>, <see cref="StepPlace"/>, <see cref="Skill"/> and <see cref="Upset"/>.</summary>
    public required ImmutableArray<string> Energies { get; init; }
    public required ImmutableArray<string> Places { get; init; }
    public required ImmutableArray<string> Skills { get; init; }
    public required ImmutableArray<string> Upsets { get; init; }

    /// <summary>Texts of the steps' pictures.</summary>
    public required PictureWords Pictures { get; init; }

    /// <summary>How the cell is made safe.</summary>
    public required SafeWords Safe { get; init; }

    public required ProcedureLabels Labels { get; init; }

    public static ImmutableArray<ProcedureWords> All { get; } = [EnglishSteps.Words, GermanSteps.Words];

    /// <summary>The language of a tag, English where there is none.</summary>
    public static ProcedureWords In(string tag) => All.FirstOrDefault(w => w.Tag == tag) ?? EnglishSteps.Words;

    public string Ask(string kind, string ask) => Asks.GetValueOrDefault($"{kind}.{ask}") ?? Asks[ask];

    /// <summary>The words of an option, or the option itself where no step offers it now: an entry may be older than the words.</summary>
    public string OptionOr(string ask, string option) => Options.GetValueOrDefault($"{ask}.{option}") ?? Options.GetValueOrDefault(option, option);

    public string Option(string ask, string option) => Options.GetValueOrDefault($"{ask}.{option}") ?? Options[option];
}

/// <summary>Headings and short words around the steps.</summary>
public sealed record ProcedureLabels
{
    public required string Title { get; init; }
    public required string UnnamedCell { get; init; }
    // {steps} {minutes} {people}
    public required string Summary { get; init; }
    public required string Number { get; init; }
    public required string Step { get; init; }
    public required string Energy { get; init; }
    public required string Place { get; init; }
    public required string By { get; init; }
    public required string People { get; init; }
    public required string Minutes { get; init; }
    public required string After { get; init; }
    public required string HeldBy { get; init; }
    public required string What { get; init; }
    public required string Why { get; init; }
    public required string Hazard { get; init; }
    public required string Caution { get; init; }
    public required string Record { get; init; }
    public required string Bad { get; init; }
    public required string Tools { get; init; }
    public required string HoldPoint { get; init; }
    public required string Expected { get; init; }
    public required string Accepted { get; init; }
    public required string AtMost { get; init; }
    public required string AtLeast { get; init; }
    public required string Between { get; init; }
    public required string Kept { get; init; }
    public required string ShownAfter { get; init; }
    public required string Open { get; init; }
    public required string Tick { get; init; }
    public required string Photograph { get; init; }
    public required string Signature { get; init; }
    public required string NotStated { get; init; }
    public required string Begins { get; init; }
    public required string Persons { get; init; }
    public required string DependsOn { get; init; }
    public required string Nothing { get; init; }
    public required string BySkill { get; init; }
    // {one} {two} {critical}
    public required string WorkLeft { get; init; }
    public required string WhoWaits { get; init; }
    public required string NobodyWaits { get; init; }
    // {begin} {person} {minutes} {other} {for} {before}
    public required string WaitLine { get; init; }
    public required string FirstNeeded { get; init; }
    public required string Steps { get; init; }
    public required string Lanes { get; init; }
    public required string LanesHow { get; init; }
    // {person} {day} {number}
    public required string LanePerson { get; init; }
    public required string LaneDay { get; init; }
    public required string Hours { get; init; }
    public required string HoursAndMinutes { get; init; }
    public required string JustMinutes { get; init; }
    public required string OnLongestWay { get; init; }
    public required string Done { get; init; }
    public required string Value { get; init; }
    public required string Name { get; init; }
    public required string Language { get; init; }
    public required string Cards { get; init; }
    // {number} {of}
    public required string CardOf { get; init; }
    // Head of a card's further pages: {step}
    public required string Continued { get; init; }
    // {count}
    public required string OpenNumbers { get; init; }
    public required string LocalRules { get; init; }
}

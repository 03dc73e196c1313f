using System.Collections.Immutable;
using Trivet.Faults;

namespace Trivet.Views.Words;

/// <summary>What people read about one fault.</summary>
/// <param name="Title">What is wrong, a few words.</param>
/// <param name="Seen">What people or the bus see of it.</param>
/// <param name="Harm">What looking for it, or not knowing of it, can do.</param>
/// <param name="Remedy">What puts it right.</param>
public sealed record FaultText(string Title, string Seen, string Harm, string Remedy);

/// <summary>The catalogue of faults in one language; a language is one file with one value of this record.</summary>
public sealed record FaultWords
{
    /// <summary>By the id of a fault.</summary>
    public required ImmutableDictionary<string, FaultText> Faults { get; init; }

    /// <summary>Each probe as an act, in the order of <see cref="Probe"/>.</summary>
    public required ImmutableArray<string> Probes { get; init; }

    /// <summary>What a probe shows, by <c>probe.outcome</c>; <see cref="Outcomes.Differs"/> is worded once for all.</summary>
    public required ImmutableDictionary<string, string> Shown { get; init; }
    public required string Differs { get; init; }
    public required string AsPlanned { get; init; }

    public required string Title { get; init; }
    /// <summary>{count}</summary>
    public required string SlipsNone { get; init; }
    /// <summary>{missed} {count}</summary>
    public required string SlipsSome { get; init; }
    /// <summary>{probe}</summary>
    public required string BestAddition { get; init; }
    public required string Rough { get; init; }
    public required string SlipsThrough { get; init; }
    public required string BeforePower { get; init; }
    public required string UnderPower { get; init; }
    public required string HeadFault { get; init; }
    public required string HeadStep { get; init; }
    public required string HeadChance { get; init; }
    public required string HeadSeen { get; init; }
    public required string HeadRemedy { get; init; }

    /// <summary>The language of a tag, English where there is none.</summary>
    public static FaultWords In(string tag) => tag == "de" ? GermanFaultCatalogue.Words : EnglishFaultCatalogue.Words;

    public string Of(Sign sign) => sign.Outcome == Outcomes.Differs ? Differs : Shown[Key(sign.Probe, sign.Outcome)];

    public static string Key(Probe probe, string outcome) => $"{char.ToLowerInvariant(probe.ToString()[0])}{probe.ToString()[1..]}.{outcome}";
}

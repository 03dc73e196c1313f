using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>What people read about one rule.</summary>
/// <param name="Noun">What it looks at, a short noun for sentences: "rod clearance".</param>
/// <param name="Asks">Why it is there and what it asks; paragraphs parted by line ends.</param>
/// <param name="Judged">How the value comes about and how it is proved.</param>
/// <param name="Limit">Where the limit comes from.</param>
public sealed record RuleText(string Noun, string Asks, string Judged, string Limit);

/// <summary>The fixed words of the rule pages.</summary>
public sealed record RulePageWords
{
    public required string Generated { get; init; }
    public required string IndexTitle { get; init; }
    public required string IndexText { get; init; }
    public required string Id { get; init; }
    public required string Noun { get; init; }
    public required string Trade { get; init; }
    /// <summary>In the order of <see cref="Findings.Trade"/>.</summary>
    public required ImmutableArray<string> Trades { get; init; }
    public required string Unit { get; init; }
    public required string PureNumber { get; init; }
    public required string Sense { get; init; }
    /// <summary>In the order of <see cref="Findings.Sense"/>.</summary>
    public required ImmutableArray<string> Senses { get; init; }
    public required string Margin { get; init; }
    /// <summary>In the order of <see cref="Findings.Sense"/>.</summary>
    public required ImmutableArray<string> Margins { get; init; }
    public required string MarginScale { get; init; }
    public required string Comfort { get; init; }
    public required string ComfortBand { get; init; }
    public required string ComfortNone { get; init; }
    /// <summary>An estimate that keeps people safe: at best tight.</summary>
    public required string ComfortNever { get; init; }
    public required string ComfortNeverShort { get; init; }
    public required string Proof { get; init; }
    public required string ProofNeeded { get; init; }
    public required string ProofNotNeeded { get; init; }
    public required string Method { get; init; }
    public required string MethodHere { get; init; }
    public required string LimitSource { get; init; }
    public required string Asks { get; init; }
    public required string Judged { get; init; }
}

using System.Collections.Immutable;

namespace Trivet.Findings;

/// <summary>
/// Why something stays open, does not apply, or cannot be as stated: data only, worded in the views. Each trade keeps its reasons as
/// public static properties, beside its rules.
/// </summary>
/// <param name="Id">Stable, dotted, lower case, in the manner of rules: <c>reach.no-walls</c>.</param>
public sealed record Reason(string Id)
{
    /// <summary>Pointers into the description that the sentence names, in its order.</summary>
    public ImmutableArray<string> Fields { get; init; } = [];

    public Reason Naming(params ImmutableArray<string> fields) => this with { Fields = fields };
}

/// <summary>Something stated that can not be: the field, and why.</summary>
public sealed record Contradiction(string Pointer, Reason Reason);

/// <summary>The reasons that every trade has.</summary>
public static class CommonReasons
{
    /// <summary>A deeper description will ask for what the rule needs.</summary>
    public static Reason NotAskedYet { get; } = new("not-asked-yet");

    /// <summary>Cancelled before it came to its end.</summary>
    public static Reason Stopped { get; } = new("stopped");
}

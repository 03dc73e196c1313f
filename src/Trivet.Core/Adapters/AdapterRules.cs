using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Adapters;

/// <summary>The rules by which an adapter plate is judged, each on the plate that was found best.</summary>
public static class AdapterRules
{
    /// <summary>Plate, faces and materials are described and do not contradict themselves. Appears only while they are not.</summary>
    public static Rule Described { get; } = Of("adapter.described", "The plate is described and does not contradict itself", 0);

    /// <summary>Value: smallest wall between two holes, metres.</summary>
    public static Rule Wall { get; } = Of("adapter.wall", "No holes break into each other", 0);

    /// <summary>Value: smallest wall between a hole and the edge, metres.</summary>
    public static Rule Edge { get; } = Of("adapter.edge", "No hole breaks into the edge", 0);

    /// <summary>Value: smallest thickness under a head or a blind hole, metres.</summary>
    public static Rule Floor { get; } = Of("adapter.floor", "Enough is left under heads and blind holes", 0);

    /// <summary>Value: length of thread engaged, metres.</summary>
    public static Rule Engagement { get; } = Of("adapter.engagement", "Threads engage far enough", 0);

    /// <summary>Value: smallest free radius round a screw's axis, metres; negative where a part covers it.</summary>
    public static Rule Key { get; } = Of("adapter.key", "Every head and key is within reach in the order of fitting", 0);

    public static ImmutableArray<Rule> All { get; } = [Described, Wall, Edge, Floor, Engagement, Key];

    private static Rule Of(string id, string title, double comfort) =>
        new(id, title, Trade.Mechanical, id.EndsWith("described", StringComparison.Ordinal) ? "1" : "m", Sense.AtLeast, comfort, new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md"));
}

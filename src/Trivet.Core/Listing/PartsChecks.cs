using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Listing;

/// <summary>What the parts list leaves wrong.</summary>
public static class PartsChecks
{
    /// <summary>A line of the parts list speaks of something the description has. Appears only where one does not.</summary>
    public static Rule Of { get; } = new(
        "parts.of", "Each line of the parts list speaks of something that is there", Trade.Mechanical, "1", Sense.AtLeast, 0, new(SourceKind.CommonPractice, ""));

    /// <summary>The pointer names nothing that is listed.</summary>
    public static Reason Astray { get; } = new("parts.astray");

    public static StagePlan Check(Cell cell, FoundPlates plates) => new(
        [.. PartsLines.Of(cell, plates).Astray.Select(at => new Unjudged(Of, new(at), [at], OpenReason.Failed, [], Astray))], [], []);
}

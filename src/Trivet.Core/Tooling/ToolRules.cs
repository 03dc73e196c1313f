using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Tooling;

/// <summary>The rules by which the tool stack is judged.</summary>
public static class ToolRules
{
    /// <summary>The parts of the stack are described and can be as they are. Appears only while they are not.</summary>
    public static Rule Described { get; } = Of("tool.described", "The tool stack is described and does not contradict itself", "1", Sense.AtLeast, 0);

    /// <summary>Value: how far the stack ends from the height of the tool centre point, metres.</summary>
    public static Rule Length { get; } = Of("tool.length", "The stack reaches to the tool centre point", "m", Sense.AtMost, 0);

    /// <summary>Value: by how much the mass or height typed of a part differs from that of the plate it is, as a part of the latter.</summary>
    public static Rule Plate { get; } = Of("tool.plate", "What is typed of a plate in the stack is what its design has", "1", Sense.AtMost, 0);

    /// <summary>Value: mass of the tool with the heaviest part, kilograms; of a part, what hangs from its upper face.</summary>
    public static Rule Payload { get; } = Of("tool.payload", "Tool and part are not too heavy", "kg", Sense.AtMost, 0.1);

    /// <summary>Value: inertia about the upright axis through the mechanical interface with the part that makes it largest, kg·m².</summary>
    public static Rule Inertia { get; } = Of("tool.inertia", "Tool and part are not too hard to turn", "kg m²", Sense.AtMost, 0.1);

    /// <summary>Value: inertia about the rotary axis of the parts below it, kg·m²; limit: what the robot states of all that turns.</summary>
    public static Rule Turning { get; } = Of("tool.turning", "The stated inertia of the rotary axis covers what hangs on it", "kg m²", Sense.AtMost, 0);

    /// <summary>Value: largest moment about the mechanical interface over the cycle, newton metres; of a part, about its upper face.</summary>
    public static Rule Moment { get; } = Of("tool.moment", "Tool and part do not bend their carrier too much", "N m", Sense.AtMost, 0.1);

    public static ImmutableArray<Rule> Rules { get; } = [Described, Length, Plate, Payload, Inertia, Turning, Moment];

    private static Rule Of(string id, string title, string unit, Sense sense, double comfort) =>
        new(id, title, Trade.Mechanical, unit, sense, comfort, new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md"));
}

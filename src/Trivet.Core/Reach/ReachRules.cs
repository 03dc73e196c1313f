using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Reach;

/// <summary>The rules by which the working volumes of a cell are judged. All but the descriptions need a proof over the whole volume.</summary>
public static class ReachRules
{
    /// <summary>What a station, or what all stations rest on, is described. Appears only while it is not.</summary>
    public static Rule Described { get; } = new(
        "reach.described", "The description is complete and does not contradict itself", Trade.Reach, "1", Sense.AtLeast, 0, Derived("docs/rules/reach.described.md"));

    /// <summary>An axis that a station uses is fitted.</summary>
    public static Rule Axis { get; } = new(
        "reach.axis", "The axes the station uses are fitted", Trade.Reach, "1", Sense.AtLeast, 0, Derived("docs/rules/reach.axis.md"));

    /// <summary>Two-chain robots: the platform stays in the robot's plane. Value: largest distance from it, metres.</summary>
    public static Rule Plane { get; } = new(
        "reach.plane", "The station lies in the robot's plane", Trade.Reach, "m", Sense.AtMost, 0, Derived("docs/rules/reach.plane.md"), NeedsProof: true);

    /// <summary>
    /// The rod reaches. Value: use of reach, 1 at the serial singularity, where rod and rail are square to each other or rod and
    /// arm are in line (docs/notation.md).
    /// </summary>
    public static Rule Closure { get; } = new(
        "reach.closure", "The rods reach everywhere", Trade.Reach, "1", Sense.AtMost, 0.02, Derived("docs/rules/reach.closure.md"), NeedsProof: true);

    /// <summary>Drive readings, rotary angle and linear axis stay within their travel less the reserve. Value: the worst reading, metres or radians.</summary>
    public static Rule Travel { get; } = new(
        "reach.travel", "The axes stay within their travel", Trade.Reach, "m", Sense.Within, 0.05, Derived("docs/rules/reach.travel.md"), NeedsProof: true);

    /// <summary>As <see cref="Travel"/>, for axes that turn.</summary>
    public static Rule Turn { get; } = Travel with { Id = "reach.turn", Title = "The turning axes stay within their travel", Unit = "rad", Method = Derived("docs/rules/reach.turn.md") };

    /// <summary>Ball joints stay within their swing. Value: largest swing, radians.</summary>
    public static Rule Swing { get; } = new(
        "reach.swing", "The ball joints stay within their swing", Trade.Reach, "rad", Sense.AtMost, 0.1, Derived("docs/rules/reach.swing.md"), NeedsProof: true);

    /// <summary>The platform can be steered evenly. Value: largest condition number of ∂q/∂p (2-norm); infinite at a parallel singularity.</summary>
    public static Rule Dexterity { get; } = new(
        "reach.dexterity", "The platform is well steered everywhere", Trade.Reach, "1", Sense.AtMost, 0.1, Derived("docs/rules/reach.dexterity.md"), NeedsProof: true);

    /// <summary>Platform movement when one drive moves by one step. Value: the largest, metres.</summary>
    public static Rule Step { get; } = new(
        "reach.step", "One drive step moves the platform little enough", Trade.Reach, "m", Sense.AtMost, 0.1, Derived("docs/rules/reach.step.md"), NeedsProof: true);

    /// <summary>Rods stay clear of the rods of other chains, of the frame and of station walls. Value: smallest free distance, metres.</summary>
    public static Rule RodClearance { get; } = new(
        "reach.rod-clearance", "The rods stay clear", Trade.Reach, "m", Sense.AtLeast, 0.25, Derived("docs/rules/reach.rod-clearance.md"), Scale: 0.02, NeedsProof: true);

    /// <summary>Tool and platform stay clear of the frame and of station walls. Value: smallest free distance, metres.</summary>
    public static Rule ToolClearance { get; } = new(
        "reach.tool-clearance", "Tool and platform stay clear", Trade.Reach, "m", Sense.AtLeast, 0.25, Derived("docs/rules/reach.tool-clearance.md"), Scale: 0.02, NeedsProof: true);

    /// <summary>The rules that judge a station's volume, in the order in which they are worked.</summary>
    public static ImmutableArray<Rule> Volume { get; } = [Closure, Travel, Turn, Swing, Dexterity, Step, RodClearance, ToolClearance, Plane];

    private static Source Derived(string page) => new(SourceKind.Derived, "trivet", page);
}

using Trivet.Findings;

namespace Trivet.Frames;

/// <summary>
/// The rules by which a frame is judged. All rest on a beam model of a described frame, so none claims a proof. Those that keep people safe never say
/// more than *tight*: their comfort band has no end.
/// </summary>
public static class FrameRules
{
    /// <summary>Members, sections, joints and mount are described as far as the model needs. Appears only while they are not.</summary>
    public static Rule Described { get; } = Of("frame.described", "The frame is described and does not contradict itself", "1", Sense.AtLeast, 0);

    /// <summary>Value: first frequency with the softest joints, Hz.</summary>
    public static Rule Frequency { get; } = Of("frame.frequency", "The frame's first frequency is high enough", "Hz", Sense.AtLeast, 0.1);

    /// <summary>Value: how far the mount sinks under all weights, metres.</summary>
    public static Rule Sag { get; } = Of("frame.sag", "The mount sinks little under the weights", "m", Sense.AtMost, 0.1);

    /// <summary>Value: how far the mount turns from level under all weights, metres per metre.</summary>
    public static Rule Tilt { get; } = Of("frame.tilt", "The mount stays level under the weights", "m/m", Sense.AtMost, 0.1);

    /// <summary>Value: time from the end of a move until the tool swings within its part of the tolerance, seconds. Limit: the settling that the cycle plans.</summary>
    public static Rule Settle { get; } = Of("frame.settle", "The planned settling time is enough for the frame", "s", Sense.AtMost, 0) with { Scale = 0.05 };

    /// <summary>Value: largest load of a foot, newtons.</summary>
    public static Rule FootLoad { get; } = Of("frame.foot-load", "Feet and floor bear the load", "N", Sense.AtMost, double.PositiveInfinity);

    /// <summary>Value: moment of the weights over that which turns the frame over, unanchored.</summary>
    public static Rule Overturning { get; } = Of("frame.overturning", "The frame does not tip over", "1", Sense.AtLeast, double.PositiveInfinity);

    /// <summary>Value: largest pull on the anchors of a foot, newtons; negative while it is pressed down.</summary>
    public static Rule Anchor { get; } = Of("frame.anchor", "The anchors bear the pull", "N", Sense.AtMost, double.PositiveInfinity);

    /// <summary>Value: largest force along the floor on the anchors of a foot, newtons.</summary>
    public static Rule AnchorShear { get; } = Of("frame.anchor-shear", "The anchors bear the push along the floor", "N", Sense.AtMost, double.PositiveInfinity);

    /// <summary>Value: (pull over its limit)^1.5 + (shear over its limit)^1.5 of the worst foot.</summary>
    public static Rule AnchorTogether { get; } = Of("frame.anchor-together", "The anchors bear pull and push together", "1", Sense.AtMost, double.PositiveInfinity);

    /// <summary>Yes or no: some joint stiffness within the stated interval gives what was measured.</summary>
    public static Rule Measured { get; } = Of("frame.measured", "The standing frame is the frame described", "1", Sense.AtLeast, 0);

    private static Rule Of(string id, string title, string unit, Sense sense, double comfort) =>
        new(id, title, Trade.Mechanical, unit, sense, comfort, new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md"));
}

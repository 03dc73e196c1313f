using Trivet.Findings;

namespace Trivet.Frames;

/// <summary>What a frame can not be, and why a check of it stays open or does not apply.</summary>
public static class FrameReasons
{
    public static Reason None { get; } = new("frame.none");
    public static Reason NotPositive { get; } = new("frame.not-positive");
    public static Reason Negative { get; } = new("frame.negative");
    public static Reason WallTooThick { get; } = new("frame.wall-too-thick");
    public static Reason NoLength { get; } = new("frame.no-length");

    /// <summary>A member or the box names no profile that there is; names those there are.</summary>
    public static Reason NoSuchProfile { get; } = new("frame.no-such-profile");
    public static Reason NoProfiles { get; } = new("frame.no-profiles");
    public static Reason FromAboveTo { get; } = new("frame.from-above-to");
    public static Reason DampingTooLarge { get; } = new("frame.damping-too-large");
    public static Reason NoFoot { get; } = new("frame.no-foot");
    public static Reason MountOnALine { get; } = new("frame.mount-on-a-line");

    /// <summary>A point is too far from every member to be fastened to one.</summary>
    public static Reason FarFromMembers { get; } = new("frame.far-from-members");

    /// <summary>Part of the frame can move freely; names the member.</summary>
    public static Reason Loose { get; } = new("frame.loose");
    public static Reason NotConverged { get; } = new("frame.not-converged");

    /// <summary>The limit is not stated; names the field.</summary>
    public static Reason NoLimit { get; } = new("frame.no-limit");
    public static Reason NoTolerance { get; } = new("frame.no-tolerance");
    public static Reason NoCycles { get; } = new("frame.no-cycles");
    public static Reason NotMeasured { get; } = new("frame.not-measured");
    public static Reason Anchored { get; } = new("frame.anchored");
    public static Reason NotAnchored { get; } = new("frame.not-anchored");

    /// <summary>Waits until the parts it names are described.</summary>
    public static Reason WaitsFor { get; } = new("frame.waits-for");

    /// <summary>The reaction is not known: the motion's forces are not numbers.</summary>
    public static Reason ReactionUnknown { get; } = new("frame.reaction-unknown");
}

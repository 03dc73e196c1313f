using Trivet.Findings;

namespace Trivet.Bolting;

/// <summary>What a joint can not be, and why a check of it does not apply.</summary>
public static class JointReasons
{
    public static Reason NoJoints { get; } = new("joint.no-joints");

    /// <summary>No plate of that id; names those there are.</summary>
    public static Reason NoSuchPlate { get; } = new("joint.no-such-plate");

    /// <summary>The plate is not found yet, or has no such screws.</summary>
    public static Reason NoSuchScrews { get; } = new("joint.no-such-screws");

    public static Reason NoSuchThread { get; } = new("joint.no-such-thread");
    public static Reason NoSuchClass { get; } = new("joint.no-such-class");
    public static Reason NotPositive { get; } = new("joint.not-positive");
    public static Reason FrictionReversed { get; } = new("joint.friction-reversed");
    public static Reason ScatterTooLarge { get; } = new("joint.scatter-too-large");

    /// <summary>The tool has no part of that id.</summary>
    public static Reason NoSuchPart { get; } = new("joint.no-such-part");

    /// <summary>The washer is no wider than the head, so it spreads nothing.</summary>
    public static Reason WasherTooSmall { get; } = new("joint.washer-too-small");

    /// <summary>No cycle is timed with its masses, so the motion's load is not known.</summary>
    public static Reason NoMotion { get; } = new("joint.no-motion");

    /// <summary>Two places of the description would have to agree, and one is not stated; names it.</summary>
    public static Reason NothingToCompare { get; } = new("joint.nothing-to-compare");

    public static Reason NoSlotNut { get; } = new("joint.no-slot-nut");
}

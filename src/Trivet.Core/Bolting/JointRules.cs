using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Bolting;

/// <summary>The rules by which bolted joints are judged. Values are shares of what may be, so that one looks alike for every joint.</summary>
public static class JointRules
{
    public static Rule Described { get; } = Of("joint.described", "The joint is described and does not contradict itself", "1", Sense.AtLeast, 0);

    /// <summary>Value: largest assembly preload over the one that uses nine tenths of the screw's yield strength.</summary>
    public static Rule Screw { get; } = Of("joint.screw", "The screw stands its tightening", "1", Sense.AtMost, 0);

    /// <summary>Value: pressure under the head over what its material bears.</summary>
    public static Rule Pressure { get; } = Of("joint.pressure", "The head does not sink in", "1", Sense.AtMost, 0);

    /// <summary>Value: largest pull over what the engaged thread bears, with its safety.</summary>
    public static Rule Strip { get; } = Of("joint.strip", "The thread is not stripped", "1", Sense.AtMost, 0);

    /// <summary>Value: largest pull of a screw, newtons.</summary>
    public static Rule SlotNut { get; } = Of("joint.slot-nut", "The slot nut holds in its profile", "N", Sense.AtMost, 0);

    /// <summary>Value: share of the smallest preload that the load takes off, with its safety.</summary>
    public static Rule Separation { get; } = Of("joint.separation", "The joint stays closed", "1", Sense.AtMost, 0.1);

    /// <summary>Value: share of the smallest preload that friction needs against slipping, with its safety.</summary>
    public static Rule Slip { get; } = Of("joint.slip", "The joint does not slip", "1", Sense.AtMost, 0.1);

    /// <summary>Value: alternating stress of the screw over its endurance limit.</summary>
    public static Rule Fatigue { get; } = Of("joint.fatigue", "The screw stands the alternating load without end", "1", Sense.AtMost, 0.1);

    /// <summary>Value: farthest distance of a mount point of the frame from the screws that are to be there, metres.</summary>
    public static Rule MountPoints { get; } = Of("joint.mount-points", "The frame has its mount points where the robot has its screws", "m", Sense.AtMost, 0);

    /// <summary>Value: difference of the force stated for the mount from the weight of what stands still of the robot, as a share of that weight.</summary>
    public static Rule MountWeight { get; } = Of("joint.mount-weight", "The mount's screws carry the robot that stands on the frame", "1", Sense.AtMost, 0);

    /// <summary>Value: difference of the mass that is lifted from that of the robot at the frame, as a share of the latter.</summary>
    public static Rule LiftedMass { get; } = Of("joint.lifted-mass", "The robot lifted is the robot that hangs on the frame", "1", Sense.AtMost, 0);

    public static ImmutableArray<Rule> All { get; } = [Described, Screw, Pressure, Strip, SlotNut, Separation, Slip, Fatigue, MountPoints, MountWeight, LiftedMass];

    private static Rule Of(string id, string title, string unit, Sense sense, double comfort) =>
        new(id, title, Trade.Mechanical, unit, sense, comfort, new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md"));
}

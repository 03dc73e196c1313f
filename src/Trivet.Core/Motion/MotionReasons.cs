using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>Why a cycle can not be as stated, or is not judged.</summary>
public static class MotionReasons
{
    /// <summary>The cycle names a station or a part that is not described; names those that are.</summary>
    public static Reason NoSuchStation { get; } = new("motion.no-such-station");
    public static Reason NoSuchPart { get; } = new("motion.no-such-part");

    /// <summary>Pick and place are at one point.</summary>
    public static Reason NoWay { get; } = new("motion.no-way");

    public static Reason Negative { get; } = new("motion.negative");
    public static Reason NotPositive { get; } = new("motion.not-positive");

    /// <summary>A comfort of one or more leaves nothing of any limit.</summary>
    public static Reason ComfortTooLarge { get; } = new("motion.comfort-too-large");

    public static Reason ArcNeedsOneWaypoint { get; } = new("motion.arc-needs-one-waypoint");
    public static Reason ArcIsStraight { get; } = new("motion.arc-is-straight");

    /// <summary>An arc does not begin along the belt.</summary>
    public static Reason ArcOnBelt { get; } = new("motion.arc-on-belt");

    /// <summary>Between stations at different positions of the axis that carries the robot, that axis moves too: not modelled.</summary>
    public static Reason LinearAxisMoves { get; } = new("motion.linear-axis-moves");

    /// <summary>A move of the axes by themselves begins and ends at rest, not with a belt's speed.</summary>
    public static Reason AxesOnBelt { get; } = new("motion.axes-on-belt");

    /// <summary>No cycle is described.</summary>
    public static Reason NoCycles { get; } = new("motion.no-cycles");

    /// <summary>Where acceleration jumps there is no largest jerk.</summary>
    public static Reason TrapezoidJerks { get; } = new("motion.trapezoid-jerks");

    /// <summary>The law follows the planned path exactly.</summary>
    public static Reason FollowsPath { get; } = new("motion.follows-path");

    /// <summary>There is neither frame nor wall that a stray tool could meet.</summary>
    public static Reason NothingNear { get; } = new("motion.nothing-near");

    public static Reason NoBelt { get; } = new("motion.no-belt");
    public static Reason NoLimit { get; } = new("motion.no-limit");
    public static Reason NoMotor { get; } = new("motion.no-motor");

    /// <summary>The path leaves what the rods reach, so nothing moves along it.</summary>
    public static Reason PathNotReached { get; } = new("motion.path-not-reached");

    /// <summary>Under the stated limits no motion along the path exists.</summary>
    public static Reason NoTiming { get; } = new("motion.no-timing");

    /// <summary>A fall comes where the rods no longer hold the platform, or does not end: how fast it becomes is not known.</summary>
    public static Reason FallNotFollowed { get; } = new("motion.fall-not-followed");

    /// <summary>The settling time that the frame asks of the named cycles is not known, so their rate is not.</summary>
    public static Reason WaitNotKnown { get; } = new("motion.wait-not-known");

    /// <summary>A profile of seven phases needs a jerk, and the settings state none.</summary>
    public static Reason NoJerkStated { get; } = new("motion.no-jerk-stated");
}

using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>The rules by which a cycle's motion is judged. Limits of the axes are held by the controller's law, along both moves.</summary>
public static class MotionRules
{
    /// <summary>What a cycle rests on is described. Appears only while it is not.</summary>
    public static Rule Described { get; } = new(
        "motion.described", "The cycle is described and does not contradict itself", Trade.Motion, "1", Sense.AtLeast, 0, Derived("motion.described"));

    /// <summary>Speed of an axis. Value: the largest, m/s.</summary>
    public static Rule Speed { get; } = Axis("motion.speed", "The axes stay within their speed", "m/s");

    /// <summary>As <see cref="Speed"/>, for axes that turn.</summary>
    public static Rule TurnSpeed { get; } = Axis("motion.turn-speed", "The turning axes stay within their speed", "rad/s");

    public static Rule Acceleration { get; } = Axis("motion.acceleration", "The axes stay within their acceleration", "m/s²");
    public static Rule TurnAcceleration { get; } = Axis("motion.turn-acceleration", "The turning axes stay within their acceleration", "rad/s²");
    public static Rule Jerk { get; } = Axis("motion.jerk", "The axes stay within their jerk", "m/s³");
    public static Rule TurnJerk { get; } = Axis("motion.turn-jerk", "The turning axes stay within their jerk", "rad/s³");

    /// <summary>Force of an axis' drive against its speed. Value: the one with the smallest margin, newtons; limit: what the motor brings at that speed.</summary>
    public static Rule Force { get; } = Axis("motion.force", "The motors bring the force that the motion asks", "N");

    /// <summary>As <see cref="Force"/>, for axes that turn.</summary>
    public static Rule Torque { get; } = Axis("motion.torque", "The motors bring the torque that the motion asks", "N m");

    /// <summary>Pull or push in one rod. Value: the largest, newtons.</summary>
    public static Rule RodForce { get; } = Axis("motion.rod-force", "The rods stay within their force", "N");

    /// <summary>Preload of the ball joints of one rod. Value: the largest pull in either rod of a chain, newtons. Comfort: a stop after a fault is twice as
    /// hard as the planned motion (<see cref="FaultStop"/>), so half of the preload is kept for it; a spring's ageing and making are less (common practice, no source).</summary>
    public static Rule JointPreload { get; } = new(
        "motion.joint-preload", "No ball joint opens", Trade.Motion, "N", Sense.AtMost, 1 - 1 / FaultStop.UsualFactor, Derived("motion.joint-preload"));

    /// <summary>How much sooner both moves could be done than the controller does them. Value: the share of its time that the bound saves.</summary>
    public static Rule Law { get; } = new(
        "motion.law", "The controller's law is not far from what is possible", Trade.Motion, "1", Sense.AtMost, 0.05, Derived("motion.law"));

    /// <summary>How far a law that moves the axes by themselves takes the tool off the planned path, metres.</summary>
    public static Rule Stray { get; } = new(
        "motion.stray", "The tool stays near the planned path", Trade.Motion, "m", Sense.AtMost, 0.1, Derived("motion.stray"));

    /// <summary>Length of a belt's tracking window that approach and wait take, metres.</summary>
    public static Rule Window { get; } = new(
        "motion.window", "Approach and wait fit into the tracking window", Trade.Motion, "m", Sense.AtMost, 0.1, Derived("motion.window"));

    /// <summary>The promise over a shift: cycles per second with all cycles in turn.</summary>
    public static Rule MeanRate { get; } = new(
        "motion.mean-rate", "The mean rate is reached", Trade.Motion, "1/s", Sense.AtLeast, 0.05, Derived("motion.mean-rate"));

    /// <summary>The promise over the worst minute: cycles per second of the slowest cycle alone.</summary>
    public static Rule PeakRate { get; } = new(
        "motion.peak-rate", "The peak rate is reached", Trade.Motion, "1/s", Sense.AtLeast, 0.05, Derived("motion.peak-rate"));

    /// <summary>The rule for a limit of an axis.</summary>
    public static Rule Of(LimitKind kind, bool turns) => kind switch
    {
        LimitKind.Speed => turns ? TurnSpeed : Speed,
        LimitKind.Acceleration => turns ? TurnAcceleration : Acceleration,
        LimitKind.Jerk => turns ? TurnJerk : Jerk,
        LimitKind.Force => turns ? Torque : Force,
        _ => RodForce,
    };

    private static Rule Axis(string id, string title, string unit) => new(id, title, Trade.Motion, unit, Sense.AtMost, ControllerSettings.UsualComfort, Derived(id));

    private static Source Derived(string id) => new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md");
}

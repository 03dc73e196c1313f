using Trivet.Findings;

namespace Trivet.Drives;

/// <summary>What a drive or its supply can not be, and why a check of it stays open or does not apply.</summary>
public static class DriveReasons
{
    /// <summary>No motor has the id that an axis names; names the motors there are.</summary>
    public static Reason NoSuchMotor { get; } = new("drive.no-such-motor");

    /// <summary>As <see cref="NoSuchMotor"/>, where none is described.</summary>
    public static Reason NoMotors { get; } = new("drive.no-motors");

    public static Reason ScrewTurns { get; } = new("drive.screw-turns");
    public static Reason GearIsStraight { get; } = new("drive.gear-is-straight");
    public static Reason NotPositive { get; } = new("drive.not-positive");
    public static Reason Negative { get; } = new("drive.negative");
    public static Reason EfficiencyAboveOne { get; } = new("drive.efficiency-above-one");
    public static Reason OneCurvePoint { get; } = new("drive.one-curve-point");

    /// <summary>Two points of a torque–speed curve at one speed; names the other.</summary>
    public static Reason SameCurveSpeed { get; } = new("drive.same-curve-speed");

    /// <summary>The torque at a point is above that of a slower point; names the slower one.</summary>
    public static Reason CurveRises { get; } = new("drive.curve-rises");

    /// <summary>A check waits until the parts it names are described.</summary>
    public static Reason WaitsFor { get; } = new("drive.waits-for");

    /// <summary>The chopper would burn the source's own power.</summary>
    public static Reason ChopperBelowSource { get; } = new("drive.chopper-below-source");

    /// <summary>No cycle is planned, so nothing is asked of the drives.</summary>
    public static Reason NoCycles { get; } = new("drive.no-cycles");

    public static Reason NoChopper { get; } = new("drive.no-chopper");
    public static Reason NoBelt { get; } = new("drive.no-belt");
    public static Reason OnlyBelts { get; } = new("drive.only-belts");

    /// <summary>The field that would be the limit is not stated; names it.</summary>
    public static Reason NoLimit { get; } = new("drive.no-limit");

    public static Reason NoTolerance { get; } = new("drive.no-tolerance");

    /// <summary>The axis turns at the tool, or carries the robot.</summary>
    public static Reason NotOfPlace { get; } = new("drive.not-of-place");

    public static Reason NoStiffness { get; } = new("drive.no-stiffness");
    public static Reason HeldCurrent { get; } = new("drive.held-current");
    public static Reason WithFeedback { get; } = new("drive.with-feedback");

    /// <summary>The motor turns faster than its curve goes, so that it has no torque there.</summary>
    public static Reason BeyondCurve { get; } = new("drive.beyond-curve");

    public static Reason VoltageCollapsed { get; } = new("drive.voltage-collapsed");
    public static Reason VoltageNotPeriodic { get; } = new("drive.voltage-not-periodic");

    /// <summary>The forces of the motion are not known: masses are not described.</summary>
    public static Reason ForceUnknown { get; } = new("drive.force-unknown");

    /// <summary>The motion did not say what the load weighs at this axis.</summary>
    public static Reason LoadUnknown { get; } = new("drive.load-unknown");
}

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
}

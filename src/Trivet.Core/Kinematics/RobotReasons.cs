using Trivet.Findings;

namespace Trivet.Kinematics;

/// <summary>Why a robot as stated can not be built.</summary>
public static class RobotReasons
{
    public static Reason NumberOfChains { get; } = new("robot.number-of-chains");

    /// <summary>Two chains at one azimuth; names both.</summary>
    public static Reason SameAzimuth { get; } = new("robot.same-azimuth");

    /// <summary>A robot of two chains has one off the plane y = 0 of the base frame.</summary>
    public static Reason OffPlane { get; } = new("robot.off-plane");

    public static Reason NumberedClockwise { get; } = new("robot.numbered-clockwise");
    public static Reason NumberedCounterClockwise { get; } = new("robot.numbered-counter-clockwise");
    public static Reason RodPositive { get; } = new("robot.rod-positive");
    public static Reason BaseRadiusPositive { get; } = new("robot.base-radius-positive");
    public static Reason UpperArmPositive { get; } = new("robot.upper-arm-positive");
    public static Reason PlatformRadiusNegative { get; } = new("robot.platform-radius-negative");
    public static Reason TravelEndsBeforeItBegins { get; } = new("robot.travel-ends-before-it-begins");
    public static Reason InclinationTooLarge { get; } = new("robot.inclination-too-large");
    public static Reason SideLeanTooLarge { get; } = new("robot.side-lean-too-large");

    /// <summary>The rod does not span from drive to platform even with the platform in the middle.</summary>
    public static Reason RodTooShort { get; } = new("robot.rod-too-short");
}

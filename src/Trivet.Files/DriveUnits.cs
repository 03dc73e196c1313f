using Trivet.Cells;

namespace Trivet.Files;

/// <summary>
/// What a drive's coordinate is measured in: a length for a carriage on a rail, an angle for an upper arm. The robot's family
/// decides; for an axis of the controller, what the axis drives does.
/// </summary>
internal static class DriveUnits
{
    private const string Axes = "/controller/axes/";

    public static bool Either(Dimension dimension) =>
        dimension is Dimension.DriveCoordinate or Dimension.DriveSpeed or Dimension.DriveAcceleration;

    /// <summary>The dimension of a field in this cell; null where nothing stated decides between length and angle.</summary>
    public static Dimension? Of(Cell cell, string pointer, Dimension dimension) =>
        !Either(dimension) ? dimension
        : Straight(cell, pointer) is not { } straight ? null
        : (dimension, straight) switch
        {
            (Dimension.DriveCoordinate, true) => Dimension.Length,
            (Dimension.DriveCoordinate, false) => Dimension.Angle,
            (Dimension.DriveSpeed, true) => Dimension.Speed,
            (Dimension.DriveSpeed, false) => Dimension.AngularSpeed,
            (_, true) => Dimension.Acceleration,
            (_, false) => Dimension.AngularAcceleration,
        };

    /// <summary>The field that decides, and its value as a reason: "robot.family is rail delta".</summary>
    public static string Reason(Cell cell, string pointer) => AxisOf(cell, pointer)?.Drives switch
    {
        "rotary" => "this axis drives the rotary axis",
        "linear" => "this axis drives the linear axis",
        _ => cell.Robot.Family == RobotFamily.RailDelta ? "the robot is a rail delta" : "the robot is a crank delta",
    };

    private static bool? Straight(Cell cell, string pointer) => AxisOf(cell, pointer)?.Drives switch
    {
        "rotary" => false,
        "linear" => true,
        _ => cell.Robot.Family switch
        {
            RobotFamily.RailDelta => true,
            RobotFamily.CrankDelta => false,
            _ => null,
        },
    };

    private static AxisMapping? AxisOf(Cell cell, string pointer)
    {
        if (!pointer.StartsWith(Axes, StringComparison.Ordinal)) return null;
        int end = pointer.IndexOf('/', Axes.Length);
        return end < 0 ? null : cell.Controller.Axes.GetValueOrDefault(pointer[Axes.Length..end]);
    }
}

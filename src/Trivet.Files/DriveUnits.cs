using Trivet.Cells;

namespace Trivet.Files;

/// <summary>
/// What a drive's coordinate is measured in: a length for a carriage on a rail, an angle for an upper arm. The robot's family
/// decides; for an axis of the controller, what the axis drives does, and for an axis of the drives, its id.
/// </summary>
internal static class DriveUnits
{
    private const string ControllerAxes = "/controller/axes/", DriveAxes = "/drives/axes/", Switches = "/io/switches/";

    public static bool Either(Dimension dimension) => dimension >= Dimension.DriveCoordinate;

    /// <summary>The dimension of a field in this cell; null where nothing stated decides between length and angle.</summary>
    public static Dimension? Of(Cell cell, string pointer, Dimension dimension) =>
        !Either(dimension) ? dimension
        : Straight(cell, pointer) is not { } straight ? null
        : Units.For(dimension)[straight ? 0 : 1].Dimension;

    /// <summary>The field that decides, and its value as a reason: "robot.family is rail delta".</summary>
    public static string Reason(Cell cell, string pointer) => AxisOf(cell, pointer) switch
    {
        "rotary" => "this axis drives the rotary axis",
        "linear" => "this axis drives the linear axis",
        _ => cell.Robot.Family == RobotFamily.RailDelta ? "the robot is a rail delta" : "the robot is a crank delta",
    };

    private static bool? Straight(Cell cell, string pointer) => AxisOf(cell, pointer) switch
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

    private static string? AxisOf(Cell cell, string pointer) =>
        IdBelow(ControllerAxes, pointer) is { } id ? cell.Controller.Axes.GetValueOrDefault(id)?.Drives
        : IdBelow(Switches, pointer) is { } at ? cell.Io.Switches.GetValueOrDefault(at)?.Axis
        : IdBelow(DriveAxes, pointer);

    private static string? IdBelow(string collection, string pointer)
    {
        if (!pointer.StartsWith(collection, StringComparison.Ordinal)) return null;
        int end = pointer.IndexOf('/', collection.Length);
        return end < 0 ? null : pointer[collection.Length..end];
    }
}

using Trivet.Cells;

namespace Trivet.Files;

/// <summary>
/// What a drive's coordinate is measured in: a length for a carriage on a rail, an angle for an upper arm. The robot's family
/// decides; for an axis of the controller, what the axis drives does, and for an axis of the drives, its id. What a parameter of the controller is measured in,
/// the quantity that it holds decides.
/// </summary>
internal static class DriveUnits
{
    private const string ControllerAxes = "/controller/axes/", DriveAxes = "/drives/axes/", Switches = "/io/switches/", Settings = "/controller/settings/";

    public static bool Either(Dimension dimension) => dimension >= Dimension.DriveCoordinate;

    /// <summary>The dimension of a field in this cell; null where nothing stated decides between length and angle.</summary>
    public static Dimension? Of(Cell cell, string pointer, Dimension dimension) =>
        !Either(dimension) ? dimension
        : dimension == Dimension.Setting ? OfSetting(cell, pointer)
        : Straight(cell, pointer) is not { } straight ? null
        : Units.For(dimension)[straight ? 0 : 1].Dimension;

    /// <summary>The field that decides, and its value as a reason: "robot.family is rail delta".</summary>
    public static string Reason(Cell cell, string pointer) => AxisOf(cell, pointer) switch
    {
        "rotary" => "this axis drives the rotary axis",
        "linear" => "this axis drives the linear axis",
        _ => cell.Robot.Family == RobotFamily.RailDelta ? "the robot is a rail delta" : "the robot is a crank delta",
    };

    private static Dimension? OfSetting(Cell cell, string pointer) => SettingAt(cell, pointer)?.Quantity switch
    {
        null => null,
        SettingQuantity.Azimuth or SettingQuantity.Inclination or SettingQuantity.FrameTurn => Dimension.Angle,
        SettingQuantity.HomeOffset or SettingQuantity.SmallestReading or SettingQuantity.LargestReading or SettingQuantity.ReadingAtHome or SettingQuantity.DriveStep or SettingQuantity.TravelPerTurn =>
            Of(cell, pointer, Dimension.DriveCoordinate),
        SettingQuantity.AxisSpeed => Of(cell, pointer, Dimension.DriveSpeed),
        SettingQuantity.AxisAcceleration => Of(cell, pointer, Dimension.DriveAcceleration),
        SettingQuantity.AxisJerk => Of(cell, pointer, Dimension.DriveJerk),
        SettingQuantity.Direction or SettingQuantity.Ratio or SettingQuantity.CountsPerTurn or SettingQuantity.Address => Dimension.One,
        SettingQuantity.ContinuousCurrent or SettingQuantity.PeakCurrent => Dimension.Current,
        SettingQuantity.PathSpeed => Dimension.Speed,
        SettingQuantity.PathAcceleration => Dimension.Acceleration,
        SettingQuantity.PathJerk => Dimension.Jerk,
        SettingQuantity.BitRate => Dimension.BitRate,
        SettingQuantity.Period => Dimension.Time,
        _ => Dimension.Length,
    };

    private static ControllerSetting? SettingAt(Cell cell, string pointer) => IdBelow(Settings, pointer) is { } id ? cell.Controller.Settings.GetValueOrDefault(id) : null;

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
        : SettingAt(cell, pointer) is { } setting ? setting.Of
        : IdBelow(DriveAxes, pointer);

    private static string? IdBelow(string collection, string pointer)
    {
        if (!pointer.StartsWith(collection, StringComparison.Ordinal)) return null;
        int end = pointer.IndexOf('/', collection.Length);
        return end < 0 ? null : pointer[collection.Length..end];
    }
}

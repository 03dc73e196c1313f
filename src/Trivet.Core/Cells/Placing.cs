using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>How the user's controller names and signs what Trivet computes. Every typed reading passes through it.</summary>
public sealed record ControllerMapping
{
    public string? Note { get; init; }
    /// <summary>Turn of the controller's x about z against the base frame, radians.</summary>
    public double? FrameYaw { get; init; }
    /// <summary>Base frame z of the controller's z = 0, metres.</summary>
    public double? ZeroHeight { get; init; }
    /// <summary>The controller's z grows downward.</summary>
    public bool? ZDown { get; init; }
    /// <summary>The controller writes numbers with a decimal comma, on its face and in its exports.</summary>
    public bool? DecimalComma { get; init; }
    public ImmutableSortedDictionary<string, AxisMapping> Axes { get; init; } = Keyed.Empty<AxisMapping>();
    public ImmutableSortedDictionary<string, ControllerSetting> Settings { get; init; } = Keyed.Empty<ControllerSetting>();
    public ExportMapping Export { get; init; } = new();
}

/// <summary>One axis of the controller.</summary>
public sealed record AxisMapping : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    /// <summary>The name the controller shows.</summary>
    public string? Name { get; init; }
    /// <summary>Id of the chain, or "rotary" or "linear".</summary>
    public string? Drives { get; init; }
    /// <summary>The controller's value grows against Trivet's coordinate.</summary>
    public bool? Reversed { get; init; }
    /// <summary>Trivet's coordinate where the controller shows zero, SI.</summary>
    public double? ZeroAt { get; init; }
    /// <summary>Trivet's coordinate per unit shown, SI (1 mm shown: 0.001).</summary>
    public double? PerUnit { get; init; }
}

/// <summary>Places the base frame in the cell frame: R_CB = Rz(yaw)·Ry(tiltY)·Rx(tiltX), origin at x, y, z.</summary>
public sealed record Mount
{
    public string? Note { get; init; }
    public double? X { get; init; }
    public double? Y { get; init; }
    public double? Z { get; init; }
    public double? Yaw { get; init; }
    public double? TiltX { get; init; }
    public double? TiltY { get; init; }
}

/// <summary>From the platform outward, in order: plates, rotary axis, gripper, fingers.</summary>
public sealed record ToolStack
{
    public string? Note { get; init; }
    /// <summary>Tool centre point from the platform reference point, in the platform's axes at rotary angle 0 (z up), metres.</summary>
    public double? TcpX { get; init; }
    public double? TcpY { get; init; }
    public double? TcpZ { get; init; }
    /// <summary>Radius of the capsule around the tool, from the platform down to the TCP, metres.</summary>
    public double? Radius { get; init; }
    /// <summary>What the platform may carry, tool and part together: mass, kilograms; moment about its mechanical interface, newton metres; inertia about
    /// the upright axis through it, kilogram square metres.</summary>
    public double? LargestMass { get; init; }
    public double? LargestMoment { get; init; }
    public double? LargestInertia { get; init; }
    public ImmutableSortedDictionary<string, ToolPart> Parts { get; init; } = Keyed.Empty<ToolPart>();
    public Vacuum Vacuum { get; init; } = new();
    public Fingers Fingers { get; init; } = new();
}

public enum StationKind
{
    Nest,
    Tray,
    Belt,
}

/// <summary>
/// A place where parts are picked or placed, in the cell frame. Position is the point of the station's own frame origin: the
/// nest's centre, the tray's first pocket, the middle of the belt where the tracking window begins; z is where the tool centre
/// point is at pick or place. The station's x is turned from the cell's x by yaw; a belt runs along its x.
/// </summary>
public sealed record Station : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public StationKind? Kind { get; init; }
    /// <summary>Id of the part handled here.</summary>
    public string? Part { get; init; }
    public double? X { get; init; }
    public double? Y { get; init; }
    public double? Z { get; init; }
    public double? Yaw { get; init; }
    /// <summary>Height above z that the tool rises to before it travels, metres.</summary>
    public double? Approach { get; init; }
    /// <summary>Nest: the zone of places around the centre, width along x and depth along y. Belt: depth is the belt's usable width.</summary>
    public double? Width { get; init; }
    public double? Depth { get; init; }
    /// <summary>Tray: pockets and pitch along x (columns) and y (rows).</summary>
    public int? Columns { get; init; }
    public int? Rows { get; init; }
    public double? ColumnPitch { get; init; }
    public double? RowPitch { get; init; }
    /// <summary>Belt: length of the tracking window and speed.</summary>
    public double? Window { get; init; }
    public double? Speed { get; init; }
    /// <summary>Angles the rotary axis takes here, radians.</summary>
    public double? RotaryFrom { get; init; }
    public double? RotaryTo { get; init; }
    /// <summary>Position of the axis that carries the robot while working here, metres.</summary>
    public double? LinearAxisAt { get; init; }
    /// <summary>Height of walls (belt guides, tray rims) above z, at the edge of the zone, metres.</summary>
    public double? WallHeight { get; init; }
    /// <summary>Distance of those walls from the edge of the zone, metres.</summary>
    public double? WallGap { get; init; }
}

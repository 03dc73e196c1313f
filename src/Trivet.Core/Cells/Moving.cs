using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>What is to be moved from where to where, and the settings the controller will be given.</summary>
public sealed record MotionPlan
{
    public string? Note { get; init; }
    public MotionSettings Settings { get; init; } = new();
    public ImmutableSortedDictionary<string, Cycle> Cycles { get; init; } = Keyed.Empty<Cycle>();
}

/// <summary>How the controller shapes a move in time.</summary>
public enum ProfileKind
{
    /// <summary>Constant acceleration, constant speed, constant deceleration.</summary>
    Trapezoidal,
    /// <summary>With ramps of acceleration: constant jerk in four of seven phases.</summary>
    SevenPhase,
}

/// <summary>What the controller runs the profile along.</summary>
public enum ProfileAlong
{
    Path,
    Axes,
}

/// <summary>The settings of the controller's motion law.</summary>
public sealed record MotionSettings
{
    public string? Note { get; init; }
    public ProfileKind? Profile { get; init; }
    public ProfileAlong? Along { get; init; }
    /// <summary>Limits along the path of the tool centre point: m/s, m/s², m/s³.</summary>
    public double? PathSpeed { get; init; }
    public double? PathAcceleration { get; init; }
    public double? PathJerk { get; init; }
    /// <summary>Distance from a corner within which it is rounded, metres.</summary>
    public double? Blend { get; init; }
    /// <summary>Fraction of every limit that is kept in reserve, 0 to 1.</summary>
    public double? Comfort { get; init; }
}

/// <summary>Where in a station's zone a cycle picks or places.</summary>
public enum PlaceWithin
{
    Middle,
    First,
    Last,
    /// <summary>The corner of the zone that is farthest from the other station.</summary>
    Farthest,
}

public enum PathShape
{
    /// <summary>Up, across, down, corners rounded.</summary>
    Gate,
    Straight,
    /// <summary>An arc of a circle through the only waypoint.</summary>
    Arc,
    /// <summary>Straight from waypoint to waypoint, corners rounded.</summary>
    Waypoints,
}

/// <summary>One cycle: pick, loaded move, place, empty move back.</summary>
public sealed record Cycle : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of the part that is carried.</summary>
    public string? Part { get; init; }
    /// <summary>Ids of the stations.</summary>
    public string? Pick { get; init; }
    public PlaceWithin? PickAt { get; init; }
    public string? Place { get; init; }
    public PlaceWithin? PlaceAt { get; init; }
    public PathShape? Shape { get; init; }
    /// <summary>Height above the higher of both places at which the tool travels across, metres; the larger approach of both stations where not stated.</summary>
    public double? Rise { get; init; }
    /// <summary>In place of the blend of the settings, metres.</summary>
    public double? Blend { get; init; }
    /// <summary>Time at the pick until the part is held, at the place until it is let go, and for the frame to settle, seconds.</summary>
    public double? PickDwell { get; init; }
    public double? PlaceDwell { get; init; }
    public double? Settle { get; init; }
    public ImmutableSortedDictionary<string, Waypoint> Waypoints { get; init; } = Keyed.Empty<Waypoint>();
}

/// <summary>A place the tool centre point passes on the loaded move, cell frame; the empty move passes them in reverse.</summary>
public sealed record Waypoint : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    public double? X { get; init; }
    public double? Y { get; init; }
    public double? Z { get; init; }
}

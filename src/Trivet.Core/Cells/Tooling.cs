using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>What a part of the tool stack is.</summary>
public enum ToolPartKind
{
    Plate,
    /// <summary>What hangs below it turns with it.</summary>
    RotaryAxis,
    Gripper,
    Cup,
    Finger,
    Other,
}

/// <summary>Where mass and inertia of a part come from.</summary>
public enum SolidKind
{
    Box,
    Cylinder,
    Tube,
    /// <summary>A ring of round section.</summary>
    Ring,
    Sphere,
    /// <summary>Mass, centre and inertia are stated.</summary>
    Given,
    /// <summary>A closed surface read from a file.</summary>
    Mesh,
}

/// <summary>The direction a round part lies in.</summary>
public enum SolidAxis
{
    Upright,
    AlongX,
    AlongY,
}

/// <summary>
/// One part of the tool stack. Its own frame: origin at the middle of its upper face on the platform's axis, axes those of the platform (z up), so it
/// hangs at negative z.
/// </summary>
public sealed record ToolPart : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public ToolPartKind? Kind { get; init; }
    /// <summary>Id of the designed plate that this part is.</summary>
    public string? Plate { get; init; }
    /// <summary>Kilograms; density times volume where not stated.</summary>
    public double? Mass { get; init; }
    /// <summary>How far it reaches down from the part above, metres.</summary>
    public double? Height { get; init; }
    /// <summary>Hangs beside the part before it, from the same face, rather than below it.</summary>
    public bool? Beside { get; init; }
    public SolidKind? Shape { get; init; }
    /// <summary>Direction of a round part; its length is then the height, width or depth.</summary>
    public SolidAxis? Axis { get; init; }
    public double? Width { get; init; }
    public double? Depth { get; init; }
    public double? Diameter { get; init; }
    public double? InnerDiameter { get; init; }
    /// <summary>Kilograms per cubic metre.</summary>
    public double? Density { get; init; }
    /// <summary>Centre of mass, own frame, metres; the middle of the shape where not stated.</summary>
    public double? CentreX { get; init; }
    public double? CentreY { get; init; }
    public double? CentreZ { get; init; }
    /// <summary>Given inertia about the centre of mass, kg·m²: moments, and products ∫xy dm.</summary>
    public double? InertiaX { get; init; }
    public double? InertiaY { get; init; }
    public double? InertiaZ { get; init; }
    public double? ProductXY { get; init; }
    public double? ProductYZ { get; init; }
    public double? ProductZX { get; init; }
    /// <summary>The most that may hang below its upper face, itself included: kilograms, and newton metres there.</summary>
    public double? LargestLoad { get; init; }
    public double? LargestLoadMoment { get; init; }
    public MeshSolid Mesh { get; init; } = new();
}

/// <summary>
/// A body read from a mesh file. What was read stands in the description, so that a revision does not change when the file does.
/// </summary>
public sealed record MeshSolid
{
    public string? Note { get; init; }
    /// <summary>Path, relative to the cell file.</summary>
    public string? File { get; init; }
    /// <summary>Length of one unit of the file, metres.</summary>
    public double? Unit { get; init; }
    /// <summary>As read, in the part's own frame: cubic metres, metres, square metres (inertia about the centre for each kilogram).</summary>
    public double? Volume { get; init; }
    public double? CentreX { get; init; }
    public double? CentreY { get; init; }
    public double? CentreZ { get; init; }
    public double? GyrationX { get; init; }
    public double? GyrationY { get; init; }
    public double? GyrationZ { get; init; }
    public double? ProductXY { get; init; }
    public double? ProductYZ { get; init; }
    public double? ProductZX { get; init; }
}

/// <summary>Cups that hold the part by vacuum. Pressures of vacuum are below ambient.</summary>
public sealed record Vacuum
{
    public string? Note { get; init; }
    public int? Cups { get; init; }
    /// <summary>Diameter on which one cup holds, metres.</summary>
    public double? CupDiameter { get; init; }
    /// <summary>Diameter of the circle the cups stand on, evenly, metres; not needed for one.</summary>
    public double? CupCircle { get; init; }
    /// <summary>Vacuum at which the part counts as held, pascals below ambient.</summary>
    public double? Level { get; init; }
    /// <summary>Deepest vacuum of the generator without flow, pascals below ambient.</summary>
    public double? DeepestLevel { get; init; }
    /// <summary>Suction of the generator at ambient pressure, m³/s.</summary>
    public double? Suction { get; init; }
    /// <summary>Flow of free air through part and lips at the level, m³/s; none where not stated.</summary>
    public double? Leakage { get; init; }
    /// <summary>Hose between generator and cups, metres.</summary>
    public double? HoseDiameter { get; init; }
    public double? HoseLength { get; init; }
    /// <summary>Id of that hose among the hoses of compressed air, which then says how wide and long it is.</summary>
    public string? Hose { get; init; }
    /// <summary>Volume of cups, holder and fittings, m³.</summary>
    public double? DeadVolume { get; init; }
    /// <summary>Time of the valve, from signal to flow, seconds.</summary>
    public double? ValveTime { get; init; }
    /// <summary>Flow of free air for the release, m³/s; without it the part lets go by itself, which is not computed.</summary>
    public double? BlowOff { get; init; }
    public double? Safety { get; init; }
    public string? SafetySource { get; init; }
    /// <summary>Friction between cup and part, in place of that by the surface's state.</summary>
    public double? FrictionFrom { get; init; }
    public double? FrictionTo { get; init; }
}

/// <summary>How fingers hold.</summary>
public enum GripKind
{
    Friction,
    /// <summary>The part lies in the fingers' shape; closing force only keeps them shut.</summary>
    Form,
}

/// <summary>Fingers that hold the part between them.</summary>
public sealed record Fingers
{
    public string? Note { get; init; }
    public int? Count { get; init; }
    public GripKind? Grip { get; init; }
    /// <summary>Force of one finger on the part, newtons.</summary>
    public double? Force { get; init; }
    public double? Safety { get; init; }
    public string? SafetySource { get; init; }
    public double? FrictionFrom { get; init; }
    public double? FrictionTo { get; init; }
    /// <summary>From signal to held and to let go, seconds.</summary>
    public double? ClosingTime { get; init; }
    public double? OpeningTime { get; init; }
}

public enum AirUserKind
{
    /// <summary>A cylinder, or a gripper with one.</summary>
    Cylinder,
    /// <summary>Makes vacuum from compressed air while the part is picked and carried.</summary>
    Ejector,
    /// <summary>Blows into the cups while the part is placed.</summary>
    BlowOff,
}

/// <summary>Compressed air: what comes to the cell, who uses it, and the hoses between. Pressures are above ambient.</summary>
public sealed record Pneumatics
{
    public string? Note { get; init; }
    public double? SupplyPressure { get; init; }
    /// <summary>Free air that the supply can give, m³/s.</summary>
    public double? SupplyFlow { get; init; }
    public ImmutableSortedDictionary<string, AirUser> Users { get; init; } = Keyed.Empty<AirUser>();
    public ImmutableSortedDictionary<string, Hose> Hoses { get; init; } = Keyed.Empty<Hose>();
}

public sealed record AirUser : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public AirUserKind? Kind { get; init; }
    /// <summary>Pressure it works with, pascals above ambient.</summary>
    public double? Pressure { get; init; }
    /// <summary>Ejector and blow-off: free air while it is on, m³/s.</summary>
    public double? Flow { get; init; }
    /// <summary>Blow-off: how long it is on in a cycle, seconds.</summary>
    public double? OnTime { get; init; }
    /// <summary>Cylinder: metres.</summary>
    public double? Bore { get; init; }
    public double? RodDiameter { get; init; }
    public double? Stroke { get; init; }
    /// <summary>Cylinder: a spring returns it, so that one chamber alone takes air.</summary>
    public bool? SpringReturn { get; init; }
    /// <summary>Cylinder: double strokes in a cycle.</summary>
    public int? StrokesPerCycle { get; init; }
    /// <summary>The valve's name on the diagram.</summary>
    public string? Valve { get; init; }
}

/// <summary>A hose from a valve to a user of air or to the cups.</summary>
public sealed record Hose : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public string? From { get; init; }
    public string? To { get; init; }
    /// <summary>Id of the user whose strokes fill and empty it.</summary>
    public string? User { get; init; }
    public double? InnerDiameter { get; init; }
    public double? Length { get; init; }
}

using System.Collections.Immutable;

namespace Trivet.Cells;

public enum ScrewHead
{
    Cap,
    Hexagon,
    Countersunk,
}

/// <summary>What a screw is screwed into.</summary>
public enum ThreadIn
{
    Tapped,
    Nut,
    /// <summary>A nut in the slot of an extruded profile, with a largest pull of its own.</summary>
    SlotNut,
}

/// <summary>Which of an adapter plate's screws: those of the part above, of the part below, or those that join a stack of two.</summary>
public enum JointSide
{
    Above,
    Below,
    Between,
}

public enum JointLoad
{
    /// <summary>The robot's reaction on its mount over the cycles.</summary>
    Mount,
    /// <summary>The mass of the tool's parts from <see cref="Joint.CarriesFrom"/> on, times the platform's acceleration over the cycles.</summary>
    Tool,
    /// <summary>The force and moment stated, and no motion.</summary>
    Stated,
}

public enum Roughness
{
    Fine,
    Medium,
    Coarse,
}

/// <summary>
/// A bolted joint. Its axes: z along the screws, upward; x as the pattern's. Force and moment are those that the part which hangs on the
/// screws puts on the joint.
/// </summary>
public sealed record Joint : IOrdered
{
    /// <summary>Place in the order of tightening.</summary>
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of an adapter plate whose screws these are, and which of them.</summary>
    public string? Plate { get; init; }
    public JointSide? Side { get; init; }
    /// <summary>Id of an interface or designation of a standard: where the screws are, for a joint that is not a plate's.</summary>
    public string? Pattern { get; init; }
    public string? Thread { get; init; }
    public string? PropertyClass { get; init; }
    public ScrewHead? Head { get; init; }
    /// <summary>Outer diameter and thickness of the washer under the head, metres; none where not stated.</summary>
    public double? WasherDiameter { get; init; }
    public double? WasherThickness { get; init; }
    public ImmutableSortedDictionary<string, ClampedLayer> Clamped { get; init; } = Keyed.Empty<ClampedLayer>();
    public ThreadIn? Into { get; init; }
    /// <summary>Material of the thread, and the length engaged in it, metres.</summary>
    public string? ThreadMaterial { get; init; }
    public double? Engagement { get; init; }
    /// <summary>Largest pull of the slot nut in its profile, newtons.</summary>
    public double? SlotNutForce { get; init; }
    /// <summary>Friction in thread and under the head, smallest and largest.</summary>
    public double? FrictionFrom { get; init; }
    public double? FrictionTo { get; init; }
    /// <summary>Smallest friction between the clamped faces.</summary>
    public double? FaceFriction { get; init; }
    /// <summary>Scatter of the wrench either way, as a fraction of the torque.</summary>
    public double? WrenchScatter { get; init; }
    public Roughness? Roughness { get; init; }
    /// <summary>Tightening torque; found where not stated, newton metres.</summary>
    public double? Torque { get; init; }
    public JointLoad? Load { get; init; }
    /// <summary>Tool: id of the first part that hangs below the joint.</summary>
    public string? CarriesFrom { get; init; }
    /// <summary>Mount: middle of the joint in the base frame, metres.</summary>
    public double? AtX { get; init; }
    public double? AtY { get; init; }
    public double? AtZ { get; init; }
    /// <summary>The part that hangs on the screws stands above the joint and presses it together under its weight.</summary>
    public bool? Stands { get; init; }
    /// <summary>Multiplies the forces of motion: stops after a fault are harder than what was planned.</summary>
    public double? LoadFactor { get; init; }
    /// <summary>Stated load, added to that of motion, newtons and newton metres.</summary>
    public double? ForceX { get; init; }
    public double? ForceY { get; init; }
    public double? ForceZ { get; init; }
    public double? MomentX { get; init; }
    public double? MomentY { get; init; }
    public double? MomentZ { get; init; }
}

/// <summary>One layer that the screws clamp, from the head on.</summary>
public sealed record ClampedLayer : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    public double? Thickness { get; init; }
    public string? Material { get; init; }
    /// <summary>Width of the layer across the screw, metres; wide where not stated.</summary>
    public double? Width { get; init; }
}

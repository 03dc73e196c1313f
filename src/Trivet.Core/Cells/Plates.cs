using System.Collections.Immutable;

namespace Trivet.Cells;

public enum PatternShape
{
    Circle,
    Rectangle,
    List,
}

/// <summary>How a part's mounting face is centred on its neighbour.</summary>
public enum Centring
{
    None,
    /// <summary>A boss stands out of the face.</summary>
    Boss,
    /// <summary>A bore is set into the face; a loose ring centres.</summary>
    Bore,
}

/// <summary>
/// The mounting face of a part: where its holes are, what they are, how it is centred. Positions are in the face's own axes, seen from
/// above, x to the right. A standard named in <see cref="Standard"/> gives every field that is not stated here.
/// </summary>
public sealed record Interface : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Designation of a pattern that Trivet knows: <c>ISO 9409-1-50-4-M6</c>, <c>NEMA 17</c>.</summary>
    public string? Standard { get; init; }
    public PatternShape? Shape { get; init; }
    /// <summary>Diameter of the circle through the holes, metres.</summary>
    public double? Circle { get; init; }
    public int? Holes { get; init; }
    /// <summary>Angle of the first hole from x, counter-clockwise seen from above, radians.</summary>
    public double? StartAngle { get; init; }
    /// <summary>Rectangle: distance of the holes along x and along y, metres.</summary>
    public double? Width { get; init; }
    public double? Depth { get; init; }
    public ImmutableSortedDictionary<string, PatternPoint> Points { get; init; } = Keyed.Empty<PatternPoint>();
    /// <summary>Size of the screws: <c>M6</c>.</summary>
    public string? Thread { get; init; }
    /// <summary>The part has threads; otherwise holes that screws pass.</summary>
    public bool? Tapped { get; init; }
    /// <summary>Depth of full thread from the face, metres.</summary>
    public double? ThreadDepth { get; init; }
    /// <summary>Thickness that a screw's head clamps, where the screws pass the part, metres.</summary>
    public double? Grip { get; init; }
    public string? Material { get; init; }
    public Centring? Centring { get; init; }
    public double? CentringDiameter { get; init; }
    /// <summary>Height of the boss or depth of the bore, metres.</summary>
    public double? CentringDepth { get; init; }
    /// <summary>Locating pin: its diameter, the circle it stands on, its angle from x.</summary>
    public double? PinDiameter { get; init; }
    public double? PinCircle { get; init; }
    public double? PinAngle { get; init; }
    /// <summary>Diameter of a round face, metres.</summary>
    public double? FaceDiameter { get; init; }
    /// <summary>Size along x and y of a rectangular face, metres.</summary>
    public double? FaceWidth { get; init; }
    public double? FaceDepth { get; init; }
}

/// <summary>One hole of a pattern given as a list.</summary>
public sealed record PatternPoint : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    public double? X { get; init; }
    public double? Y { get; init; }
}

public enum PlateFace
{
    Above,
    Below,
}

public enum PlateOutline
{
    Round,
    /// <summary>As close round the holes as the walls allow.</summary>
    Fitted,
}

/// <summary>An adapter plate to be designed between two faces, with what the shop can make.</summary>
public sealed record PlatePlan : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>What the title block names (ISO 7200): legal owner, identification number, creator, and who approved it.</summary>
    public string? Owner { get; init; }
    public string? Number { get; init; }
    public string? Creator { get; init; }
    public string? ApprovedBy { get; init; }
    /// <summary>Id of an interface, or the designation of a standard, of the part on the plate's upper face.</summary>
    public string? Above { get; init; }
    public string? Below { get; init; }
    /// <summary>Angle of the lower pattern against the upper one, counter-clockwise seen from above, radians; searched where not stated.</summary>
    public double? Clocking { get; init; }
    public double? ClockingStep { get; init; }
    public string? Material { get; init; }
    /// <summary>The part that the plate is screwed to first; both are tried where not stated.</summary>
    public PlateFace? FirstFitted { get; init; }
    /// <summary>One plate, or a stack of two.</summary>
    public int? Pieces { get; init; }
    public double? Thickness { get; init; }
    public ImmutableSortedDictionary<string, StockThickness> Stock { get; init; } = Keyed.Empty<StockThickness>();
    public PlateOutline? Outline { get; init; }
    /// <summary>Smallest wall between two holes, metres.</summary>
    public double? Wall { get; init; }
    /// <summary>Smallest wall between a hole and the edge, metres.</summary>
    public double? Edge { get; init; }
    /// <summary>Smallest thickness under a head or a blind hole, metres.</summary>
    public double? Floor { get; init; }
    /// <summary>Diameter of the passage for cable and air in the middle, metres.</summary>
    public double? Bore { get; init; }
    /// <summary>Free radius that key or driver needs round a screw's axis, metres.</summary>
    public double? KeyRoom { get; init; }
    public bool? Lighten { get; init; }
    /// <summary>Size of the screws that join a stack of two.</summary>
    public string? JoiningThread { get; init; }
}

/// <summary>A thickness that is in stock.</summary>
public sealed record StockThickness : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    public double? Thickness { get; init; }
}

/// <summary>A material of plates, clamped parts and threads, as its data sheet states it.</summary>
public sealed record Material : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Kilograms per cubic metre.</summary>
    public double? Density { get; init; }
    /// <summary>Young's modulus, pascal.</summary>
    public double? Modulus { get; init; }
    public double? PoissonRatio { get; init; }
    /// <summary>Shear strength of a thread cut in it, pascal.</summary>
    public double? ShearStrength { get; init; }
    /// <summary>Largest pressure under a screw's head, pascal.</summary>
    public double? HeadPressure { get; init; }
    /// <summary>Engaged length that a thread in it needs, in diameters.</summary>
    public double? Engagement { get; init; }
    /// <summary>Share of the preload that it creeps away under load.</summary>
    public double? Creep { get; init; }
}

using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>The frame that carries the robot: a box by its dimensions, straight members between points of the cell frame, or both.</summary>
public sealed record CellFrame
{
    public string? Note { get; init; }
    public FrameBox Box { get; init; } = new();
    public ImmutableSortedDictionary<string, FrameMember> Members { get; init; } = Keyed.Empty<FrameMember>();
    public ImmutableSortedDictionary<string, FrameProfile> Profiles { get; init; } = Keyed.Empty<FrameProfile>();
    public FrameJoints Joints { get; init; } = new();
    public FrameFeet Feet { get; init; } = new();
    public ImmutableSortedDictionary<string, FramePoint> MountPoints { get; init; } = Keyed.Empty<FramePoint>();
    public ImmutableSortedDictionary<string, FrameMass> Masses { get; init; } = Keyed.Empty<FrameMass>();
    /// <summary>Mass of what of the robot stands still: base, rails, motors, kilograms.</summary>
    public double? RobotMass { get; init; }
    /// <summary>Height of that mass' centre, base frame z, metres.</summary>
    public double? RobotCentreZ { get; init; }
    /// <summary>Damping ratio of the modes, smallest and largest believed.</summary>
    public double? DampingFrom { get; init; }
    public double? DampingTo { get; init; }
    /// <summary>Multiplies the forces of motion on feet and anchors: stops after a fault are harder than what was planned.</summary>
    public double? LoadFactor { get; init; }
    public FrameMeasured Measured { get; init; } = new();
    public FrameLimits Limits { get; init; } = new();
}

/// <summary>Which faces of a box are braced by diagonals.</summary>
public enum BoxBraces
{
    None,
    Back,
    Sides,
    BackAndSides,
    All,
}

/// <summary>A box of posts and beams about the middle of its footprint.</summary>
public sealed record FrameBox
{
    public string? Note { get; init; }
    /// <summary>Between the axes of the outer posts, along x and y, metres.</summary>
    public double? Width { get; init; }
    public double? Depth { get; init; }
    /// <summary>Of the axes of the upper beams above the floor, metres.</summary>
    public double? Height { get; init; }
    public double? CentreX { get; init; }
    public double? CentreY { get; init; }
    /// <summary>Number of fields along x between posts.</summary>
    public int? Bays { get; init; }
    /// <summary>Height of the axes of the lower beams, metres; none where not stated.</summary>
    public double? LowBeams { get; init; }
    /// <summary>Beams along y between the upper ones that carry the robot, and the distance of their axes, metres.</summary>
    public int? CrossBeams { get; init; }
    public double? CrossBeamSpacing { get; init; }
    public BoxBraces? Braces { get; init; }
    /// <summary>Ids of profiles.</summary>
    public string? PostProfile { get; init; }
    public string? BeamProfile { get; init; }
    public string? CrossBeamProfile { get; init; }
    public string? BraceProfile { get; init; }
}

/// <summary>One straight member, from end to end in the cell frame, metres. The section is a rectangle of width and height.</summary>
public sealed record FrameMember : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    public double? FromX { get; init; }
    public double? FromY { get; init; }
    public double? FromZ { get; init; }
    public double? ToX { get; init; }
    public double? ToY { get; init; }
    public double? ToZ { get; init; }
    /// <summary>In place of the profile's, metres.</summary>
    public double? SectionWidth { get; init; }
    public double? SectionHeight { get; init; }
    /// <summary>Id of its profile.</summary>
    public string? Profile { get; init; }
}

/// <summary>How the properties of a section are stated.</summary>
public enum SectionKind
{
    /// <summary>A rectangular tube by width, height and wall.</summary>
    Tube,
    /// <summary>A solid rectangle by width and height.</summary>
    Bar,
    /// <summary>As its data sheet gives them.</summary>
    Given,
}

/// <summary>The section of members and what they are made of.</summary>
public sealed record FrameProfile : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public SectionKind? Kind { get; init; }
    /// <summary>The data are an example and no maker's.</summary>
    public bool? Invented { get; init; }
    public double? Width { get; init; }
    public double? Height { get; init; }
    public double? Wall { get; init; }
    /// <summary>Square metres.</summary>
    public double? Area { get; init; }
    /// <summary>Second moment of area for bending along the height, and along the width, m⁴.</summary>
    public double? MomentHigh { get; init; }
    public double? MomentWide { get; init; }
    /// <summary>Torsion constant, m⁴.</summary>
    public double? TorsionConstant { get; init; }
    /// <summary>Share of the area that bears shear along the height, and along the width.</summary>
    public double? ShearHigh { get; init; }
    public double? ShearWide { get; init; }
    /// <summary>Kilograms per metre; density times area where not stated.</summary>
    public double? MassPerLength { get; init; }
    /// <summary>Pascal.</summary>
    public double? YoungModulus { get; init; }
    public double? PoissonRatio { get; init; }
    /// <summary>Kilograms per cubic metre.</summary>
    public double? Density { get; init; }
}

/// <summary>How the members are joined.</summary>
public sealed record FrameJoints
{
    public string? Note { get; init; }
    /// <summary>Welded through: joints do not turn.</summary>
    public bool? Rigid { get; init; }
    /// <summary>Stiffness of a joint against turning about any axis, smallest and largest believed, N·m/rad.</summary>
    public double? StiffnessFrom { get; init; }
    public double? StiffnessTo { get; init; }
}

/// <summary>How posts stand on the floor.</summary>
public enum FootHold
{
    /// <summary>As stiff against turning as the joints.</summary>
    Joint,
    Fixed,
    /// <summary>Free to turn.</summary>
    Pinned,
}

/// <summary>The feet, all alike: each end of a member that reaches the floor stands on one.</summary>
public sealed record FrameFeet
{
    public string? Note { get; init; }
    public FootHold? Hold { get; init; }
    public bool? Anchored { get; init; }
    /// <summary>Distance of a foot's anchors from each other, across the direction in which they are closest, metres.</summary>
    public double? AnchorSpacing { get; init; }
    /// <summary>Travel of a levelling foot per turn, metres.</summary>
    public double? ThreadPitch { get; init; }
}

/// <summary>A point where the robot's base is bolted to the frame, cell frame, metres.</summary>
public sealed record FramePoint : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    public double? X { get; init; }
    public double? Y { get; init; }
    public double? Z { get; init; }
}

/// <summary>A thing that hangs on the frame: a point with mass, cell frame.</summary>
public sealed record FrameMass : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public double? X { get; init; }
    public double? Y { get; init; }
    public double? Z { get; init; }
    public double? Mass { get; init; }
}

/// <summary>What was measured at the standing frame: a pull with what it gave way, and a tap with what it rang at.</summary>
public sealed record FrameMeasured
{
    public string? Note { get; init; }
    /// <summary>Horizontal pull at a point of the cell frame, newtons, metres, radians counter-clockwise from x.</summary>
    public double? PullForce { get; init; }
    public double? PullX { get; init; }
    public double? PullY { get; init; }
    public double? PullZ { get; init; }
    public double? PullAzimuth { get; init; }
    /// <summary>How far the point gave way along the pull, and the standard uncertainty of that, metres.</summary>
    public double? PullDeflection { get; init; }
    public double? PullUncertainty { get; init; }
    /// <summary>Frequency after a tap and its standard uncertainty, 1/s; the number of the mode it is, from 1.</summary>
    public double? TapFrequency { get; init; }
    public double? TapUncertainty { get; init; }
    public int? TapMode { get; init; }
    /// <summary>Damping ratio seen, and its standard uncertainty.</summary>
    public double? TapDamping { get; init; }
    public double? TapDampingUncertainty { get; init; }
}

/// <summary>What the frame must keep, as the integrator sets it.</summary>
public sealed record FrameLimits
{
    public string? Note { get; init; }
    /// <summary>Where these limits come from.</summary>
    public string? Source { get; init; }
    public double? LowestFrequency { get; init; }
    /// <summary>How far the mount may sink and turn under all weights, metres, radians.</summary>
    public double? LargestSag { get; init; }
    public double? LargestTilt { get; init; }
    /// <summary>Part of the tolerance of place that swinging may use, metres.</summary>
    public double? SettleTolerance { get; init; }
    /// <summary>Newtons, of one foot downward, and of the anchors of one foot upward.</summary>
    public double? LargestFootLoad { get; init; }
    public double? LargestAnchorPull { get; init; }
    /// <summary>Newtons, of the anchors of one foot along the floor.</summary>
    public double? LargestAnchorShear { get; init; }
    public double? OverturningSafety { get; init; }
}

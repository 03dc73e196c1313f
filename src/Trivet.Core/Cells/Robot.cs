using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>What drives a chain: a carriage on a straight rail, or a rotating upper arm.</summary>
public enum RobotFamily
{
    RailDelta,
    CrankDelta,
}

/// <summary>What keeps a chain up with its drive off.</summary>
public enum Holding
{
    Nothing,
    Brake,
    Counterweight,
    Friction,
    Prop,
}

/// <summary>What a drive knows of its position.</summary>
public enum Feedback
{
    None,
    MotorSide,
    CarriageSide,
}

/// <summary>How the ball joints of a rod let it swing.</summary>
public enum JointKind
{
    /// <summary>A bar joins the pair of balls: the rod turns freely about the bar and swings sideways out of the plane across it.</summary>
    CrossBar,
    /// <summary>Each ball has a seat: the rod swings in a cone about the seat's axis.</summary>
    Seat,
}

/// <summary>
/// The robot. Every chain has its own parameters; what all chains share may be stated once in <see cref="Common"/> and is
/// overridden field by field, so that a calibration can write to one chain alone.
/// </summary>
public sealed record Robot
{
    public RobotFamily? Family { get; init; }
    public string? Note { get; init; }
    /// <summary>Counter-clockwise seen from above when true (the default): the numbering sense of the chains.</summary>
    public bool? NumberedCounterClockwise { get; init; }
    public ChainDescription Common { get; init; } = new();
    public ImmutableSortedDictionary<string, ChainDescription> Chains { get; init; } = Keyed.Empty<ChainDescription>();
    public Dexterity Dexterity { get; init; } = new();
    public RotaryAxis Rotary { get; init; } = new();
    public LinearAxis LinearAxis { get; init; } = new();
    /// <summary>
    /// The chains are homed together from readings that differ by no more than this, metres (rail) or radians (crank). Not stated:
    /// each is homed alone, from wherever it stands.
    /// </summary>
    public double? HomingDifference { get; init; }
    /// <summary>The robot came with rods and platform fitted.</summary>
    public bool? CameAssembled { get; init; }
    /// <summary>Mass of the bare platform with its half of the ball joints, kilograms; the tool stack is apart.</summary>
    public double? PlatformMass { get; init; }
    /// <summary>Height of the bare platform's centre of mass above the platform reference point, metres.</summary>
    public double? PlatformCentreZ { get; init; }
    /// <summary>What the risk assessment allows of a fall with the drives off: speed of the platform, m/s, and kinetic energy of all that moves, joules.</summary>
    public double? LargestFallSpeed { get; init; }
    public double? LargestFallEnergy { get; init; }
}

/// <summary>
/// One chain: actuator, pair of rods and joint on the platform. Lengths in metres, angles in radians, in the base frame (on the
/// mounting plane, z up, work at negative z, x through azimuth 0).
/// </summary>
public sealed record ChainDescription : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    /// <summary>Direction of the chain seen from above, counter-clockwise from x.</summary>
    public double? Azimuth { get; init; }
    /// <summary>Radius of the joint circle: of the carriage joint at rail coordinate 0, or of the shoulder.</summary>
    public double? BaseRadius { get; init; }
    /// <summary>Height z of that joint (usually negative or zero: below the mounting plane).</summary>
    public double? BaseHeight { get; init; }
    /// <summary>Sideways shift of that joint, positive towards growing azimuth.</summary>
    public double? BaseSideOffset { get; init; }
    /// <summary>Rail: angle from straight down, positive when the lower end leans inward.</summary>
    public double? Inclination { get; init; }
    /// <summary>Rail: sideways lean of the lower end, positive towards growing azimuth. Crank: turn of the arm's plane about the vertical.</summary>
    public double? SideLean { get; init; }
    /// <summary>Crank: length of the upper arm.</summary>
    public double? UpperArm { get; init; }
    public double? Rod { get; init; }
    /// <summary>Radius of the rod's joint on the platform.</summary>
    public double? PlatformRadius { get; init; }
    public double? PlatformHeight { get; init; }
    public double? PlatformSideOffset { get; init; }
    /// <summary>Added to the drive's reading to give the geometric coordinate: metres (rail) or radians (crank).</summary>
    public double? HomeOffset { get; init; }
    /// <summary>Smallest and largest drive reading: metres from the upper end stop (rail) or radians (crank).</summary>
    public double? TravelFrom { get; init; }
    public double? TravelTo { get; init; }
    /// <summary>Distance between the two rods of the pair.</summary>
    public double? RodSpacing { get; init; }
    public double? RodDiameter { get; init; }
    public JointKind? Joint { get; init; }
    /// <summary>Largest swing of a rod in its joint, each way.</summary>
    public double? SwingLimit { get; init; }
    /// <summary>Angle of a seat's axis below the horizontal inward direction, at the platform and mirrored at the carriage.</summary>
    public double? SeatAngle { get; init; }
    public Holding? Holding { get; init; }
    public Feedback? Feedback { get; init; }
    /// <summary>Movement of the drive coordinate per step of the drive: metres or radians.</summary>
    public double? DriveStep { get; init; }
    /// <summary>Rail: mass of the carriage with all that travels along, kilograms.</summary>
    public double? CarriageMass { get; init; }
    /// <summary>Rail: mass of a counterweight that moves against the carriage, kilograms.</summary>
    public double? Counterweight { get; init; }
    /// <summary>Crank: mass of the upper arm with all that turns along, kilograms.</summary>
    public double? ArmMass { get; init; }
    /// <summary>Crank: centre of that mass from the shoulder along the arm, metres; negative behind the shoulder.</summary>
    public double? ArmCentre { get; init; }
    /// <summary>Crank: inertia about the shoulder axis of all that turns, motor and gear left out, kilogram square metres.</summary>
    public double? ArmInertia { get; init; }
    /// <summary>Mass of one of the two rods, kilograms, spread evenly from joint to joint.</summary>
    public double? RodMass { get; init; }
    /// <summary>Friction that grows with speed, at the drive coordinate: newtons per m/s, or newton metres per rad/s.</summary>
    public double? ViscousFriction { get; init; }
    /// <summary>Friction that does not, at the drive coordinate: newtons or newton metres.</summary>
    public double? CoulombFriction { get; init; }
    /// <summary>What brake or measured friction holds with the drive off, at the drive coordinate: newtons or newton metres.</summary>
    public double? HoldingForce { get; init; }
    /// <summary>From the loss of its supply until a brake holds, seconds.</summary>
    public double? BrakeDelay { get; init; }
    /// <summary>Largest pull or push one rod may carry, newtons.</summary>
    public double? RodForceLimit { get; init; }
    /// <summary>Force along one rod that keeps its ball joints closed, newtons: of its spring, or what a socket bears that holds its ball.</summary>
    public double? JointPreload { get; init; }
}

/// <summary>Limits on how well the platform can be steered, and clearances, as the integrator sets them.</summary>
public sealed record Dexterity
{
    public string? Note { get; init; }
    /// <summary>Largest condition number of ∂q/∂p (2-norm) in working volumes.</summary>
    public double? LargestCondition { get; init; }
    /// <summary>Smallest distance between rods of different chains, and of a rod from anything else.</summary>
    public double? RodClearance { get; init; }
    /// <summary>Smallest distance of tool and platform from frame and stations.</summary>
    public double? ToolClearance { get; init; }
    /// <summary>Travel kept in reserve before an end stop, metres or radians.</summary>
    public double? TravelReserve { get; init; }
    /// <summary>Largest platform movement per drive step, metres.</summary>
    public double? LargestStep { get; init; }
    /// <summary>Radius of a capsule or disc around the platform, metres.</summary>
    public double? PlatformRadius { get; init; }
}

/// <summary>An extra rotary axis at the tool, about the platform's z.</summary>
public sealed record RotaryAxis
{
    public bool? Fitted { get; init; }
    public string? Note { get; init; }
    public double? TravelFrom { get; init; }
    public double? TravelTo { get; init; }
    public double? DriveStep { get; init; }
    /// <summary>Inertia about its axis of all that turns, without part and motor, kilogram square metres.</summary>
    public double? Inertia { get; init; }
    /// <summary>Friction torque, newton metres.</summary>
    public double? Friction { get; init; }
}

/// <summary>A linear axis that carries the whole robot. Direction in the cell frame.</summary>
public sealed record LinearAxis
{
    public bool? Fitted { get; init; }
    public string? Note { get; init; }
    /// <summary>Direction seen from above, counter-clockwise from the cell's x, radians.</summary>
    public double? Azimuth { get; init; }
    public double? TravelFrom { get; init; }
    public double? TravelTo { get; init; }
}

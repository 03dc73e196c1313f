using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of the robot. A coordinate of a drive is a length on a rail delta and an angle on a crank delta.</summary>
internal static class RobotFields
{
    private static readonly Shape Chain = new Table<ChainDescription>(new ChainDescription())
        .Whole("order", c => c.Order, (c, v) => c with { Order = v }, "Place of the chain in the numbering; equal or missing orders follow the id.")
        .Quantity("azimuth", Dimension.Angle, c => c.Azimuth, (c, v) => c with { Azimuth = v },
            "Direction of the chain seen from above, counter-clockwise from the base frame's x.", Depth.Quote)
        .Quantity("baseRadius", Dimension.Length, c => c.BaseRadius, (c, v) => c with { BaseRadius = v },
            "Radius of the carriage joint at rail coordinate 0, or of the shoulder, from the base frame's z.", Depth.Quote)
        .Quantity("baseHeight", Dimension.Length, c => c.BaseHeight, (c, v) => c with { BaseHeight = v },
            "Height z of that joint in the base frame: negative below the mounting plane.", Depth.Quote)
        .Quantity("baseSideOffset", Dimension.Length, c => c.BaseSideOffset, (c, v) => c with { BaseSideOffset = v },
            "Sideways shift of that joint, positive towards growing azimuth.")
        .Quantity("inclination", Dimension.Angle, c => c.Inclination, (c, v) => c with { Inclination = v },
            "Rail: angle from straight down, positive when the lower end leans inward; 0 for an upright rail.")
        .Quantity("sideLean", Dimension.Angle, c => c.SideLean, (c, v) => c with { SideLean = v },
            "Rail: sideways lean of the lower end, positive towards growing azimuth. Crank: turn of the arm's plane about the vertical.")
        .Quantity("upperArm", Dimension.Length, c => c.UpperArm, (c, v) => c with { UpperArm = v },
            "Crank: length of the upper arm, from shoulder to elbow.", Depth.Quote)
        .Quantity("rod", Dimension.Length, c => c.Rod, (c, v) => c with { Rod = v },
            "Length of the rods, from joint centre to joint centre.", Depth.Quote)
        .Quantity("platformRadius", Dimension.Length, c => c.PlatformRadius, (c, v) => c with { PlatformRadius = v },
            "Radius of the rod's joint on the platform, from the platform reference point.", Depth.Quote)
        .Quantity("platformHeight", Dimension.Length, c => c.PlatformHeight, (c, v) => c with { PlatformHeight = v },
            "Height of the rod's joint above the platform reference point.")
        .Quantity("platformSideOffset", Dimension.Length, c => c.PlatformSideOffset, (c, v) => c with { PlatformSideOffset = v },
            "Sideways shift of the rod's joint on the platform, positive towards growing azimuth.")
        .Quantity("homeOffset", Dimension.DriveCoordinate, c => c.HomeOffset, (c, v) => c with { HomeOffset = v },
            "Added to the drive's reading to give the geometric coordinate.")
        .Quantity("travelFrom", Dimension.DriveCoordinate, c => c.TravelFrom, (c, v) => c with { TravelFrom = v },
            "Smallest drive reading: rail, distance from the upper end stop; crank, angle below level.", Depth.Quote)
        .Quantity("travelTo", Dimension.DriveCoordinate, c => c.TravelTo, (c, v) => c with { TravelTo = v },
            "Largest drive reading, measured as the smallest.", Depth.Quote)
        .Quantity("rodSpacing", Dimension.Length, c => c.RodSpacing, (c, v) => c with { RodSpacing = v },
            "Distance between the two rods of the pair.", Depth.Quote)
        .Quantity("rodDiameter", Dimension.Length, c => c.RodDiameter, (c, v) => c with { RodDiameter = v },
            "Outer diameter of a rod.", Depth.Quote)
        .Choice("joint", Words.JointKind, c => c.Joint, (c, v) => c with { Joint = v },
            "How the ball joints let a rod swing: a bar across the pair, or a seat for each ball.", Depth.Quote)
        .Quantity("swingLimit", Dimension.Angle, c => c.SwingLimit, (c, v) => c with { SwingLimit = v },
            "Largest swing of a rod in its joint, each way.", Depth.Quote)
        .Quantity("seatAngle", Dimension.Angle, c => c.SeatAngle, (c, v) => c with { SeatAngle = v },
            "Seat joints: angle of the seat's axis below the horizontal inward direction at the platform, mirrored at the carriage.")
        .Choice("holding", Words.Holding, c => c.Holding, (c, v) => c with { Holding = v },
            "What keeps the chain up with its drive off.", Depth.Build)
        .Choice("feedback", Words.Feedback, c => c.Feedback, (c, v) => c with { Feedback = v },
            "What the drive knows of its position.", Depth.Build)
        .Quantity("driveStep", Dimension.DriveCoordinate, c => c.DriveStep, (c, v) => c with { DriveStep = v },
            "Movement of the drive coordinate for one step of the drive.", Depth.Build)
        .Quantity("carriageMass", Dimension.Mass, c => c.CarriageMass, (c, v) => c with { CarriageMass = v },
            "Rail: mass of the carriage with all that travels along.", Depth.Build)
        .Quantity("counterweight", Dimension.Mass, c => c.Counterweight, (c, v) => c with { Counterweight = v },
            "Rail: mass of a counterweight that moves against the carriage.")
        .Quantity("armMass", Dimension.Mass, c => c.ArmMass, (c, v) => c with { ArmMass = v },
            "Crank: mass of the upper arm with all that turns along.", Depth.Build)
        .Quantity("armCentre", Dimension.Length, c => c.ArmCentre, (c, v) => c with { ArmCentre = v },
            "Crank: centre of that mass from the shoulder along the arm; negative behind the shoulder.", Depth.Build)
        .Quantity("armInertia", Dimension.Inertia, c => c.ArmInertia, (c, v) => c with { ArmInertia = v },
            "Crank: inertia about the shoulder axis of all that turns, motor and gear left out.", Depth.Build)
        .Quantity("rodMass", Dimension.Mass, c => c.RodMass, (c, v) => c with { RodMass = v },
            "Mass of one of the two rods, spread evenly from joint to joint.", Depth.Build, "g")
        .Quantity("viscousFriction", Dimension.DriveDamping, c => c.ViscousFriction, (c, v) => c with { ViscousFriction = v },
            "Friction that grows with speed, at the drive coordinate; none where nothing is stated.")
        .Quantity("coulombFriction", Dimension.DriveForce, c => c.CoulombFriction, (c, v) => c with { CoulombFriction = v },
            "Friction that does not grow with speed, at the drive coordinate; none where nothing is stated.")
        .Quantity("holdingForce", Dimension.DriveForce, c => c.HoldingForce, (c, v) => c with { HoldingForce = v },
            "What brake or measured friction holds with the drive off, at the drive coordinate.", Depth.Build)
        .Quantity("brakeDelay", Dimension.Time, c => c.BrakeDelay, (c, v) => c with { BrakeDelay = v },
            "From the loss of its supply until a brake holds; at once where nothing is stated.", null, "ms")
        .Quantity("rodForceLimit", Dimension.Force, c => c.RodForceLimit, (c, v) => c with { RodForceLimit = v },
            "Largest pull or push one rod may carry.", Depth.Build)
        .Quantity("jointPreload", Dimension.Force, c => c.JointPreload, (c, v) => c with { JointPreload = v },
            "Force along one rod that keeps its ball joints closed: of its spring, or the pull that a socket bears which holds its ball.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Dexterity = new Table<Dexterity>(new Dexterity())
        .Quantity("largestCondition", Dimension.One, d => d.LargestCondition, (d, v) => d with { LargestCondition = v },
            "Largest condition number of the Jacobian from platform to drives (2-norm) in working volumes; a plain number from 1.", Depth.Quote)
        .Quantity("rodClearance", Dimension.Length, d => d.RodClearance, (d, v) => d with { RodClearance = v },
            "Smallest distance between rods of different chains, and of a rod from anything else.", Depth.Quote)
        .Quantity("toolClearance", Dimension.Length, d => d.ToolClearance, (d, v) => d with { ToolClearance = v },
            "Smallest distance of tool and platform from frame and stations.", Depth.Quote)
        .Quantity("travelReserve", Dimension.DriveCoordinate, d => d.TravelReserve, (d, v) => d with { TravelReserve = v },
            "Travel kept in reserve before an end stop.", Depth.Quote)
        .Quantity("largestStep", Dimension.Length, d => d.LargestStep, (d, v) => d with { LargestStep = v },
            "Largest movement of the platform for one step of a drive.", Depth.Build)
        .Quantity("platformRadius", Dimension.Length, d => d.PlatformRadius, (d, v) => d with { PlatformRadius = v },
            "Radius of a disc around the platform, for clearances.", Depth.Quote)
        .Text("note", d => d.Note, (d, v) => d with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Rotary = new Table<RotaryAxis>(new RotaryAxis())
        .YesNo("fitted", r => r.Fitted, (r, v) => r with { Fitted = v }, "There is a rotary axis at the tool.")
        .Quantity("travelFrom", Dimension.Angle, r => r.TravelFrom, (r, v) => r with { TravelFrom = v },
            "Smallest angle, counter-clockwise seen from above.")
        .Quantity("travelTo", Dimension.Angle, r => r.TravelTo, (r, v) => r with { TravelTo = v }, "Largest angle.")
        .Quantity("driveStep", Dimension.Angle, r => r.DriveStep, (r, v) => r with { DriveStep = v }, "Turn for one step of the drive.")
        .Quantity("inertia", Dimension.Inertia, r => r.Inertia, (r, v) => r with { Inertia = v },
            "Inertia about its axis of all that turns, without part and motor.")
        .Quantity("friction", Dimension.Torque, r => r.Friction, (r, v) => r with { Friction = v },
            "Friction torque; none where nothing is stated.")
        .Text("note", r => r.Note, (r, v) => r with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape LinearAxis = new Table<LinearAxis>(new LinearAxis())
        .YesNo("fitted", l => l.Fitted, (l, v) => l with { Fitted = v }, "A linear axis carries the whole robot.")
        .Quantity("azimuth", Dimension.Angle, l => l.Azimuth, (l, v) => l with { Azimuth = v },
            "Its direction seen from above, counter-clockwise from the cell's x.")
        .Quantity("travelFrom", Dimension.Length, l => l.TravelFrom, (l, v) => l with { TravelFrom = v }, "Smallest position.")
        .Quantity("travelTo", Dimension.Length, l => l.TravelTo, (l, v) => l with { TravelTo = v }, "Largest position.")
        .Text("note", l => l.Note, (l, v) => l with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Robot = new Table<Robot>(new Robot())
        .Choice("family", Words.RobotFamily, r => r.Family, (r, v) => r with { Family = v },
            "What drives the chains: carriages on straight rails, or rotating upper arms.", Depth.Quote)
        .YesNo("numberedCounterClockwise", r => r.NumberedCounterClockwise, (r, v) => r with { NumberedCounterClockwise = v },
            "The chains are numbered counter-clockwise seen from above; yes where nothing is stated.")
        .Quantity("homingDifference", Dimension.DriveCoordinate, r => r.HomingDifference, (r, v) => r with { HomingDifference = v },
            "The chains are homed together from readings that differ by no more than this; where nothing is stated, each is homed alone.")
        .YesNo("cameAssembled", r => r.CameAssembled, (r, v) => r with { CameAssembled = v },
            "The robot came with rods and platform fitted.", Depth.Build)
        .Quantity("platformMass", Dimension.Mass, r => r.PlatformMass, (r, v) => r with { PlatformMass = v },
            "Mass of the bare platform with its half of the ball joints; the tool stack is apart.", Depth.Build)
        .Quantity("platformCentreZ", Dimension.Length, r => r.PlatformCentreZ, (r, v) => r with { PlatformCentreZ = v },
            "Height of the bare platform's centre of mass above the platform reference point.")
        .Quantity("largestFallSpeed", Dimension.Speed, r => r.LargestFallSpeed, (r, v) => r with { LargestFallSpeed = v },
            "Largest speed at which the risk assessment lets the platform fall when drives let go.")
        .Quantity("largestFallEnergy", Dimension.Energy, r => r.LargestFallEnergy, (r, v) => r with { LargestFallEnergy = v },
            "Largest energy that the risk assessment lets everything falling carry.")
        .Section("common", Chain, r => r.Common, (r, v) => r with { Common = v },
            "What all chains share; a chain's own field overrides it.")
        .Keyed("chains", Chain, r => r.Chains, (r, v) => r with { Chains = v },
            "The chains: three, or two for a robot that works in one upright plane.")
        .Section("dexterity", Dexterity, r => r.Dexterity, (r, v) => r with { Dexterity = v },
            "Limits on how well the platform can be steered, and clearances.")
        .Section("rotary", Rotary, r => r.Rotary, (r, v) => r with { Rotary = v }, "The rotary axis at the tool, about the platform's z.")
        .Section("linearAxis", LinearAxis, r => r.LinearAxis, (r, v) => r with { LinearAxis = v }, "The linear axis that carries the robot.")
        .Text("note", r => r.Note, (r, v) => r with { Note = v }, "Anything worth keeping.")
        .Done();
}

using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of the frame.</summary>
internal static class FrameFields
{
    private const string Kept = "Anything worth keeping.";

    private static readonly Shape Box = new Table<FrameBox>(new FrameBox())
        .Quantity("width", Dimension.Length, b => b.Width, (b, v) => b with { Width = v }, "Between the axes of the outer posts along x. A box is there once its width is stated.")
        .Quantity("depth", Dimension.Length, b => b.Depth, (b, v) => b with { Depth = v }, "The same along y.")
        .Quantity("height", Dimension.Length, b => b.Height, (b, v) => b with { Height = v }, "Height of the axes of the upper beams above the floor.")
        .Quantity("centreX", Dimension.Length, b => b.CentreX, (b, v) => b with { CentreX = v }, "Middle of the footprint along the cell's x; 0 where not stated.")
        .Quantity("centreY", Dimension.Length, b => b.CentreY, (b, v) => b with { CentreY = v }, "The same along y.")
        .Whole("bays", b => b.Bays, (b, v) => b with { Bays = v }, "Fields along x between posts; 1 where not stated.")
        .Quantity("lowBeams", Dimension.Length, b => b.LowBeams, (b, v) => b with { LowBeams = v }, "Height of the axes of the lower beams; none where not stated.")
        .Whole("crossBeams", b => b.CrossBeams, (b, v) => b with { CrossBeams = v }, "Beams along y between the upper ones, which carry the robot; none where not stated.")
        .Quantity("crossBeamSpacing", Dimension.Length, b => b.CrossBeamSpacing, (b, v) => b with { CrossBeamSpacing = v }, "Distance of their axes.")
        .Choice("braces", Words.BoxBraces, b => b.Braces, (b, v) => b with { Braces = v }, "Which faces have a diagonal in each field; the front is the one at small y.")
        .Text("postProfile", b => b.PostProfile, (b, v) => b with { PostProfile = v }, "Id of the posts' profile.")
        .Text("beamProfile", b => b.BeamProfile, (b, v) => b with { BeamProfile = v }, "Id of the beams' profile; that of the posts where not stated.")
        .Text("crossBeamProfile", b => b.CrossBeamProfile, (b, v) => b with { CrossBeamProfile = v }, "Id of the cross-beams' profile; that of the beams where not stated.")
        .Text("braceProfile", b => b.BraceProfile, (b, v) => b with { BraceProfile = v }, "Id of the braces' profile, also for advice; that of the beams where not stated.")
        .Text("note", b => b.Note, (b, v) => b with { Note = v }, Kept)
        .Done();

    private static readonly Shape Member = new Table<FrameMember>(new FrameMember())
        .Whole("order", m => m.Order, (m, v) => m with { Order = v }, "Place in lists; equal or missing orders follow the id. Where ends meet, the earlier member carries.")
        .Quantity("fromX", Dimension.Length, m => m.FromX, (m, v) => m with { FromX = v }, "Axis of the member: where it begins, cell frame.", Depth.Build)
        .Quantity("fromY", Dimension.Length, m => m.FromY, (m, v) => m with { FromY = v }, "Where it begins.", Depth.Build)
        .Quantity("fromZ", Dimension.Length, m => m.FromZ, (m, v) => m with { FromZ = v }, "Where it begins.", Depth.Build)
        .Quantity("toX", Dimension.Length, m => m.ToX, (m, v) => m with { ToX = v }, "Where it ends.", Depth.Build)
        .Quantity("toY", Dimension.Length, m => m.ToY, (m, v) => m with { ToY = v }, "Where it ends.", Depth.Build)
        .Quantity("toZ", Dimension.Length, m => m.ToZ, (m, v) => m with { ToZ = v }, "Where it ends.", Depth.Build)
        .Text("profile", m => m.Profile, (m, v) => m with { Profile = v }, "Id of its profile.", Depth.Build)
        .Quantity("sectionWidth", Dimension.Length, m => m.SectionWidth, (m, v) => m with { SectionWidth = v },
            "Width of its section, for clearances: level, or along x where the member is upright; the profile's where not stated.")
        .Quantity("sectionHeight", Dimension.Length, m => m.SectionHeight, (m, v) => m with { SectionHeight = v }, "Height of its section; the profile's where not stated.")
        .Text("note", m => m.Note, (m, v) => m with { Note = v }, Kept)
        .Done();

    private static readonly Shape Profile = new Table<FrameProfile>(new FrameProfile())
        .Whole("order", p => p.Order, (p, v) => p with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", p => p.Name, (p, v) => p with { Name = v }, "What people call it.")
        .YesNo("invented", p => p.Invented, (p, v) => p with { Invented = v }, "The data are made up for an example: no maker's.")
        .Choice("kind", Words.SectionKind, p => p.Kind, (p, v) => p with { Kind = v }, "A rectangular tube, a solid bar, or properties as given by a data sheet.", Depth.Build)
        .Quantity("width", Dimension.Length, p => p.Width, (p, v) => p with { Width = v }, "Width: level, or along x in an upright member.", Depth.Build)
        .Quantity("height", Dimension.Length, p => p.Height, (p, v) => p with { Height = v }, "Height.", Depth.Build)
        .Quantity("wall", Dimension.Length, p => p.Wall, (p, v) => p with { Wall = v }, "Tube: thickness of its walls.")
        .Quantity("area", Dimension.Area, p => p.Area, (p, v) => p with { Area = v }, "Given: area of the section.")
        .Quantity("momentHigh", Dimension.AreaMoment, p => p.MomentHigh, (p, v) => p with { MomentHigh = v }, "Given: second moment of area for bending along the height.")
        .Quantity("momentWide", Dimension.AreaMoment, p => p.MomentWide, (p, v) => p with { MomentWide = v }, "Given: second moment of area for bending along the width.")
        .Quantity("torsionConstant", Dimension.AreaMoment, p => p.TorsionConstant, (p, v) => p with { TorsionConstant = v }, "Given: torsion constant.")
        .Quantity("shearHigh", Dimension.One, p => p.ShearHigh, (p, v) => p with { ShearHigh = v }, "Given: share of the area that bears shear along the height; 0.5 where not stated.")
        .Quantity("shearWide", Dimension.One, p => p.ShearWide, (p, v) => p with { ShearWide = v }, "Given: the same along the width.")
        .Quantity("massPerLength", Dimension.MassPerLength, p => p.MassPerLength, (p, v) => p with { MassPerLength = v }, "Mass per length; density times area where not stated.")
        .Quantity("youngModulus", Dimension.Stress, p => p.YoungModulus, (p, v) => p with { YoungModulus = v }, "Modulus of elasticity.", Depth.Build, "GPa")
        .Quantity("poissonRatio", Dimension.One, p => p.PoissonRatio, (p, v) => p with { PoissonRatio = v }, "Poisson's ratio; 0.3 where not stated.")
        .Quantity("density", Dimension.Density, p => p.Density, (p, v) => p with { Density = v }, "Density.")
        .Text("note", p => p.Note, (p, v) => p with { Note = v }, Kept)
        .Done();

    private static readonly Shape Joints = new Table<FrameJoints>(new FrameJoints())
        .YesNo("rigid", j => j.Rigid, (j, v) => j with { Rigid = v }, "Welded through: joints do not turn. No where not stated.")
        .Quantity("stiffnessFrom", Dimension.AngularStiffness, j => j.StiffnessFrom, (j, v) => j with { StiffnessFrom = v },
            "Smallest stiffness against turning that a joint may have.", Depth.Build, "kN m/rad")
        .Quantity("stiffnessTo", Dimension.AngularStiffness, j => j.StiffnessTo, (j, v) => j with { StiffnessTo = v },
            "Largest stiffness that it may have: without a measurement about five times the smallest.", Depth.Build, "kN m/rad")
        .Text("note", j => j.Note, (j, v) => j with { Note = v }, Kept)
        .Done();

    private static readonly Shape Feet = new Table<FrameFeet>(new FrameFeet())
        .Choice("hold", Words.FootHold, f => f.Hold, (f, v) => f with { Hold = v }, "How the end of a post on the floor is kept from turning: like a joint, not at all, or wholly.")
        .YesNo("anchored", f => f.Anchored, (f, v) => f with { Anchored = v }, "The feet are anchored to the floor.", Depth.Build)
        .Quantity("anchorSpacing", Dimension.Length, f => f.AnchorSpacing, (f, v) => f with { AnchorSpacing = v },
            "Distance of a foot's anchors from each other, the smallest way across: over it they take the moment of a foot that is kept from turning.")
        .Quantity("threadPitch", Dimension.Length, f => f.ThreadPitch, (f, v) => f with { ThreadPitch = v }, "Travel of a levelling foot per turn.")
        .Text("note", f => f.Note, (f, v) => f with { Note = v }, Kept)
        .Done();

    private static readonly Shape MountPoint = new Table<FramePoint>(new FramePoint())
        .Whole("order", p => p.Order, (p, v) => p with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Quantity("x", Dimension.Length, p => p.X, (p, v) => p with { X = v }, "Along the cell's x.", Depth.Build)
        .Quantity("y", Dimension.Length, p => p.Y, (p, v) => p with { Y = v }, "Along the cell's y.", Depth.Build)
        .Quantity("z", Dimension.Length, p => p.Z, (p, v) => p with { Z = v }, "Above the floor.", Depth.Build)
        .Text("note", p => p.Note, (p, v) => p with { Note = v }, Kept)
        .Done();

    private static readonly Shape Mass = new Table<FrameMass>(new FrameMass())
        .Whole("order", m => m.Order, (m, v) => m with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", m => m.Name, (m, v) => m with { Name = v }, "What it is: cabinet, guard, valve block.")
        .Quantity("x", Dimension.Length, m => m.X, (m, v) => m with { X = v }, "Its centre along the cell's x.", Depth.Build)
        .Quantity("y", Dimension.Length, m => m.Y, (m, v) => m with { Y = v }, "Along the cell's y.", Depth.Build)
        .Quantity("z", Dimension.Length, m => m.Z, (m, v) => m with { Z = v }, "Above the floor.", Depth.Build)
        .Quantity("mass", Dimension.Mass, m => m.Mass, (m, v) => m with { Mass = v }, "Its mass.", Depth.Build)
        .Text("note", m => m.Note, (m, v) => m with { Note = v }, Kept)
        .Done();

    private static readonly Shape Measured = new Table<FrameMeasured>(new FrameMeasured())
        .Quantity("pullForce", Dimension.Force, m => m.PullForce, (m, v) => m with { PullForce = v }, "A level pull at the frame: its force.")
        .Quantity("pullX", Dimension.Length, m => m.PullX, (m, v) => m with { PullX = v }, "Where it was pulled and where the give was read.")
        .Quantity("pullY", Dimension.Length, m => m.PullY, (m, v) => m with { PullY = v }, "The same.")
        .Quantity("pullZ", Dimension.Length, m => m.PullZ, (m, v) => m with { PullZ = v }, "The same.")
        .Quantity("pullAzimuth", Dimension.Angle, m => m.PullAzimuth, (m, v) => m with { PullAzimuth = v }, "Direction of the pull seen from above, counter-clockwise from the cell's x; 0 where not stated.")
        .Quantity("pullDeflection", Dimension.Length, m => m.PullDeflection, (m, v) => m with { PullDeflection = v }, "How far the point gave way along the pull.")
        .Quantity("pullUncertainty", Dimension.Length, m => m.PullUncertainty, (m, v) => m with { PullUncertainty = v }, "Standard uncertainty of that.")
        .Quantity("tapFrequency", Dimension.Frequency, m => m.TapFrequency, (m, v) => m with { TapFrequency = v }, "Frequency at which the frame rang after a tap.")
        .Quantity("tapUncertainty", Dimension.Frequency, m => m.TapUncertainty, (m, v) => m with { TapUncertainty = v }, "Standard uncertainty of that.")
        .Whole("tapMode", m => m.TapMode, (m, v) => m with { TapMode = v }, "Which mode that was, from 1, the lowest; 1 where not stated.")
        .Quantity("tapDamping", Dimension.One, m => m.TapDamping, (m, v) => m with { TapDamping = v }, "Damping ratio seen in how it died away.")
        .Quantity("tapDampingUncertainty", Dimension.One, m => m.TapDampingUncertainty, (m, v) => m with { TapDampingUncertainty = v }, "Standard uncertainty of that.")
        .Text("note", m => m.Note, (m, v) => m with { Note = v }, Kept)
        .Done();

    private static readonly Shape Limits = new Table<FrameLimits>(new FrameLimits())
        .Text("source", l => l.Source, (l, v) => l with { Source = v }, "Where these limits come from.")
        .Quantity("lowestFrequency", Dimension.Frequency, l => l.LowestFrequency, (l, v) => l with { LowestFrequency = v }, "Smallest first frequency.")
        .Quantity("largestSag", Dimension.Length, l => l.LargestSag, (l, v) => l with { LargestSag = v }, "How far the mount may sink under all weights.")
        .Quantity("largestTilt", Dimension.Angle, l => l.LargestTilt, (l, v) => l with { LargestTilt = v }, "How far the mount may turn from level under all weights.", null, "mrad")
        .Quantity("settleTolerance", Dimension.Length, l => l.SettleTolerance, (l, v) => l with { SettleTolerance = v },
            "Part of the tolerance of place that the frame's swinging may use; a third of the brief's smallest where not stated.")
        .Quantity("largestFootLoad", Dimension.Force, l => l.LargestFootLoad, (l, v) => l with { LargestFootLoad = v }, "Largest load that a foot and the floor under it bear.")
        .Quantity("largestAnchorPull", Dimension.Force, l => l.LargestAnchorPull, (l, v) => l with { LargestAnchorPull = v },
            "Pull that the anchors of one foot may take together, from their maker for this floor, safety included.")
        .Quantity("largestAnchorShear", Dimension.Force, l => l.LargestAnchorShear, (l, v) => l with { LargestAnchorShear = v },
            "Force along the floor that the anchors of one foot may take together, likewise.")
        .Quantity("overturningSafety", Dimension.One, l => l.OverturningSafety, (l, v) => l with { OverturningSafety = v }, "Smallest safety against overturning; 1.5 where not stated.")
        .Text("note", l => l.Note, (l, v) => l with { Note = v }, Kept)
        .Done();

    public static readonly Shape Frame = new Table<CellFrame>(new CellFrame())
        .Section("box", Box, f => f.Box, (f, v) => f with { Box = v }, "A box of posts and beams by its dimensions.")
        .Keyed("members", Member, f => f.Members, (f, v) => f with { Members = v }, "The straight members: posts, beams, braces.")
        .Keyed("profiles", Profile, f => f.Profiles, (f, v) => f with { Profiles = v }, "The sections that members are cut from.")
        .Section("joints", Joints, f => f.Joints, (f, v) => f with { Joints = v }, "How the members are joined.")
        .Section("feet", Feet, f => f.Feet, (f, v) => f with { Feet = v }, "The feet: each end of a member that reaches the floor stands on one.")
        .Keyed("mountPoints", MountPoint, f => f.MountPoints, (f, v) => f with { MountPoints = v },
            "Where the robot's base is bolted to the frame; three at least, not on one line. The base itself is taken as rigid.")
        .Keyed("masses", Mass, f => f.Masses, (f, v) => f with { Masses = v }, "What hangs on the frame besides the robot.")
        .Quantity("robotMass", Dimension.Mass, f => f.RobotMass, (f, v) => f with { RobotMass = v }, "Mass of what of the robot stands still: base, rails, motors.", Depth.Build)
        .Quantity("robotCentreZ", Dimension.Length, f => f.RobotCentreZ, (f, v) => f with { RobotCentreZ = v }, "Height of its centre above the mounting plane; 0 where not stated.")
        .Quantity("dampingFrom", Dimension.One, f => f.DampingFrom, (f, v) => f with { DampingFrom = v }, "Smallest damping ratio believed; 0.01 where not stated.")
        .Quantity("dampingTo", Dimension.One, f => f.DampingTo, (f, v) => f with { DampingTo = v }, "Largest damping ratio believed; 0.03 where not stated.")
        .Quantity("loadFactor", Dimension.One, f => f.LoadFactor, (f, v) => f with { LoadFactor = v },
            "Multiplies the forces of motion on feet and anchors, since an emergency stop is harder than the planned motion; 2 where not stated.")
        .Section("measured", Measured, f => f.Measured, (f, v) => f with { Measured = v }, "A pull and a tap at the standing frame, which narrow the joints' stiffness.")
        .Section("limits", Limits, f => f.Limits, (f, v) => f with { Limits = v }, "What the frame must keep.")
        .Text("note", f => f.Note, (f, v) => f with { Note = v }, Kept)
        .Done();
}

using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of the tool's parts, of what holds the part, and of compressed air.</summary>
internal static class ToolingFields
{
    private static readonly Shape Mesh = new Table<MeshSolid>(new MeshSolid())
        .Text("file", m => m.File, (m, w) => m with { File = w }, "Path of the mesh file (STL or glTF), from the folder of the cell file. What is read from it stands in the fields below.")
        .Quantity("unit", Dimension.Length, m => m.Unit, (m, w) => m with { Unit = w },
            "Length of one unit of an STL file; 1 mm where nothing is stated. A glTF file is in metres.")
        .Quantity("volume", Dimension.Volume, m => m.Volume, (m, w) => m with { Volume = w },
            "As read: volume.")
        .Quantity("centreX", Dimension.Length, m => m.CentreX, (m, w) => m with { CentreX = w },
            "As read: centre of volume, in the frame of the part.")
        .Quantity("centreY", Dimension.Length, m => m.CentreY, (m, w) => m with { CentreY = w },
            "The same along y.")
        .Quantity("centreZ", Dimension.Length, m => m.CentreZ, (m, w) => m with { CentreZ = w },
            "The same along z.")
        .Quantity("gyrationX", Dimension.Area, m => m.GyrationX, (m, w) => m with { GyrationX = w },
            "As read: moment of inertia about x through the centre for each kilogram.")
        .Quantity("gyrationY", Dimension.Area, m => m.GyrationY, (m, w) => m with { GyrationY = w },
            "The same about y.")
        .Quantity("gyrationZ", Dimension.Area, m => m.GyrationZ, (m, w) => m with { GyrationZ = w },
            "The same about z.")
        .Quantity("productXY", Dimension.Area, m => m.ProductXY, (m, w) => m with { ProductXY = w },
            "As read: product of inertia, the mean of x times y about the centre.")
        .Quantity("productYZ", Dimension.Area, m => m.ProductYZ, (m, w) => m with { ProductYZ = w },
            "The same of y and z.")
        .Quantity("productZX", Dimension.Area, m => m.ProductZX, (m, w) => m with { ProductZX = w },
            "The same of z and x.")
        .Text("note", m => m.Note, (m, w) => m with { Note = w }, "Anything worth keeping.")
        .Done();

    public static readonly Shape ToolPart = new Table<ToolPart>(new ToolPart())
        .Whole("order", p => p.Order, (p, w) => p with { Order = w }, "Place from the platform outward; equal or missing orders follow the id.")
        .Text("name", p => p.Name, (p, w) => p with { Name = w }, "What it is: plate, rotary axis, gripper, finger.")
        .Choice("kind", Words.ToolPartKind, p => p.Kind, (p, w) => p with { Kind = w },
            "What it is. What hangs below the rotary axis turns with it.")
        .Text("plate", p => p.Plate, (p, w) => p with { Plate = w },
            "Id of the adapter plate under /plates that this part is; the parts list then has both as one.")
        .Quantity("mass", Dimension.Mass, p => p.Mass, (p, w) => p with { Mass = w },
            "Its mass; density times volume where nothing is stated.", Depth.Build, "g")
        .Quantity("height", Dimension.Length, p => p.Height, (p, w) => p with { Height = w },
            "How far it reaches down from the part above.", Depth.Build)
        .YesNo("beside", p => p.Beside, (p, w) => p with { Beside = w }, "It hangs beside the part before it, from the same face, rather than below it.")
        .Choice("shape", Words.SolidKind, p => p.Shape, (p, w) => p with { Shape = w },
            "The shape that its inertia is computed from, or \"given\", or \"mesh\" for a file.")
        .Choice("axis", Words.SolidAxis, p => p.Axis, (p, w) => p with { Axis = w },
            "Direction a round shape lies in; its length is then the height, the width or the depth. Upright where nothing is stated.")
        .Quantity("width", Dimension.Length, p => p.Width, (p, w) => p with { Width = w },
            "Size along x.")
        .Quantity("depth", Dimension.Length, p => p.Depth, (p, w) => p with { Depth = w },
            "Size along y.")
        .Quantity("diameter", Dimension.Length, p => p.Diameter, (p, w) => p with { Diameter = w },
            "Outer diameter of a cylinder, tube, ring or sphere.")
        .Quantity("innerDiameter", Dimension.Length, p => p.InnerDiameter, (p, w) => p with { InnerDiameter = w },
            "Inner diameter of a tube or ring.")
        .Quantity("density", Dimension.Density, p => p.Density, (p, w) => p with { Density = w },
            "Mass for each volume, where the mass is not stated.")
        .Quantity("centreX", Dimension.Length, p => p.CentreX, (p, w) => p with { CentreX = w },
            "Centre of mass from the middle of its upper face, along x; the middle of the shape where nothing is stated.")
        .Quantity("centreY", Dimension.Length, p => p.CentreY, (p, w) => p with { CentreY = w },
            "The same along y.")
        .Quantity("centreZ", Dimension.Length, p => p.CentreZ, (p, w) => p with { CentreZ = w },
            "The same along z: negative below the face.")
        .Quantity("inertiaX", Dimension.Inertia, p => p.InertiaX, (p, w) => p with { InertiaX = w },
            "Given: moment of inertia about x through its centre of mass.")
        .Quantity("inertiaY", Dimension.Inertia, p => p.InertiaY, (p, w) => p with { InertiaY = w },
            "The same about y.")
        .Quantity("inertiaZ", Dimension.Inertia, p => p.InertiaZ, (p, w) => p with { InertiaZ = w },
            "The same about z.")
        .Quantity("productXY", Dimension.Inertia, p => p.ProductXY, (p, w) => p with { ProductXY = w },
            "Given: product of inertia, the integral of x times y over the mass; none where nothing is stated.")
        .Quantity("productYZ", Dimension.Inertia, p => p.ProductYZ, (p, w) => p with { ProductYZ = w },
            "The same of y and z.")
        .Quantity("productZX", Dimension.Inertia, p => p.ProductZX, (p, w) => p with { ProductZX = w },
            "The same of z and x.")
        .Quantity("largestLoad", Dimension.Mass, p => p.LargestLoad, (p, w) => p with { LargestLoad = w },
            "The most that may hang from its upper face, itself included.")
        .Quantity("largestLoadMoment", Dimension.Torque, p => p.LargestLoadMoment, (p, w) => p with { LargestLoadMoment = w },
            "Largest moment about its upper face of what hangs there, in motion.")
        .Section("mesh", Mesh, p => p.Mesh, (p, w) => p with { Mesh = w }, "The mesh file of its shape.")
        .Text("note", p => p.Note, (p, w) => p with { Note = w }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Vacuum = new Table<Vacuum>(new Vacuum())
        .Whole("cups", c => c.Cups, (c, w) => c with { Cups = w }, "Number of cups.")
        .Quantity("cupDiameter", Dimension.Length, c => c.CupDiameter, (c, w) => c with { CupDiameter = w },
            "Diameter on which one cup holds: what its maker states as effective.")
        .Quantity("cupCircle", Dimension.Length, c => c.CupCircle, (c, w) => c with { CupCircle = w },
            "Diameter of the circle on which several cups stand evenly.")
        .Quantity("level", Dimension.Pressure, c => c.Level, (c, w) => c with { Level = w },
            "Vacuum, below ambient, at which the part counts as held and with which the force is computed.", null, "kPa")
        .Quantity("deepestLevel", Dimension.Pressure, c => c.DeepestLevel, (c, w) => c with { DeepestLevel = w },
            "Deepest vacuum of the generator, below ambient, without any flow.", null, "kPa")
        .Quantity("suction", Dimension.Flow, c => c.Suction, (c, w) => c with { Suction = w },
            "Suction of the generator at ambient pressure.")
        .Quantity("leakage", Dimension.Flow, c => c.Leakage, (c, w) => c with { Leakage = w },
            "Free air that leaks through part and lips at the level; none where nothing is stated.")
        .Quantity("hoseDiameter", Dimension.Length, c => c.HoseDiameter, (c, w) => c with { HoseDiameter = w },
            "Inner diameter of the hose between generator and cups.")
        .Quantity("hoseLength", Dimension.Length, c => c.HoseLength, (c, w) => c with { HoseLength = w },
            "Length of that hose.")
        .Text("hose", c => c.Hose, (c, w) => c with { Hose = w },
            "Id of that hose under /pneumatics/hoses, which then says how wide and long it is; hoseDiameter and hoseLength stay empty.")
        .Quantity("deadVolume", Dimension.Volume, c => c.DeadVolume, (c, w) => c with { DeadVolume = w },
            "Volume of cups, holder and fittings; none where nothing is stated.")
        .Quantity("valveTime", Dimension.Time, c => c.ValveTime, (c, w) => c with { ValveTime = w },
            "From the signal to the flow, for vacuum and for release; none where nothing is stated.", null, "ms")
        .Quantity("blowOff", Dimension.Flow, c => c.BlowOff, (c, w) => c with { BlowOff = w },
            "Free air for the release.")
        .Quantity("safety", Dimension.One, c => c.Safety, (c, w) => c with { Safety = w },
            "Factor by which the force of the cups exceeds what is needed.")
        .Text("safetySource", c => c.SafetySource, (c, w) => c with { SafetySource = w }, "Where that factor comes from.")
        .Quantity("frictionFrom", Dimension.One, c => c.FrictionFrom, (c, w) => c with { FrictionFrom = w },
            "Smallest friction between cup and part, in place of that by the surface.")
        .Quantity("frictionTo", Dimension.One, c => c.FrictionTo, (c, w) => c with { FrictionTo = w },
            "Largest friction.")
        .Text("note", c => c.Note, (c, w) => c with { Note = w }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Fingers = new Table<Fingers>(new Fingers())
        .Whole("count", f => f.Count, (f, w) => f with { Count = w }, "Number of fingers.")
        .Choice("grip", Words.GripKind, f => f.Grip, (f, w) => f with { Grip = w },
            "By friction, or by the shape of the fingers; friction where nothing is stated.")
        .Quantity("force", Dimension.Force, f => f.Force, (f, w) => f with { Force = w },
            "Force of one finger on the part.")
        .Quantity("safety", Dimension.One, f => f.Safety, (f, w) => f with { Safety = w },
            "Factor by which the force exceeds what is needed.")
        .Text("safetySource", f => f.SafetySource, (f, w) => f with { SafetySource = w }, "Where that factor comes from.")
        .Quantity("frictionFrom", Dimension.One, f => f.FrictionFrom, (f, w) => f with { FrictionFrom = w },
            "Smallest friction between finger and part, in place of that by the surface.")
        .Quantity("frictionTo", Dimension.One, f => f.FrictionTo, (f, w) => f with { FrictionTo = w },
            "Largest friction.")
        .Quantity("closingTime", Dimension.Time, f => f.ClosingTime, (f, w) => f with { ClosingTime = w },
            "From the signal until the part is held.", null, "ms")
        .Quantity("openingTime", Dimension.Time, f => f.OpeningTime, (f, w) => f with { OpeningTime = w },
            "From the signal until the part is free.", null, "ms")
        .Text("note", f => f.Note, (f, w) => f with { Note = w }, "Anything worth keeping.")
        .Done();

    private static readonly Shape AirUser = new Table<AirUser>(new AirUser())
        .Whole("order", u => u.Order, (u, w) => u with { Order = w }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", u => u.Name, (u, w) => u with { Name = w }, "What people call it.")
        .Choice("kind", Words.AirUserKind, u => u.Kind, (u, w) => u with { Kind = w },
            "A cylinder, an ejector for vacuum, or a blow-off.")
        .Quantity("pressure", Dimension.Pressure, u => u.Pressure, (u, w) => u with { Pressure = w },
            "Pressure it works with, above ambient.")
        .Quantity("flow", Dimension.Flow, u => u.Flow, (u, w) => u with { Flow = w },
            "Ejector and blow-off: free air while it is on.")
        .Quantity("onTime", Dimension.Time, u => u.OnTime, (u, w) => u with { OnTime = w },
            "Blow-off: how long it is on in each cycle.", null, "ms")
        .Quantity("bore", Dimension.Length, u => u.Bore, (u, w) => u with { Bore = w },
            "Cylinder: diameter of its piston.")
        .Quantity("rodDiameter", Dimension.Length, u => u.RodDiameter, (u, w) => u with { RodDiameter = w },
            "Cylinder: diameter of its rod; none where nothing is stated.")
        .Quantity("stroke", Dimension.Length, u => u.Stroke, (u, w) => u with { Stroke = w },
            "Cylinder: its stroke.")
        .YesNo("springReturn", u => u.SpringReturn, (u, w) => u with { SpringReturn = w }, "Cylinder: a spring returns it.")
        .Whole("strokesPerCycle", u => u.StrokesPerCycle, (u, w) => u with { StrokesPerCycle = w }, "Cylinder: strokes there and back in each cycle; 1 where nothing is stated.")
        .Text("valve", u => u.Valve, (u, w) => u with { Valve = w }, "Name of its valve on the diagram.")
        .Text("note", u => u.Note, (u, w) => u with { Note = w }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Hose = new Table<Hose>(new Hose())
        .Whole("order", h => h.Order, (h, w) => h with { Order = w }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", h => h.Name, (h, w) => h with { Name = w }, "What people call it.")
        .Text("from", h => h.From, (h, w) => h with { From = w }, "Where it begins, in the user's own words.")
        .Text("to", h => h.To, (h, w) => h with { To = w }, "Where it ends.")
        .Text("user", h => h.User, (h, w) => h with { User = w }, "Id of the user of air whose strokes fill and empty it.")
        .Quantity("innerDiameter", Dimension.Length, h => h.InnerDiameter, (h, w) => h with { InnerDiameter = w },
            "Inner diameter.")
        .Quantity("length", Dimension.Length, h => h.Length, (h, w) => h with { Length = w },
            "Length of the hose.")
        .Text("note", h => h.Note, (h, w) => h with { Note = w }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Pneumatics = new Table<Pneumatics>(new Pneumatics())
        .Quantity("supplyPressure", Dimension.Pressure, p => p.SupplyPressure, (p, w) => p with { SupplyPressure = w },
            "Pressure at the cell, above ambient.")
        .Quantity("supplyFlow", Dimension.Flow, p => p.SupplyFlow, (p, w) => p with { SupplyFlow = w },
            "Free air that the supply can give without end.")
        .Keyed("users", AirUser, p => p.Users, (p, w) => p with { Users = w }, "Who uses compressed air.")
        .Keyed("hoses", Hose, p => p.Hoses, (p, w) => p with { Hoses = w }, "The hoses.")
        .Text("note", p => p.Note, (p, w) => p with { Note = w }, "Anything worth keeping.")
        .Done();
}

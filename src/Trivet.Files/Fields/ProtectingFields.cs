using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of handling, guarding and the parts list.</summary>
internal static class ProtectingFields
{
    private static readonly Shape Lift = new Table<Lift>(new Lift())
        .Whole("order", l => l.Order, (l, w) => l with { Order = w }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", l => l.Name, (l, w) => l with { Name = w }, "What people call it.")
        .Quantity("mass", Dimension.Mass, l => l.Mass, (l, w) => l with { Mass = w },
            "What is lifted.")
        .Quantity("fromHeight", Dimension.Length, l => l.FromHeight, (l, w) => l with { FromHeight = w },
            "Height of the hands above the floor where the lift begins.")
        .Quantity("toHeight", Dimension.Length, l => l.ToHeight, (l, w) => l with { ToHeight = w },
            "And where it ends.")
        .Quantity("fromReach", Dimension.Length, l => l.FromReach, (l, w) => l with { FromReach = w },
            "From the ankles forward to the hands where the lift begins.")
        .Quantity("toReach", Dimension.Length, l => l.ToReach, (l, w) => l with { ToReach = w },
            "And where it ends.")
        .Quantity("fromTurn", Dimension.Angle, l => l.FromTurn, (l, w) => l with { FromTurn = w },
            "Turn of the load from straight ahead where the lift begins; none where nothing is stated.")
        .Quantity("toTurn", Dimension.Angle, l => l.ToTurn, (l, w) => l with { ToTurn = w },
            "And where it ends.")
        .Quantity("frequency", Dimension.Rate, l => l.Frequency, (l, w) => l with { Frequency = w },
            "How often it is lifted; the least of the method, once in five minutes, where nothing is stated.", null, "1/min")
        .Choice("duration", Words.LiftDuration, l => l.Duration, (l, w) => l with { Duration = w },
            "How long lifting goes on; up to 1 h where nothing is stated.")
        .Choice("coupling", Words.Coupling, l => l.Coupling, (l, w) => l with { Coupling = w },
            "How well hands hold it.")
        .YesNo("controlled", l => l.Controlled, (l, w) => l with { Controlled = w }, "It must be held back or placed with care where the lift ends.")
        .Whole("people", l => l.People, (l, w) => l with { People = w }, "People who would have to lift together; 1 where nothing is stated.")
        .Text("aid", l => l.Aid, (l, w) => l with { Aid = w }, "The lifting aid that is planned.")
        .Quantity("aidCapacity", Dimension.Mass, l => l.AidCapacity, (l, w) => l with { AidCapacity = w },
            "What the aid may carry.")
        .Text("note", l => l.Note, (l, w) => l with { Note = w }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Hanging = new Table<Hanging>(new Hanging())
        .Quantity("mass", Dimension.Mass, h => h.Mass, (h, w) => h with { Mass = w },
            "Mass that hangs from the bolts.")
        .Whole("bolts", h => h.Bolts, (h, w) => h with { Bolts = w }, "Bolts that are tightened before the aid lets go or hands leave.")
        .Quantity("boltSpacing", Dimension.Length, h => h.BoltSpacing, (h, w) => h with { BoltSpacing = w },
            "Smallest distance between two of them.")
        .Quantity("offset", Dimension.Length, h => h.Offset, (h, w) => h with { Offset = w },
            "Distance of the hanging centre of mass from their middle; none where nothing is stated.")
        .Quantity("largestBoltForce", Dimension.Force, h => h.LargestBoltForce, (h, w) => h with { LargestBoltForce = w },
            "Pull that one bolt may bear, in its thread as well.")
        .Text("boltForceSource", h => h.BoltForceSource, (h, w) => h with { BoltForceSource = w }, "Where that force comes from.")
        .Quantity("safety", Dimension.One, h => h.Safety, (h, w) => h with { Safety = w },
            "Factor on the weight, for shock and uneven tightening.")
        .Text("note", h => h.Note, (h, w) => h with { Note = w }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Handling = new Table<Handling>(new Handling())
        .Quantity("shoulderHeight", Dimension.Length, h => h.ShoulderHeight, (h, w) => h with { ShoulderHeight = w },
            "Height above which nobody lifts by hand; 1400 mm where nothing is stated.")
        .Keyed("lifts", Lift, h => h.Lifts, (h, w) => h with { Lifts = w }, "The lifts, one by one.")
        .Section("hanging", Hanging, h => h.Hanging, (h, w) => h with { Hanging = w }, "What holds the robot at the frame before anything lets go.")
        .Text("note", h => h.Note, (h, w) => h with { Note = w }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Device = new Table<ProtectiveDevice>(new ProtectiveDevice())
        .Whole("order", d => d.Order, (d, w) => d with { Order = w }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", d => d.Name, (d, w) => d with { Name = w }, "What people call it.")
        .Choice("approach", Words.ApproachDirection, d => d.Approach, (d, w) => d with { Approach = w },
            "People come straight through the field, or along it.")
        .Quantity("resolution", Dimension.Length, d => d.Resolution, (d, w) => d with { Resolution = w },
            "Smallest thing it sees.")
        .Quantity("fieldHeight", Dimension.Length, d => d.FieldHeight, (d, w) => d with { FieldHeight = w },
            "Height above the floor of a field that people approach along.")
        .Quantity("distance", Dimension.Length, d => d.Distance, (d, w) => d with { Distance = w },
            "Distance from the nearest place of danger, where the device's line on the floor is not stated.")
        .Quantity("fromX", Dimension.Length, d => d.FromX, (d, w) => d with { FromX = w }, "Line on the floor where people first enter its field, cell frame: where it begins. Its distance is then computed to all that the robot can get to.")
        .Quantity("fromY", Dimension.Length, d => d.FromY, (d, w) => d with { FromY = w }, "Likewise.")
        .Quantity("toX", Dimension.Length, d => d.ToX, (d, w) => d with { ToX = w }, "Where it ends.")
        .Quantity("toY", Dimension.Length, d => d.ToY, (d, w) => d with { ToY = w }, "Where it ends.")
        .YesNo("muted", d => d.Muted, (d, w) => d with { Muted = w }, "It is muted while material passes. While it is, it protects nobody.")
        .Text("mutedBy", d => d.MutedBy, (d, w) => d with { MutedBy = w }, "What mutes it: which sensors, in which order, for how long at most.")
        .Text("mutedKeeps", d => d.MutedKeeps, (d, w) => d with { MutedKeeps = w }, "What keeps people out while it is muted.")
        .Quantity("sensingTime", Dimension.Time, d => d.SensingTime, (d, w) => d with { SensingTime = w },
            "From the interruption until its output falls.", null, "ms")
        .Text("sensingSource", d => d.SensingSource, (d, w) => d with { SensingSource = w }, "Where that time comes from.")
        .Quantity("logicTime", Dimension.Time, d => d.LogicTime, (d, w) => d with { LogicTime = w },
            "Time of the safety logic.", null, "ms")
        .Text("logicSource", d => d.LogicSource, (d, w) => d with { LogicSource = w }, "Where that time comes from.")
        .Quantity("driveTime", Dimension.Time, d => d.DriveTime, (d, w) => d with { DriveTime = w },
            "From the logic until the drives begin to stop.", null, "ms")
        .Text("driveSource", d => d.DriveSource, (d, w) => d with { DriveSource = w }, "Where that time comes from.")
        .Quantity("stopTime", Dimension.Time, d => d.StopTime, (d, w) => d with { StopTime = w },
            "The worst stop: full speed, full load, worst place.", null, "ms")
        .Text("stopSource", d => d.StopSource, (d, w) => d with { StopSource = w }, "Where that time comes from.")
        .YesNo("stopMeasured", d => d.StopMeasured, (d, w) => d with { StopMeasured = w }, "The worst stop was measured at this machine. Until then the distance stays open.")
        .Text("note", d => d.Note, (d, w) => d with { Note = w }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Fence = new Table<Fence>(new Fence())
        .Whole("order", f => f.Order, (f, w) => f with { Order = w }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", f => f.Name, (f, w) => f with { Name = w }, "What people call it.")
        .Quantity("fromX", Dimension.Length, f => f.FromX, (f, w) => f with { FromX = w },
            "Where its line on the floor begins, cell frame.")
        .Quantity("fromY", Dimension.Length, f => f.FromY, (f, w) => f with { FromY = w },
            "Where it begins.")
        .Quantity("toX", Dimension.Length, f => f.ToX, (f, w) => f with { ToX = w },
            "Where it ends.")
        .Quantity("toY", Dimension.Length, f => f.ToY, (f, w) => f with { ToY = w },
            "Where it ends.")
        .Quantity("height", Dimension.Length, f => f.Height, (f, w) => f with { Height = w },
            "Height of its upper edge above the floor.")
        .YesNo("opens", f => f.Opens, (f, w) => f with { Opens = w }, "Whether a part of it opens without tools: a door, a flap. It then needs an interlock.")
        .Quantity("floorGap", Dimension.Length, f => f.FloorGap, (f, w) => f with { FloorGap = w },
            "Open height between floor and guard; none where nothing is stated.")
        .Choice("opening", Words.OpeningShape, f => f.Opening, (f, w) => f with { Opening = w },
            "Shape of the openings of a mesh or grille.")
        .Quantity("openingSize", Dimension.Length, f => f.OpeningSize, (f, w) => f with { OpeningSize = w },
            "Width of a slot, side of a square, diameter of a round opening; the guard is closed where nothing is stated.")
        .Quantity("largestImpact", Dimension.Energy, f => f.LargestImpact, (f, w) => f with { LargestImpact = w },
            "Energy that it stops.")
        .Text("impactSource", f => f.ImpactSource, (f, w) => f with { ImpactSource = w }, "Where that energy comes from.")
        .Text("note", f => f.Note, (f, w) => f with { Note = w }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Gap = new Table<CrushingGap>(new CrushingGap())
        .Whole("order", g => g.Order, (g, w) => g with { Order = w }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", g => g.Name, (g, w) => g with { Name = w }, "What people call it.")
        .Choice("body", Words.BodyPart, g => g.Body, (g, w) => g with { Body = w },
            "The largest part of the body that can get in.")
        .Quantity("width", Dimension.Length, g => g.Width, (g, w) => g with { Width = w },
            "Smallest width it gets.")
        .Text("note", g => g.Note, (g, w) => g with { Note = w }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Guarding = new Table<Guarding>(new Guarding())
        .Choice("edition", Words.DistanceEdition, g => g.Edition, (g, w) => g with { Edition = w },
            "Edition of the standard for the distance of devices. Editions whose formula is not on record here can not be chosen.")
        .Keyed("devices", Device, g => g.Devices, (g, w) => g with { Devices = w }, "Devices that see people come.")
        .Keyed("fences", Fence, g => g.Fences, (g, w) => g with { Fences = w }, "Guards.")
        .Keyed("gaps", Gap, g => g.Gaps, (g, w) => g with { Gaps = w }, "Gaps in which people could be crushed.")
        .Text("note", g => g.Note, (g, w) => g with { Note = w }, "Anything worth keeping.")
        .Done();

    public static readonly Shape ListedPart = new Table<ListedPart>(new ListedPart())
        .Whole("order", p => p.Order, (p, w) => p with { Order = w }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", p => p.Name, (p, w) => p with { Name = w }, "What people call it.")
        .Text("of", p => p.Of, (p, w) => p with { Of = w }, "Pointer of the part of the description it speaks of, such as /tool/parts/cup; a line of its own where nothing is stated.")
        .Whole("quantity", p => p.Quantity, (p, w) => p with { Quantity = w }, "How many.")
        .Choice("supplied", Words.Supplied, p => p.Supplied, (p, w) => p with { Supplied = w },
            "Bought or made.")
        .Whole("spares", p => p.Spares, (p, w) => p with { Spares = w }, "How many more to keep as spares.")
        .Text("article", p => p.Article, (p, w) => p with { Article = w }, "What to order or draw by.")
        .Text("note", p => p.Note, (p, w) => p with { Note = w }, "Anything worth keeping.")
        .Done();
}

using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of cables, what they lead to and the ways they are laid in.</summary>
internal static class CablingFields
{
    private static readonly Shape Device = new Table<CabledDevice>(new CabledDevice())
        .Whole("order", d => d.Order, (d, v) => d with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", d => d.Name, (d, v) => d with { Name = v }, "What it is.")
        .Quantity("x", Dimension.Length, d => d.X, (d, v) => d with { X = v }, "Its place in the cell frame, or from the platform reference point where it moves with the platform.", Depth.Build)
        .Quantity("y", Dimension.Length, d => d.Y, (d, v) => d with { Y = v }, "The same along y.", Depth.Build)
        .Quantity("z", Dimension.Length, d => d.Z, (d, v) => d with { Z = v }, "The same upward.", Depth.Build)
        .Choice("movesWith", Words.Carrier, d => d.MovesWith, (d, v) => d with { MovesWith = v }, "What it moves with; nothing where nothing is stated.")
        .Text("face", d => d.Face, (d, v) => d with { Face = v }, "A word that devices share whose sockets are so near that their plugs can be taken for each other; its own where nothing is stated.")
        .Text("note", d => d.Note, (d, v) => d with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Point = new Table<WayPoint>(new WayPoint())
        .Whole("order", p => p.Order, (p, v) => p with { Order = v }, "Place along the way; equal or missing orders follow the id.")
        .Quantity("x", Dimension.Length, p => p.X, (p, v) => p with { X = v }, "Its place in the cell frame.", Depth.Build)
        .Quantity("y", Dimension.Length, p => p.Y, (p, v) => p with { Y = v }, "The same along y.", Depth.Build)
        .Quantity("z", Dimension.Length, p => p.Z, (p, v) => p with { Z = v }, "The same upward.", Depth.Build)
        .Text("note", p => p.Note, (p, v) => p with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Way = new Table<CableWay>(new CableWay())
        .Whole("order", w => w.Order, (w, v) => w with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", w => w.Name, (w, v) => w with { Name = v }, "What people call it.")
        .Choice("kind", Words.CableWayKind, w => w.Kind, (w, v) => w with { Kind = v }, "A duct as where nothing is stated, an energy chain, or a loop that hangs free between its point and the platform.")
        .Text("along", w => w.Along, (w, v) => w with { Along = v }, "Id of the frame's member that it runs along, in place of points.")
        .Keyed("points", Point, w => w.Points, (w, v) => w with { Points = v }, "The points it leads through; of a loop the one it hangs from, of an energy chain first its fixed end.")
        .Quantity("width", Dimension.Length, w => w.Width, (w, v) => w with { Width = v }, "Its width inside.", Depth.Build)
        .Quantity("height", Dimension.Length, w => w.Height, (w, v) => w with { Height = v }, "Its height inside.", Depth.Build)
        .Quantity("largestFill", Dimension.One, w => w.LargestFill, (w, v) => w with { LargestFill = v }, "Largest share of its inside that cables may fill; 0.6 where nothing is stated.")
        .Quantity("bendRadius", Dimension.Length, w => w.BendRadius, (w, v) => w with { BendRadius = v }, "Smallest radius to which it bends a cable.", Depth.Build)
        .YesNo("divider", w => w.Divider, (w, v) => w with { Divider = v }, "Whether a wall of metal within it parts power from signals.")
        .Quantity("travel", Dimension.Length, w => w.Travel, (w, v) => w with { Travel = v }, "Energy chain: travel of its moving end.")
        .Quantity("fixedOffset", Dimension.Length, w => w.FixedOffset, (w, v) => w with { FixedOffset = v }, "Energy chain: distance of its fixed end from the middle of the travel; none where nothing is stated.")
        .Quantity("length", Dimension.Length, w => w.Length, (w, v) => w with { Length = v }, "Loop: the length that hangs free.")
        .Text("note", w => w.Note, (w, v) => w with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape End = new Table<CableEnd>(new CableEnd())
        .Text("connector", e => e.Connector, (e, v) => e with { Connector = v }, "Size or kind of the connector: M12, D-sub 9.")
        .Text("coding", e => e.Coding, (e, v) => e with { Coding = v }, "Its coding.")
        .Choice("gender", Words.ContactGender, e => e.Gender, (e, v) => e with { Gender = v }, "Pins, sockets, or bare ends under clamps.")
        .Whole("contacts", e => e.Contacts, (e, v) => e with { Contacts = v }, "How many contacts it has.")
        .Text("socket", e => e.Socket, (e, v) => e with { Socket = v }, "The socket or the terminals it goes to.")
        .YesNo("bonded", e => e.Bonded, (e, v) => e with { Bonded = v }, "Whether the shield is clamped here all round.")
        .Text("note", e => e.Note, (e, v) => e with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Core = new Table<CableCore>(new CableCore())
        .Whole("order", c => c.Order, (c, v) => c with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("colour", c => c.Colour, (c, v) => c with { Colour = v }, "Colour in the letters of IEC 60757 (BN, WH, BU, BK), or the number printed on it.")
        .Text("function", c => c.Function, (c, v) => c with { Function = v }, "What it carries.")
        .Text("fromPin", c => c.FromPin, (c, v) => c with { FromPin = v }, "Contact or terminal at the end where the cable begins.")
        .Text("toPin", c => c.ToPin, (c, v) => c with { ToPin = v }, "Contact or terminal at the other end.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Cable = new Table<Cable>(new Cable())
        .Whole("order", c => c.Order, (c, v) => c with { Order = v }, "Place in lists and in installation; equal or missing orders follow the id.")
        .Text("name", c => c.Name, (c, v) => c with { Name = v }, "What it is for.")
        .Choice("kind", Words.CableKind, c => c.Kind, (c, v) => c with { Kind = v }, "What it serves; by it power is told from signals.")
        .Text("axis", c => c.Axis, (c, v) => c with { Axis = v }, "Id of the chain, or \"rotary\" or \"linear\", for a cable that belongs to an axis.")
        .Text("from", c => c.From, (c, v) => c with { From = v }, "Where it begins: the id of a module or a device, or a place in words.")
        .Text("to", c => c.To, (c, v) => c with { To = v }, "Where it ends, likewise.")
        .Quantity("length", Dimension.Length, c => c.Length, (c, v) => c with { Length = v }, "Its length.", null, "m")
        .Text("type", c => c.Type, (c, v) => c with { Type = v }, "Type or article.")
        .Whole("coreCount", c => c.CoreCount, (c, v) => c with { CoreCount = v }, "How many cores it has.")
        .Quantity("coreArea", Dimension.Area, c => c.CoreArea, (c, v) => c with { CoreArea = v }, "Copper of one core.", null, "mm²")
        .Quantity("diameter", Dimension.Length, c => c.Diameter, (c, v) => c with { Diameter = v }, "Its outer diameter.", Depth.Build)
        .YesNo("shielded", c => c.Shielded, (c, v) => c with { Shielded = v }, "Whether it has a shield.")
        .Quantity("staticBend", Dimension.One, c => c.StaticBend, (c, v) => c with { StaticBend = v }, "Smallest bend radius over the diameter at rest; 5 where nothing is stated.")
        .Quantity("movingBend", Dimension.One, c => c.MovingBend, (c, v) => c with { MovingBend = v }, "The same where it moves; 10 where nothing is stated.")
        .Quantity("voltage", Dimension.Voltage, c => c.Voltage, (c, v) => c with { Voltage = v }, "Voltage it carries.")
        .Quantity("current", Dimension.Current, c => c.Current, (c, v) => c with { Current = v }, "Current it carries at most, there and back.")
        .Quantity("largestDrop", Dimension.One, c => c.LargestDrop, (c, v) => c with { LargestDrop = v }, "Largest share of the voltage that it may lose; 0.05 where nothing is stated.")
        .Text("route", c => c.Route, (c, v) => c with { Route = v }, "Ids of the ways it is laid in, in their order, parted by commas.")
        .Quantity("slack", Dimension.Length, c => c.Slack, (c, v) => c with { Slack = v }, "Length in reserve, in place of that of all cables.")
        .Text("label", c => c.Label, (c, v) => c with { Label = v }, "Text on both its ends; the id where nothing is stated.")
        .Text("mark", c => c.Mark, (c, v) => c with { Mark = v }, "What tells it from cables whose plugs are alike: a ring of a colour.")
        .Quantity("cutLength", Dimension.Length, c => c.CutLength, (c, v) => c with { CutLength = v }, "Length that was cut, filled in by who cut it.", null, "m")
        .Quantity("fittedLength", Dimension.Length, c => c.FittedLength, (c, v) => c with { FittedLength = v }, "Length that was left when it was fitted.", null, "m")
        .Text("installedBy", c => c.InstalledBy, (c, v) => c with { InstalledBy = v }, "Who fitted it.")
        .Text("installedOn", c => c.InstalledOn, (c, v) => c with { InstalledOn = v }, "The day it was fitted, as 2026-03-02.")
        .Section("fromEnd", End, c => c.FromEnd, (c, v) => c with { FromEnd = v }, "The end where it begins.")
        .Section("toEnd", End, c => c.ToEnd, (c, v) => c with { ToEnd = v }, "The other end.")
        .Keyed("cores", Core, c => c.Cores, (c, v) => c with { Cores = v }, "Its cores, contact by contact.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Cabling = new Table<CablingPlan>(new CablingPlan())
        .Quantity("cabinetX", Dimension.Length, c => c.CabinetX, (c, v) => c with { CabinetX = v }, "Where cables leave the cabinet, cell frame.", Depth.Build)
        .Quantity("cabinetY", Dimension.Length, c => c.CabinetY, (c, v) => c with { CabinetY = v }, "The same along y.", Depth.Build)
        .Quantity("cabinetZ", Dimension.Length, c => c.CabinetZ, (c, v) => c with { CabinetZ = v }, "The same upward.", Depth.Build)
        .Quantity("insideCabinet", Dimension.Length, c => c.InsideCabinet, (c, v) => c with { InsideCabinet = v }, "Length from there to the terminals of a module; 1 m where nothing is stated.", null, "m")
        .Quantity("ductDrop", Dimension.Length, c => c.DuctDrop, (c, v) => c with { DuctDrop = v }, "Length from a module's terminals to the duct along its rail, for cables from module to module; 100 mm where nothing is stated.")
        .Quantity("slack", Dimension.Length, c => c.Slack, (c, v) => c with { Slack = v }, "Length that every cable has in reserve; 0.3 m where nothing is stated.")
        .Quantity("leastParting", Dimension.Length, c => c.LeastParting, (c, v) => c with { LeastParting = v }, "Distance from which on power and signals may run along each other; 100 mm where nothing is stated.")
        .Keyed("devices", Device, c => c.Devices, (c, v) => c with { Devices = v }, "What cables lead to outside the cabinet.")
        .Keyed("ways", Way, c => c.Ways, (c, v) => c with { Ways = v }, "The ways that cables are laid in.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();
}

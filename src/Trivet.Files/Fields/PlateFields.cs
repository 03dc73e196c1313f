using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of mounting faces, adapter plates and their materials.</summary>
internal static class PlateFields
{
    private static readonly Shape Point = new Table<PatternPoint>(new PatternPoint())
        .Whole("order", p => p.Order, (p, v) => p with { Order = v }, "Number of the hole; equal or missing orders follow the id.")
        .Quantity("x", Dimension.Length, p => p.X, (p, v) => p with { X = v }, "Position in the face's axes, seen from above.", Depth.Build)
        .Quantity("y", Dimension.Length, p => p.Y, (p, v) => p with { Y = v }, "Position in the face's axes, seen from above.", Depth.Build)
        .Text("note", p => p.Note, (p, v) => p with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Interface = new Table<Interface>(new Interface())
        .Whole("order", i => i.Order, (i, v) => i with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", i => i.Name, (i, v) => i with { Name = v }, "What people call it.")
        .Text("standard", i => i.Standard, (i, v) => i with { Standard = v },
            "A pattern that Trivet knows, such as \"ISO 9409-1-50-4-M6\" or \"NEMA 17\": it gives what is not stated here.")
        .Choice("shape", Words.PatternShape, i => i.Shape, (i, v) => i with { Shape = v }, "How the holes lie: on a circle, at the corners of a rectangle, or as listed.")
        .Quantity("circle", Dimension.Length, i => i.Circle, (i, v) => i with { Circle = v }, "Circle: its diameter through the holes.")
        .Whole("holes", i => i.Holes, (i, v) => i with { Holes = v }, "Circle: number of holes, evenly spaced.")
        .Quantity("startAngle", Dimension.Angle, i => i.StartAngle, (i, v) => i with { StartAngle = v },
            "Circle: angle of the first hole from x, counter-clockwise seen from above; 0 where nothing is stated.")
        .Quantity("width", Dimension.Length, i => i.Width, (i, v) => i with { Width = v }, "Rectangle: distance of the holes along x.")
        .Quantity("depth", Dimension.Length, i => i.Depth, (i, v) => i with { Depth = v }, "Rectangle: distance of the holes along y.")
        .Keyed("points", Point, i => i.Points, (i, v) => i with { Points = v }, "List: the holes.")
        .Text("thread", i => i.Thread, (i, v) => i with { Thread = v }, "Size of the screws: \"M6\".")
        .YesNo("tapped", i => i.Tapped, (i, v) => i with { Tapped = v }, "Whether the part has threads; otherwise its holes are passed by the screws.")
        .Quantity("threadDepth", Dimension.Length, i => i.ThreadDepth, (i, v) => i with { ThreadDepth = v }, "Depth of full thread from the face.")
        .Quantity("grip", Dimension.Length, i => i.Grip, (i, v) => i with { Grip = v }, "Thickness under the screws' heads, where the screws pass the part.")
        .Text("material", i => i.Material, (i, v) => i with { Material = v }, "Id of the part's material; \"steel\" where nothing is stated.")
        .Choice("centring", Words.Centring, i => i.Centring, (i, v) => i with { Centring = v }, "What centres the part: nothing, a boss on its face, or a bore in it.")
        .Quantity("centringDiameter", Dimension.Length, i => i.CentringDiameter, (i, v) => i with { CentringDiameter = v }, "Diameter of the boss or bore.")
        .Quantity("centringDepth", Dimension.Length, i => i.CentringDepth, (i, v) => i with { CentringDepth = v }, "Height of the boss, or depth of the bore.")
        .Quantity("pinDiameter", Dimension.Length, i => i.PinDiameter, (i, v) => i with { PinDiameter = v }, "Diameter of the locating pin; there is none where nothing is stated.")
        .Quantity("pinCircle", Dimension.Length, i => i.PinCircle, (i, v) => i with { PinCircle = v }, "Diameter of the circle that the pin stands on.")
        .Quantity("pinAngle", Dimension.Angle, i => i.PinAngle, (i, v) => i with { PinAngle = v }, "Angle of the pin from x; 0 where nothing is stated.")
        .Quantity("faceDiameter", Dimension.Length, i => i.FaceDiameter, (i, v) => i with { FaceDiameter = v },
            "Diameter of a round face; a face whose size is not stated is taken to cover the plate.")
        .Quantity("faceWidth", Dimension.Length, i => i.FaceWidth, (i, v) => i with { FaceWidth = v }, "Size of a rectangular face along x.")
        .Quantity("faceDepth", Dimension.Length, i => i.FaceDepth, (i, v) => i with { FaceDepth = v }, "Size of a rectangular face along y.")
        .Text("note", i => i.Note, (i, v) => i with { Note = v }, "Anything worth keeping, such as where the figures come from.")
        .Done();

    public static readonly Shape Material = new Table<Material>(new Material())
        .Whole("order", m => m.Order, (m, v) => m with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", m => m.Name, (m, v) => m with { Name = v }, "What people call it.")
        .Quantity("density", Dimension.Density, m => m.Density, (m, v) => m with { Density = v }, "Its density.")
        .Quantity("modulus", Dimension.Stress, m => m.Modulus, (m, v) => m with { Modulus = v }, "Young's modulus.", null, "GPa")
        .Quantity("poissonRatio", Dimension.One, m => m.PoissonRatio, (m, v) => m with { PoissonRatio = v }, "Poisson's ratio; 0.33 where nothing is stated.")
        .Quantity("shearStrength", Dimension.Stress, m => m.ShearStrength, (m, v) => m with { ShearStrength = v }, "Shear strength of a thread cut in it.")
        .Quantity("headPressure", Dimension.Stress, m => m.HeadPressure, (m, v) => m with { HeadPressure = v }, "Largest pressure under a screw's head.")
        .Quantity("engagement", Dimension.One, m => m.Engagement, (m, v) => m with { Engagement = v }, "Length that a thread in it must be engaged, in diameters.")
        .Quantity("creep", Dimension.One, m => m.Creep, (m, v) => m with { Creep = v }, "Share of the preload that is lost as it creeps; 0 where nothing is stated.")
        .Text("note", m => m.Note, (m, v) => m with { Note = v }, "Anything worth keeping, such as where the figures come from.")
        .Done();

    private static readonly Shape Stock = new Table<StockThickness>(new StockThickness())
        .Whole("order", s => s.Order, (s, v) => s with { Order = v }, "Place in lists.")
        .Quantity("thickness", Dimension.Length, s => s.Thickness, (s, v) => s with { Thickness = v }, "A thickness in stock.", Depth.Build)
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Plate = new Table<PlatePlan>(new PlatePlan())
        .Whole("order", p => p.Order, (p, v) => p with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", p => p.Name, (p, v) => p with { Name = v }, "What people call it.")
        .Text("above", p => p.Above, (p, v) => p with { Above = v }, "The part on the plate's upper face: id of an interface, or the designation of a standard.", Depth.Build)
        .Text("below", p => p.Below, (p, v) => p with { Below = v }, "The part on its lower face, likewise.", Depth.Build)
        .Quantity("clocking", Dimension.Angle, p => p.Clocking, (p, v) => p with { Clocking = v },
            "Angle of the lower pattern against the upper one, counter-clockwise seen from above; searched where nothing is stated.")
        .Quantity("clockingStep", Dimension.Angle, p => p.ClockingStep, (p, v) => p with { ClockingStep = v }, "Step of that search; 5 deg where nothing is stated.")
        .Text("material", p => p.Material, (p, v) => p with { Material = v }, "Id of its material.", Depth.Build)
        .Choice("firstFitted", Words.PlateFace, p => p.FirstFitted, (p, v) => p with { FirstFitted = v },
            "Which part the plate is screwed to first; both orders are tried where nothing is stated.")
        .Whole("pieces", p => p.Pieces, (p, v) => p with { Pieces = v }, "One plate, or a stack of two; 1 where nothing is stated.")
        .Quantity("thickness", Dimension.Length, p => p.Thickness, (p, v) => p with { Thickness = v }, "Its thickness; found among the stock where nothing is stated.")
        .Keyed("stock", Stock, p => p.Stock, (p, v) => p with { Stock = v }, "The thicknesses in stock; 5, 6, 8, 10, 12, 15, 20, 25 and 30 mm where nothing is stated.")
        .Choice("outline", Words.PlateOutline, p => p.Outline, (p, v) => p with { Outline = v },
            "Round, or fitted as closely round the holes as the walls allow; fitted where nothing is stated.")
        .Quantity("wall", Dimension.Length, p => p.Wall, (p, v) => p with { Wall = v }, "Shop: smallest wall between two holes; 1.5 mm where nothing is stated.")
        .Quantity("edge", Dimension.Length, p => p.Edge, (p, v) => p with { Edge = v }, "Shop: smallest wall between a hole and the edge; 3 mm where nothing is stated.")
        .Quantity("floor", Dimension.Length, p => p.Floor, (p, v) => p with { Floor = v }, "Shop: smallest thickness under a head or a blind hole; 2 mm where nothing is stated.")
        .Quantity("bore", Dimension.Length, p => p.Bore, (p, v) => p with { Bore = v }, "Diameter of the passage for cable and air in the middle; none where nothing is stated.")
        .Quantity("keyRoom", Dimension.Length, p => p.KeyRoom, (p, v) => p with { KeyRoom = v },
            "Free radius that key or driver needs round a screw's axis; that of the screw's own key where nothing is stated.")
        .YesNo("lighten", p => p.Lighten, (p, v) => p with { Lighten = v }, "Whether holes are added that make it lighter.")
        .Text("joiningThread", p => p.JoiningThread, (p, v) => p with { JoiningThread = v }, "Stack of two: size of the screws that join them; \"M5\" where nothing is stated.")
        .Text("owner", p => p.Owner, (p, v) => p with { Owner = v }, "Title block: who owns the drawing.")
        .Text("number", p => p.Number, (p, v) => p with { Number = v }, "Title block: number of the drawing; cell and id where nothing is stated.")
        .Text("creator", p => p.Creator, (p, v) => p with { Creator = v }, "Title block: who made it, by id or initials.")
        .Text("approvedBy", p => p.ApprovedBy, (p, v) => p with { ApprovedBy = v }, "Title block: who approved it, by id or initials; not approved where nothing is stated.")
        .Text("note", p => p.Note, (p, v) => p with { Note = v }, "Anything worth keeping.")
        .Done();
}

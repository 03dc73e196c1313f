using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of the brief.</summary>
internal static class BriefFields
{
    private static readonly Shape Extent = new Table<Extent>(new Extent())
        .Quantity("width", Dimension.Length, e => e.Width, (e, v) => e with { Width = v }, "Size along x.")
        .Quantity("depth", Dimension.Length, e => e.Depth, (e, v) => e with { Depth = v }, "Size along y.")
        .Quantity("height", Dimension.Length, e => e.Height, (e, v) => e with { Height = v }, "Size along z.")
        .Text("note", e => e.Note, (e, v) => e with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Part = new Table<Part>(new Part())
        .Whole("order", p => p.Order, (p, v) => p with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", p => p.Name, (p, v) => p with { Name = v }, "What people call the part.")
        .Quantity("mass", Dimension.Mass, p => p.Mass, (p, v) => p with { Mass = v }, "Mass of one part, of the heaviest one if they differ.", Depth.Quote, "g")
        .Section("size", Extent, p => p.Size, (p, v) => p with { Size = v }, "Size of one part as it lies at the pick.")
        .Text("surface", p => p.Surface, (p, v) => p with { Surface = v }, "What the gripper touches: smooth, porous, oily, fragile.")
        .Choice("state", Words.SurfaceState, p => p.State, (p, v) => p with { State = v }, "State of that surface, which decides the friction.")
        .Text("note", p => p.Note, (p, v) => p with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Requirement = new Table<Requirement>(new Requirement())
        .Whole("order", r => r.Order, (r, v) => r with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("text", r => r.Text, (r, v) => r with { Text = v }, "What is promised, in one sentence.")
        .Quantity("tolerance", Dimension.Length, r => r.Tolerance, (r, v) => r with { Tolerance = v }, "Allowed deviation of the place, half the width of the zone.")
        .Text("relativeTo", r => r.RelativeTo, (r, v) => r with { RelativeTo = v }, "What the tolerance is relative to: the nest, the part's edge, the tray's corner.")
        .Choice("provenBy", Words.Proof, r => r.ProvenBy, (r, v) => r with { ProvenBy = v }, "How it will be proven.")
        .Text("owner", r => r.Owner, (r, v) => r with { Owner = v }, "Who owns it: the role that answers for it.")
        .Text("note", r => r.Note, (r, v) => r with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape OpenQuestion = new Table<OpenQuestion>(new OpenQuestion())
        .Whole("order", q => q.Order, (q, v) => q with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("text", q => q.Text, (q, v) => q with { Text = v }, "The question.")
        .Text("owner", q => q.Owner, (q, v) => q with { Owner = v }, "Who is to answer it.")
        .Text("answer", q => q.Answer, (q, v) => q with { Answer = v }, "The answer, once there is one: the question is then closed.")
        .Text("note", q => q.Note, (q, v) => q with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Brief = new Table<Brief>(new Brief())
        .Text("customer", b => b.Customer, (b, v) => b with { Customer = v }, "For whom the cell is.")
        .Keyed("parts", Part, b => b.Parts, (b, v) => b with { Parts = v }, "The kinds of part that are picked and placed.")
        .Quantity("meanRate", Dimension.Rate, b => b.MeanRate, (b, v) => b with { MeanRate = v }, "Parts in a time, mean over a shift.", Depth.Quote, "1/min")
        .Quantity("peakRate", Dimension.Rate, b => b.PeakRate, (b, v) => b with { PeakRate = v }, "Parts in a time, over the worst minute.", Depth.Quote, "1/min")
        .Quantity("hoursPerYear", Dimension.Time, b => b.HoursPerYear, (b, v) => b with { HoursPerYear = v }, "Running time in a year.", null, "h")
        .Quantity("shift", Dimension.Time, b => b.Shift, (b, v) => b with { Shift = v },
            "Longest run without a pause in which the motors cool down, as a shift; without end where nothing is stated.", null, "h")
        .Section("area", Extent, b => b.Area, (b, v) => b with { Area = v }, "Floor area and height that the cell may take.")
        .Keyed("requirements", Requirement, b => b.Requirements, (b, v) => b with { Requirements = v }, "What is promised, line by line.")
        .Keyed("openQuestions", OpenQuestion, b => b.OpenQuestions, (b, v) => b with { OpenQuestions = v }, "What nobody has answered yet.")
        .Text("note", b => b.Note, (b, v) => b with { Note = v }, "Anything worth keeping.")
        .Done();
}

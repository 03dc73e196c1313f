using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of sources, branches and consumers.</summary>
internal static class PowerFields
{
    public static readonly Shape Source = new Table<PowerSource>(new PowerSource())
        .Whole("order", s => s.Order, (s, v) => s with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", s => s.Name, (s, v) => s with { Name = v }, "What people call it.")
        .Text("fedBy", s => s.FedBy, (s, v) => s with { FedBy = v }, "Id of the branch that feeds it; none for what comes in from outside.")
        .YesNo("alternating", s => s.Alternating, (s, v) => s with { Alternating = v }, "Whether it gives alternating current; direct current where nothing is stated.")
        .Quantity("voltage", Dimension.Voltage, s => s.Voltage, (s, v) => s with { Voltage = v }, "Its voltage at load; of alternating current the effective value.", Depth.Build)
        .Quantity("current", Dimension.Current, s => s.Current, (s, v) => s with { Current = v }, "What it gives without end, derated to the temperature inside.")
        .Quantity("peakCurrent", Dimension.Current, s => s.PeakCurrent, (s, v) => s with { PeakCurrent = v }, "What it gives for the peak time.")
        .Quantity("peakTime", Dimension.Time, s => s.PeakTime, (s, v) => s with { PeakTime = v }, "How long it bears the peak current.")
        .Quantity("shortCircuitCurrent", Dimension.Current, s => s.ShortCircuitCurrent, (s, v) => s with { ShortCircuitCurrent = v },
            "What it gives into a short circuit: of mains the network's, of a supply the limit it is held to.", Depth.Build)
        .Quantity("inputCurrent", Dimension.Current, s => s.InputCurrent, (s, v) => s with { InputCurrent = v }, "What it takes from its own branch at full load.")
        .Quantity("inrush", Dimension.Current, s => s.Inrush, (s, v) => s with { Inrush = v }, "Peak that it takes when switched on.")
        .Quantity("holdTime", Dimension.Time, s => s.HoldTime, (s, v) => s with { HoldTime = v }, "How long it goes on at its load when the mains fail, with its battery or capacitor; not at all where nothing is stated.")
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Branch = new Table<PowerBranch>(new PowerBranch())
        .Whole("order", b => b.Order, (b, v) => b with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", b => b.Name, (b, v) => b with { Name = v }, "What people call it.")
        .Text("from", b => b.From, (b, v) => b with { From = v }, "Id of the source that feeds it.", Depth.Build)
        .Choice("protection", Words.Protection, b => b.Protection, (b, v) => b with { Protection = v }, "What switches it off.", Depth.Build)
        .Quantity("rating", Dimension.Current, b => b.Rating, (b, v) => b with { Rating = v }, "Rated current of the protection, or the one it is set to.", Depth.Build)
        .Quantity("tripCurrent", Dimension.Current, b => b.TripCurrent, (b, v) => b with { TripCurrent = v }, "At which an electronic protection switches off at once; 1.3 times its rating where nothing is stated.")
        .Quantity("section", Dimension.Area, b => b.Section, (b, v) => b with { Section = v }, "Copper of its wire, as wires are made.", Depth.Build)
        .Quantity("length", Dimension.Length, b => b.Length, (b, v) => b with { Length = v }, "Length of its wire, one way.", Depth.Build, "m")
        .Choice("laying", Words.WireLaying, b => b.Laying, (b, v) => b with { Laying = v },
            "IEC 60204-1: B1 single conductors in trunking, B2 cables in trunking, C cables on walls, E cables on open trays; B2 where nothing is stated.")
        .Whole("grouped", b => b.Grouped, (b, v) => b with { Grouped = v }, "Loaded circuits that lie together, this one included; 1 where nothing is stated.")
        .Quantity("ambient", Dimension.Temperature, b => b.Ambient, (b, v) => b with { Ambient = v }, "Air around the wire; 40 °C where nothing is stated.")
        .Quantity("conductorTemperature", Dimension.Temperature, b => b.ConductorTemperature, (b, v) => b with { ConductorTemperature = v }, "Of its copper at load; 70 °C where nothing is stated.")
        .Text("note", b => b.Note, (b, v) => b with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Consumer = new Table<PowerConsumer>(new PowerConsumer())
        .Whole("order", c => c.Order, (c, v) => c with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", c => c.Name, (c, v) => c with { Name = v }, "What people call it.")
        .Text("branch", c => c.Branch, (c, v) => c with { Branch = v }, "Id of the branch that feeds it.")
        .Choice("purpose", Words.LoadPurpose, c => c.Purpose, (c, v) => c with { Purpose = v }, "Logic, outputs, brakes or motors, which want branches of their own; logic where nothing is stated.")
        .Whole("count", c => c.Count, (c, v) => c with { Count = v }, "How many alike; 1 where nothing is stated.")
        .Quantity("steady", Dimension.Current, c => c.Steady, (c, v) => c with { Steady = v }, "Current of one while it is on.", Depth.Build)
        .Quantity("peak", Dimension.Current, c => c.Peak, (c, v) => c with { Peak = v }, "Current of one when it is switched on; the steady one where nothing is stated.")
        .Quantity("peakTime", Dimension.Time, c => c.PeakTime, (c, v) => c with { PeakTime = v }, "How long the peak lasts.", null, "ms")
        .Quantity("simultaneity", Dimension.One, c => c.Simultaneity, (c, v) => c with { Simultaneity = v }, "Share of them that is on at a time, 0 to 1; 1 where nothing is stated.")
        .YesNo("backedUp", c => c.BackedUp, (c, v) => c with { BackedUp = v }, "Whether it has to go on when the mains fail.")
        .Quantity("holdTime", Dimension.Time, c => c.HoldTime, (c, v) => c with { HoldTime = v }, "How long it has to go on then; 1 s where nothing is stated.")
        .Quantity("section", Dimension.Area, c => c.Section, (c, v) => c with { Section = v }, "Copper of the wire from the branch to one, taken as a cable laid like its branch; left out where it stands within the cabinet.")
        .Quantity("length", Dimension.Length, c => c.Length, (c, v) => c with { Length = v }, "Length of that wire, one way; that of its cable where nothing is stated.", null, "m")
        .Text("cable", c => c.Cable, (c, v) => c with { Cable = v }, "Id of the cable it hangs on.")
        .Quantity("lowestVoltage", Dimension.Voltage, c => c.LowestVoltage, (c, v) => c with { LowestVoltage = v }, "Voltage that it still works at; that of its source less 15 % where nothing is stated: 20.4 V at 24 V.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();
}

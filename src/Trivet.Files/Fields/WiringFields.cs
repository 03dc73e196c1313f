using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of the cabinet: modules, the rules of their addresses, the bus.</summary>
internal static class WiringFields
{
    private static readonly Shape Module = new Table<Module>(new Module())
        .Whole("order", m => m.Order, (m, v) => m with { Order = v }, "Place along the rail; equal or missing orders follow the id.")
        .Text("name", m => m.Name, (m, v) => m with { Name = v }, "Its name on the drawing.")
        .Text("role", m => m.Role, (m, v) => m with { Role = v }, "What it does: supply, controller, axis, inputs, outputs.")
        .Text("drives", m => m.Drives, (m, v) => m with { Drives = v }, "Id of the chain, or \"rotary\" or \"linear\", for a module that drives an axis.")
        .Quantity("width", Dimension.Length, m => m.Width, (m, v) => m with { Width = v }, "Width along the rail.")
        .Text("addressClass", m => m.AddressClass, (m, v) => m with { AddressClass = v }, "Id of the class of addresses it belongs to.")
        .Whole("address", m => m.Address, (m, v) => m with { Address = v }, "Its address on the bus.")
        .Quantity("controlCurrent", Dimension.Current, m => m.ControlCurrent, (m, v) => m with { ControlCurrent = v }, "Current it draws from the control supply.")
        .Text("note", m => m.Note, (m, v) => m with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape AddressClass = new Table<AddressClass>(new AddressClass())
        .Whole("order", c => c.Order, (c, v) => c with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", c => c.Name, (c, v) => c with { Name = v }, "What people call it.")
        .Whole("first", c => c.First, (c, v) => c with { First = v }, "The first address along the rail.", Depth.Build)
        .Whole("last", c => c.Last, (c, v) => c with { Last = v }, "The last address.", Depth.Build)
        .Whole("stride", c => c.Stride, (c, v) => c with { Stride = v }, "From one address to the next, below zero where they fall along the rail; 1 where nothing is stated.")
        .Choice("placing", Words.AddressPlacing, c => c.Placing, (c, v) => c with { Placing = v },
            "By place: each module has the address of its place. Rising: addresses follow each other along the rail, gaps are allowed. Any: any free one, as where nothing is stated.")
        .Text("range", c => c.Range, (c, v) => c with { Range = v },
            "Classes with the same word here share their addresses: none may be given twice among them. Nothing stated: the bus itself.")
        .Choice("setBy", Words.AddressSetting, c => c.SetBy, (c, v) => c with { SetBy = v }, "By what a module is told its address; software where nothing is stated.")
        .Whole("switches", c => c.Switches, (c, v) => c with { Switches = v }, "How many rotary switches or levers a module has.")
        .Whole("positions", c => c.Positions, (c, v) => c with { Positions = v }, "Positions of one rotary switch, 10 or 16; 10 where nothing is stated.")
        .Whole("shownAtZero", c => c.ShownAtZero, (c, v) => c with { ShownAtZero = v }, "What the switches show at address 0; 0 where nothing is stated.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Message = new Table<BusMessage>(new BusMessage())
        .Whole("order", m => m.Order, (m, v) => m with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", m => m.Name, (m, v) => m with { Name = v }, "What it tells.")
        .Text("from", m => m.From, (m, v) => m with { From = v }, "Id of the module that sends it.")
        .Whole("bytes", m => m.Bytes, (m, v) => m with { Bytes = v }, "Bytes of data, 0 to 8.", Depth.Build)
        .Quantity("period", Dimension.Time, m => m.Period, (m, v) => m with { Period = v }, "Time from one to the next.", Depth.Build, "ms")
        .YesNo("extended", m => m.Extended, (m, v) => m with { Extended = v }, "Whether its identifier has 29 bits in place of 11.")
        .Text("note", m => m.Note, (m, v) => m with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Network = new Table<Network>(new Network())
        .Choice("protocol", Words.BusProtocol, n => n.Protocol, (n, v) => n with { Protocol = v }, "CANopen, whose addresses and lengths are known, or another.", Depth.Build)
        .Whole("lowestAddress", n => n.LowestAddress, (n, v) => n with { LowestAddress = v }, "Smallest address that the bus allows; CANopen: 1.")
        .Whole("highestAddress", n => n.HighestAddress, (n, v) => n with { HighestAddress = v }, "Largest address that the bus allows; CANopen: 127.")
        .Quantity("bitRate", Dimension.BitRate, n => n.BitRate, (n, v) => n with { BitRate = v }, "Bits per second.", Depth.Build)
        .Quantity("length", Dimension.Length, n => n.Length, (n, v) => n with { Length = v }, "Length of the line from one end to the other.", Depth.Build, "m")
        .Quantity("longestStub", Dimension.Length, n => n.LongestStub, (n, v) => n with { LongestStub = v }, "Length of the longest branch off the line; none where nothing is stated.")
        .Whole("terminators", n => n.Terminators, (n, v) => n with { Terminators = v }, "How many terminating resistors are fitted, those inside modules included.", Depth.Build)
        .Quantity("largestLoad", Dimension.One, n => n.LargestLoad, (n, v) => n with { LargestLoad = v }, "Largest share of its time that the bus may be busy; 0.5 where nothing is stated.")
        .Keyed("messages", Message, n => n.Messages, (n, v) => n with { Messages = v }, "What is sent again and again.")
        .Text("note", n => n.Note, (n, v) => n with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Cabinet = new Table<Cabinet>(new Cabinet())
        .Text("bus", c => c.Bus, (c, v) => c with { Bus = v }, "The bus that joins the modules, in words.")
        .Section("network", Network, c => c.Network, (c, v) => c with { Network = v }, "The bus in numbers.")
        .Keyed("addressClasses", AddressClass, c => c.AddressClasses, (c, v) => c with { AddressClasses = v }, "The rules by which modules get their addresses.")
        .Keyed("modules", Module, c => c.Modules, (c, v) => c with { Modules = v }, "The modules, in order along the rail.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();
}

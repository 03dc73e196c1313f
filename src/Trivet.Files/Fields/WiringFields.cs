using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of the cabinet: modules, the rules of their addresses, the bus.</summary>
internal static class WiringFields
{
    private static readonly Shape Socket = new Table<ModuleSocket>(new ModuleSocket())
        .Whole("order", s => s.Order, (s, v) => s with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", s => s.Name, (s, v) => s with { Name = v }, "As printed on the module, and as the ends of cables name it: X3; its id where nothing is stated.")
        .Text("connector", s => s.Connector, (s, v) => s with { Connector = v }, "Size or kind of the connector: M12, D-sub 9.")
        .Text("coding", s => s.Coding, (s, v) => s with { Coding = v }, "Its coding.")
        .Choice("gender", Words.ContactGender, s => s.Gender, (s, v) => s with { Gender = v }, "What the socket itself has: pins take a plug with sockets; terminals take many wires.")
        .Whole("contacts", s => s.Contacts, (s, v) => s with { Contacts = v }, "How many contacts it has.")
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Module = new Table<Module>(new Module())
        .Whole("order", m => m.Order, (m, v) => m with { Order = v }, "Place along the rail; equal or missing orders follow the id.")
        .Text("name", m => m.Name, (m, v) => m with { Name = v }, "Its name on the drawing.")
        .Text("role", m => m.Role, (m, v) => m with { Role = v }, "What it does: supply, controller, axis, inputs, outputs.")
        .Text("drives", m => m.Drives, (m, v) => m with { Drives = v }, "Id of the chain, or \"rotary\" or \"linear\", for a module that drives an axis.")
        .Quantity("width", Dimension.Length, m => m.Width, (m, v) => m with { Width = v }, "Width along the rail.")
        .Text("addressClass", m => m.AddressClass, (m, v) => m with { AddressClass = v }, "Id of the class of addresses it belongs to.")
        .Whole("address", m => m.Address, (m, v) => m with { Address = v }, "Its address on the bus.")
        .Quantity("controlCurrent", Dimension.Current, m => m.ControlCurrent, (m, v) => m with { ControlCurrent = v }, "Current it draws from the control supply.")
        .Quantity("heatAtRest", Dimension.Power, m => m.HeatAtRest, (m, v) => m with { HeatAtRest = v }, "Power it turns into heat inside the cabinet while nothing moves.", Depth.Build)
        .Quantity("heatAtLoad", Dimension.Power, m => m.HeatAtLoad, (m, v) => m with { HeatAtLoad = v }, "The same at load; that at rest where nothing is stated.")
        .Quantity("largestAmbient", Dimension.Temperature, m => m.LargestAmbient, (m, v) => m with { LargestAmbient = v }, "Highest temperature of the air around it; what its data sheet says without derating.")
        .Quantity("dischargeTime", Dimension.Time, m => m.DischargeTime, (m, v) => m with { DischargeTime = v }, "Time from isolation until its capacitors are no danger.")
        .Text("branch", m => m.Branch, (m, v) => m with { Branch = v }, "Id of the branch that feeds its control side.")
        .Text("motorBranch", m => m.MotorBranch, (m, v) => m with { MotorBranch = v }, "Id of the branch that feeds its motor side.")
        .Quantity("motorCurrent", Dimension.Current, m => m.MotorCurrent, (m, v) => m with { MotorCurrent = v }, "Current that it draws from the motor supply without end.")
        .YesNo("fan", m => m.Fan, (m, v) => m with { Fan = v }, "Whether it has a fan of its own.")
        .Keyed("sockets", Socket, m => m.Sockets, (m, v) => m with { Sockets = v }, "Its sockets and strips of terminals; where any are stated, the ends of cables have to fit them.")
        .Text("note", m => m.Note, (m, v) => m with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape RailRule = new Table<RailRule>(new RailRule())
        .Whole("order", r => r.Order, (r, v) => r with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", r => r.Name, (r, v) => r with { Name = v }, "The rule as people say it.")
        .Choice("kind", Words.RailRule, r => r.Kind, (r, v) => r with { Kind = v },
            "First, last: left or right of all others. Before: each left of each of \"to\". Beside: each has one of \"to\" as a neighbour. Not beside: none has. Gap: free width to a neighbour. At most after: so many of \"to\" between one and the next. Together: in one row.", Depth.Build)
        .Text("of", r => r.Of, (r, v) => r with { Of = v }, "Which modules: their role, or the id of one.", Depth.Build)
        .Text("to", r => r.To, (r, v) => r with { To = v }, "Which others: their role, or the id of one. A gap without it is kept to every neighbour.")
        .Whole("count", r => r.Count, (r, v) => r with { Count = v }, "How many, for \"at most after\".")
        .Quantity("gap", Dimension.Length, r => r.Gap, (r, v) => r with { Gap = v }, "Free width between the two, for \"gap\".")
        .Text("note", r => r.Note, (r, v) => r with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Enclosure = new Table<Enclosure>(new Enclosure())
        .Quantity("railLength", Dimension.Length, e => e.RailLength, (e, v) => e with { RailLength = v }, "Length of rail that modules may take.", Depth.Build)
        .Quantity("width", Dimension.Length, e => e.Width, (e, v) => e with { Width = v }, "Width of the enclosure.")
        .Quantity("height", Dimension.Length, e => e.Height, (e, v) => e with { Height = v }, "Height of the enclosure.")
        .Quantity("depth", Dimension.Length, e => e.Depth, (e, v) => e with { Depth = v }, "Depth of the enclosure.")
        .Choice("standing", Words.EnclosureStanding, e => e.Standing, (e, v) => e with { Standing = v }, "Which faces give off heat; at a wall where nothing is stated.")
        .Quantity("coolingSurface", Dimension.Area, e => e.CoolingSurface, (e, v) => e with { CoolingSurface = v }, "Effective cooling surface, where it is known better than from sizes and standing.", null, "m²")
        .Quantity("heatTransfer", Dimension.HeatTransfer, e => e.HeatTransfer, (e, v) => e with { HeatTransfer = v }, "Heat through its walls; 5.5 W/m² K, painted sheet steel, where nothing is stated.")
        .Quantity("ambient", Dimension.Temperature, e => e.Ambient, (e, v) => e with { Ambient = v }, "Highest temperature of the air around the cabinet.", Depth.Build)
        .Quantity("fanFlow", Dimension.Flow, e => e.FanFlow, (e, v) => e with { FanFlow = v }, "Air that fans drive through with filter and openings as fitted; none where nothing is stated.", null, "m³/h")
        .Choice("wall", Words.EnclosureWall, e => e.Wall, (e, v) => e with { Wall = v }, "What its walls are made of, in place of a stated heat transfer; painted sheet steel where nothing is stated.")
        .Quantity("coolingPower", Dimension.Power, e => e.CoolingPower, (e, v) => e with { CoolingPower = v }, "What a cooler takes out of the closed enclosure, at the warmest air that modules bear.")
        .Quantity("solarGain", Dimension.Power, e => e.SolarGain, (e, v) => e with { SolarGain = v }, "Heat that the sun or a hot neighbour puts in at most.")
        .Text("note", e => e.Note, (e, v) => e with { Note = v }, "Anything worth keeping.")
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
        .Text("identifier", m => m.Identifier, (m, v) => m with { Identifier = v }, "Its identifier, hexadecimal, as \"181h\"; with \"addressOf\" the part without the address, as \"180h\".")
        .Text("addressOf", m => m.AddressOf, (m, v) => m with { AddressOf = v }, "Id of the module whose address is added to the identifier, so that it follows the plan of addresses.")
        .Text("cause", m => m.Cause, (m, v) => m with { Cause = v }, "What makes it be sent: each clock, a change, a timer.")
        .Text("data", m => m.Data, (m, v) => m with { Data = v }, "Its bytes as they usually are, hexadecimal, as \"37 06 00 00\": with the identifier they give the exact length of the frame.")
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
        .Section("enclosure", Enclosure, c => c.Enclosure, (c, v) => c with { Enclosure = v }, "What stands round the modules.")
        .Keyed("railRules", RailRule, c => c.RailRules, (c, v) => c with { RailRules = v }, "The rules for the order of the modules along the rail.")
        .Keyed("sources", PowerFields.Source, c => c.Sources, (c, v) => c with { Sources = v }, "What feeds branches: the incoming mains, and supplies.")
        .Keyed("branches", PowerFields.Branch, c => c.Branches, (c, v) => c with { Branches = v }, "The protected branches, each with its wire.")
        .Keyed("consumers", PowerFields.Consumer, c => c.Consumers, (c, v) => c with { Consumers = v }, "What branches feed outside the modules.")
        .Keyed("addressClasses", AddressClass, c => c.AddressClasses, (c, v) => c with { AddressClasses = v }, "The rules by which modules get their addresses.")
        .Keyed("modules", Module, c => c.Modules, (c, v) => c with { Modules = v }, "The modules, in order along the rail.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();
}

using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>The cabinet: modules in order along the rail, the rules by which they get their addresses, and the bus that joins them.</summary>
public sealed record Cabinet
{
    public string? Note { get; init; }
    public string? Bus { get; init; }
    public Network Network { get; init; } = new();
    public Enclosure Enclosure { get; init; } = new();
    public ImmutableSortedDictionary<string, RailRule> RailRules { get; init; } = Keyed.Empty<RailRule>();
    public ImmutableSortedDictionary<string, PowerSource> Sources { get; init; } = Keyed.Empty<PowerSource>();
    public ImmutableSortedDictionary<string, PowerBranch> Branches { get; init; } = Keyed.Empty<PowerBranch>();
    public ImmutableSortedDictionary<string, PowerConsumer> Consumers { get; init; } = Keyed.Empty<PowerConsumer>();
    public ImmutableSortedDictionary<string, AddressClass> AddressClasses { get; init; } = Keyed.Empty<AddressClass>();
    public ImmutableSortedDictionary<string, Module> Modules { get; init; } = Keyed.Empty<Module>();
}

public sealed record Module : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>What it does: supply, controller, axis, inputs, outputs — the user's own words.</summary>
    public string? Role { get; init; }
    /// <summary>Chain id, "rotary" or "linear", for a module that drives an axis.</summary>
    public string? Drives { get; init; }
    public double? Width { get; init; }
    /// <summary>Id of the class of addresses it belongs to.</summary>
    public string? AddressClass { get; init; }
    public int? Address { get; init; }
    /// <summary>Current from the control supply, amperes.</summary>
    public double? ControlCurrent { get; init; }
    /// <summary>Watts it gives off inside the cabinet, with its axis at rest and at load.</summary>
    public double? HeatAtRest { get; init; }
    public double? HeatAtLoad { get; init; }
    /// <summary>Highest temperature of the air around it, degrees Celsius.</summary>
    public double? LargestAmbient { get; init; }
    /// <summary>Seconds from isolation until its capacitors are no danger.</summary>
    public double? DischargeTime { get; init; }
    public bool? Fan { get; init; }
    /// <summary>Id of the branch that feeds its control side.</summary>
    public string? Branch { get; init; }
    /// <summary>Id of the branch that feeds its motor side, and the current from it without end, amperes.</summary>
    public string? MotorBranch { get; init; }
    public double? MotorCurrent { get; init; }
    public ImmutableSortedDictionary<string, ModuleSocket> Sockets { get; init; } = Keyed.Empty<ModuleSocket>();
}

/// <summary>A socket of a module, or its strip of terminals.</summary>
public sealed record ModuleSocket : IOrdered
{
    public int? Order { get; init; }
    /// <summary>As printed on the module: X3.</summary>
    public string? Name { get; init; }
    public string? Note { get; init; }
    public string? Connector { get; init; }
    public string? Coding { get; init; }
    /// <summary>Of the socket itself: pins take a plug with sockets.</summary>
    public ContactGender? Gender { get; init; }
    public int? Contacts { get; init; }
}

/// <summary>How the modules of a class come by their addresses.</summary>
public enum AddressPlacing
{
    /// <summary>The first along the rail has the first address, each next one the next.</summary>
    ByPlace,
    /// <summary>Addresses rise along the rail; some may be left out.</summary>
    Rising,
    /// <summary>Any free address of the class.</summary>
    Any,
}

/// <summary>By what a module is told its address.</summary>
public enum AddressSetting
{
    RotarySwitches,
    DipSwitches,
    Software,
}

/// <summary>A rule for the addresses of one kind of module: a maker's habit, so it is data.</summary>
public sealed record AddressClass : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public int? First { get; init; }
    public int? Last { get; init; }
    public int? Stride { get; init; }
    public AddressPlacing? Placing { get; init; }
    /// <summary>Classes of one range must not have an address twice between them; nothing stated: the bus itself.</summary>
    public string? Range { get; init; }
    public AddressSetting? SetBy { get; init; }
    /// <summary>How many rotary switches or levers there are.</summary>
    public int? Switches { get; init; }
    /// <summary>Positions of one rotary switch, 10 or 16.</summary>
    public int? Positions { get; init; }
    /// <summary>What the switches show at address 0: the address is what they show less this.</summary>
    public int? ShownAtZero { get; init; }
}

public enum BusProtocol
{
    CanOpen,
    Other,
}

/// <summary>The bus that joins the modules.</summary>
public sealed record Network
{
    public string? Note { get; init; }
    public BusProtocol? Protocol { get; init; }
    public int? LowestAddress { get; init; }
    public int? HighestAddress { get; init; }
    /// <summary>Bits per second.</summary>
    public double? BitRate { get; init; }
    /// <summary>Metres from one end to the other.</summary>
    public double? Length { get; init; }
    /// <summary>Metres of the longest branch.</summary>
    public double? LongestStub { get; init; }
    /// <summary>How many terminating resistors are fitted.</summary>
    public int? Terminators { get; init; }
    /// <summary>Largest share of its time that the bus may be busy.</summary>
    public double? LargestLoad { get; init; }
    public ImmutableSortedDictionary<string, BusMessage> Messages { get; init; } = Keyed.Empty<BusMessage>();
}

/// <summary>A message that is sent again and again.</summary>
public sealed record BusMessage : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of the module that sends it.</summary>
    public string? From { get; init; }
    public bool? Extended { get; init; }
    /// <summary>Hexadecimal, as "181h"; with <see cref="AddressOf"/> before that module's address is added.</summary>
    public string? Identifier { get; init; }
    /// <summary>Id of the module whose address is added to the identifier.</summary>
    public string? AddressOf { get; init; }
    /// <summary>What makes it be sent: a clock, a change, a timer.</summary>
    public string? Cause { get; init; }
    public int? Bytes { get; init; }
    /// <summary>Bytes as they usually are, hexadecimal.</summary>
    public string? Data { get; init; }
    /// <summary>Seconds from one to the next.</summary>
    public double? Period { get; init; }
}

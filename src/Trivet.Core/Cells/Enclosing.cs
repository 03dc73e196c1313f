namespace Trivet.Cells;

/// <summary>What a rule of the rail asks of the modules' order: a maker's habit, so it is data.</summary>
public enum RailRuleKind
{
    /// <summary>They stand left of all others.</summary>
    First,
    /// <summary>They stand right of all others.</summary>
    Last,
    /// <summary>Each stands left of each of the others named.</summary>
    Before,
    /// <summary>Each has one of the others named as a neighbour.</summary>
    Beside,
    /// <summary>None has one of the others named as a neighbour.</summary>
    NotBeside,
    /// <summary>A free width between neighbours.</summary>
    Gap,
    /// <summary>So many of the others named follow each, before the next of its kind.</summary>
    AtMostAfter,
    /// <summary>They stand in one row.</summary>
    Together,
}

/// <summary>A rule for the order along the rail. Modules are named by their role or by their id.</summary>
public sealed record RailRule : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public RailRuleKind? Kind { get; init; }
    /// <summary>A role or the id of a module.</summary>
    public string? Of { get; init; }
    /// <summary>The others: a role or the id of a module.</summary>
    public string? To { get; init; }
    public int? Count { get; init; }
    /// <summary>Metres.</summary>
    public double? Gap { get; init; }
}

/// <summary>How an enclosure stands: it decides which of its faces give off heat.</summary>
public enum EnclosureStanding
{
    Free,
    AtWall,
    EndOfRowFree,
    EndOfRowAtWall,
    MiddleOfRowFree,
    MiddleOfRowAtWall,
}

/// <summary>What the walls of an enclosure are made of.</summary>
public enum EnclosureWall
{
    PaintedSteel,
    StainlessSteel,
    Aluminium,
    Plastic,
}

/// <summary>The enclosure round the modules.</summary>
public sealed record Enclosure
{
    public string? Note { get; init; }
    /// <summary>Metres of rail that modules may take.</summary>
    public double? RailLength { get; init; }
    public double? Width { get; init; }
    public double? Height { get; init; }
    public double? Depth { get; init; }
    public EnclosureStanding? Standing { get; init; }
    /// <summary>Square metres that give off heat, where it is known better than from the sizes.</summary>
    public double? CoolingSurface { get; init; }
    /// <summary>Watts through a square metre for a kelvin.</summary>
    public double? HeatTransfer { get; init; }
    /// <summary>Temperature of the air around it, degrees Celsius.</summary>
    public double? Ambient { get; init; }
    /// <summary>Air that its fans drive through, filter and openings included, cubic metres per second.</summary>
    public double? FanFlow { get; init; }
    public EnclosureWall? Wall { get; init; }
    /// <summary>Watts that a cooler takes out.</summary>
    public double? CoolingPower { get; init; }
    /// <summary>Watts that come in from outside: the sun, a hot neighbour.</summary>
    public double? SolarGain { get; init; }
}

using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>What of the plan a parameter of the controller holds.</summary>
public enum SettingQuantity
{
    // Of a chain.
    Rod,
    UpperArm,
    BaseRadius,
    BaseHeight,
    PlatformRadius,
    PlatformHeight,
    Azimuth,
    Inclination,
    HomeOffset,
    // Of an axis: a chain, "rotary" or "linear".
    /// <summary>The end of the travel where the controller shows least, and most.</summary>
    SmallestReading,
    LargestReading,
    /// <summary>What the controller shows where the drive's own reading is zero.</summary>
    ReadingAtHome,
    /// <summary>+1 where the controller counts as Trivet does, −1 where it counts against it.</summary>
    Direction,
    AxisSpeed,
    AxisAcceleration,
    AxisJerk,
    DriveStep,
    TravelPerTurn,
    Ratio,
    CountsPerTurn,
    ContinuousCurrent,
    PeakCurrent,
    // Of the motion along the path; a blend may be a cycle's own.
    PathSpeed,
    PathAcceleration,
    PathJerk,
    Blend,
    // Of frame and tool.
    FrameTurn,
    /// <summary>Height of the mounting plane as the controller shows it.</summary>
    MountHeight,
    TcpX,
    TcpY,
    TcpZ,
    // Of the bus: the address of a module, the rate of all, the period of a message.
    Address,
    BitRate,
    Period,
}

/// <summary>To which side a value is rounded that falls between two steps of the controller.</summary>
public enum SettingRounding
{
    Nearest,
    Down,
    Up,
}

/// <summary>One parameter of the controller.</summary>
public sealed record ControllerSetting : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    /// <summary>The name the controller shows, and where it is found there: the user's own words.</summary>
    public string? Name { get; init; }
    public string? Where { get; init; }
    /// <summary>Its name in an export, where that is another one.</summary>
    public string? Key { get; init; }
    public SettingQuantity? Quantity { get; init; }
    /// <summary>Id of the chain, axis, module, message or cycle; left out where all have the same.</summary>
    public string? Of { get; init; }
    /// <summary>What is typed where nothing of the plan is held.</summary>
    public string? Value { get; init; }
    /// <summary>Unit that the controller writes; words only.</summary>
    public string? Unit { get; init; }
    /// <summary>One unit of the controller, in the quantity's SI unit.</summary>
    public double? PerUnit { get; init; }
    /// <summary>The planned value where the controller shows zero, SI.</summary>
    public double? ZeroAt { get; init; }
    public bool? Reversed { get; init; }
    /// <summary>The controller shows how many of the quantity go into one unit: steps for a millimetre.</summary>
    public bool? Inverse { get; init; }
    /// <summary>Decimals that the controller takes.</summary>
    public int? Digits { get; init; }
    /// <summary>Smallest step in the controller's own numbers, in place of the decimals.</summary>
    public double? Step { get; init; }
    public SettingRounding? Rounding { get; init; }
    /// <summary>How far rounding may move the value, SI.</summary>
    public double? Tolerance { get; init; }
}

/// <summary>Forms of an exported parameter file.</summary>
public enum ExportForm
{
    /// <summary>A parameter a line, name and value in columns.</summary>
    Columns,
    /// <summary>A parameter a line, name and value apart by a sign.</summary>
    Pairs,
    Json,
    Xml,
}

public enum ExportEncoding
{
    /// <summary>UTF-8; a byte order mark of UTF-16 is heeded.</summary>
    Utf8,
    Latin1,
}

/// <summary>How the controller's exported parameters are read.</summary>
public sealed record ExportMapping
{
    public string? Note { get; init; }
    public ExportForm? Form { get; init; }
    public ExportEncoding? Encoding { get; init; }
    /// <summary>Sign between columns, or between name and value; the word "tab" for a tabulator.</summary>
    public string? Separator { get; init; }
    /// <summary>A line that begins so is passed over.</summary>
    public string? Comment { get; init; }
    /// <summary>Lines before the first parameter.</summary>
    public int? HeadLines { get; init; }
    /// <summary>Columns from 1.</summary>
    public int? NameColumn { get; init; }
    public int? ValueColumn { get; init; }
    /// <summary>Column whose text and a slash lead the name.</summary>
    public int? GroupColumn { get; init; }
    /// <summary>A line in square brackets leads the names that follow, with a slash.</summary>
    public bool? Sections { get; init; }
    /// <summary>Where the parameters are: JSON pointer or path of elements; "*" for any member.</summary>
    public string? List { get; init; }
    /// <summary>Where, from there, name, value and group stand: a member, an element, "@attribute", "." for the text itself.</summary>
    public string? NameAt { get; init; }
    public string? ValueAt { get; init; }
    public string? GroupAt { get; init; }
    public ImmutableSortedDictionary<string, ExportException> Exceptions { get; init; } = Keyed.Empty<ExportException>();
}

/// <summary>A parameter that may differ between a backup and what was read out: a counter, a time, a serial number.</summary>
public sealed record ExportException : IOrdered
{
    public int? Order { get; init; }
    public string? Note { get; init; }
    /// <summary>Name in the export; a star at its end stands for any rest.</summary>
    public string? Name { get; init; }
    public string? Reason { get; init; }
}

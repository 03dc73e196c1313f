using Trivet.Findings;

namespace Trivet.Cabinets;

/// <summary>The rules by which the stack of modules and its enclosure are judged.</summary>
public static class CabinetRules
{
    /// <summary>Enclosure and rules of the rail are described as far as a check needs. Appears only while they are not.</summary>
    public static Rule Described { get; } = Of("cabinet.described", "Enclosure and order are described and do not contradict themselves", "1", Sense.AtLeast, 0);

    /// <summary>A rule of the rail is obeyed.</summary>
    public static Rule Order { get; } = Of("cabinet.order", "The modules stand in an order that their makers allow", "1", Sense.AtLeast, 0);

    /// <summary>Value: length of rail that the modules take, gaps included, metres.</summary>
    public static Rule Rail { get; } = Of("cabinet.rail", "The modules fit on the rail", "m", Sense.AtMost, 0.05);

    /// <summary>Value: temperature of the air inside at load, degrees Celsius.</summary>
    public static Rule Temperature { get; } = new(
        "cabinet.temperature", "The cabinet stays cool enough", Trade.Electrical, "°C", Sense.AtMost, 0.1, new(SourceKind.FromMemory, "IEC-TR-60890", "effective cooling surface"), 50);

    private static Rule Of(string id, string title, string unit, Sense sense, double comfort) =>
        new(id, title, Trade.Electrical, unit, sense, comfort, new(SourceKind.CommonPractice, ""));
}

/// <summary>Why a check of the cabinet does not apply, or what can not be.</summary>
public static class CabinetReasons
{
    public static Reason NoModules { get; } = new("cabinet.no-modules");
    public static Reason NoRailRules { get; } = new("cabinet.no-rail-rules");
    /// <summary>No module has the role, or the id, that the rule names.</summary>
    public static Reason NobodyMeant { get; } = new("cabinet.nobody-meant");
    public static Reason NoOrder { get; } = new("cabinet.no-order");
    public static Reason TooManyOrders { get; } = new("cabinet.too-many-orders");
    /// <summary>No module says how warm it may become.</summary>
    public static Reason NoLimit { get; } = new("cabinet.no-limit");
    public static Reason NotPositive { get; } = new("cabinet.not-positive");
    public static Reason Negative { get; } = new("cabinet.negative");
    public static Reason CoolerAndFan { get; } = new Reason("cabinet.cooler-and-fan").Naming("/cabinet/enclosure/fanFlow");
}

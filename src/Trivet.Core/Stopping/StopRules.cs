using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Stopping;

/// <summary>The rules by which safety functions are judged. None says more than tight: a competent person validates each function at the machine.</summary>
public static class StopRules
{
    private static readonly Source Levels = new(SourceKind.FromMemory, "ISO-13849-1", "annex A");

    /// <summary>Safety functions are described and can be as they are. Appears only while they are not.</summary>
    public static Rule Described { get; } = Of("stop.described", "Safety functions are described and do not contradict themselves", Here("stop.described"));

    /// <summary>An emergency stop, an interlock for each guard that opens, a function for each device and for each muting.</summary>
    public static Rule Required { get; } = Of("stop.required", "What the cell states has its safety function", new(SourceKind.FromMemory, "ISO-13850", "4.1"));

    public static Rule Level { get; } = Of("stop.level", "The planned performance level is at least the required one", Levels);

    /// <summary>The category can come to the planned level.</summary>
    public static Rule Architecture { get; } = Of("stop.architecture", "The category can come to the planned performance level", Levels with { Place = "figure 5" });

    /// <summary>Value: channels; limit: what the category asks for.</summary>
    public static Rule Channels { get; } = Of("stop.channels", "The function has the channels of its category", Levels with { Place = "6.2" });

    /// <summary>Value: mean frequency of a dangerous failure, 1/s; limit: the end of the planned level's band.</summary>
    public static Rule FailureRate { get; } = new(
        "stop.failure-rate", "Dangerous failures are as seldom as the level asks", Trade.Electrical, "1/h", Sense.AtMost, double.PositiveInfinity, Levels with { Place = "table 2" });

    /// <summary>Every channel ends in something that is made for safety functions.</summary>
    public static Rule Ends { get; } = Of("stop.ends", "No channel ends on standard inputs", Here("stop.ends"));

    /// <summary>An emergency stop is of category 0 or 1.</summary>
    public static Rule Category { get; } = Of("stop.category", "An emergency stop removes power in the end", new(SourceKind.FromMemory, "ISO-13850", "4.1.4"));

    public static Rule Held { get; } = Of("stop.held", "Every chain is held when the stop has cut the torque", new(SourceKind.FromMemory, "IEC-60204-1", "9.2.2"));

    /// <summary>Value: largest drop of the tool from standstill, metres.</summary>
    public static Rule Sink { get; } = new(
        "stop.sink", "The tool sinks no further than allowed while brakes close", Trade.Electrical, "m", Sense.AtMost, double.PositiveInfinity, Here("stop.sink"));

    public static Rule Reset { get; } = Of("stop.reset", "A reset starts nothing and is given where the zone is seen", new(SourceKind.FromMemory, "ISO-13849-1", "5.2.2"));

    public static ImmutableArray<Rule> Rules { get; } = [Described, Required, Level, Architecture, Channels, FailureRate, Ends, Category, Held, Sink, Reset];

    private static Source Here(string id) => new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md");

    private static Rule Of(string id, string title, Source method) => new(id, title, Trade.Electrical, "1", Sense.AtLeast, double.PositiveInfinity, method);
}

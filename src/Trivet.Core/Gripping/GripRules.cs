using Trivet.Findings;

namespace Trivet.Gripping;

/// <summary>The rules by which gripping and compressed air are judged. What depends on a motion takes it as the controller drives it.</summary>
public static class GripRules
{
    /// <summary>What holds the part is described and can be as it is. Appears only while it is not.</summary>
    public static Rule Described { get; } = Of("grip.described", "What holds the part is described and does not contradict itself", "1", Sense.AtLeast, 0);

    /// <summary>Value: force that the part asks of the cups at the worst instant with the largest friction, newtons; its bound: with the smallest.</summary>
    public static Rule VacuumForce { get; } = Of("grip.vacuum-force", "The cups hold the part over the cycle", "N", Sense.AtMost, 0.1);

    /// <summary>Value: moment that peels the part off the cups at the worst instant, newton metres; limit: what the cups' force makes about the nearest edge.</summary>
    public static Rule Peel { get; } = Of("grip.peel", "The part is not peeled off the cups", "N m", Sense.AtMost, 0.1);

    /// <summary>Value: vacuum that is reached against leakage, pascals below ambient.</summary>
    public static Rule VacuumLevel { get; } = Of("grip.vacuum-level", "The vacuum is reached although air leaks in", "Pa", Sense.AtLeast, 0.1);

    /// <summary>Value: time until the part is held, seconds.</summary>
    public static Rule PickTime { get; } = Of("grip.pick-time", "The part is held within the pick dwell", "s", Sense.AtMost, 0.05);

    /// <summary>Value: time until the part is free, seconds.</summary>
    public static Rule ReleaseTime { get; } = Of("grip.release-time", "The part is let go within the place dwell", "s", Sense.AtMost, 0.05);

    /// <summary>Value: force that the part asks of one finger at the worst instant with the largest friction, newtons; its bound: with the smallest.</summary>
    public static Rule FingerForce { get; } = Of("grip.finger-force", "The fingers hold the part over the cycle", "N", Sense.AtMost, 0.1);

    /// <summary>Value: pressure that a user of air works with, pascals above ambient.</summary>
    public static Rule AirPressure { get; } = Of("grip.air-pressure", "The supply has the pressure that is asked for", "Pa", Sense.AtMost, 0.02);

    /// <summary>Value: free air at the peak rate, m³/s.</summary>
    public static Rule AirFlow { get; } = Of("grip.air-flow", "The supply gives the air that the cell uses", "m³/s", Sense.AtMost, 0.1);

    private static Rule Of(string id, string title, string unit, Sense sense, double comfort) =>
        new(id, title, Trade.Mechanical, unit, sense, comfort, new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md"));
}

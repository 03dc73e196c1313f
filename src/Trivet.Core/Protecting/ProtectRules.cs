using Trivet.Findings;

namespace Trivet.Protecting;

/// <summary>
/// The rules of handling and guarding. Each is an aid to the risk assessment, none replaces it: what is not exact or proved never holds.
/// </summary>
public static class ProtectRules
{
    private static readonly Source Niosh = new(SourceKind.Literature, "Waters1994", "pages 7 to 29");
    private static readonly Source Distance = new(SourceKind.Standard, "ISO-13855", "clause 6");
    private static readonly Source Reaching = new(SourceKind.Standard, "ISO-13857", "tables 2 and 4");

    /// <summary>Lifts, bolts, devices, guards and gaps are described and can be as they are. Appears only while they are not.</summary>
    public static Rule Described { get; } = Of("protect.described", "Handling and guarding are described and do not contradict themselves", "1", Sense.AtLeast, 0, Here("protect.described"), false);

    /// <summary>Value: lifting index of one person, mass over recommended mass.</summary>
    public static Rule Lift { get; } = Of("protect.lift", "One person can lift it", "1", Sense.AtMost, 0.1, Niosh);

    /// <summary>Value: composite lifting index of all that one person lifts by hand.</summary>
    public static Rule LiftsTogether { get; } = Of("protect.lifts-together", "One person can do all lifts of a shift", "1", Sense.AtMost, 0.1, Niosh with { Place = "pages 43 to 46" });

    /// <summary>A lift that is not for one person alone, or goes above shoulder height. Value: mass, kilograms; limit: what the lifting aid carries.</summary>
    public static Rule LiftAid { get; } = Of("protect.lift-aid", "A lifting aid carries what people must not lift", "kg", Sense.AtMost, 0, Here("protect.lift-aid"));

    /// <summary>Value: pull in the worst bolt while the robot hangs on the bolts that are tightened first, newtons.</summary>
    public static Rule Bolts { get; } = Of("protect.bolts", "The first bolts hold the robot before anything lets go", "N", Sense.AtMost, double.PositiveInfinity, Here("protect.bolts"), false);

    /// <summary>Value: distance of a device from the nearest place of danger, metres.</summary>
    public static Rule DeviceDistance { get; } = Of("protect.device-distance", "What moves has stopped before somebody is there", "m", Sense.AtLeast, 0.05, Distance);

    /// <summary>A device that is muted. Always open: only a person at the machine can judge what keeps people out meanwhile.</summary>
    public static Rule Muting { get; } = Of("protect.muting", "Nobody gets in while a device is muted", "1", Sense.AtLeast, 0, new(SourceKind.FromMemory, "IEC-TS-62046", "muting"));

    /// <summary>Value: height of a guard, metres.</summary>
    public static Rule FenceHeight { get; } = Of("protect.fence-height", "The guard is not too low", "m", Sense.AtLeast, 0, Reaching);

    /// <summary>Value: distance of a guard from all places that the robot can get to, metres; limit: how far an arm reaches over it.</summary>
    public static Rule ReachOver { get; } = Of("protect.reach-over", "Nobody reaches over the guard to what moves", "m", Sense.AtLeast, 0, Reaching);

    /// <summary>Value: the same distance; limit: how far a finger, hand or arm reaches through an opening.</summary>
    public static Rule Opening { get; } = Of("protect.opening", "Nobody reaches through the guard to what moves", "m", Sense.AtLeast, 0, Reaching);

    /// <summary>Value: open height below a guard, metres.</summary>
    public static Rule FloorGap { get; } = Of("protect.floor-gap", "Nobody gets under the guard", "m", Sense.AtMost, 0, Reaching);

    /// <summary>Value: smallest width of a gap, metres.</summary>
    public static Rule Gap { get; } = Of("protect.gap", "The gap leaves room for the part of the body", "m", Sense.AtLeast, 0, new(SourceKind.Standard, "ISO-13854", "table 1"));

    /// <summary>Value: distance of a guard from all places that the robot can get to, metres; limit: room for a body between.</summary>
    public static Rule Clearance { get; } = Of("protect.clearance", "Nobody is crushed between guard and robot", "m", Sense.AtLeast, 0, Here("protect.clearance"));

    /// <summary>Value: largest energy of a part or a rod that comes off, joules; limit: what the guard stops.</summary>
    public static Rule Thrown { get; } = Of("protect.thrown", "The guard stops what is thrown", "J", Sense.AtMost, 0, Here("protect.thrown"));

    private static Source Here(string id) => new(SourceKind.Derived, "trivet", $"docs/rules/{id}.md");

    private static Rule Of(string id, string title, string unit, Sense sense, double comfort, Source method, bool needsProof = true) =>
        new(id, title, Trade.Mechanical, unit, sense, comfort, method, NeedsProof: needsProof);
}

using Trivet.Findings;

namespace Trivet.Protecting;

/// <summary>Why something about handling or guarding can not be, stays open or does not apply.</summary>
public static class ProtectReasons
{
    public static Reason NotPositive { get; } = new("protect.not-positive");
    public static Reason Negative { get; } = new("protect.negative");

    /// <summary>A lifting aid is planned, so nobody lifts by hand.</summary>
    public static Reason AidPlanned { get; } = new("protect.aid-planned");

    /// <summary>One person alone lifts below shoulder height; no aid is called for beyond what the lifting index says.</summary>
    public static Reason OnePerson { get; } = new("protect.one-person");
    /// <summary>Fewer than two lifts are done by hand.</summary>
    public static Reason OneLift { get; } = new("protect.one-lift");
    /// <summary>What keeps people out while a device is muted can not be computed.</summary>
    public static Reason MutingByPerson { get; } = new("protect.muting-by-person");
    public static Reason NoLifts { get; } = new("protect.no-lifts");
    public static Reason NoHanging { get; } = new("protect.no-hanging");
    public static Reason NoFences { get; } = new("protect.no-fences");
    public static Reason NoDevices { get; } = new("protect.no-devices");
    public static Reason NoGaps { get; } = new("protect.no-gaps");

    /// <summary>The formula on record covers resolutions up to 70 mm.</summary>
    public static Reason ResolutionNotCovered { get; } = new("protect.resolution-not-covered");

    /// <summary>The formula on record covers fields up to 1000 mm high.</summary>
    public static Reason FieldTooHigh { get; } = new("protect.field-too-high");

    /// <summary>The guard has no openings.</summary>
    public static Reason Closed { get; } = new("protect.closed");
    public static Reason OnTheFloor { get; } = new("protect.on-the-floor");
    public static Reason NoLength { get; } = new("protect.no-length");

    /// <summary>The guard states no energy that it stops.</summary>
    public static Reason NoImpact { get; } = new("protect.no-impact");

    /// <summary>A check waits until the parts it names are described.</summary>
    public static Reason WaitsFor { get; } = new("protect.waits-for");
}

using Trivet.Findings;

namespace Trivet.Gripping;

/// <summary>Why something about gripping can not be, stays open or does not apply.</summary>
public static class GripReasons
{
    public static Reason NotPositive { get; } = new("grip.not-positive");
    public static Reason Negative { get; } = new("grip.negative");

    /// <summary>A vacuum below ambient by all of the air or more.</summary>
    public static Reason DeeperThanNothing { get; } = new("grip.deeper-than-nothing");

    /// <summary>The smallest friction is above the largest.</summary>
    public static Reason FrictionTurned { get; } = new("grip.friction-turned");
    /// <summary>The hose is named, and its sizes are stated once more.</summary>
    public static Reason HoseTwice { get; } = new("grip.hose-twice");
    public static Reason NoSuchHose { get; } = new("grip.no-such-hose");
    public static Reason NoVacuum { get; } = new("grip.no-vacuum");
    public static Reason NoFingers { get; } = new("grip.no-fingers");
    public static Reason NoPart { get; } = new("grip.no-part");

    /// <summary>A check waits until the parts it names are described.</summary>
    public static Reason WaitsFor { get; } = new("grip.waits-for");

    /// <summary>The level is never reached, so there is no time until it is.</summary>
    public static Reason NeverReached { get; } = new("grip.never-reached");
    public static Reason NoBlowOff { get; } = new("grip.no-blow-off");
    public static Reason NoAir { get; } = new("grip.no-air");
}

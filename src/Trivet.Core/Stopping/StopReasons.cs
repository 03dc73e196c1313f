using Trivet.Findings;

namespace Trivet.Stopping;

/// <summary>Why something about stops and hazards stays open or does not apply.</summary>
public static class StopReasons
{
    public static Reason NoFunctions { get; } = new("stop.none");

    /// <summary>A channel names a signal that is not described.</summary>
    public static Reason NoSuchSignal { get; } = new("stop.no-such-signal");

    /// <summary>A function names a guard or a device that the guarding does not have.</summary>
    public static Reason NoSuchGuard { get; } = new("stop.no-such-guard");

    /// <summary>Times are not below zero, a frequency of failure is above.</summary>
    public static Reason Negative { get; } = new("stop.negative");

    /// <summary>It stops nothing, or keeps its torque.</summary>
    public static Reason KeepsTorque { get; } = new("stop.keeps-torque");

    /// <summary>A prop has to be set by somebody.</summary>
    public static Reason OnlyProp { get; } = new("stop.only-prop");

    /// <summary>A check waits until the parts it names are described.</summary>
    public static Reason WaitsFor { get; } = new("stop.waits-for");

    /// <summary>The description allows no sinking, so nothing can be held against it.</summary>
    public static Reason NoSink { get; } = new("stop.no-sink");

    public static Reason NoRate { get; } = new("stop.no-rate");

    /// <summary>Nothing is reset by hand.</summary>
    public static Reason NoReset { get; } = new("stop.no-reset");
}

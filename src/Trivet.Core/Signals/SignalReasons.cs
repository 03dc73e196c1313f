using Trivet.Findings;

namespace Trivet.Signals;

/// <summary>Why a check of inputs and outputs does not apply, or what can not be.</summary>
public static class SignalReasons
{
    public static Reason NoSignals { get; } = new("signals.none");
    /// <summary>Names the banks there are.</summary>
    public static Reason NoSuchBank { get; } = new("signals.no-such-bank");
    public static Reason NoSuchCable { get; } = new("signals.no-such-cable");
    public static Reason NoSuchSignal { get; } = new("signals.no-such-signal");
    public static Reason NoSuchModule { get; } = new("signals.no-such-module");
    public static Reason NotPositive { get; } = new("signals.not-positive");
    /// <summary>An index outside 1000h to FFFFh, or a sub-index outside 0 to 254.</summary>
    public static Reason NoSuchObject { get; } = new("signals.no-such-object");
    /// <summary>A bank without a channel, or with numbers beyond any module's.</summary>
    public static Reason NoChannels { get; } = new("signals.no-channels");
    /// <summary>The hard stop lies where the switch is.</summary>
    public static Reason StopAtSwitch { get; } = new("signals.stop-at-switch");
}

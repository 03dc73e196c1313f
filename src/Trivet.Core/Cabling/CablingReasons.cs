using Trivet.Findings;

namespace Trivet.Cabling;

/// <summary>Why a check of cables does not apply, or what can not be.</summary>
public static class CablingReasons
{
    public static Reason NoCables { get; } = new("cabling.no-cables");
    /// <summary>No cable says by its kind what it is for.</summary>
    public static Reason NotTyped { get; } = new("cabling.not-typed");
    public static Reason InWords { get; } = new("cabling.in-words");
    public static Reason NotRouted { get; } = new("cabling.not-routed");
    public static Reason WithinCabinet { get; } = new("cabling.within-cabinet");
    /// <summary>Names the ways there are.</summary>
    public static Reason NoSuchWay { get; } = new("cabling.no-such-way");
    public static Reason NotPositive { get; } = new("cabling.not-positive");
    /// <summary>A loop's cables lead to nothing that moves with the platform.</summary>
    public static Reason LoopToNowhere { get; } = new("cabling.loop-to-nowhere");
}

using Trivet.Findings;

namespace Trivet.Adapters;

/// <summary>What a plate or a mounting face can not be, and why a check of it does not apply.</summary>
public static class AdapterReasons
{
    /// <summary>Neither an interface of the cell nor a designation that is known; names the interfaces there are.</summary>
    public static Reason NoSuchInterface { get; } = new("adapter.no-such-interface");

    public static Reason NoSuchStandard { get; } = new("adapter.no-such-standard");
    public static Reason NoSuchThread { get; } = new("adapter.no-such-thread");
    public static Reason NotPositive { get; } = new("adapter.not-positive");
    public static Reason NoPlates { get; } = new("adapter.no-plates");
    public static Reason OneOrTwoPieces { get; } = new("adapter.one-or-two-pieces");

    /// <summary>Not even a stack of two could be found between the two faces.</summary>
    public static Reason NoStack { get; } = new("adapter.no-stack");
}

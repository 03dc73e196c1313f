using Trivet.Findings;

namespace Trivet.Tooling;

/// <summary>What a part of the tool can not be, and why a check of it does not apply.</summary>
public static class ToolReasons
{
    public static Reason Negative { get; } = new("tool.negative");
    public static Reason NotPositive { get; } = new("tool.not-positive");

    /// <summary>A hollow body's inner diameter reaches its outer one.</summary>
    public static Reason InnerTooLarge { get; } = new("tool.inner-too-large");

    /// <summary>Of three moments of inertia none exceeds the sum of the other two, and products are bounded by them.</summary>
    public static Reason NotAnInertia { get; } = new("tool.not-an-inertia");

    /// <summary>A mesh file is named but nothing was read from it.</summary>
    public static Reason MeshNotRead { get; } = new("tool.mesh-not-read");

    public static Reason NoParts { get; } = new("tool.no-parts");
    public static Reason NoLimit { get; } = new("tool.no-limit");
    public static Reason NoHeights { get; } = new("tool.no-heights");

    /// <summary>Inertia is not known of the parts it names.</summary>
    public static Reason InertiaUnknown { get; } = new("tool.inertia-unknown");
    public static Reason NoRotaryPart { get; } = new("tool.no-rotary-part");

    /// <summary>A check waits until the parts it names are described.</summary>
    public static Reason WaitsFor { get; } = new("tool.waits-for");
}

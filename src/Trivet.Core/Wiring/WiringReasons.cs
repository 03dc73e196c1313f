using Trivet.Findings;

namespace Trivet.Wiring;

/// <summary>Why a check of addresses or bus does not apply, or what can not be.</summary>
public static class WiringReasons
{
    public static Reason NoModules { get; } = new("wiring.no-modules");
    public static Reason NoClasses { get; } = new("wiring.no-classes");
    /// <summary>What is said of the bus is known for CAN only.</summary>
    public static Reason OtherBus { get; } = new("wiring.other-bus");
    public static Reason NoMessages { get; } = new("wiring.no-messages");
    public static Reason EightBytes { get; } = new("wiring.eight-bytes");
    public static Reason NotHexadecimal { get; } = new("wiring.not-hexadecimal");
    public static Reason IdentifierTooLarge { get; } = new("wiring.identifier-too-large");
    /// <summary>Another message has the identifier: two senders would destroy each other's frames.</summary>
    public static Reason SameIdentifier { get; } = new("wiring.same-identifier");
    /// <summary>The data are not as many bytes as stated.</summary>
    public static Reason NotTheBytes { get; } = new("wiring.not-the-bytes");
    public static Reason NotPositive { get; } = new("wiring.not-positive");
    public static Reason Positions { get; } = new("wiring.positions");
    public static Reason TooFast { get; } = new("wiring.too-fast");
    /// <summary>Names the modules there are.</summary>
    public static Reason NoSuchModule { get; } = new("wiring.no-such-module");
    /// <summary>Names the classes there are.</summary>
    public static Reason NoSuchClass { get; } = new("wiring.no-such-class");
    /// <summary>A stride that does not lead from the first address to the last.</summary>
    public static Reason EmptyClass { get; } = new("wiring.empty-class");
}

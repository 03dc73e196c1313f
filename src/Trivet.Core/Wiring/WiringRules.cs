using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Wiring;

/// <summary>The rules by which addresses and bus of a cabinet are judged.</summary>
public static class WiringRules
{
    /// <summary>Classes of addresses and the bus are described as far as a check needs. Appears only while they are not.</summary>
    public static Rule Described { get; } = Of("wiring.described", "Addresses and bus are described and do not contradict themselves", "1", Sense.AtLeast, 0);

    /// <summary>No two modules of one range have one address.</summary>
    public static Rule Unique { get; } = Of("wiring.address-unique", "The address is given once", "1", Sense.AtLeast, 0);

    /// <summary>The protocol allows the address.</summary>
    public static Rule Legal { get; } = new(
        "wiring.address-legal", "The bus allows the address", Trade.Electrical, "1", Sense.AtLeast, 0, new(SourceKind.FromMemory, "CiA301", "node identifiers"));

    /// <summary>The address is one of its class, at the place that the class asks for.</summary>
    public static Rule InClass { get; } = Of("wiring.address-class", "The address is that of its class and place", "1", Sense.AtLeast, 0);

    /// <summary>The switches can show the address.</summary>
    public static Rule Switches { get; } = Of("wiring.address-switches", "The switches can show the address", "1", Sense.AtLeast, 0);

    /// <summary>No two classes of one range can come to need the same address.</summary>
    public static Rule Classes { get; } = Of("wiring.address-classes", "Classes keep their addresses apart", "1", Sense.AtLeast, 0);

    /// <summary>Value: length of the bus, metres.</summary>
    public static Rule BusLength { get; } = new(
        "wiring.bus-length", "The bus is short enough for its bit rate", Trade.Electrical, "m", Sense.AtMost, 0.1, new(SourceKind.FromMemory, "CiA301", "bit rates and bus length"));

    /// <summary>Value: length of the longest branch, metres.</summary>
    public static Rule Stub { get; } = Of("wiring.bus-stub", "Branches of the bus are short enough", "m", Sense.AtMost, 0.1);

    /// <summary>Exactly two terminating resistors.</summary>
    public static Rule Terminators { get; } = new(
        "wiring.bus-terminators", "The bus is terminated at both ends", Trade.Electrical, "1", Sense.AtLeast, 0, new(SourceKind.FromMemory, "ISO11898-2", "termination"));

    /// <summary>Value: share of its time that the bus is busy, every frame as long as stuffing can make it.</summary>
    public static Rule Load { get; } = new(
        "wiring.bus-load", "The bus has room for its messages", Trade.Electrical, "1", Sense.AtMost, 0.1, new(SourceKind.Literature, "DavisBurns2007", "equation for the frame length"));

    public static ImmutableArray<Rule> Rules { get; } = [Described, Unique, Legal, InClass, Switches, Classes, BusLength, Stub, Terminators, Load];

    private static Rule Of(string id, string title, string unit, Sense sense, double comfort) =>
        new(id, title, Trade.Electrical, unit, sense, comfort, new(SourceKind.CommonPractice, ""));
}

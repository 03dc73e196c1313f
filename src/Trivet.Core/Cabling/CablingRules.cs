using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Cabling;

/// <summary>The rules by which cables and their ways are judged.</summary>
public static class CablingRules
{
    /// <summary>Cables and ways do not contradict themselves. Appears only while they do.</summary>
    public static Rule Described { get; } = Of("cable.described", "Cables and ways are described and do not contradict themselves", "1", Sense.AtLeast, 0);

    /// <summary>Value: length stated, metres. Limit: what the route needs.</summary>
    public static Rule Length { get; } = Of("cable.length", "The cable is long enough for its route", "m", Sense.AtLeast, 0.02);

    /// <summary>Value: volts lost on the cable.</summary>
    public static Rule Drop { get; } = new(
        "cable.drop", "The cable loses little enough voltage", Trade.Electrical, "V", Sense.AtMost, 0.1, new(SourceKind.FromMemory, "IEC-60228", "resistance of class 5, at 70 °C"));

    /// <summary>Value: length over which a way of signals runs beside power, metres.</summary>
    public static Rule SideBySide { get; } = Of("cable.side-by-side", "Signals do not run beside power", "m", Sense.AtMost, 0.1);

    /// <summary>Value: smallest angle at which a way of signals crosses one of power, radians.</summary>
    public static Rule Crossing { get; } = Of("cable.crossing", "Signals cross power squarely", "rad", Sense.AtLeast, 0);

    /// <summary>Value: share of a way's inside that is filled.</summary>
    public static Rule Fill { get; } = Of("cable.fill", "The way is not too full", "1", Sense.AtMost, 0.1);

    /// <summary>Value: radius to which a way bends cables, metres.</summary>
    public static Rule Bend { get; } = Of("cable.bend", "No cable is bent too sharply", "m", Sense.AtLeast, 0.1);

    /// <summary>Value: length of a loop, metres. Limit: the farthest distance of its ends, and a reserve.</summary>
    public static Rule LoopLength { get; } = Of("cable.loop-length", "The loop at the platform is never pulled tight", "m", Sense.AtLeast, 0.05);

    /// <summary>Value: radius of the roundest curve that the loop can take where its ends are nearest, metres.</summary>
    public static Rule LoopBend { get; } = new(
        "cable.loop-bend", "The loop at the platform is not bent too sharply", Trade.Electrical, "m", Sense.AtLeast, 0.5, new(SourceKind.Derived, "", "docs/cables.md"));

    /// <summary>What needs a shield has one, clamped where it must be.</summary>
    public static Rule Bonding { get; } = Of("cable.bonding", "The shield is there and bonded", "1", Sense.AtLeast, 0);

    /// <summary>Cables whose connectors fit each other's sockets are marked apart.</summary>
    public static Rule Swap { get; } = Of("cable.swap", "Plugs that fit each other are marked apart", "1", Sense.AtLeast, 0);

    /// <summary>A plug goes into the socket of its module, alone.</summary>
    public static Rule Socket { get; } = Of("cable.socket", "The plug fits the socket of its module", "1", Sense.AtLeast, 0);

    /// <summary>No two cables have one label.</summary>
    public static Rule Label { get; } = Of("cable.label", "Each label is given once", "1", Sense.AtLeast, 0);

    /// <summary>Cores lie on the contacts that sensors have.</summary>
    public static Rule Pinning { get; } = new(
        "cable.pinning", "Cores lie on the contacts of a sensor", Trade.Electrical, "1", Sense.AtLeast, 0, new(SourceKind.FromMemory, "IEC-60947-5-2", "annex D"));

    public static ImmutableArray<Rule> Rules { get; } = [Described, Length, Drop, SideBySide, Crossing, Fill, Bend, LoopLength, LoopBend, Bonding, Swap, Socket, Label, Pinning];

    private static Rule Of(string id, string title, string unit, Sense sense, double comfort) =>
        new(id, title, Trade.Electrical, unit, sense, comfort, new(SourceKind.CommonPractice, ""));
}

using Trivet.Findings;

namespace Trivet.Stopping;

/// <summary>Why something about the hazard register stays open.</summary>
public static class HazardReasons
{
    public static Reason Sinking { get; } = new("hazard.sinking");
    public static Reason Crushing { get; } = new("hazard.crushing");
    public static Reason UnexpectedStart { get; } = new("hazard.unexpected-start");
    public static Reason ThrownPart { get; } = new("hazard.thrown-part");
    public static Reason DroppedPart { get; } = new("hazard.dropped-part");
    public static Reason RodOff { get; } = new("hazard.rod-off");
    public static Reason DrawingIn { get; } = new("hazard.drawing-in");
    public static Reason Capacitors { get; } = new("hazard.capacitors");
    public static Reason CompressedAir { get; } = new("hazard.compressed-air");
    public static Reason Lifting { get; } = new("hazard.lifting");
    public static Reason ElectricShock { get; } = new("hazard.electric-shock");
    public static Reason HotSurfaces { get; } = new("hazard.hot-surfaces");

    /// <summary>Names a hazard that is not proposed.</summary>
    public static Reason NoSuchProposal { get; } = new("hazard.no-such-proposal");
}

using Trivet.Findings;

namespace Trivet.Reach;

/// <summary>Why a check of reach or homing stays open or does not apply, and what a station can not be.</summary>
public static class ReachReasons
{
    public static Reason NoFrame { get; } = new("reach.no-frame");
    public static Reason NoWalls { get; } = new("reach.no-walls");
    public static Reason NoRotary { get; } = new("reach.no-rotary");
    public static Reason NoLinearAxis { get; } = new("reach.no-linear-axis");
    public static Reason ThreeChains { get; } = new("reach.three-chains");

    /// <summary>A check waits until the parts it names are described.</summary>
    public static Reason WaitsFor { get; } = new("reach.waits-for");

    /// <summary>A rod does not reach somewhere in the volume, so other quantities have no value there.</summary>
    public static Reason NotReached { get; } = new("reach.not-reached");

    public static Reason HomedAlone { get; } = new("reach.homed-alone");
    public static Reason HomedTogether { get; } = new("reach.homed-together");

    public static Reason SizeNegative { get; } = new("reach.size-negative");
    public static Reason NoPocket { get; } = new("reach.no-pocket");
    public static Reason AnglesEndBeforeTheyBegin { get; } = new("reach.angles-end-before-they-begin");
}

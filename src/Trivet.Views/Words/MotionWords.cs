using System.Collections.Immutable;
using Trivet.Motion;

namespace Trivet.Views.Words;

/// <summary>Texts of the motion sheet, its drawings and charts.</summary>
public sealed record MotionWords
{
    /// <summary>In the order of <see cref="TimingLaw"/>.</summary>
    public required ImmutableArray<string> Laws { get; init; }
    /// <summary>What each law is, in one sentence.</summary>
    public required ImmutableArray<string> LawNotes { get; init; }
    /// <summary>In the order of <see cref="CyclePart"/>.</summary>
    public required ImmutableArray<string> Parts { get; init; }
    /// <summary>In the order of <see cref="LimitKind"/>.</summary>
    public required ImmutableArray<string> Limits { get; init; }

    /// <summary>In the order of <see cref="Cells.ProfileKind"/> and <see cref="Cells.ProfileAlong"/>.</summary>
    public required ImmutableArray<string> Profiles { get; init; }
    public required ImmutableArray<string> Alongs { get; init; }
    // {profile} {along} {limit} {axis} {share}
    public required string Variant { get; init; }
    public required string VariantsTitle { get; init; }
    public required string VariantsNote { get; init; }
    public required string HeadVariant { get; init; }
    public required string HeadLeaves { get; init; }
    public required string HeadMostUsed { get; init; }
    public required string UseOf { get; init; }
    public required string IsStated { get; init; }

    /// <summary>How a cycle's settling time is known, in the order of <see cref="Assessment.WaitKnown"/>.</summary>
    // {wait} {needed}
    public required ImmutableArray<string> WaitNotes { get; init; }
    public required string WaitNeeded { get; init; }

    // {gap} {share} {limit} {axis} {voltage} {rate}
    public required string Gap { get; init; }
    public required string GapUnknown { get; init; }
    public required string HeldBack { get; init; }
    public required string HeldBackBy { get; init; }
    public required string HeadLaw { get; init; }
    public required string HeadLoaded { get; init; }
    public required string HeadEmpty { get; init; }
    public required string HeadWaits { get; init; }
    public required string HeadCycle { get; init; }
    public required string HeadRate { get; init; }
    public required string HeadPeak { get; init; }
    public required string LawChart { get; init; }
    public required string Speeds { get; init; }
    public required string PeakGuide { get; init; }

    public required string Time { get; init; }
    public required string CycleTime { get; init; }
    public required string Tool { get; init; }
    public required string ToolSpeed { get; init; }
    public required string ToolAcceleration { get; init; }
    public required string Position { get; init; }
    public required string Speed { get; init; }
    public required string Acceleration { get; init; }
    public required string Force { get; init; }
    public required string Torque { get; init; }
    public required string Voltage { get; init; }
    public required string Supply { get; init; }
    public required string LowestAllowed { get; init; }
    public required string HighestAllowed { get; init; }
    public required string Power { get; init; }
    /// <summary>Base frame, of the robot on its mount.</summary>
    public required string MountForce { get; init; }
    /// <summary>About the base frame's origin.</summary>
    public required string MountMoment { get; init; }
    public required string Drives { get; init; }
    public required string Cloud { get; init; }
    public required string ShaftSpeed { get; init; }
    public required string ShaftTorque { get; init; }
    public required string CurveAt { get; init; }
    public required string CurveNow { get; init; }
    public required string Moves { get; init; }
    public required string WarmingTitle { get; init; }
    public required string NoShift { get; init; }
    public required string StateShift { get; init; }
    public required string Warming { get; init; }
    public required string Temperature { get; init; }
    public required string TimeOfShift { get; init; }
    public required string EndOfShift { get; init; }
    /// <summary>{motor}</summary>
    public required string LargestOf { get; init; }
    public required CycleWords Cycle { get; init; }
}

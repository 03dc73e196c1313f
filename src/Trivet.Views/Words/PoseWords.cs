using System.Collections.Immutable;
using Trivet.Kinematics;

namespace Trivet.Views.Words;

/// <summary>Texts about one pose.</summary>
public sealed record PoseWords
{
    public required string Place { get; init; }
    public required string AsShown { get; init; }
    // {own} {shown} {axis} {chain} {x} {y} {z} {place} {chains}
    public required string ReadingShown { get; init; }
    public required string Coordinates { get; init; }
    public required string WithinTravel { get; init; }
    public required string Yes { get; init; }
    public required string BeyondStop { get; init; }
    public required string RodDoesNotReach { get; init; }
    public required string OffPlane { get; init; }
    public required string NotDetermined { get; init; }
    public required string RodsDoNotMeet { get; init; }
    public required string Condition { get; init; }
    public required string Serial { get; init; }
    public required string Parallel { get; init; }
    public required string SwingOf { get; init; }
    public required string BetweenRods { get; init; }
    public required string PerStep { get; init; }
    /// <summary>In the order of <see cref="ChainMode"/>.</summary>
    public required ImmutableArray<string> ChainModes { get; init; }
    public required string PlatformBelow { get; init; }
    public required string PlatformAbove { get; init; }
    public required string PlatformStands { get; init; }
    public required string Chosen { get; init; }
    public required string ChosenHanging { get; init; }
    public required string ChosenBeyond { get; init; }
    public required string WhyNoReach { get; init; }
    public required string WhyOffPlane { get; init; }
    public required string WhyNotMeeting { get; init; }
    public required string WhySerial { get; init; }
    public required string WhyParallel { get; init; }
}

using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Texts about supplies, branches and wires.</summary>
public sealed record PowerWords
{
    public required string Budget { get; init; }
    public required string Sources { get; init; }
    public required string HeadSource { get; init; }
    public required string HeadVoltage { get; init; }
    public required string HeadGives { get; init; }
    public required string HeadDrawn { get; init; }
    public required string HeadReserve { get; init; }
    public required string HeadPeak { get; init; }
    public required string HeadPeakBorne { get; init; }
    public required string Consumers { get; init; }
    public required string HeadConsumer { get; init; }
    public required string HeadBranch { get; init; }
    public required string HeadPurpose { get; init; }
    public required string HeadCount { get; init; }
    public required string HeadSteady { get; init; }
    public required string HeadFor { get; init; }
    public required string HeadTogether { get; init; }
    public required string HeadBackedUp { get; init; }
    public required string HeadThere { get; init; }
    /// <summary>In the order of <see cref="Cells.LoadPurpose"/>.</summary>
    public required ImmutableArray<string> Purposes { get; init; }
    public required string Yes { get; init; }
    public required string No { get; init; }
    public required string Branches { get; init; }
    public required string BranchTable { get; init; }
    public required string HeadProtection { get; init; }
    public required string HeadRating { get; init; }
    public required string HeadLoad { get; init; }
    public required string HeadWire { get; init; }
    public required string HeadBears { get; init; }
    public required string HeadWeakest { get; init; }
    public required string HeadShort { get; init; }
    public required string HeadTrips { get; init; }
    /// <summary>In the order of <see cref="Cells.Protection"/>.</summary>
    public required ImmutableArray<string> Protections { get; init; }
    public required string OwnWire { get; init; }
    public required string InrushTable { get; init; }
    public required string HeadSupplies { get; init; }
    public required string HeadSurge { get; init; }
    public required string HeadPasses { get; init; }
    public required string HeadMost { get; init; }
    public required ImmutableArray<string> Cautions { get; init; }
    public required string Motors { get; init; }
    public required string Cycles { get; init; }
    public required string HeadCycle { get; init; }
    public required string HeadMean { get; init; }
    public required string HeadMotorPeak { get; init; }
    public required string HeadMoment { get; init; }
    public required string HeadEnergy { get; init; }
    public required string HeadFalling { get; init; }
    public required string HeadStopTime { get; init; }
    public required string HeadStopPeak { get; init; }
    public required string HeadBefore { get; init; }
    public required string HeadReached { get; init; }
    public required string HeadStored { get; init; }
    public required string HeadBurnt { get; init; }
    public required string Stops { get; init; }
    public required string Continuous { get; init; }
    /// <summary>{power} {wanted}</summary>
    public required string ContinuousOf { get; init; }
    public required string Ohms { get; init; }
    /// <summary>{ohms} {least} {most}</summary>
    public required string OhmsOf { get; init; }
    public required string OhmsOpen { get; init; }
    public required string StopsPerHour { get; init; }
    public required string Alone { get; init; }
    public required ImmutableArray<string> MotorCautions { get; init; }
}

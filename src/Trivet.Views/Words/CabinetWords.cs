using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Texts about the stack of modules and its enclosure.</summary>
public sealed record CabinetWords
{
    public required string Stack { get; init; }
    public required string RailRules { get; init; }
    public required string HeadRule { get; init; }
    public required string HeadVerdict { get; init; }
    /// <summary>In the order of <see cref="Cells.RailRuleKind"/>: {of} {to} {count} {gap}.</summary>
    public required ImmutableArray<string> Rules { get; init; }
    public required string AnyNeighbour { get; init; }
    public required string Kept { get; init; }
    /// <summary>{modules}</summary>
    public required string Broken { get; init; }
    public required string NobodyMeant { get; init; }
    public required string RailTaken { get; init; }
    /// <summary>{length} {limit}</summary>
    public required string RailOf { get; init; }
    public required string Moves { get; init; }
    public required string NoMoves { get; init; }
    /// <summary>{modules}</summary>
    public required string MovesOf { get; init; }
    public required string NoOrder { get; init; }
    public required string Heat { get; init; }
    public required string HeatByModule { get; init; }
    public required string HeadModule { get; init; }
    public required string HeadAtRest { get; init; }
    public required string HeadAtLoad { get; init; }
    public required string HeadBears { get; init; }
    public required string HeadDischarge { get; init; }
    public required string HeadFan { get; init; }
    public required string Fan { get; init; }
    public required string AtRest { get; init; }
    public required string AtLoad { get; init; }
    public required string Surface { get; init; }
    public required string Walls { get; init; }
    public required string Gain { get; init; }
    public required string Cooler { get; init; }
    public required string FanCarries { get; init; }
    public required string Inside { get; init; }
    /// <summary>{temperature} {limit} {module}</summary>
    public required string InsideOf { get; init; }
    public required string FlowWanted { get; init; }
    public required string WallsAlone { get; init; }
    public required string NoFlow { get; init; }
    public required string Standby { get; init; }
    /// <summary>{energy} {hours}</summary>
    public required string StandbyOf { get; init; }
    public required string Discharge { get; init; }
    /// <summary>{time} {module}</summary>
    public required string DischargeOf { get; init; }
    public required ImmutableArray<string> HeatCautions { get; init; }
    public required ImmutableArray<string> DischargeCautions { get; init; }
}

using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Texts about cables, inputs and outputs.</summary>
public sealed record CablingWords
{
    public required string Cables { get; init; }
    public required string Ways { get; init; }
    public required string Connectors { get; init; }
    public required string Swaps { get; init; }
    public required string Signals { get; init; }
    public required string Terminals { get; init; }
    public required string Switches { get; init; }
    public required ImmutableArray<string> CableCautions { get; init; }
    public required ImmutableArray<string> SignalCautions { get; init; }
    /// <summary>In the order of <see cref="Cells.CableKind"/>.</summary>
    public required ImmutableArray<string> Kinds { get; init; }
    /// <summary>In the order of <see cref="Cells.CableWayKind"/>.</summary>
    public required ImmutableArray<string> WayKinds { get; init; }
    /// <summary>In the order of <see cref="Cells.ContactGender"/>.</summary>
    public required ImmutableArray<string> Genders { get; init; }
    /// <summary>In the order of <see cref="Cells.SignalDirection"/>.</summary>
    public required ImmutableArray<string> Directions { get; init; }
    /// <summary>In the order of <see cref="Cells.InputType"/>.</summary>
    public required ImmutableArray<string> InputTypes { get; init; }
    /// <summary>In the order of <see cref="Cells.ContactKind"/>.</summary>
    public required ImmutableArray<string> Contacts { get; init; }
    public required string Both { get; init; }
    public required string None { get; init; }
    public required string On { get; init; }
    public required string Off { get; init; }
    public required string HeadLabel { get; init; }
    public required string HeadName { get; init; }
    public required string HeadKind { get; init; }
    public required string HeadAxis { get; init; }
    public required string HeadFrom { get; init; }
    public required string HeadTo { get; init; }
    public required string HeadType { get; init; }
    public required string HeadShield { get; init; }
    public required string HeadLength { get; init; }
    public required string HeadNeeded { get; init; }
    public required string HeadDrop { get; init; }
    public required string HeadRoute { get; init; }
    public required string HeadMark { get; init; }
    public required string Installation { get; init; }
    public required string HeadCut { get; init; }
    public required string HeadFitted { get; init; }
    public required string HeadInstalledBy { get; init; }
    public required string HeadInstalledOn { get; init; }
    public required string HeadFilter { get; init; }
    public required string HeadObject { get; init; }
    public required string HeadWay { get; init; }
    public required string HeadFill { get; init; }
    public required string HeadBend { get; init; }
    public required string HeadHolds { get; init; }
    public required string HeadEnd { get; init; }
    public required string HeadPlace { get; init; }
    public required string HeadSocket { get; init; }
    public required string HeadConnector { get; init; }
    public required string HeadContact { get; init; }
    public required string HeadColour { get; init; }
    public required string HeadFunction { get; init; }
    public required string HeadFarContact { get; init; }
    public required string HeadNotWith { get; init; }
    public required string HeadTerminal { get; init; }
    public required string HeadPlanned { get; init; }
    public required string HeadDirection { get; init; }
    public required string HeadDevice { get; init; }
    public required string HeadCable { get; init; }
    public required string HeadSwitching { get; init; }
    public required string HeadContactKind { get; init; }
    public required string HeadRest { get; init; }
    public required string HeadActed { get; init; }
    public required string HeadSafe { get; init; }
    public required string HeadLoad { get; init; }
    public required string HeadModule { get; init; }
    public required string HeadSignal { get; init; }
    public required string HeadAt { get; init; }
    public required string HeadStop { get; init; }
    public required string HeadStopNeeded { get; init; }
    public required string HeadBest { get; init; }
    public required string Free { get; init; }
    public required string Cabinet { get; init; }
    public required string Diagram { get; init; }
    /// <summary>{cell}</summary>
    public required string DiagramDescription { get; init; }
    public required string Outside { get; init; }
    /// <summary>{labels}</summary>
    public required string NotWith { get; init; }
    /// <summary>{cell}</summary>
    public required string LabelSheet { get; init; }
    /// <summary>{cell}</summary>
    public required string Schedule { get; init; }
    /// <summary>{page} {pages}</summary>
    public required string PageOf { get; init; }
    public required string FrontMark { get; init; }
    public required string FrontOf { get; init; }
    public required string RailSticker { get; init; }
    public required string ArmSticker { get; init; }
    public required string MotorSticker { get; init; }
    public required string RodSticker { get; init; }
    public required string AllAxes { get; init; }
    public required string Downloads { get; init; }
    public required string TakeList { get; init; }
    public required string TakeChanges { get; init; }
    public required string Discard { get; init; }
    public required string NothingChanged { get; init; }
    public required string HeadField { get; init; }
    public required string HeadBefore { get; init; }
    public required string HeadAfter { get; init; }
    public required string Edited { get; init; }
    /// <summary>{count}</summary>
    public required string ChannelChanges { get; init; }
    public required string TakeChannels { get; init; }
    public required string Kept { get; init; }
    public required string Unknown { get; init; }
    public required string TooLarge { get; init; }
    /// <summary>{labels}</summary>
    public required string LabelsShortened { get; init; }
    public required string WhichList { get; init; }
}

using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Views.Words;

/// <summary>
/// Every text that Trivet makes for findings, tables and drawings, in one language. A language is one file with one value of
/// this record; a text left out does not compile. Words in braces are filled in by <see cref="Sentences"/>.
/// </summary>
public sealed record Language
{
    /// <summary>BCP 47 tag: <c>en</c>.</summary>
    public required string Tag { get; init; }

    /// <summary>The verdicts in the order of <see cref="Verdict"/>.</summary>
    public required ImmutableArray<string> Verdicts { get; init; }
    /// <summary>Reasons why a finding is open, in the order of <see cref="OpenReason"/>.</summary>
    public required ImmutableArray<string> OpenReasons { get; init; }
    /// <summary>Whole sentences by the id of a <see cref="Reason"/>; <c>{fields}</c> are the fields it names.</summary>
    public required ImmutableDictionary<string, string> Reasons { get; init; }
    /// <summary>How a value is known, in the order of <see cref="Assurance"/>.</summary>
    public required ImmutableArray<string> Assurances { get; init; }
    /// <summary>What people read about each rule, by rule id; where there is none, the rule's own title is used.</summary>
    public required ImmutableDictionary<string, RuleText> Rules { get; init; }
    public required RulePageWords RulePages { get; init; }
    /// <summary>Words for the cases within a subject that are no chain: what a clearance is measured to.</summary>
    public required ImmutableDictionary<string, string> Cases { get; init; }
    /// <summary>Words for fields and sections whose name alone, taken apart at its capitals, would not read well.</summary>
    public required ImmutableDictionary<string, string> FieldWords { get; init; }

    // Findings. {what} {value} {limit} {margin} {bound} {reason} {fields} {detail}
    public required string AtMost { get; init; }
    public required string AtLeast { get; init; }
    public required string Within { get; init; }
    public required string Judged { get; init; }
    public required string FallsShortBy { get; init; }
    public required string TightBy { get; init; }
    public required string TightByUncertainty { get; init; }
    public required string HoldsBy { get; init; }
    public required string OpenOnlySampled { get; init; }
    public required string OpenBoundAtMost { get; init; }
    public required string OpenBoundAtLeast { get; init; }
    public required string OpenBoundWithin { get; init; }
    public required string NotANumber { get; init; }
    public required string WithUncertainty { get; init; }
    /// <summary>What is told beside a value, by the id of an <see cref="Aside"/>: {value}.</summary>
    public required ImmutableDictionary<string, string> Asides { get; init; }
    public required string YesNoGood { get; init; }
    /// <summary>Passed, of a rule that never says more than tight.</summary>
    public required string YesNoTight { get; init; }
    public required string YesNoBad { get; init; }
    public required string OpenMissing { get; init; }
    public required string OpenOther { get; init; }
    public required string OpenOtherNoDetail { get; init; }

    // Subjects. {subject} {field} {of} {case}
    public required string WhatAt { get; init; }
    public required string WhatOf { get; init; }
    public required string WhatCase { get; init; }
    public required string ChainCase { get; init; }
    public required string MotorCase { get; init; }
    public required string DriveCase { get; init; }
    public required string FieldOf { get; init; }
    public required string And { get; init; }
    public required string WorstAt { get; init; }

    // Advice. {field} {from} {to} {margin} {elsewhere}
    public required string AdviceChange { get; init; }
    public required string AdviceState { get; init; }
    public required string AdviceMargin { get; init; }
    public required string AdviceElsewhere { get; init; }

    // Sources. {key} {place} {field}
    public required string SourceStandard { get; init; }
    public required string SourceLiterature { get; init; }
    public required string SourceDerived { get; init; }
    public required string SourceCell { get; init; }
    public required string SourceCommonPractice { get; init; }
    public required string SourceFromMemory { get; init; }

    // Tables
    public required string Summary { get; init; }
    public required string SummaryWorst { get; init; }
    public required string SummaryNothing { get; init; }
    public required string PreviewNote { get; init; }
    public required string HeadVerdict { get; init; }
    public required string HeadRule { get; init; }
    public required string HeadSubject { get; init; }
    public required string HeadValue { get; init; }
    public required string HeadLimit { get; init; }
    public required string HeadMargin { get; init; }
    public required string HeadAdvice { get; init; }
    public required string HeadReason { get; init; }
    public required string CoverageTitle { get; init; }
    public required string UnnamedCell { get; init; }

    public required DrawingWords Drawing { get; init; }
    public required MotionWords Motion { get; init; }
    public required PartsWords Parts { get; init; }
    public required AccessWords Access { get; init; }
    public required ToolWords Tool { get; init; }
    public required FallWords Falls { get; init; }
    public required PlateWords Plate { get; init; }
    public required WiringWords Wiring { get; init; }
    public required PictureWords Picture { get; init; }
    public required CablingWords Cabling { get; init; }
    public required CabinetWords Cabinet { get; init; }
    public required PowerWords Power { get; init; }
    public required SettingWords Setting { get; init; }
    public required StoppingWords Stopping { get; init; }
    public required ReachWords Reach { get; init; }
    public required PoseWords Pose { get; init; }
    public required FrameWords Frame { get; init; }
    public required JointWords Joint { get; init; }
}

/// <summary>Texts of drawings, sheets and charts.</summary>
public sealed record DrawingWords
{
    // {cell} {z}
    public required string Plan { get; init; }
    public required string Elevation { get; init; }
    public required string TravelSheet { get; init; }
    public required string DexteritySheet { get; init; }
    public required string PlanSeen { get; init; }
    public required string ElevationSeen { get; init; }
    public required string PlaneSeen { get; init; }
    public required string OwnPlaneSeen { get; init; }
    public required string PlanDescription { get; init; }
    public required string ElevationDescription { get; init; }
    public required string PlaneDescription { get; init; }
    public required string OwnPlaneDescription { get; init; }
    public required string Millimetres { get; init; }
    public required string Scale { get; init; }
    public required string View { get; init; }
    public required string Dimensions { get; init; }
    public required string State { get; init; }
    public required string StateProved { get; init; }
    public required string StatePreview { get; init; }
    public required string Stations { get; init; }
    public required string Station { get; init; }
    public required string NotPlaced { get; init; }
    public required string More { get; init; }
    public required string Mount { get; init; }
    public required string Robot { get; init; }
    public required string RailDelta { get; init; }
    public required string CrankDelta { get; init; }
    public required string Chains { get; init; }
    public required string Rod { get; init; }
    public required string UpperArm { get; init; }
    public required string PlatformRadius { get; init; }
    public required string BaseRadius { get; init; }
    public required string Travel { get; init; }
    public required string ToolLength { get; init; }
    public required string Yaw { get; init; }
    public required string Differs { get; init; }
    public required string NestLine { get; init; }
    public required string TrayLine { get; init; }
    public required string BeltLine { get; init; }
    public required string Marked { get; init; }
    public required string Worst { get; init; }
    public required string Chain { get; init; }
    public required string ReachOutline { get; init; }
    public required string ReachThroughBase { get; init; }
    public required string ReachOutlineLimited { get; init; }
    public required string ReachThroughBaseLimited { get; init; }
    public required string ReachByTravel { get; init; }
    public required string ReachByLimits { get; init; }
    public required string ReachToggle { get; init; }
    public required string ReachLimitsNote { get; init; }
    public required string Floor { get; init; }
    public required string ToolPoint { get; init; }
    public required string FrameTop { get; init; }
    public required string NothingToDraw { get; init; }
    public required string NothingReached { get; init; }
    public required string LegendTravel { get; init; }
    public required string LegendDexterity { get; init; }
    public required string LegendLimit { get; init; }
    public required string LegendReach { get; init; }
    public required string TradeTitle { get; init; }
    public required string TradeHeight { get; init; }
    public required string TradeMargin { get; init; }
    public required string TradeWorst { get; init; }
    public required string TradeNow { get; init; }
    public required string TradeBest { get; init; }
}

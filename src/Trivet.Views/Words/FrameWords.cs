using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Words of the frame's sheet.</summary>
public sealed record FrameWords
{
    public required string Modes { get; init; }
    public required string Mode { get; init; }
    public required string BandKnown { get; init; }
    public required string Standing { get; init; }
    public required string Mass { get; init; }
    public required string MassKnown { get; init; }
    public required string Joints { get; init; }
    public required string JointsStated { get; init; }
    public required string JointsNarrowed { get; init; }
    public required string Damping { get; init; }
    public required string Sag { get; init; }
    public required string Tilt { get; init; }
    public required string SampledKnown { get; init; }
    public required ImmutableArray<string> Give { get; init; }
    public required string ExactKnown { get; init; }
    public required string Measured { get; init; }
    public required string MeasuredAgrees { get; init; }
    public required string MeasuredNot { get; init; }
    public required string Wait { get; init; }
    public required string WaitKnown { get; init; }
    public required string Residual { get; init; }
    public required string ResidualKnown { get; init; }
    public required string FootLargest { get; init; }
    public required string FootSmallest { get; init; }
    public required string FootKnown { get; init; }
    public required string FootMoment { get; init; }
    public required string FootMomentKnown { get; init; }
    public required string AnchorPull { get; init; }
    public required string AnchorPullKnown { get; init; }
    public required string AnchorShear { get; init; }
    public required string AnchorShearKnown { get; init; }
    public required string Overturning { get; init; }
    public required string OverturningKnown { get; init; }
    public required string Braces { get; init; }
    public required string Brace { get; init; }
    public required string BraceKnown { get; init; }
    public required string NoBraces { get; init; }
    public required string NoBand { get; init; }
    /// <summary>"{low} to {high}".</summary>
    public required string Range { get; init; }
    public required ImmutableDictionary<string, string> Waits { get; init; }
    public required string SettleChart { get; init; }
    public required string SettleTime { get; init; }
    public required string SettleSwing { get; init; }
    public required string SettleSoft { get; init; }
    public required string SettleStiff { get; init; }
    public required string SettleWorst { get; init; }
    public required string SettleTolerance { get; init; }
    public required string SettlePlanned { get; init; }
    public required string BandChart { get; init; }
    public required string Frequency { get; init; }
    public required string BandLow { get; init; }
    public required string BandHigh { get; init; }
    public required string Drawing { get; init; }
    public required string DrawingDescription { get; init; }
    public required string Still { get; init; }
    public required ImmutableArray<string> Views { get; init; }
    public required string SetUp { get; init; }
    public required string SetUpFeet { get; init; }
    public required string SetUpNext { get; init; }
    public required string SetUpNothing { get; init; }
    /// <summary>By id of the quantity; "{corner}" and "{other}" are posts.</summary>
    public required ImmutableDictionary<string, string> SetUpAsked { get; init; }
    public required string SetUpWithin { get; init; }
    public required string SetUpBeyond { get; init; }
    public required string SetUpDoubt { get; init; }
    public required string SetUpHighest { get; init; }
    public required string SetUpLeave { get; init; }
    public required string SetUpRaise { get; init; }
    public required string SetUpTurns { get; init; }
    public required ImmutableArray<string> SetUpKinds { get; init; }
    public required string SetUpLeft { get; init; }
    public required string SetUpLast { get; init; }
    /// <summary>Short names of the views, for buttons.</summary>
    public required ImmutableArray<string> ViewNames { get; init; }
    public required string View { get; init; }
    public required string Title { get; init; }
    public required string NotDescribed { get; init; }
    public required string NotDescribedText { get; init; }
    public required string Describe { get; init; }
    public required string NotStated { get; init; }
    public required string ShownMode { get; init; }
    public required string ShownJoints { get; init; }
    public required string Move { get; init; }
    public required string Stop { get; init; }
    public required string LookForBraces { get; init; }
    public required string LookForBracesNote { get; init; }
    public required string TakeBrace { get; init; }
    public required string BraceTaken { get; init; }
    public required string Computing { get; init; }
    public required string Caution { get; init; }
    public required string HeadWhat { get; init; }
    public required string HeadValue { get; init; }
    public required string HeadKnown { get; init; }
    public required string Settling { get; init; }
    public required string SetUpTitle { get; init; }
    public required string SetUpText { get; init; }
    /// <summary>In the order of <see cref="Frames.SetUpKind"/>.</summary>
    public required ImmutableArray<string> SetUpKindNames { get; init; }
    /// <summary>An example of what is typed for each kind.</summary>
    public required ImmutableArray<string> SetUpExamples { get; init; }
    public required string SetUpKindLabel { get; init; }
    public required string SetUpFrom { get; init; }
    public required string SetUpTo { get; init; }
    public required string SetUpValue { get; init; }
    public required string SetUpReversed { get; init; }
    public required string SetUpAdd { get; init; }
    public required string SetUpRemove { get; init; }
    public required string SetUpReadings { get; init; }
    public required string SetUpNone { get; init; }
    public required string SetUpGone { get; init; }
    public required string SetUpTake { get; init; }
    public required string SetUpLoad { get; init; }
    /// <summary>A mode with its band: "mode {number}, {low} to {high}".</summary>
    public required string ModeShown { get; init; }
}

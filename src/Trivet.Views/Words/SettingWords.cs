using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Texts about the parameters of the controller.</summary>
public sealed record SettingWords
{
    public required string Title { get; init; }
    public required ImmutableArray<string> Cautions { get; init; }
    public required string List { get; init; }
    public required string HeadParameter { get; init; }
    public required string HeadWhere { get; init; }
    public required string HeadHolds { get; init; }
    public required string HeadTyped { get; init; }
    public required string HeadUnit { get; init; }
    public required string HeadPlan { get; init; }
    public required string HeadOff { get; init; }
    public required string HeadCosts { get; init; }
    /// <summary>In the order of <see cref="Cells.SettingQuantity"/>.</summary>
    public required ImmutableArray<string> Quantities { get; init; }
    /// <summary>{quantity} {of}</summary>
    public required string QuantityOf { get; init; }
    public required string AsStated { get; init; }
    /// <summary>{unit}</summary>
    public required string Per { get; init; }
    /// <summary>{distance}</summary>
    public required string MovesTool { get; init; }
    /// <summary>{share}</summary>
    public required string ShareUsed { get; init; }
    /// <summary>{names}</summary>
    public required string NotComputed { get; init; }
    public required string NoSettings { get; init; }

    // An export held against the plan.
    public required string Compare { get; init; }
    public required string ReadExport { get; init; }
    /// <summary>{file}</summary>
    public required string Compared { get; init; }
    public required string Same { get; init; }
    /// <summary>{equal} {differs} {missing}</summary>
    public required string Counted { get; init; }
    /// <summary>{count} {names}</summary>
    public required string NotPlanned { get; init; }
    /// <summary>In the order of <see cref="Settings.SettingMatch"/>.</summary>
    public required ImmutableArray<string> Matches { get; init; }
    public required string HeadMatch { get; init; }
    public required string HeadFound { get; init; }
    public required string HeadDifference { get; init; }
    public required string HeadThen { get; init; }
    /// <summary>{typed}</summary>
    public required string TypeIt { get; init; }
    /// <summary>{typed} {field}</summary>
    public required string TypeOrChange { get; init; }
    public required string LookForName { get; init; }

    // A backup held against what was read out.
    public required string Proof { get; init; }
    public required string ProofNote { get; init; }
    public required string BackupFile { get; init; }
    public required string RestoredFile { get; init; }
    public required string RestoredEqual { get; init; }
    public required string NotRestored { get; init; }
    /// <summary>{equal} {different} {excepted}</summary>
    public required string ProofCounted { get; init; }
    public required string HeadWhich { get; init; }
    public required string HeadFile { get; init; }
    public required string Differences { get; init; }
    public required string HeadParameters { get; init; }
    public required string HeadHash { get; init; }
    public required string HeadBefore { get; init; }
    public required string HeadAfter { get; init; }
    public required string HeadExcepted { get; init; }
    public required string NotThere { get; init; }
    public required string NotExcepted { get; init; }
    /// <summary>For a person to fill in on paper.</summary>
    public required string HeadDone { get; init; }
    public required string Signed { get; init; }
    public required string Refused { get; init; }
    public required string SameFile { get; init; }
    public required string Save { get; init; }
}

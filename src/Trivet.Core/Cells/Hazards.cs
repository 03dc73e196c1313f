using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>Kinds of hazards, after ISO 12100, annex B.</summary>
public enum HazardKind
{
    Crushing,
    Impact,
    DrawingIn,
    Falling,
    Ejection,
    StoredEnergy,
    Electrical,
    Thermal,
    Ergonomic,
    UnexpectedStart,
    Noise,
    Material,
    Other,
}

/// <summary>Phases of a machine's life (ISO 12100, 5.4).</summary>
public enum LifePhase
{
    Transport,
    Installation,
    Commissioning,
    Operation,
    Cleaning,
    Maintenance,
    Decommissioning,
}

/// <summary>The three steps of risk reduction, in the order in which they come (ISO 12100, clause 6).</summary>
public enum MeasureStep
{
    InherentlySafeDesign,
    Safeguarding,
    InformationForUse,
}

/// <summary>An entry of the hazard register. What is in it a person wrote, and a person answers for it.</summary>
public sealed record Hazard : IOrdered
{
    public int? Order { get; init; }
    /// <summary>What happens.</summary>
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of the hazard that the cell proposes and this one answers; its own id where nothing is stated.</summary>
    public string? Proposed { get; init; }
    public HazardKind? Kind { get; init; }
    public LifePhase? Phase { get; init; }
    /// <summary>Where and when, in words.</summary>
    public string? Where { get; init; }
    /// <summary>Who may come to harm.</summary>
    public string? Who { get; init; }
    public RiskEstimate Before { get; init; } = new();
    public ImmutableSortedDictionary<string, HazardMeasure> Measures { get; init; } = Keyed.Empty<HazardMeasure>();
    /// <summary>Why neither design nor safeguard takes it away, where information for use is all there is.</summary>
    public string? OnlyInformation { get; init; }
    public RiskEstimate After { get; init; } = new();
    public ImmutableSortedDictionary<string, HazardProof> Proofs { get; init; } = Keyed.Empty<HazardProof>();
    /// <summary>Who answers for it.</summary>
    public string? Owner { get; init; }
    /// <summary>Who accepted what remains, and when.</summary>
    public string? Accepted { get; init; }
}

public sealed record HazardMeasure : IOrdered
{
    public int? Order { get; init; }
    /// <summary>What is done.</summary>
    public string? Name { get; init; }
    public string? Note { get; init; }
    public MeasureStep? Step { get; init; }
    /// <summary>Id of the safety function that it is.</summary>
    public string? Function { get; init; }
}

/// <summary>How it is shown that a hazard's measures are there and work: one of the three, or several.</summary>
public sealed record HazardProof : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of a rule whose findings show it, such as <c>motion.hold</c>.</summary>
    public string? Rule { get; init; }
    /// <summary>A step of the bring-up, in words.</summary>
    public string? Step { get; init; }
    public string? Document { get; init; }
}

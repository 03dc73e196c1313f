using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Texts about safety functions and the hazard register.</summary>
public sealed record StoppingWords
{
    public required string Functions { get; init; }
    public required ImmutableArray<string> FunctionCautions { get; init; }
    public required string Channels { get; init; }
    public required string WhatFalls { get; init; }
    public required string Graph { get; init; }
    public required string GraphDescription { get; init; }
    public required string Hazards { get; init; }
    public required ImmutableArray<string> HazardCautions { get; init; }
    public required string Proposed { get; init; }
    public required string Register { get; init; }

    public required string HeadFunction { get; init; }
    public required string HeadKind { get; init; }
    public required string HeadTrigger { get; init; }
    public required string HeadWatches { get; init; }
    public required string HeadRisk { get; init; }
    public required string HeadRequired { get; init; }
    public required string HeadPlanned { get; init; }
    public required string HeadCategory { get; init; }
    public required string HeadSource { get; init; }
    public required string HeadStop { get; init; }
    public required string HeadRamp { get; init; }
    public required string HeadTorque { get; init; }
    public required string HeadIsolates { get; init; }
    public required string HeadReset { get; init; }
    public required string HeadChannel { get; init; }
    public required string HeadSignal { get; init; }
    public required string HeadEnds { get; init; }
    public required string HeadSafety { get; init; }
    public required string HeadWhat { get; init; }
    public required string HeadHeldBy { get; init; }
    public required string HeadLoad { get; init; }
    public required string HeadDelay { get; init; }
    public required string HeadBecomes { get; init; }
    public required string HeadSink { get; init; }
    public required string HeadDrop { get; init; }
    public required string HeadEnergy { get; init; }
    public required string HeadHazard { get; init; }
    public required string HeadPhase { get; init; }
    public required string HeadWhere { get; init; }
    public required string HeadWho { get; init; }
    public required string HeadBefore { get; init; }
    public required string HeadMeasures { get; init; }
    public required string HeadAfter { get; init; }
    public required string HeadProof { get; init; }
    public required string HeadOwner { get; init; }
    public required string HeadAccepted { get; init; }
    public required string HeadWhy { get; init; }
    public required string HeadEntry { get; init; }

    /// <summary>In the order of <see cref="Cells.SafetyKind"/>.</summary>
    public required ImmutableArray<string> Kinds { get; init; }
    /// <summary>In the order of <see cref="Stopping.ChainAtStop"/>.</summary>
    public required ImmutableArray<string> Becomes { get; init; }
    /// <summary>In the order of <see cref="Cells.HazardKind"/>.</summary>
    public required ImmutableArray<string> HazardKinds { get; init; }
    /// <summary>In the order of <see cref="Cells.LifePhase"/>.</summary>
    public required ImmutableArray<string> Phases { get; init; }
    /// <summary>In the order of <see cref="Cells.MeasureStep"/>.</summary>
    public required ImmutableArray<string> Steps { get; init; }

    public required string Yes { get; init; }
    public required string No { get; init; }
    public required string Tool { get; init; }
    public required string PartOf { get; init; }
    public required string LetGo { get; init; }
    public required string KeptByGrip { get; init; }
    public required string KeptWhileSupplied { get; init; }
    public required string LossOfSupply { get; init; }
    public required string MeasureForm { get; init; }
    public required string RuleProof { get; init; }
    public required string StepProof { get; init; }
    public required string NotRegistered { get; init; }
    public required string Signed { get; init; }
    public required string HeadName { get; init; }
    public required string HeadDateSigned { get; init; }
    /// <summary>Of the last page: who may sign, and for what.</summary>
    public required string SignedNote { get; init; }
    public required string GraphSeverity { get; init; }
    public required string GraphExposure { get; init; }
    public required string GraphAvoidance { get; init; }
    public required string GraphLevel { get; init; }
}

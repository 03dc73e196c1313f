using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Texts of bolted joints: the torque sheet.</summary>
public sealed record JointWords
{
    public required string Title { get; init; }
    public required string Description { get; init; }
    public required string HeadOrder { get; init; }
    public required string HeadJoint { get; init; }
    public required string HeadScrews { get; init; }
    public required string HeadSteps { get; init; }
    public required string HeadTorque { get; init; }
    public required string HeadPreload { get; init; }
    public required string HeadKept { get; init; }
    public required string HeadLimit { get; init; }
    public required string HeadSequence { get; init; }
    public required string HeadDone { get; init; }
    /// <summary>In the order of <see cref="Bolting.TorqueLimit"/>.</summary>
    public required ImmutableArray<string> Limits { get; init; }
    // {count} {thread} {class} {from} {to}
    public required string Screws { get; init; }
    public required string Range { get; init; }
    public required string Nothing { get; init; }
    public required string Notes { get; init; }
    /// <summary>What whoever tightens must know, a sentence each.</summary>
    public required ImmutableArray<string> NoteLines { get; init; }
    public required string CreepNote { get; init; }
    public required string NotCalculated { get; init; }
    public required string Separation { get; init; }
    public required string Slip { get; init; }
    public required string LoadUnknown { get; init; }

    // The desk
    public required string SectionTitle { get; init; }
    public required string NoJoints { get; init; }
    public required string Describe { get; init; }
    public required string Caution { get; init; }
}

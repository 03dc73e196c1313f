using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Texts of the tool stack, gripping, compressed air, handling and guarding: sheets, tables and drawings.</summary>
public sealed record ToolWords
{
    public required string Stack { get; init; }
    public required string StackDrawing { get; init; }
    public required string StackDescription { get; init; }
    public required string Sums { get; init; }
    public required string Gripping { get; init; }
    public required string Air { get; init; }
    public required string AirDrawing { get; init; }
    public required string AirDescription { get; init; }
    public required string Handling { get; init; }
    public required string Guarding { get; init; }
    public required string Findings { get; init; }
    public required string NoTool { get; init; }
    public required string NoAir { get; init; }

    public required string HeadPart { get; init; }
    public required string HeadMass { get; init; }
    public required string HeadCentre { get; init; }
    public required string HeadInertia { get; init; }
    public required string HeadInertiaTcp { get; init; }
    public required string HeadTurns { get; init; }
    public required string HeadWhat { get; init; }
    public required string HeadValue { get; init; }
    public required string Turns { get; init; }
    public required string Unknown { get; init; }
    public required string Empty { get; init; }
    /// <summary>{part}</summary>
    public required string With { get; init; }
    public required string FrameNote { get; init; }

    public required string CupsForce { get; init; }
    public required string CupsLever { get; init; }
    public required string Reached { get; init; }
    public required string UntilHeld { get; init; }
    public required string UntilFree { get; init; }
    public required string Evacuated { get; init; }
    public required string Friction { get; init; }
    /// <summary>{user}</summary>
    public required string AirOf { get; init; }
    public required string AirCycle { get; init; }
    public required string AirHour { get; init; }
    public required string SpaceX { get; init; }
    public required string SpaceY { get; init; }
    public required string SpaceZ { get; init; }
    /// <summary>{what} {cycle}</summary>
    public required string Thrown { get; init; }
    public required string ThrownPart { get; init; }
    /// <summary>{chain}</summary>
    public required string ThrownRod { get; init; }
    /// <summary>{speed} {energy} {azimuth} {elevation} {range}</summary>
    public required string ThrownValue { get; init; }
    /// <summary>Cautions, each a sentence of its own.</summary>
    public required ImmutableArray<string> AirCautions { get; init; }
    public required ImmutableArray<string> HandlingCautions { get; init; }
    public required ImmutableArray<string> GuardCautions { get; init; }

    public required string Supply { get; init; }
    public required string ShutOff { get; init; }
    public required string FilterRegulator { get; init; }
    public required string Cups { get; init; }
}

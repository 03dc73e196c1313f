using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Adapters;

/// <summary>What a plate was measured to be in one respect, against what it must be.</summary>
/// <param name="Case">Which side or screw; empty where there is one only.</param>
public readonly record struct PlateMeasure(Rule Rule, string Case, double Value, double Limit)
{
    // Nanometres: below them a difference is rounding and no matter of a shop.
    private const int Decimals = 9;

    public double Value { get; } = Math.Round(Value, Decimals);
    public double Limit { get; } = Math.Round(Limit, Decimals);

    public bool Holds => Value >= Limit;

    /// <summary>As findings have it: at least.</summary>
    public double Margin => Value / Limit - 1;
}

/// <summary>
/// One adapter plate, whole. Its axes: origin on the lower face in the middle of both patterns, x and y as the upper pattern's, z up.
/// </summary>
/// <param name="Above">The face it meets above; in a stack the joining ring for one of the two.</param>
/// <param name="Below">Likewise below, turned as it lies in the plate's axes.</param>
/// <param name="Clocking">Of the lower pattern against the upper one, radians.</param>
/// <param name="FirstFitted">The part it is screwed to first.</param>
/// <param name="Volume">Cubic metres, holes taken out; a tapped hole counts as drilled.</param>
/// <param name="Mass">Kilograms, without screws.</param>
/// <param name="Wall">Smallest wall between holes or to the edge, metres.</param>
/// <param name="KeyRoom">Smallest free radius round a screw's axis beyond what its key needs, metres; infinite where nothing is in the way.</param>
/// <param name="AxialStiffness">Of the disc between both circles of holes, N/m; infinite where both circles are the same.</param>
/// <param name="TiltStiffness">Likewise against tilting one circle towards the other, N·m/rad.</param>
public sealed record AdapterPlate(
    Stuff Stuff, BoltPattern Above, BoltPattern Below, double Thickness, double Clocking, PlateFace FirstFitted, ImmutableArray<AdapterHole> Holes, Outline Outline, double Volume, double Mass,
    double Wall, double KeyRoom, double AxialStiffness, double TiltStiffness, ImmutableArray<PlateMeasure> Measures)
{
    public bool Works => Measures.All(m => m.Holds);

    /// <summary>Moment of inertia about the upright axis through the middle, kg·m².</summary>
    public double TurningInertia => PlateBody.Of(this).About(Vec3.Zero).Row2.Z;
}

/// <summary>What the search for a plate came to.</summary>
/// <param name="Works">One plate for each clocking that works: the lightest first, then the thickest wall, then the freest keys.</param>
/// <param name="Closest">Where none works: the plate that comes closest.</param>
/// <param name="Forbids">Where none works: the rules that no plate tried could keep; those that the closest one breaks where each was kept by some.</param>
/// <param name="Stack">A stack of two, upper plate first: asked for, or where one plate can't do it. Empty where there is none.</param>
public sealed record AdapterResult(
    AdapterInput Input, ImmutableArray<AdapterPlate> Works, AdapterPlate? Closest, ImmutableArray<Rule> Forbids, ImmutableArray<AdapterPlate> Stack, int Tried)
{
    /// <summary>The plates to be made: the stack where two pieces are asked for, else the best single one; empty where there is none.</summary>
    public ImmutableArray<AdapterPlate> Chosen => Input.Pieces == 2 ? Stack : Works.IsEmpty ? [] : [Works[0]];
}

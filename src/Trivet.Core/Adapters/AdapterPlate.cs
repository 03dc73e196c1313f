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

    /// <summary>Moment of inertia about the upright axis through the middle, kg·m²; round holes about their own axes by Steiner's theorem.</summary>
    public double TurningInertia
    {
        get
        {
            double inertia = OutlineInertia(Outline) * Thickness;
            foreach (var hole in Holes)
                foreach (var s in hole.Steps)
                {
                    // A truncated cone turns like the cylinder of its mean square radius within a few percent of a countersink's small share.
                    double r2 = (s.RadiusTop * s.RadiusTop + s.RadiusTop * s.RadiusBottom + s.RadiusBottom * s.RadiusBottom) / 3;
                    inertia -= s.Volume * (r2 / 2 + hole.At.NormSquared);
                }
            return inertia * Stuff.Density;
        }
    }

    /// <summary>Second polar moment of the outline's area about the middle, m⁴: triangles from the middle to short chords.</summary>
    private static double OutlineInertia(Outline outline)
    {
        const int Parts = 64;
        double sum = 0;
        foreach (var piece in outline.Pieces)
        {
            int n = piece.IsArc ? Parts : 1;
            for (int i = 0; i < n; i++)
            {
                Vec2 a = At(piece, i / (double)n), b = At(piece, (i + 1) / (double)n);
                sum += a.Cross(b) / 12 * (a.NormSquared + a.Dot(b) + b.NormSquared);
            }
        }
        return sum;

        static Vec2 At(OutlinePiece p, double t) => p.IsArc ? p.Centre + (p.From - p.Centre).Turned(t * p.Sweep) : p.From + t * (p.To - p.From);
    }
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

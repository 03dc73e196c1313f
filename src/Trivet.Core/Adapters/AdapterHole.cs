using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Numerics;

namespace Trivet.Adapters;

public enum HoleKind
{
    Through,
    Counterbored,
    Countersunk,
    Tapped,
    /// <summary>For a locating pin, H7.</summary>
    Dowel,
    /// <summary>Takes a boss or a centring ring, H7.</summary>
    Pilot,
    /// <summary>For cable and air.</summary>
    Passage,
    Lightening,
}

/// <summary>One stretch of a hole along the plate's thickness, from its upper end down, metres from the lower face.</summary>
public readonly record struct HoleStep(double Top, double Bottom, double RadiusTop, double RadiusBottom)
{
    public double Widest => Math.Max(RadiusTop, RadiusBottom);

    /// <summary>Cubic metres: a cylinder, or a truncated cone.</summary>
    public double Volume => Math.PI / 3 * (Top - Bottom) * (RadiusTop * RadiusTop + RadiusTop * RadiusBottom + RadiusBottom * RadiusBottom);
}

/// <summary>The screw in a hole: what it clamps and how far it is engaged, metres.</summary>
/// <param name="Length">Nominal length; not a number where it is not known since the part's grip is not.</param>
/// <param name="Clamped">Length between head and thread's beginning.</param>
/// <param name="Engaged">Length of thread engaged.</param>
/// <param name="Needed">Engagement that the thread's material asks.</param>
public sealed record FittedScrew(Screw Screw, double Length, double Clamped, double Engaged, double Needed);

/// <summary>A hole of the plate, coaxial steps from top to bottom. It is blind where its steps leave one face closed.</summary>
/// <param name="From">The face it is made from.</param>
/// <param name="Serves">The face whose part it belongs to; null where it is of neither.</param>
/// <param name="At">In the plate's axes, seen from above: those of the upper pattern, metres.</param>
public sealed record AdapterHole(HoleKind Kind, PlateFace From, PlateFace? Serves, Vec2 At, ImmutableArray<HoleStep> Steps)
{
    public MetricThread? Thread { get; init; }
    public FittedScrew? Fitted { get; init; }

    public double Volume => Steps.Sum(s => s.Volume);

    /// <summary>Largest radius, of a thread that of its nominal diameter.</summary>
    public double Widest
    {
        get
        {
            double widest = 0;
            foreach (var step in Steps) widest = Math.Max(widest, Occupied(step));
            return widest;
        }
    }

    /// <summary>Radius that a step takes of the plate: a thread its nominal one.</summary>
    public double Occupied(HoleStep step) => Kind == HoleKind.Tapped && Thread is { } thread ? Math.Max(step.Widest, thread.D / 2) : step.Widest;

    /// <summary>
    /// Wall that is left between two holes: across where they lie side by side, down or aslant where one ends above the other. Negative where they
    /// break into each other. A cone counts with its wider end.
    /// </summary>
    public double WallTo(AdapterHole other)
    {
        double apart = (At - other.At).Norm, wall = double.PositiveInfinity;
        foreach (var a in Steps)
        {
            foreach (var b in other.Steps)
            {
                double across = apart - Occupied(a) - other.Occupied(b), along = Math.Max(a.Bottom - b.Top, b.Bottom - a.Top);
                double left = along < 0 ? across : across > 0 ? Math.Sqrt(across * across + along * along) : along;
                wall = Math.Min(wall, left);
            }
        }
        return wall;
    }
}

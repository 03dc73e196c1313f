using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Numerics;

namespace Trivet.Adapters;

/// <summary>
/// Holes that make a plate lighter: equal ones on a circle about the middle, as many and as large as walls to all other holes and to the edge allow.
/// Tried are three, four, six and eight holes over radii and angles; what takes out most stays.
/// </summary>
internal static class Lightening
{
    private static readonly int[] Counts = [3, 4, 6, 8];
    private const int Radii = 14, Angles = 10;

    // Smaller ones cost more at the machine than they weigh: common practice.
    private const double LeastRadius = 2.5e-3;

    public static ImmutableArray<AdapterHole> Found(AdapterInput input, IReadOnlyList<AdapterHole> holes, Outline outline, double thickness)
    {
        double reach = outline.Reach, best = 0, bestRadius = 0;
        Vec2[] at = [];
        foreach (int count in Counts)
        {
            // From the outside in: holes far out take away most, and make the rest short.
            for (int i = Radii - 1; i > 0; i--)
            {
                double circle = reach * i / Radii;
                // Neighbours on the circle keep their wall.
                double most = circle * Math.Sin(Math.PI / count) - input.Wall / 2;
                if (most < LeastRadius) continue;
                for (int j = 0; j < Angles; j++)
                {
                    double radius = most, turn = 2 * Math.PI / count * j / Angles;
                    // Anything smaller than what takes out as much as the best so far is of no use.
                    double useful = Math.Max(LeastRadius, Math.Sqrt(best / count));
                    for (int k = 0; k < count && radius > useful; k++)
                        radius = Math.Min(radius, Free(input, holes, outline, Vec2.Polar(circle, turn + 2 * Math.PI * k / count), useful));
                    // Whole half millimetres, as drills and bores come.
                    radius = Math.Floor(radius * 4000) / 4000;
                    if (radius < LeastRadius || count * radius * radius <= best) continue;
                    (best, bestRadius) = (count * radius * radius, radius);
                    at = [.. Enumerable.Range(0, count).Select(k => Vec2.Polar(circle, turn + 2 * Math.PI * k / count))];
                }
            }
        }
        return [.. at.Select(p => new AdapterHole(HoleKind.Lightening, PlateFace.Above, null, p, [new(thickness, 0, bestRadius, bestRadius)]))];
    }

    /// <summary>Radius that is free about a point; what is not useful need not be exact. The outline comes last, since it takes longest.</summary>
    private static double Free(AdapterInput input, IReadOnlyList<AdapterHole> holes, Outline outline, Vec2 p, double useful)
    {
        double free = double.PositiveInfinity;
        for (int i = 0; i < holes.Count; i++)
        {
            free = Math.Min(free, (holes[i].At - p).Norm - holes[i].Widest - input.Wall);
            if (free <= useful) return free;
        }
        return Math.Min(free, outline.Depth(p) - input.Edge);
    }
}

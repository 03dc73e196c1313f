using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Numerics;

namespace Trivet.Adapters;

/// <summary>
/// Whether every head and key can be reached in the order of fitting. The plate is screwed to one part first: its far face is then still free,
/// and any head on it is reached. The second part's screws, where they pass the plate, have their heads on the face that the first part covers:
/// they are reached only beside it. A key or driver is a cylinder about the screw's axis, and the head must pass there as well; proud heads of
/// neighbours are in its way too. Where a part is passed by its own screws their heads lie on the part, and nothing of the plate is in the way.
/// </summary>
internal static class KeyAccess
{
    private const double Clearance = 0.5e-3;

    /// <summary>Adds what is measured and gives the smallest free radius beyond the need; infinite where nothing is in the way.</summary>
    public static double Measure(
        AdapterInput input, PlateFace first, BoltPattern above, BoltPattern below, IReadOnlyList<AdapterHole> holes, ImmutableArray<PlateMeasure>.Builder measures)
    {
        double least = double.PositiveInfinity;
        foreach (var side in new[] { PlateFace.Above, PlateFace.Below })
        {
            double free = double.PositiveInfinity, need = 0;
            foreach (var hole in holes)
            {
                if (hole.Serves != side || hole.Fitted is not { } fitted || hole.Kind == HoleKind.Tapped) continue;
                double key = input.KeyRoom > 0 ? input.KeyRoom : fitted.Screw.KeyRadius + Clearance;
                double radius = Math.Max(key, fitted.Screw.Diameter / 2 + Clearance);
                if (side != first)
                {
                    free = Math.Min(free, (first == PlateFace.Above ? above : below).Face.Beyond(hole.At));
                    need = radius;
                }
                foreach (var other in holes)
                {
                    if (ReferenceEquals(other, hole) || other.Kind != HoleKind.Through || other.From != hole.From || other.Fitted is not { } neighbour) continue;
                    // Only neighbours near enough to matter are obstacles worth telling.
                    double beside = (other.At - hole.At).Norm - neighbour.Screw.Diameter / 2;
                    if (beside >= 2 * radius) continue;
                    free = Math.Min(free, beside);
                    need = radius;
                }
            }
            if (!double.IsFinite(free)) continue;
            measures.Add(new(AdapterRules.Key, side == PlateFace.Above ? "above" : "below", free, need));
            least = Math.Min(least, free - need);
        }
        return least;
    }
}

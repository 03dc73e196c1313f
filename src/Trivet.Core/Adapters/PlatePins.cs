using System.Collections.Immutable;

namespace Trivet.Adapters;

/// <summary>Parallel pins of one size that place a plate.</summary>
/// <param name="Diameter">Metres, m6 in H7.</param>
/// <param name="Length">Metres.</param>
public readonly record struct PlatePin(double Diameter, double Length, int Count);

/// <summary>
/// The pins of designed plates. A pin fills its hole in the plate and reaches one and a half diameters into the other part, which hold it there too (common practice, no
/// source); it is as long as the longest pin in trade that is not longer.
/// </summary>
public static class PlatePins
{
    // Preferred lengths of ISO 8734, millimetres; from memory.
    private static readonly ImmutableArray<int> Lengths = [4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 35, 40, 45, 50, 55, 60, 70, 80, 90, 100];

    /// <summary>All pins of a plate or a stack, upper plate first. The pins between two plates of a stack stand in holes of both and count once.</summary>
    public static ImmutableArray<PlatePin> Of(ImmutableArray<AdapterPlate> plates) =>
    [
        .. plates.SelectMany((plate, i) => plate.Holes.Where(h => h.Kind == HoleKind.Dowel && !(i > 0 && h.Serves == Cells.PlateFace.Above)))
            .GroupBy(h => (2 * h.Steps[0].Widest, LengthIn(h))).Select(g => new PlatePin(g.Key.Item1, g.Key.Item2, g.Count())),
    ];

    /// <summary>Length of the pin in one hole, metres.</summary>
    public static double LengthIn(AdapterHole hole)
    {
        double room = 1000 * (hole.Steps.Sum(s => s.Top - s.Bottom) + 1.5 * 2 * hole.Steps[0].Widest);
        return Lengths.LastOrDefault(l => l <= room + 1e-6, Lengths[0]) / 1000.0;
    }
}

using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Fasteners;

/// <summary>
/// Sizes of a screw's head and of the hole that sinks it, metres. Cap screws with hexagon socket [ISO-4762], countersunk ones [ISO-10642],
/// hexagon heads [ISO-4014], counterbores after [DIN-974-1]; from memory of these tables.
/// </summary>
/// <param name="Diameter">Largest diameter of the head; of a countersunk one that of the sharp edge, so that it lies flush.</param>
/// <param name="Height">Height of the head; of a countersunk one the depth of its cone.</param>
/// <param name="Bearing">Outer diameter of the surface it bears on.</param>
/// <param name="Key">Width across the flats of its key.</param>
/// <param name="Counterbore">Diameter of the bore that sinks it; not a number where it is not sunk so.</param>
public sealed record Screw(MetricThread Thread, ScrewHead Head, double Diameter, double Height, double Bearing, double Key, double Counterbore)
{
    // What a sunk head lies below the face, so that nothing stands proud after tolerance and plating: common practice.
    private const double SunkBelow = 0.5e-3;

    // Lengths a shop has, metres [ISO-4762].
    private static readonly double[] Lengths = [.. new double[] { 6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120 }.Select(l => l / 1000)];

    /// <summary>Depth of the counterbore that sinks it.</summary>
    public double CounterboreDepth => Height + SunkBelow;

    /// <summary>Radius of the key about the screw's axis: half its width across corners.</summary>
    public double KeyRadius => Key / Math.Sqrt(3);

    /// <summary>The longest length in stock up to a length; null where the shortest is longer.</summary>
    public static double? LengthUpTo(double most)
    {
        double? best = null;
        foreach (double l in Lengths)
            if (l <= most + 1e-9) best = l;
        return best;
    }

    public static Screw Of(MetricThread thread, ScrewHead head)
    {
        var (name, dk, k, dw, s, bore) = (head switch { ScrewHead.Cap => Caps, ScrewHead.Countersunk => Sunk, _ => Hexagons }).Single(r => r.Name == thread.Name);
        return new(thread, head, dk / 1000, k / 1000, dw / 1000, s / 1000, bore / 1000);
    }

    private static readonly ImmutableArray<(string Name, double Dk, double K, double Dw, double S, double Bore)> Caps =
    [
        ("M3", 5.5, 3, 5.07, 2.5, 6.5), ("M4", 7, 4, 6.53, 3, 8), ("M5", 8.5, 5, 8.03, 4, 10), ("M6", 10, 6, 9.38, 5, 11), ("M8", 13, 8, 12.33, 6, 15),
        ("M10", 16, 10, 15.33, 8, 18), ("M12", 18, 12, 17.23, 10, 20),
    ];

    private static readonly ImmutableArray<(string Name, double Dk, double K, double Dw, double S, double Bore)> Sunk =
    [
        ("M3", 6.72, 1.86, 6.72, 2, double.NaN), ("M4", 8.96, 2.48, 8.96, 2.5, double.NaN), ("M5", 11.2, 3.1, 11.2, 3, double.NaN), ("M6", 13.44, 3.72, 13.44, 4, double.NaN),
        ("M8", 17.92, 4.96, 17.92, 5, double.NaN), ("M10", 22.4, 6.2, 22.4, 6, double.NaN), ("M12", 26.88, 7.44, 26.88, 8, double.NaN),
    ];

    // Bearing diameters as VDI 2230 takes them for hexagon heads (medium holes).
    private static readonly ImmutableArray<(string Name, double Dk, double K, double Dw, double S, double Bore)> Hexagons =
    [
        ("M3", 6.35, 2, 4.57, 5.5, double.NaN), ("M4", 8.08, 2.8, 5.88, 7, double.NaN), ("M5", 9.24, 3.5, 6.88, 8, double.NaN), ("M6", 11.55, 4, 8.88, 10, double.NaN),
        ("M8", 15.01, 5.3, 11.63, 13, double.NaN), ("M10", 18.48, 6.4, 14.63, 16, double.NaN), ("M12", 20.78, 7.5, 16.63, 18, double.NaN),
    ];
}

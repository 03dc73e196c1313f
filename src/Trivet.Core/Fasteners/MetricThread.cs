using System.Collections.Immutable;

namespace Trivet.Fasteners;

/// <summary>
/// A metric thread of the coarse series with the sizes that go with it, all in metres. Diameters and pitches: [ISO-261], basic profile
/// [ISO-68-1]; holes that screws pass: medium series of [ISO-273]; nothing here was compared with the texts yet.
/// </summary>
/// <param name="Name">As a drawing calls it: <c>M6</c>.</param>
/// <param name="D">Nominal diameter.</param>
/// <param name="P">Pitch.</param>
/// <param name="Passage">Diameter of the hole that the screw passes, medium series.</param>
public sealed record MetricThread(string Name, double D, double P, double Passage)
{
    /// <summary>Pitch diameter of the basic profile.</summary>
    public double D2 => D - 0.649519 * P;

    /// <summary>Root diameter of the screw.</summary>
    public double D3 => D - 1.226869 * P;

    /// <summary>Diameter of the tensile stress area.</summary>
    public double D0 => (D2 + D3) / 2;

    /// <summary>Tensile stress area, square metres [ISO-898-1].</summary>
    public double StressArea => Math.PI / 4 * D0 * D0;

    /// <summary>Area at the root, square metres.</summary>
    public double RootArea => Math.PI / 4 * D3 * D3;

    /// <summary>Nominal area, square metres.</summary>
    public double NominalArea => Math.PI / 4 * D * D;

    /// <summary>Diameter of the drill for tapping: nominal less pitch, common practice.</summary>
    public double TapDrill => D - P;

    public static ImmutableArray<MetricThread> All { get; } =
    [
        Of("M3", 3, 0.5, 3.4), Of("M4", 4, 0.7, 4.5), Of("M5", 5, 0.8, 5.5), Of("M6", 6, 1, 6.6), Of("M8", 8, 1.25, 9), Of("M10", 10, 1.5, 11), Of("M12", 12, 1.75, 13.5),
    ];

    /// <summary>The thread of that name, null where Trivet has no such size.</summary>
    public static MetricThread? Find(string name) => All.FirstOrDefault(t => string.Equals(t.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));

    private static MetricThread Of(string name, double d, double p, double passage) => new(name, d / 1000, p / 1000, passage / 1000);
}

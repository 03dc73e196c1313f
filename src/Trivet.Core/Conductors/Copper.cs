using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Conductors;

/// <summary>Copper wires by their section, as tables state them.</summary>
public static class Copper
{
    /// <summary>Usual temperature of a loaded PVC conductor at its limit, °C.</summary>
    public const double Warm = 70;

    /// <summary>Of resistance, by kelvin (IEC 60228).</summary>
    public const double Coefficient = 0.00393;

    /// <summary>
    /// Ohms of a metre at 20 °C, class 5 bare copper, by square millimetres (IEC 60228; 1.5 to 16 by a reproduction, the rest from memory; below 0.5
    /// IEC 60228 has no row: usual values of flexible wires, from memory).
    /// </summary>
    private static readonly ImmutableArray<(double Section, double Ohms)> Resistances =
    [
        (0.14, 0.138), (0.25, 0.0790), (0.34, 0.0570), (0.5, 0.0390), (0.75, 0.0260), (1, 0.0195), (1.5, 0.0133), (2.5, 0.00798), (4, 0.00495), (6, 0.00330), (10, 0.00191),
        (16, 0.00121), (25, 0.000780), (35, 0.000554),
    ];

    /// <summary>
    /// Amperes at 40 °C, PVC, three loaded conductors, by square millimetres, for B1, B2, C, E (IEC 60204-1 table 6: by a reproduction, but 0.2, 0.5, 2.5, 10 and 35 from
    /// memory; the two smallest are its pairs of electronics, not for B1). Two loaded conductors bear a little more.
    /// </summary>
    private static readonly ImmutableArray<(double Section, double B1, double B2, double C, double E)> Capacities =
    [
        (0.2, double.NaN, 4.3, 4.4, 4.4), (0.5, double.NaN, 7.5, 7.5, 7.8), (0.75, 8.6, 8.5, 9.8, 10.4), (1, 10.3, 10.1, 11.7, 12.4), (1.5, 13.5, 13.1, 15.2, 16.1),
        (2.5, 18.3, 17.4, 21, 22), (4, 24, 23, 28, 30), (6, 31, 30, 36, 37), (10, 44, 40, 50, 52), (16, 59, 54, 66, 70), (25, 77, 70, 84, 88), (35, 96, 86, 104, 110),
    ];

    /// <summary>IEC 60204-1 table D.1, by a reproduction; 30 and 35 °C are left out, so a cooler place counts as 40 °C.</summary>
    private static readonly ImmutableArray<(double Ambient, double Factor)> Warmth = [(40, 1.00), (45, 0.91), (50, 0.82), (55, 0.71), (60, 0.58)];

    /// <summary>IEC 60204-1 table D.2, by a reproduction: circuits together, B1 and B2, C, E.</summary>
    private static readonly ImmutableArray<(int Circuits, double B, double C, double E)> Crowd = [(1, 1, 1, 1), (2, 0.80, 0.85, 0.88), (4, 0.65, 0.75, 0.77), (6, 0.57, 0.72, 0.73), (9, 0.50, 0.70, 0.72)];

    /// <summary>Sections that have a resistance, square millimetres.</summary>
    public static ImmutableArray<double> Sections { get; } = [.. Resistances.Select(r => r.Section)];

    /// <summary>Ohms of a metre at a temperature; not a number for a section that is not made.</summary>
    /// <param name="section">Square metres.</param>
    public static double Resistance(double section, double temperature)
    {
        double at20 = Resistances.Where(r => Same(r.Section, section)).Select(r => r.Ohms).FirstOrDefault(double.NaN);
        return at20 * (1 + Coefficient * (temperature - 20));
    }

    /// <summary>
    /// Volts lost on the two wires of a cable with a direct current. Cables are made with other sections too: for one between the rows 19.5 Ω·mm²/km over it, as row 1 has it.
    /// Not a number for a section that is not above zero.
    /// </summary>
    public static double Drop(double section, double length, double current, double temperature = Warm)
    {
        double perMetre = Resistance(section, temperature);
        if (double.IsNaN(perMetre) && section > 0) perMetre = 19.5e-9 / section * (1 + Coefficient * (temperature - 20));
        return 2 * length * current * perMetre;
    }

    /// <summary>Amperes that a wire bears: that of the largest section of the table which is not above it. Not a number beyond the table.</summary>
    public static double Capacity(double section, WireLaying laying, double ambient, int grouped)
    {
        var row = Capacities.LastOrDefault(c => c.Section <= section * 1e6 * (1 + 1e-9));
        if (row.Section == 0) return double.NaN;
        double bare = laying switch { WireLaying.B1 => row.B1, WireLaying.B2 => row.B2, WireLaying.C => row.C, _ => row.E };
        return bare * WarmthFactor(ambient) * CrowdFactor(grouped, laying);
    }

    /// <summary>For warmer air than 40 °C; between two rows that of the warmer. Not a number above 60 °C.</summary>
    public static double WarmthFactor(double ambient) => Warmth.Where(w => ambient <= w.Ambient).Select(w => w.Factor).FirstOrDefault(double.NaN);

    /// <summary>For circuits that lie together; between two rows that of the more. Not a number above nine.</summary>
    public static double CrowdFactor(int circuits, WireLaying laying) =>
        Crowd.Where(c => circuits <= c.Circuits).Select(c => laying switch { WireLaying.C => c.C, WireLaying.E => c.E, _ => c.B }).FirstOrDefault(double.NaN);

    private static bool Same(double millimetres, double section) => Math.Abs(section * 1e6 - millimetres) < 1e-6;
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Adapters;

/// <summary>A standard's mounting face as data, millimetres as the standards print them.</summary>
/// <param name="Designation">As the standard, or the trade, calls it.</param>
/// <param name="Circle">Diameter through the holes.</param>
/// <param name="Start">Angle of the first hole from x, degrees.</param>
/// <param name="Face">Diameter of a round face, or side of a square one.</param>
/// <param name="Pin">Diameter of the locating pin on the same circle at x; zero for none.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record StandardPattern(
    string Designation, double Circle, int Holes, double Start, string Thread, bool Tapped, double ThreadDepth, double Grip, Centring Centring, double CentringDiameter,
    double CentringDepth, double Pin, double Face, bool Square, string Material, Source Source)
{
    /// <summary>As a face of metres; null where its material can not be read.</summary>
    public BoltPattern? Pattern(Cell cell, string named, Reading reading)
    {
        if (Stuff.Read(cell, Material, named, reading) is not { } stuff) return null;
        double mm = 1e-3, radius = Circle / 2 * mm;
        return new(
            Designation, [.. Enumerable.Range(0, Holes).Select(i => Vec2.Polar(radius, Start * Math.PI / 180 + 2 * Math.PI * i / Holes))], MetricThread.Find(Thread)!,
            Tapped, Tapped ? ThreadDepth * mm : double.NaN, Tapped ? double.NaN : Grip * mm, stuff, Centring, CentringDiameter * mm, CentringDepth * mm,
            Pin > 0 ? [new(Pin * mm, new(radius, 0))] : [], Square ? MountingFace.Rectangle(Face * mm, Face * mm) : MountingFace.Round(Face * mm));
    }
}

/// <summary>
/// The patterns that Trivet knows. Circular flanges of [ISO-9409-1]: diameters run in the R10 series, holes of four stand at 45° and of six at
/// 30° from the pin's axis; the depth of thread is common practice (1.5 diameters), since the designation leaves it open. Motor faces of
/// [NEMA-ICS-16]: four holes on a square; face, boss height and grip are what such motors have by common practice.
/// The pattern of 63 mm has four or six holes after different sources: state one of your own from the part in hand.
/// </summary>
public static class StandardPatterns
{
    public static ImmutableArray<StandardPattern> All { get; } =
    [
        Flange("ISO 9409-1-31.5-4-M5", 31.5, 4, 5, 40, 20, 5, SourceKind.FromMemory), Flange("ISO 9409-1-40-4-M6", 40, 4, 6, 50, 25, 6, SourceKind.FromMemory),
        Flange("ISO 9409-1-50-4-M6", 50, 4, 6, 63, 31.5, 6, SourceKind.Standard), Flange("ISO 9409-1-80-6-M8", 80, 6, 8, 100, 50, 8, SourceKind.Standard),
        Flange("ISO 9409-1-100-6-M8", 100, 6, 8, 125, 63, 8, SourceKind.FromMemory), Flange("ISO 9409-1-160-6-M10", 160, 6, 10, 200, 100, 10, SourceKind.FromMemory),
        Motor("NEMA 17", 43.815, "M3", tapped: true, 4.5, 22, 2, 42.3), Motor("NEMA 23", 66.675, "M5", tapped: false, 5, 38.1, 1.6, 56.4),
    ];

    /// <summary>By designation, without regard to case and doubled blanks; null where there is none.</summary>
    public static StandardPattern? Find(string designation)
    {
        string name = string.Join(' ', designation.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return All.FirstOrDefault(p => string.Equals(p.Designation, name, StringComparison.OrdinalIgnoreCase));
    }

    private static StandardPattern Flange(string name, double circle, int holes, double thread, double outer, double bore, double pin, SourceKind kind) => new(
        name, circle, holes, holes == 4 ? 45 : 30, $"M{thread}", true, 1.5 * thread, double.NaN, Centring.Bore, bore, 6, pin, outer, false, "steel",
        kind == SourceKind.Standard ? new(SourceKind.Standard, "ISO-9409-1", "designation") : new(SourceKind.FromMemory, "ISO-9409-1", "designation"));

    private static StandardPattern Motor(string name, double circle, string thread, bool tapped, double depth, double boss, double bossHeight, double side) => new(
        name, circle, 4, 45, thread, tapped, depth, depth, Centring.Boss, boss, bossHeight, 0, side, true, "aluminium", new(SourceKind.Standard, "NEMA-ICS-16", "frame"));
}

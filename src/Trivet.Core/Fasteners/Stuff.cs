using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Fasteners;

/// <summary>
/// A material as calculations take it, SI. Known ones follow table A9 of [VDI-2230-1] and common data sheets from memory, on the careful
/// side; those of polymers are common practice. A cell's own material of the same id replaces what it states.
/// </summary>
/// <param name="Engagement">Length that a thread must be engaged, in diameters.</param>
/// <param name="Creep">Share of the preload that is lost as it creeps.</param>
public sealed record Stuff(
    string Id, double Density, double Modulus, double PoissonRatio, double ShearStrength, double HeadPressure, double Engagement, double Creep)
{
    public static ImmutableArray<Stuff> Known { get; } =
    [
        new("steel", 7850, 210e9, 0.3, 200e6, 490e6, 1, 0),
        new("stainless-steel", 7900, 200e9, 0.3, 300e6, 630e6, 1, 0),
        new("cast-iron", 7200, 110e9, 0.26, 290e6, 850e6, 1.25, 0),
        new("aluminium", 2700, 70e9, 0.33, 130e6, 220e6, 2, 0),
        new("acetal", 1410, 2.8e9, 0.38, 35e6, 30e6, 2.5, 0.4),
        new("polyamide-glass", 1360, 6e9, 0.38, 45e6, 50e6, 2.5, 0.35),
    ];

    /// <summary>
    /// Reads a material by id. What the cell does not state of a known one stays as known; what it does not state of its own is missing.
    /// Null where neither the cell nor Trivet has it: the pointer is then listed as missing.
    /// </summary>
    /// <param name="named">Pointer of the field that names it.</param>
    public static Stuff? Read(Cell cell, string id, string named, Reading reading)
    {
        var known = Known.FirstOrDefault(k => k.Id == id);
        reading.Used("/materials", string.Join('\n', cell.Materials.Keys));
        if (!cell.Materials.TryGetValue(id, out var own))
        {
            if (known is null) reading.Missing(named);
            return known;
        }
        string at = $"/materials/{id}";
        double Take(double? value, string field, double? fallback) => fallback is { } f ? reading.Or(value, $"{at}/{field}", f) : reading.Need(value, $"{at}/{field}");
        var read = new Stuff(
            id, Take(own.Density, "density", known?.Density), Take(own.Modulus, "modulus", known?.Modulus), Take(own.PoissonRatio, "poissonRatio", known?.PoissonRatio ?? 0.33),
            Take(own.ShearStrength, "shearStrength", known?.ShearStrength), Take(own.HeadPressure, "headPressure", known?.HeadPressure),
            Take(own.Engagement, "engagement", known?.Engagement), Take(own.Creep, "creep", known?.Creep ?? 0));
        return read is { Density: > 0, Modulus: > 0, PoissonRatio: >= 0 and < 0.5, ShearStrength: > 0, HeadPressure: > 0, Engagement: > 0, Creep: >= 0 and < 1 } ? read : null;
    }
}

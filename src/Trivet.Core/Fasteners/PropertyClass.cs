using System.Collections.Immutable;

namespace Trivet.Fasteners;

/// <summary>Strength of a screw, pascal: [ISO-898-1] up to M16, [ISO-3506-1] for A2-70; from memory.</summary>
/// <param name="Tensile">Tensile strength Rm.</param>
/// <param name="Yield">Yield or proof strength Rp0.2.</param>
/// <param name="Modulus">Young's modulus.</param>
public sealed record PropertyClass(string Name, double Tensile, double Yield, double Modulus)
{
    public static ImmutableArray<PropertyClass> All { get; } =
    [
        new("8.8", 800e6, 640e6, 205e9), new("10.9", 1040e6, 940e6, 205e9), new("12.9", 1220e6, 1100e6, 205e9), new("A2-70", 700e6, 450e6, 195e9),
    ];

    public static PropertyClass? Find(string name) => All.FirstOrDefault(c => string.Equals(c.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));
}

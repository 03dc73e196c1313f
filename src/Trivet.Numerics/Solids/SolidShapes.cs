namespace Trivet.Numerics;

/// <summary>
/// Homogeneous bodies in closed form, centred on the origin, of density 1 kg/m³: mass is volume. Lengths in metres, above zero; a hollow body's inner
/// diameter is below its outer one. Axes of revolution along z. Formulas of elementary mechanics (any table of moments of inertia).
/// </summary>
public static class SolidShapes
{
    public static MassProperties Box(double x, double y, double z) =>
        Of(x * y * z, (y * y + z * z) / 12, (x * x + z * z) / 12, (x * x + y * y) / 12);

    public static MassProperties Cylinder(double diameter, double length) => Tube(diameter, 0, length);

    public static MassProperties Tube(double diameter, double inner, double length)
    {
        double squares = (diameter * diameter + inner * inner) / 4;
        double across = (3 * squares + length * length) / 12;
        return Of(Math.PI / 4 * (diameter * diameter - inner * inner) * length, across, across, squares / 2);
    }

    public static MassProperties Sphere(double diameter)
    {
        double gyration = diameter * diameter / 10;
        return Of(Math.PI / 6 * diameter * diameter * diameter, gyration, gyration, gyration);
    }

    /// <summary>A ring of round section (a torus): the section's diameter is half the difference of outer and inner diameter.</summary>
    public static MassProperties Ring(double diameter, double inner)
    {
        double middle = (diameter + inner) / 4, section = (diameter - inner) / 4;
        double across = (5 * section * section + 4 * middle * middle) / 8;
        return Of(2 * Math.PI * Math.PI * middle * section * section, across, across, (3 * section * section + 4 * middle * middle) / 4);
    }

    private static MassProperties Of(double volume, double x, double y, double z) =>
        new(volume, Vec3.Zero, volume * new Mat3(x * Vec3.UnitX, y * Vec3.UnitY, z * Vec3.UnitZ));
}

using Trivet.Numerics.Beams;

namespace Trivet.Frames;

/// <summary>
/// The section of a member: width along its y axis, height along its z axis (docs/frame.md). Second moments are about those axes: bending along the
/// height is about y.
/// </summary>
/// <param name="Area">m².</param>
/// <param name="MomentY">For bending along the height, m⁴.</param>
/// <param name="MomentZ">For bending along the width, m⁴.</param>
/// <param name="Torsion">Torsion constant, m⁴.</param>
/// <param name="ShearZ">Share of the area that bears shear along the height.</param>
/// <param name="ShearY">Along the width.</param>
public sealed record Section(double Area, double MomentY, double MomentZ, double Torsion, double ShearZ, double ShearY)
{
    /// <summary>
    /// A rectangular tube of even walls with sharp corners. Torsion after Bredt; shear shares after Cowper for thin walls ([Cowper1966], from memory).
    /// </summary>
    public static Section Tube(double width, double height, double wall, double poisson)
    {
        double w = width - 2 * wall, h = height - 2 * wall, wm = width - wall, hm = height - wall;
        return new(
            width * height - w * h, (width * height * height * height - w * h * h * h) / 12, (height * width * width * width - h * w * w * w) / 12,
            2 * wall * wm * wm * hm * hm / (wm + hm), ThinShear(wm, hm, poisson), ThinShear(hm, wm, poisson));
    }

    /// <summary>
    /// A solid rectangle. Torsion by the usual approximation, within a per cent ([Roark2002], from memory); shear shares after Cowper.
    /// </summary>
    public static Section Bar(double width, double height, double poisson)
    {
        double a = Math.Max(width, height), b = Math.Min(width, height), shear = 10 * (1 + poisson) / (12 + 11 * poisson);
        double torsion = a * b * b * b * (1.0 / 3 - 0.21 * b / a * (1 - b * b * b * b / (12 * a * a * a * a)));
        return new(width * height, width * height * height * height / 12, height * width * width * width / 12, torsion, shear, shear);
    }

    /// <param name="young">Pa.</param>
    /// <param name="massPerLength">kg/m.</param>
    public BeamProperties Beam(double young, double poisson, double massPerLength)
    {
        double shear = young / (2 * (1 + poisson)), density = massPerLength / Area;
        return new(
            young * Area, shear * Torsion, young * MomentY, young * MomentZ, ShearY * shear * Area, ShearZ * shear * Area, massPerLength,
            density * MomentY, density * MomentZ);
    }

    /// <param name="across">Width between the middles of the walls along the shear.</param>
    /// <param name="along">Depth along the shear.</param>
    private static double ThinShear(double across, double along, double poisson)
    {
        double m = across / along, n = m;
        return 10 * (1 + poisson) * (1 + 3 * m) * (1 + 3 * m)
            / (12 + 72 * m + 150 * m * m + 90 * m * m * m + poisson * (11 + 66 * m + 135 * m * m + 90 * m * m * m) + 10 * n * n * ((3 + poisson) * m + 3 * m * m));
    }
}

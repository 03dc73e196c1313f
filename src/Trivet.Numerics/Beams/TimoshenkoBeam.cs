namespace Trivet.Numerics.Beams;

/// <summary>What a straight uniform beam is made of, in its own axes: x along, y and z across, the principal axes of its section.</summary>
/// <param name="Axial">E·A, N.</param>
/// <param name="Torsion">G·J, N·m².</param>
/// <param name="BendingY">E·I about y (bending along z), N·m².</param>
/// <param name="BendingZ">E·I about z (bending along y), N·m².</param>
/// <param name="ShearY">κ·G·A along y, N; infinite for a beam that does not shear.</param>
/// <param name="ShearZ">κ·G·A along z, N.</param>
/// <param name="Mass">ρ·A, kg/m.</param>
/// <param name="RotaryY">ρ·I about y, kg·m; its part in turning the section.</param>
/// <param name="RotaryZ">ρ·I about z, kg·m.</param>
public readonly record struct BeamProperties(
    double Axial, double Torsion, double BendingY, double BendingZ, double ShearY, double ShearZ, double Mass, double RotaryY, double RotaryZ);

/// <summary>
/// Stiffness and consistent mass of a straight beam between two ends, with shear (Timoshenko): the displacements between the ends are those of the
/// beam loaded at its ends alone, so that statics are exact ([Przemieniecki1968, 5.6 and 11], from memory). Order of the twelve: u, v, w, θx, θy, θz
/// at the first end, then at the second; row by row.
/// </summary>
public static class TimoshenkoBeam
{
    /// <summary>Gauss's points and weights on 0 to 1 that integrate up to the seventh power exactly: products of two cubics have the sixth.</summary>
    private static readonly (double At, double Weight)[] Gauss = FourPoints();

    public static double[] Stiffness(in BeamProperties beam, double length)
    {
        var k = new double[144];
        Pair(k, 0, beam.Axial / length);
        Pair(k, 3, beam.Torsion / length);
        Bend(k, 1, 5, 1, beam.BendingZ, Shear(beam.BendingZ, beam.ShearY, length), length);
        Bend(k, 2, 4, -1, beam.BendingY, Shear(beam.BendingY, beam.ShearZ, length), length);
        return k;
    }

    public static double[] Mass(in BeamProperties beam, double length)
    {
        var m = new double[144];
        Line(m, 0, beam.Mass * length);
        Line(m, 3, (beam.RotaryY + beam.RotaryZ) * length);
        Swing(m, 1, 5, 1, beam.Mass, beam.RotaryZ, Shear(beam.BendingZ, beam.ShearY, length), length);
        Swing(m, 2, 4, -1, beam.Mass, beam.RotaryY, Shear(beam.BendingY, beam.ShearZ, length), length);
        return m;
    }

    /// <summary>Φ = 12·E·I/(κ·G·A·L²): how much the beam shears beside its bending.</summary>
    private static double Shear(double bending, double shear, double length) => 12 * bending / (shear * length * length);

    private static void Pair(double[] k, int i, double value)
    {
        k[i * 12 + i] = k[(i + 6) * 12 + i + 6] = value;
        k[i * 12 + i + 6] = k[(i + 6) * 12 + i] = -value;
    }

    private static void Line(double[] m, int i, double whole)
    {
        m[i * 12 + i] = m[(i + 6) * 12 + i + 6] = whole / 3;
        m[i * 12 + i + 6] = m[(i + 6) * 12 + i] = whole / 6;
    }

    /// <param name="sign">+1 where the slope of the deflection is the angle, −1 where it is its opposite.</param>
    private static void Bend(double[] k, int across, int turn, int sign, double bending, double phi, double length)
    {
        double s = bending / ((1 + phi) * length * length * length), l = sign * length;
        ReadOnlySpan<int> at = [across, turn, across + 6, turn + 6];
        ReadOnlySpan<double> values =
        [
            12, 6 * l, -12, 6 * l,
            6 * l, (4 + phi) * length * length, -6 * l, (2 - phi) * length * length,
            -12, -6 * l, 12, -6 * l,
            6 * l, (2 - phi) * length * length, -6 * l, (4 + phi) * length * length,
        ];
        for (int i = 0; i < 4; i++)
            for (int j = 0; j < 4; j++) k[at[i] * 12 + at[j]] += s * values[i * 4 + j];
    }

    private static void Swing(double[] m, int across, int turn, int sign, double mass, double rotary, double phi, double length)
    {
        ReadOnlySpan<int> at = [across, turn, across + 6, turn + 6];
        Span<double> deflection = stackalloc double[4], angle = stackalloc double[4];
        foreach (var (x, weight) in Gauss)
        {
            Shapes(x, phi, length, sign, deflection, angle);
            for (int i = 0; i < 4; i++)
                for (int j = 0; j < 4; j++)
                    m[at[i] * 12 + at[j]] += weight * length * (mass * deflection[i] * deflection[j] + rotary * angle[i] * angle[j]);
        }
    }

    /// <summary>Deflection and angle of the section at x (0 to 1) for a unit of each of the four end displacements.</summary>
    internal static void Shapes(double x, double phi, double length, int sign, Span<double> deflection, Span<double> angle)
    {
        double f = 1 / (1 + phi), l = sign * length;
        deflection[0] = f * (1 - 3 * x * x + 2 * x * x * x + phi * (1 - x));
        deflection[1] = f * l * (x - 2 * x * x + x * x * x + phi * (x - x * x) / 2);
        deflection[2] = f * (3 * x * x - 2 * x * x * x + phi * x);
        deflection[3] = f * l * (x * x * x - x * x - phi * (x - x * x) / 2);
        angle[0] = f * 6 / l * (x * x - x);
        angle[1] = f * (1 - 4 * x + 3 * x * x + phi * (1 - x));
        angle[2] = -angle[0];
        angle[3] = f * (3 * x * x - 2 * x + phi * x);
    }

    private static (double, double)[] FourPoints()
    {
        double inner = Math.Sqrt(3.0 / 7 - 2.0 / 7 * Math.Sqrt(1.2)), outer = Math.Sqrt(3.0 / 7 + 2.0 / 7 * Math.Sqrt(1.2));
        double heavy = (18 + Math.Sqrt(30)) / 72, light = (18 - Math.Sqrt(30)) / 72;
        return [((1 - outer) / 2, light), ((1 - inner) / 2, heavy), ((1 + inner) / 2, heavy), ((1 + outer) / 2, light)];
    }
}

namespace Trivet.Numerics;

/// <summary>
/// Eigenvalues and singular values of small matrices in closed form.
/// <para>
/// How it goes wrong: eighth powers of the entries occur on the way, so magnitudes beyond 1e±35 overflow or vanish. The middle singular
/// value loses digits as (σ₁/σ₂)²·ε, so a matrix of rank one shows up to √ε·σ₁ there. The smallest comes from the determinant
/// instead of a difference: good to some ε·σ₁ also in a badly conditioned matrix. Not a number in any entry gives not a
/// number throughout.
/// </para>
/// <para>
/// Model, symmetric 3×3: A = m·I + D with D free of trace, K = √(tr D²/6). The eigenvalues of D are 2K·cos(θ/3 + 2πk/3) with
/// cos θ = tr D³/(6K³) (trigonometric solution of the cubic, elementary). Near a double eigenvalue arccos would turn a rounding
/// error ε into √ε; so sin θ is computed on its own, as ‖N‖/(√6·K²) with N the part of D² that is orthogonal to I and D (the
/// discriminant as a sum of squares), and θ = atan2(sin θ, cos θ).
/// </para>
/// </summary>
public static class Spectrum
{
    private static readonly double Sqrt6 = Math.Sqrt(6);

    /// <summary>Eigenvalues of a symmetric matrix, largest first. Only the upper triangle is read.</summary>
    public static Vec3 Symmetric(in Mat3 a) =>
        Symmetric(a.Row0.X, a.Row0.Y, a.Row0.Z, a.Row1.Y, a.Row1.Z, a.Row2.Z);

    /// <summary>Singular values, largest first, none negative.</summary>
    public static Vec3 SingularValues(in Mat3 m)
    {
        Vec3 a = m.Row0, b = m.Row1, c = m.Row2;
        var squares = Symmetric(
            a.X * a.X + b.X * b.X + c.X * c.X, a.X * a.Y + b.X * b.Y + c.X * c.Y, a.X * a.Z + b.X * b.Z + c.X * c.Z,
            a.Y * a.Y + b.Y * b.Y + c.Y * c.Y, a.Y * a.Z + b.Y * b.Z + c.Y * c.Z,
            a.Z * a.Z + b.Z * b.Z + c.Z * c.Z);
        double largest = Math.Sqrt(squares.X), middle = Math.Sqrt(Math.Max(squares.Y, 0));
        double area = largest * middle;
        double smallest = area > 0 ? Math.Min(middle, Math.Abs(m.Determinant()) / area) : area;
        return new(largest, middle, smallest);
    }

    /// <summary>
    /// Singular values of the 2×2 matrix [a b; c d], larger first: half the sum and half the difference of the lengths of
    /// (a + d, b − c) and (a − d, b + c); the smaller from the determinant.
    /// </summary>
    public static (double Larger, double Smaller) SingularValues(double a, double b, double c, double d)
    {
        double larger = (Math.Sqrt((a + d) * (a + d) + (b - c) * (b - c)) + Math.Sqrt((a - d) * (a - d) + (b + c) * (b + c))) / 2;
        return (larger, larger > 0 ? Math.Min(larger, Math.Abs(a * d - b * c) / larger) : larger);
    }

    private static Vec3 Symmetric(double xx, double xy, double xz, double yy, double yz, double zz)
    {
        double mean = (xx + yy + zz) / 3;
        double a = xx - mean, b = yy - mean, c = zz - mean;

        // D², its trace, and tr D³ = D² : D.
        double saa = a * a + xy * xy + xz * xz, sbb = xy * xy + b * b + yz * yz, scc = xz * xz + yz * yz + c * c;
        double sab = xy * (a + b) + xz * yz, sac = xz * (a + c) + xy * yz, sbc = yz * (b + c) + xy * xz;
        double trace2 = saa + sbb + scc;
        if (trace2 == 0) return new(mean, mean, mean);
        double trace3 = saa * a + sbb * b + scc * c + 2 * (sab * xy + sac * xz + sbc * yz);

        double along = trace3 / trace2, third = trace2 / 3;
        double naa = saa - along * a - third, nbb = sbb - along * b - third, ncc = scc - along * c - third;
        double nab = sab - along * xy, nac = sac - along * xz, nbc = sbc - along * yz;
        double n = Math.Sqrt(naa * naa + nbb * nbb + ncc * ncc + 2 * (nab * nab + nac * nac + nbc * nbc));

        double k = Math.Sqrt(trace2 / 6);
        var (sin, cos) = Math.SinCos(Math.Atan2(n / (Sqrt6 * k), along) / 3);
        double top = 2 * k * cos, bottom = -k * (cos + Math.Sqrt(3) * sin);
        return new(mean + top, mean - (top + bottom), mean + bottom);
    }
}

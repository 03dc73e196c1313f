using System.Collections.Immutable;

namespace Trivet.Numerics.Tests.Solids;

/// <summary>
/// The slow twin: integrals over the faces instead of tetrahedra, after D. Eberly, Polyhedral Mass Properties (2002), from memory: the divergence theorem
/// with sub-expressions of the corners' coordinates, and the normal's components as weights.
/// </summary>
internal static class FaceIntegrals
{
    public static MassProperties Of(ImmutableArray<Vec3> corners)
    {
        double[] sums = new double[10];
        for (int i = 0; i < corners.Length; i += 3)
        {
            Vec3 a = corners[i], b = corners[i + 1], c = corners[i + 2], n = (b - a).Cross(c - a);
            var x = Terms(a.X, b.X, c.X);
            var y = Terms(a.Y, b.Y, c.Y);
            var z = Terms(a.Z, b.Z, c.Z);
            sums[0] += n.X * x.F1;
            sums[1] += n.X * x.F2;
            sums[2] += n.Y * y.F2;
            sums[3] += n.Z * z.F2;
            sums[4] += n.X * x.F3;
            sums[5] += n.Y * y.F3;
            sums[6] += n.Z * z.F3;
            sums[7] += n.X * (a.Y * x.G0 + b.Y * x.G1 + c.Y * x.G2);
            sums[8] += n.Y * (a.Z * y.G0 + b.Z * y.G1 + c.Z * y.G2);
            sums[9] += n.Z * (a.X * z.G0 + b.X * z.G1 + c.X * z.G2);
        }

        double volume = sums[0] / 6;
        var centre = new Vec3(sums[1], sums[2], sums[3]) / (24 * volume);
        double xx = sums[4] / 60, yy = sums[5] / 60, zz = sums[6] / 60, xy = sums[7] / 120, yz = sums[8] / 120, zx = sums[9] / 120;
        var origin = new Mat3(new(yy + zz, -xy, -zx), new(-xy, xx + zz, -yz), new(-zx, -yz, xx + yy));
        double s = centre.NormSquared;
        var shift = new Mat3(s * Vec3.UnitX - centre.X * centre, s * Vec3.UnitY - centre.Y * centre, s * Vec3.UnitZ - centre.Z * centre);
        return new(volume, centre, origin + -volume * shift);
    }

    private static (double F1, double F2, double F3, double G0, double G1, double G2) Terms(double w0, double w1, double w2)
    {
        double sum = w0 + w1, square = w0 * w0, middle = square + w1 * sum;
        double f1 = sum + w2, f2 = middle + w2 * f1, f3 = w0 * square + w1 * middle + w2 * f2;
        return (f1, f2, f3, f2 + w0 * (f1 + w0), f2 + w1 * (f1 + w1), f2 + w2 * (f1 + w2));
    }
}

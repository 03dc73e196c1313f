using System.Collections.Immutable;

namespace Trivet.Numerics.Tests.Solids;

/// <summary>Closed meshes with a known body in them.</summary>
internal static class Meshes
{
    /// <summary>A block from a corner, twelve triangles facing outward.</summary>
    public static ImmutableArray<Vec3> Box(Vec3 low, double x, double y, double z)
    {
        Vec3 P(int i) => low + new Vec3(x * (i & 1), y * ((i >> 1) & 1), z * ((i >> 2) & 1));
        int[] corners = [0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5];
        return [.. corners.Select(P)];
    }

    /// <summary>A closed surface of revolution-like patches: a ball whose radius varies with direction, by latitude and longitude.</summary>
    public static ImmutableArray<Vec3> Ball(Vec3 centre, int rings, Func<Vec3, double> radius)
    {
        int around = 2 * rings;
        Vec3 At(int ring, int i)
        {
            double polar = Math.PI * ring / rings, turn = Math.Tau * (i % around) / around;
            if (ring == 0) return centre + radius(Vec3.UnitZ) * Vec3.UnitZ;
            if (ring == rings) return centre - radius(-Vec3.UnitZ) * Vec3.UnitZ;
            var direction = new Vec3(Math.Sin(polar) * Math.Cos(turn), Math.Sin(polar) * Math.Sin(turn), Math.Cos(polar));
            return centre + radius(direction) * direction;
        }

        var corners = ImmutableArray.CreateBuilder<Vec3>();
        for (int ring = 0; ring < rings; ring++)
        {
            for (int i = 0; i < around; i++)
            {
                if (ring > 0) corners.AddRange(At(ring, i), At(ring + 1, i), At(ring, i + 1));
                if (ring < rings - 1) corners.AddRange(At(ring, i + 1), At(ring + 1, i), At(ring + 1, i + 1));
            }
        }
        return corners.ToImmutable();
    }
}

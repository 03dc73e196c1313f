using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>A volume with how well it is known.</summary>
/// <param name="CubicMetres">The volume.</param>
/// <param name="Error">Estimate of its error, the same unit: what halving the grid changed after extrapolation. Not a rigorous bound.</param>
public sealed record VolumeEstimate(double CubicMetres, double Error);

/// <summary>Shape and size of a reachable set. Resolution is the number of grid steps along its longest side.</summary>
public static class ReachableVolume
{
    /// <summary>Fine enough for a picture.</summary>
    public const int DisplayResolution = 32;

    private const int Coarse = 20;

    /// <summary>The closed surface of the set, base frame; empty where nothing is reached, and for two chains, which reach an area only.</summary>
    public static SurfaceMesh Surface(ReachableSet set, int resolution = DisplayResolution)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(resolution, 4);
        if (set.Robot.Planar) return SurfaceMesh.Empty;
        var box = TightBox(set);
        if (box.IsEmpty) return SurfaceMesh.Empty;
        double side = Math.Max(box.Size.X, Math.Max(box.Size.Y, box.Size.Z)) / resolution;
        int nx = Steps(box.Size.X), ny = Steps(box.Size.Y), nz = Steps(box.Size.Z);
        // One empty layer all round closes the surface.
        return Creases.Sharpened(Marching.Surface(set.Contains, box.Grown(side), nx + 2, ny + 2, nz + 2), set.Contains);

        int Steps(double length) => Math.Max(2, (int)Math.Ceiling(length / side));
    }

    /// <summary>
    /// The enclosed volume, from surfaces at two resolutions. Flat triangles leave out a share that falls with the square of the
    /// step, so that the two extrapolate (Richardson); half of what the extrapolation moved is stated as the error.
    /// </summary>
    public static VolumeEstimate Volume(ReachableSet set, int resolution = 64)
    {
        double coarse = Surface(set, resolution / 2).Volume(), fine = Surface(set, resolution).Volume();
        double moved = (fine - coarse) / 3;
        return new(fine + moved, Math.Abs(moved) / 2);
    }

    /// <summary>The outline at a height of the base frame; U = x, V = y. Two chains reach a line there: no loops.</summary>
    public static Outline HorizontalSection(ReachableSet set, double z, int resolution = 80)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(resolution, 4);
        Vec3 origin = new(0, 0, z);
        var box = set.Box;
        if (set.Robot.Planar || box.IsEmpty || !(z >= box.Low.Z && z <= box.High.Z)) return new(origin, Vec3.UnitX, Vec3.UnitY, []);
        return Section(set.Contains, origin, Vec3.UnitX, Vec3.UnitY, (box.Low.X, box.High.X), (box.Low.Y, box.High.Y), resolution);
    }

    /// <summary>
    /// The outline in the upright plane through a point of the base frame, U level at an azimuth (radians, counter-clockwise from x
    /// seen from above), V = z. For two chains take azimuth 0 through y = 0: the whole reach.
    /// </summary>
    public static Outline VerticalSection(ReachableSet set, Vec3 through, double azimuth, int resolution = 80)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(resolution, 4);
        var (s, c) = Math.SinCos(azimuth);
        Vec3 u = new(c, s, 0), origin = through with { Z = 0 };
        var box = set.Box;
        if (box.IsEmpty) return new(origin, u, Vec3.UnitZ, []);
        double half = 0.5 * (box.Size with { Z = 0 }).Norm, middle = (box.Centre - origin).Dot(u);
        return Section(set.Contains, origin, u, Vec3.UnitZ, (middle - half, middle + half), (box.Low.Z, box.High.Z), resolution);
    }

    /// <summary>A coarse cut finds where the set is, a fine one follows its border.</summary>
    internal static Outline Section(
        Func<Vec3, bool> contains, Vec3 origin, Vec3 u, Vec3 v, (double From, double To) alongU, (double From, double To) alongV, int resolution)
    {
        const int Search = 48;
        var found = Bounds.Nothing;
        double du = (alongU.To - alongU.From) / Search, dv = (alongV.To - alongV.From) / Search;
        for (int j = 0; j <= Search; j++)
        {
            for (int i = 0; i <= Search; i++)
            {
                Vec3 at = new(alongU.From + i * du, alongV.From + j * dv, 0);
                if (contains(origin + at.X * u + at.Y * v)) found = found.With(at);
            }
        }

        if (found.IsEmpty) return new(origin, u, v, []);
        double u0 = found.Low.X - du, u1 = found.High.X + du, v0 = found.Low.Y - dv, v1 = found.High.Y + dv;
        double side = Math.Max(u1 - u0, v1 - v0) / resolution;
        int n = Math.Max(4, (int)Math.Ceiling((u1 - u0) / side)), m = Math.Max(4, (int)Math.Ceiling((v1 - v0) / side));
        return Outline.Cut(contains, origin, u, v, (u0, u1), (v0, v1), n, m);
    }

    /// <summary>The box of the set as a coarse grid sees it, one of its steps larger all round; empty when the grid meets nothing.</summary>
    private static Bounds TightBox(ReachableSet set)
    {
        var box = set.Box;
        if (box.IsEmpty) return Bounds.Nothing;
        var found = Bounds.Nothing;
        Vec3 step = box.Size / Coarse;
        for (int k = 0; k <= Coarse; k++)
        {
            for (int j = 0; j <= Coarse; j++)
            {
                for (int i = 0; i <= Coarse; i++)
                {
                    Vec3 p = box.Low + new Vec3(i * step.X, j * step.Y, k * step.Z);
                    if (set.Contains(p)) found = found.With(p);
                }
            }
        }

        return found.IsEmpty ? found : new Bounds(found.Low - step, found.High + step).Intersect(box);
    }
}

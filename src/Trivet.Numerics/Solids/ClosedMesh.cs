using System.Collections.Immutable;

namespace Trivet.Numerics;

/// <summary>What is wrong with a mesh that is to bound a body.</summary>
public enum MeshFault
{
    None,
    /// <summary>No triangle with an area.</summary>
    Empty,
    /// <summary>An edge borders one triangle only, or an odd number: there is a hole.</summary>
    Open,
    /// <summary>Two neighbours run along their edge the same way: one of both is turned over.</summary>
    Flipped,
    /// <summary>Closed, but its triangles face inward.</summary>
    Inverted,
    /// <summary>Closed, but without a volume.</summary>
    Flat,
}

/// <summary>A mesh looked at: its fault, and where the first bad edge is.</summary>
/// <param name="BadEdges">How many edges are open or flipped.</param>
/// <param name="At">Middle of the first of them, in the mesh's unit; not a number where there is none.</param>
/// <param name="Body">For density 1: mass is volume. Meaningful only without a fault.</param>
public sealed record MeshReport(MeshFault Fault, int Triangles, int BadEdges, Vec3 At, MassProperties Body);

/// <summary>
/// Exact volume, centre and inertia tensor of the body within a closed surface of triangles.
/// <para>
/// It goes wrong where the surface passes through itself: that is not looked for, and an overlap then counts twice. Vertices count as one where their
/// coordinates are the same to the last bit, as programs write them; triangles without area are left out.
/// </para>
/// <para>
/// Closed: every edge is run along as often one way as the other. Outward: the signed volume is positive. The integrals are sums over the tetrahedra
/// from a point to each triangle (divergence theorem; Mirtich, Fast and accurate computation of polyhedral mass properties, 1996, and Eberly,
/// Polyhedral mass properties, 2002, both from memory): with d = a·(b×c), volume d/6, first moment d/24·(a+b+c), second moments
/// d/120·(s·sᵀ + a·aᵀ + b·bᵀ + c·cᵀ), s = a+b+c. The point is the middle of the mesh, so that little cancels.
/// </para>
/// </summary>
public static class ClosedMesh
{
    /// <summary>Volume below this share of the bounding box's cube of diagonal is none: rounding.</summary>
    private const double FlatBelow = 1e-12;

    /// <param name="corners">Three for each triangle, counter-clockwise seen from outside. Finite numbers.</param>
    public static MeshReport Of(ImmutableArray<Vec3> corners)
    {
        if (corners.Length % 3 != 0) throw new ArgumentException("A mesh has three corners for each triangle.", nameof(corners));
        var (vertices, triangles) = Weld(corners);
        int count = triangles.Count / 3;
        if (count == 0) return new(MeshFault.Empty, 0, 0, Vec3.NaN, default);

        // Positive where an edge is run along more often from its smaller to its larger vertex than back.
        var runs = new Dictionary<(int, int), (int Net, int Uses)>();
        for (int i = 0; i < triangles.Count; i += 3)
        {
            for (int k = 0; k < 3; k++)
            {
                int from = triangles[i + k], to = triangles[i + (k + 1) % 3];
                var edge = from < to ? (from, to) : (to, from);
                runs.TryGetValue(edge, out var run);
                runs[edge] = (run.Net + (from < to ? 1 : -1), run.Uses + 1);
            }
        }

        int open = 0, flipped = 0;
        Vec3 firstOpen = Vec3.NaN, firstFlipped = Vec3.NaN;
        foreach (var (edge, run) in runs)
        {
            var middle = (vertices[edge.Item1] + vertices[edge.Item2]) / 2;
            if (run.Uses % 2 != 0)
            {
                if (open++ == 0) firstOpen = middle;
            }
            else if (run.Net != 0 && flipped++ == 0) firstFlipped = middle;
        }

        var (low, high) = Box(vertices);
        var body = Integrals(vertices, triangles, (low + high) / 2);
        double diagonal = (high - low).Norm;
        var fault = open > 0 ? MeshFault.Open
            : flipped > 0 ? MeshFault.Flipped
            : Math.Abs(body.Mass) <= FlatBelow * diagonal * diagonal * diagonal ? MeshFault.Flat
            : body.Mass < 0 ? MeshFault.Inverted : MeshFault.None;
        return new(fault, count, open > 0 ? open : flipped, open > 0 ? firstOpen : firstFlipped, body);
    }

    private static MassProperties Integrals(List<Vec3> vertices, List<int> triangles, Vec3 origin)
    {
        double volume = 0;
        Vec3 first = Vec3.Zero, squares = Vec3.Zero, products = Vec3.Zero;
        for (int i = 0; i < triangles.Count; i += 3)
        {
            Vec3 a = vertices[triangles[i]] - origin, b = vertices[triangles[i + 1]] - origin, c = vertices[triangles[i + 2]] - origin, s = a + b + c;
            double d = a.Dot(b.Cross(c));
            volume += d / 6;
            first += d / 24 * s;
            squares += d / 120 * new Vec3(
                s.X * s.X + a.X * a.X + b.X * b.X + c.X * c.X, s.Y * s.Y + a.Y * a.Y + b.Y * b.Y + c.Y * c.Y, s.Z * s.Z + a.Z * a.Z + b.Z * b.Z + c.Z * c.Z);
            products += d / 120 * new Vec3(
                s.Y * s.Z + a.Y * a.Z + b.Y * b.Z + c.Y * c.Z, s.Z * s.X + a.Z * a.X + b.Z * b.X + c.Z * c.X, s.X * s.Y + a.X * a.Y + b.X * b.Y + c.X * c.Y);
        }

        if (volume == 0) return new(0, origin, default);
        var centre = first / volume;
        var about = new Mat3(
            new(squares.Y + squares.Z, -products.Z, -products.Y), new(-products.Z, squares.X + squares.Z, -products.X),
            new(-products.Y, -products.X, squares.X + squares.Y));
        return new(volume, origin + centre, about + -volume * MassProperties.Steiner(centre));
    }

    private static (List<Vec3> Vertices, List<int> Triangles) Weld(ImmutableArray<Vec3> corners)
    {
        var index = new Dictionary<Vec3, int>();
        var vertices = new List<Vec3>();
        var triangles = new List<int>(corners.Length);
        for (int i = 0; i < corners.Length; i += 3)
        {
            int a = IndexOf(corners[i]), b = IndexOf(corners[i + 1]), c = IndexOf(corners[i + 2]);
            if (a == b || b == c || c == a) continue;
            triangles.AddRange([a, b, c]);
        }

        return (vertices, triangles);

        int IndexOf(Vec3 v)
        {
            // Zero and minus zero are one place.
            var key = new Vec3(v.X + 0.0, v.Y + 0.0, v.Z + 0.0);
            if (index.TryGetValue(key, out int known)) return known;
            vertices.Add(key);
            return index[key] = vertices.Count - 1;
        }
    }

    private static (Vec3 Low, Vec3 High) Box(List<Vec3> vertices)
    {
        Vec3 low = vertices[0], high = vertices[0];
        foreach (var v in vertices)
        {
            low = new(Math.Min(low.X, v.X), Math.Min(low.Y, v.Y), Math.Min(low.Z, v.Z));
            high = new(Math.Max(high.X, v.X), Math.Max(high.Y, v.Y), Math.Max(high.Z, v.Z));
        }
        return (low, high);
    }
}

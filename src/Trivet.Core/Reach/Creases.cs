using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// Sharpens the edges that a grid cut off. Where the border of the set bulges (or dents) beyond a triangle edge by more than a bend
/// would, the edge crosses a crease: two limits meet there. It is split at the point that stands out farthest, which lies on the crease, and
/// so are the triangles beside it. An edge is split for both of its triangles alike, so that a closed surface stays closed.
/// </summary>
internal static class Creases
{
    /// <summary>A smooth border stands off an edge of length a by a²/(8R), one or two hundredths of a at display resolution.</summary>
    private const double Bulge = 0.06;
    private const int Sections = 8;
    private const int Bisections = 8;
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    public static SurfaceMesh Sharpened(SurfaceMesh mesh, Func<Vec3, bool> contains)
    {
        // One entry an edge, with the sum of the normals of its two triangles.
        var edges = new Dictionary<long, int>(mesh.Triangles.Length / 2);
        var normals = new List<Vec3>(mesh.Triangles.Length / 2);
        var ends = new List<(int A, int B)>(mesh.Triangles.Length / 2);
        var edgeOf = new int[mesh.Triangles.Length];
        for (int t = 0; t < mesh.Triangles.Length; t += 3)
        {
            int a = mesh.Triangles[t], b = mesh.Triangles[t + 1], c = mesh.Triangles[t + 2];
            Vec3 normal = (mesh.Vertex(b) - mesh.Vertex(a)).Cross(mesh.Vertex(c) - mesh.Vertex(a));
            // A triangle of no area has no direction to add.
            if (normal.NormSquared > 0) normal = normal.Unit();
            for (int k = 0; k < 3; k++)
            {
                int from = mesh.Triangles[t + k], to = mesh.Triangles[t + (k + 1) % 3];
                // Not the two halves of a long: their exclusive or, its hash, is alike for all neighbours.
                long key = (long)Math.Min(from, to) * (mesh.Vertices.Length / 3) + Math.Max(from, to);
                if (!edges.TryGetValue(key, out int edge))
                {
                    edges.Add(key, edge = normals.Count);
                    normals.Add(Vec3.Zero);
                    ends.Add((Math.Min(from, to), Math.Max(from, to)));
                }

                normals[edge] += normal;
                edgeOf[t + k] = edge;
            }
        }

        var vertices = ImmutableArray.CreateBuilder<double>(mesh.Vertices.Length + 1024);
        vertices.AddRange(mesh.Vertices);
        var split = new int[normals.Count];
        for (int edge = 0; edge < split.Length; edge++)
        {
            split[edge] = -1;
            if (Crest(contains, mesh.Vertex(ends[edge].A), mesh.Vertex(ends[edge].B), normals[edge]) is not { } crest) continue;
            split[edge] = vertices.Count / 3;
            vertices.Add(crest.X);
            vertices.Add(crest.Y);
            vertices.Add(crest.Z);
        }

        var triangles = ImmutableArray.CreateBuilder<int>(mesh.Triangles.Length + 1024);
        for (int t = 0; t < mesh.Triangles.Length; t += 3)
        {
            Split(
                mesh.Triangles[t], mesh.Triangles[t + 1], mesh.Triangles[t + 2],
                split[edgeOf[t]], split[edgeOf[t + 1]], split[edgeOf[t + 2]]);
        }

        return new(vertices.DrainToImmutable(), triangles.DrainToImmutable());

        // ab, bc, ca: the vertex that splits that side, or −1. Turned until the sides that are split come first.
        void Split(int a, int b, int c, int ab, int bc, int ca)
        {
            int count = (ab >= 0 ? 1 : 0) + (bc >= 0 ? 1 : 0) + (ca >= 0 ? 1 : 0);
            while (count is 1 or 2 && (ab < 0 || (count == 2 && bc < 0)))
            {
                (a, b, c) = (b, c, a);
                (ab, bc, ca) = (bc, ca, ab);
            }

            switch (count)
            {
                case 0:
                    Add(a, b, c);
                    break;
                case 1:
                    Add(a, ab, c);
                    Add(ab, b, c);
                    break;
                case 2:
                    Add(ab, b, bc);
                    // The crease runs from one crest to the other, so this side of it is the quadrangle a, ab, bc, c: cut along its shorter diagonal.
                    if (Square(a, bc) < Square(ab, c))
                    {
                        Add(a, ab, bc);
                        Add(a, bc, c);
                    }
                    else
                    {
                        Add(ab, bc, c);
                        Add(a, ab, c);
                    }

                    break;
                default:
                    Add(a, ab, ca);
                    Add(ab, b, bc);
                    Add(ca, bc, c);
                    Add(ab, bc, ca);
                    break;
            }
        }

        void Add(int a, int b, int c)
        {
            triangles.Add(a);
            triangles.Add(b);
            triangles.Add(c);
        }

        double Square(int a, int b) => (At(a) - At(b)).NormSquared;

        Vec3 At(int v) => new(vertices[3 * v], vertices[3 * v + 1], vertices[3 * v + 2]);
    }

    /// <summary>The point of the border farthest off an edge, in the plane of the edge and its normal; null where it is as near as a bend would have it.</summary>
    private static Vec3? Crest(Func<Vec3, bool> contains, Vec3 a, Vec3 b, Vec3 normal)
    {
        Vec3 along = b - a;
        double length = along.Norm;
        Vec3 off = (normal - normal.Dot(along) / along.NormSquared * along).Unit();
        if (!(length > 0) || !off.IsFinite) return null;

        Vec3 middle = 0.5 * (a + b);
        bool bulges = contains(middle);
        if (!bulges) off = -off;
        if (contains(middle + Bulge * length * off) != bulges) return null;

        // Along the edge the border rises to the crease and falls again: golden section.
        double low = 0.02, high = 0.98, left = high - Golden * (high - low), right = low + Golden * (high - low);
        double atLeft = Height(left), atRight = Height(right);
        for (int n = 0; n < Sections; n++)
        {
            if (atLeft > atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                atLeft = Height(left = high - Golden * (high - low));
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                atRight = Height(right = low + Golden * (high - low));
            }
        }

        double best = atLeft > atRight ? left : right, height = Math.Max(atLeft, atRight);
        // Higher than the edge is long: not a crease of this edge.
        return height < 0.99 * length ? a + best * along + height * off : null;

        double Height(double share)
        {
            double near = 0, far = length;
            for (int n = 0; n < Bisections; n++)
            {
                double between = 0.5 * (near + far);
                if (contains(a + share * along + between * off) == bulges) near = between;
                else far = between;
            }

            // Inside, so that a vertex is always reached.
            return bulges ? near : far;
        }
    }
}

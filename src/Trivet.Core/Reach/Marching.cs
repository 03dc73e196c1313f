using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// The surface of a set that is known only by asking "is this point inside?". A grid of cubes is cut into six tetrahedra each, all
/// along the same diagonal (Freudenthal–Kuhn), so that the cuts of neighbours match; each tetrahedron with corners on both sides
/// of the border contributes one or two triangles, and each of their vertices is moved on to the border by bisection along its edge.
/// Tetrahedra leave no ambiguous case, hence the surface is closed by construction. Edges sharper than a cube are cut off (see <see cref="Creases"/>);
/// what is thinner than a cube can be missed.
/// <para>Method: marching tetrahedra, common practice of the field; the table is computed below, not copied.</para>
/// </summary>
internal static class Marching
{
    /// <summary>Bisections of an edge: leaves 1/4096 of the cube's side, far below what the flat triangles leave out.</summary>
    private const int Bisections = 12;

    /// <summary>
    /// The surface inside a box with a given number of cubes along each axis. What reaches the box's own border is closed off there.
    /// </summary>
    public static SurfaceMesh Surface(Func<Vec3, bool> contains, Bounds box, int nx, int ny, int nz)
    {
        int px = nx + 1, py = ny + 1, pz = nz + 1;
        Vec3 step = new(box.Size.X / nx, box.Size.Y / ny, box.Size.Z / nz);
        var inside = new bool[px * py * pz];
        for (int k = 1; k < nz; k++)
        {
            for (int j = 1; j < ny; j++)
            {
                for (int i = 1; i < nx; i++) inside[(k * py + j) * px + i] = contains(Point(i, j, k));
            }
        }

        Span<int> corner = stackalloc int[8];
        for (int c = 0; c < 8; c++) corner[c] = ((c >> 2) * py + (c >> 1 & 1)) * px + (c & 1);

        var vertices = ImmutableArray.CreateBuilder<double>();
        var triangles = ImmutableArray.CreateBuilder<int>();
        var onEdge = new Dictionary<int, int>();
        for (int k = 0; k < nz; k++)
        {
            for (int j = 0; j < ny; j++)
            {
                for (int i = 0; i < nx; i++)
                {
                    int origin = (k * py + j) * px + i, mask = 0;
                    for (int c = 0; c < 8; c++)
                    {
                        if (inside[origin + corner[c]]) mask |= 1 << c;
                    }

                    if (mask is 0 or 255) continue;
                    foreach (var tetrahedron in Tetrahedra)
                    {
                        foreach (var (from, to) in tetrahedron.Cuts(mask)) triangles.Add(VertexOn(i, j, k, from, to));
                    }
                }
            }
        }

        return new(vertices.DrainToImmutable(), triangles.DrainToImmutable());

        Vec3 Point(int i, int j, int k) => new(box.Low.X + i * step.X, box.Low.Y + j * step.Y, box.Low.Z + k * step.Z);

        // An edge runs from its lower corner in one of seven directions, so that its grid point and direction name it in every cube.
        int VertexOn(int i, int j, int k, int from, int to)
        {
            int a = from & to, direction = from ^ to;
            int key = 7 * (((k + (a >> 2)) * py + j + (a >> 1 & 1)) * px + i + (a & 1)) + direction - 1;
            if (onEdge.TryGetValue(key, out int index)) return index;
            Vec3 within = Point(i + (from & 1), j + (from >> 1 & 1), k + (from >> 2));
            Vec3 without = Point(i + (to & 1), j + (to >> 1 & 1), k + (to >> 2));
            Vec3 border = OnBorder(contains, within, without);
            index = vertices.Count / 3;
            vertices.Add(border.X);
            vertices.Add(border.Y);
            vertices.Add(border.Z);
            onEdge.Add(key, index);
            return index;
        }
    }

    /// <summary>A point of the border between a point inside and one outside; itself inside.</summary>
    public static Vec3 OnBorder(Func<Vec3, bool> contains, Vec3 within, Vec3 without)
    {
        for (int n = 0; n < Bisections; n++)
        {
            Vec3 middle = 0.5 * (within + without);
            if (contains(middle)) within = middle;
            else without = middle;
        }

        return within;
    }

    /// <summary>
    /// One of the six tetrahedra: corners 000 → a → a+b → 111 of the unit cube, a corner's bits being its x, y, z. For each set of
    /// corners inside it holds the triangles as three cut edges (inside corner, outside corner) each, turned outward.
    /// </summary>
    private sealed class Tetrahedron
    {
        private readonly int[] _corners;
        private readonly (int From, int To)[][] _cuts = new (int, int)[16][];

        public Tetrahedron(int first, int second)
        {
            _corners = [0, first, first | second, 7];
            for (int state = 0; state < 16; state++)
            {
                int[] within = [.. _corners.Where((_, n) => (state >> n & 1) == 1)], without = [.. _corners.Except(within)];
                _cuts[state] = (within.Length, without.Length) switch
                {
                    (1, 3) => Outward((within[0], without[0]), (within[0], without[1]), (within[0], without[2])),
                    (3, 1) => Outward((within[0], without[0]), (within[1], without[0]), (within[2], without[0])),
                    (2, 2) =>
                    [
                        .. Outward((within[0], without[0]), (within[0], without[1]), (within[1], without[1])),
                        .. Outward((within[0], without[0]), (within[1], without[1]), (within[1], without[0])),
                    ],
                    _ => [],
                };
            }
        }

        /// <summary>The cut edges, three a triangle, for a cube whose corners inside are the set bits of a mask.</summary>
        public ReadOnlySpan<(int From, int To)> Cuts(int mask)
        {
            int state = 0;
            for (int n = 0; n < 4; n++) state |= (mask >> _corners[n] & 1) << n;
            return _cuts[state];
        }

        private static (int, int)[] Outward((int From, int To) a, (int From, int To) b, (int From, int To) c)
        {
            Vec3 normal = (Middle(b) - Middle(a)).Cross(Middle(c) - Middle(a));
            return normal.Dot(Corner(a.To) - Corner(a.From)) > 0 ? [a, b, c] : [a, c, b];
        }

        private static Vec3 Corner(int bits) => new(bits & 1, bits >> 1 & 1, bits >> 2);

        private static Vec3 Middle((int From, int To) edge) => 0.5 * (Corner(edge.From) + Corner(edge.To));
    }

    private static readonly Tetrahedron[] Tetrahedra = [new(1, 2), new(1, 4), new(2, 1), new(2, 4), new(4, 1), new(4, 2)];
}

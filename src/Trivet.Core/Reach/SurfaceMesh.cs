using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>A closed surface of triangles, base frame, metres. Triangles turn counter-clockwise seen from outside.</summary>
/// <param name="Vertices">x, y, z of each vertex in turn.</param>
/// <param name="Triangles">Three vertex indices a triangle.</param>
public sealed record SurfaceMesh(ImmutableArray<double> Vertices, ImmutableArray<int> Triangles)
{
    public static SurfaceMesh Empty { get; } = new([], []);

    public bool IsEmpty => Triangles.IsEmpty;

    public Vec3 Vertex(int index) => new(Vertices[3 * index], Vertices[3 * index + 1], Vertices[3 * index + 2]);

    /// <summary>Enclosed volume, cubic metres, by the divergence theorem: the sum of the tetrahedra from one point to the triangles.</summary>
    public double Volume()
    {
        if (IsEmpty) return 0;
        // Taken from a vertex instead of the origin, the terms stay small beside the sum.
        var from = Vertex(0);
        double six = 0;
        for (int t = 0; t < Triangles.Length; t += 3)
        {
            six += (Vertex(Triangles[t]) - from).Dot((Vertex(Triangles[t + 1]) - from).Cross(Vertex(Triangles[t + 2]) - from));
        }

        return six / 6;
    }

    public Bounds Box()
    {
        var box = Bounds.Nothing;
        for (int v = 0; v < Vertices.Length / 3; v++) box = box.With(Vertex(v));
        return box;
    }
}

using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Views.Pictures;

/// <summary>A plane face.</summary>
/// <param name="Normal">Unit, outward.</param>
/// <param name="Offset">Inside where <c>Normal·p ≤ Offset</c>, metres.</param>
/// <param name="Loop">Indices of its corners, counter-clockwise seen from outside.</param>
internal sealed record Face(Vec3 Normal, double Offset, ImmutableArray<int> Loop);

/// <summary>An edge between two faces.</summary>
/// <param name="Smooth">Stands for a curved surface: drawn as its outline only.</param>
internal readonly record struct Edge(int From, int To, int Left, int Right, bool Smooth);

/// <summary>A convex body with plane faces, cell frame, metres. Round bodies are prisms whose long edges are smooth.</summary>
internal sealed class ConvexSolid
{
    private ConvexSolid(ImmutableArray<Vec3> vertices, IEnumerable<ImmutableArray<int>> loops, Func<int, int, bool> smooth)
    {
        Vertices = vertices;
        Faces = [.. loops.Select(Plane)];
        var first = new Dictionary<(int, int), int>();
        var edges = ImmutableArray.CreateBuilder<Edge>();
        for (int f = 0; f < Faces.Length; f++)
        {
            var loop = Faces[f].Loop;
            for (int i = 0; i < loop.Length; i++)
            {
                int a = loop[i], b = loop[(i + 1) % loop.Length];
                if (first.TryGetValue((b, a), out int other)) edges.Add(new(b, a, other, f, smooth(a, b)));
                else first[(a, b)] = f;
            }
        }

        Edges = edges.ToImmutable();
        Low = vertices.Aggregate(Vec3.Min);
        High = vertices.Aggregate(Vec3.Max);
    }

    public ImmutableArray<Vec3> Vertices { get; }
    public ImmutableArray<Face> Faces { get; }
    public ImmutableArray<Edge> Edges { get; }
    public Vec3 Low { get; }
    public Vec3 High { get; }
    public Vec3 Middle => 0.5 * (Low + High);

    /// <summary>A box by its centre and the half edges from it, which stand across each other.</summary>
    public static ConvexSolid Box(Vec3 centre, Vec3 along, Vec3 across, Vec3 up)
    {
        if (along.Cross(across).Dot(up) < 0) up = -up;
        return Prism([centre - along - across - up, centre + along - across - up, centre + along + across - up, centre - along + across - up], 2 * up, _ => false);
    }

    public static ConvexSolid Of(Bar bar) => Box(bar.Centre, bar.HalfLength * bar.Along, bar.HalfWidth * bar.Across, bar.HalfHeight * bar.Up);

    /// <summary>A box that stands upright, its sides along the axes of the cell.</summary>
    public static ConvexSolid Upright(Vec3 low, Vec3 high)
    {
        var half = 0.5 * (high - low);
        return Box(0.5 * (low + high), new(half.X, 0, 0), new(0, half.Y, 0), new(0, 0, half.Z));
    }

    /// <summary>A plane convex outline moved along <paramref name="rise"/>.</summary>
    /// <param name="outline">Counter-clockwise seen against <paramref name="rise"/>.</param>
    /// <param name="smooth">Whether the surface bends on over the corner with this index.</param>
    public static ConvexSolid Prism(IReadOnlyList<Vec3> outline, Vec3 rise, Func<int, bool> smooth)
    {
        int n = outline.Count;
        var loops = new List<ImmutableArray<int>> { Enumerable.Range(0, n).Reverse().ToImmutableArray(), Enumerable.Range(n, n).ToImmutableArray() };
        for (int i = 0; i < n; i++) loops.Add([i, (i + 1) % n, n + (i + 1) % n, n + i]);
        return new([.. outline, .. outline.Select(p => p + rise)], loops, (a, b) => Math.Abs(a - b) == n && smooth(a % n));
    }

    /// <summary>A round bar; the sides are smooth.</summary>
    public static ConvexSolid Cylinder(Vec3 from, Vec3 to, double radius, int sides)
    {
        var along = (to - from).Unit();
        var u = (Math.Abs(along.Z) > 0.9 ? Vec3.UnitX : Vec3.UnitZ).Cross(along).Unit();
        var v = along.Cross(u);
        return Prism([.. Enumerable.Range(0, sides).Select(i => from + radius * (Math.Cos(Math.Tau * i / sides) * u + Math.Sin(Math.Tau * i / sides) * v))], to - from, _ => true);
    }

    public ConvexSolid Moved(Vec3 by)
    {
        var smooth = Edges.Where(e => e.Smooth).SelectMany(e => ((int, int)[])[(e.From, e.To), (e.To, e.From)]).ToHashSet();
        return new([.. Vertices.Select(v => v + by)], Faces.Select(f => f.Loop), (a, b) => smooth.Contains((a, b)));
    }

    private Face Plane(ImmutableArray<int> loop)
    {
        // The sum of cross products round the loop: exact for a plane one, the mean for one that is plane but for rounding.
        var normal = Vec3.Zero;
        var middle = Vec3.Zero;
        for (int i = 0; i < loop.Length; i++)
        {
            normal += (Vertices[loop[i]] - Vertices[loop[0]]).Cross(Vertices[loop[(i + 1) % loop.Length]] - Vertices[loop[0]]);
            middle += Vertices[loop[i]] / loop.Length;
        }

        normal = normal.Unit();
        return new(normal, normal.Dot(middle), loop);
    }
}

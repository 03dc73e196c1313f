using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Views.Pictures;

/// <summary>
/// All that one convex solid hides from an eye far away: what lies within its outline as seen, and behind every face that is turned to the eye. That
/// is convex too, an intersection of half-spaces, so that it cuts one interval from a straight line (Roberts 1963, from memory, tests lines
/// against solids by the same inequalities).
/// </summary>
internal sealed class Shadow
{
    /// <summary>What touches is not hidden: so far it must be inside, metres.</summary>
    private const double Inside = 1e-6;

    private readonly ConvexSolid _solid;
    private readonly ImmutableArray<(Vec3 Normal, double Offset)> _planes;
    private readonly double _left, _right, _low, _high;

    public Shadow(ConvexSolid solid, Axonometry view)
    {
        _solid = solid;
        Front = [.. solid.Faces.Select(f => f.Normal.Dot(view.Eye) > 1e-9)];
        var planes = ImmutableArray.CreateBuilder<(Vec3, double)>();
        for (int f = 0; f < solid.Faces.Length; f++)
            if (Front[f]) planes.Add((solid.Faces[f].Normal, solid.Faces[f].Offset));
        foreach (var e in solid.Edges)
        {
            if (Front[e.Left] == Front[e.Right]) continue;
            // The plane through an edge of the outline along the line of sight, turned away from the solid's middle.
            var normal = (solid.Vertices[e.To] - solid.Vertices[e.From]).Cross(view.Eye).Unit();
            if (!normal.IsFinite) continue;
            double offset = normal.Dot(solid.Vertices[e.From]);
            planes.Add(normal.Dot(solid.Middle) > offset ? (-normal, -offset) : (normal, offset));
        }

        _planes = planes.ToImmutable();
        var seen = solid.Vertices.Select(view.At).ToArray();
        (_left, _right, _low, _high) = (seen.Min(p => p.X), seen.Max(p => p.X), seen.Min(p => p.Y), seen.Max(p => p.Y));
    }

    /// <summary>Which faces are turned to the eye.</summary>
    public ImmutableArray<bool> Front { get; }

    /// <summary>False where nothing of a line between two points of the page can be hidden.</summary>
    public bool Near((double X, double Y) a, (double X, double Y) b) =>
        Math.Max(a.X, b.X) > _left && Math.Min(a.X, b.X) < _right && Math.Max(a.Y, b.Y) > _low && Math.Min(a.Y, b.Y) < _high;

    /// <summary>The part of a line that is hidden, 0 at its beginning and 1 at its end; empty where From is not below To.</summary>
    public (double From, double To) Hides(Vec3 a, Vec3 b)
    {
        double from = 0, to = 1;
        foreach (var (normal, offset) in _planes)
            if (!Cut(normal, offset - Inside, a, b, ref from, ref to)) break;
        return (from, to);
    }

    /// <summary>
    /// The part of a line that runs within a face of this solid which is flush with a face the line bounds: the two bodies are then one, and their
    /// surface goes on without a line.
    /// </summary>
    public (double From, double To) Joins(Vec3 normal, Vec3 a, Vec3 b)
    {
        foreach (var flush in _solid.Faces)
        {
            if (flush.Normal.Dot(normal) < 1 - 1e-9 || Math.Abs(flush.Normal.Dot(a) - flush.Offset) > Inside || Math.Abs(flush.Normal.Dot(b) - flush.Offset) > Inside) continue;
            double from = 0, to = 1;
            foreach (var other in _solid.Faces)
                if (!ReferenceEquals(other, flush) && !Cut(other.Normal, other.Offset - Inside, a, b, ref from, ref to)) break;
            if (from < to) return (from, to);
        }

        return (1, 0);
    }

    /// <summary>Cuts an interval of a line to a half-space; false when nothing is left.</summary>
    public static bool Cut(Vec3 normal, double offset, Vec3 a, Vec3 b, ref double from, ref double to)
    {
        double at = offset - normal.Dot(a), along = normal.Dot(b - a);
        if (Math.Abs(along) < 1e-12) return at > 0 || Empty(ref from, ref to);
        if (along > 0) to = Math.Min(to, at / along);
        else from = Math.Max(from, at / along);
        return from < to;
    }

    private static bool Empty(ref double from, ref double to)
    {
        (from, to) = (1, 0);
        return false;
    }
}

using System.Buffers.Binary;
using System.Text;
using Trivet.Adapters;
using Trivet.Numerics;

namespace Trivet.Files.Exchange;

/// <summary>
/// A plate as binary STL in millimetres: triangles whose corners lie on the true surface, closed. Round surfaces are cut into chords that stay
/// within <see cref="ChordError"/> of them.
/// </summary>
public static class StlFile
{
    /// <summary>Largest distance of a chord from its circle, metres.</summary>
    public const double ChordError = 5e-6;

    private const int HeaderLength = 80, TriangleLength = 50;

    public static byte[] Of(AdapterPlate plate, string name)
    {
        var triangles = Triangles(plate);
        byte[] file = new byte[HeaderLength + 4 + TriangleLength * triangles.Count];
        // ASCII, and never beginning with "solid", by which readers tell the text form.
        Encoding.ASCII.GetBytes($"Trivet {name}, mm").AsSpan(0, Math.Min(HeaderLength, name.Length + 11)).CopyTo(file);
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(HeaderLength), (uint)triangles.Count);
        int at = HeaderLength + 4;
        foreach (var (a, b, c) in triangles)
        {
            var normal = (b - a).Cross(c - a).Unit();
            foreach (var v in new[] { normal, 1000 * a, 1000 * b, 1000 * c })
                for (int k = 0; k < 3; k++, at += 4) BinaryPrimitives.WriteSingleLittleEndian(file.AsSpan(at), (float)v[k]);
            at += 2;
        }
        return file;
    }

    /// <summary>The triangles, counter-clockwise seen from outside, metres.</summary>
    public static List<(Vec3 A, Vec3 B, Vec3 C)> Triangles(AdapterPlate plate)
    {
        var triangles = new List<(Vec3, Vec3, Vec3)>();
        double t = plate.Thickness;
        var outline = Outside(plate.Outline);
        Wall(triangles, outline, t, 0, outward: true);

        var above = new List<Vec2[]>();
        var below = new List<Vec2[]>();
        foreach (var hole in plate.Holes)
        {
            // One count for all steps of a hole, so that rings of two radii join corner to corner.
            int n = Corners(hole.Steps.Max(s => s.Widest));
            Vec2[] Ring(double radius) => [.. Enumerable.Range(0, n).Select(k => hole.At + Vec2.Polar(radius, 2 * Math.PI * k / n))];
            for (int i = 0; i < hole.Steps.Length; i++)
            {
                var s = hole.Steps[i];
                Vec2[] top = Ring(s.RadiusTop), bottom = Ring(s.RadiusBottom);
                Cone(triangles, top, s.Top, bottom, s.Bottom);
                if (i + 1 < hole.Steps.Length && hole.Steps[i + 1].RadiusTop != s.RadiusBottom)
                    Cone(triangles, bottom, s.Bottom, Ring(hole.Steps[i + 1].RadiusTop), s.Bottom);
            }
            if (hole.Steps[0].Top >= t) above.Add(Ring(hole.Steps[0].RadiusTop));
            else Disc(triangles, hole.At, Ring(hole.Steps[0].RadiusTop), hole.Steps[0].Top, upward: false);
            if (hole.Steps[^1].Bottom <= 0) below.Add(Ring(hole.Steps[^1].RadiusBottom));
            else Disc(triangles, hole.At, Ring(hole.Steps[^1].RadiusBottom), hole.Steps[^1].Bottom, upward: true);
        }
        Face(triangles, outline, above, t, upward: true);
        Face(triangles, outline, below, 0, upward: false);
        return triangles;
    }

    private static int Corners(double radius) => Math.Max(24, 4 * (int)Math.Ceiling(Math.PI / Math.Acos(1 - ChordError / Math.Max(radius, 2 * ChordError)) / 4));

    private static Vec2[] Outside(Outline outline)
    {
        var points = new List<Vec2>();
        foreach (var piece in outline.Pieces)
        {
            int n = piece.IsArc ? Math.Max(1, (int)Math.Ceiling(Corners(piece.Radius) * piece.Sweep / (2 * Math.PI))) : 1;
            for (int k = 0; k < n; k++) points.Add(piece.IsArc ? piece.Centre + (piece.From - piece.Centre).Turned(piece.Sweep * k / n) : piece.From);
        }
        return [.. points];
    }

    private static void Wall(List<(Vec3, Vec3, Vec3)> triangles, Vec2[] ring, double top, double bottom, bool outward)
    {
        for (int k = 0; k < ring.Length; k++)
        {
            Vec2 p = ring[k], q = ring[(k + 1) % ring.Length];
            Vec3 a = At(p, bottom), b = At(q, bottom), c = At(q, top), d = At(p, top);
            if (outward) triangles.AddRange([(a, b, c), (a, c, d)]);
            else triangles.AddRange([(a, c, b), (a, d, c)]);
        }
    }

    /// <summary>From one ring down, or inward, to another; the solid is outside of it.</summary>
    private static void Cone(List<(Vec3, Vec3, Vec3)> triangles, Vec2[] top, double topZ, Vec2[] bottom, double bottomZ)
    {
        for (int k = 0; k < top.Length; k++)
        {
            int next = (k + 1) % top.Length;
            Vec3 a = At(bottom[k], bottomZ), b = At(bottom[next], bottomZ), c = At(top[next], topZ), d = At(top[k], topZ);
            triangles.AddRange([(a, c, b), (a, d, c)]);
        }
    }

    private static void Disc(List<(Vec3, Vec3, Vec3)> triangles, Vec2 centre, Vec2[] ring, double z, bool upward)
    {
        for (int k = 0; k < ring.Length; k++)
        {
            Vec3 a = At(ring[k], z), b = At(ring[(k + 1) % ring.Length], z), c = At(centre, z);
            triangles.Add(upward ? (c, a, b) : (c, b, a));
        }
    }

    private static void Face(List<(Vec3, Vec3, Vec3)> triangles, Vec2[] outline, List<Vec2[]> holes, double z, bool upward)
    {
        var corners = outline.ToList();
        var rings = new List<int[]>();
        foreach (var hole in holes)
        {
            int first = corners.Count;
            corners.AddRange(hole);
            // Holes run clockwise.
            rings.Add([.. Enumerable.Range(0, hole.Length).Select(k => first + hole.Length - 1 - k)]);
        }
        foreach (var (i, j, k) in Triangulation.Of(corners, Enumerable.Range(0, outline.Length), rings))
        {
            Vec3 a = At(corners[i], z), b = At(corners[j], z), c = At(corners[k], z);
            triangles.Add(upward ? (a, b, c) : (a, c, b));
        }
    }

    private static Vec3 At(Vec2 p, double z) => new(p.X, p.Y, z);
}

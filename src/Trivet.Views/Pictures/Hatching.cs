using Trivet.Numerics;

namespace Trivet.Views.Pictures;

/// <summary>
/// Hatch lines of a face at 45° on the page. Their places are fixed on the page, not on the face, so that those of neighbouring faces meet; each lies
/// in space on its face, so that what hides an edge hides it too.
/// </summary>
internal static class Hatching
{
    public static IEnumerable<(Vec3, Vec3)> Of(ConvexSolid solid, Face face, Axonometry view, double pitch)
    {
        double facing = face.Normal.Dot(view.Eye);
        // A face seen on edge has no room for a line.
        if (facing < 0.02) yield break;
        // Along the hatch u is constant and v runs.
        var rim = face.Loop.Select(i => view.At(solid.Vertices[i])).Select(p => (U: (p.X + p.Y) / Math.Sqrt(2), V: (p.X - p.Y) / Math.Sqrt(2))).ToArray();
        double low = rim.Min(p => p.U), high = rim.Max(p => p.U);
        for (double n = Math.Ceiling(low / pitch); n * pitch < high; n++)
        {
            double u = n * pitch, from = double.PositiveInfinity, to = double.NegativeInfinity;
            for (int i = 0; i < rim.Length; i++)
            {
                var (p, q) = (rim[i], rim[(i + 1) % rim.Length]);
                if (p.U <= u == q.U <= u) continue;
                double v = p.V + (u - p.U) / (q.U - p.U) * (q.V - p.V);
                (from, to) = (Math.Min(from, v), Math.Max(to, v));
            }

            if (from < to) yield return (On(u, from), On(u, to));
        }

        Vec3 On(double u, double v)
        {
            var flat = (u + v) / Math.Sqrt(2) * view.Right + (u - v) / Math.Sqrt(2) * view.Up;
            return flat + (face.Offset - face.Normal.Dot(flat)) / facing * view.Eye;
        }
    }
}

using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Views.Pictures;

/// <summary>How a line of a picture is drawn, the lightest first: of two on one place the heavier stays.</summary>
internal enum Pen
{
    /// <summary>Of the marked part, hidden.</summary>
    Behind,
    /// <summary>On the faces of the marked part.</summary>
    Hatch,
    /// <summary>Between two faces that are both seen.</summary>
    Inner,
    Outline,
    MarkedInner,
    MarkedOutline,
}

/// <summary>A line on the page; y up, and metres until it is put on a sheet.</summary>
internal readonly record struct PageLine(Pen Pen, double X1, double Y1, double X2, double Y2)
{
    public double Length => Math.Sqrt((X2 - X1) * (X2 - X1) + (Y2 - Y1) * (Y2 - Y1));
}

/// <summary>A solid of a picture.</summary>
/// <param name="Pointers">What of the description it stands for.</param>
internal sealed record Piece(ConvexSolid Solid, ImmutableArray<string> Pointers, bool Marked = false);

/// <summary>
/// The lines of a picture with those hidden taken out: edges of convex solids, the lines in which two of them cut each other, and the hatch of the marked ones. Each
/// is straight, and each solid hides one interval of it, in closed form; what is left is drawn. Exact but for rounding, and the same for
/// any order of the solids.
/// </summary>
internal static class HiddenLines
{
    /// <summary>Shorter than this nothing is drawn, metres.</summary>
    private const double Shortest = 2e-5;

    /// <param name="hatch">Distance of the hatch lines on the page, metres; 0 for none.</param>
    /// <param name="behind">The marked part's hidden edges too.</param>
    /// <param name="markedOnly">Edges of the marked part alone; the others still hide.</param>
    public static ImmutableArray<PageLine> Of(IReadOnlyList<Piece> pieces, Axonometry view, double hatch = 0, bool behind = false, bool markedOnly = false)
    {
        Shadow[] shadows = [.. pieces.Select(p => new Shadow(p.Solid, view))];
        var lines = ImmutableArray.CreateBuilder<PageLine>();
        for (int i = 0; i < pieces.Count; i++)
        {
            if (markedOnly && !pieces[i].Marked) continue;
            var (solid, front) = (pieces[i].Solid, shadows[i].Front);
            foreach (var e in solid.Edges)
            {
                bool left = front[e.Left], right = front[e.Right];
                if (left == right && (e.Smooth || !left && !behind)) continue;
                Pen pen = !left && !right ? Pen.Behind : pieces[i].Marked ? left != right ? Pen.MarkedOutline : Pen.MarkedInner : left != right ? Pen.Outline : Pen.Inner;
                if (pen == Pen.Behind && !pieces[i].Marked) continue;
                Put(solid.Vertices[e.From], solid.Vertices[e.To], pen, i, [solid.Faces[e.Left].Normal, solid.Faces[e.Right].Normal]);
            }

            if (hatch > 0 && pieces[i].Marked)
                for (int f = 0; f < solid.Faces.Length; f++)
                    if (front[f])
                        foreach (var (a, b) in Hatching.Of(solid, solid.Faces[f], view, hatch)) Put(a, b, Pen.Hatch, i, []);
            for (int j = 0; j < pieces.Count && !markedOnly; j++)
                if (j != i && Meet(solid, pieces[j].Solid) && Before(solid, pieces[j].Solid))
                    foreach (var (a, b) in Seams(solid, front, pieces[j].Solid, shadows[j].Front))
                        Put(a, b, pieces[i].Marked || pieces[j].Marked ? Pen.MarkedInner : Pen.Inner, -1, []);
        }

        return lines.DrainToImmutable();

        void Put(Vec3 a, Vec3 b, Pen pen, int own, ReadOnlySpan<Vec3> faces)
        {
            var (pa, pb) = (view.At(a), view.At(b));
            if (new PageLine(pen, pa.X, pa.Y, pb.X, pb.Y).Length < Shortest) return;
            var hidden = new List<(double From, double To)>();
            if (pen == Pen.Behind)
            {
                // Its own solid hides it: all of it is drawn, under whatever is seen there.
                Keep(pen, 0, 1);
                return;
            }

            for (int k = 0; k < shadows.Length; k++)
            {
                if (!shadows[k].Near(pa, pb)) continue;
                Add(shadows[k].Hides(a, b));
                if (k == own || faces.IsEmpty || !Meet(pieces[k].Solid, a, b)) continue;
                foreach (var normal in faces) Add(shadows[k].Joins(normal, a, b));
            }

            double at = 0;
            foreach (var (from, to) in hidden.Order())
            {
                Keep(pen, at, from);
                if (behind && pen >= Pen.MarkedInner) Keep(Pen.Behind, Math.Max(at, from), to);
                at = Math.Max(at, to);
            }

            Keep(pen, at, 1);

            void Add((double From, double To) part)
            {
                if (part.From < part.To) hidden.Add(part);
            }

            void Keep(Pen with, double from, double to)
            {
                if (to <= from) return;
                var line = new PageLine(with, pa.X + from * (pb.X - pa.X), pa.Y + from * (pb.Y - pa.Y), pa.X + to * (pb.X - pa.X), pa.Y + to * (pb.Y - pa.Y));
                if (line.Length >= Shortest) lines.Add(line);
            }
        }
    }

    private static bool Meet(ConvexSolid solid, Vec3 a, Vec3 b)
    {
        Vec3 low = Vec3.Min(a, b), high = Vec3.Max(a, b);
        const double Slack = 1e-5;
        return low.X <= solid.High.X + Slack && high.X >= solid.Low.X - Slack && low.Y <= solid.High.Y + Slack && high.Y >= solid.Low.Y - Slack && low.Z <= solid.High.Z + Slack && high.Z >= solid.Low.Z - Slack;
    }

    private static bool Meet(ConvexSolid a, ConvexSolid b) =>
        a.Low.X <= b.High.X && b.Low.X <= a.High.X && a.Low.Y <= b.High.Y && b.Low.Y <= a.High.Y && a.Low.Z <= b.High.Z && b.Low.Z <= a.High.Z;

    /// <summary>An order of solids by their corners, so that a pair is worked out in one way only.</summary>
    private static bool Before(ConvexSolid a, ConvexSolid b)
    {
        for (int i = 0; i < a.Vertices.Length && i < b.Vertices.Length; i++)
            for (int axis = 0; axis < 3; axis++)
                if (a.Vertices[i][axis] != b.Vertices[i][axis]) return a.Vertices[i][axis] < b.Vertices[i][axis];
        return a.Vertices.Length < b.Vertices.Length;
    }

    /// <summary>Where the faces of two solids that are turned to the eye cut each other.</summary>
    private static IEnumerable<(Vec3, Vec3)> Seams(ConvexSolid a, ImmutableArray<bool> frontA, ConvexSolid b, ImmutableArray<bool> frontB)
    {
        double size = (a.High - a.Low).Norm + (b.High - b.Low).Norm;
        for (int i = 0; i < a.Faces.Length; i++)
        {
            if (!frontA[i]) continue;
            var f = a.Faces[i];
            if (Apart(f, b)) continue;
            for (int j = 0; j < b.Faces.Length; j++)
            {
                if (!frontB[j]) continue;
                var g = b.Faces[j];
                var along = f.Normal.Cross(g.Normal);
                double sine = along.Norm;
                if (sine < 1e-6) continue;
                along /= sine;
                // The point of both planes nearest to the middle of the first solid.
                double cosine = f.Normal.Dot(g.Normal), df = f.Offset - f.Normal.Dot(a.Middle), dg = g.Offset - g.Normal.Dot(a.Middle), det = 1 - cosine * cosine;
                var p = a.Middle + (df - cosine * dg) / det * f.Normal + (dg - cosine * df) / det * g.Normal;
                Vec3 from = p - size * along, to = p + size * along;
                double s = 0, e = 1;
                if (Within(a, f, from, to, ref s, ref e) && Within(b, g, from, to, ref s, ref e)) yield return (from + s * (to - from), from + e * (to - from));
            }
        }
    }

    private static bool Apart(Face f, ConvexSolid solid)
    {
        bool over = false, under = false;
        foreach (var v in solid.Vertices)
        {
            double h = f.Normal.Dot(v) - f.Offset;
            over |= h > 1e-9;
            under |= h < -1e-9;
        }

        return !(over && under);
    }

    private static bool Within(ConvexSolid solid, Face but, Vec3 from, Vec3 to, ref double s, ref double e)
    {
        foreach (var face in solid.Faces)
            if (!ReferenceEquals(face, but) && !Shadow.Cut(face.Normal, face.Offset, from, to, ref s, ref e)) return false;
        return true;
    }
}

using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// A flat section of a set: closed polylines in the base frame, metres, the first point not repeated. Seen with U to the
/// right and V up, the set is on the left of each: outer borders run counter-clockwise, holes clockwise.
/// </summary>
/// <param name="Origin">A point of the plane.</param>
/// <param name="U">Unit vector in the plane.</param>
/// <param name="V">Unit vector in the plane, square to U.</param>
public sealed record Outline(Vec3 Origin, Vec3 U, Vec3 V, ImmutableArray<ImmutableArray<Vec3>> Loops)
{
    /// <summary>Square metres, holes taken off.</summary>
    public double Area()
    {
        double twice = 0;
        foreach (var loop in Loops)
        {
            for (int n = 0; n < loop.Length; n++)
            {
                Vec3 a = loop[n] - Origin, b = loop[(n + 1) % loop.Length] - Origin;
                twice += a.Dot(U) * b.Dot(V) - a.Dot(V) * b.Dot(U);
            }
        }

        return twice / 2;
    }

    /// <summary>
    /// Cuts a set by the rectangle Origin + u·U + v·V, u and v within the given ranges, on a grid of n × m squares. Each square is
    /// two triangles, which leaves no ambiguous case; vertices lie on the border, and corners that the grid cut off are
    /// looked for between them.
    /// </summary>
    internal static Outline Cut(
        Func<Vec3, bool> contains, Vec3 origin, Vec3 u, Vec3 v, (double From, double To) alongU, (double From, double To) alongV, int n, int m)
    {
        double du = (alongU.To - alongU.From) / n, dv = (alongV.To - alongV.From) / m;
        var inside = new bool[n + 1, m + 1];
        for (int j = 1; j < m; j++)
        {
            for (int i = 1; i < n; i++) inside[i, j] = contains(Point(i, j));
        }

        // Each triangle with both kinds of corner has one segment, from one cut edge to another; an edge is named by its two grid points.
        var next = new Dictionary<Edge, Edge>();
        for (int j = 0; j < m; j++)
        {
            for (int i = 0; i < n; i++)
            {
                Segment((i, j), (i + 1, j), (i + 1, j + 1));
                Segment((i, j), (i + 1, j + 1), (i, j + 1));
            }
        }

        var loops = ImmutableArray.CreateBuilder<ImmutableArray<Vec3>>();
        while (next.Count > 0)
        {
            var start = next.Keys.First();
            var loop = new List<Vec3>();
            var at = start;
            do
            {
                loop.Add(Marching.OnBorder(contains, Point(at.Within.I, at.Within.J), Point(at.Without.I, at.Without.J)));
                next.Remove(at, out at);
            }
            while (at != start);
            loops.Add(WithCorners(contains, u, v, loop, 1e-4 * Math.Min(du, dv)));
        }

        loops.Sort((a, b) => b.Length.CompareTo(a.Length));
        return new(origin, u, v, loops.DrainToImmutable());

        Vec3 Point(int i, int j) => origin + (alongU.From + i * du) * u + (alongV.From + j * dv) * v;

        // Corners counter-clockwise. Walking round, the border is entered where inside turns to outside; inside then lies on its left
        // when the segment runs from the edge that leaves the set to the edge that comes back into it.
        void Segment((int I, int J) a, (int I, int J) b, (int I, int J) c)
        {
            bool ia = inside[a.I, a.J], ib = inside[b.I, b.J], ic = inside[c.I, c.J];
            if (ia == ib && ib == ic) return;
            while (!(ia && !ib))
            {
                (a, b, c) = (b, c, a);
                (ia, ib, ic) = (ib, ic, ia);
            }

            next.Add(new(a, b), ic ? new(c, b) : new(a, c));
        }
    }

    private readonly record struct Edge((int I, int J) Within, (int I, int J) Without);

    /// <summary>
    /// Where the border bulges beyond a segment, a point is put between, and again on both halves, so that corners and bends come out
    /// sharper than the grid; points in line with their neighbours are dropped.
    /// </summary>
    private static ImmutableArray<Vec3> WithCorners(Func<Vec3, bool> contains, Vec3 u, Vec3 v, List<Vec3> loop, double tolerance)
    {
        const int Depth = 5;
        var fine = new List<Vec3>(2 * loop.Count);
        for (int n = 0; n < loop.Count; n++)
        {
            fine.Add(loop[n]);
            Between(loop[n], loop[(n + 1) % loop.Count], Depth);
        }

        var kept = ImmutableArray.CreateBuilder<Vec3>(fine.Count);
        for (int n = 0; n < fine.Count; n++)
        {
            Vec3 before = kept.Count > 0 ? kept[^1] : fine[^1], here = fine[n], after = fine[(n + 1) % fine.Count];
            if ((here - before).Cross(after - here).Norm > tolerance * (after - before).Norm) kept.Add(here);
        }

        return kept.DrainToImmutable();

        void Between(Vec3 a, Vec3 b, int depth)
        {
            Vec3 along = b - a, middle = 0.5 * (a + b);
            double length = along.Norm;
            if (depth == 0 || length < 20 * tolerance) return;
            Vec3 outward = (along.Dot(v) * u - along.Dot(u) * v) / length;
            bool bulges = contains(middle);
            Vec3 far = middle + (bulges ? length : -length) * outward;
            if (contains(far) == bulges) return;
            Vec3 border = bulges ? Marching.OnBorder(contains, middle, far) : Marching.OnBorder(contains, far, middle);
            if ((border - middle).Norm < tolerance) return;
            Between(a, border, depth - 1);
            fine.Add(border);
            Between(border, b, depth - 1);
        }
    }
}

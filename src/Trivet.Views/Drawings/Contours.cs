using Trivet.Reach;

namespace Trivet.Views.Drawings;

/// <summary>
/// Lines of equal value over a plane map. Each square of the grid is two triangles, linear within, which leaves no ambiguous case
/// (marching triangles); a triangle with a corner out of reach has no line.
/// </summary>
internal static class Contours
{
    /// <summary>Polylines where the map has a value, metres along its plane; a closed one repeats its first point.</summary>
    public static List<List<(double X, double Y)>> At(PlaneMap map, double level)
    {
        var ends = new Dictionary<long, List<long>>();
        var points = new Dictionary<long, (double X, double Y)>();
        for (int j = 0; j + 1 < map.Rows; j++)
        {
            for (int i = 0; i + 1 < map.Columns; i++)
            {
                Triangle((i, j), (i + 1, j), (i + 1, j + 1));
                Triangle((i, j), (i + 1, j + 1), (i, j + 1));
            }
        }

        return Join(ends, points);

        void Triangle((int I, int J) a, (int I, int J) b, (int I, int J) c)
        {
            double va = map.At(a.I, a.J), vb = map.At(b.I, b.J), vc = map.At(c.I, c.J);
            if (!double.IsFinite(va) || !double.IsFinite(vb) || !double.IsFinite(vc)) return;
            bool ha = va >= level, hb = vb >= level, hc = vc >= level;
            if (ha == hb && hb == hc) return;
            // The corner that differs from the two others.
            var (lone, first, second) = hb == hc ? (a, b, c) : ha == hc ? (b, a, c) : (c, a, b);
            long p = Cross(lone, first), q = Cross(lone, second);
            Link(p, q);
            Link(q, p);
        }

        long Cross((int I, int J) a, (int I, int J) b)
        {
            long na = (long)a.J * map.Columns + a.I, nb = (long)b.J * map.Columns + b.I;
            if (na > nb) (a, b, na, nb) = (b, a, nb, na);
            long key = na * map.Columns * map.Rows + nb;
            double va = map.At(a.I, a.J), vb = map.At(b.I, b.J), t = Math.Clamp((level - va) / (vb - va), 0, 1);
            points[key] = (map.FromU + map.Step * (a.I + t * (b.I - a.I)), map.FromV + map.Step * (a.J + t * (b.J - a.J)));
            return key;
        }

        void Link(long from, long to)
        {
            if (!ends.TryGetValue(from, out var list)) ends[from] = list = [];
            list.Add(to);
        }
    }

    private static List<List<(double X, double Y)>> Join(Dictionary<long, List<long>> ends, Dictionary<long, (double X, double Y)> points)
    {
        var lines = new List<List<(double X, double Y)>>();
        var left = new HashSet<long>(ends.Keys);
        // Open lines from their ends first, then what is left are rings.
        foreach (long start in ends.Keys.Order().OrderBy(k => ends[k].Count))
        {
            if (!left.Remove(start)) continue;
            var line = new List<(double X, double Y)> { points[start] };
            long at = start;
            while (true)
            {
                int n = ends[at].FindIndex(left.Contains);
                if (n < 0) break;
                at = ends[at][n];
                left.Remove(at);
                line.Add(points[at]);
            }

            if (line.Count > 2 && ends[at].Contains(start)) line.Add(points[start]);
            if (line.Count > 1) lines.Add(line);
        }

        return lines;
    }
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Trivet.Views.Pictures;

/// <summary>Lines made ready for a sheet: cut to a window, no two on one place, joined end to end.</summary>
internal static class LineWork
{
    /// <summary>Lines this near to each other are one, and no shorter one is drawn; sheet units.</summary>
    public const double Same = 0.12, Shortest = 0.4;

    /// <summary>The lines within a rectangle.</summary>
    public static IEnumerable<PageLine> Cut(IEnumerable<PageLine> lines, double left, double top, double right, double bottom)
    {
        foreach (var l in lines)
        {
            double from = 0, to = 1, dx = l.X2 - l.X1, dy = l.Y2 - l.Y1;
            if (Side(-dx, l.X1 - left) && Side(dx, right - l.X1) && Side(-dy, l.Y1 - top) && Side(dy, bottom - l.Y1))
                yield return l with { X1 = l.X1 + from * dx, Y1 = l.Y1 + from * dy, X2 = l.X1 + to * dx, Y2 = l.Y1 + to * dy };

            bool Side(double p, double q)
            {
                if (p == 0) return q >= 0;
                if (p < 0) from = Math.Max(from, q / p);
                else to = Math.Min(to, q / p);
                return from < to;
            }
        }
    }

    /// <summary>
    /// The same lines, each place drawn once by the heaviest pen of those that lie on it. They are taken in an order of their own, so that the result does not
    /// depend on the order they come in.
    /// </summary>
    public static ImmutableArray<PageLine> Once(IEnumerable<PageLine> lines)
    {
        var kept = new List<PageLine>();
        foreach (var line in lines.Select(Forward).OrderByDescending(l => l.Pen).ThenByDescending(l => Math.Round(l.Length, 3))
                     .ThenBy(l => Math.Round(l.X1, 3)).ThenBy(l => Math.Round(l.Y1, 3)).ThenBy(l => Math.Round(l.X2, 3)).ThenBy(l => Math.Round(l.Y2, 3)))
        {
            double length = line.Length;
            if (length < Shortest) continue;
            var taken = new List<(double From, double To)>();
            foreach (var k in kept)
                if (Over(k, line, length) is { } part) taken.Add(part);
            double at = 0;
            foreach (var (from, to) in taken.Order())
            {
                Keep(at, from);
                at = Math.Max(at, to);
            }

            Keep(at, length);

            void Keep(double from, double to)
            {
                if (to - from < (taken.Count > 0 ? 2 * Shortest : Shortest)) return;
                double dx = (line.X2 - line.X1) / length, dy = (line.Y2 - line.Y1) / length;
                kept.Add(line with { X1 = line.X1 + from * dx, Y1 = line.Y1 + from * dy, X2 = line.X1 + to * dx, Y2 = line.Y1 + to * dy });
            }
        }

        return [.. kept];
    }

    /// <summary>The part of a line that another lies on, along it; null for none.</summary>
    private static (double From, double To)? Over(PageLine other, PageLine line, double length)
    {
        if (Math.Max(other.X1, other.X2) < line.X1 - Same || other.X1 > line.X2 + Same) return null;
        if (Math.Max(other.Y1, other.Y2) < Math.Min(line.Y1, line.Y2) - Same || Math.Min(other.Y1, other.Y2) > Math.Max(line.Y1, line.Y2) + Same) return null;
        double dx = (line.X2 - line.X1) / length, dy = (line.Y2 - line.Y1) / length;
        double a = (other.X1 - line.X1) * dx + (other.Y1 - line.Y1) * dy, b = (other.X2 - line.X1) * dx + (other.Y2 - line.Y1) * dy;
        double offA = (other.Y1 - line.Y1) * dx - (other.X1 - line.X1) * dy, offB = (other.Y2 - line.Y1) * dx - (other.X2 - line.X1) * dy;
        if (Math.Abs(b - a) < 0.7 * other.Length) return null;
        double from = Math.Max(0, Math.Min(a, b)), to = Math.Min(length, Math.Max(a, b));
        if (to <= from) return null;
        double slope = (offB - offA) / (b - a);
        return Math.Abs(offA + slope * (from - a)) <= Same && Math.Abs(offA + slope * (to - a)) <= Same ? (from, to) : null;
    }

    /// <summary>From left to right, an upright one downward.</summary>
    private static PageLine Forward(PageLine l) => l.X1 < l.X2 || l.X1 == l.X2 && l.Y1 <= l.Y2 ? l : new(l.Pen, l.X2, l.Y2, l.X1, l.Y1);

    /// <summary>Path data of lines, those that follow on each other in one go; tenths of a unit.</summary>
    public static string Path(IEnumerable<PageLine> lines)
    {
        var rest = lines.Select(l => (A: Tenths(l.X1, l.Y1), B: Tenths(l.X2, l.Y2))).Where(l => l.A != l.B).Distinct().Order().ToList();
        var ends = new Dictionary<(int X, int Y), List<int>>();
        for (int i = 0; i < rest.Count; i++)
        {
            At(rest[i].A).Add(i);
            At(rest[i].B).Add(i);
        }

        bool[] done = new bool[rest.Count];
        var path = new StringBuilder();
        for (int i = 0; i < rest.Count; i++)
        {
            if (done[i]) continue;
            done[i] = true;
            var (from, to) = rest[i];
            path.Append('M').Append(Number(from.X)).Append(' ').Append(Number(from.Y));
            while (true)
            {
                path.Append('l').Append(Number(to.X - from.X)).Append(' ').Append(Number(to.Y - from.Y));
                int place = At(to).FindIndex(k => !done[k]);
                if (place < 0) break;
                int next = At(to)[place];
                done[next] = true;
                (from, to) = (to, rest[next].A == to ? rest[next].B : rest[next].A);
            }
        }

        return path.ToString();

        List<int> At((int, int) p) => ends.TryGetValue(p, out var list) ? list : ends[p] = [];
    }

    private static (int X, int Y) Tenths(double x, double y) => ((int)Math.Round(10 * x), (int)Math.Round(10 * y));

    private static string Number(int tenths) => (tenths / 10.0).ToString("0.#", CultureInfo.InvariantCulture);
}

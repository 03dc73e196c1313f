namespace Trivet.Numerics;

/// <summary>
/// Triangles of a polygon with holes: each hole is joined to the outside by a bridge, then ears are cut. Every corner stays a corner and no new
/// one appears, so the triangles of two such faces and of the walls between them close exactly. Quadratic; meant for a few thousand corners.
/// </summary>
public static class Triangulation
{
    /// <param name="corners">All corners.</param>
    /// <param name="outer">Indices of the outside, counter-clockwise.</param>
    /// <param name="holes">Indices of each hole, clockwise; holes neither touch each other nor the outside.</param>
    /// <returns>Three indices for each triangle, counter-clockwise.</returns>
    public static List<(int A, int B, int C)> Of(IReadOnlyList<Vec2> corners, IEnumerable<int> outer, IEnumerable<int[]> holes)
    {
        var ring = outer.ToList();
        // From the right: a hole's bridge then never crosses one that comes later.
        foreach (int[] hole in holes.OrderByDescending(h => h.Max(i => corners[i].X))) Bridge(corners, ring, hole);
        return Ears(corners, ring);
    }

    private static void Bridge(IReadOnlyList<Vec2> corners, List<int> ring, int[] hole)
    {
        int start = 0;
        for (int i = 1; i < hole.Length; i++)
            if (corners[hole[i]].X > corners[hole[start]].X) start = i;
        var m = corners[hole[start]];

        // The first edge that a ray to the right meets; its end further right sees m, or a reflex corner within the triangle does.
        double nearest = double.PositiveInfinity;
        int edge = -1;
        for (int i = 0; i < ring.Count; i++)
        {
            Vec2 a = corners[ring[i]], b = corners[ring[(i + 1) % ring.Count]];
            if ((a.Y > m.Y) == (b.Y > m.Y) && a.Y != m.Y && b.Y != m.Y) continue;
            if (a.Y == b.Y) continue;
            double x = a.X + (m.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X);
            if (x < m.X - 1e-15 || x >= nearest || Math.Min(a.Y, b.Y) > m.Y || Math.Max(a.Y, b.Y) < m.Y) continue;
            (nearest, edge) = (x, i);
        }
        int at = corners[ring[edge]].X > corners[ring[(edge + 1) % ring.Count]].X ? edge : (edge + 1) % ring.Count;
        Vec2 hit = new(nearest, m.Y), p = corners[ring[at]];
        double best = double.PositiveInfinity;
        int chosen = at;
        for (int i = 0; i < ring.Count; i++)
        {
            var r = corners[ring[i]];
            if (r == p || !Within(m, hit, p, r)) continue;
            double slope = Math.Abs(r.Y - m.Y) / Math.Max(r.X - m.X, 1e-300);
            if (slope < best && Convexity(corners, ring, i) < 0) (best, chosen) = (slope, i);
        }
        // Where a corner stands twice, at an earlier bridge, the copy that opens towards m is the right one.
        for (int i = 0; i < ring.Count; i++)
            if (ring[i] == ring[chosen] && i != chosen && Opens(corners, ring, i, m)) chosen = i;

        var joined = new List<int>(hole.Length + 2);
        for (int i = 0; i <= hole.Length; i++) joined.Add(hole[(start + i) % hole.Length]);
        joined.Add(ring[chosen]);
        ring.InsertRange(chosen + 1, joined);
    }

    private static List<(int A, int B, int C)> Ears(IReadOnlyList<Vec2> corners, List<int> ring)
    {
        var triangles = new List<(int, int, int)>(ring.Count);
        int at = 0, misses = 0;
        while (ring.Count > 3 && misses <= ring.Count)
        {
            at %= ring.Count;
            int before = (at + ring.Count - 1) % ring.Count, after = (at + 1) % ring.Count;
            if (IsEar(corners, ring, before, at, after))
            {
                triangles.Add((ring[before], ring[at], ring[after]));
                ring.RemoveAt(at);
                misses = 0;
                // Going on by one makes fans short, which keeps the triangles fat.
                at++;
            }
            else
            {
                at++;
                misses++;
            }
        }
        if (ring.Count == 3) triangles.Add((ring[0], ring[1], ring[2]));
        return triangles;
    }

    private static bool IsEar(IReadOnlyList<Vec2> corners, List<int> ring, int before, int at, int after)
    {
        Vec2 a = corners[ring[before]], b = corners[ring[at]], c = corners[ring[after]];
        if ((b - a).Cross(c - b) <= 0) return false;
        for (int i = 0; i < ring.Count; i++)
        {
            int index = ring[i];
            if (index == ring[before] || index == ring[at] || index == ring[after]) continue;
            if (Within(a, b, c, corners[index])) return false;
        }
        return true;
    }

    private static double Convexity(IReadOnlyList<Vec2> corners, List<int> ring, int i)
    {
        Vec2 a = corners[ring[(i + ring.Count - 1) % ring.Count]], b = corners[ring[i]], c = corners[ring[(i + 1) % ring.Count]];
        return (b - a).Cross(c - b);
    }

    private static bool Opens(IReadOnlyList<Vec2> corners, List<int> ring, int i, Vec2 m)
    {
        Vec2 a = corners[ring[(i + ring.Count - 1) % ring.Count]], b = corners[ring[i]], c = corners[ring[(i + 1) % ring.Count]];
        double after = (c - b).Cross(m - b), before = (b - a).Cross(m - b);
        return (b - a).Cross(c - b) > 0 ? after > 0 && before > 0 : after > 0 || before > 0;
    }

    private static bool Within(Vec2 a, Vec2 b, Vec2 c, Vec2 p)
    {
        double d = (b - a).Cross(p - a), e = (c - b).Cross(p - b), f = (a - c).Cross(p - c);
        return (d >= 0 && e >= 0 && f >= 0) || (d <= 0 && e <= 0 && f <= 0);
    }
}

namespace Trivet.Numerics;

/// <summary>Distances between a straight segment and a flat parallelogram.</summary>
public static class Plates
{
    /// <summary>
    /// Closest points of the segment a₀a₁ (first) and the plate {corner + s·u + t·v, 0 ≤ s, t ≤ 1} (second), u and v not parallel.
    /// If they meet the distance is zero. Otherwise it is attained between the segment and an edge, or between an end of the
    /// segment and a point inside the plate.
    /// </summary>
    public static Closest Closest(Vec3 a0, Vec3 a1, Vec3 corner, Vec3 u, Vec3 v)
    {
        Vec3 other = corner + u, top = corner + v;
        var best = Segments.Closest(a0, a1, corner, other);
        best = Nearer(best, Segments.Closest(a0, a1, top, top + u));
        best = Nearer(best, Segments.Closest(a0, a1, corner, top));
        best = Nearer(best, Segments.Closest(a0, a1, other, other + v));

        var normal = u.Cross(v).Unit();
        double h0 = normal.Dot(a0 - corner), h1 = normal.Dot(a1 - corner);
        if (Inside(a0, h0) is { } foot0) best = Nearer(best, new(Math.Abs(h0), a0, foot0));
        if (Inside(a1, h1) is { } foot1) best = Nearer(best, new(Math.Abs(h1), a1, foot1));
        if (h0 * h1 < 0)
        {
            var crossing = a0 + h0 / (h0 - h1) * (a1 - a0);
            if (Inside(crossing, 0) is { } through) best = new(0, through, through);
        }
        return best;

        Vec3? Inside(Vec3 point, double height)
        {
            var foot = point - height * normal;
            var w = foot - corner;
            double area = u.Cross(v).Dot(normal);
            double s = w.Cross(v).Dot(normal) / area, t = u.Cross(w).Dot(normal) / area;
            return s is >= 0 and <= 1 && t is >= 0 and <= 1 ? foot : null;
        }
    }

    private static Closest Nearer(Closest a, Closest b) => b.Distance < a.Distance ? b : a;
}

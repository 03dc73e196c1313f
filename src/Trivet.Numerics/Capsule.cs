namespace Trivet.Numerics;

/// <summary>The closest pair of points of two segments, and how far apart they are (metres, not negative).</summary>
/// <param name="OnFirst">Closest point of the first segment.</param>
/// <param name="OnSecond">Closest point of the second.</param>
public readonly record struct Closest(double Distance, Vec3 OnFirst, Vec3 OnSecond);

/// <summary>All points within a radius of a segment: a rod, a post, a finger. Equal ends make it a ball. Metres; all in one frame.</summary>
public readonly record struct Capsule(Vec3 From, Vec3 To, double Radius)
{
    /// <summary>Free distance between the surfaces, metres; negative where they overlap, by how deep along the line between the
    /// closest points of the two axes. Not a number in either gives not a number.</summary>
    public double ClearanceTo(in Capsule other) =>
        Segments.Closest(From, To, other.From, other.To).Distance - Radius - other.Radius;
}

/// <summary>Distances between straight segments.</summary>
public static class Segments
{
    /// <summary>
    /// Closest points of the segments a₀a₁ and b₀b₁. Segments of no length and parallel ones are fine.
    /// <para>
    /// |a₀ + s·u − b₀ − t·v|² is a convex quadratic over the unit square of (s, t). Its minimum is either the stationary point, if
    /// that lies inside, or on one of the four edges, where one segment's end meets the other segment. All five are tried and the
    /// nearest counts: no case distinction on how nearly parallel the segments are, which is where one-pass schemes go wrong. (For
    /// parallel segments an edge always attains the minimum, so a stationary point lost to rounding does no harm.)
    /// </para>
    /// An end that is not finite gives not a number.
    /// </summary>
    public static Closest Closest(Vec3 a0, Vec3 a1, Vec3 b0, Vec3 b1)
    {
        if (!(a0 + a1 + b0 + b1).IsFinite) return Pair(Vec3.NaN, Vec3.NaN);
        var best = ToPoint(b0, b1, a0);
        best = Nearer(best, ToPoint(b0, b1, a1));
        best = Nearer(best, Turned(ToPoint(a0, a1, b0)));
        best = Nearer(best, Turned(ToPoint(a0, a1, b1)));

        Vec3 u = a1 - a0, v = b1 - b0, w = a0 - b0;
        var normal = u.Cross(v);
        double area = normal.NormSquared;
        // Lines: s and t by Cramer's rule on the two orthogonality conditions, written as triple products.
        double s = v.Cross(w).Dot(normal) / area, t = u.Cross(w).Dot(normal) / area;
        if (s is >= 0 and <= 1 && t is >= 0 and <= 1)
            best = Nearer(best, Pair(a0 + s * u, b0 + t * v));
        return best;
    }

    /// <summary>Distance from a point to the segment a₀a₁.</summary>
    public static double Distance(Vec3 a0, Vec3 a1, Vec3 point) => ToPoint(a0, a1, point).Distance;

    /// <summary>The point is "first", its foot on the segment "second".</summary>
    private static Closest ToPoint(Vec3 a0, Vec3 a1, Vec3 point)
    {
        var u = a1 - a0;
        double length2 = u.NormSquared;
        double s = length2 > 0 ? Math.Clamp((point - a0).Dot(u) / length2, 0, 1) : 0;
        return Pair(point, a0 + s * u);
    }

    private static Closest Pair(Vec3 onFirst, Vec3 onSecond) => new((onFirst - onSecond).Norm, onFirst, onSecond);

    private static Closest Turned(Closest c) => new(c.Distance, c.OnSecond, c.OnFirst);

    private static Closest Nearer(Closest a, Closest b) => b.Distance < a.Distance ? b : a;
}

using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Cabling;

/// <summary>A line from point to point, cell frame, metres. A place on it is told by the length to there.</summary>
public readonly record struct Line(ImmutableArray<Vec3> Points)
{
    public double Length => To(Points.Length - 1);

    /// <summary>Length to a point of it.</summary>
    public double To(int index)
    {
        double sum = 0;
        for (int i = 1; i <= index; i++) sum += (Points[i] - Points[i - 1]).Norm;
        return sum;
    }

    /// <summary>Where it comes nearest to a point, and how near.</summary>
    public (double At, double Distance) Nearest(Vec3 p)
    {
        var (at, _, distance) = Nearest(new Line([p]));
        return (at, distance);
    }

    /// <summary>Where two lines come nearest to each other, and how near; of several the first on this one.</summary>
    public (double At, double Other, double Distance) Nearest(Line other)
    {
        (double At, double Other, double Distance) best = (0, 0, double.PositiveInfinity);
        double along = 0;
        for (int i = 0; i < Math.Max(1, Points.Length - 1); i++)
        {
            var (a, b) = (Points[i], Points[Math.Min(i + 1, Points.Length - 1)]);
            double length = (b - a).Norm, beside = 0;
            for (int j = 0; j < Math.Max(1, other.Points.Length - 1); j++)
            {
                var (c, d) = (other.Points[j], other.Points[Math.Min(j + 1, other.Points.Length - 1)]);
                var (s, t, distance) = Closest(a, b, c, d);
                if (distance < best.Distance - 1e-12) best = (along + s * length, beside + t * (d - c).Norm, distance);
                beside += (d - c).Norm;
            }
            along += length;
        }
        return best;
    }

    /// <summary>Closest points a + s(b − a), c + t(d − c) of two stretches: the unbounded answer, then each of the four ends against the other stretch.</summary>
    public static (double S, double T, double Distance) Closest(Vec3 a, Vec3 b, Vec3 c, Vec3 d)
    {
        var (u, v, w) = (b - a, d - c, a - c);
        double uu = u.Dot(u), uv = u.Dot(v), vv = v.Dot(v), det = uu * vv - uv * uv;
        (double S, double T, double Distance) best = (0, 0, double.PositiveInfinity);
        if (det > 1e-12 * uu * vv)
        {
            double s = (uv * v.Dot(w) - vv * u.Dot(w)) / det, t = (uu * v.Dot(w) - uv * u.Dot(w)) / det;
            if (s is >= 0 and <= 1 && t is >= 0 and <= 1) return (s, t, (a + s * u - c - t * v).Norm);
        }
        foreach (double t in (ReadOnlySpan<double>)[0, 1]) Try(Foot(a, u, uu, c + t * v), t);
        foreach (double s in (ReadOnlySpan<double>)[0, 1]) Try(s, Foot(c, v, vv, a + s * u));
        return best;

        void Try(double s, double t)
        {
            double distance = (a + s * u - c - t * v).Norm;
            if (distance < best.Distance) best = (s, t, distance);
        }

        static double Foot(Vec3 from, Vec3 along, double squared, Vec3 p) => squared > 0 ? Math.Clamp((p - from).Dot(along) / squared, 0, 1) : 0;
    }
}

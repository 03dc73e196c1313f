using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Motion;

/// <summary>A corner of the unrounded way and how it is rounded.</summary>
/// <param name="At">The corner, cell frame, metres.</param>
/// <param name="S">Length along the unrounded way up to it, metres.</param>
/// <param name="Asked">Half length of the rounding that was asked for, metres.</param>
/// <param name="Half">Half length it got: less where a leg is too short for it; zero where the way goes straight on.</param>
public readonly record struct Corner(Vec3 At, double S, double Asked, double Half)
{
    public bool Limited => Half < Asked * (1 - 1e-12);
}

/// <summary>
/// The way of the tool centre point, cell frame, as a function of s: the length along the way before its corners were rounded, metres from
/// 0 to <see cref="Length"/>. Within a rounded corner the tool advances by less than s does, so that a speed along s is never below the tool's.
/// </summary>
public sealed class ToolPath
{
    /// <summary>Points closer together than this are one, metres.</summary>
    private const double SamePlace = 1e-9;

    private readonly PathPiece[] _pieces;

    private ToolPath(IEnumerable<PathPiece> pieces, ImmutableArray<Corner> corners)
    {
        _pieces = [.. pieces];
        Corners = corners;
        Length = _pieces.Length > 0 ? _pieces[^1].End : 0;
    }

    public double Length { get; }

    /// <summary>The corners between start and end, in order.</summary>
    public ImmutableArray<Corner> Corners { get; }

    /// <summary>Where pieces meet, start and end included: third derivatives jump there.</summary>
    public IEnumerable<double> Joints => _pieces.Select(p => p.Start).Append(Length);

    /// <summary>As <see cref="Through(IEnumerable{ValueTuple{Vec3, double}})"/>, all corners alike.</summary>
    public static ToolPath Through(IEnumerable<Vec3> points, double blend) => Through(points.Select(p => (p, blend)));

    /// <summary>
    /// Straight from point to point, every corner rounded as far as its legs allow: where the two roundings of a leg ask for more than its
    /// length, they share it in proportion. Points that repeat count once.
    /// </summary>
    /// <param name="points">Points with the half length of the rounding there, metres, not negative; that of start and end is not used.</param>
    public static ToolPath Through(IEnumerable<(Vec3 At, double Blend)> points)
    {
        var p = new List<Vec3>();
        var blends = new List<double>();
        foreach (var (point, asked) in points)
        {
            if (p.Count > 0 && (point - p[^1]).Norm <= SamePlace) continue;
            p.Add(point);
            blends.Add(asked);
        }
        int legs = Math.Max(0, p.Count - 1);
        var directions = Enumerable.Range(0, legs).Select(i => (p[i + 1] - p[i]).Unit()).ToArray();
        var lengths = Enumerable.Range(0, legs).Select(i => (p[i + 1] - p[i]).Norm).ToArray();

        // What each corner asks for: nothing at the ends and where the way goes straight on.
        double[] asks = [.. Enumerable.Range(0, legs + 1).Select(i =>
            i == 0 || i >= legs || (directions[i - 1].Cross(directions[i]).Norm < 1e-12 && directions[i - 1].Dot(directions[i]) > 0) ? 0 : blends[i])];
        var corners = ImmutableArray.CreateBuilder<Corner>();
        var pieces = new List<PathPiece>();
        double s = 0, done = 0;
        for (int i = 0; i < legs; i++)
        {
            double end = s + lengths[i], half = 0;
            if (i + 1 < legs)
            {
                half = Math.Min(Share(i, i + 1), Share(i + 1, i + 1));
                corners.Add(new(p[i + 1], end, asks[i + 1], half));
            }
            if (end - half > done) pieces.Add(PathPiece.Line(done, end - half - done, p[i] + (done - s) * directions[i], directions[i]));
            if (half > 0) pieces.Add(PathPiece.Corner(end - half, 2 * half, p[i + 1] - half * directions[i], directions[i], directions[i + 1]));
            (done, s) = (end + half, end);
        }
        return new(pieces, corners.ToImmutable());

        double Share(int leg, int corner) => asks[corner] * Math.Min(1, lengths[leg] / (asks[leg] + asks[leg + 1]));
    }

    /// <summary>The arc of the circle through three points, from the first over the second to the third. Three points on a line have none: null.</summary>
    public static ToolPath? Arc(Vec3 from, Vec3 over, Vec3 to)
    {
        // Centre of the circle through three points, from the sides at the first one (elementary geometry).
        Vec3 a = over - from, b = to - from, normal = a.Cross(b);
        double twice = 2 * normal.NormSquared;
        if (!(normal.Norm > 1e-9 * a.Norm * b.Norm)) return null;
        var toCentre = (a.NormSquared * b.Cross(normal) + b.NormSquared * normal.Cross(a)) / twice;
        double radius = toCentre.Norm;
        Vec3 centre = from + toCentre, radial = -toCentre / radius, tangent = normal.Unit().Cross(radial);
        var last = to - centre;
        double angle = Math.Atan2(last.Dot(tangent), last.Dot(radial));
        if (angle < 0) angle += Math.Tau;
        return new([PathPiece.Arc(0, radius * angle, centre, radial, tangent, radius)], []);
    }

    public PathPoint At(double s)
    {
        int i = _pieces.Length - 1;
        while (i > 0 && s < _pieces[i].Start) i--;
        return _pieces[i].At(s);
    }

    /// <summary>Position and first derivative for all s of an interval: the smallest boxes around what the pieces in it do.</summary>
    internal (IntervalVec3 P, IntervalVec3 D1) Over(double low, double high)
    {
        (IntervalVec3 P, IntervalVec3 D1)? hull = null;
        foreach (ref readonly var piece in _pieces.AsSpan())
        {
            if (piece.End < low || piece.Start > high) continue;
            var part = piece.Over(new(Math.Max(low, piece.Start), Math.Min(high, piece.End)));
            hull = hull is { } h ? (Hull(h.P, part.P), Hull(h.D1, part.D1)) : part;
        }
        return hull ?? (IntervalVec3.Whole, IntervalVec3.Whole);

        static IntervalVec3 Hull(IntervalVec3 a, IntervalVec3 b) => new(a.X.Hull(b.X), a.Y.Hull(b.Y), a.Z.Hull(b.Z));
    }
}

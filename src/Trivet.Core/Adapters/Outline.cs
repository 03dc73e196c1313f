using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Adapters;

/// <summary>
/// A piece of an outline, counter-clockwise: a straight line, or an arc about <see cref="Centre"/> with a radius above zero. A full circle is one arc
/// whose ends are the same point.
/// </summary>
public readonly record struct OutlinePiece(Vec2 From, Vec2 To, Vec2 Centre, double Radius)
{
    public bool IsArc => Radius > 0;
    public bool IsCircle => IsArc && (To - From).Norm < 1e-12;

    /// <summary>Angle that an arc turns through, 0 to 2π.</summary>
    public double Sweep
    {
        get
        {
            if (!IsArc) return 0;
            if (IsCircle) return 2 * Math.PI;
            Vec2 a = From - Centre, b = To - Centre;
            double turn = Math.Atan2(a.Cross(b), a.Dot(b));
            return turn < 0 ? turn + 2 * Math.PI : turn;
        }
    }

    public double StartAngle => Math.Atan2(From.Y - Centre.Y, From.X - Centre.X);
}

/// <summary>
/// The convex outline round a set of discs: arcs of the discs joined by their common tangents. In a direction u the outline reaches as far as
/// the farthest disc, max over i of c·u + r; where the farthest disc changes, a tangent runs from one to the next.
/// </summary>
public sealed record Outline(ImmutableArray<OutlinePiece> Pieces)
{
    public static Outline Circle(double radius) => new([new(new(radius, 0), new(radius, 0), Vec2.Zero, radius)]);

    public static Outline Round(IReadOnlyList<(Vec2 Centre, double Radius)> discs)
    {
        var turns = new List<double> { -Math.PI, Math.PI };
        for (int i = 0; i < discs.Count; i++)
        {
            for (int j = i + 1; j < discs.Count; j++)
            {
                var d = discs[j].Centre - discs[i].Centre;
                double apart = d.Norm, cos = (discs[i].Radius - discs[j].Radius) / apart;
                if (!(Math.Abs(cos) <= 1)) continue;
                double along = Math.Atan2(d.Y, d.X), aside = Math.Acos(cos);
                turns.Add(Wrapped(along + aside));
                turns.Add(Wrapped(along - aside));
            }
        }
        turns.Sort();

        var arcs = new List<(int Disc, double From, double To)>();
        for (int k = 0; k + 1 < turns.Count; k++)
        {
            if (turns[k + 1] - turns[k] < 1e-9) continue;
            int farthest = Farthest(discs, (turns[k] + turns[k + 1]) / 2);
            if (arcs.Count > 0 && arcs[^1].Disc == farthest) arcs[^1] = arcs[^1] with { To = turns[k + 1] };
            else arcs.Add((farthest, turns[k], turns[k + 1]));
        }
        if (arcs.Count == 1)
        {
            var (c, r) = discs[arcs[0].Disc];
            var start = c + new Vec2(r, 0);
            return new([new(start, start, c, r)]);
        }
        // The first and the last arc are one where they are of one disc.
        if (arcs[0].Disc == arcs[^1].Disc)
        {
            arcs[0] = arcs[0] with { From = arcs[^1].From - 2 * Math.PI };
            arcs.RemoveAt(arcs.Count - 1);
        }

        var pieces = ImmutableArray.CreateBuilder<OutlinePiece>();
        for (int k = 0; k < arcs.Count; k++)
        {
            var (disc, from, to) = arcs[k];
            var (c, r) = discs[disc];
            var (next, nextFrom, _) = arcs[(k + 1) % arcs.Count];
            var end = c + Vec2.Polar(r, to);
            pieces.Add(new(c + Vec2.Polar(r, from), end, c, r));
            var onward = discs[next].Centre + Vec2.Polar(discs[next].Radius, nextFrom);
            if ((onward - end).Norm > 1e-9) pieces.Add(new(end, onward, default, 0));
        }
        return new(Joined(pieces));
    }

    /// <summary>Square metres: the polygon through the ends of the pieces and the segments of its arcs.</summary>
    public double Area => Pieces.Sum(p => p.From.Cross(p.To) / 2 + (p.IsArc ? p.Radius * p.Radius * (p.Sweep - Math.Sin(p.Sweep)) / 2 : 0));

    /// <summary>Largest distance from the middle.</summary>
    public double Reach => Pieces.Max(p => p.IsArc ? Math.Max(p.Centre.Norm + (Covers(p, p.Centre) ? p.Radius : 0), Math.Max(p.From.Norm, p.To.Norm)) : Math.Max(p.From.Norm, p.To.Norm));

    /// <summary>Least and greatest x and y.</summary>
    public (Vec2 Least, Vec2 Most) Box
    {
        get
        {
            double Far(double angle) => Pieces.Max(p => Reaches(p, angle));
            return (new(-Far(Math.PI), -Far(-Math.PI / 2)), new(Far(0), Far(Math.PI / 2)));
        }
    }

    /// <summary>Distance of a point within from the outline; negative outside. The outline is convex, so the nearest tangent decides.</summary>
    public double Depth(Vec2 p)
    {
        double least = double.PositiveInfinity;
        foreach (var piece in Pieces)
        {
            if (piece.IsArc)
            {
                if (piece.IsCircle || Covers(piece, p - piece.Centre)) least = Math.Min(least, piece.Radius - (p - piece.Centre).Norm);
                else least = Math.Min(least, Math.Min((p - piece.From).Norm, (p - piece.To).Norm));
                continue;
            }
            var along = (piece.To - piece.From) / (piece.To - piece.From).Norm;
            double left = along.Cross(p - piece.From), t = along.Dot(p - piece.From);
            if (t >= 0 && t <= (piece.To - piece.From).Norm) least = Math.Min(least, left);
        }
        return least;
    }

    /// <summary>Whether a direction from an arc's middle meets the arc.</summary>
    private static bool Covers(OutlinePiece arc, Vec2 direction)
    {
        if (arc.IsCircle) return true;
        Vec2 from = arc.From - arc.Centre, to = arc.To - arc.Centre;
        bool afterFrom = from.Cross(direction) >= 0, beforeTo = direction.Cross(to) >= 0;
        // Up to half a turn both must hold; beyond it one is enough.
        return from.Cross(to) >= 0 ? afterFrom && beforeTo : afterFrom || beforeTo;
    }

    private static double Reaches(OutlinePiece p, double angle)
    {
        var u = Vec2.Polar(1, angle);
        double ends = Math.Max(p.From.Dot(u), p.To.Dot(u));
        return p.IsArc && Covers(p, u) ? Math.Max(ends, p.Centre.Dot(u) + p.Radius) : ends;
    }

    private static int Farthest(IReadOnlyList<(Vec2 Centre, double Radius)> discs, double angle)
    {
        var u = Vec2.Polar(1, angle);
        int best = 0;
        for (int i = 1; i < discs.Count; i++)
            if (discs[i].Centre.Dot(u) + discs[i].Radius > discs[best].Centre.Dot(u) + discs[best].Radius + 1e-12) best = i;
        return best;
    }

    /// <summary>Each piece begins where the one before it ends, to the last bit.</summary>
    private static ImmutableArray<OutlinePiece> Joined(ImmutableArray<OutlinePiece>.Builder pieces)
    {
        for (int k = 0; k < pieces.Count; k++) pieces[k] = pieces[k] with { From = pieces[(k + pieces.Count - 1) % pieces.Count].To };
        return pieces.ToImmutable();
    }

    private static double Wrapped(double angle) => Math.Atan2(Math.Sin(angle), Math.Cos(angle));
}

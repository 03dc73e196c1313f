using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>What a point of a moving body hangs on.</summary>
internal enum Anchor
{
    Platform,
    Tcp,
    /// <summary>Carriage joint or elbow of chain 0; those of the others follow.</summary>
    Joint0,
    Joint1,
    Joint2,
}

/// <summary>A capsule whose ends hang on anchors, base frame, metres.</summary>
internal readonly record struct MovingBody(Anchor From, Vec3 FromOffset, Anchor To, Vec3 ToOffset, double Radius);

/// <summary>A line or an upright plate that stands still, base frame, metres.</summary>
internal readonly record struct FixedBody(Vec3 From, Vec3 To, Vec3 Rise, double Radius)
{
    /// <summary>Set once: it does not move.</summary>
    public Surrounding Box { get; } = Surrounding.Of(From, To, Rise);

    public bool IsPlate => Rise != Vec3.Zero;
    public int Corners => IsPlate ? 4 : 2;
    public Vec3 Corner(int i) => ((i & 1) == 0 ? From : To) + (i > 1 ? Rise : Vec3.Zero);

    /// <summary>Closest points of a segment (first) and this body's line or plate.</summary>
    public Closest ClosestTo(Vec3 a0, Vec3 a1) => IsPlate ? Plates.Closest(a0, a1, From, To - From, Rise) : Segments.Closest(a0, a1, From, To);
}

/// <summary>An upright box around a line or plate, to pass over quickly what is too far off to be nearest.</summary>
internal readonly record struct Surrounding(Vec3 Low, Vec3 High)
{
    private const double Rounding = 1e-9;

    public static Surrounding Of(Vec3 from, Vec3 to) => new(Vec3.Min(from, to), Vec3.Max(from, to));

    public static Surrounding Of(Vec3 from, Vec3 to, Vec3 rise)
    {
        Surrounding edge = Of(from, to), far = Of(from + rise, to + rise);
        return new(Vec3.Min(edge.Low, far.Low), Vec3.Max(edge.High, far.High));
    }

    /// <summary>No point of the one is within a distance, metres, of one of the other. False where either is not a number.</summary>
    public bool FartherThan(double distance, in Surrounding other)
    {
        var gap = Vec3.Max(Vec3.Zero, Vec3.Max(Low - other.High, other.Low - High));
        double far = distance + Rounding;
        return gap.NormSquared > far * Math.Max(0, far);
    }
}

[InlineArray(5)]
internal struct AnchorPoints
{
    private Vec3 _first;
}

/// <summary>
/// Smallest free distance between moving bodies and others, with its sign turned (a search looks for the largest), over a station's box.
/// <para>
/// For any unit vector n two convex bodies are at least min n·(b − a) apart, over the corners a of one and b of the other. Each
/// n·(b − a) is a smooth function of the station's variables, bounded by the mean value theorem; n is the line of closest approach
/// at the middle of the box, which affects how tight the bound is and never whether it is one. So a wall along a belt costs one
/// box: the distance to it does not change along it.
/// </para>
/// </summary>
internal sealed class ClearanceSearch : IBoundable
{
    private readonly IPlatformMotion _motion;
    private readonly ImmutableArray<BoundedChain> _chains;
    private readonly ImmutableArray<(MovingBody A, MovingBody B)> _moving;
    private readonly ImmutableArray<(MovingBody A, FixedBody B)> _fixed;
    private readonly bool _jointsMatter;

    public ClearanceSearch(
        IPlatformMotion motion, ImmutableArray<BoundedChain> chains, IEnumerable<(MovingBody, MovingBody)> moving, IEnumerable<(MovingBody, FixedBody)> still)
    {
        (_motion, _chains) = (motion, chains);
        _moving = [.. moving];
        _fixed = [.. still];
        _jointsMatter = _moving.Any(p => p.A.From >= Anchor.Joint0) || _fixed.Any(p => p.A.From >= Anchor.Joint0);
    }

    public double At(ReadOnlySpan<double> x)
    {
        var anchors = AnchorsAt(_motion.PlatformAt(x), _motion.ToolAt(x));
        double least = double.PositiveInfinity;
        foreach (var (a, b) in _moving)
        {
            Vec3 a0 = From(a, anchors), a1 = To(a, anchors), b0 = From(b, anchors), b1 = To(b, anchors);
            if (Surrounding.Of(a0, a1).FartherThan(least + a.Radius + b.Radius, Surrounding.Of(b0, b1))) continue;
            double d = Segments.Closest(a0, a1, b0, b1).Distance - a.Radius - b.Radius;
            if (double.IsNaN(d)) return double.NaN;
            least = Math.Min(least, d);
        }
        foreach (var (a, b) in _fixed)
        {
            Vec3 a0 = From(a, anchors), a1 = To(a, anchors);
            if (Surrounding.Of(a0, a1).FartherThan(least + a.Radius + b.Radius, b.Box)) continue;
            double d = b.ClosestTo(a0, a1).Distance - a.Radius - b.Radius;
            if (double.IsNaN(d)) return double.NaN;
            least = Math.Min(least, d);
        }
        return -least;
    }

    public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
    {
        monotone = 0;
        var sweep = new Sweep(_motion.Over(low, high));
        if (_jointsMatter && !sweep.Join(_chains)) return double.PositiveInfinity;

        double least = double.PositiveInfinity;
        foreach (var (a, b) in _moving)
        {
            Vec3 a0 = From(a, sweep.Middle), a1 = To(a, sweep.Middle), b0 = From(b, sweep.Middle), b1 = To(b, sweep.Middle);
            var closest = Segments.Closest(a0, a1, b0, b1);
            double radii = a.Radius + b.Radius;
            double coarse = closest.Distance - radii - sweep.Travel(a) - sweep.Travel(b);
            if (coarse >= least) continue;

            double bound = coarse;
            var n = (closest.OnSecond - closest.OnFirst).Unit();
            if (n.IsFinite)
            {
                double fine = Math.Min(
                    Math.Min(sweep.Apart(n, a.From, a0, b.From, b0), sweep.Apart(n, a.From, a0, b.To, b1)),
                    Math.Min(sweep.Apart(n, a.To, a1, b.From, b0), sweep.Apart(n, a.To, a1, b.To, b1))) - radii;
                bound = Math.Max(coarse, fine);
            }
            if (bound >= least) continue;
            least = bound;
            sweep.Steer(n, a, b, closest, rise, spread);
        }
        foreach (var (a, b) in _fixed)
        {
            Vec3 a0 = From(a, sweep.Middle), a1 = To(a, sweep.Middle);
            var closest = b.ClosestTo(a0, a1);
            double radii = a.Radius + b.Radius;
            double coarse = closest.Distance - radii - sweep.Travel(a);
            if (coarse >= least) continue;

            double bound = coarse;
            var n = (closest.OnSecond - closest.OnFirst).Unit();
            if (n.IsFinite)
            {
                double far = double.PositiveInfinity;
                for (int i = 0; i < b.Corners; i++) far = Math.Min(far, n.Dot(b.Corner(i)));
                double fine = far - Math.Max(sweep.Along(n, a.From, a0), sweep.Along(n, a.To, a1)) - radii;
                bound = Math.Max(coarse, fine);
            }
            if (bound >= least) continue;
            least = bound;
            sweep.Steer(n, a, closest, rise, spread);
        }
        return -least;
    }

    private AnchorPoints AnchorsAt(Vec3 p, Vec3 tool)
    {
        var points = new AnchorPoints();
        points[(int)Anchor.Platform] = p;
        points[(int)Anchor.Tcp] = p + tool;
        if (_jointsMatter)
            for (int i = 0; i < _chains.Length; i++) points[(int)Anchor.Joint0 + i] = _chains[i].Chain.Joint(_chains[i].Chain.Inverse(p));
        return points;
    }

    private static Vec3 From(in MovingBody body, in AnchorPoints anchors) => anchors[(int)body.From] + body.FromOffset;
    private static Vec3 To(in MovingBody body, in AnchorPoints anchors) => anchors[(int)body.To] + body.ToOffset;
}

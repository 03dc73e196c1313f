using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>Bounds of a chain over a box of positions, part of which the chain may not reach: they hold for the rest.</summary>
internal static class HomingBounds
{
    /// <summary>Sine and cosine of a limit may be off by a few units in the last place; far more than that is given away here.</summary>
    private const double Safe = 1 - 1e-12;

    /// <summary>
    /// The drive reading at those positions of the box where the chain closes, when there are any. As <see cref="BoundedChain.Over"/>,
    /// with the use of reach cut off at 1.
    /// </summary>
    public static Interval ReadingWhereClosed(this BoundedChain chain, IntervalVec3 p)
    {
        var c = chain.Chain;
        var w = p + (IntervalVec3)(c.B - c.Foot);
        if (c.Family == RobotFamily.RailDelta)
        {
            double use = Math.Min(1, chain.UseSquared(p).Value.Lower);
            var root = c.Rod * Interval.Sqrt(new(0, (1.0 - (Interval)use).Upper));
            return w.Dot(c.E) - root - c.HomeOffset;
        }

        Interval e = w.Dot(c.E), f = w.Dot(c.F), arm = c.Arm;
        var rho = Interval.Sqrt(Interval.Square(e) + Interval.Square(f));
        var cosine = ((w.NormSquared + Interval.Square(arm) - Interval.Square(c.Rod)) / (2.0 * arm * rho)).And(new(-1, 1));
        return Interval.Atan2(f, e) - Interval.Acos(cosine.IsBounded ? cosine : new(-1, 1)) - c.HomeOffset;
    }

    /// <summary>True only when the swing in the chain's ball joints is within its limit all over the box. The axes are those of <see cref="SwingSearch"/>.</summary>
    /// <param name="whole">The chain over the box.</param>
    public static bool SwingsWithin(this BoundedChain chain, in ChainEnclosure whole, IntervalVec3 p, in BallJoint joint)
    {
        var c = chain.Chain;
        var (s, cs) = Math.SinCos(joint.SeatAngle);
        Vec3 axis = joint.Kind == JointKind.CrossBar ? c.Side : cs * c.Side.Cross(Vec3.UnitZ) + s * Vec3.UnitZ;
        IntervalVec3 middle = p.Mid;
        var gradient = (IntervalVec3)axis - whole.JointRate.Dot(axis) * whole.Rate;
        var along = whole.Rod.Dot(axis).And(chain.Over(middle).Rod.Dot(axis) + gradient.Dot(p - middle));
        if (joint.Kind == JointKind.CrossBar) return joint.Limit >= Math.PI / 2 || Interval.Abs(along).Upper <= c.Rod * Math.Sin(joint.Limit) * Safe;

        // The swing is acos(−along/L): within its limit while along stays below −L·cos(limit).
        double most = -c.Rod * (Math.Cos(joint.Limit) + 1e-12);
        if (!(along.Upper <= most)) return false;
        if (c.Family == RobotFamily.RailDelta) return true;
        var g = whole.Reading + c.HomeOffset;
        Interval sin = Interval.Sin(g), cos = Interval.Cos(g);
        var outward = IntervalVec3.Along(c.E, cos) + IntervalVec3.Along(c.F, sin);
        var down = IntervalVec3.Along(c.F, cos) - IntervalVec3.Along(c.E, sin);
        return whole.Rod.Dot((Interval)cs * outward - (Interval)s * down).Upper <= most;
    }
}

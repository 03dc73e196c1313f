using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// Swing of a chain's ball joints over a station's box, as a function that is smooth where the angle is not: for a cross bar the sine
/// of the lean, |u·side|/L; for a seat minus the cosine of the angle, −u·n/L, the larger of both ends (docs/notation.md).
/// </summary>
internal sealed class SwingSearch : IBoundable
{
    private readonly IPlatformMotion _motion;
    private readonly BoundedChain _chain;
    private readonly BallJoint _joint;
    private readonly Vec3 _axis;

    public SwingSearch(IPlatformMotion motion, BoundedChain chain, BallJoint joint)
    {
        (_motion, _chain, _joint) = (motion, chain, joint);
        var side = chain.Chain.Side;
        var (s, c) = Math.SinCos(joint.SeatAngle);
        _axis = joint.Kind == JointKind.CrossBar ? side : c * side.Cross(Vec3.UnitZ) + s * Vec3.UnitZ;
    }

    public static double FromAngle(in BallJoint joint, double angle) => joint.Kind == JointKind.CrossBar ? Math.Sin(angle) : -Math.Cos(angle);

    public static double ToAngle(in BallJoint joint, double value) =>
        joint.Kind == JointKind.CrossBar ? Math.Asin(Math.Min(1, value)) : Math.Acos(Math.Clamp(-value, -1, 1));

    public double At(ReadOnlySpan<double> x)
    {
        var p = _motion.PlatformAt(x);
        return FromAngle(_joint, Swing.Of(_chain.Chain, _joint, p, _chain.Chain.Inverse(p)));
    }

    public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
    {
        var box = _motion.Over(low, high);
        var whole = ChainEnclosure.Over(_chain, box, out _);
        var middle = _chain.Over(box.PlatformMid);

        var fixedAxis = Along(box, whole, middle, _axis);
        if (_joint.Kind == JointKind.CrossBar)
        {
            monotone = box.Steer(fixedAxis.Slopes, rise, spread);
            if (fixedAxis.Value.Contains(0)) monotone = 0;
            if (fixedAxis.Value.Mid < 0)
                foreach (ref double r in rise) r = -r;
            return Interval.Abs(fixedAxis.Value).Upper;
        }

        monotone = box.Steer(fixedAxis.Slopes, rise, spread);
        if (_chain.Chain.Family == RobotFamily.RailDelta) return fixedAxis.Value.Upper;

        // Two ends: the larger counts, so nothing is known to be monotone unless one end is larger throughout.
        var elbow = AtElbow(box, whole, middle);
        if (elbow.Value.Lower > fixedAxis.Value.Upper) monotone = box.Steer(elbow.Slopes, rise, spread);
        else if (fixedAxis.Value.Lower < elbow.Value.Upper) monotone = 0;
        return Math.Max(fixedAxis.Value.Upper, elbow.Value.Upper);
    }

    /// <summary>u·n/L for a direction n that does not move: gradient (n − (n·C′)·∂q/∂p)/L.</summary>
    private (Interval Value, Slopes Slopes) Along(in MotionBox box, in ChainEnclosure whole, in ChainEnclosure middle, Vec3 n)
    {
        Interval rod = _chain.Chain.Rod;
        var slopes = box.SlopesOf((n - whole.JointRate.Dot(n) * whole.Rate) / rod);
        return ((whole.Rod.Dot(n) / rod).And(box.MeanValue(middle.Rod.Dot(n) / rod, slopes)), slopes);
    }

    /// <summary>
    /// A crank's elbow seat turns with the arm: with along = cos g·E + sin g·F and down = cos g·F − sin g·E its axis is
    /// s·down − c·along, and the value is u·m/L with m = c·along − s·down. d(u·m)/dg = u·(c·down + s·along) − a·down·m = u·(…) + a·s.
    /// </summary>
    private (Interval Value, Slopes Slopes) AtElbow(in MotionBox box, in ChainEnclosure whole, in ChainEnclosure middle)
    {
        Interval rod = _chain.Chain.Rod;
        var (s, c) = Math.SinCos(_joint.SeatAngle);
        var (m, turned) = Seat(whole.Reading, s, c);
        var perReading = whole.Rod.Dot(turned) + _chain.Chain.Arm * s;
        var slopes = box.SlopesOf((m + perReading * whole.Rate) / rod);
        var atMiddle = middle.Rod.Dot(Seat(middle.Reading, s, c).M) / rod;
        return ((whole.Rod.Dot(m) / rod).And(box.MeanValue(atMiddle, slopes)), slopes);
    }

    private (IntervalVec3 M, IntervalVec3 Turned) Seat(Interval reading, double s, double c)
    {
        var g = reading + _chain.Chain.HomeOffset;
        Interval sin = Interval.Sin(g), cos = Interval.Cos(g);
        var along = IntervalVec3.Along(_chain.Chain.E, cos) + IntervalVec3.Along(_chain.Chain.F, sin);
        var down = IntervalVec3.Along(_chain.Chain.F, cos) - IntervalVec3.Along(_chain.Chain.E, sin);
        return (c * (IntervalVec3)along - s * (IntervalVec3)down, (Interval)c * down + (Interval)s * along);
    }
}

using Trivet.Numerics;

namespace Trivet.Motion;

/// <summary>A point that moves along a path, with its derivatives by the path parameter s, metres.</summary>
/// <param name="P">Position, metres.</param>
/// <param name="D1">dp/ds: a unit vector on straight lines and arcs, shorter within a rounded corner.</param>
/// <param name="D2">d²p/ds², 1/m.</param>
/// <param name="D3">d³p/ds³, 1/m²; jumps where pieces meet.</param>
public readonly record struct PathPoint(Vec3 P, Vec3 D1, Vec3 D2, Vec3 D3);

/// <summary>
/// One piece of a path between two values of s. Either its direction turns from one to another by
/// <c>dp/ds = d₁ + (d₂ − d₁)·(3u² − 2u³)</c>, u = (s − start)/length, so that <c>p = p₀ + length·(d₁·u + (d₂ − d₁)·(u³ − u⁴/2))</c>: a rounded
/// corner, or a straight line where both directions are the same. Or it is an arc of a circle.
/// </summary>
/// <remarks>A corner between two legs is rounded over its half length b on each: length 2b, and the piece ends on the second leg at the distance b
/// from the corner, since u³ − u⁴/2 is ½ at its end. Its second derivative is zero at both ends.</remarks>
internal readonly struct PathPiece
{
    private readonly Vec3 _from, _d1, _turn, _radial;
    private readonly double _radius;

    private PathPiece(double start, double length, Vec3 from, Vec3 d1, Vec3 turn, Vec3 radial, double radius)
    {
        (Start, Length, _from, _d1, _turn, _radial, _radius) = (start, length, from, d1, turn, radial, radius);
    }

    public double Start { get; }
    public double Length { get; }
    public double End => Start + Length;

    public static PathPiece Line(double start, double length, Vec3 from, Vec3 direction) =>
        new(start, length, from, direction, Vec3.Zero, Vec3.Zero, 0);

    public static PathPiece Corner(double start, double length, Vec3 from, Vec3 before, Vec3 after) =>
        new(start, length, from, before, after - before, Vec3.Zero, 0);

    /// <param name="radial">Unit vector from the centre to where the arc begins.</param>
    /// <param name="tangent">Unit vector of the direction in which it begins.</param>
    public static PathPiece Arc(double start, double length, Vec3 centre, Vec3 radial, Vec3 tangent, double radius) =>
        new(start, length, centre, tangent, Vec3.Zero, radial, radius);

    public PathPoint At(double s)
    {
        if (_radius > 0)
        {
            var (sin, cos) = Math.SinCos((s - Start) / _radius);
            Vec3 outward = cos * _radial + sin * _d1, along = cos * _d1 - sin * _radial;
            return new(_from + _radius * outward, along, -(1 / _radius) * outward, -(1 / (_radius * _radius)) * along);
        }
        double u = Math.Clamp((s - Start) / Length, 0, 1), u2 = u * u;
        return new(
            _from + Length * (u * _d1 + u2 * u * (1 - u / 2) * _turn), _d1 + u2 * (3 - 2 * u) * _turn,
            6 * u * (1 - u) / Length * _turn, (6 - 12 * u) / (Length * Length) * _turn);
    }

    /// <summary>Position and first derivative for all s of an interval within the piece. Both laws of u grow over the whole piece.</summary>
    public (IntervalVec3 P, IntervalVec3 D1) Over(Interval s)
    {
        if (_radius > 0)
        {
            var angle = (s - Start) / _radius;
            Interval sin = Interval.Sin(angle), cos = Interval.Cos(angle);
            var outward = IntervalVec3.Along(_radial, cos) + IntervalVec3.Along(_d1, sin);
            return (_from + _radius * outward, IntervalVec3.Along(_d1, cos) - IntervalVec3.Along(_radial, sin));
        }
        Interval low = Share(s.Lower), high = Share(s.Upper);
        var position = IntervalVec3.Along(_d1, new(low.Lower, high.Upper)) + IntervalVec3.Along(_turn, new(Math.Max(0, Advance(low).Lower), Advance(high).Upper));
        return (_from + (Interval)Length * position, _d1 + IntervalVec3.Along(_turn, new(Math.Max(0, Turned(low).Lower), Math.Min(1, Turned(high).Upper))));

        static Interval Advance(Interval u) => Interval.Square(u) * u * (1.0 - u / 2.0);
        static Interval Turned(Interval u) => Interval.Square(u) * (3.0 - 2.0 * u);
    }

    private Interval Share(double s)
    {
        var u = ((Interval)s - Start) / Length;
        return new(Math.Clamp(u.Lower, 0, 1), Math.Clamp(u.Upper, 0, 1));
    }
}

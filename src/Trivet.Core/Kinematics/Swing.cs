using Trivet.Cells;
using Trivet.Numerics;

namespace Trivet.Kinematics;

/// <summary>
/// How far the rods swing in their ball joints, radians. Both rods of a chain are parallel and both ends see the same rod, so one
/// number serves them all, except for a crank's seats (see <see cref="SeatSwing"/>).
/// </summary>
public static class Swing
{
    /// <summary>The larger swing at either end of the chain's rods, not negative; to be held against <see cref="BallJoint.Limit"/>.</summary>
    public static double Of(in Chain chain, in BallJoint joint, Vec3 p, double q) => joint.Kind == JointKind.CrossBar
        ? Math.Abs(chain.CrossBarSwing(p, q))
        : chain.SeatSwing(joint.SeatAngle, p, q);

    /// <summary>
    /// Cross bar: the rod turns freely about the bar; what the joint must take is its lean out of the plane across the bar,
    /// asin(rod·side/L), positive when the platform end lies towards growing azimuth. Within ±π/2.
    /// </summary>
    public static double CrossBarSwing(this in Chain chain, Vec3 p, double q) =>
        Math.Asin(chain.RodVector(p, q).Dot(chain.Side) / chain.Rod);

    /// <summary>
    /// Seat: the angle between rod and seat axis, the larger of both ends, 0 to π. At the platform the axis is fixed: it points
    /// along the horizontal inward direction (across <see cref="Chain.Side"/>), tipped down by the seat angle, seen from carriage to
    /// platform. A carriage's seat is its mirror image, so the same line. An elbow's seat turns with the arm and is the
    /// platform's line when the arm is at angle 0.
    /// </summary>
    public static double SeatSwing(this in Chain chain, double seatAngle, Vec3 p, double q)
    {
        var rod = chain.RodVector(p, q);
        var (s, c) = Math.SinCos(seatAngle);
        // Side is t for a nominal chain, and t × z = r.
        var outward = chain.Side.Cross(Vec3.UnitZ);
        double atPlatform = Angle(rod, -c * outward - s * Vec3.UnitZ);
        if (chain.Family == RobotFamily.RailDelta) return atPlatform;
        var (sinArm, cosArm) = Math.SinCos(q + chain.HomeOffset);
        Vec3 along = cosArm * chain.E + sinArm * chain.F, down = cosArm * chain.F - sinArm * chain.E;
        return Math.Max(atPlatform, Angle(rod, s * down - c * along));
    }

    /// <summary>Angle between two vectors of any length, 0 to π, accurate also where they are nearly parallel.</summary>
    private static double Angle(Vec3 a, Vec3 b) => Math.Atan2(a.Cross(b).Norm, a.Dot(b));
}

using Trivet.Cells;
using Trivet.Numerics;

namespace Trivet.Kinematics;

/// <summary>
/// The computing form of one chain, in the base frame, metres and radians. Nothing is shared with the other chains, so that a
/// calibration may fit each alone.
/// <para>
/// Rail: the carriage joint is at <c>C(q) = Foot + (q + o)·E</c>. Crank: the elbow is at
/// <c>C(q) = Foot + Arm·(cos(q + o)·E + sin(q + o)·F)</c>, E level and outward, F straight down for an upright arm plane.
/// The rod of length L joins C(q) to the platform joint <c>p + B</c>; a pair of rods keeps the platform's orientation, so B is
/// constant in the base frame. Loop closure: <c>|p + B − C(q)| = L</c>.
/// </para>
/// </summary>
/// <param name="Family">Rail or crank.</param>
/// <param name="Foot">Rail: carriage joint at geometric coordinate 0. Crank: shoulder.</param>
/// <param name="E">Rail: unit direction of growing q. Crank: unit direction of the arm at angle 0.</param>
/// <param name="F">Crank: unit direction of the arm at +90°. Rail: not used (zero).</param>
/// <param name="Arm">Crank: upper arm length. Rail: not used (1).</param>
/// <param name="B">Platform joint from the platform reference point.</param>
/// <param name="Rod">Rod length L.</param>
/// <param name="HomeOffset">o: added to the drive reading q to give the geometric coordinate.</param>
/// <param name="TravelFrom">Smallest drive reading.</param>
/// <param name="TravelTo">Largest drive reading.</param>
/// <param name="Side">Unit vector along the bar that joins the pair of rods (horizontal, towards growing azimuth for a nominal chain).</param>
public readonly record struct Chain(
    RobotFamily Family,
    Vec3 Foot,
    Vec3 E,
    Vec3 F,
    double Arm,
    Vec3 B,
    double Rod,
    double HomeOffset,
    double TravelFrom,
    double TravelTo,
    Vec3 Side)
{
    /// <summary>Position of the carriage joint or elbow at drive reading q, base frame.</summary>
    public Vec3 Joint(double q)
    {
        double g = q + HomeOffset;
        if (Family == RobotFamily.RailDelta) return Foot + g * E;
        var (s, c) = Math.SinCos(g);
        return Foot + Arm * (c * E + s * F);
    }

    /// <summary>∂C/∂q at drive reading q: metres per metre or per radian.</summary>
    public Vec3 JointRate(double q)
    {
        if (Family == RobotFamily.RailDelta) return E;
        var (s, c) = Math.SinCos(q + HomeOffset);
        return Arm * (c * F - s * E);
    }

    /// <summary>From the carriage joint or elbow to the platform joint; its length is L when q closes the loop at p.</summary>
    public Vec3 RodVector(Vec3 p, double q) => p + B - Joint(q);

    /// <summary>
    /// Drive reading that closes the loop at platform position p; not a number where the rod does not reach.
    /// <paramref name="farSide"/> false: carriage above the platform joint, elbow outward (the working mode).
    /// <para>
    /// Rail: with w = p + B − Foot, (g − w·E)² = L² − |w|² + (w·E)². Crank: with e = w·E, f = w·F,
    /// e·cos g + f·sin g = (|w|² + Arm² − L²) / (2·Arm), so g = atan2(f, e) ∓ acos(…/hypot(e, f)). Both are elementary
    /// (law of cosines); checked against [Williams2016] in the tests.
    /// </para>
    /// </summary>
    public double Inverse(Vec3 p, bool farSide = false)
    {
        var w = p + B - Foot;
        if (Family == RobotFamily.RailDelta)
        {
            double along = w.Dot(E);
            double root = Math.Sqrt(Rod * Rod - w.NormSquared + along * along);
            return (farSide ? along + root : along - root) - HomeOffset;
        }

        double e = w.Dot(E), f = w.Dot(F);
        double half = Math.Acos((w.NormSquared + Arm * Arm - Rod * Rod) / (2 * Arm * Math.Sqrt(e * e + f * f)));
        double aim = Math.Atan2(f, e);
        double g = farSide ? aim + half : aim - half;
        // Back to −π … π. (IEEERemainder does the same at ten times the time.)
        if (g > Math.PI) g -= Math.Tau;
        else if (g < -Math.PI) g += Math.Tau;
        return g - HomeOffset;
    }
}

using Trivet.Cells;
using Trivet.Numerics;

namespace Trivet.Gripping;

/// <summary>
/// Forces that a part asks of what holds it, from the acceleration less free fall f = a − g of its centre of mass: along the vertical f_z = g + a_z, and
/// across it f_xy = a_xy.
/// </summary>
public static class GripForces
{
    /// <summary>
    /// Force that cups above a part need to pull with, newtons: S·m·(f_z + f_xy/μ). The weight hangs on the cups, and friction at the lips, which the same
    /// pull presses on, takes the sideways force (the usual formula of vacuum handling; common practice). A part that is pushed up against the
    /// cups (f_z below zero) takes nothing off.
    /// </summary>
    public static double OfCups(double safety, double mass, Vec3 felt, Vec3 up, double friction)
    {
        double along = felt.Dot(up);
        return safety * mass * (Math.Max(0, along) + (felt - along * up).Norm / friction);
    }

    /// <summary>
    /// Moment about the edge of the cups that would peel a part off, newton metres: S·m·(|r × f| + f_z·lever), with r from the middle of the cups' lips to
    /// the part's centre of mass. The pull of the cups makes F·lever against it (statics of a body that tips about an edge).
    /// </summary>
    public static double Peel(double safety, double mass, Vec3 felt, Vec3 up, Vec3 fromLips, double lever) =>
        safety * mass * (fromLips.Cross(felt).Norm + Math.Max(0, felt.Dot(up)) * lever);

    /// <summary>
    /// Force of each finger, newtons. By friction: S·m·|f| / (n·μ), every finger taking its share. By form: S·m·f_xy, all that is across the vertical against one
    /// finger, which alone must stay shut, whatever the direction it closes in.
    /// </summary>
    public static double OfFinger(FingerHold hold, double mass, Vec3 felt, Vec3 up, double friction) => hold.Grip == GripKind.Friction
        ? hold.Safety * mass * felt.Norm / (hold.Count * friction)
        : hold.Safety * mass * (felt - felt.Dot(up) * up).Norm;
}

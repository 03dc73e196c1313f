using System.Runtime.Intrinsics;
using Trivet.Cells;
using Trivet.Numerics;
using Trivet.Numerics.Lanes;

namespace Trivet.Kinematics;

/// <summary>
/// Many poses at once: drive readings and the condition number of ∂q/∂p, working mode, as <see cref="DeltaRobot.Inverse"/> and
/// <see cref="PoseResult.Condition"/> give them one by one. Spans are structure of arrays: entry i of each belongs to pose i. Nothing
/// is allocated. A pose out of reach has not a number in the readings that do not exist and in the condition number.
/// <para>
/// Three chains run as wide as the processor allows, what is left over in narrower steps; two chains run one by one. Against one by
/// one: rail readings within 1e-14 m, crank readings within 1e-14 rad and condition numbers within 1e-12 of themselves, as long as
/// no <see cref="PoseResult.Serial"/> is below 0.1 and the condition number is below 100; nearer a singularity both ways lose digits.
/// </para>
/// </summary>
public static class PoseBatch
{
    /// <param name="x">Platform reference point, base frame, metres.</param>
    /// <param name="q1">Drive readings of the first chain, metres or radians. With two chains q3 becomes zero.</param>
    /// <param name="condition">Condition numbers, 1 or more.</param>
    public static void Inverse(
        DeltaRobot robot, ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> z,
        Span<double> q1, Span<double> q2, Span<double> q3, Span<double> condition)
    {
        int done = 0;
        if (Vector512.IsHardwareAccelerated) done += Inverse<Lanes512>(robot, x, y, z, q1, q2, q3, condition);
        if (Vector256.IsHardwareAccelerated) done += Inverse<Lanes256>(robot, x[done..], y[done..], z[done..], q1[done..], q2[done..], q3[done..], condition[done..]);
        done += Inverse<Lanes1>(robot, x[done..], y[done..], z[done..], q1[done..], q2[done..], q3[done..], condition[done..]);
        for (int i = done; i < x.Length; i++)
        {
            var pose = PoseResult.At(robot, new(x[i], y[i], z[i]));
            (q1[i], q2[i], q3[i], condition[i]) = (pose.Q.X, pose.Q.Y, pose.Q.Z, pose.Condition);
        }
    }

    /// <summary>The same in one given width, whole lanes only. Returns how many poses that were: the largest multiple of the width, or
    /// none with two chains.</summary>
    public static int Inverse<T>(
        DeltaRobot robot, ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> z,
        Span<double> q1, Span<double> q2, Span<double> q3, Span<double> condition) where T : struct, ILanes<T>
    {
        if (y.Length != x.Length || z.Length != x.Length || q1.Length < x.Length || q2.Length < x.Length || q3.Length < x.Length || condition.Length < x.Length)
            throw new ArgumentException($"Coordinates are of equal length ({x.Length}, {y.Length}, {z.Length}) and results at least as long "
                + $"({q1.Length}, {q2.Length}, {q3.Length}, {condition.Length}).");
        if (robot.Planar) return 0;
        return robot.Family == RobotFamily.RailDelta
            ? Run<T, RailLanes<T>>(robot, x, y, z, q1, q2, q3, condition)
            : Run<T, CrankLanes<T>>(robot, x, y, z, q1, q2, q3, condition);
    }

    private static int Run<T, TChain>(
        DeltaRobot robot, ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> z,
        Span<double> q1, Span<double> q2, Span<double> q3, Span<double> condition)
        where T : struct, ILanes<T>
        where TChain : struct, IChainLanes<T, TChain>
    {
        TChain one = TChain.Of(robot.Chains[0]), two = TChain.Of(robot.Chains[1]), three = TChain.Of(robot.Chains[2]);
        int i = 0;
        for (; i <= x.Length - T.Count; i += T.Count)
        {
            T px = T.Load(x, i), py = T.Load(y, i), pz = T.Load(z, i);
            one.Solve(px, py, pz, out var qa, out var ax, out var ay, out var az, out var alongA);
            qa.Store(q1, i);
            two.Solve(px, py, pz, out var qb, out var bx, out var by, out var bz, out var alongB);
            qb.Store(q2, i);
            three.Solve(px, py, pz, out var qc, out var cx, out var cy, out var cz, out var alongC);
            qc.Store(q3, i);

            // One division for three: the divider is slow.
            T ab = alongA * alongB, inverse = T.All(1) / (ab * alongC);
            T ia = alongB * alongC * inverse, ib = alongA * alongC * inverse, ic = ab * inverse;
            LaneMath.ConditionNumber(ax * ia, ay * ia, az * ia, bx * ib, by * ib, bz * ib, cx * ic, cy * ic, cz * ic).Store(condition, i);
        }
        return i;
    }
}

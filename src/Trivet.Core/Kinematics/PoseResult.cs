using Trivet.Numerics;

namespace Trivet.Kinematics;

/// <summary>
/// Everything about one pose that needs no more than the geometry. All of it is not a number where a rod does not reach.
/// <para>
/// Velocities: loop closure differentiated gives rod_i·ṗ = (rod_i·C_i′)·q̇_i, so row i of ∂q/∂p is rod_i/(rod_i·C_i′), and ∂p/∂q is
/// its inverse. A rod at right angles to its joint's path (serial singularity: two inverse solutions meet) makes a row infinite;
/// rods in one plane or parallel (parallel singularity: two forward solutions meet, the platform is no longer held) make ∂q/∂p
/// lose rank. With two chains everything is in the x–z plane: the y column and the third row are zero, and do not count.
/// </para>
/// </summary>
/// <param name="P">Platform reference point, base frame, metres.</param>
/// <param name="Q">Drive readings, metres or radians.</param>
/// <param name="Rods">Rows: from carriage joint or elbow to platform joint, base frame, metres.</param>
/// <param name="DqDp">∂q/∂p: metres or radians per metre; row i is chain i.</param>
/// <param name="DpDq">∂p/∂q: metres per metre or radian; column i is chain i.</param>
/// <param name="Gains">Singular values of ∂p/∂q, largest first; with two chains the third is not a number.</param>
/// <param name="Serial">Per chain, cosine of the angle between rod and the path of its joint: zero at the serial singularity, one
/// when the rod lies along the path. Never negative in the working mode. With two chains the third is not a number.</param>
/// <param name="Parallel">Volume of the box spanned by the unit rods (area with two chains): zero at a parallel singularity, one at best.</param>
public readonly record struct PoseResult(
    Vec3 P, Vec3 Q, Mat3 Rods, Mat3 DqDp, Mat3 DpDq, Vec3 Gains, Vec3 Serial, double Parallel)
{
    private static readonly Mat3 NotANumber = new(Vec3.NaN, Vec3.NaN, Vec3.NaN);

    /// <summary>The pose at platform position p in the working mode.</summary>
    public static PoseResult At(DeltaRobot robot, Vec3 p) => At(robot, p, robot.Inverse(p));

    /// <summary>The pose at platform position p with drive readings that close the loops there, in whatever mode they mean.</summary>
    public static PoseResult At(DeltaRobot robot, Vec3 p, Vec3 q)
    {
        if (!q.IsFinite || !p.IsFinite) return new(p, q, NotANumber, NotANumber, NotANumber, Vec3.NaN, Vec3.NaN, double.NaN);
        var (rod0, row0, serial0) = Row(robot.Chains[0], p, q.X);
        var (rod1, row1, serial1) = Row(robot.Chains[1], p, q.Y);
        if (robot.Planar)
        {
            double det = row0.X * row1.Z - row0.Z * row1.X;
            var dpdq = new Mat3(new(row1.Z / det, -row0.Z / det, 0), Vec3.Zero, new(-row1.X / det, row0.X / det, 0));
            var (larger, smaller) = Spectrum.SingularValues(row0.X, row0.Z, row1.X, row1.Z);
            return new(p, q, new(rod0, rod1, Vec3.Zero), new(row0, row1, Vec3.Zero), dpdq, new(1 / smaller, 1 / larger, double.NaN),
                new(serial0, serial1, double.NaN), Math.Abs(rod0.Unit().Cross(rod1.Unit()).Y));
        }

        var (rod2, row2, serial2) = Row(robot.Chains[2], p, q.Z);
        var dqdp = new Mat3(row0, row1, row2);
        var values = dqdp.SingularValues();
        return new(p, q, new(rod0, rod1, rod2), dqdp, dqdp.Inverse(), new(1 / values.Z, 1 / values.Y, 1 / values.X),
            new(serial0, serial1, serial2), Math.Abs(rod0.Unit().Dot(rod1.Unit().Cross(rod2.Unit()))));
    }

    public bool Reached => Q.IsFinite;

    private double LeastGain => double.IsNaN(Gains.Z) ? Gains.Y : Gains.Z;

    /// <summary>Condition number of ∂q/∂p (2-norm; the same as of ∂p/∂q): 1 when the platform answers alike in all directions.</summary>
    public double Condition => Gains.X / LeastGain;

    /// <summary>Dexterity: 1 / condition, from 0 (singular) to 1 (isotropic).</summary>
    public double Dexterity => LeastGain / Gains.X;

    /// <summary>Largest platform movement when a single drive makes one step, metres, to first order. Steps in metres or radians, in the
    /// order of the chains.</summary>
    public double StepMovement(ReadOnlySpan<double> driveSteps)
    {
        double worst = 0;
        for (int i = 0; i < driveSteps.Length; i++) worst = Math.Max(worst, Math.Abs(driveSteps[i]) * DpDq.Column(i).Norm);
        return worst;
    }

    private static (Vec3 Rod, Vec3 Row, double Serial) Row(in Chain chain, Vec3 p, double q)
    {
        var rod = chain.RodVector(p, q);
        var path = chain.JointRate(q);
        double along = rod.Dot(path);
        return (rod, rod / along, along / (chain.Rod * path.Norm));
    }
}

using System.Collections.Immutable;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// ∂q/∂p over a part of a station's box: a middle matrix M₀ with its singular values, and a radius per entry. Every matrix M in
/// the box has |M − M₀| within the radii, so its singular values are within δ = ‖radii‖ (Frobenius) of those of M₀ (Weyl's inequality
/// for singular values, [Horn2013]).
/// </summary>
internal readonly struct JacobianBox
{
    /// <summary>Relative rounding error allowed to the singular values of M₀ (docs/notation.md): far more than occurs.</summary>
    private const double SpectrumError = 1e-9;

    public Mat3 Middle { get; }
    public Mat3 Radius { get; }
    /// <summary>Largest and smallest singular value of M₀.</summary>
    public double Largest { get; }
    public double Smallest { get; }
    /// <summary>δ, infinite where a chain is not known to close.</summary>
    public double Delta { get; }

    public JacobianBox(DeltaRobot robot, ImmutableArray<BoundedChain> chains, in MotionBox box)
    {
        Span<Vec3> middle = stackalloc Vec3[3], radius = stackalloc Vec3[3];
        middle[2] = radius[2] = Vec3.Zero;
        bool bounded = true;
        for (int i = 0; i < chains.Length; i++)
        {
            var rate = ChainEnclosure.Over(chains[i], box, out _).Rate;
            bounded &= rate.IsBounded;
            middle[i] = rate.Mid;
            radius[i] = new(rate.X.RadiusAbout(middle[i].X), robot.Planar ? 0 : rate.Y.RadiusAbout(middle[i].Y), rate.Z.RadiusAbout(middle[i].Z));
        }
        Middle = new(middle[0], middle[1], middle[2]);
        Radius = new(radius[0], radius[1], radius[2]);
        if (robot.Planar) (Largest, Smallest) = Spectrum.SingularValues(middle[0].X, middle[0].Z, middle[1].X, middle[1].Z);
        else
        {
            var values = Spectrum.SingularValues(Middle);
            (Largest, Smallest) = (values.X, values.Z);
        }
        double squares = radius[0].NormSquared + radius[1].NormSquared + radius[2].NormSquared;
        Delta = bounded ? Math.Sqrt(squares) * (1 + SpectrumError) + SpectrumError * Largest : double.PositiveInfinity;
    }

    /// <summary>Upper bound of the condition number; infinite where a singular matrix is not excluded.</summary>
    public double Condition => Delta < Smallest ? (Largest + Delta) / (Smallest - Delta) : double.PositiveInfinity;

    /// <summary>
    /// Upper bound of the length of column i of the inverse J. From M·J = 1: J_i(x) = J_i(0) − J(x)·(M − M₀)·J_i(0), so
    /// |J_i(x)| ≤ |J_i(0)| + ‖radii·|J_i(0)|‖ / (σ_min − δ).
    /// </summary>
    public double InverseColumn(int i, bool planar)
    {
        if (!(Delta < Smallest)) return double.PositiveInfinity;
        var column = planar ? PlanarInverseColumn(i) : Middle.Inverse().Column(i);
        var absolute = new Vec3(Math.Abs(column.X), Math.Abs(column.Y), Math.Abs(column.Z));
        return (column.Norm + (Radius * absolute).Norm / (Smallest - Delta)) * (1 + SpectrumError * Largest / Smallest);
    }

    private Vec3 PlanarInverseColumn(int i)
    {
        Vec3 a = Middle.Row0, b = Middle.Row1;
        double det = a.X * b.Z - a.Z * b.X;
        return i == 0 ? new(b.Z / det, 0, -b.X / det) : new(-a.Z / det, 0, a.X / det);
    }
}

/// <summary>Condition number of ∂q/∂p over a station's box.</summary>
internal sealed class DexteritySearch(StationMotion motion, DeltaRobot robot, ImmutableArray<BoundedChain> chains) : IBoundable
{
    public double At(ReadOnlySpan<double> x) => PoseResult.At(robot, motion.PlatformAt(x)).Condition;

    public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
    {
        monotone = 0;
        var box = motion.Over(low, high);
        Steering.ByDifferences(this, low, high, box, rise, spread);
        return new JacobianBox(robot, chains, box).Condition;
    }
}

/// <summary>Platform movement for one step of one drive, the largest over the drives, over a station's box.</summary>
internal sealed class StepSearch(StationMotion motion, DeltaRobot robot, ImmutableArray<BoundedChain> chains, ImmutableArray<double> steps) : IBoundable
{
    public double At(ReadOnlySpan<double> x) => PoseResult.At(robot, motion.PlatformAt(x)).StepMovement(steps.AsSpan());

    public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
    {
        monotone = 0;
        var box = motion.Over(low, high);
        Steering.ByDifferences(this, low, high, box, rise, spread);
        var jacobian = new JacobianBox(robot, chains, box);
        double worst = 0;
        for (int i = 0; i < chains.Length; i++) worst = Math.Max(worst, Math.Abs(steps[i]) * jacobian.InverseColumn(i, robot.Planar));
        return worst;
    }
}

internal static class Steering
{
    /// <summary>
    /// Where slopes are not to be had: the direction of growth from two values on either side of the middle, the weight from how
    /// far the platform moves.
    /// </summary>
    public static void ByDifferences<T>(T f, ReadOnlySpan<double> low, ReadOnlySpan<double> high, in MotionBox box, Span<double> rise, Span<double> spread) where T : IBoundable
    {
        Span<double> x = stackalloc double[low.Length];
        for (int k = 0; k < x.Length; k++) x[k] = low[k] + 0.5 * (high[k] - low[k]);
        for (int k = 0; k < x.Length; k++)
        {
            if (low[k] == high[k]) continue;
            double middle = x[k];
            x[k] = high[k];
            double difference = f.At(x);
            x[k] = low[k];
            difference -= f.At(x);
            x[k] = middle;
            rise[k] = double.IsNaN(difference) ? 0 : difference;
            spread[k] = box.Rate[k].Mid.Norm * box.Half[k];
        }
    }
}

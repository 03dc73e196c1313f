using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

[InlineArray(4)]
internal struct MatrixRates
{
    private Mat3 _first;
}

/// <summary>
/// ∂q/∂p over a part of a station's box: M(x) = M₀ + Σ d_k·D_k + E with M₀ at the middle, d the distance from it, D_k = ∂M/∂x_k at
/// the middle, and |E| bounded entry by entry from how much ∂M/∂x_k varies (mean value theorem). So the error E is of second order
/// in the size of the box. A planar robot's third row and y column are filled with a number between its two singular values,
/// which alters neither.
/// </summary>
internal ref struct JacobianBox
{
    /// <summary>Relative rounding error allowed to matrices of doubles and their eigenvalues: far more than occurs.</summary>
    private const double Rounding = 1e-9;

    private readonly MotionBox _box;
    private Mat3 _middle;
    private MatrixRates _rates;
    private Halves _rateErrors;
    private double _error;

    /// <summary>False where a chain is not known to close: nothing is then known.</summary>
    public bool IsBounded { get; }

    public JacobianBox(DeltaRobot robot, ImmutableArray<BoundedChain> chains, in MotionBox box)
    {
        _box = box;
        Span<Vec3> rows = stackalloc Vec3[3], turns = stackalloc Vec3[12];
        rows.Clear();
        turns.Clear();
        double error2 = 0;
        IsBounded = true;
        for (int i = 0; i < chains.Length; i++)
        {
            var whole = ChainEnclosure.Over(chains[i], box, out _);
            var middle = chains[i].Over(box.PlatformMid).Rate;
            if (!whole.Rate.IsBounded || !middle.IsBounded)
            {
                IsBounded = false;
                return;
            }
            rows[i] = middle.Mid;
            double rowError = middle.RadiusAbout(rows[i]);
            for (int k = 0; k < box.Variables; k++)
            {
                var turn = whole.RateChange(box.Rate[k]);
                turns[3 * k + i] = turn.Mid;
                double radius = turn.RadiusAbout(turn.Mid);
                rowError += radius * box.Half[k];
                _rateErrors[k] += radius * radius;
            }
            error2 += rowError * rowError;
        }
        if (robot.Planar)
        {
            double between = Math.Sqrt((rows[0].NormSquared + rows[1].NormSquared) / 2);
            rows[2] = new(0, between, 0);
        }
        _middle = new(rows[0], rows[1], rows[2]);
        for (int k = 0; k < box.Variables; k++)
        {
            _rates[k] = new(turns[3 * k], turns[3 * k + 1], turns[3 * k + 2]);
            _rateErrors[k] = Math.Sqrt(_rateErrors[k]) * (1 + Rounding);
        }
        _error = Math.Sqrt(error2) * (1 + Rounding) + Rounding * Norm(_middle);
    }

    /// <summary>
    /// Upper bound of the condition number κ; infinite where a singular matrix is not excluded.
    /// <para>
    /// κ² is the ratio of the largest to the smallest eigenvalue of A = MᵀM. Of symmetric matrices the largest eigenvalue is a convex
    /// function and the smallest a concave one, so over the linear part A₀ + Σ d_k·(M₀ᵀD_k + D_kᵀM₀) the ratio is largest, and the
    /// smallest eigenvalue smallest, at a corner of the box. What is left of A is (Σ d_k·D_k)ᵀ(Σ d_k·D_k), which only adds, and the
    /// part that E makes; both shift eigenvalues by no more than their norm (Weyl's inequality, [Horn2013]).
    /// </para>
    /// </summary>
    /// <param name="rise">Points to the worst corner.</param>
    public readonly double Condition(Span<double> rise)
    {
        if (!IsBounded) return double.PositiveInfinity;
        var transposed = _middle.Transpose();
        var middle = transposed * _middle;
        var turns = new MatrixRates();
        for (int k = 0; k < _box.Variables; k++)
        {
            var half = transposed * _rates[k];
            turns[k] = _box.Half[k] * (half + half.Transpose());
        }

        double ratio = 0, least = double.PositiveInfinity;
        for (int corner = 0; corner < 1 << _box.Variables; corner++)
        {
            if (IsRepeated(corner)) continue;
            var a = middle;
            for (int k = 0; k < _box.Variables; k++) a += Sign(corner, k) * turns[k];
            var values = Spectrum.Symmetric(a);
            double smallest = values.Z - Rounding * values.X;
            least = Math.Min(least, smallest);
            double here = smallest > 0 ? values.X * (1 + Rounding) / smallest : double.PositiveInfinity;
            if (!(here > ratio)) continue;
            ratio = here;
            for (int k = 0; k < rise.Length; k++) rise[k] = Sign(corner, k);
        }

        double moved = LargestMove(), rest = (2 * (Norm(_middle) + moved) + _error) * _error;
        return least > rest ? Math.Sqrt((ratio * least + moved * moved + rest) / (least - rest)) : double.PositiveInfinity;
    }

    /// <summary>
    /// Upper bound of the length of column c = M⁻¹·e_i of the inverse, from ∂c/∂x_k = −M⁻¹·(∂M/∂x_k)·c by the mean value theorem. With
    /// δ ≥ ‖M − M₀‖, N₀ = M₀⁻¹ and ν = 1/(σ_min(M₀) − δ): ‖M⁻¹‖ ≤ ν and ‖M⁻¹ − N₀‖ ≤ ν·‖N₀‖·δ, which bounds how far each factor strays from its
    /// value at the middle.
    /// </summary>
    /// <param name="rise">Filled with the slopes at the middle.</param>
    public readonly double InverseColumn(int i, Span<double> rise)
    {
        if (!IsBounded) return double.PositiveInfinity;
        var inverse = _middle.Inverse();
        var values = Spectrum.SingularValues(_middle);
        double sigma = values.Z - Rounding * values.X, delta = LargestMove() + _error;
        if (!(delta < sigma)) return double.PositiveInfinity;

        double largest = 1 / (sigma - delta), atMiddle = 1 / sigma, strays = largest * atMiddle * delta;
        var column = inverse.Column(i);
        double length = column.Norm, moved = _error * length;
        for (int k = 0; k < _box.Variables; k++) moved += _box.Half[k] * (_rates[k] * column).Norm;
        double radius = largest * moved;

        double change = 0;
        for (int k = 0; k < _box.Variables; k++)
        {
            double rate = Norm(_rates[k]), rateError = _rateErrors[k];
            var slope = inverse * (_rates[k] * column);
            double error = strays * (rate + rateError) * (length + radius) + atMiddle * (rateError * (length + radius) + rate * radius)
                + 2 * radius / length * slope.Norm;
            rise[k] = -slope.Dot(column) / length;
            change += (Math.Abs(rise[k]) + error) * _box.Half[k];
        }
        return (length + Math.Min(change, radius)) * (1 + Rounding * values.X / sigma);
    }

    /// <summary>How much each variable turns the matrix within the box: what the second order error grows with.</summary>
    public readonly void Spread(Span<double> spread)
    {
        for (int k = 0; k < spread.Length; k++) spread[k] = IsBounded ? Norm(_rates[k]) * _box.Half[k] : 0;
    }

    /// <summary>Largest ‖Σ d_k·D_k‖ (Frobenius): a convex function, so it is attained at a corner.</summary>
    private readonly double LargestMove()
    {
        double most = 0;
        for (int corner = 0; corner < 1 << _box.Variables; corner++)
        {
            if (IsRepeated(corner)) continue;
            var move = new Mat3();
            for (int k = 0; k < _box.Variables; k++) move += Sign(corner, k) * _box.Half[k] * _rates[k];
            most = Math.Max(most, Norm(move));
        }
        return most * (1 + Rounding);
    }

    /// <summary>A variable without width has one end only.</summary>
    private readonly bool IsRepeated(int corner)
    {
        for (int k = 0; k < _box.Variables; k++)
            if (_box.Half[k] < 1e-300 && (corner >> k & 1) == 1) return true;
        return false;
    }

    private static double Sign(int corner, int k) => (corner >> k & 1) == 0 ? -1 : 1;

    private static double Norm(in Mat3 m) => Math.Sqrt(m.Row0.NormSquared + m.Row1.NormSquared + m.Row2.NormSquared);
}

/// <summary>Condition number of ∂q/∂p over a station's box.</summary>
internal sealed class DexteritySearch(IPlatformMotion motion, DeltaRobot robot, ImmutableArray<BoundedChain> chains) : IBoundable
{
    public double At(ReadOnlySpan<double> x) => PoseResult.At(robot, motion.PlatformAt(x)).Condition;

    public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
    {
        monotone = 0;
        var jacobian = new JacobianBox(robot, chains, motion.Over(low, high));
        jacobian.Spread(spread);
        return jacobian.Condition(rise);
    }
}

/// <summary>Platform movement for one step of one drive, the largest over the drives, over a station's box.</summary>
internal sealed class StepSearch(IPlatformMotion motion, DeltaRobot robot, ImmutableArray<BoundedChain> chains, ImmutableArray<double> steps) : IBoundable
{
    public double At(ReadOnlySpan<double> x) => PoseResult.At(robot, motion.PlatformAt(x)).StepMovement(steps.AsSpan());

    public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
    {
        monotone = 0;
        var jacobian = new JacobianBox(robot, chains, motion.Over(low, high));
        jacobian.Spread(spread);
        double worst = 0;
        Span<double> slopes = stackalloc double[4];
        for (int i = 0; i < chains.Length; i++)
        {
            double movement = Math.Abs(steps[i]) * jacobian.InverseColumn(i, slopes);
            if (!(movement > worst)) continue;
            worst = movement;
            slopes[..rise.Length].CopyTo(rise);
        }
        return worst;
    }
}

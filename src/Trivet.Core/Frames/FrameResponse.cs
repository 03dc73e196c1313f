using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Frames;

/// <summary>Force and moment of the robot on its base over a motion that repeats, cell frame; moments about the base frame's origin.</summary>
/// <param name="Time">Seconds, rising; two equal times are a jump. Straight between.</param>
/// <param name="Force">Newtons.</param>
/// <param name="Moment">N·m.</param>
public sealed record ReactionOverTime(ImmutableArray<double> Time, ImmutableArray<Vec3> Force, ImmutableArray<Vec3> Moment)
{
    public double Duration => Time[^1] - Time[0];

    public bool IsFinite => Time.Length > 1 && Duration > 0 && Force.All(f => f.IsFinite) && Moment.All(m => m.IsFinite);

    /// <summary>Mean over time: a motion that repeats has no mean acceleration, so this is weight.</summary>
    public (Vec3 Force, Vec3 Moment) Mean()
    {
        Vec3 force = Vec3.Zero, moment = Vec3.Zero;
        for (int i = 1; i < Time.Length; i++)
        {
            double half = (Time[i] - Time[i - 1]) / 2;
            force += half * (Force[i] + Force[i - 1]);
            moment += half * (Moment[i] + Moment[i - 1]);
        }

        return (force / Duration, moment / Duration);
    }

    /// <summary>The same motion so many times as hard: what differs from the mean, times the factor.</summary>
    public ReactionOverTime Harder(double factor)
    {
        var (force, moment) = Mean();
        return new(Time, [.. Force.Select(f => force + factor * (f - force))], [.. Moment.Select(m => moment + factor * (m - moment))]);
    }

    /// <summary>Index of the last entry at or before a time.</summary>
    public int IndexAt(double time)
    {
        int at = Time.BinarySearch(time);
        if (at < 0) at = ~at - 1;
        while (at + 1 < Time.Length && Time[at + 1] <= time) at++;
        return Math.Clamp(at, 0, Time.Length - 1);
    }
}

/// <summary>
/// How the frame answers a reaction that repeats: each mode is an oscillator driven by what of the reaction goes along with it, followed exactly and
/// made periodic; what the modes left out give way by is taken in full as if it were static (mode acceleration; [Craig2006, 18], from memory).
/// </summary>
public sealed class FrameResponse
{
    private readonly FrameSolution _frame;
    private readonly ReactionOverTime _reaction;
    private readonly Oscillator[] _modes;
    private readonly MountMotion[] _shapes;
    /// <summary>For each mode: q − p/ω² and q̇ at each time.</summary>
    private readonly double[][] _beyond, _speed;
    private readonly Vec3 _meanForce, _meanMoment;

    private FrameResponse(FrameSolution frame, double damping, ReactionOverTime reaction)
    {
        (_frame, _reaction, Damping) = (frame, reaction, damping);
        (_meanForce, _meanMoment) = reaction.Mean();
        int n = frame.Modes.Length, times = reaction.Time.Length;
        (_modes, _shapes) = (new Oscillator[n], new MountMotion[n]);
        (_beyond, _speed) = (new double[n][], new double[n][]);
        var load = new double[times];
        for (int k = 0; k < n; k++)
        {
            var (mode, shape) = (_modes[k] = new(frame.Modes[k].Omega, damping), _shapes[k] = frame.MountOf(frame.Modes[k].Vector));
            for (int i = 0; i < times; i++) load[i] = Push(shape, i);
            var (q, v) = mode.Periodic(reaction.Time.AsSpan(), load);
            double[] beyond = _beyond[k] = new double[times], speed = _speed[k] = new double[times];
            double stiffness = mode.Omega * mode.Omega;
            for (int i = 0; i < times; i++)
            {
                if (i > 0) (q, v) = mode.After(q, v, load[i - 1], load[i], reaction.Time[i] - reaction.Time[i - 1]);
                (beyond[i], speed[i]) = (q - load[i] / stiffness, v);
            }
        }
    }

    public double Damping { get; }
    public double Joint => _frame.Joint;
    public FrameSolution Frame => _frame;

    public static FrameResponse Of(FrameSolution frame, double damping, ReactionOverTime reaction) => new(frame, damping, reaction);

    /// <summary>Motion of the base at an entry of the reaction, beyond where the mean load holds it.</summary>
    public MountMotion At(int i)
    {
        var still = _frame.Under(_reaction.Force[i] - _meanForce, _reaction.Moment[i] - _meanMoment);
        return Swinging(k => _beyond[k][i], still);
    }

    /// <summary>How far the base swings beyond where the load of the moment would hold it, so long after an entry from which on the load stays.</summary>
    public MountMotion Swing(int i, double after) => Swinging(k => _modes[k].Free(_beyond[k][i], _speed[k][i], after).Q, default);

    /// <summary>
    /// Time after an entry from which on a point of the base, away from its origin by the arm, swings within a tolerance while the load stays. Searched backward
    /// from where the sum of all modes' envelopes is within it, in steps of a twentieth of the shortest period that matters.
    /// </summary>
    /// <param name="tolerance">Metres, above zero.</param>
    /// <returns>Seconds; 0 where it is within from the start on; not a number where the response is none.</returns>
    public double SettlingTime(int i, Vec3 arm, double tolerance)
    {
        double[] sizes = [.. Enumerable.Range(0, _modes.Length).Select(k =>
        {
            // Largest |q| from here on, the ringing's own factor included.
            var (w, z) = _modes[k];
            double ringing = w * Math.Sqrt(1 - z * z), across = (_speed[k][i] + z * w * _beyond[k][i]) / ringing;
            return Math.Sqrt(_beyond[k][i] * _beyond[k][i] + across * across) * _shapes[k].At(arm).Norm;
        })];
        if (sizes.Any(s => !double.IsFinite(s))) return double.NaN;
        double end = 0;
        while (Envelope(end) > tolerance) end = 2 * end + 1e-3;
        for (double low = 0, high = end; ;)
        {
            double half = (low + high) / 2;
            if (high - low < 1e-4)
            {
                end = high;
                break;
            }

            if (Envelope(half) > tolerance) low = half;
            else high = half;
        }

        double fastest = _modes.Where((m, k) => sizes[k] > tolerance / 20).Select(m => m.Omega).DefaultIfEmpty(_modes[0].Omega).Max();
        double step = Math.Tau / fastest / 20;
        for (double t = end; t > 0; t -= step)
            if (Swing(i, t).At(arm).Norm > tolerance) return Math.Min(t + step, end);
        return Swing(i, 0).At(arm).Norm > tolerance ? Math.Min(step, end) : 0;

        double Envelope(double t) => sizes.Select((s, k) => s * Math.Exp(-_modes[k].Damping * _modes[k].Omega * t)).Sum();
    }

    /// <summary>What each foot puts on the floor at an entry, weights and mean load included.</summary>
    public void Feet(int i, Span<FootForce> into)
    {
        var (still, perLoad, perMode) = _feet ??= Prepare();
        Vec3 force = _reaction.Force[i] - _meanForce, moment = _reaction.Moment[i] - _meanMoment;
        for (int foot = 0; foot < into.Length; foot++)
        {
            var sum = still[foot];
            for (int l = 0; l < 6; l++) sum += (l < 3 ? force[l] : moment[l - 3]) * perLoad[l][foot];
            for (int k = 0; k < _modes.Length; k++) sum += _beyond[k][i] * perMode[k][foot];
            into[foot] = sum;
        }
    }

    private (ImmutableArray<FootForce> Still, ImmutableArray<FootForce>[] PerLoad, ImmutableArray<FootForce>[] PerMode)? _feet;

    private (ImmutableArray<FootForce>, ImmutableArray<FootForce>[], ImmutableArray<FootForce>[]) Prepare() =>
        (_frame.FeetUnderWeight, [.. _frame.PerLoad.Select(_frame.Feet)], [.. _frame.Modes.Select(m => _frame.Feet(m.Vector))]);

    private double Push(MountMotion shape, int i) => shape.Moved.Dot(_reaction.Force[i]) + shape.Turned.Dot(_reaction.Moment[i]);

    private MountMotion Swinging(Func<int, double> amount, MountMotion sum)
    {
        for (int k = 0; k < _modes.Length; k++)
        {
            double q = amount(k);
            sum = new(sum.Moved + q * _shapes[k].Moved, sum.Turned + q * _shapes[k].Turned);
        }

        return sum;
    }
}

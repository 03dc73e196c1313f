using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;

namespace Trivet.Numerics.Profiles;

/// <summary>A stretch of constant jerk: its length in seconds, the acceleration at its beginning, the jerk.</summary>
public readonly record struct Phase(double Duration, double Acceleration, double Jerk);

/// <summary>
/// Position over time of one coordinate: at most seven phases of constant jerk (constant acceleration in a trapezoid). A value without
/// allocation; made by <see cref="AxisProfiles"/>. The default value stands still at zero and takes no time.
/// </summary>
public struct Profile
{
    public const int MostPhases = 7;

    [InlineArray(MostPhases)]
    private struct PhaseArray
    {
        private Phase _first;
    }

    private PhaseArray _phases;
    private int _count;

    internal Profile(double from, double velocity)
    {
        StartPosition = from;
        StartVelocity = velocity;
    }

    /// <summary>A change of velocity alone, with no acceleration at its ends: a stop, or getting up to speed.</summary>
    public static Profile Ramp(double position, double from, double to, double acceleration, double jerk)
    {
        var profile = new Profile(position, from);
        profile.AppendRamp(new Excursion(from, to, new(0, acceleration, jerk)).Ramp(Math.Abs(to - from)), Math.CopySign(acceleration, to - from), jerk);
        return profile;
    }

    public double StartPosition { get; }
    public double StartVelocity { get; }

    /// <summary>Seconds.</summary>
    public double Duration { get; private set; }

    /// <summary>The phases in order, none of zero length.</summary>
    [UnscopedRef]
    public readonly ReadOnlySpan<Phase> Phases => ((ReadOnlySpan<Phase>)_phases)[.._count];

    /// <summary>State at a time from the start, seconds. Before the start it is the state at the start, after the end that at the end.</summary>
    public readonly AxisState At(double time)
    {
        double p = StartPosition, v = StartVelocity, left = Math.Max(time, 0);
        AxisState state = new(p, v, 0, 0);
        foreach (var phase in Phases)
        {
            double t = Math.Min(left, phase.Duration);
            double a = phase.Acceleration + phase.Jerk * t;
            state = new(p + t * (v + t * (phase.Acceleration / 2 + t * phase.Jerk / 6)), v + t * (phase.Acceleration + a) / 2, a, phase.Jerk);
            if (left < phase.Duration) return state;
            left -= phase.Duration;
            (p, v) = (state.Position, state.Velocity);
        }

        return state with { Acceleration = 0, Jerk = 0 };
    }

    /// <summary>Integrates from the start through all phases: where it ends, and the largest magnitudes on the way.</summary>
    internal readonly void Integrate(out double position, out double velocity, out AxisLimits peaks)
    {
        double p = StartPosition, v = StartVelocity, vPeak = Math.Abs(v), aPeak = 0, jPeak = 0;
        foreach (var phase in Phases)
        {
            double t = phase.Duration, a = phase.Acceleration, end = a + phase.Jerk * t;
            // Velocity turns where the acceleration passes through zero inside a phase.
            if (a * end < 0) vPeak = Math.Max(vPeak, Math.Abs(v - a * a / (2 * phase.Jerk)));
            p += t * (v + t * (a / 2 + t * phase.Jerk / 6));
            v += t * (a + end) / 2;
            vPeak = Math.Max(vPeak, Math.Abs(v));
            aPeak = Math.Max(aPeak, Math.Max(Math.Abs(a), Math.Abs(end)));
            jPeak = Math.Max(jPeak, Math.Abs(phase.Jerk));
        }

        (position, velocity, peaks) = (p, v, new(vPeak, aPeak, jPeak));
    }

    internal void Append(double duration, double acceleration, double jerk)
    {
        if (!(duration > 0)) return;
        _phases[_count++] = new(duration, acceleration, jerk);
        Duration += duration;
    }

    /// <summary>A ramp of velocity of this length, with no acceleration at its ends.</summary>
    /// <param name="acceleration">Highest allowed, with the ramp's sign; reached where the length has room for it.</param>
    /// <param name="jerk">Magnitude.</param>
    internal void AppendRamp(double length, double acceleration, double jerk)
    {
        double round = Math.Abs(acceleration) / jerk;
        if (length < 2 * round)
        {
            round = length / 2;
            acceleration = Math.CopySign(jerk * round, acceleration);
        }

        jerk = Math.CopySign(jerk, acceleration);
        Append(round, 0, jerk);
        Append(length - 2 * round, acceleration, 0);
        Append(round, acceleration, -jerk);
    }
}

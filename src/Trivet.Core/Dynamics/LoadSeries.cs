using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Dynamics;

/// <summary>Force and moment of the robot on what carries it, over time: what frame and anchors are designed for.</summary>
/// <param name="Time">Seconds, rising.</param>
/// <param name="Force_B">Base frame, newtons.</param>
/// <param name="Moment_B">About the base frame's origin, N·m.</param>
public sealed record ReactionSeries(ImmutableArray<double> Time, ImmutableArray<Vec3> Force_B, ImmutableArray<Vec3> Moment_B);

/// <summary>The extremes of axial force over a motion in the rods of one chain, newtons.</summary>
/// <param name="Tension">Largest tension of any end of either rod; zero where there is only compression.</param>
/// <param name="TensionAt">Index of the instant where it occurs.</param>
/// <param name="Compression">Largest compression, as a positive number; zero where there is only tension.</param>
/// <param name="CompressionAt">Index of the instant where it occurs.</param>
public readonly record struct RodExtremes(double Tension, int TensionAt, double Compression, int CompressionAt)
{
    /// <summary>
    /// Spring force along the rod that keeps every ball in its seat, newtons. A seat can push its ball but not pull it, so the spring must
    /// outdo the largest tension. Forces across the rod at its ends (its own inertia) are carried by the seats and are not in it.
    /// </summary>
    public double PreloadNeeded => Tension;
}

/// <summary>Loads at the instants of a motion, gathered.</summary>
/// <param name="Time">Seconds, rising.</param>
/// <param name="Each">One for each time.</param>
/// <param name="Rods">By chain, in their order.</param>
public sealed record LoadSeries(ImmutableArray<double> Time, ImmutableArray<Loads> Each, ImmutableArray<RodExtremes> Rods)
{
    public ReactionSeries Reaction => new(Time, [.. Each.Select(l => l.Force_B)], [.. Each.Select(l => l.Moment_B)]);

    /// <param name="time">Seconds, as long as the states.</param>
    public static LoadSeries Along(RobotDynamics dynamics, ReadOnlySpan<double> time, ReadOnlySpan<MotionState> states)
    {
        if (time.Length != states.Length) throw new ArgumentException($"{time.Length} times for {states.Length} states.", nameof(time));
        var each = ImmutableArray.CreateBuilder<Loads>(states.Length);
        var rods = new RodExtremes[dynamics.Chains.Length];
        for (int k = 0; k < states.Length; k++)
        {
            var loads = Loads.Of(dynamics, states[k]);
            each.Add(loads);
            for (int i = 0; i < rods.Length; i++) rods[i] = Wider(rods[i], loads.Rods(i), k);
        }
        return new([.. time], each.MoveToImmutable(), [.. rods]);
    }

    // Not a number stays: a motion that was once out of reach has no extremes.
    private static RodExtremes Wider(RodExtremes so, PairForce pair, int at)
    {
        if (!(pair.Most <= so.Tension) && !double.IsNaN(so.Tension)) so = so with { Tension = pair.Most, TensionAt = at };
        if (!(-pair.Least <= so.Compression) && !double.IsNaN(so.Compression)) so = so with { Compression = -pair.Least, CompressionAt = at };
        return so;
    }
}

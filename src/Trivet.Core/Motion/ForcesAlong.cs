using System.Collections.Immutable;
using Trivet.Dynamics;
using Trivet.Numerics;

namespace Trivet.Motion;

/// <summary>
/// Forces along a path as A·s̈ + B·ṡ² + C, each at every point of a grid: those of the drives and the rotary axis, newtons or newton metres at the
/// drive coordinate, rotors included; and the axial force at both ends of both rods of each chain.
/// </summary>
internal sealed class ForcesAlong
{
    public required ImmutableArray<(double[] A, double[] B, double[] C)> Drives { get; init; }
    public required (double[] A, double[] B, double[] C) Rotary { get; init; }
    public required ImmutableArray<ImmutableArray<(double[] A, double[] B, double[] C)>> Rods { get; init; }

    /// <param name="dynamics">Without friction: only then are forces of this form.</param>
    /// <param name="rods">Without: <see cref="Rods"/> is empty for each chain.</param>
    public static ForcesAlong Of(RobotDynamics dynamics, PlatformPoint[] along, bool rods)
    {
        int chains = dynamics.Chains.Length, n = along.Length;
        var all = Enumerable.Range(0, 1 + (rods ? 5 : 1) * chains).Select(_ => (A: new double[n], B: new double[n], C: new double[n])).ToArray();
        Span<double> still = stackalloc double[16], pushed = stackalloc double[16], running = stackalloc double[16];
        for (int i = 0; i < n; i++)
        {
            var p = along[i].Platform;
            Forces(dynamics, new(p.P, Vec3.Zero, Vec3.Zero, new(along[i].Angle)), rods, still);
            Forces(dynamics, new(p.P, Vec3.Zero, p.D1, new(along[i].Angle, 0, along[i].Angle1)), rods, pushed);
            Forces(dynamics, new(p.P, p.D1, p.D2, new(along[i].Angle, along[i].Angle1, along[i].Angle2)), rods, running);
            for (int k = 0; k < all.Length; k++) (all[k].A[i], all[k].B[i], all[k].C[i]) = (pushed[k] - still[k], running[k] - still[k], still[k]);
        }
        return new()
        {
            Rotary = all[0],
            Drives = [.. all[1..(1 + chains)]],
            Rods = [.. Enumerable.Range(0, chains).Select(c => all.Skip(1 + chains + 4 * c).Take(4).ToImmutableArray())],
        };
    }

    /// <summary>Rotary axis, drives, then four ends of rods for each chain.</summary>
    private static void Forces(RobotDynamics dynamics, in MotionState state, bool rods, Span<double> forces)
    {
        int chains = dynamics.Chains.Length;
        var demand = dynamics.Demand(state);
        forces[0] = demand.RotaryTorque;
        for (int i = 0; i < chains; i++) forces[1 + i] = demand.Force[i];
        if (!rods) return;
        var loads = Loads.Of(dynamics, state);
        for (int i = 0; i < chains; i++)
        {
            var pair = loads.Rods(i);
            int at = 1 + chains + 4 * i;
            (forces[at], forces[at + 1], forces[at + 2], forces[at + 3]) = (pair.Plus.AtJoint, pair.Plus.AtPlatform, pair.Minus.AtJoint, pair.Minus.AtPlatform);
        }
    }
}

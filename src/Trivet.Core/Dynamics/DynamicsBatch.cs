using System.Runtime.Intrinsics;
using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics.Lanes;

namespace Trivet.Dynamics;

/// <summary>
/// Forces of the drives for many states at once, as <see cref="RobotDynamics.Inverse"/> gives them one by one, friction included and the
/// rotary axis at rest. Spans are structure of arrays: entry i of each belongs to state i. Nothing is allocated. A state out of reach
/// has not a number in its forces.
/// <para>
/// Three chains run as wide as the processor allows, what is left over in narrower steps; two chains run one by one. Against one by one:
/// within 1e-12 of the largest force, as long as no <see cref="PoseResult.Serial"/> is below 0.1 and the condition number is below 100.
/// </para>
/// </summary>
public static class DynamicsBatch
{
    /// <param name="x">Platform reference point, base frame, metres.</param>
    /// <param name="vx">Its velocity, m/s.</param>
    /// <param name="ax">Its acceleration, m/s².</param>
    /// <param name="f1">Force of the first chain's drive, N or N·m. With two chains f3 becomes zero.</param>
    public static void Inverse(
        RobotDynamics dynamics, ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> z,
        ReadOnlySpan<double> vx, ReadOnlySpan<double> vy, ReadOnlySpan<double> vz, ReadOnlySpan<double> ax, ReadOnlySpan<double> ay, ReadOnlySpan<double> az,
        Span<double> f1, Span<double> f2, Span<double> f3)
    {
        var states = new States(x, y, z, vx, vy, vz, ax, ay, az);
        int done = 0;
        if (Vector512.IsHardwareAccelerated) done = Inverse<Lanes512>(dynamics, states, f1, f2, f3);
        if (Vector256.IsHardwareAccelerated) done = Inverse<Lanes256>(dynamics, states, f1, f2, f3, done);
        done = Inverse<Lanes1>(dynamics, states, f1, f2, f3, done);
        for (int i = done; i < x.Length; i++)
        {
            var force = dynamics.Inverse(new(x[i], y[i], z[i]), new(vx[i], vy[i], vz[i]), new(ax[i], ay[i], az[i]));
            (f1[i], f2[i], f3[i]) = (force.X, force.Y, force.Z);
        }
    }

    /// <summary>The same in one given width, whole lanes only, from an index on. Returns the index behind the last state done.</summary>
    public static int Inverse<T>(RobotDynamics dynamics, in States states, Span<double> f1, Span<double> f2, Span<double> f3, int from = 0)
        where T : struct, ILanes<T>
    {
        int count = states.Count;
        if (f1.Length < count || f2.Length < count || f3.Length < count)
            throw new ArgumentException($"Forces are at least as long as the {count} states ({f1.Length}, {f2.Length}, {f3.Length}).");
        if (dynamics.Robot.Planar) return from;
        return dynamics.Robot.Family == RobotFamily.RailDelta
            ? Run<T, RailForces<T>>(dynamics, states, f1, f2, f3, from)
            : Run<T, CrankForces<T>>(dynamics, states, f1, f2, f3, from);
    }

    /// <summary>Positions, velocities and accelerations, each of the same length.</summary>
    public readonly ref struct States
    {
        public States(
            ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> z, ReadOnlySpan<double> vx, ReadOnlySpan<double> vy,
            ReadOnlySpan<double> vz, ReadOnlySpan<double> ax, ReadOnlySpan<double> ay, ReadOnlySpan<double> az)
        {
            int n = x.Length;
            if (y.Length != n || z.Length != n || vx.Length != n || vy.Length != n || vz.Length != n || ax.Length != n || ay.Length != n || az.Length != n)
                throw new ArgumentException("Positions, velocities and accelerations are of equal length.");
            X = x;
            Y = y;
            Z = z;
            Vx = vx;
            Vy = vy;
            Vz = vz;
            Ax = ax;
            Ay = ay;
            Az = az;
        }

        internal readonly ReadOnlySpan<double> X, Y, Z, Vx, Vy, Vz, Ax, Ay, Az;

        public int Count => X.Length;
    }

    private static int Run<T, TChain>(RobotDynamics dynamics, in States s, Span<double> f1, Span<double> f2, Span<double> f3, int i)
        where T : struct, ILanes<T>
        where TChain : struct, IChainForces<T, TChain>
    {
        TChain one = TChain.Of(dynamics, 0), two = TChain.Of(dynamics, 1), three = TChain.Of(dynamics, 2);
        double pairs = 0, weights = dynamics.PlatformMass;
        foreach (var body in dynamics.Chains)
        {
            pairs += body.Pair * dynamics.Rods.Platform;
            weights += body.Pair * dynamics.Rods.PlatformWeight;
        }

        var gravity = dynamics.Gravity_B;
        T mass = T.All(dynamics.PlatformMass + pairs);
        T wx = T.All(-weights * gravity.X), wy = T.All(-weights * gravity.Y), wz = T.All(-weights * gravity.Z);
        for (; i <= s.Count - T.Count; i += T.Count)
        {
            var p = new Lane3<T>(T.Load(s.X, i), T.Load(s.Y, i), T.Load(s.Z, i));
            var v = new Lane3<T>(T.Load(s.Vx, i), T.Load(s.Vy, i), T.Load(s.Vz, i));
            var a = new Lane3<T>(T.Load(s.Ax, i), T.Load(s.Ay, i), T.Load(s.Az, i));
            var platform = new Lane3<T>(T.Fma(mass, a.X, wx), T.Fma(mass, a.Y, wy), T.Fma(mass, a.Z, wz));
            T alongA = one.Rod(p, out var rodA, out var pathA), alongB = two.Rod(p, out var rodB, out var pathB), alongC = three.Rod(p, out var rodC, out var pathC);
            Lane3<T> bc = rodB.Cross(rodC), ca = rodC.Cross(rodA), ab = rodA.Cross(rodB);

            // One division for four: the divider is slow.
            T volume = rodC.Dot(ab), product = alongA * alongB, rest = alongC * volume, inverse = T.All(1) / (product * rest);
            T perAlongs = inverse * rest, perA = perAlongs * alongB, perB = perAlongs * alongA, perRest = inverse * product;
            T perC = perRest * volume, perVolume = perRest * alongC;

            T ownA = one.Own(rodA, pathA, perA, p, v, a, ref platform), ownB = two.Own(rodB, pathB, perB, p, v, a, ref platform);
            T ownC = three.Own(rodC, pathC, perC, p, v, a, ref platform);
            T.Fma(alongA * perVolume, platform.Dot(bc), ownA).Store(f1, i);
            T.Fma(alongB * perVolume, platform.Dot(ca), ownB).Store(f2, i);
            T.Fma(alongC * perVolume, platform.Dot(ab), ownC).Store(f3, i);
        }
        return i;
    }
}

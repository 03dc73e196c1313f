using System.Runtime.CompilerServices;
using Trivet.Numerics;
using Trivet.Numerics.Lanes;

namespace Trivet.Dynamics;

/// <summary>Three lanes as a vector.</summary>
internal readonly struct Lane3<T>(T x, T y, T z) where T : struct, ILanes<T>
{
    public readonly T X = x, Y = y, Z = z;

    public Lane3(Vec3 v) : this(T.All(v.X), T.All(v.Y), T.All(v.Z))
    {
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Dot(in Lane3<T> b) => T.Fma(X, b.X, T.Fma(Y, b.Y, Z * b.Z));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Lane3<T> Cross(in Lane3<T> b) => new(T.Fma(Y, b.Z, -(Z * b.Y)), T.Fma(Z, b.X, -(X * b.Z)), T.Fma(X, b.Y, -(Y * b.X)));

    /// <summary>this + s·b.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Lane3<T> Plus(T s, in Lane3<T> b) => new(T.Fma(s, b.X, X), T.Fma(s, b.Y, Y), T.Fma(s, b.Z, Z));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane3<T> operator +(Lane3<T> a, Lane3<T> b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);
}

/// <summary>One chain's part of <see cref="RobotDynamics.Inverse"/> for several states at once.</summary>
internal interface IChainForces<T, TSelf> where T : struct, ILanes<T> where TSelf : struct, IChainForces<T, TSelf>
{
    static abstract TSelf Of(RobotDynamics dynamics, int chain);

    /// <summary>The rod, C′, and rod·C′.</summary>
    T Rod(in Lane3<T> p, out Lane3<T> rod, out Lane3<T> path);

    /// <summary>What the chain asks of its own drive; adds to what the platform needs all that moves with the drive.</summary>
    /// <param name="perAlong">1/(rod·C′).</param>
    T Own(in Lane3<T> rod, in Lane3<T> path, T perAlong, in Lane3<T> p, in Lane3<T> v, in Lane3<T> a, ref Lane3<T> platform);
}

/// <summary>
/// A rail: a_C = q̈·E, so its own force is inertia·q̈ + coupling·a·E − weight, and the platform gets coupling·q̈·E; inertia holds carriage,
/// counterweight, rotor and the rods' share.
/// </summary>
internal struct RailForces<T> : IChainForces<T, RailForces<T>> where T : struct, ILanes<T>
{
    private Lane3<T> _shift, _e;
    private T _rod2, _inertia, _coupling, _weight, _viscous, _coulomb;

    public static RailForces<T> Of(RobotDynamics dynamics, int i)
    {
        var (chain, body, rods) = (dynamics.Robot.Chains[i], dynamics.Chains[i], dynamics.Rods);
        return new()
        {
            _shift = new(chain.B - chain.Foot),
            _e = new(chain.E),
            _rod2 = T.All(chain.Rod * chain.Rod),
            _inertia = T.All(body.Inertia + body.Pair * rods.Joint),
            _coupling = T.All(body.Pair * rods.Coupling),
            _weight = T.All((body.WeightAtJoint(chain) + body.Pair * rods.JointWeight) * dynamics.Gravity_B.Dot(chain.E)),
            _viscous = T.All(body.Viscous),
            _coulomb = T.All(body.Coulomb),
        };
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Rod(in Lane3<T> p, out Lane3<T> rod, out Lane3<T> path)
    {
        var w = p + _shift;
        path = _e;
        T rail = w.Dot(_e), along = T.Sqrt(T.Fma(rail, rail, _rod2 - w.Dot(w)));
        rod = w.Plus(along - rail, _e);
        return along;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Own(
        in Lane3<T> rod, in Lane3<T> path, T perAlong, in Lane3<T> p, in Lane3<T> v, in Lane3<T> a, ref Lane3<T> platform)
    {
        T speed = rod.Dot(v) * perAlong;
        var slip = v.Plus(-speed, _e);
        T acceleration = (rod.Dot(a) + slip.Dot(slip)) * perAlong;
        platform = platform.Plus(_coupling * acceleration, _e);
        return T.Fma(_inertia, acceleration, T.Fma(_coupling, a.Dot(_e), ChainFriction.Of(speed, _viscous, _coulomb) - _weight));
    }
}

/// <summary>A crank, its sine and cosine as in the batch of poses, without their angle. With C″ = shoulder − C =
/// rod − w, at right angles to C′.</summary>
internal struct CrankForces<T> : IChainForces<T, CrankForces<T>> where T : struct, ILanes<T>
{
    private Lane3<T> _shift, _e, _f, _weight;
    private T _arm, _square, _half, _inertia, _coupling, _viscous, _coulomb;

    public static CrankForces<T> Of(RobotDynamics dynamics, int i)
    {
        var (chain, body, rods) = (dynamics.Robot.Chains[i], dynamics.Chains[i], dynamics.Rods);
        return new()
        {
            _shift = new(chain.B - chain.Foot),
            _e = new(chain.E),
            _f = new(chain.F),
            _weight = new((body.WeightAtJoint(chain) + body.Pair * rods.JointWeight) * dynamics.Gravity_B),
            _arm = T.All(chain.Arm),
            _square = T.All(chain.Arm * chain.Arm - chain.Rod * chain.Rod),
            _half = T.All(1 / (2 * chain.Arm)),
            _inertia = T.All(body.Inertia + body.Pair * rods.Joint * chain.Arm * chain.Arm),
            _coupling = T.All(body.Pair * rods.Coupling),
            _viscous = T.All(body.Viscous),
            _coulomb = T.All(body.Coulomb),
        };
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Rod(in Lane3<T> p, out Lane3<T> rod, out Lane3<T> path)
    {
        var w = p + _shift;
        T e = w.Dot(_e), f = w.Dot(_f), h2 = T.Fma(e, e, f * f), k = T.Fma(w.X, w.X, T.Fma(w.Y, w.Y, T.Fma(w.Z, w.Z, _square))) * _half;
        T d = T.Sqrt(T.Fma(-k, k, h2)), perH2 = _arm / h2;
        T cos = T.Fma(e, k, f * d) * perH2, sin = T.Fma(f, k, -(e * d)) * perH2;
        rod = w.Plus(-cos, _e).Plus(-sin, _f);
        path = new Lane3<T>(cos * _f.X, cos * _f.Y, cos * _f.Z).Plus(-sin, _e);
        return _arm * d;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Own(
        in Lane3<T> rod, in Lane3<T> path, T perAlong, in Lane3<T> p, in Lane3<T> v, in Lane3<T> a, ref Lane3<T> platform)
    {
        T speed = rod.Dot(v) * perAlong, speed2 = speed * speed;
        var slip = v.Plus(-speed, path);
        var bend = rod.Plus(T.All(-1), p + _shift);
        T acceleration = T.Fma(-speed2, rod.Dot(bend), rod.Dot(a) + slip.Dot(slip)) * perAlong;
        platform = platform.Plus(_coupling * acceleration, path).Plus(_coupling * speed2, bend);
        return T.Fma(_inertia, acceleration, T.Fma(_coupling, a.Dot(path), ChainFriction.Of(speed, _viscous, _coulomb) - path.Dot(_weight)));
    }
}

/// <summary>Friction of a chain's drive, as <see cref="ChainBodies.FrictionAt"/>.</summary>
internal static class ChainFriction
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Of<T>(T speed, T viscous, T coulomb) where T : struct, ILanes<T> =>
        T.Fma(viscous, speed, T.WhereLess(T.All(0), T.Abs(speed), T.CopySign(coulomb, speed), T.All(0)));
}

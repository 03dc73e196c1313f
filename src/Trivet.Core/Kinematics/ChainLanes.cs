using System.Runtime.CompilerServices;
using Trivet.Numerics.Lanes;

namespace Trivet.Kinematics;

/// <summary>One chain's inverse solution, working mode, for several platform positions at once. The chain's row of ∂q/∂p is the rod
/// over <c>along</c> = rod·C′.</summary>
internal interface IChainLanes<T, TSelf> where T : struct, ILanes<T> where TSelf : struct, IChainLanes<T, TSelf>
{
    static abstract TSelf Of(in Chain chain);

    void Solve(T x, T y, T z, out T q, out T rodX, out T rodY, out T rodZ, out T along);
}

/// <summary><see cref="Chain.Inverse"/> of a rail: w = p + B − Foot, g = w·E − √(L² − |w|² + (w·E)²), along = √….</summary>
internal readonly struct RailLanes<T> : IChainLanes<T, RailLanes<T>> where T : struct, ILanes<T>
{
    private readonly T _x, _y, _z, _ex, _ey, _ez, _rod2, _offset;

    private RailLanes(in Chain c)
    {
        var shift = c.B - c.Foot;
        (_x, _y, _z) = (T.All(shift.X), T.All(shift.Y), T.All(shift.Z));
        (_ex, _ey, _ez) = (T.All(c.E.X), T.All(c.E.Y), T.All(c.E.Z));
        (_rod2, _offset) = (T.All(c.Rod * c.Rod), T.All(c.HomeOffset));
    }

    public static RailLanes<T> Of(in Chain chain) => new(chain);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Solve(T x, T y, T z, out T q, out T rodX, out T rodY, out T rodZ, out T along)
    {
        T wx = x + _x, wy = y + _y, wz = z + _z;
        T rail = T.Fma(wx, _ex, T.Fma(wy, _ey, wz * _ez));
        along = T.Sqrt(T.Fma(rail, rail, _rod2 - T.Fma(wx, wx, T.Fma(wy, wy, wz * wz))));
        T back = along - rail;
        q = -(back + _offset);
        (rodX, rodY, rodZ) = (T.Fma(back, _ex, wx), T.Fma(back, _ey, wy), T.Fma(back, _ez, wz));
    }
}

/// <summary>
/// <see cref="Chain.Inverse"/> of a crank without its arccos: with e = w·E, f = w·F, h² = e² + f², k = (|w|² + Arm² − L²)/(2·Arm) and
/// d = √(h² − k²), cos g = (e·k + f·d)/h², sin g = (f·k − e·d)/h², and rod·C′ = Arm·d.
/// </summary>
internal readonly struct CrankLanes<T> : IChainLanes<T, CrankLanes<T>> where T : struct, ILanes<T>
{
    private readonly T _x, _y, _z, _ex, _ey, _ez, _fx, _fy, _fz, _arm, _square, _half, _offset;

    private CrankLanes(in Chain c)
    {
        var shift = c.B - c.Foot;
        (_x, _y, _z) = (T.All(shift.X), T.All(shift.Y), T.All(shift.Z));
        (_ex, _ey, _ez) = (T.All(c.E.X), T.All(c.E.Y), T.All(c.E.Z));
        (_fx, _fy, _fz) = (T.All(c.F.X), T.All(c.F.Y), T.All(c.F.Z));
        (_arm, _square, _half, _offset) = (T.All(c.Arm), T.All(c.Arm * c.Arm - c.Rod * c.Rod), T.All(1 / (2 * c.Arm)), T.All(c.HomeOffset));
    }

    public static CrankLanes<T> Of(in Chain chain) => new(chain);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Solve(T x, T y, T z, out T q, out T rodX, out T rodY, out T rodZ, out T along)
    {
        T wx = x + _x, wy = y + _y, wz = z + _z;
        T e = T.Fma(wx, _ex, T.Fma(wy, _ey, wz * _ez)), f = T.Fma(wx, _fx, T.Fma(wy, _fy, wz * _fz));
        T h2 = T.Fma(e, e, f * f), k = T.Fma(wx, wx, T.Fma(wy, wy, T.Fma(wz, wz, _square))) * _half;
        T d = T.Sqrt(T.Fma(-k, k, h2));
        T cos = T.Fma(e, k, f * d) / h2, sin = T.Fma(f, k, -(e * d)) / h2;
        q = LaneMath.Angle(cos, sin) - _offset;
        T back = -_arm, backE = back * cos, backF = back * sin;
        along = _arm * d;
        rodX = T.Fma(backF, _fx, T.Fma(backE, _ex, wx));
        rodY = T.Fma(backF, _fy, T.Fma(backE, _ey, wy));
        rodZ = T.Fma(backF, _fz, T.Fma(backE, _ez, wz));
    }
}

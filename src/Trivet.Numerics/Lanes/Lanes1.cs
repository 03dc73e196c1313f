using System.Runtime.CompilerServices;

namespace Trivet.Numerics.Lanes;

/// <summary>One double: what a span leaves over, and the way for processors without wide registers.</summary>
public struct Lanes1 : ILanes<Lanes1>
{
    // Set by initialiser, not by a constructor: a call less for the compiler to inline in each operation.
    private double _v;

    public static int Count => 1;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 All(double value) => new() { _v = value };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 Load(ReadOnlySpan<double> from, int at) => new() { _v = from[at] };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Store(Span<double> to, int at) => to[at] = _v;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 operator +(Lanes1 a, Lanes1 b) => new() { _v = a._v + b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 operator -(Lanes1 a, Lanes1 b) => new() { _v = a._v - b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 operator -(Lanes1 a) => new() { _v = -a._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 operator *(Lanes1 a, Lanes1 b) => new() { _v = a._v * b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 operator /(Lanes1 a, Lanes1 b) => new() { _v = a._v / b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 Fma(Lanes1 a, Lanes1 b, Lanes1 c) => new() { _v = a._v * b._v + c._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 Sqrt(Lanes1 a) => new() { _v = Math.Sqrt(a._v) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 Abs(Lanes1 a) => new() { _v = Math.Abs(a._v) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 WhereLess(Lanes1 a, Lanes1 b, Lanes1 then, Lanes1 otherwise) => new() { _v = a._v < b._v ? then._v : otherwise._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes1 CopySign(Lanes1 magnitude, Lanes1 sign) => new() { _v = Math.CopySign(magnitude._v, sign._v) };
}

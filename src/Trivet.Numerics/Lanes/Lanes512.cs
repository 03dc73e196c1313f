using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Trivet.Numerics.Lanes;

/// <summary>Eight doubles in a 512-bit register.</summary>
public struct Lanes512 : ILanes<Lanes512>
{
    // Set by initialiser, not by a constructor: a call less for the compiler to inline in each operation.
    private Vector512<double> _v;

    public static int Count => 8;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 All(double value) => new() { _v = Vector512.Create(value) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Load(ReadOnlySpan<double> from, int at) => new() { _v = Vector512.Create(from.Slice(at, 8)) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Store(Span<double> to, int at) => _v.CopyTo(to.Slice(at, 8));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 operator +(Lanes512 a, Lanes512 b) => new() { _v = a._v + b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 operator -(Lanes512 a, Lanes512 b) => new() { _v = a._v - b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 operator -(Lanes512 a) => new() { _v = -a._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 operator *(Lanes512 a, Lanes512 b) => new() { _v = a._v * b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 operator /(Lanes512 a, Lanes512 b) => new() { _v = a._v / b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Fma(Lanes512 a, Lanes512 b, Lanes512 c) => new() { _v = Vector512.FusedMultiplyAdd(a._v, b._v, c._v) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Sqrt(Lanes512 a) => new() { _v = Vector512.Sqrt(a._v) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Abs(Lanes512 a) => new() { _v = Vector512.Abs(a._v) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 WhereLess(Lanes512 a, Lanes512 b, Lanes512 then, Lanes512 otherwise) => new() { _v = Vector512.ConditionalSelect(Vector512.LessThan(a._v, b._v), then._v, otherwise._v) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 CopySign(Lanes512 magnitude, Lanes512 sign) => new() { _v = Vector512.CopySign(magnitude._v, sign._v) };
}

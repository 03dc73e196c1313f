using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Trivet.Numerics.Lanes;

/// <summary>Four doubles in a 256-bit register.</summary>
public struct Lanes256 : ILanes<Lanes256>
{
    // Set by initialiser, not by a constructor: a call less for the compiler to inline in each operation.
    private Vector256<double> _v;

    public static int Count => 4;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 All(double value) => new() { _v = Vector256.Create(value) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Load(ReadOnlySpan<double> from, int at) => new() { _v = Vector256.Create(from.Slice(at, 4)) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Store(Span<double> to, int at) => _v.CopyTo(to.Slice(at, 4));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 operator +(Lanes256 a, Lanes256 b) => new() { _v = a._v + b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 operator -(Lanes256 a, Lanes256 b) => new() { _v = a._v - b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 operator -(Lanes256 a) => new() { _v = -a._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 operator *(Lanes256 a, Lanes256 b) => new() { _v = a._v * b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 operator /(Lanes256 a, Lanes256 b) => new() { _v = a._v / b._v };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Fma(Lanes256 a, Lanes256 b, Lanes256 c) => new() { _v = Vector256.FusedMultiplyAdd(a._v, b._v, c._v) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Sqrt(Lanes256 a) => new() { _v = Vector256.Sqrt(a._v) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Abs(Lanes256 a) => new() { _v = Vector256.Abs(a._v) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 WhereLess(Lanes256 a, Lanes256 b, Lanes256 then, Lanes256 otherwise) => new() { _v = Vector256.ConditionalSelect(Vector256.LessThan(a._v, b._v), then._v, otherwise._v) };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 CopySign(Lanes256 magnitude, Lanes256 sign) => new() { _v = Vector256.CopySign(magnitude._v, sign._v) };
}

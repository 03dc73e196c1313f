using System.Collections.Immutable;

namespace Trivet.Numerics.Sparse;

/// <summary>
/// A small dense symmetric matrix over some of the unknowns of a large one, which is the sum of its patches. An unknown may stand in it more than
/// once; −1 is one that is held at zero.
/// </summary>
/// <param name="Unknowns">Index of the unknown of each row.</param>
/// <param name="Values">Row by row; as many rows as unknowns.</param>
public sealed record Patch(ImmutableArray<int> Unknowns, double[] Values)
{
    public int Size => Unknowns.Length;

    /// <summary>y += M·x over the unknowns that are not held.</summary>
    public void AddProduct(ReadOnlySpan<double> x, Span<double> y)
    {
        int m = Size;
        Span<double> own = stackalloc double[m];
        for (int i = 0; i < m; i++) own[i] = Unknowns[i] < 0 ? 0 : x[Unknowns[i]];
        for (int i = 0; i < m; i++)
            if (Unknowns[i] >= 0) y[Unknowns[i]] += Dense.Dot(Values.AsSpan(i * m, m), own);
    }

    /// <summary>One row times x: for the row of a held unknown, the force that holds it.</summary>
    public double RowProduct(int row, ReadOnlySpan<double> x)
    {
        double sum = 0;
        for (int j = 0; j < Size; j++)
            if (Unknowns[j] >= 0) sum += Values[row * Size + j] * x[Unknowns[j]];
        return sum;
    }
}

/// <summary>Sums over vectors, several entries at a time.</summary>
internal static class Dense
{
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        int wide = System.Numerics.Vector<double>.Count, i = 0;
        var sum = System.Numerics.Vector<double>.Zero;
        for (; i <= a.Length - wide; i += wide) sum += new System.Numerics.Vector<double>(a[i..]) * new System.Numerics.Vector<double>(b[i..]);
        double total = System.Numerics.Vector.Sum(sum);
        for (; i < a.Length; i++) total += a[i] * b[i];
        return total;
    }

    /// <summary>y += s·x.</summary>
    public static void AddScaled(double s, ReadOnlySpan<double> x, Span<double> y)
    {
        int wide = System.Numerics.Vector<double>.Count, i = 0;
        for (; i <= x.Length - wide; i += wide)
            (new System.Numerics.Vector<double>(y[i..]) + s * new System.Numerics.Vector<double>(x[i..])).CopyTo(y[i..]);
        for (; i < x.Length; i++) y[i] += s * x[i];
    }
}

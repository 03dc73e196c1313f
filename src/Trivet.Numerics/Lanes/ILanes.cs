using System.Numerics;

namespace Trivet.Numerics.Lanes;

/// <summary>
/// Several doubles computed side by side, so that a formula is written once for every vector width. Each width stands in its own
/// file; a generic method over one of them is compiled to that width's instructions alone. Comparisons with not a number are false.
/// </summary>
public interface ILanes<T> :
    IAdditionOperators<T, T, T>, ISubtractionOperators<T, T, T>, IMultiplyOperators<T, T, T>, IDivisionOperators<T, T, T>, IUnaryNegationOperators<T, T>
    where T : struct, ILanes<T>
{
    /// <summary>How many doubles stand side by side.</summary>
    static abstract int Count { get; }

    /// <summary>The same value in every lane.</summary>
    static abstract T All(double value);

    /// <summary>The <see cref="Count"/> values from an index on.</summary>
    static abstract T Load(ReadOnlySpan<double> from, int at);

    void Store(Span<double> to, int at);

    /// <summary>a·b + c, rounded once where the processor can.</summary>
    static abstract T Fma(T a, T b, T c);

    static abstract T Sqrt(T a);
    static abstract T Abs(T a);

    /// <summary>Lane by lane: <paramref name="then"/> where a is less than b, else <paramref name="otherwise"/>.</summary>
    static abstract T WhereLess(T a, T b, T then, T otherwise);

    /// <summary>Magnitude of the first with the sign of the second.</summary>
    static abstract T CopySign(T magnitude, T sign);
}

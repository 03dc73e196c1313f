namespace Trivet.Numerics;

/// <summary>Rates of change of a state that does not depend on time otherwise. False where they are not defined.</summary>
public delegate bool RatesOf(ReadOnlySpan<double> y, Span<double> rates);

/// <summary>
/// One step of the Runge–Kutta pair of order 5 with an embedded one of order 4 ([Dormand1980], coefficients from memory, checked in the
/// tests by the order they give). The fifth order is kept; the difference of both estimates the error.
/// </summary>
public static class DormandPrince
{
    private static readonly double[][] A =
    [
        [1.0 / 5],
        [3.0 / 40, 9.0 / 40],
        [44.0 / 45, -56.0 / 15, 32.0 / 9],
        [19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729],
        [9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656],
        [35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84],
    ];

    /// <summary>Fifth order less fourth.</summary>
    private static readonly double[] Difference =
        [71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40];

    private const int Stages = 7;

    /// <summary>A step of length h from y. False where the rates are not defined on the way; the results then mean nothing.</summary>
    /// <param name="next">Filled with the state at the end.</param>
    /// <param name="error">Filled with the estimated error of each component, signed.</param>
    public static bool Step(RatesOf rates, ReadOnlySpan<double> y, double h, Span<double> next, Span<double> error)
    {
        int n = y.Length;
        Span<double> k = stackalloc double[Stages * n];
        if (!rates(y, k[..n])) return false;
        for (int stage = 1; stage < Stages; stage++)
        {
            double[] row = A[stage - 1];
            for (int i = 0; i < n; i++)
            {
                double sum = 0;
                for (int j = 0; j < row.Length; j++) sum += row[j] * k[j * n + i];
                next[i] = y[i] + h * sum;
            }
            // The last stage stands at the end of the step: its row is the fifth order formula.
            if (!rates(next, k.Slice(stage * n, n))) return false;
        }

        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            for (int j = 0; j < Stages; j++) sum += Difference[j] * k[j * n + i];
            error[i] = h * sum;
        }
        return true;
    }
}

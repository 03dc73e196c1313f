namespace Trivet.Numerics;

/// <summary>
/// First and second derivatives of samples, by the cubic spline through them whose third derivative is continuous at the second and the last
/// but one ("not a knot"): exact for cubics. Elementary; [deBoor1978], from memory.
/// </summary>
public static class CubicSpline
{
    /// <param name="x">Strictly rising, two or more. Two give a line, three a parabola.</param>
    public static void Derivatives(ReadOnlySpan<double> x, ReadOnlySpan<double> y, Span<double> first, Span<double> second)
    {
        int n = x.Length;
        if (n < 2 || y.Length != n || first.Length != n || second.Length != n)
            throw new ArgumentException($"Two samples at least, and as many of each ({n}, {y.Length}, {first.Length}, {second.Length}).", nameof(x));
        double Step(ReadOnlySpan<double> s, int i) => s[i + 1] - s[i];
        second.Clear();
        if (n == 3) second.Fill(2 * ((y[2] - y[1]) / Step(x, 1) - (y[1] - y[0]) / Step(x, 0)) / (x[2] - x[0]));
        else if (n > 3)
        {
            // Tridiagonal in the inner second derivatives; the outer ones are put in by their conditions.
            double[] diagonal = new double[n], above = new double[n];
            for (int i = 1; i < n - 1; i++)
            {
                double left = Step(x, i - 1), right = Step(x, i), below = left;
                diagonal[i] = 2 * (left + right);
                above[i] = right;
                second[i] = 6 * ((y[i + 1] - y[i]) / right - (y[i] - y[i - 1]) / left);
                if (i == 1)
                {
                    diagonal[i] += left + left * left / right;
                    above[i] -= left * left / right;
                    continue;
                }

                if (i == n - 2)
                {
                    diagonal[i] += right + right * right / left;
                    below -= right * right / left;
                }

                double factor = below / diagonal[i - 1];
                diagonal[i] -= factor * above[i - 1];
                second[i] -= factor * second[i - 1];
            }

            second[n - 2] /= diagonal[n - 2];
            for (int i = n - 3; i >= 1; i--) second[i] = (second[i] - above[i] * second[i + 1]) / diagonal[i];
            second[0] = second[1] - Step(x, 0) / Step(x, 1) * (second[2] - second[1]);
            second[n - 1] = second[n - 2] + Step(x, n - 2) / Step(x, n - 3) * (second[n - 2] - second[n - 3]);
        }

        for (int i = 0; i < n - 1; i++) first[i] = (y[i + 1] - y[i]) / Step(x, i) - Step(x, i) * (2 * second[i] + second[i + 1]) / 6;
        first[n - 1] = (y[n - 1] - y[n - 2]) / Step(x, n - 2) + Step(x, n - 2) * (second[n - 2] + 2 * second[n - 1]) / 6;
    }
}

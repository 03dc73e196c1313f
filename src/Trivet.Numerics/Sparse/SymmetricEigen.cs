namespace Trivet.Numerics.Sparse;

/// <summary>
/// All eigenvalues and vectors of a small dense symmetric matrix: Householder's reflections make it tridiagonal, then QR steps with Wilkinson's
/// shift make it diagonal ([GolubVanLoan2013, 8.3], from memory).
/// </summary>
public static class SymmetricEigen
{
    /// <param name="matrix">n·n, row by row; only its lower half is read.</param>
    /// <returns>Values falling; vector k is row k of Vectors.</returns>
    public static (double[] Values, double[] Vectors) Of(ReadOnlySpan<double> matrix, int n)
    {
        var a = new double[n * n];
        for (int i = 0; i < n; i++)
            for (int j = 0; j <= i; j++) a[i * n + j] = a[j * n + i] = matrix[i * n + j];
        // Rows of q are the basis in which the matrix stands as it is now.
        var q = new double[n * n];
        for (int i = 0; i < n; i++) q[i * n + i] = 1;
        Tridiagonalise(a, q, n);
        double[] diagonal = new double[n], beside = new double[n];
        for (int i = 0; i < n; i++)
        {
            diagonal[i] = a[i * n + i];
            if (i + 1 < n) beside[i] = a[(i + 1) * n + i];
        }

        Diagonalise(diagonal, beside, q, n);
        int[] order = [.. Enumerable.Range(0, n).OrderByDescending(i => diagonal[i])];
        var vectors = new double[n * n];
        for (int k = 0; k < n; k++) q.AsSpan(order[k] * n, n).CopyTo(vectors.AsSpan(k * n));
        return ([.. order.Select(i => diagonal[i])], vectors);
    }

    private static void Tridiagonalise(double[] a, double[] q, int n)
    {
        double[] v = new double[n], p = new double[n];
        for (int k = 0; k < n - 2; k++)
        {
            double norm = 0;
            for (int i = k + 1; i < n; i++) norm += a[i * n + k] * a[i * n + k];
            norm = Math.Sqrt(norm);
            if (norm == 0) continue;
            double alpha = a[(k + 1) * n + k] > 0 ? -norm : norm;
            Array.Clear(v);
            for (int i = k + 1; i < n; i++) v[i] = a[i * n + k];
            v[k + 1] -= alpha;
            double square = Dense.Dot(v, v);
            if (square == 0) continue;

            // A − v·wᵀ − w·vᵀ with w = p − (vᵀp/vᵀv)·v, p = 2·A·v/vᵀv.
            for (int i = k; i < n; i++) p[i] = 2 / square * Dense.Dot(a.AsSpan(i * n + k, n - k), v.AsSpan(k));
            double share = Dense.Dot(p.AsSpan(k), v.AsSpan(k)) / square;
            for (int i = k; i < n; i++) p[i] -= share * v[i];
            for (int i = k; i < n; i++)
                for (int j = k; j < n; j++) a[i * n + j] -= v[i] * p[j] + p[i] * v[j];
            Reflect(q, v, square, k + 1, n);
        }
    }

    /// <summary>Rows k and on become H times themselves.</summary>
    private static void Reflect(double[] q, double[] v, double square, int k, int n)
    {
        var sum = new double[n];
        for (int i = k; i < n; i++) Dense.AddScaled(2 * v[i] / square, q.AsSpan(i * n, n), sum);
        for (int i = k; i < n; i++) Dense.AddScaled(-v[i], sum, q.AsSpan(i * n, n));
    }

    private static void Diagonalise(double[] d, double[] e, double[] q, int n)
    {
        int end = n - 1;
        for (int steps = 0; end > 0 && steps < 60 * n; steps++)
        {
            if (Small(end - 1))
            {
                e[end - 1] = 0;
                end--;
                continue;
            }

            int begin = end - 1;
            while (begin > 0 && !Small(begin - 1)) begin--;
            double half = (d[end - 1] - d[end]) / 2, beside = e[end - 1];
            double shift = d[end] - beside * beside / (half + (half >= 0 ? 1 : -1) * Math.Sqrt(half * half + beside * beside));
            double x = d[begin] - shift, z = e[begin];
            for (int k = begin; k < end; k++)
            {
                double r = Math.Sqrt(x * x + z * z), c = r == 0 ? 1 : x / r, s = r == 0 ? 0 : z / r;
                if (k > begin) e[k - 1] = r;
                double dk = d[k], dn = d[k + 1], ek = e[k];
                d[k] = c * c * dk + 2 * c * s * ek + s * s * dn;
                d[k + 1] = s * s * dk - 2 * c * s * ek + c * c * dn;
                e[k] = c * s * (dn - dk) + (c * c - s * s) * ek;
                if (k < end - 1)
                {
                    x = e[k];
                    z = s * e[k + 1];
                    e[k + 1] *= c;
                }

                Turn(q.AsSpan(k * n, n), q.AsSpan((k + 1) * n, n), c, s);
            }
        }

        bool Small(int i) => Math.Abs(e[i]) <= 1e-16 * (Math.Abs(d[i]) + Math.Abs(d[i + 1]));
    }

    private static void Turn(Span<double> a, Span<double> b, double c, double s)
    {
        int wide = System.Numerics.Vector<double>.Count, i = 0;
        for (; i <= a.Length - wide; i += wide)
        {
            var x = new System.Numerics.Vector<double>(a[i..]);
            var y = new System.Numerics.Vector<double>(b[i..]);
            (c * x + s * y).CopyTo(a[i..]);
            (c * y - s * x).CopyTo(b[i..]);
        }

        for (; i < a.Length; i++) (a[i], b[i]) = (c * a[i] + s * b[i], c * b[i] - s * a[i]);
    }
}

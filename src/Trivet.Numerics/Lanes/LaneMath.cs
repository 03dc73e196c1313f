using System.Runtime.CompilerServices;

namespace Trivet.Numerics.Lanes;

/// <summary>
/// Functions of lanes, as polynomials: the library's scalar functions do not vectorise. Coefficients are Chebyshev interpolants
/// computed for this project with 70 decimal digits and rounded to double; the truncation error stated is relative.
/// </summary>
public static class LaneMath
{
    private const double SinEighth = 0.38268343236508978;   // sin(π/8)
    private const double SinQuarter = 0.70710678118654752;  // sin(π/4)

    /// <summary>
    /// Angle of the unit vector (cos, sin), −π to π, radians. Within 4e-16 + 2·|length − 1| of the exact angle; not a number for not a
    /// number. The vector must be of unit length: that is what saves a division.
    /// <para>
    /// Folded into the first octant, then turned back by π/4 if it lies beyond π/8, so |sin| ≤ sin(π/8) is left for
    /// arcsin x = x·P(x²), degree 10 in x², truncation 6e-18.
    /// </para>
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Angle<T>(T cos, T sin) where T : struct, ILanes<T>
    {
        T c = T.Abs(cos), s = T.Abs(sin);
        T low = T.WhereLess(s, c, s, c), high = T.WhereLess(s, c, c, s);
        T limit = T.All(SinEighth);
        T x = T.WhereLess(limit, low, (low - high) * T.All(SinQuarter), low);
        T from = T.WhereLess(limit, low, T.All(Math.PI / 4), T.All(0));

        T y = x * x, y2 = y * y, y4 = y2 * y2;
        T low4 = T.Fma(y2, Line(y, 0.030381957126451947, 0.044642856908859295), Line(y, 0.07500000000220788, 0.16666666666665855));
        T high4 = T.Fma(y2, Line(y, 0.012318435689868077, 0.013867689439773956), Line(y, 0.0173605689978962, 0.022371759605907794));
        T p = T.Fma(y4, T.Fma(y4, Line(y, 0.017621406719819568, 0.00610258324106671), high4), low4);
        T angle = from + T.Fma(x * y, p, x);

        angle = T.WhereLess(s, c, angle, T.All(Math.PI / 2) - angle);
        angle = T.WhereLess(cos, T.All(0), T.All(Math.PI) - angle, angle);
        return T.CopySign(angle, sin);
    }

    /// <summary>
    /// Condition number (2-norm) of the 3×3 matrix with these rows; infinite or not a number for a singular one. As
    /// <see cref="Spectrum"/>, but free of trigonometric functions: with θ folded to at most π/2 and u = cos(θ/2), cos(θ/3) and
    /// sin(θ/3)/sin(θ/2) are polynomials in u on [√½, 1] (degree 10, truncation 9e-18; degree 11, 4e-18). From σ₁²σ₂/|det| = σ₁/σ₃.
    /// Relative error: some ε, growing with the loss of digits in the middle singular value as in <see cref="Spectrum"/>.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T ConditionNumber<T>(T ax, T ay, T az, T bx, T by, T bz, T cx, T cy, T cz) where T : struct, ILanes<T>
    {
        T det = T.Fma(ax, T.Fma(by, cz, -(bz * cy)), T.Fma(ay, T.Fma(bz, cx, -(bx * cz)), az * T.Fma(bx, cy, -(by * cx))));

        T xx = T.Fma(ax, ax, T.Fma(bx, bx, cx * cx)), yy = T.Fma(ay, ay, T.Fma(by, by, cy * cy)), zz = T.Fma(az, az, T.Fma(bz, bz, cz * cz));
        T xy = T.Fma(ax, ay, T.Fma(bx, by, cx * cy)), xz = T.Fma(ax, az, T.Fma(bx, bz, cx * cz)), yz = T.Fma(ay, az, T.Fma(by, bz, cy * cz));

        // D = A − mean·I; D², its trace and tr D³.
        T mean = (xx + yy + zz) * T.All(1.0 / 3);
        T a = xx - mean, b = yy - mean, c = zz - mean;
        T xy2 = xy * xy, xz2 = xz * xz, yz2 = yz * yz;
        T saa = T.Fma(a, a, xy2 + xz2), sbb = T.Fma(b, b, xy2 + yz2), scc = T.Fma(c, c, xz2 + yz2);
        T sab = T.Fma(xz, yz, -(xy * c)), sac = T.Fma(xy, yz, -(xz * b)), sbc = T.Fma(xy, xz, -(yz * a));
        T trace2 = saa + sbb + scc;
        T trace3 = T.Fma(saa, a, T.Fma(sbb, b, T.Fma(scc, c, T.All(2) * T.Fma(sab, xy, T.Fma(sac, xz, sbc * yz)))));

        // The addend keeps 0/0 away where all singular values are equal; it is far below rounding elsewhere.
        T k2 = T.Fma(trace2, T.All(1.0 / 6), T.All(1e-200));
        T k = T.Sqrt(k2), inverseK2 = T.All(1) / k2;
        T along = trace3 * inverseK2 * T.All(1.0 / 6), third = trace2 * T.All(1.0 / 3);
        T naa = T.Fma(-along, a, saa - third), nbb = T.Fma(-along, b, sbb - third), ncc = T.Fma(-along, c, scc - third);
        T nab = T.Fma(-along, xy, sab), nac = T.Fma(-along, xz, sac), nbc = T.Fma(-along, yz, sbc);
        T n = T.Sqrt(T.Fma(naa, naa, T.Fma(nbb, nbb, T.Fma(ncc, ncc, T.All(2) * T.Fma(nab, nab, T.Fma(nac, nac, nbc * nbc))))));

        // u = cos(θ/2); sin(θ/2) = sin θ/(2u), sin θ = n/(√6·K²).
        T u = T.Sqrt(T.Fma(T.Abs(along) * k * inverseK2, T.All(0.5), T.All(0.5)));
        T w = u - T.All(0.85355339059327376);
        T w2 = w * w, w4 = w2 * w2, w8 = w4 * w4;
        T f = T.Fma(w8, T.Fma(w2, T.All(-2.2237071623426347e-05), Line(w, 4.858287082758966e-05, -0.00010701169414393476)), T.Fma(w4,
            T.Fma(w2, Line(w, 0.0002450484471572187, -0.0005811055777617388), Line(w, 0.0014469309187552515, -0.0038769842958356697)),
            T.Fma(w2, Line(w, 0.011748302616828996, -0.04585662671999842), Line(w, 0.4571652542015659, 0.9339979600555399))));
        T sinThird = T.Fma(w8, T.Fma(w2, Line(w, -8.81239045189742e-05, 0.00017135664904491238), Line(w, -0.0003292255983884983, 0.0006476008720918751)), T.Fma(w4,
            T.Fma(w2, Line(w, -0.0012842146135370095, 0.002573146590265929), Line(w, -0.005229949677260716, 0.010851980966645516)),
            T.Fma(w2, Line(w, -0.02326190577634767, 0.05286736177785324), Line(w, -0.13756988015999455, 0.6857478813023481))));
        T g = sinThird * (n * inverseK2 * T.All(Sqrt3OverTwoSqrt6) / u);
        T plus = f + g, minus = g - f, zero = T.All(0);
        T largest = T.Fma(k, T.WhereLess(along, zero, plus, f + f), mean);
        T middle = T.Fma(k, T.WhereLess(along, zero, -minus, minus), mean);
        return largest * T.Sqrt(middle) / T.Abs(det);
    }

    private const double Sqrt3OverTwoSqrt6 = 0.35355339059327376; // √3/(2√6)

    /// <summary>slope·x + start.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Line<T>(T x, double slope, double start) where T : struct, ILanes<T> => T.Fma(x, T.All(slope), T.All(start));
}

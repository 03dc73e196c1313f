using Trivet.Fasteners;

namespace Trivet.Adapters;

/// <summary>
/// How stiff a plate is between its two circles of holes: a thin disc, simply supported at the larger circle, loaded along the smaller. Holes,
/// outline beyond the circles and the parts' own stiffness are left out, so it is an estimate; for short spans shear adds to it.
/// <para>
/// Along the axis: [Roark2002], table 11.2, line load on a solid disc with simple support. Tilting: the load grows with the cosine round the
/// circle; deflections f(r)·cos θ with f = A·r + B·r³ inside and + C/r + D·r·ln r outside solve ∇⁴w = 0, and the six constants follow from
/// continuity of deflection, slope and moment at the load, the jump of shear there, and no deflection and no moment at the support.
/// </para>
/// </summary>
public static class PlateStiffness
{
    // Circles nearer than this share of the radius load the plate straight through; bending is then not what gives.
    private const double SameCircle = 0.02;

    /// <returns>N/m and N·m/rad; infinite where the circles are the same.</returns>
    public static (double Axial, double Tilt) Between(Stuff stuff, double thickness, double radiusOne, double radiusTwo)
    {
        double a = Math.Max(radiusOne, radiusTwo), b = Math.Min(radiusOne, radiusTwo), nu = stuff.PoissonRatio;
        if (!(b > 0) || a - b < SameCircle * a) return (double.PositiveInfinity, double.PositiveInfinity);
        double d = stuff.Modulus * thickness * thickness * thickness / (12 * (1 - nu * nu)), s = b / a;
        double l3 = s / 4 * ((s * s + 1) * Math.Log(1 / s) + s * s - 1), l9 = s * ((1 + nu) / 2 * Math.Log(1 / s) + (1 - nu) / 4 * (1 - s * s));
        // For a line load of one newton per metre.
        double centre = a * a * a / (2 * d) * (l9 / (1 + nu) - 2 * l3), atLoad = centre - a * l9 * b * b / (2 * d * (1 + nu));
        return (2 * Math.PI * b / atLoad, Tilt(d, nu, a, b));
    }

    private static double Tilt(double d, double nu, double a, double b)
    {
        // In lengths of a. Unknowns: A, B inside; A, B, C, D outside.
        double s = b / a;
        double[,] m = new double[6, 7];
        Row(0, s, F, 1, 0);
        Row(1, s, Slope, 1, 0);
        Row(2, s, (i, r) => Moment(i, r, nu), 1, 0);
        // Load downward q·cos θ of one, in units where D = 1 and a = 1: the shear rises by it.
        Row(3, s, Shear, 1, 1);
        for (int i = 0; i < 4; i++)
        {
            m[4, 2 + i] = F(i, 1);
            m[5, 2 + i] = Moment(i, 1, nu);
        }
        double[] x = Solved(m);
        double tilt = Math.Abs((x[0] * s + x[1] * s * s * s) / s);
        // Moment of q·cos θ along the circle: π·q·s²; back to metres and newtons by D.
        return Math.PI * s * s / tilt * d;

        void Row(int row, double r, Func<int, double, double> of, double sign, double right)
        {
            for (int i = 0; i < 2; i++) m[row, i] = -of(i, r);
            for (int i = 0; i < 4; i++) m[row, 2 + i] = sign * of(i, r);
            m[row, 6] = right;
        }
    }

    // The four solutions r, r³, 1/r, r·ln r, each times cos θ.
    private static double F(int i, double r) => i switch { 0 => r, 1 => r * r * r, 2 => 1 / r, _ => r * Math.Log(r) };

    private static double Slope(int i, double r) => i switch { 0 => 1, 1 => 3 * r * r, 2 => -1 / (r * r), _ => Math.Log(r) + 1 };

    private static double Curvature(int i, double r) => i switch { 0 => 0, 1 => 6 * r, 2 => 2 / (r * r * r), _ => 1 / r };

    /// <summary>Radial moment over −D: f″ + ν (f′/r − f/r²).</summary>
    private static double Moment(int i, double r, double nu) => Curvature(i, r) + nu * (Slope(i, r) / r - F(i, r) / (r * r));

    /// <summary>Radial shear over −D: d/dr of ∇²w, where ∇²(r³) = 8r, ∇²(r ln r) = 2/r and the other two have none.</summary>
    private static double Shear(int i, double r) => i switch { 1 => 8, 3 => -2 / (r * r), _ => 0 };

    private static double[] Solved(double[,] m)
    {
        int n = m.GetLength(0);
        for (int k = 0; k < n; k++)
        {
            int pivot = k;
            for (int i = k + 1; i < n; i++)
                if (Math.Abs(m[i, k]) > Math.Abs(m[pivot, k])) pivot = i;
            for (int j = 0; j <= n; j++) (m[k, j], m[pivot, j]) = (m[pivot, j], m[k, j]);
            for (int i = 0; i < n; i++)
            {
                if (i == k) continue;
                double factor = m[i, k] / m[k, k];
                for (int j = k; j <= n; j++) m[i, j] -= factor * m[k, j];
            }
        }
        var x = new double[n];
        for (int i = 0; i < n; i++) x[i] = m[i, n] / m[i, i];
        return x;
    }
}

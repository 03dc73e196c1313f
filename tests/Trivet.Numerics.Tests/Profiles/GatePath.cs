using Trivet.Numerics.Profiles;

namespace Trivet.Numerics.Tests.Profiles;

/// <summary>
/// The gate path of tests/reference/path-timing.json, with the rail delta's kinematics and forces written down anew from that file's own words.
/// Rail coordinates count upward there.
/// </summary>
internal sealed class GatePath
{
    private const double R = 0.3, PlatformR = 0.05, L = 0.5, Up = 0.025, Across = 0.305, Down = 0.025, Blend = 0.020;
    private const double Platform = 1.0, Carriage = 0.8, G = 9.80665, VMax = 2.0, AMax = 40.0, FMax = 60.0;
    private static readonly Vec3 Start = new(-0.1525, 0, -0.6);
    public const double Length = Up + Across + Down;

    public double[] S { get; }
    public double[][] Q { get; } = new double[3][];
    public double[][] Dq { get; } = new double[3][];
    public double[][] Ddq { get; } = new double[3][];
    public double[][] ForceA { get; } = new double[3][];
    public double[][] ForceB { get; } = new double[3][];
    public double[][] ForceC { get; } = new double[3][];

    public GatePath(int steps)
    {
        S = [.. Enumerable.Range(0, steps + 1).Select(i => Length * i / steps)];
        foreach (var all in new[] { Q, Dq, Ddq, ForceA, ForceB, ForceC })
            for (int k = 0; k < 3; k++) all[k] = new double[S.Length];
        for (int i = 0; i < S.Length; i++) Fill(i);
    }

    public PathLimits Limits(bool force, SpeedCurve? curve = null)
    {
        var limits = new PathLimits(S);
        for (int k = 0; k < 3; k++) limits.Velocity(Dq[k], VMax);
        for (int k = 0; k < 3; k++) limits.Band(Dq[k], Ddq[k], -AMax, AMax);
        for (int k = 0; k < 3 && force; k++)
        {
            if (curve is null) limits.Band(ForceA[k], ForceB[k], ForceC[k], -FMax, FMax);
            else limits.Effort(ForceA[k], ForceB[k], ForceC[k], Dq[k], curve);
        }

        return limits;
    }

    private void Fill(int i)
    {
        var (p, dp, ddp) = Path(S[i]);
        Span<Vec3> rows = stackalloc Vec3[3];
        for (int k = 0; k < 3; k++)
        {
            var (sin, cos) = Math.SinCos(k * Math.Tau / 3);
            // (x − (R − r)·cos)² + (y − (R − r)·sin)² + (z − q)² = l², carriage above the platform.
            double x = p.X - (R - PlatformR) * cos, y = p.Y - (R - PlatformR) * sin, h = Math.Sqrt(L * L - x * x - y * y);
            // w points from the platform to the carriage: w·(q̇·z − ṗ) = 0.
            Vec3 w = new(-x, -y, h);
            double dq = w.Dot(dp) / h;
            Vec3 dw = new(-dp.X, -dp.Y, dq - dp.Z);
            (Q[k][i], Dq[k][i]) = (p.Z + h, dq);
            // Once more: w·(q̈·z − p̈) + |ẇ|² = 0.
            Ddq[k][i] = (w.Dot(ddp) - dw.NormSquared) / h;
            rows[k] = w / h;
        }

        // Rail force f = mc·(q̈ + g) + Jᵀ·m·(p̈ + g·z), J = ∂p/∂q, the inverse of the rows ∂q/∂p.
        var inverse = new Mat3(rows[0], rows[1], rows[2]).Inverse();
        for (int k = 0; k < 3; k++)
        {
            Vec3 column = new(inverse.Row0[k], inverse.Row1[k], inverse.Row2[k]);
            ForceA[k][i] = Carriage * Dq[k][i] + Platform * column.Dot(dp);
            ForceB[k][i] = Carriage * Ddq[k][i] + Platform * column.Dot(ddp);
            ForceC[k][i] = Carriage * G + Platform * G * column.Z;
        }
    }

    /// <summary>Place, first and second derivative by s: straight legs, corners blended by d₁ + (d₂ − d₁)·(3u² − 2u³).</summary>
    private static (Vec3 P, Vec3 Dp, Vec3 Ddp) Path(double s)
    {
        Vec3 up = Vec3.UnitZ, across = Vec3.UnitX, down = -up;
        var (p, from) = (Start, 0.0);
        foreach (var (corner, d1, d2) in new[] { (Up, up, across), (Up + Across, across, down) })
        {
            double begin = corner - Blend;
            if (s <= begin) return (p + (s - from) * d1, d1, Vec3.Zero);
            p += (begin - from) * d1;
            double u = Math.Min(1, (s - begin) / (2 * Blend)), w = 3 * u * u - 2 * u * u * u, sum = u * u * u - u * u * u * u / 2;
            p += 2 * Blend * (u * d1 + sum * (d2 - d1));
            if (u < 1) return (p, d1 + w * (d2 - d1), 6 * u * (1 - u) / (2 * Blend) * (d2 - d1));
            from = corner + Blend;
        }

        return (p + (s - from) * down, down, Vec3.Zero);
    }
}

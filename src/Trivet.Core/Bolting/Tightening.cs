using Trivet.Cells;
using Trivet.Fasteners;

namespace Trivet.Bolting;

/// <summary>
/// Preload and torque [VDI-2230-1], section 5.4.3, newtons and newton metres. F = ν·Rp·A₀/√(1 + 3·(1.5·d₂/d₀·(P/(π·d₂) + 1.155·μ))²) uses ν = 0.9 of the
/// yield strength with the thread's twist in it; M = F·(0.16·P + 0.58·μ·d₂ + μ·D/2), D the mean diameter of friction under the head, on a cone of 90°
/// by √2 more.
/// </summary>
public static class Tightening
{
    private const double YieldUse = 0.9;

    /// <summary>Preload that uses nine tenths of the yield strength at a friction.</summary>
    public static double LargestPreload(MetricThread t, PropertyClass c, double friction)
    {
        double twist = 1.5 * t.D2 / t.D0 * (t.P / (Math.PI * t.D2) + 1.155 * friction);
        return YieldUse * c.Yield * t.StressArea / Math.Sqrt(1 + 3 * twist * twist);
    }

    /// <summary>Torque by preload at a friction, metres.</summary>
    /// <param name="bearing">Outer diameter of the surface that the head rubs on.</param>
    public static double Arm(MetricThread t, double bearing, double friction, bool cone = false)
    {
        double mean = (bearing + t.Passage) / 2;
        return 0.16 * t.P + 0.58 * friction * t.D2 + friction * mean / 2 * (cone ? Math.Sqrt(2) : 1);
    }

    /// <summary>The head turns on its own surface, whatever a washer below it spreads.</summary>
    public static double Arm(JointInput input, double friction) => Arm(input.Thread, input.Screw.Bearing, friction, input.Screw.Head == ScrewHead.Countersunk);

    /// <summary>Down to two digits, as a wrench is set.</summary>
    public static double Settable(double torque)
    {
        if (!(torque > 0)) return torque;
        double step = Math.Pow(10, Math.Floor(Math.Log10(torque)) - 1);
        return Math.Floor(torque / step + 1e-9) * step;
    }
}

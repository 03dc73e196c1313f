using Trivet.Numerics;
using Xunit;

namespace Trivet.Numerics.Tests;

/// <summary>An oscillator against the steady response of the handbooks, and against a general-purpose integrator's step by step.</summary>
public class OscillatorTests
{
    [Theory, InlineData(0.3), InlineData(0.97), InlineData(2.5)]
    public void A_load_that_repeats_gives_the_steady_response(double ratio)
    {
        // ẍ + 2ζω·ẋ + ω²·x = sin Ωt: amplitude 1/ω² / √((1 − r²)² + (2ζr)²), r = Ω/ω (any book on vibration; here from memory).
        var oscillator = new Oscillator(Math.Tau * 12, 0.02);
        double drive = ratio * oscillator.Omega, period = Math.Tau / drive;
        const int Steps = 4000;
        double[] times = [.. Enumerable.Range(0, Steps + 1).Select(i => period * i / Steps)], load = [.. times.Select(t => Math.Sin(drive * t))];
        var (q, v) = oscillator.Periodic(times, load);
        double most = 0, q0 = q, v0 = v;
        for (int i = 1; i <= Steps; i++)
        {
            (q, v) = oscillator.After(q, v, load[i - 1], load[i], times[i] - times[i - 1]);
            most = Math.Max(most, Math.Abs(q));
        }

        double expected = 1 / (oscillator.Omega * oscillator.Omega) / Math.Sqrt(Math.Pow(1 - ratio * ratio, 2) + Math.Pow(2 * 0.02 * ratio, 2));
        Assert.Equal(1, most / expected, 1e-5);
        Assert.Equal(q0, q, 1e-12);
        Assert.Equal(v0, v, 1e-9);
    }

    [Fact]
    public void A_step_overshoots_as_its_damping_says()
    {
        // Overshoot of a step: exp(−πζ/√(1 − ζ²)).
        var oscillator = new Oscillator(10, 0.1);
        double half = Math.PI / (10 * Math.Sqrt(1 - 0.01));
        Assert.Equal((1 + Math.Exp(-Math.PI * 0.1 / Math.Sqrt(0.99))) / 100, oscillator.After(0, 0, 1, 1, half).Q, 1e-12);
    }

    [Fact]
    public void Straight_loads_are_followed_exactly_however_long_the_step()
    {
        var oscillator = new Oscillator(37, 0.05);
        var (whole, speed) = oscillator.After(0.01, -0.3, 2, -1, 0.7);
        double q = 0.01, v = -0.3;
        for (int i = 0; i < 700; i++) (q, v) = oscillator.After(q, v, 2 - 3 * i / 700.0, 2 - 3 * (i + 1) / 700.0, 0.001);
        Assert.Equal(whole, q, 1e-12);
        Assert.Equal(speed, v, 1e-10);
        // And an explicit integrator of its own kind: 20 000 steps of the classical fourth-order rule.
        (q, v) = (0.01, -0.3);
        double h = 0.7 / 20000;
        for (int i = 0; i < 20000; i++)
        {
            double t = i * h;
            var (k1, l1) = Rate(t, q, v);
            var (k2, l2) = Rate(t + h / 2, q + h / 2 * k1, v + h / 2 * l1);
            var (k3, l3) = Rate(t + h / 2, q + h / 2 * k2, v + h / 2 * l2);
            var (k4, l4) = Rate(t + h, q + h * k3, v + h * l3);
            (q, v) = (q + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4), v + h / 6 * (l1 + 2 * l2 + 2 * l3 + l4));
        }

        Assert.Equal(whole, q, 1e-10);

        static (double, double) Rate(double t, double q, double v) => (v, 2 - 3 * t / 0.7 - 2 * 0.05 * 37 * v - 37 * 37 * q);
    }
}

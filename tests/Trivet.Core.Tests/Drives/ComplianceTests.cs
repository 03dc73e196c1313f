using Trivet.Drives;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Drives;

public sealed class ComplianceTests
{
    /// <summary>D12 of tests/reference/published-drives.md.</summary>
    [Fact]
    public void A_load_on_a_belt_D12() =>
        Assert.Equal(42.536, new Compliance(double.PositiveInfinity, 2.5e5, 2).Resonance(3.5), 5.1e-4);

    [Fact]
    public void Springs_one_behind_the_other_yield_together()
    {
        var both = new Compliance(3e5, 6e5, 1);
        Assert.Equal(2e5, both.Stiffness, 1e-6);
        Assert.Equal(1e-4, both.Deflection(20), 1e-15);
        Assert.Equal(0, new Compliance(double.PositiveInfinity, double.PositiveInfinity, 1).Deflection(20));
        Assert.Equal(double.PositiveInfinity, new Compliance(double.PositiveInfinity, double.PositiveInfinity, 1).Resonance(2));
    }

    /// <summary>The frequency makes the determinant of K − ω²·M vanish, and lies below that of either spring alone with what hangs behind it.</summary>
    [Fact]
    public void Two_masses_and_two_springs_swing_at_the_lower_root()
    {
        CsCheck.Gen.Select(FixedCases.Between(1e4, 1e6), FixedCases.Between(1e4, 1e6), FixedCases.Between(0.1, 5), FixedCases.Between(0.1, 5)).Holds(100, c =>
        {
            var (lag, belt, rotor, load) = c;
            double f = new Compliance(lag, belt, rotor).Resonance(load), w = Math.Pow(Math.Tau * f, 2);
            Assert.Equal(0, ((lag + belt - w * rotor) * (belt - w * load) - belt * belt) / (lag * belt), 1e-9);
            Assert.True(f < new Compliance(double.PositiveInfinity, belt, rotor).Resonance(load));
            Assert.True(f < new Compliance(lag, double.PositiveInfinity, rotor).Resonance(load));
        });
        // Almost rigid is rigid.
        Assert.Equal(new Compliance(1e5, double.PositiveInfinity, 1).Resonance(2), new Compliance(1e5, 1e14, 1).Resonance(2), 1e-6);
    }

    /// <summary>T·sin(4θ·steps/16…): a 200-step motor turns through its torque's full period in four steps, so its rotor has fifty teeth.</summary>
    [Fact]
    public void A_stepper_lags_by_the_slope_of_its_sine()
    {
        double step = 1e-7;
        double slope = 0.4 * Math.Sin(50 * step) / step;
        Assert.Equal(slope, Compliance.OfStepper(0.4, 200), 1e-6);
    }
}

using CsCheck;
using Trivet.Drives;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Drives;

public sealed class TorqueCurveTests
{
    private static readonly TorqueCurve Curve = new([0, 300, 450], [2.4, 2.4, 0.6], 48);

    [Fact]
    public void The_curve_runs_straight_between_its_points_and_ends_with_the_last()
    {
        Assert.Equal(2.4, Curve.At(0, 48));
        Assert.Equal(2.4, Curve.At(300, 48), 1e-15);
        Assert.Equal(1.5, Curve.At(375, 48), 1e-15);
        Assert.Equal(1.5, Curve.At(-375, 48), 1e-15);
        Assert.Equal(0.6, Curve.At(450, 48), 1e-15);
        Assert.Equal(0, Curve.At(450.01, 48));
        Assert.Equal(450, Curve.LargestSpeed(48));
    }

    /// <summary>Induced voltage and inductive drop grow with speed, so the voltage scales the curve along the speed and leaves standstill alone.</summary>
    [Fact]
    public void Half_the_voltage_gives_the_same_torques_at_half_the_speeds()
    {
        FixedCases.Between(0, 460).Holds(100, speed => Assert.Equal(Curve.At(speed, 48), Curve.At(speed / 2, 24), 1e-12));
        Assert.Equal(2.4, Curve.At(0, 1));
        Assert.Equal(225, Curve.LargestSpeed(24));
        Assert.Equal(0, Curve.At(0, 0));
        Assert.True(double.IsNaN(Curve.At(0, double.NaN)));
        Assert.True(double.IsNaN(Curve.At(double.NaN, 48)));
    }

    [Fact]
    public void More_speed_or_less_voltage_never_gives_more_torque() =>
        Gen.Select(FixedCases.Between(0, 500), FixedCases.Between(0, 500), FixedCases.Between(10, 60), FixedCases.Between(10, 60)).Holds(500, c =>
        {
            var (slow, fast) = (Math.Min(c.Item1, c.Item2), Math.Max(c.Item1, c.Item2));
            var (low, high) = (Math.Min(c.Item3, c.Item4), Math.Max(c.Item3, c.Item4));
            Assert.True(Curve.At(fast, low) <= Curve.At(slow, high) + 1e-12);
        });

    /// <summary>What the motor brings at the drive coordinate is its torque times the gearing times the efficiency; the reserve is kept of both.</summary>
    [Fact]
    public void The_envelope_is_the_curve_at_the_drive_coordinate_with_its_reserve()
    {
        var drive = new Drive("a", false, Cells.MotorKind.Servo, Curve, 100, 4e-5, 0.9);
        var full = drive.Envelope(48, 0);
        Assert.Equal([0, 3, 4.5], full.Speeds, (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal(2.4 * 100 * 0.9, full.At(0), 1e-10);
        Assert.Equal(1.5 * 100 * 0.9, full.At(-3.75), 1e-10);
        Assert.Equal(0, full.At(4.51));
        var kept = drive.Envelope(24, 0.1);
        Assert.Equal(0.9 * 2.25, kept.LargestSpeed, 1e-12);
        Assert.Equal(0.9 * 0.9 * 240, kept.At(1), 1e-10);
    }
}

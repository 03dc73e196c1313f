using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Xunit;

namespace Trivet.Core.Tests.Drives;

public sealed class AxisLoadTests
{
    private static readonly Drive Direct = new("rotary", true, MotorKind.Servo, new([0, 100, 200], [2, 2, 1], 48), 1, 0, 1);

    private static AxisSeries Series(double[] speed, double[] force) =>
        new("rotary", [.. speed], [.. speed], ImmutableArray.Create(new double[speed.Length]), [.. force]);

    /// <summary>√((2²·1 + 1²·2 + 0²·1)/4) for 2 N·m over 1 s, −1 over 2 s, none over 1 s.</summary>
    [Fact]
    public void Rms_of_what_is_constant_piece_by_piece_is_exact()
    {
        var load = AxisLoad.Of(Direct, [0, 1, 1, 3, 3, 4], Series([1, 1, 1, 1, 1, 1], [2, 2, -1, -1, 0, 0]));
        Assert.Equal(Math.Sqrt(6.0 / 4), load.RmsTorque, 1e-15);
    }

    /// <summary>∫t²dt from 0 to 1 is a third.</summary>
    [Fact]
    public void Rms_of_a_ramp_is_exact() =>
        Assert.Equal(Math.Sqrt(1.0 / 3), AxisLoad.Of(Direct, [0, 1], Series([1, 1], [0, 1])).RmsTorque, 1e-15);

    /// <summary>D10 of tests/reference/published-drives.md over its whole cycle.</summary>
    [Fact]
    public void Rms_of_a_belt_axis_D10()
    {
        double mass = 8 + 2 * 1.2e-4 / 4e-4, friction = 0.05 * 8 * 9.80665;
        var drive = new Drive("a", false, MotorKind.Servo, new([0, 1000], [5, 5], 48), 150, 2.5e-5, 0.96);
        double[] times = [0, 0.05, 0.05, 0.15, 0.15, 0.2, 0.2, 0.4], acceleration = [20, 20, 0, 0, -20, -20, 0, 0], speed = [0, 1, 1, 1, 1, 0, 0, 0];
        // At both ends of the ramps it still moves, or is about to.
        double[] force = [.. acceleration.Select((a, i) => mass * a + (i < 6 ? friction : 0))];
        speed[0] = speed[5] = 1e-12;
        var load = AxisLoad.Of(drive, [.. times], new("a", [.. speed], [.. speed], [.. acceleration], [.. force]));
        Assert.Equal(1.296685, load.Torque[0], 5.1e-7);
        Assert.Equal(0.613084, load.RmsTorque, 5.1e-7);
    }

    [Fact]
    public void Use_is_the_share_of_the_curve_at_the_voltage_of_the_moment()
    {
        var load = AxisLoad.Of(Direct, [0, 1, 2], Series([100, 150, 201], [1, -1.5, 0]));
        Assert.Equal(0.5, load.Use(0, 48), 1e-15);
        Assert.Equal(1, load.Use(1, 48), 1e-15);
        Assert.Equal(1 / (2 - 100.0 / 100), load.Use(0, 24), 1e-15);
        Assert.Equal(double.PositiveInfinity, load.Use(1, 24));
        Assert.Equal(0, load.Use(2, 48));
    }

    [Fact]
    public void Electric_power_is_that_of_the_shaft_and_the_heat_of_the_winding()
    {
        var load = AxisLoad.Of(Direct, [0, 1], Series([100, 100], [1, -1]));
        var servo = new ElectricSide(0.1, 0.5);
        Assert.Equal(100 + 100 * 0.5, load.Power(0, servo), 1e-12);
        Assert.Equal(-100 + 100 * 0.5, load.Power(1, servo), 1e-12);
        var stepper = servo with { HeldCurrent = 4 };
        Assert.Equal(100 + 16 * 0.5, load.Power(0, stepper), 1e-12);
        Assert.Equal(8, stepper.Heat(0), 1e-12);
    }
}

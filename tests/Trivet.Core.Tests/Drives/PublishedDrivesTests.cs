using Trivet.Cells;
using Trivet.Drives;
using Xunit;

namespace Trivet.Core.Tests.Drives;

/// <summary>D10 to D12 of tests/reference/published-drives.md, derived from textbook formulas outside this project.</summary>
public sealed class PublishedDrivesTests
{
    private const double Printed = 5.1e-7; // half of the last digit given
    private const double G = 9.80665, Radius = 0.02, Load = 8, Pulley = 1.2e-4;

    // The pulleys turn behind the gear, so they belong to the load.
    private const double LoadInertia = Load + 2 * Pulley / (Radius * Radius);

    private static readonly Drive Belt = new("a", false, MotorKind.Servo, new([0, 1000], [5, 5], 48), 3 / Radius, 2.5e-5, 0.96);

    private static double Torque(double speed, double acceleration) =>
        Belt.Torque(LoadInertia * acceleration + 0.05 * Load * G * Math.Sign(speed), speed, acceleration);

    [Fact]
    public void Torque_of_a_belt_axis_D10()
    {
        Assert.Equal(3.44e-3, LoadInertia * Radius * Radius, 1e-15);
        Assert.Equal(1.296685, Torque(0.5, 20), Printed);
        Assert.Equal(0.027241, Torque(1, 0), Printed);
        Assert.Equal(-1.150695, Torque(0.5, -20), Printed);
        Assert.Equal(0, Torque(0, 0));
        Assert.Equal(1432.39, Belt.Gearing * 1 * 60 / Math.Tau, 5.1e-3);
    }

    /// <summary>The torque for an acceleration of the load is least at the ratio that makes the load, seen from the motor, equal to the rotor.</summary>
    [Fact]
    public void Best_ratio_for_inertia_alone_D11()
    {
        double At(double ratio) => (Belt with { Gearing = ratio, OwnInertia = 1e-4, Efficiency = 1 }).Torque(3.6e-3 * 100, 1, 100);
        for (double other = 1; other < 20; other += 0.25)
            if (other != 6) Assert.True(At(6) < At(other), $"{other}");
        Assert.Equal(3.6e-3 / 36, 1e-4, 1e-18);
    }

    [Fact]
    public void At_rest_the_way_about_to_be_taken_decides_on_the_loss()
    {
        Assert.Equal(Belt.Torque(100, 1e-9, 20), Belt.Torque(100, 0, 20), 1e-15);
        Assert.Equal(Belt.Torque(100, -1e-9, -20), Belt.Torque(100, 0, -20), 1e-15);
        Assert.Equal(100 / Belt.Gearing, Belt.Torque(100, 0, 0), 1e-15);
    }
}

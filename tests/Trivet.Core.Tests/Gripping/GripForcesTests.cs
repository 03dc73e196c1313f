using Trivet.Cells;
using Trivet.Gripping;
using Trivet.Numerics;
using Xunit;

namespace Trivet.Core.Tests.Gripping;

/// <summary>Forces on cups and fingers against hand calculation with the usual formulas of vacuum handling and statics (common practice, no source).</summary>
public sealed class GripForcesTests
{
    private static readonly Vec3 G = new(0, 0, -9.81);

    /// <summary>The three usual cases for 48 kg, S = 2, a = 5 m/s², μ = 0.5: lifted m·(g + a)·S, moved sideways m·(g + a/μ)·S.</summary>
    [Fact]
    public void Lifting_and_moving_sideways()
    {
        Assert.Equal(48 * (9.81 + 5) * 2, GripForces.OfCups(2, 48, new Vec3(0, 0, 5) - G, Vec3.UnitZ, 0.5), 9);
        Assert.Equal(48 * (9.81 + 5 / 0.5) * 2, GripForces.OfCups(2, 48, new Vec3(3, 4, 0) - G, Vec3.UnitZ, 0.5), 9);
    }

    [Fact]
    public void A_part_thrown_up_against_the_cups_takes_nothing_off_the_sideways_force() =>
        Assert.Equal(2 * 0.1 * 6 / 0.3, GripForces.OfCups(2, 0.1, new Vec3(6, 0, -15) - G, Vec3.UnitZ, 0.3), 12);

    /// <summary>The centre of mass 20 mm below the lips, 12 m/s² sideways: S·m·(a·h + g·b).</summary>
    [Fact]
    public void A_part_that_hangs_low_is_peeled_off()
    {
        var felt = new Vec3(12, 0, 0) - G;
        Assert.Equal(2 * 0.1 * (12 * 0.02 + 9.81 * 0.011), GripForces.Peel(2, 0.1, felt, Vec3.UnitZ, new(0, 0, -0.02), 0.011), 12);
    }

    /// <summary>Two fingers, 0.1 kg, at rest: S·m·g/(2·μ). Sideways at 9.81 m/s² it grows by √2.</summary>
    [Fact]
    public void Fingers_carry_by_friction_or_by_form()
    {
        var friction = new FingerHold(2, GripKind.Friction, 10, 2, new Interval(0.25, 0.25));
        Assert.Equal(2 * 0.1 * 9.81 / (2 * 0.25), GripForces.OfFinger(friction, 0.1, -G, Vec3.UnitZ, 0.25), 12);
        Assert.Equal(Math.Sqrt(2) * 2 * 0.1 * 9.81 / (2 * 0.25), GripForces.OfFinger(friction, 0.1, new Vec3(0, 9.81, 0) - G, Vec3.UnitZ, 0.25), 12);
        Assert.Equal(2 * 0.1 * 9.81, GripForces.OfFinger(friction with { Grip = GripKind.Form }, 0.1, new Vec3(0, 9.81, 0) - G, Vec3.UnitZ, 1), 12);
    }
}

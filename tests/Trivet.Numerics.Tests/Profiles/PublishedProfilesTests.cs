using Trivet.Numerics.Profiles;
using Xunit;

namespace Trivet.Numerics.Tests.Profiles;

/// <summary>
/// Printed examples of the double-S law: L. Biagiotti, C. Melchiorri, Trajectory Planning for Automatic Machines and Robots, Springer, 2008
/// (examples 3.9, 3.10 and 3.12; their numbers from memory, recomputed), and values that follow from the law by hand.
/// </summary>
public sealed class PublishedProfilesTests
{
    private static double[] Durations(Profile profile) => [.. profile.Phases.ToArray().Select(p => p.Duration)];

    private static Profile Fastest(AxisMove move, AxisLimits limits, ProfilePattern pattern)
    {
        var result = AxisProfiles.Fastest(move, limits);
        Assert.Equal(ProfileProblem.None, result.Problem);
        Assert.Equal(pattern, result.Pattern);
        return result.Profile;
    }

    private static void AssertPhases(double tolerance, Profile profile, params double[] expected)
    {
        Assert.Equal(expected.Length, profile.Phases.Length);
        Assert.All(expected.Zip(Durations(profile)), p => Assert.Equal(p.First, p.Second, tolerance));
    }

    [Fact]
    public void Example_3_9_cruises_at_the_velocity_limit()
    {
        var profile = Fastest(new(0, 10, 1, 0), new(5, 10, 30), ProfilePattern.VelocityReached);
        // Ta 0.7333, Tv 1.1433, Td 0.8333, all roundings 0.3333.
        AssertPhases(1e-4, profile, 0.3333, 0.7333 - 2 * 0.3333, 0.3333, 1.1433, 0.3333, 0.8333 - 2 * 0.3333, 0.3333);
        Assert.Equal(2.71, profile.Duration, 1e-12);
    }

    [Fact]
    public void Example_3_10_does_not_reach_the_velocity_limit()
    {
        var profile = Fastest(new(0, 10, 1, 0), new(10, 10, 30), ProfilePattern.AccelerationReachedTwice);
        AssertPhases(1e-4, profile, 0.3333, 1.0747 - 2 * 0.3333, 0.3333, 0.3333, 1.1747 - 2 * 0.3333, 0.3333);
        Assert.Equal(8.4136, profile.Peaks().Velocity, 5e-5);
        Assert.Equal(2.249380, profile.Duration, 5e-7);
    }

    [Fact]
    public void Example_3_12_brakes_only_and_the_fastest_move_beats_it()
    {
        var ramp = Profile.Ramp(0, 7.5, 0, 2.9190, 30);
        Assert.Equal(2.6667, ramp.Duration, 1e-4);
        Assert.Equal(0.0973, ramp.Phases[0].Duration, 1e-4);
        Assert.Equal(10, ramp.At(ramp.Duration).Position, 1e-3);

        AxisMove move = new(0, 10, 7.5, 0);
        var limits = new AxisLimits(10, 10, 30);
        Assert.True(AxisProfiles.FastestDuration(move, limits) < 2.6667);
        var same = AxisProfiles.InTime(move, limits, 8.0 / 3);
        Assert.True(same.Found);
        Assert.True(same.Profile.Peaks().Acceleration < 10);
    }

    [Fact]
    public void A_move_that_reaches_every_limit()
    {
        var profile = Fastest(new(0, 0.3), new(2, 40, 2000), ProfilePattern.VelocityReached);
        AssertPhases(1e-12, profile, 0.02, 0.03, 0.02, 0.08, 0.02, 0.03, 0.02);
        Assert.Equal(0.22, profile.Duration, 1e-12);
    }

    [Fact]
    public void A_move_too_short_for_the_velocity_limit()
    {
        var profile = Fastest(new(0, 0.05), new(2, 40, 2000), ProfilePattern.AccelerationReachedTwice);
        Assert.Equal(0.0934847, profile.Duration, 5e-8);
        Assert.Equal(1.0696938, profile.Peaks().Velocity, 5e-8);
        Assert.Equal(0.0467423, Durations(profile)[..3].Sum(), 5e-8);
    }

    [Fact]
    public void A_move_too_short_for_the_acceleration_limit_has_four_roundings()
    {
        var profile = Fastest(new(0, 0.004), new(2, 40, 2000), ProfilePattern.JerkOnly);
        AssertPhases(1e-12, profile, 0.01, 0.01, 0.01, 0.01);
        var peaks = profile.Peaks();
        Assert.Equal(20, peaks.Acceleration, 1e-9);
        Assert.Equal(0.2, peaks.Velocity, 1e-11);
    }

    [Theory, InlineData(0.032 - 1e-6, ProfilePattern.JerkOnly), InlineData(0.032 + 1e-6, ProfilePattern.AccelerationReachedTwice)]
    public void The_smallest_move_that_reaches_the_acceleration_limit(double distance, ProfilePattern pattern) =>
        Fastest(new(0, distance), new(2, 40, 2000), pattern);

    [Theory]
    [InlineData(0.05, 0.1)]    // 2·√(d/a) = 2·√(0.05/20)
    [InlineData(0.2, 0.2)]     // exactly up to 2 m/s
    [InlineData(0.4, 0.3)]     // d/v + v/a = 0.2 + 0.1
    public void Without_a_limit_of_jerk_it_is_the_trapezoid(double distance, double duration)
    {
        var profile = AxisProfiles.Fastest(new(0, distance), new(2, 20)).Profile;
        Assert.Equal(duration, profile.Duration, 1e-12);
        Assert.All(profile.Phases.ToArray(), p => Assert.Equal(0, p.Jerk));
        Assert.Equal(20, profile.Peaks().Acceleration, 1e-9);
    }
}

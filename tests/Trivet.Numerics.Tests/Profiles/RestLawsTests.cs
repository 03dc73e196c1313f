using CsCheck;
using Trivet.Numerics.Profiles;
using Trivet.Testing;
using Xunit;
using static Trivet.Testing.FixedCases;

namespace Trivet.Numerics.Tests.Profiles;

/// <summary>Factors as printed in the trade's books (Biagiotti and Melchiorri 2008, from memory) and recomputed by sampling.</summary>
public sealed class RestLawsTests
{
    private static readonly RestLaw[] Laws = Enum.GetValues<RestLaw>();

    [Theory]
    [InlineData(RestLaw.FifthOrder, 1.875, 5.774)]
    [InlineData(RestLaw.Cycloid, 2.0, 6.283)]
    [InlineData(RestLaw.SeventhOrder, 2.1875, 7.513)]
    public void Factors_are_the_printed_ones_and_occur_along_the_law(RestLaw law, double velocity, double acceleration)
    {
        var factors = RestLaws.Factors(law);
        Assert.Equal(velocity, factors.Velocity, 1e-4);
        Assert.Equal(acceleration, factors.Acceleration, 1e-3);
        var states = Enumerable.Range(0, 20_001).Select(i => RestLaws.At(law, 1, 1, i / 20_000.0)).ToArray();
        Assert.Equal(factors.Velocity, states.Max(s => Math.Abs(s.Velocity)), 1e-6);
        Assert.Equal(factors.Acceleration, states.Max(s => Math.Abs(s.Acceleration)), 1e-6);
        Assert.Equal(factors.Jerk, states.Max(s => Math.Abs(s.Jerk)), 1e-5);
        Assert.Equal(1, states[^1].Position, 1e-12);
        Assert.Equal(0, states[^1].Velocity, 1e-12);
    }

    [Fact]
    public void States_are_derivatives_of_each_other() => Gen.Select(Gen.Int[0, 2], Between(0.05, 0.95)).Holds(500, c =>
    {
        var (law, t) = (Laws[c.Item1], c.Item2);
        const double H = 1e-4;
        AxisState a = RestLaws.At(law, 0.3, 1, t - H), b = RestLaws.At(law, 0.3, 1, t), d = RestLaws.At(law, 0.3, 1, t + H);
        Assert.Equal(b.Velocity, (d.Position - a.Position) / (2 * H), 1e-6);
        Assert.Equal(b.Acceleration, (d.Velocity - a.Velocity) / (2 * H), 1e-5);
        Assert.Equal(b.Jerk, (d.Acceleration - a.Acceleration) / (2 * H), 1e-4);
    });

    [Fact]
    public void The_shortest_time_is_bound_by_the_limit_that_asks_most()
    {
        AxisLimits limits = new(1, 5, 1000);
        // 0.3 m: kv·d/v = 0.5625 s; √(ka·d/a) = 0.5886 s.
        Assert.Equal(0.58857, RestLaws.Duration(RestLaw.FifthOrder, -0.3, limits), 1e-5);
        Assert.Equal(1.875, RestLaws.Duration(RestLaw.FifthOrder, 1, limits with { Acceleration = 50 }), 1e-12);
        Assert.True(double.IsNaN(RestLaws.Duration(RestLaw.Cycloid, 1, default)));
    }

    [Fact]
    public void No_smooth_law_is_faster_than_the_fastest_profile() => Gen.Select(Gen.Int[0, 2], Between(0.001, 1), Between(0.5, 4), Between(5, 100), Between(300, 10_000)).Holds(1_000, c =>
    {
        var (law, d, v, a, j) = c;
        AxisLimits limits = new(v, a, j);
        Assert.True(RestLaws.Duration(Laws[law], d, limits) >= AxisProfiles.FastestDuration(new(0, d), limits) * (1 - 1e-12));
    });

    [Fact]
    public void Stretched_by_the_least_factor_a_motion_just_keeps_its_limits() => Gen.Select(Between(0.01, 1), Between(0.5, 4), Between(5, 100), Between(300, 10_000)).Holds(1_000, c =>
    {
        var (d, v, a, j) = c;
        var peaks = AxisProfiles.Fastest(new(0, d), new(2, 40, 2000)).Profile.Peaks();
        AxisLimits limits = new(v, a, j);
        double k = Stretch.ToKeep(peaks, limits);
        double used = Math.Max(peaks.Velocity / k / v, Math.Max(peaks.Acceleration / (k * k) / a, peaks.Jerk / (k * k * k) / j));
        Assert.Equal(1, used, 1e-12);
    });

    [Fact]
    public void Forces_are_stretched_by_what_moves_alone()
    {
        // 30/k² + 10 = 22.5 gives k² = 2.4; −30/k² + 10 = −22.5 gives less.
        Assert.Equal(Math.Sqrt(2.4), Stretch.ToKeep([30, -30, 0], [10, 10, 10], 22.5), 1e-12);
        Assert.Equal(double.PositiveInfinity, Stretch.ToKeep([1, 1], [30, 0], 22.5));
        Assert.True(double.IsNaN(Stretch.ToKeep([double.NaN], [0], 22.5)));
        Assert.Equal(0, Stretch.ToKeep([], [], 1));
    }
}

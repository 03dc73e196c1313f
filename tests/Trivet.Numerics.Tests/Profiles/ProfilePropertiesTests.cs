using CsCheck;
using Trivet.Numerics.Profiles;
using Trivet.Testing;
using Xunit;
using static Trivet.Testing.FixedCases;

namespace Trivet.Numerics.Tests.Profiles;

/// <summary>What must hold of every profile, over random moves and limits.</summary>
public sealed class ProfilePropertiesTests
{
    private static readonly Gen<AxisLimits> Jerked = Gen.Select(Between(0.5, 4), Between(5, 100), Between(300, 10_000), (v, a, j) => new AxisLimits(v, a, j));
    private static readonly Gen<AxisLimits> Limits = Gen.OneOf(Jerked, Jerked.Select(l => l with { Jerk = double.PositiveInfinity }));

    // Velocities as fractions of the limit; the ends of the range, and rest, come up often. Short moves are where patterns change.
    private static readonly Gen<double> Fraction = Gen.OneOf(Between(-1, 1), Gen.Int[-1, 1].Select(i => (double)i));
    private static readonly Gen<double> Distance = Gen.OneOf(Between(-0.5, 0.5), Between(-0.01, 0.01), Gen.Const(0.0));
    private static readonly Gen<(AxisMove Move, AxisLimits Limits)> Cases =
        Gen.Select(Limits, Distance, Fraction, Fraction, (l, d, v0, v1) => (new AxisMove(0.2, 0.2 + d, v0 * l.Velocity, v1 * l.Velocity), l));
    private static readonly Gen<(AxisMove Move, AxisLimits Limits)> AtRest =
        Gen.Select(Limits, Distance, (l, d) => (new AxisMove(0.2, 0.2 + d), l));

    [Fact]
    public void Every_move_has_a_fastest_profile_and_it_ends_where_it_should_within_its_limits() => Cases.Holds(20_000, c =>
    {
        var result = AxisProfiles.Fastest(c.Move, c.Limits);
        Assert.Equal(ProfileProblem.None, result.Problem);
        AssertKept(c.Move, c.Limits, result.Profile);
        Assert.Equal(AxisProfiles.FastestDuration(c.Move, c.Limits), result.Profile.Duration, 1e-9);
    });

    [Fact]
    public void Run_backward_or_mirrored_it_takes_as_long() => Cases.Holds(5_000, c =>
    {
        double duration = AxisProfiles.FastestDuration(c.Move, c.Limits);
        Assert.Equal(duration, AxisProfiles.FastestDuration(Reversed(c.Move), c.Limits), 1e-9);
        Assert.Equal(duration, AxisProfiles.FastestDuration(Mirrored(c.Move), c.Limits), 1e-9);
    });

    private static AxisMove Reversed(AxisMove m) => new(m.To, m.From, -m.EndVelocity, -m.StartVelocity);

    private static AxisMove Mirrored(AxisMove m) => new(-m.From, -m.To, -m.StartVelocity, -m.EndVelocity);

    [Fact]
    public void From_rest_to_rest_more_of_any_limit_never_takes_longer() => Gen.Select(AtRest, Between(1, 3), Between(1, 3), Between(1, 3)).Holds(5_000, c =>
    {
        var ((move, l), v, a, j) = c;
        double duration = AxisProfiles.FastestDuration(move, l), allowed = duration * (1 + 1e-12);
        Assert.True(AxisProfiles.FastestDuration(move, l with { Velocity = l.Velocity * v }) <= allowed);
        Assert.True(AxisProfiles.FastestDuration(move, l with { Acceleration = l.Acceleration * a }) <= allowed);
        Assert.True(AxisProfiles.FastestDuration(move, l with { Jerk = l.Jerk * j }) <= allowed);
    });

    /// <summary>From rest to rest the law is scale-free: k times the distance with k, k, k times the limits takes the same time.</summary>
    [Fact]
    public void Distance_and_limits_scaled_together_take_as_long() => Gen.Select(Cases, Between(0.01, 100)).Holds(2_000, c =>
    {
        var ((m, l), k) = c;
        AxisMove scaled = new(0, k * m.Distance, k * m.StartVelocity, k * m.EndVelocity);
        double duration = AxisProfiles.FastestDuration(m, l);
        Assert.Equal(duration, AxisProfiles.FastestDuration(scaled, new(k * l.Velocity, k * l.Acceleration, k * l.Jerk)), 1e-9);
    });

    [Fact]
    public void A_given_duration_is_kept_gently_or_lies_in_a_gap() => Gen.Select(Cases, Between(1, 3)).Holds(20_000, c =>
    {
        var ((move, limits), stretch) = c;
        double fastest = AxisProfiles.FastestDuration(move, limits), duration = fastest * stretch;
        if (duration == 0) return;
        // Beside an axis that takes just this duration and could take any longer one, the two agree on the next that this one can take.
        double half = duration / 2, next = Synchronised.Duration([move, new(0, half * half)], [limits, new(double.MaxValue, 1)]);
        var result = AxisProfiles.InTime(move, limits, duration);
        // At the very edge of a gap rounding decides.
        if (Math.Abs(next - duration) < 1e-7 * duration && next > duration) return;
        Assert.Equal(next > duration ? ProfileProblem.NotInThisTime : ProfileProblem.None, result.Problem);
        if (result.Found)
        {
            AssertKept(move, limits, result.Profile);
            Assert.Equal(duration, result.Profile.Duration, 1e-9);
        }
        else
        {
            var beyond = AxisProfiles.InTime(move, limits, next * (1 + 1e-9));
            Assert.Equal(ProfileProblem.None, beyond.Problem);
        }
    });

    [Fact]
    public void Sampled_states_agree_with_their_own_derivatives() => Cases.Holds(500, c =>
    {
        var profile = AxisProfiles.Fastest(c.Move, c.Limits).Profile;
        double end = 0;
        foreach (var phase in profile.Phases)
        {
            // Inside a phase a central difference of a cubic is off by its third derivative alone.
            double t = end + phase.Duration / 2, h = phase.Duration / 4;
            AxisState a = profile.At(t - h), b = profile.At(t), d = profile.At(t + h);
            Assert.Equal(b.Velocity + b.Jerk * h * h / 6, (d.Position - a.Position) / (2 * h), 1e-6);
            Assert.Equal(b.Acceleration, (d.Velocity - a.Velocity) / (2 * h), 1e-5 * c.Limits.Acceleration);
            end += phase.Duration;
        }

        Assert.Equal(c.Move.From, profile.At(-1).Position);
        Assert.Equal(c.Move.To, profile.At(end + 1).Position, 1e-9);
    });

    [Fact]
    public void Nothing_that_is_no_move_gets_a_profile()
    {
        AxisMove move = new(0, 1);
        AxisLimits limits = new(1, 10, 100);
        Assert.Equal(ProfileProblem.NotFinite, AxisProfiles.Fastest(move with { To = double.NaN }, limits).Problem);
        Assert.Equal(ProfileProblem.NotFinite, AxisProfiles.Fastest(move with { StartVelocity = double.PositiveInfinity }, limits).Problem);
        Assert.Equal(ProfileProblem.LimitNotPositive, AxisProfiles.Fastest(move, limits with { Jerk = double.NaN }).Problem);
        Assert.Equal(ProfileProblem.LimitNotPositive, AxisProfiles.Fastest(move, limits with { Velocity = double.PositiveInfinity }).Problem);
        Assert.Equal(ProfileProblem.LimitNotPositive, AxisProfiles.Fastest(move, limits with { Acceleration = 0 }).Problem);
        Assert.Equal(ProfileProblem.VelocityBeyondLimit, AxisProfiles.Fastest(move with { EndVelocity = -2 }, limits).Problem);
        Assert.Equal(ProfileProblem.NotInThisTime, AxisProfiles.InTime(move, limits, 0.5).Problem);
        Assert.Equal(ProfileProblem.NotFinite, AxisProfiles.InTime(move, limits, double.NaN).Problem);
        Assert.True(double.IsNaN(AxisProfiles.FastestDuration(move, default)));
    }

    private static void AssertKept(AxisMove move, AxisLimits limits, Profile profile)
    {
        // Sampled anew through the public state, apart from the confirmation inside.
        var end = profile.At(profile.Duration);
        Assert.Equal(move.To, end.Position, 1e-9);
        Assert.Equal(move.EndVelocity, end.Velocity, 1e-8);
        for (int i = 0; i <= 40; i++)
        {
            var state = profile.At(profile.Duration * i / 40);
            Assert.True(Math.Abs(state.Velocity) <= limits.Velocity * (1 + 1e-8), $"velocity {state}");
            Assert.True(Math.Abs(state.Acceleration) <= limits.Acceleration * (1 + 1e-8), $"acceleration {state}");
            Assert.True(Math.Abs(state.Jerk) <= limits.Jerk * (1 + 1e-8), $"jerk {state}");
        }
    }
}

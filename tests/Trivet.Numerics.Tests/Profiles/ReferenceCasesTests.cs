using System.Text.Json;
using Trivet.Numerics.Profiles;
using Trivet.Testing;
using Xunit;

namespace Trivet.Numerics.Tests.Profiles;

/// <summary>
/// 500 moves of three axes, half of them with moving ends, against tests/reference/jerk-limited-cases.json: computed independently for this
/// project with a general-purpose trajectory generator, the half at rest also by another closed form. To 1e-9 s.
/// </summary>
public sealed class ReferenceCasesTests
{
    private sealed record Case(double[] P0, double[] V0, double[] P1, double[] V1, double[] Vmax, double[] Amax, double[] Jmax, double[] Independent, double Duration)
    {
        public AxisMove[] Moves => [.. Enumerable.Range(0, P0.Length).Select(i => new AxisMove(P0[i], P1[i], V0[i], V1[i]))];
        public AxisLimits[] Limits => [.. Enumerable.Range(0, P0.Length).Select(i => new AxisLimits(Vmax[i], Amax[i], Jmax[i]))];
    }

    private sealed record CaseFile(Case[] Cases);

    private static readonly Case[] Cases = JsonSerializer.Deserialize<CaseFile>(File.ReadAllText(ReferenceData.Path("jerk-limited-cases.json")), JsonSerializerOptions.Web)!.Cases;

    [Fact]
    public void Each_axis_alone_takes_the_reference_time()
    {
        Assert.Equal(500, Cases.Length);
        foreach (var one in Cases)
        {
            for (int axis = 0; axis < 3; axis++)
            {
                var result = AxisProfiles.Fastest(one.Moves[axis], one.Limits[axis]);
                Assert.True(result.Found, $"{one.Moves[axis]} {one.Limits[axis]} {result.Problem}");
                Assert.Equal(one.Independent[axis], result.Profile.Duration, 1e-9);
                Assert.Equal(one.Independent[axis], AxisProfiles.FastestDuration(one.Moves[axis], one.Limits[axis]), 1e-9);
            }
        }
    }

    [Fact]
    public void All_axes_together_take_the_reference_time_and_arrive_together()
    {
        var profiles = new Profile[3];
        foreach (var one in Cases)
        {
            var result = Synchronised.Solve(one.Moves, one.Limits, profiles);
            Assert.True(result.Found, $"{one} {result}");
            Assert.Equal(one.Duration, result.Duration, 1e-9);
            Assert.All(profiles, p => Assert.Equal(result.Duration, p.Duration, 1e-9));
        }
    }

    [Fact]
    public void The_slowest_axis_is_not_always_the_answer() =>
        // Three of the file's cases: their common duration lies beyond a gap of another axis.
        Assert.Equal(3, Cases.Count(c => Synchronised.Duration(c.Moves, c.Limits) > c.Independent.Max() + 1e-9));
}

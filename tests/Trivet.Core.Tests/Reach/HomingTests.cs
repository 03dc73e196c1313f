using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;
using Xunit;

namespace Trivet.Tests.Reach;

public class HomingTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private const double Degree = Math.PI / 180;
    private const double D = 0.3, L = 0.5;

    private static Homing Of(DeltaRobot robot, double swing) =>
        new(robot, [.. robot.Chains.Select(_ => new BallJoint(JointKind.CrossBar, swing, 0))]);

    private static DeltaRobot Upright => ExampleRobots.Rail(0.35, 0.05, L, 0.6);

    /// <summary>
    /// Worked by hand for upright rails alike: with one carriage away from the other two the platform moves by x towards or from its rail;
    /// the other rods lean sideways by x·√3/2, so asin(x·√3/(2l)) is their swing, and the carriages differ by
    /// √(l² − (D − x)²) − √(l² − x² − D² − x·D).
    /// </summary>
    [Fact]
    public void Upright_rail_raised_alone_levers_the_other_joints_where_geometry_says()
    {
        double x = 2 * L * Math.Sin(20 * Degree) / Math.Sqrt(3);
        double expected = Math.Sqrt(L * L - (D - x) * (D - x)) - Math.Sqrt(L * L - x * x - D * D - x * D);
        var homing = Of(Upright, 20 * Degree);
        for (int chain = 0; chain < 3; chain++) Assert.Equal(expected, homing.Alone(chain).Attained, 1e-5);
    }

    /// <summary>With free joints the lowered chain's own rod is stretched first: D − x = 0.98 l.</summary>
    [Fact]
    public void Upright_rail_lowered_alone_stretches_its_rod_where_geometry_says()
    {
        double x = D - Homing.MostUse * L;
        double expected = Math.Sqrt(L * L - x * x - D * D - x * D) - Math.Sqrt(L * L - (D - x) * (D - x));
        var found = Of(Upright, 80 * Degree).Alone(1);
        Assert.Equal(expected, found.Attained, 1e-5);
        Assert.True(found.Q.Y > found.Q.X);
    }

    /// <summary>One chain against equal others is one pattern of the band, and for rails alike the worst one: both ways meet.</summary>
    [Fact]
    public void Band_of_upright_rails_is_bounded_at_what_one_chain_alone_attains()
    {
        var homing = Of(Upright, 20 * Degree);
        var band = homing.Together(stop: Stop);
        double alone = homing.Alone(0).Attained;
        Assert.InRange(band.Bound, 0.99 * alone, alone + 1e-9);
        Assert.InRange(band.Attained, band.Bound, 1.01 * alone);
    }

    /// <summary>Random readings within the proved band, checked one by one with the forward pose.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Every_random_start_within_the_band_has_a_sound_pose(int example)
    {
        var robot = example switch
        {
            0 => Upright,
            1 => ExampleRobots.Williams,
            2 => ExampleRobots.Rail(0.4, 0.06, 0.45, 0.4, Math.PI / 6),
            _ => ExampleRobots.TwoRails(0.25, 0.05, 0.4, 0.5),
        };
        const double Swing = 25 * Degree;
        double band = Math.Min(Of(robot, Swing).Together(20_000, Stop).Bound, robot.Chains[0].TravelTo - robot.Chains[0].TravelFrom);
        Assert.True(band > 0.01);
        var random = new Random(11);
        double from = robot.Chains[0].TravelFrom, to = robot.Chains[0].TravelTo;
        for (int n = 0; n < 3000; n++)
        {
            double low = from + (to - from - band) * random.NextDouble();
            Vec3 q = new(low + band * random.NextDouble(), low + band * random.NextDouble(), robot.Planar ? 0 : low + band * random.NextDouble());
            var pose = ForwardPose.Of(robot, q);
            Assert.Equal(Closure.Closes, pose.Closure);
            for (int i = 0; i < robot.Chains.Length; i++)
            {
                Assert.Equal(q[i], robot.Chains[i].Inverse(pose.Working), 1e-9);
                Assert.True(Math.Abs(robot.Chains[i].CrossBarSwing(pose.Working, q[i])) <= Swing);
            }
        }
    }

    [Fact]
    public void Cancelled_bound_is_valid_and_says_little()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.InRange(Of(Upright, 20 * Degree).Together(stop: stop.Token).Bound, 0, 0.2409);
    }

    private static Cell CellWith(double? difference, double? swing = 20 * Degree) => Cell.Empty with
    {
        Depth = Depth.Build,
        Robot = new()
        {
            Family = RobotFamily.RailDelta,
            HomingDifference = difference,
            Common = new()
            {
                BaseRadius = 0.35, BaseHeight = 0, PlatformRadius = 0.05, Rod = L, TravelFrom = 0, TravelTo = 0.6, Joint = JointKind.CrossBar, SwingLimit = swing,
            },
            Chains = Cell.Empty.Robot.Chains
                .Add("a", new() { Order = 1, Azimuth = -90 * Degree }).Add("b", new() { Order = 2, Azimuth = 30 * Degree }).Add("c", new() { Order = 3, Azimuth = 150 * Degree }),
        },
    };

    private static ImmutableArray<Finding> Proved(Cell cell) => Assert.Single(HomingChecks.Of(cell).Tasks).Prove(Stop);

    [Fact]
    public void Homing_each_chain_alone_over_the_whole_travel_falls_short_and_advises_a_band()
    {
        var findings = Proved(CellWith(null));
        Assert.Equal(["reach.homing-alone:/robot:a", "reach.homing-alone:/robot:b", "reach.homing-alone:/robot:c"], findings.Select(f => f.Id));
        Assert.All(findings, f => Assert.Equal(Verdict.FallsShort, f.Verdict));
        var advice = Assert.Single(findings[0].Advice);
        Assert.Equal("/robot/homingDifference", advice.Pointer);
        // A quarter in reserve, to whole millimetres: 0.2408 m / 1.25.
        Assert.Equal(0.192, advice.To, 1e-9);
        var taken = Assert.Single(Proved(CellWith(advice.To)));
        Assert.Equal(Verdict.Holds, taken.Verdict);
        Assert.Equal(advice.MarginThen, taken.Margin, 1e-9);
    }

    [Theory]
    [InlineData(0.05, Verdict.Holds)]
    [InlineData(0.22, Verdict.Tight)]
    [InlineData(0.3, Verdict.FallsShort)]
    public void Stated_difference_is_judged_against_the_band(double difference, Verdict expected)
    {
        var finding = Assert.Single(Proved(CellWith(difference)));
        Assert.Equal(expected, finding.Verdict);
        Assert.Equal("reach.homing-together:/robot", finding.Id);
        Assert.Equal("reach.homing-alone", Assert.Single(HomingChecks.Of(CellWith(difference)).Coverage).Rule.Id);
    }

    [Fact]
    public void Preview_never_holds_but_shows_a_violation()
    {
        Assert.Equal(Verdict.Open, Assert.Single(Assert.Single(HomingChecks.Of(CellWith(0.05)).Tasks).Sample()).Verdict);
        Assert.All(Assert.Single(HomingChecks.Of(CellWith(null)).Tasks).Sample(), f => Assert.Equal(Verdict.FallsShort, f.Verdict));
    }

    [Fact]
    public void Missing_swing_limit_is_asked_for_at_build_depth_only()
    {
        var open = Assert.IsType<Unjudged>(Assert.Single(HomingChecks.Of(CellWith(null, swing: null)).Findings));
        Assert.Equal(["/robot/common/swingLimit"], open.Missing);
        Assert.Empty(HomingChecks.Of(CellWith(null, swing: null) with { Depth = Depth.Quote }).Findings);
    }

    [Fact]
    public void Homing_does_not_look_at_the_mount_the_tool_or_the_stations()
    {
        var inputs = Proved(CellWith(0.05)).SelectMany(f => f.Inputs).ToList();
        Assert.All(inputs, p => Assert.StartsWith("/robot/", p, StringComparison.Ordinal));
        Assert.Contains("/robot/homingDifference", inputs);
    }
}

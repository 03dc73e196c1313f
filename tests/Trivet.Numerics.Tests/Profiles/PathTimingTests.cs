using System.Text.Json;
using CsCheck;
using Trivet.Numerics.Profiles;
using Trivet.Testing;
using Xunit;
using static Trivet.Testing.FixedCases;

namespace Trivet.Numerics.Tests.Profiles;

/// <summary>Traversals against tests/reference/path-timing.json (its origin stands beside it) and against exact solutions.</summary>
public sealed class PathTimingTests
{
    // The converged durations of the file, printed there with six digits.
    private const double WithForce = 0.232685, WithoutForce = 0.210582;

    private static PathTraversal Solve(PathLimits limits)
    {
        var found = new PathTiming().Solve(limits);
        Assert.Equal(PathProblem.None, found.Problem);
        return found;
    }

    private static double[] Grid(double length, int steps) => [.. Enumerable.Range(0, steps + 1).Select(i => length * i / steps)];

    private static double[] All(double value, int steps) => [.. Enumerable.Repeat(value, steps + 1)];

    [Theory, InlineData(1000), InlineData(3000)]
    public void The_gate_path_takes_the_converged_durations_to_a_hundredth_of_a_percent(int steps)
    {
        var path = new GatePath(steps);
        Assert.Equal(WithForce, Solve(path.Limits(force: true)).Duration, 1e-4 * WithForce);
        Assert.Equal(WithoutForce, Solve(path.Limits(force: false)).Duration, 1e-4 * WithoutForce);
    }

    [Fact]
    public void The_gate_path_itself_agrees_with_the_reference_in_places_and_derivatives_and_nearly_in_speed()
    {
        using var file = JsonDocument.Parse(File.ReadAllText(ReferenceData.Path("path-timing.json")));
        var samples = file.RootElement.GetProperty("samples").EnumerateArray().ToArray();
        var path = new GatePath(samples.Length - 1);
        var found = Solve(new GatePath(2000).Limits(force: true));
        double largest = found.X.Max();
        for (int i = 0; i < samples.Length; i++)
        {
            double[] Values(string name) => [.. samples[i].GetProperty(name).EnumerateArray().Select(v => v.GetDouble())];
            Assert.Equal(samples[i].GetProperty("s").GetDouble(), path.S[i], 1e-12);
            for (int k = 0; k < 3; k++)
            {
                Assert.Equal(Values("q")[k], path.Q[k][i], 1e-11);
                Assert.Equal(Values("dq_ds")[k], path.Dq[k][i], 1e-10);
                Assert.Equal(Values("d2q_ds2")[k], path.Ddq[k][i], 1e-9);
            }

            // Its samples come from a grid of 111 steps, ours from 2,000.
            Assert.Equal(samples[i].GetProperty("sdot2").GetDouble(), found.SpeedSquaredAt(path.S[i]), 0.03 * largest);
        }
    }

    [Fact]
    public void Every_limit_is_kept_where_it_is_imposed()
    {
        var path = new GatePath(500);
        var found = Solve(path.Limits(force: true));
        // Steps that keep a limit at both their ends bend a little in between.
        const double Most = 1 + 1e-4;
        double Middle(double[] values, int i) => (values[i] + values[i + 1]) / 2;
        for (int i = 0; i < found.U.Length; i++)
        {
            double u = found.U[i], x = (found.X[i] + found.X[i + 1]) / 2;
            for (int k = 0; k < 3; k++)
            {
                Assert.True(path.Dq[k][i] * path.Dq[k][i] * found.X[i] <= 4 * (1 + 1e-9));
                Assert.True(Math.Abs(Middle(path.Dq[k], i) * u + Middle(path.Ddq[k], i) * x) <= 40 * Most);
                Assert.True(Math.Abs(Middle(path.ForceA[k], i) * u + Middle(path.ForceB[k], i) * x + Middle(path.ForceC[k], i)) <= 60 * Most);
            }

            Assert.True(found.T[i + 1] > found.T[i]);
        }
    }

    [Fact]
    public void Run_backward_the_path_takes_as_long()
    {
        // Forces and accelerations are the same at the same place when time runs backward.
        var path = new GatePath(1000);
        var back = new PathLimits(path.S);
        double[] Turned(double[] values, double sign) => [.. values.Reverse().Select(v => sign * v)];
        for (int k = 0; k < 3; k++) back.Velocity(Turned(path.Dq[k], -1), 2);
        for (int k = 0; k < 3; k++) back.Band(Turned(path.Dq[k], -1), Turned(path.Ddq[k], 1), -40, 40);
        for (int k = 0; k < 3; k++) back.Band(Turned(path.ForceA[k], -1), Turned(path.ForceB[k], 1), Turned(path.ForceC[k], 1), -60, 60);
        Assert.Equal(Solve(path.Limits(force: true)).Duration, Solve(back).Duration, 2e-5);
    }

    [Theory]
    [InlineData(0.4, 0, 0, 0.3)]                    // d/v + v/a
    [InlineData(0.05, 0, 0, 0.1)]                   // 2·√(d/a)
    [InlineData(0.1, 2, 0, 0.1)]                    // braking all the way
    [InlineData(0.1, 0, 2, 0.1)]
    [InlineData(0.2, 2, 2, 0.1)]                    // at the limit throughout
    public void A_straight_line_is_the_trapezoid(double distance, double from, double to, double duration)
    {
        const int Steps = 400;
        var limits = new PathLimits(Grid(distance, Steps)) { StartSpeed = from, EndSpeed = to };
        limits.Velocity(All(1, Steps), 2);
        limits.Band(All(1, Steps), All(0, Steps), -20, 20);
        var found = Solve(limits);
        Assert.Equal(duration, found.Duration, 1e-9);
        Assert.Equal(AxisProfiles.FastestDuration(new(0, distance, from, to), new(2, 20)), found.Duration, 1e-9);
    }

    [Fact]
    public void Time_place_and_speed_agree_with_each_other()
    {
        var found = Solve(new GatePath(300).Limits(force: true));
        for (int i = 0; i <= 100; i++)
        {
            double t = found.Duration * i / 100;
            var (s, speed, _) = found.At(t);
            Assert.Equal(t, found.TimeAt(s), 1e-8);
            Assert.Equal(speed * speed, found.SpeedSquaredAt(s), 1e-6);
        }

        Assert.Equal(GatePath.Length, found.At(1).S, 1e-12);
        Assert.Equal(0, found.At(-1).S);
    }

    /// <summary>
    /// Half a circle of 0.5 m from rest to rest, acceleration of at most 10 m/s² in every direction. By hand, from v² = A·r·sin(2s/r): the speed
    /// √(A·r) after an eighth of the circle in 0.2931549 s; 0.9375506 s in all.
    /// </summary>
    [Fact]
    public void A_circle_with_acceleration_bounded_in_all_directions()
    {
        const double Radius = 0.5, Most = 10;
        const int Steps = 1600, Directions = 200;
        double[] s = Grid(Math.PI * Radius, Steps);
        var limits = new PathLimits(s);
        // Along the path u, across it x/r: a polygon of 400 sides around the disc.
        for (int k = 0; k < Directions; k++)
        {
            var (sin, cos) = Math.SinCos(Math.PI * k / Directions);
            limits.Band(All(cos, Steps), All(sin / Radius, Steps), -Most, Most);
        }

        var found = Solve(limits);
        Assert.Equal(0.9375506, found.Duration, 5e-5);
        Assert.Equal(0.2931549, found.TimeAt(Math.PI * Radius / 4), 5e-4);
        Assert.Equal(Math.Sqrt(Most * Radius), found.At(found.Duration / 2).Speed, 1e-4);
        double early = Math.PI * Radius / 8;
        Assert.Equal(Most * Radius * Math.Sin(2 * early / Radius), found.SpeedSquaredAt(early), 1e-2);
    }

    /// <summary>
    /// q = cos s: the coefficient of u vanishes with sin s, and the limit of q̈ bounds x alone there. Since q alone is limited, each half turn
    /// is a move of 2 from rest to rest: 2·√(2/A).
    /// </summary>
    [Theory, InlineData(500), InlineData(501), InlineData(2000), InlineData(2001)]
    public void Where_the_coefficient_of_acceleration_vanishes_the_limit_still_holds(int steps)
    {
        double[] s = Grid(2 * Math.PI, steps);
        var limits = new PathLimits(s) { StartSpeed = Math.Sqrt(7), EndSpeed = Math.Sqrt(7) };
        limits.Band([.. s.Select(v => -Math.Sin(v))], [.. s.Select(v => -Math.Cos(v))], -7, 7);
        var found = Solve(limits);
        Assert.Equal(2 * 2 * Math.Sqrt(2 / 7.0), found.Duration, 8 / ((double)steps * steps));
        // Exact: x = A·2/(1 + |cos s|), and no swinging to and fro on the way.
        for (int i = 0; i <= steps; i++) Assert.Equal(14 / (1 + Math.Abs(Math.Cos(s[i]))), found.X[i], 20.0 / steps);
    }

    /// <summary>
    /// A grid from 0 to a length that is denser towards its ends: from rest the first stretch of a path takes long, and what happens in a step is
    /// known to the square of its length.
    /// </summary>
    private static double[] GridFromRest(double length, int steps)
    {
        double[] s = new double[steps + 1];
        for (int i = 0; i <= steps; i++)
        {
            double sin = Math.Sin(Math.PI / 2 * i / steps);
            s[i] = length * sin * sin;
        }

        s[steps] = length;
        return s;
    }

    /// <summary>v̇ = F − k·v from rest: v = F/k·(1 − e^(−kt)), s = F/k·t − v/k; and the same backward in time to rest again.</summary>
    [Theory, InlineData(0.1), InlineData(0.3)]
    public void Effort_that_falls_with_speed_gives_the_exponential_approach(double time)
    {
        const double Force = 20, Fall = 5;
        double speed = Force / Fall * (1 - Math.Exp(-Fall * time)), distance = Force / Fall * time - speed / Fall;
        const int Steps = 1000;
        var limits = new PathLimits(GridFromRest(2 * distance, Steps));
        limits.Effort(All(1, Steps), All(0, Steps), All(0, Steps), All(1, Steps), new SpeedCurve((0, Force), (Force / Fall, 0)));
        var found = Solve(limits);
        Assert.Equal(2 * time, found.Duration, 1e-4 * time);
        Assert.Equal(speed, found.At(found.Duration / 2).Speed, 1e-3);
    }

    [Fact]
    public void A_falling_limit_is_kept_and_later_rounds_never_lose()
    {
        var curve = new SpeedCurve((0.4, 60), (1.0, 45), (2.0, 38));
        var path = new GatePath(1000);
        var found = Solve(path.Limits(force: true, curve));
        Assert.True(found.Duration > WithForce);
        Assert.NotEmpty(found.Gains);
        Assert.All(found.Gains, gain => Assert.True(gain >= -1e-9));
        Assert.True(found.Gains[^1] < 1e-5);
        for (int i = 0; i < found.U.Length; i++)
        {
            double u = found.U[i], x = (found.X[i] + found.X[i + 1]) / 2;
            for (int k = 0; k < 3; k++)
            {
                double Middle(double[] values) => (values[i] + values[i + 1]) / 2;
                double force = Math.Abs(Middle(path.ForceA[k]) * u + Middle(path.ForceB[k]) * x + Middle(path.ForceC[k]));
                Assert.True(force <= curve.At(Math.Abs(Middle(path.Dq[k])) * Math.Sqrt(x)) + 0.05, $"{i} {k} {force}");
            }
        }
    }

    [Fact]
    public void On_a_grid_denser_at_its_ends_the_time_converges_with_the_square_of_the_step()
    {
        double Error(int steps)
        {
            // 20 − 5·v as above, 0.3 s each way.
            double distance = 4 * 0.3 - 0.8 * (1 - Math.Exp(-1.5));
            var limits = new PathLimits(GridFromRest(2 * distance, steps));
            limits.Effort(All(1, steps), All(0, steps), All(0, steps), All(1, steps), new SpeedCurve((0, 20), (4, 0)));
            return Math.Abs(Solve(limits).Duration - 0.6);
        }

        Assert.True(Error(400) < 0.1 * Error(100), $"{Error(100)} {Error(400)}");
    }

    [Fact]
    public void Of_a_convex_and_of_a_concave_curve_the_lines_touch_and_stay_below()
    {
        var concave = new SpeedCurve((0.5, 10), (1.0, 9), (2.0, 2));
        var convex = new SpeedCurve((0.5, 10), (1.0, 4), (2.0, 1));
        Gen.Select(Gen.Bool.Select(b => b ? concave : convex), Between(0, 2), Between(0, 2)).Holds(2_000, c =>
        {
            var (curve, touch, v) = c;
            var (slower, faster) = curve.Falls(touch);
            double line = curve.At(touch) - Math.Max(slower * (v - touch), faster * (v - touch));
            Assert.True(line <= curve.At(v) + 1e-12);
        });
    }

    [Fact]
    public void Random_limits_are_kept_and_a_finer_grid_agrees() => Gen.Select(Between(0, 6), Between(0.2, 3), Between(0.2, 3), Between(2, 20)).Holds(60, c =>
    {
        var (phase, one, two, most) = c;
        PathLimits Limits(int steps)
        {
            double[] s = Grid(1, steps);
            var limits = new PathLimits(s);
            foreach (double w in new[] { one, two })
            {
                // q = sin(w·2π·s + phase)/(2π·w)
                double[] a = [.. s.Select(v => Math.Cos(w * Math.Tau * v + phase))], b = [.. s.Select(v => -w * Math.Tau * Math.Sin(w * Math.Tau * v + phase))];
                limits.Velocity(a, 1);
                limits.Band(a, b, -most, most);
            }

            return limits;
        }

        double coarse = Solve(Limits(500)).Duration, fine = Solve(Limits(4000)).Duration;
        Assert.Equal(fine, coarse, 4e-3 * fine);
    });

    [Fact]
    public void What_can_not_be_run_through_says_where_and_by_which_limit()
    {
        const int Steps = 10;
        PathLimits Line() => new(Grid(1, Steps));

        var limits = Line();
        limits.Band(All(1, Steps), All(0, Steps), -1, 1);
        int contradiction = limits.Band(All(1, Steps), All(0, Steps), [.. Enumerable.Range(0, Steps + 1).Select(i => i == 4 ? 9.0 : 0)], -2, 2);
        var found = new PathTiming().Solve(limits);
        Assert.Equal(PathProblem.Contradiction, found.Problem);
        Assert.InRange(found.Point, 3, 4);
        Assert.Contains(found.Limit, new[] { 0, contradiction });
        Assert.True(double.IsNaN(found.Duration));

        limits = new(Grid(1, Steps)) { EndSpeed = 3 };
        int velocity = limits.Velocity(All(1, Steps), 2);
        Assert.Equal((PathProblem.EndTooFast, Steps, velocity), (new PathTiming().Solve(limits) is var r1 ? (r1.Problem, r1.Point, r1.Limit) : default));

        limits = new(Grid(1, Steps)) { StartSpeed = 3 };
        limits.Velocity(All(1, Steps), 5);
        int braking = limits.Band(All(1, Steps), All(0, Steps), -1, 1);
        Assert.Equal((PathProblem.StartTooFast, 0, braking), (new PathTiming().Solve(limits) is var r2 ? (r2.Problem, r2.Point, r2.Limit) : default));

        // It always loses speed: only a fast start gets to the end.
        limits = Line();
        limits.Band(All(1, Steps), All(0, Steps), -3, -2);
        Assert.Equal(PathProblem.StartTooSlow, new PathTiming().Solve(limits).Problem);

        limits = Line();
        int push = limits.Band(All(1, Steps), All(0, Steps), -1, 0);
        Assert.Equal((PathProblem.Stuck, push), (new PathTiming().Solve(limits) is var r3 ? (r3.Problem, r3.Limit) : default));

        limits = Line();
        limits.Band(All(1, Steps), [.. Enumerable.Range(0, Steps + 1).Select(i => i == 7 ? double.NaN : 0)], -1, 1);
        Assert.Equal((PathProblem.NotFinite, 7, 0), (new PathTiming().Solve(limits) is var r4 ? (r4.Problem, r4.Point, r4.Limit) : default));
    }

    [Fact]
    public void The_limit_that_holds_back_is_named()
    {
        const int Steps = 100;
        var limits = new PathLimits(Grid(0.4, Steps));
        int velocity = limits.Velocity(All(1, Steps), 2), acceleration = limits.Band(All(1, Steps), All(0, Steps), -20, 20);
        var found = Solve(limits);
        Assert.Equal(acceleration, found.Limiting[0]);
        Assert.Equal(velocity, found.Limiting[Steps / 2]);
        Assert.Equal(acceleration, found.Limiting[^1]);
    }
}

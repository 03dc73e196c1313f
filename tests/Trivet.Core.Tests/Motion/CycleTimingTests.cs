using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Motion;
using Trivet.Numerics;
using Xunit;

namespace Trivet.Core.Tests.Motion;

/// <summary>The three laws, each held against what is known otherwise, and against each other.</summary>
public sealed class CycleTimingTests
{
    public static TheoryData<string> Cells => ["rail belt-to-tray", "rail tray-to-nest", "crank across", "planar across"];

    /// <summary>Converged durations of the gate path with axis velocity, acceleration and force limits, and without the force
    /// (tests/reference/path-timing.json, computed independently for this project).</summary>
    [Theory]
    [InlineData(true, 0.232685)]
    [InlineData(false, 0.210582)]
    public void The_bound_of_the_reference_path_is_met_to_a_ten_thousandth(bool force, double duration)
    {
        var path = ToolPathTests.GateOfTheReference();
        var envelope = force ? new Trivet.Drives.ForceEnvelope([0, 100], [60, 60]) : null;
        ImmutableArray<AxisCapacity> axes = [.. path.Robot.ChainIds.Select(id => new AxisCapacity(id, false, new(2, 40, double.PositiveInfinity), envelope, double.PositiveInfinity))];
        var dynamics = new RobotDynamics(path.Robot, [.. axes.Select(_ => ChainBodies.Rail(0.8, 0, 0.06))], new(1, Vec3.Zero), new(0, 0, -9.80665));
        var bound = PathBound.Solve(path, axes, dynamics, 0, 0, 1500);
        Assert.Equal(duration, bound.Move.Duration, 1e-4 * duration);
        Assert.Equal(force, bound.HeldBack.Any(h => h.Kind == LimitKind.Force));
        foreach (var u in LimitUse.Of(bound.Move.Trace!.Instants, axes, dynamics)) Assert.True(u.Use < 1.01, $"{u.Axis} {u.Kind} {u.Use} at s {u.At.S}");
    }

    /// <summary>An arc under a limit on the tool's acceleration alone is published example J8; here the limit is on each axis, so only that what is
    /// attained keeps it, and that the half circle takes longer than the straight line between its ends.</summary>
    [Theory, MemberData(nameof(Cells))]
    public void The_bound_keeps_every_limit_and_no_law_that_keeps_them_is_faster(string which)
    {
        var result = CycleTiming.Solve(Input(which));
        Assert.All(result.Laws, l => Assert.True(l.Found, $"{l.Law} {l.Why}"));
        foreach (var (move, dynamics) in new[] { (result.Bound.Loaded, result.Input.Loaded), (result.Bound.Empty, result.Input.Empty) })
        {
            // Limits are kept in the middle of each step, so the very ends don't count.
            foreach (var u in LimitUse.Of(move.Trace!.Instants[1..^1], result.Input.Axes, dynamics))
                Assert.True(u.Kind == LimitKind.Jerk || u.Use < 1.02, $"bound: {u.Axis} {u.Kind} {u.Use} at s {u.At.S} of {move.Duration}");
        }
        foreach (var u in result.LoadedUse.AddRange(result.EmptyUse)) Assert.True(u.Use <= 1, $"{u.Axis} {u.Kind} {u.Use} at s {u.At.S}");
        Assert.True(result.Bound.Loaded.Duration < result.Controller.Loaded.Duration);
        Assert.True(result.Bound.Empty.Duration < result.Controller.Empty.Duration);
        Assert.InRange(result.Gap, 0, 1);
    }

    /// <summary>d/v + v/a, and twice the time of a ramp of acceleration more with jerk (elementary): nothing of the path's bends enters.</summary>
    [Fact]
    public void Along_the_path_a_trapezoid_and_seven_phases_take_their_textbook_times()
    {
        var input = MotionCells.Input(MotionCells.Planar, "across");
        double length = input.Plan.Loaded.Length;
        var trapezoid = input.Settings with { Profile = ProfileKind.Trapezoidal, Jerk = double.PositiveInfinity };
        Assert.Equal(length / 0.6 + 0.6 / 6, PathLaw.Run(input.Plan.Loaded, trapezoid, 0, 0).Duration, 1e-12);
        Assert.Equal(length / 0.6 + 0.6 / 6 + 6.0 / 150, PathLaw.Run(input.Plan.Loaded, input.Settings, 0, 0).Duration, 1e-12);
        Assert.Equal(PathLaw.Duration(length, input.Settings, 0, 0), PathLaw.Run(input.Plan.Loaded, input.Settings, 0, 0).Duration, 1e-12);
    }

    [Theory, MemberData(nameof(Cells))]
    public void Speeds_accelerations_and_jerks_of_the_axes_are_the_derivatives_of_their_readings(string which)
    {
        var result = CycleTiming.Solve(Input(which));
        var settings = result.Input.Settings with { Along = ProfileAlong.Axes };
        var axes = result.Input.Plan.Pick.Moves ? null : CycleTiming.Controller(result.Input with { Settings = settings }, 0).Loaded.Trace;
        foreach (var trace in new[] { result.Controller.Loaded.Trace!, result.Controller.Empty.Trace!, result.States.Loaded.Trace!, axes })
        {
            if (trace is null) continue;
            for (int i = 1; i < trace.Instants.Length; i++)
            {
                Instant a = trace.Instants[i - 1], b = trace.Instants[i];
                double h = b.T - a.T;
                if (h < 1e-6) continue;
                // Trapezoid rule; third derivatives of the axes bound its error.
                double jerk = Math.Max(a.Jerk.Norm, b.Jerk.Norm) + 1000;
                Near(b.Q - a.Q, h / 2 * (a.Speed + b.Speed), h * h * h * jerk, b);
                Near(b.Speed - a.Speed, h / 2 * (a.Acceleration + b.Acceleration), h * h * jerk, b);
                Near(b.State.P - a.State.P, h / 2 * (a.State.V + b.State.V), h * h * h * jerk, b);
                Near(b.State.V - a.State.V, h / 2 * (a.State.A + b.State.A), h * h * jerk, b);
            }
        }
    }

    [Fact]
    public void On_a_belt_every_law_begins_and_ends_with_its_velocity()
    {
        var result = CycleTiming.Solve(MotionCells.Input(MotionCells.Rail, "belt-to-tray"));
        var belt = result.Input.Plan.Pick.Velocity_C;
        Assert.Equal(0.1, belt.Norm, 1e-12);
        Assert.Equal(0.1 * (0.08 + 0.02), (result.Input.Plan.Pick.End_C - result.Input.Plan.Pick.Begin_C).Norm, 1e-12);
        foreach (var law in result.Laws)
        {
            // The base is not turned against the cell here.
            Assert.True((law.Loaded.Trace!.Instants[0].State.V - belt).Norm < 1e-9, $"{law.Law}");
            Assert.True((law.Empty.Trace!.Instants[^1].State.V - belt).Norm < 1e-6, $"{law.Law}");
            Assert.True(law.Loaded.Trace!.Instants[^1].State.V.Norm < 1e-6, $"{law.Law}");
        }
        var trace = CycleTrace.Of(result, TimingLaw.Controller)!;
        var first = result.Input.Plan.Pick.Begin_C;
        Assert.True((trace.Tool_C[0] - first).Norm < 1e-9);
        Assert.True((trace.Tool_C[^1] - first).Norm < 1e-9);
        Assert.Equal(0.1, trace.ToolSpeed[1], 1e-9);
        // In the window from the approach to the end of the wait.
        var window = MotionCells.Rail.Stations["belt"];
        Assert.InRange(first.X - window.X!.Value, 0, window.Window!.Value - 0.1 * 0.1);
    }

    [Theory, MemberData(nameof(Cells))]
    public void A_whole_cycle_is_told_without_a_break(string which)
    {
        var result = CycleTiming.Solve(Input(which));
        foreach (var law in result.Laws)
        {
            var trace = CycleTrace.Of(result, law.Law)!;
            Assert.Equal(law.CycleTime, trace.Duration, 1e-9);
            Assert.Equal(4, trace.Begins.Length);
            for (int i = 1; i < trace.Times.Length; i++)
            {
                Assert.True(trace.Times[i] >= trace.Times[i - 1]);
                Assert.True((trace.Tool_C[i] - trace.Tool_C[i - 1]).Norm <= 1e-9 + 5 * (trace.Times[i] - trace.Times[i - 1]), $"{law.Law} jumps at {trace.Times[i]}");
            }
            // Loaded force and rotor together are the whole (rotor: no more than its inertia times acceleration).
            for (int a = 0; a < trace.Series.Axes.Length; a++)
            {
                var axis = trace.Series.Axes[a];
                Assert.Equal(trace.Force[a][^1], axis.Force[^1] + result.Input.Reflected[a] * axis.Acceleration[^1], 1e-9);
                Assert.True(axis.LoadInertia > 0, $"{axis.Axis} {axis.LoadInertia}");
            }
            Assert.NotNull(trace.Reaction);
        }
    }

    [Fact]
    public void Moved_by_axes_the_tool_leaves_the_planned_corners_by_what_is_told()
    {
        var input = MotionCells.Input(MotionCells.Planar.With(s => s with { Along = ProfileAlong.Axes }), "across");
        var move = AxesLaw.Run(input.Plan.Loaded, input.Settings, input.Axes);
        double worst = move.Trace!.Instants.Max(i =>
            Enumerable.Range(0, 2001).Min(k => (input.Plan.Loaded.ToolOf(i.State.P, 0) - input.Plan.Loaded.Path.At(input.Plan.Loaded.Length * k / 2000).P).Norm));
        Assert.True(worst > 0.001);
        Assert.Equal(worst, move.Leaves, 1e-4);
        var ends = move.Trace.Instants;
        Assert.True((ends[^1].State.P - input.Plan.Loaded.At(input.Plan.Loaded.Length).Platform.P).Norm < 1e-9);
        Assert.Equal(0, ends[^1].Speed.Norm, 1e-9);
    }

    [Fact]
    public void A_path_out_of_reach_has_no_timing_and_says_so()
    {
        var cell = MotionCells.Planar;
        cell = cell with { Stations = cell.Stations.SetItem("right", cell.Stations["right"] with { X = 0.9 }) };
        var result = CycleTiming.Solve(MotionCells.Input(cell, "across"));
        Assert.All(result.Laws, l => Assert.Equal(MotionReasons.PathNotReached, l.Why));
        Assert.Null(CycleTrace.Of(result, TimingLaw.Bound));
    }

    private static CycleInput Input(string which)
    {
        string[] parts = which.Split(' ');
        return MotionCells.Input(parts[0] switch { "rail" => MotionCells.Rail, "crank" => MotionCells.Crank, _ => MotionCells.Planar }, parts[1]);
    }

    private static void Near(Vec3 expected, Vec3 actual, double tolerance, Instant at) =>
        Assert.True((expected - actual).Norm <= tolerance + 1e-9, $"{expected} is not {actual} at {at.T}");
}

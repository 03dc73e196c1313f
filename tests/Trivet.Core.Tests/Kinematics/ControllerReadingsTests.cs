using CsCheck;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Xunit;

namespace Trivet.Core.Tests.Kinematics;

/// <summary>Common practice, no source: controllers differ in the sense of z, of an axis, in its zero and in the turn of x.</summary>
public sealed class ControllerReadingsTests
{
    private static readonly DeltaRobot Rail = new(
        RobotFamily.RailDelta,
        [.. Enumerable.Range(0, 3).Select(i => new Chain(RobotFamily.RailDelta, Vec3.Zero, -Vec3.UnitZ, Vec3.Zero, 1, Vec3.Zero, 0.5, 0, 0, 0.6, Vec3.UnitY))],
        ["a", "b", "c"]);

    private static ControllerMapping Mapping(double yaw, double zero, bool down) => new()
    {
        FrameYaw = yaw,
        ZeroHeight = zero,
        ZDown = down,
        Axes = Keyed.Empty<AxisMapping>().Add("x2", new() { Name = "Two", Drives = "b", Reversed = true, ZeroAt = 0.25, PerUnit = 0.0254 }),
    };

    [Fact]
    public void A_reversed_axis_with_its_own_zero_and_unit_is_shown_as_stated()
    {
        var readings = ControllerReadings.Of(Mapping(0, 0, false), Rail, new Reading());
        Assert.Equal("Two", readings.Axes[1].Name);
        // One inch above the zero, counted against the drive.
        Assert.Equal(-1, readings.Axes[1].Shown(0.25 + 0.0254), 1e-12);
        Assert.Equal("a", readings.Axes[0].Name);
        Assert.Equal(125, readings.Axes[0].Shown(0.125), 1e-12);
    }

    [Fact]
    public void A_frame_turned_a_quarter_with_z_down_shows_the_place_turned_and_the_depth_positive()
    {
        var readings = ControllerReadings.Of(Mapping(Math.PI / 2, -0.6, true), Rail, new Reading());
        var shown = readings.Shown(new(0.1, 0.2, -0.75));
        Assert.Equal(0.2, shown.X, 1e-15);
        Assert.Equal(-0.1, shown.Y, 1e-15);
        Assert.Equal(0.15, shown.Z, 1e-15);
    }

    [Fact]
    public void Places_and_readings_go_there_and_back() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-1, 1], Gen.Bool, Gen.Double[-1, 1], Gen.Double[-1, 1]).Sample((yaw, zero, down, x, z) =>
        {
            var readings = ControllerReadings.Of(Mapping(yaw, zero, down), Rail, new Reading());
            var p = new Vec3(x, z, x - z);
            Assert.True((readings.Place(readings.Shown(p)) - p).Norm < 1e-14);
            foreach (var axis in readings.Axes) Assert.Equal(x, axis.Reading(axis.Shown(x)), 1e-14);
        });

    [Fact]
    public void A_unit_of_zero_shows_nothing()
    {
        var mapping = new ControllerMapping { Axes = Keyed.Empty<AxisMapping>().Add("one", new() { Drives = "a", PerUnit = 0 }) };
        Assert.True(double.IsNaN(ControllerReadings.Of(mapping, Rail, new Reading()).Axes[0].Shown(0.1)));
    }

    [Fact]
    public void What_was_read_is_declared()
    {
        var reading = new Reading();
        ControllerReadings.Of(Mapping(0, 0, false), Rail, reading);
        Assert.Contains("/controller/frameYaw", reading.Inputs);
        Assert.Contains("/controller/axes/x2/reversed", reading.Inputs);
        Assert.True(reading.Complete);
    }
}

using Trivet.Cells;
using Trivet.Drives;
using Trivet.Findings;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Drives;

public sealed class DriveInputsTests
{
    private static readonly Cell Rail = DrivenCells.Rail;

    private static Drive Read(Cell cell, string axis) => DriveInputs.Read(cell, axis, new()).Drive!;

    private static (string Pointer, string Reason) Problem(Cell cell, string axis = "a")
    {
        var read = DriveInputs.Read(cell, axis, new());
        Assert.Null(read.Drive);
        var problem = Assert.Single(read.Problems);
        return (problem.Pointer, problem.Reason.Id);
    }

    [Fact]
    public void A_belt_a_screw_and_a_gear_turn_the_motor_as_they_should()
    {
        Assert.Equal(Math.Tau / 0.04, Read(Rail, "a").Gearing, 1e-10);
        Assert.Equal(3 * Math.Tau / 0.04, Read(Rail.WithCommon(d => d with { Ratio = 3 }), "a").Gearing, 1e-10);
        Assert.Equal(2 * Math.Tau / 0.01, Read(Rail.WithCommon(d => d with { Transmission = TransmissionKind.Screw, Ratio = 2, Lead = 0.01 }), "a").Gearing, 1e-10);
        Assert.Equal(1, Read(Rail, "rotary").Gearing);
        var crank = Rail with { Robot = ReachCells.Crank.Robot };
        Assert.Equal(8, Read(crank.WithCommon(d => d with { Transmission = TransmissionKind.Gear, Ratio = 8 }), "a").Gearing);
        // The belt of a turning axis runs on a pulley of the axis: its radius does not change the angle.
        Assert.Equal(8, Read(crank.WithCommon(d => d with { Ratio = 8 }), "a").Gearing);
    }

    [Fact]
    public void Reflected_inertia_is_that_of_rotor_and_transmission_by_the_square_of_the_gearing()
    {
        var reading = new Reading();
        Assert.Equal(4e-5 * Math.Pow(Math.Tau / 0.04, 2), DriveInputs.ReflectedInertia(Rail, "a", reading), 1e-12);
        Assert.Equal(Read(Rail, "a").ReflectedInertia, DriveInputs.ReflectedInertia(Rail, "a", new()), 1e-12);
        Assert.DoesNotContain(reading.Inputs, i => i.Contains("curve", StringComparison.Ordinal));
        Assert.Contains("/drives/motors/rail/rotorInertia", reading.Inputs);
    }

    [Fact]
    public void An_axis_overrides_what_all_chains_share_and_the_rotary_axis_takes_nothing_of_it()
    {
        var own = Rail with { Drives = Rail.Drives with { Axes = Rail.Drives.Axes.Add("b", new() { Ratio = 2, LargestSpeed = 1 }) } };
        Assert.Equal(2 * Read(own, "a").Gearing, Read(own, "b").Gearing, 1e-10);
        Assert.Equal(new(1, 20, 800), DriveInputs.Limits(own, "b", new()));
        Assert.Equal(new(2, 20, 800), DriveInputs.Limits(own, "a", new()));
        Assert.Equal(double.PositiveInfinity, DriveInputs.Limits(own, "rotary", new()).Speed);
        Assert.Equal(1, Read(own, "rotary").Efficiency);
    }

    [Fact]
    public void Axes_are_the_chains_in_their_order_and_what_is_fitted() =>
        Assert.Equal(["a", "b", "c", "rotary"], DriveInputs.Axes(Rail.Robot, new()));

    [Fact]
    public void What_is_missing_is_asked_for_where_people_will_state_it()
    {
        var reading = new Reading();
        Assert.Null(DriveInputs.Read(ReachCells.Rail, "a", reading).Drive);
        Assert.Equal(["/drives/common/motor", "/drives/common/pulleyRadius", "/drives/common/transmission"], reading.MissingFields);

        reading = new();
        var some = Rail.WithCommon(d => d with { PulleyRadius = null });
        some = some with { Drives = some.Drives with { Axes = some.Drives.Axes.Add("a", new() { PulleyRadius = 0.01 }) } };
        Assert.Null(DriveInputs.Read(some, "b", reading).Drive);
        Assert.Equal(["/drives/axes/b/pulleyRadius"], reading.MissingFields);

        reading = new();
        Assert.Null(DriveInputs.Read(Rail.WithMotor("rail", m => m with { Curve = Keyed.Empty<TorquePoint>() }), "a", reading).Drive);
        Assert.Equal(["/drives/motors/rail/curve"], reading.MissingFields);
    }

    [Fact]
    public void A_motor_that_is_not_there_is_answered_with_those_that_are()
    {
        var read = DriveInputs.Read(Rail.WithCommon(d => d with { Motor = "rial" }), "a", new());
        Assert.Null(read.Drive);
        Assert.Equal(
            new Contradiction("/drives/common/motor", DriveReasons.NoSuchMotor.Naming("/drives/motors/rail", "/drives/motors/turn")).Reason.Fields,
            Assert.Single(read.Problems).Reason.Fields);
    }

    [Fact]
    public void What_can_not_be_is_told_where_it_stands()
    {
        Assert.Equal(("/drives/common/efficiency", "drive.efficiency-above-one"), Problem(Rail.WithCommon(d => d with { Efficiency = 1.05 })));
        Assert.Equal(("/drives/common/efficiency", "drive.not-positive"), Problem(Rail.WithCommon(d => d with { Efficiency = 0 })));
        Assert.Equal(("/drives/common/ratio", "drive.not-positive"), Problem(Rail.WithCommon(d => d with { Ratio = 0 })));
        Assert.Equal(("/drives/common/transmission", "drive.gear-is-straight"), Problem(Rail.WithCommon(d => d with { Transmission = TransmissionKind.Gear })));
        Assert.Equal(("/drives/axes/rotary/transmission", "drive.screw-turns"), Problem(
            Rail with { Drives = Rail.Drives with { Axes = Rail.Drives.Axes.SetItem("rotary", Rail.Drives.Axes["rotary"] with { Transmission = TransmissionKind.Screw }) } }, "rotary"));
        Assert.Equal(("/drives/common/inertia", "drive.negative"), Problem(Rail.WithCommon(d => d with { Inertia = -1e-6 })));
        Assert.Equal(("/drives/motors/rail/curve/p1/torque", "drive.curve-rises"), Problem(Rail.WithMotor("rail", m => m with { Curve = DrivenCells.Curve((0, 2), (100, 2.1)) })));
        Assert.Equal(("/drives/motors/rail/curve/p1/speed", "drive.same-curve-speed"), Problem(Rail.WithMotor("rail", m => m with { Curve = DrivenCells.Curve((0, 2), (0, 1)) })));
        Assert.Equal(("/drives/motors/rail/curve", "drive.one-curve-point"), Problem(Rail.WithMotor("rail", m => m with { Curve = DrivenCells.Curve((0, 2)) })));
        Assert.Equal(("/drives/motors/rail/curveVoltage", "drive.not-positive"), Problem(Rail.WithMotor("rail", m => m with { CurveVoltage = 0 })));
        Assert.True(double.IsNaN(DriveInputs.ReflectedInertia(Rail.WithCommon(d => d with { Ratio = -1 }), "a", new())));
    }
}

using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Kinematics;

public class RobotInputsTests
{
    private static readonly Robot Rail = Robots.RailDescription(0.3, 0.05, 0.5, azimuths: Robots.EvenAzimuths);

    private static (RobotRead Read, Reading Reading) Read(Robot robot)
    {
        var reading = new Reading();
        return (RobotInputs.Geometry(robot, reading), reading);
    }

    private static Robot With(Robot robot, string chain, Func<ChainDescription, ChainDescription> change) =>
        robot with { Chains = robot.Chains.SetItem(chain, change(robot.Chains[chain])) };

    [Fact]
    public void A_field_of_a_chain_wins_over_the_common_one_and_both_count_as_used()
    {
        var (read, reading) = Read(With(Rail, "b", c => c with { Rod = 0.501 }));
        Assert.Equal([0.5, 0.501, 0.5], read.Robot!.Chains.Select(c => c.Rod));
        Assert.Contains("/robot/chains/b/rod", reading.Inputs);
        Assert.Contains("/robot/common/rod", reading.Inputs);
        Assert.Contains("/robot/chains/a/rod", reading.Inputs);
    }

    [Fact]
    public void A_field_that_no_chain_states_is_missing_once()
    {
        var (read, reading) = Read(Rail with { Common = Rail.Common with { Rod = null } });
        Assert.Null(read.Robot);
        Assert.Equal(["/robot/common/rod"], reading.MissingFields);
    }

    [Fact]
    public void A_field_that_only_other_chains_state_is_missing_at_the_chain()
    {
        var (_, reading) = Read(With(Rail with { Common = Rail.Common with { Rod = null } }, "a", c => c with { Rod = 0.5 }));
        Assert.Equal(["/robot/chains/b/rod", "/robot/chains/c/rod"], reading.MissingFields);
    }

    [Fact]
    public void An_empty_robot_lists_family_and_chains()
    {
        var (read, reading) = Read(new Robot());
        Assert.Null(read.Robot);
        Assert.Equal(["/robot/chains", "/robot/family"], reading.MissingFields);
    }

    [Fact]
    public void Chains_come_in_their_stated_order_and_ids_are_escaped_in_pointers()
    {
        var robot = Rail with { Chains = Rail.Chains.Remove("a").Add("z/1", new() { Order = 0, Azimuth = 0 }) };
        var (read, reading) = Read(robot);
        Assert.Equal(["z/1", "b", "c"], read.Robot!.ChainIds);
        Assert.Contains("/robot/chains/z~11/azimuth", reading.Inputs);
    }

    [Fact]
    public void A_crank_needs_an_upper_arm_and_a_rail_does_not()
    {
        var (_, reading) = Read(Rail with { Family = RobotFamily.CrankDelta });
        Assert.Equal(["/robot/common/upperArm"], reading.MissingFields);
        Assert.DoesNotContain("/robot/common/upperArm", Read(Rail).Reading.Inputs);
    }

    [Fact]
    public void Rail_direction_leans_inward_with_inclination_and_sideways_with_side_lean()
    {
        var robot = With(Rail, "b", c => c with { Inclination = Robots.Degrees(20), SideLean = Robots.Degrees(5), BaseSideOffset = 0.01 });
        var chain = Read(robot).Read.Robot!.Chains[1];
        Vec3 r = new(Math.Cos(Robots.Degrees(120)), Math.Sin(Robots.Degrees(120)), 0), t = new(-r.Y, r.X, 0);
        Assert.Equal(-Math.Cos(Robots.Degrees(5)) * Math.Sin(Robots.Degrees(20)), chain.E.Dot(r), 15);
        Assert.Equal(Math.Sin(Robots.Degrees(5)), chain.E.Dot(t), 15);
        Assert.Equal(1, chain.E.Norm, 15);
        Assert.True(chain.E.Z < 0);
        Assert.Equal(0.01, chain.Foot.Dot(t), 15);
        Assert.Equal(0.3, chain.Foot.Dot(r), 15);
    }

    [Fact]
    public void Side_lean_of_a_crank_turns_arm_and_bar_about_the_vertical()
    {
        var robot = With(Robots.CrankDescription(0.2, 0.05, 0.3, 0.7, Robots.EvenAzimuths), "a", c => c with { SideLean = Robots.Degrees(10) });
        var chain = Read(robot).Read.Robot!.Chains[0];
        Assert.Equal(Math.Sin(Robots.Degrees(10)), chain.E.Y, 15);
        Assert.Equal(-Vec3.UnitZ, chain.F);
        Assert.Equal(0, chain.Side.Dot(chain.E), 15);
        Assert.True(chain.Side.Y > 0);
    }

    public static TheoryData<string, string, Func<Robot, Robot>> Wrong => new()
    {
        { "/robot/chains", "one chain", r => r with { Chains = r.Chains.Remove("a").Remove("b") } },
        { "/robot/chains", "four chains", r => r with { Chains = r.Chains.Add("d", new() { Azimuth = 1 }) } },
        { "/robot/chains/b/azimuth", "equal azimuths, a turn apart", r => With(r, "b", c => c with { Azimuth = Math.Tau }) },
        { "/robot/chains/c/travelTo", "travel that ends before it begins", r => With(r, "c", c => c with { TravelTo = -2 }) },
        { "/robot/common/rod", "rods too short for the middle", r => r with { Common = r.Common with { Rod = 0.24 } } },
        { "/robot/common/rod", "no rod at all", r => r with { Common = r.Common with { Rod = 0 } } },
        { "/robot/common/baseRadius", "a radius not a number", r => r with { Common = r.Common with { BaseRadius = double.NaN } } },
        { "/robot/common/platformRadius", "a negative radius", r => r with { Common = r.Common with { PlatformRadius = -0.05 } } },
        { "/robot/common/inclination", "a level rail", r => r with { Common = r.Common with { Inclination = Math.PI / 2 } } },
        { "/robot/numberedCounterClockwise", "the other numbering sense", r => r with { NumberedCounterClockwise = false } },
        { "/robot/chains/b/azimuth", "two chains, not in a plane", r => r with { Chains = r.Chains.Remove("c") } },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void What_can_not_be_is_a_problem_with_its_place(string pointer, string what, Func<Robot, Robot> change)
    {
        var (read, reading) = Read(change(Rail));
        Assert.Null(read.Robot);
        Assert.True(read.Problems.Length == 1 && read.Problems[0].Pointer == pointer, $"{what}: {string.Join("; ", read.Problems)}");
        Assert.True(reading.Complete);
    }

    [Fact]
    public void A_planar_robot_has_its_chains_at_0_and_180_degrees()
    {
        var robot = Robots.Rail(0.3, 0.05, 0.5, azimuths: [0, 180]);
        Assert.True(robot.Planar);
        Assert.True(robot.InPlane(new(0.1, 0, -0.5)));
        Assert.False(robot.InPlane(new(0.1, 0.001, -0.5)));
        Assert.True(double.IsNaN(robot.Inverse(new(0.1, 0.001, -0.5)).X));
    }

    [Fact]
    public void Rods_joints_and_drive_steps_declare_only_their_own_fields()
    {
        var robot = Rail with { Common = Rail.Common with { RodSpacing = 0.08, RodDiameter = 0.01, Joint = JointKind.CrossBar, SwingLimit = 0.5, DriveStep = 1e-5 } };
        Reading rods = new(), joints = new(), steps = new();
        Assert.Equal(new RodPair(0.08, 0.01), RobotInputs.Rods(robot, rods)[2]);
        Assert.Equal(new BallJoint(JointKind.CrossBar, 0.5, 0), RobotInputs.Joints(robot, joints)[0]);
        Assert.Equal([1e-5, 1e-5, 1e-5], RobotInputs.DriveSteps(robot, steps));
        Assert.True(rods.Complete && joints.Complete && steps.Complete);
        Assert.DoesNotContain(rods.Inputs, p => p.EndsWith("/rod", StringComparison.Ordinal) || p.EndsWith("/swingLimit", StringComparison.Ordinal));
        Assert.DoesNotContain(joints.Inputs, p => p.EndsWith("/seatAngle", StringComparison.Ordinal));
    }

    [Fact]
    public void A_seat_needs_its_angle()
    {
        var reading = new Reading();
        RobotInputs.Joints(Rail with { Common = Rail.Common with { Joint = JointKind.Seat, SwingLimit = 0.5 } }, reading);
        Assert.Equal(["/robot/common/seatAngle"], reading.MissingFields);
    }
}

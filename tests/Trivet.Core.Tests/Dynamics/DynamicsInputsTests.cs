using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Dynamics;

public class DynamicsInputsTests
{
    private const double G = RobotDynamics.StandardGravity;

    private static readonly Cell Rail = Cell.Empty with
    {
        Robot = With(Robots.RailDescription(0.35, 0.05, 0.5), c => c with { CarriageMass = 0.9, RodMass = 0.06, RodSpacing = 0.07 }) with
        {
            PlatformMass = 0.3,
            PlatformCentreZ = -0.01,
        },
    };

    /// <summary>A rail delta with the tool, axis and parts of another test.</summary>
    internal static Cell RailWith(ToolStack tool, RotaryAxis rotary, Brief brief) => Rail with { Robot = Rail.Robot with { Rotary = rotary }, Tool = tool, Brief = brief };

    private static readonly Cell Full = Rail with
    {
        Robot = Rail.Robot with { Rotary = new() { Fitted = true, Inertia = 1e-4, Friction = 0.02 } },
        Tool = new()
        {
            TcpX = 0.02, TcpZ = -0.1,
            Parts = Keyed.Empty<ToolPart>().Add("cup", new() { Order = 2, Mass = 0.1, Height = 0.06 }).Add("plate", new() { Order = 1, Mass = 0.2, Height = 0.04 }),
        },
        Brief = new() { Parts = Keyed.Empty<Part>().Add("jar", new() { Mass = 0.4, Size = new() { Width = 0.06, Depth = 0.08, Height = 0.05 } }) },
    };

    private static Robot With(Robot robot, Func<ChainDescription, ChainDescription> common) => robot with { Common = common(robot.Common) };

    private static RobotDynamics Read(Cell cell, string? part = null)
    {
        var reading = new Reading();
        var read = DynamicsInputs.Read(cell, part, reading);
        return read.Dynamics ?? throw new InvalidOperationException($"{string.Join(", ", reading.MissingFields)} {string.Join(", ", read.Problems)}");
    }

    private static string[] Missing(Cell cell, string? part = null)
    {
        var reading = new Reading();
        Assert.Null(DynamicsInputs.Read(cell, part, reading).Dynamics);
        return [.. reading.MissingFields];
    }

    [Fact]
    public void A_rail_delta_needs_carriage_rods_and_platform() => Assert.Equal(
        ["/robot/common/carriageMass", "/robot/common/rodMass", "/robot/platformMass"],
        Missing(Cell.Empty with { Robot = Robots.RailDescription(0.35, 0.05, 0.5) }));

    [Fact]
    public void A_crank_delta_needs_its_arms_in_place_of_carriages() => Assert.Equal(
        ["/robot/common/armCentre", "/robot/common/armInertia", "/robot/common/armMass", "/robot/common/rodMass", "/robot/platformMass"],
        Missing(Cell.Empty with { Robot = Robots.CrankDescription(0.2, 0.05, 0.3, 0.7) }));

    [Fact]
    public void A_rotary_axis_tools_and_the_part_are_asked_for_where_there_are_any() => Assert.Equal(
        ["/brief/parts/jar/mass", "/robot/rotary/inertia", "/tool/parts/cup/mass", "/tool/tcpZ"],
        Missing(Rail with
        {
            Robot = Rail.Robot with { Rotary = new() { Fitted = true } },
            Tool = new() { Parts = Keyed.Empty<ToolPart>().Add("cup", new()) },
            Brief = new() { Parts = Keyed.Empty<Part>().Add("jar", new()) },
        }, "jar"));

    [Fact]
    public void Tools_hang_below_each_other_in_their_order()
    {
        var platform = Read(Full).Platform;
        Assert.Equal(0.6, platform.Mass, 1e-15);
        // 0.3 kg at −10 mm, the plate at −20 mm, the cup at −40 − 30 mm.
        Assert.Equal((0.3 * -0.01 + 0.2 * -0.02 + 0.1 * -0.07) / 0.6, platform.Centre.Z, 1e-15);
        Assert.Equal(new(0, Vec3.Zero, 1e-4, 0.02), platform.Turning);
    }

    [Fact]
    public void A_part_turns_with_the_rotary_axis_about_which_it_hangs_off_centre()
    {
        var turning = Read(Full, "jar").Platform.Turning;
        Assert.Equal(0.4, turning.Mass);
        Assert.Equal(0, (turning.Centre - new Vec3(0.02, 0, -0.125)).Norm, 1e-15);
        Assert.Equal(1e-4 + 0.4 * (0.02 * 0.02 + (0.06 * 0.06 + 0.08 * 0.08) / 12), turning.Inertia, 1e-15);
    }

    [Fact]
    public void Without_a_rotary_axis_the_part_is_one_with_the_platform()
    {
        var platform = Read(Full with { Robot = Full.Robot with { Rotary = new() } }, "jar").Platform;
        Assert.Equal(1.0, platform.Mass, 1e-15);
        Assert.Equal(default, platform.Turning);
        Assert.Equal(0.4 * 0.02, platform.Centre.X, 1e-15);
        Assert.Equal(-0.014 + 0.4 * -0.125, platform.Centre.Z, 1e-15);
    }

    [Fact]
    public void Gravity_follows_the_tilt_of_the_mount_and_not_its_turn()
    {
        var cell = Rail with { Mount = new() { Yaw = 1.1, TiltX = 0.2, TiltY = -0.3 } };
        var mount = Mat3.RotationZ(1.1) * Mat3.RotationY(-0.3) * Mat3.RotationX(0.2);
        Assert.Equal(0, (mount * Read(cell).Gravity_B + G * Vec3.UnitZ).Norm, 1e-14);
    }

    [Fact]
    public void A_chain_may_have_its_own_masses_and_its_drive_weighs_at_the_coordinate()
    {
        var cell = Rail with
        {
            Robot = Rail.Robot with { Chains = Rail.Robot.Chains.SetItem("b", Rail.Robot.Chains["b"] with { CarriageMass = 1.4, CoulombFriction = 5 }) },
            Drives = new()
            {
                Motors = Keyed.Empty<Motor>().Add("m", new() { RotorInertia = 2e-5 }),
                Common = new() { Motor = "m", Transmission = TransmissionKind.Belt, Ratio = 1, PulleyRadius = 0.01, Inertia = 1e-5 },
            },
        };
        var chains = Read(cell).Chains;
        Assert.Equal((0.9, 1.4, 0.9), (chains[0].Carriage, chains[1].Carriage, chains[2].Carriage));
        Assert.Equal((0, 5, 0), (chains[0].Coulomb, chains[1].Coulomb, chains[2].Coulomb));
        Assert.Equal(3e-5 / (0.01 * 0.01), chains[2].RotorInertia, 1e-12);
        Assert.Equal(0, Read(Rail).Chains[0].RotorInertia);
    }

    [Fact]
    public void What_can_not_be_is_named_with_its_reason()
    {
        var reading = new Reading();
        var negative = Rail with { Robot = With(Rail.Robot with { PlatformMass = -1 }, c => c with { RodMass = -0.1 }) };
        Assert.Equal(
            [new Contradiction("/robot/common/rodMass", DynamicsReasons.Negative), new("/robot/platformMass", DynamicsReasons.Negative)],
            DynamicsInputs.Read(negative, null, reading).Problems);

        var arm = Cell.Empty with
        {
            Robot = With(Robots.CrankDescription(0.2, 0.05, 0.3, 0.7), c => c with { ArmMass = 1, ArmCentre = 0.2, ArmInertia = 0.03, RodMass = 0.1 }) with { PlatformMass = 1 },
        };
        Assert.Equal([new Contradiction("/robot/common/armInertia", DynamicsReasons.ArmInertiaTooSmall)], DynamicsInputs.Read(arm, null, new()).Problems);
        Assert.Equal([new Contradiction("/brief/parts/x", DynamicsReasons.NoSuchPart)], DynamicsInputs.Read(Rail, "x", new()).Problems);
    }

    [Fact]
    public void A_drive_that_contradicts_itself_is_told_apart_from_none()
    {
        var cell = Rail with { Drives = new() { Common = new() { Motor = "none", Transmission = TransmissionKind.Belt, Ratio = 1, PulleyRadius = 0.01 } } };
        Assert.Equal(DynamicsReasons.DriveContradictsItself, DynamicsInputs.Read(cell, null, new()).Problems[0].Reason);
        Assert.NotNull(DynamicsInputs.AtRest(cell, new()).Dynamics);
    }

    [Fact]
    public void Without_a_spacing_the_drives_have_forces_and_single_rods_have_none()
    {
        var d = Read(Rail with { Robot = With(Rail.Robot, c => c with { RodSpacing = null }) });
        MotionState rest = new(new(0, 0, -0.6), Vec3.Zero, Vec3.Zero);
        Assert.True(d.Demand(rest).Force.IsFinite);
        Assert.True(double.IsNaN(Loads.Of(d, rest).One.Most));
        Assert.True(Loads.Of(d, rest).Force_B.IsFinite);
    }
}

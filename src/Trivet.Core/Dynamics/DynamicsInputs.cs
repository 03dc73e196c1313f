using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Tooling;

namespace Trivet.Dynamics;

/// <summary>What became of reading masses and friction. <see cref="Dynamics"/> is null while a field is missing (the reading lists it) or a
/// problem stands.</summary>
public sealed record DynamicsRead(RobotDynamics? Dynamics, ImmutableArray<Contradiction> Problems);

/// <summary>
/// Reads the computing form of dynamics, with one part in the gripper or with none.
/// <para>
/// The tool stack is that of <see cref="ToolInputs"/>. With a rotary axis the part in the gripper turns, and so do the tools below the one that is
/// called a rotary axis. What turns has the inertia that the robot states of its axis, the tools' included; where it states none, that of the tools.
/// </para>
/// <para>
/// Zero where not stated: friction, counterweight, height of the platform's centre of mass, heights and sizes. Not a number where not stated:
/// the spacing of rods, and so forces in single rods. Rotor and transmission of an axis count where its motor is named. Masses of
/// platform, carriages or arms, rods, tools and the part are needed, and the inertia of a rotary axis.
/// </para>
/// </summary>
public static class DynamicsInputs
{
    /// <param name="part">Id of the part in the gripper; null for none.</param>
    public static DynamicsRead Read(Cell cell, string? part, Reading reading) => Read(cell, part, reading, withRotors: true);

    /// <summary>As far as the forces at rest go: rotors and transmissions are left out, and the gripper is empty.</summary>
    public static DynamicsRead AtRest(Cell cell, Reading reading) => Read(cell, null, reading, withRotors: false);

    private static DynamicsRead Read(Cell cell, string? part, Reading reading, bool withRotors)
    {
        var problems = ImmutableArray.CreateBuilder<Contradiction>();
        var geometry = RobotInputs.Geometry(cell.Robot, reading);
        problems.AddRange(geometry.Problems);
        var family = cell.Robot.Family ?? RobotFamily.RailDelta;
        var chains = ImmutableArray.CreateRange(RobotInputs.Chains(cell.Robot, reading), c => Chain(family, c.Fields, withRotors ? Rotor(cell, c.Id, reading, problems) : 0, problems));
        var platform = Platform(cell, part, withRotors, reading, problems);
        var gravity = Gravity(cell.Mount, reading);
        return !reading.Complete || problems.Count > 0 || geometry.Robot is null
            ? new(null, problems.ToImmutable())
            : new(new(geometry.Robot, chains, platform, gravity), []);
    }

    /// <summary>Acceleration of free fall in the base frame, m/s²: only the mount's tilt matters, not its turn.</summary>
    public static Vec3 Gravity(Mount mount, Reading reading)
    {
        var tilt = Mat3.RotationY(reading.Or(mount.TiltY, "/mount/tiltY", 0)) * Mat3.RotationX(reading.Or(mount.TiltX, "/mount/tiltX", 0));
        return -RobotDynamics.StandardGravity * tilt.Row2;
    }

    private static ChainBodies Chain(
        RobotFamily family, ChainReading f, double rotor, ImmutableArray<Contradiction>.Builder problems)
    {
        bool rail = family == RobotFamily.RailDelta;
        double arm = rail ? 0 : Mass("armMass", d => d.ArmMass), centre = rail ? 0 : f.Need("armCentre", d => d.ArmCentre);
        double inertia = rail ? 0 : Mass("armInertia", d => d.ArmInertia);
        if (inertia >= 0 && inertia < arm * centre * centre) Wrong("armInertia", d => d.ArmInertia, DynamicsReasons.ArmInertiaTooSmall);
        return new(
            rail ? Mass("carriageMass", d => d.CarriageMass) : 0, rail ? Zero("counterweight", d => d.Counterweight) : 0, arm, centre, inertia,
            Mass("rodMass", d => d.RodMass), f.Or("rodSpacing", d => d.RodSpacing, double.NaN), rotor,
            Zero("viscousFriction", d => d.ViscousFriction), Zero("coulombFriction", d => d.CoulombFriction));

        double Mass(string name, Func<ChainDescription, double?> field) => NotNegative(f.Need(name, field), name, field);

        double Zero(string name, Func<ChainDescription, double?> field) => NotNegative(f.Or(name, field, 0), name, field);

        double NotNegative(double value, string name, Func<ChainDescription, double?> field)
        {
            if (value < 0) Wrong(name, field, DynamicsReasons.Negative);
            return value;
        }

        void Wrong(string name, Func<ChainDescription, double?> field, Reason reason)
        {
            var wrong = new Contradiction(f.PointerOf(name, field), reason);
            if (!problems.Contains(wrong)) problems.Add(wrong);
        }
    }

    /// <summary>Inertia of rotor and transmission at the drive coordinate; zero while no motor is named for the axis.</summary>
    private static double Rotor(Cell cell, string axis, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        string own = $"/drives/axes/{axis}/motor";
        const string common = "/drives/common/motor";
        string? motor = cell.Drives.Axes.GetValueOrDefault(axis)?.Motor;
        reading.Used(own, motor);
        if (axis != "rotary")
        {
            reading.Used(common, cell.Drives.Common.Motor);
            motor ??= cell.Drives.Common.Motor;
        }
        if (motor is null) return 0;
        double inertia = DriveInputs.ReflectedInertia(cell, axis, reading);
        if (double.IsNaN(inertia) && reading.Complete) problems.Add(new(own, DynamicsReasons.DriveContradictsItself));
        return inertia;
    }

    private static PlatformBodies Platform(
        Cell cell, string? part, bool withRotor, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        double bare = Mass(cell.Robot.PlatformMass, "/robot/platformMass");
        var platform = MassProperties.Point(bare, reading.Or(cell.Robot.PlatformCentreZ, "/robot/platformCentreZ", 0) * Vec3.UnitZ);
        var stack = ToolInputs.Read(cell, reading);
        problems.AddRange(stack.Problems);
        var still = platform + stack.Sum(e => !e.Turns);
        var (mass, centre) = (still.Mass, still.Centre);

        bool turns = reading.Or(cell.Robot.Rotary.Fitted, "/robot/rotary/fitted", false);
        TurningBody turning = default;
        if (turns)
        {
            var hung = stack.Sum(e => e.Turns);
            turning = new(hung.Mass, hung.Centre, TurningInertia(hung) + (withRotor ? Rotor(cell, "rotary", reading, problems) : 0),
                Zero(cell.Robot.Rotary.Friction, "/robot/rotary/friction"));
        }
        if (part is null) return new(mass, centre, turning);

        string pointer = $"/brief/parts/{part}";
        if (!cell.Brief.Parts.TryGetValue(part, out var carried))
        {
            reading.Used("/brief/parts", string.Join('\n', cell.Brief.Parts.Keys));
            problems.Add(new(pointer, DynamicsReasons.NoSuchPart));
            return default;
        }

        Mass(carried.Mass, pointer + "/mass");
        Zero(carried.Size.Width, pointer + "/size/width");
        Zero(carried.Size.Depth, pointer + "/size/depth");
        Zero(carried.Size.Height, pointer + "/size/height");
        var held = ToolInputs.Carried(cell, part, reading)!.Value;
        if (turns)
        {
            var both = MassProperties.Point(turning.Mass, turning.Centre) + held;
            return new(mass, centre, turning with { Mass = both.Mass, Centre = both.Centre, Inertia = turning.Inertia + held.About(Vec3.Zero).Row2.Z });
        }
        var all = still + held;
        return new(all.Mass, all.Centre);

        // What the robot states of the axis counts; where it states nothing, what hangs on it does.
        double TurningInertia(MassProperties hung)
        {
            if (cell.Robot.Rotary.Inertia is null && hung.InertiaKnown && hung.Mass > 0) return reading.Or(cell.Robot.Rotary.Inertia, "/robot/rotary/inertia", hung.About(Vec3.Zero).Row2.Z);
            return Mass(cell.Robot.Rotary.Inertia, "/robot/rotary/inertia");
        }

        double Mass(double? value, string at) => NotNegative(reading.Need(value, at), at);

        double Zero(double? value, string at) => NotNegative(reading.Or(value, at, 0), at);

        double NotNegative(double value, string at)
        {
            if (value < 0) problems.Add(new(at, DynamicsReasons.Negative));
            return value;
        }
    }
}

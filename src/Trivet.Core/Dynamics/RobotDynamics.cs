using System.Collections.Immutable;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Dynamics;

/// <summary>What a motion asks of the drives at one instant. In the order of the chains; with two chains the third component is zero.</summary>
/// <param name="Speed">q̇, m/s or rad/s.</param>
/// <param name="Acceleration">q̈, m/s² or rad/s².</param>
/// <param name="Force">Force or torque of each drive at its coordinate, N or N·m, positive where it pushes towards growing q.</param>
/// <param name="RotaryTorque">Torque of the rotary axis' drive, N·m, positive counter-clockwise seen from above.</param>
public readonly record struct DriveDemand(Vec3 Speed, Vec3 Acceleration, Vec3 Force, double RotaryTorque);

/// <summary>
/// The equation of motion at one state in the platform's coordinates: <c>(∂q/∂p)ᵀ·(forces − friction) = Mass·a + Coriolis + Weight</c>.
/// With two chains y counts for nothing: its row and column of the mass are those of a unit mass, and its forces are zero.
/// </summary>
/// <param name="Mass">Mass matrix, kg; symmetric and positive definite.</param>
/// <param name="Coriolis">Forces of velocity, quadratic in it, N.</param>
/// <param name="Weight">What holds everything up at rest, N.</param>
public readonly record struct EquationOfMotion(Mat3 Mass, Vec3 Coriolis, Vec3 Weight);

/// <summary>
/// Rigid-body dynamics of a delta robot in its working mode, exact for the bodies described: each chain's carriage or arm, its two rods
/// as uniform slender bodies, the platform with what it carries, a rotary axis with eccentric mass, and rotors by what they add at
/// the drive coordinate. Elasticity, play and the rods' turning about their own axes are left out.
/// <para>
/// Virtual work. The platform's virtual displacement δp moves drive i by δq_i = rod_i·δp/(rod_i·C_i′), so the forces F on the platform and
/// Q_i on each drive coordinate are met by drive forces τ_i = (rod_i·C_i′)·λ_i + Q_i with Σ λ_i·rod_i = F: λ_i is the push per length
/// that the pair of rods must bring. Positive forces push towards growing q: down a rail, or an arm downward.
/// </para>
/// <para>
/// Without friction the forces are affine in the acceleration and quadratic in the velocity (the rotary axis' taken along): along a path
/// p(s) they are A·s̈ + B·ṡ² + W with A, B, W functions of s alone. <see cref="WithoutFriction"/> has that property.
/// </para>
/// A linear axis that carries the robot is met by <see cref="Gravity_B"/> less the base's acceleration. Everything is not a number where a
/// rod does not reach, or off a planar robot's plane. With two chains, forces across the plane are not the drives' matter and vanish here.
/// </summary>
public sealed class RobotDynamics
{
    /// <summary>Standard acceleration of free fall, m/s² (3rd CGPM 1901, from memory; exact by definition).</summary>
    public const double StandardGravity = 9.80665;

    private readonly Chain[] _chains;
    private readonly ChainBodies[] _bodies;
    private readonly double[] _weight;

    public RobotDynamics(
        DeltaRobot robot, ImmutableArray<ChainBodies> chains, PlatformBodies platform, Vec3 gravity_B, RodShares? rods = null)
    {
        if (chains.Length != robot.Chains.Length)
            throw new ArgumentException($"The robot has {robot.Chains.Length} chains, but {chains.Length} are given masses.", nameof(chains));
        (Robot, Chains, Platform, Gravity_B, Rods) = (robot, chains, platform, gravity_B, rods ?? RodShares.Consistent);
        _chains = [.. robot.Chains];
        _bodies = [.. chains];
        _weight = new double[_chains.Length];
        for (int i = 0; i < _weight.Length; i++) _weight[i] = _bodies[i].WeightAtJoint(_chains[i]);
    }

    public DeltaRobot Robot { get; }
    public ImmutableArray<ChainBodies> Chains { get; }
    public PlatformBodies Platform { get; }
    /// <summary>Acceleration of free fall in the base frame, m/s²: downward, whatever way the mount tilts the base.</summary>
    public Vec3 Gravity_B { get; }
    /// <summary>How the rods' mass is shared between their ends: exact unless asked otherwise.</summary>
    public RodShares Rods { get; }

    /// <summary>Everything that moves as fast as the platform, kg.</summary>
    public double PlatformMass => Platform.Mass + Platform.Turning.Mass;

    /// <summary>The same robot with another split of the rods' mass.</summary>
    public RobotDynamics With(RodShares rods) => new(Robot, Chains, Platform, Gravity_B, rods);

    /// <summary>The same robot with something else on its platform.</summary>
    public RobotDynamics With(PlatformBodies platform) => new(Robot, Chains, platform, Gravity_B, Rods);

    /// <summary>The same robot without any friction in its drives and its rotary axis.</summary>
    public RobotDynamics WithoutFriction() => new(
        Robot, [.. Chains.Select(c => c with { Viscous = 0, Coulomb = 0 })],
        Platform with { Turning = Platform.Turning with { Friction = 0 } }, Gravity_B, Rods);

    /// <summary>Forces of the drives for a motion of the platform, the rotary axis at rest at angle zero: N or N·m, friction included.</summary>
    public Vec3 Inverse(Vec3 p, Vec3 v, Vec3 a)
    {
        if (!Robot.InPlane(p)) return Vec3.NaN;
        var platform = PlatformMass * (a - Gravity_B);
        return Robot.Planar
            ? InPlane(Move(0, p, v, a, ref platform), Move(1, p, v, a, ref platform), platform)
            : InSpace(Move(0, p, v, a, ref platform), Move(1, p, v, a, ref platform), Move(2, p, v, a, ref platform), platform);
    }

    /// <summary>Speeds, accelerations and forces of the drives and the torque of the rotary axis at one instant of a motion.</summary>
    public DriveDemand Demand(in MotionState state)
    {
        var (p, v, a, turn) = state;
        if (!Robot.InPlane(p)) return new(Vec3.NaN, Vec3.NaN, Vec3.NaN, double.NaN);
        var turning = Platform.Turning;
        var centre = turning.At(turn.Angle);
        var centreAcceleration = a + CentreAcceleration(centre, turn);
        var platform = Platform.Mass * (a - Gravity_B) + turning.Mass * (centreAcceleration - Gravity_B);
        // The centre's own acceleration about the axis is in the inertia; what is left is the platform's and gravity.
        double torque = turning.Inertia * turn.Acceleration + turning.Mass * centre.Cross(a - Gravity_B).Z
            + turning.FrictionAt(turn.Speed);

        Drive one = Move(0, p, v, a, ref platform), two = Move(1, p, v, a, ref platform);
        if (Robot.Planar)
            return new(new(one.Speed, two.Speed, 0), new(one.Acceleration, two.Acceleration, 0), InPlane(one, two, platform), torque);
        var three = Move(2, p, v, a, ref platform);
        return new(
            new(one.Speed, two.Speed, three.Speed), new(one.Acceleration, two.Acceleration, three.Acceleration),
            InSpace(one, two, three, platform), torque);
    }

    /// <summary>Mass matrix, forces of velocity and weight at a state, the rotary axis moving as given.</summary>
    public EquationOfMotion Equation(Vec3 p, Vec3 v, Turn turn = default)
    {
        var turning = Platform.Turning;
        var mass = PlatformMass * Mat3.Identity;
        Vec3 coriolis = turning.Mass * CentreAcceleration(turning.At(turn.Angle), turn), weight = -PlatformMass * Gravity_B;
        if (!Robot.InPlane(p)) return new(new(Vec3.NaN, Vec3.NaN, Vec3.NaN), Vec3.NaN, Vec3.NaN);
        for (int i = 0; i < _chains.Length; i++)
        {
            ref readonly var body = ref _bodies[i];
            var m = ChainMotion.Of(_chains[i], p, v);
            Vec3 rate = m.Rod / m.Along, excess = m.JointAcceleration(m.Excess);
            double pair = body.Pair;
            double alone = body.Inertia + pair * Rods.Joint * m.Path.NormSquared;
            mass += pair * Rods.Platform * Mat3.Identity + pair * Rods.Coupling * (Outer(m.Path, rate) + Outer(rate, m.Path)) + alone * Outer(rate, rate);
            coriolis += pair * Rods.Coupling * excess + (body.Inertia * m.Excess + pair * Rods.Joint * m.Path.Dot(excess)) * rate;
            weight -= pair * Rods.PlatformWeight * Gravity_B + (_weight[i] + pair * Rods.JointWeight) * Gravity_B.Dot(m.Path) * rate;
        }

        if (!Robot.Planar) return new(mass, coriolis, weight);
        return new(
            new(mass.Row0 with { Y = 0 }, Vec3.UnitY, mass.Row2 with { Y = 0 }), coriolis with { Y = 0 }, weight with { Y = 0 });
    }

    /// <summary>
    /// Acceleration of the platform, m/s², when the drives push with the given forces while it moves at v and the rotary axis as given.
    /// Friction acts against the drives' speeds; a drive at rest has none, so this is not for one that friction holds.
    /// </summary>
    public Vec3 Forward(Vec3 p, Vec3 v, Vec3 force, Turn turn = default)
    {
        var equation = Equation(p, v, turn);
        var pushed = -(equation.Coriolis + equation.Weight);
        for (int i = 0; i < _chains.Length; i++)
        {
            var m = ChainMotion.Of(_chains[i], p, v);
            pushed += (force[i] - _bodies[i].FrictionAt(m.Speed)) / m.Along * m.Rod;
        }
        return equation.Mass.Inverse() * (Robot.Planar ? pushed with { Y = 0 } : pushed);
    }

    /// <summary>One chain's part: what it asks of its own drive, and what of the platform.</summary>
    private Drive Move(int i, Vec3 p, Vec3 v, Vec3 a, ref Vec3 platform)
    {
        ref readonly var body = ref _bodies[i];
        var m = ChainMotion.Of(_chains[i], p, v);
        double acceleration = m.Acceleration(a), pair = body.Pair;
        var joint = m.JointAcceleration(acceleration);
        platform += Rods.AtPlatform(pair, joint, a, Gravity_B);
        double own = body.Inertia * acceleration + body.FrictionAt(m.Speed)
            + m.Path.Dot(Rods.AtJoint(pair, joint, a, Gravity_B) - _weight[i] * Gravity_B);
        return new(m.Rod, m.Along, own, m.Speed, acceleration);
    }

    /// <summary>What a chain asks of its own drive, before the platform's share.</summary>
    private readonly record struct Drive(Vec3 Rod, double Along, double Own, double Speed, double Acceleration);

    private static Vec3 InSpace(in Drive one, in Drive two, in Drive three, Vec3 platform)
    {
        var across = one.Rod.Cross(two.Rod);
        double inverse = 1 / across.Dot(three.Rod);
        return new(
            one.Own + one.Along * platform.Dot(two.Rod.Cross(three.Rod)) * inverse,
            two.Own + two.Along * platform.Dot(three.Rod.Cross(one.Rod)) * inverse,
            three.Own + three.Along * platform.Dot(across) * inverse);
    }

    private static Vec3 InPlane(in Drive one, in Drive two, Vec3 platform)
    {
        double inverse = 1 / (one.Rod.X * two.Rod.Z - one.Rod.Z * two.Rod.X);
        return new(
            one.Own + one.Along * (platform.X * two.Rod.Z - platform.Z * two.Rod.X) * inverse,
            two.Own + two.Along * (one.Rod.X * platform.Z - one.Rod.Z * platform.X) * inverse,
            0);
    }

    /// <summary>Acceleration of a point that turns with the rotary axis, beyond the platform's.</summary>
    internal static Vec3 CentreAcceleration(Vec3 centre, Turn turn) => new(
        -turn.Acceleration * centre.Y - turn.Speed * turn.Speed * centre.X, turn.Acceleration * centre.X - turn.Speed * turn.Speed * centre.Y, 0);

    private static Mat3 Outer(Vec3 a, Vec3 b) => new(a.X * b, a.Y * b, a.Z * b);
}

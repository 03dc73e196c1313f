using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Dynamics;

/// <summary>Axial force in one rod at its two ends, newtons, tension positive. The ends differ by the rod's own weight and inertia; in
/// between it lies at most an eighth of its mass times the difference of their accelerations beyond the larger.</summary>
/// <param name="AtJoint">At carriage or elbow.</param>
/// <param name="AtPlatform">At the platform.</param>
public readonly record struct RodForce(double AtJoint, double AtPlatform)
{
    /// <summary>The larger: what opens a ball joint, where it is a tension.</summary>
    public double Most => Math.Max(AtJoint, AtPlatform);

    /// <summary>The smaller: the largest compression, where it is negative.</summary>
    public double Least => Math.Min(AtJoint, AtPlatform);
}

/// <summary>The two rods of a chain: the one shifted towards <see cref="Chain.Side"/>, and the other.</summary>
public readonly record struct PairForce(RodForce Plus, RodForce Minus)
{
    public double Most => Math.Max(Plus.Most, Minus.Most);
    public double Least => Math.Min(Plus.Least, Minus.Least);
}

/// <summary>
/// Forces that the parts of the robot put on each other and on its mount at one instant.
/// <para>
/// Rods. A rod between ball joints carries no moment, so the rod forces of three chains are six unknowns, and the platform's force and
/// moment balance are six equations: they are solved exactly, not shared half and half. A weight below the platform, an offset, or the
/// rotary axis' torque loads the two rods of a pair differently. (The rods' part is solved with the exact split of their mass or with
/// whatever the dynamics are asked to use.) The platform's moments are about its reference point.
/// </para>
/// <para>
/// Two chains. Their four rods hold neither a force across the plane nor a turn about its normal: something else does (a second pair in
/// the plane, a guide), and it is taken to act at the platform reference point without mass of its own. The pairs' sums follow from the
/// forces in the plane, their differences from the moments about x and z.
/// </para>
/// <para>
/// Mount. From the change of momentum of every body, so it does not depend on where motors, belts and guides stand. Left out: what
/// rotors turn up in themselves (their axes are not described). A counterweight is taken on its carriage's rail line, as far
/// from the middle of travel as the carriage, on the other side.
/// </para>
/// </summary>
/// <param name="Force_B">Force of the robot on what carries it, base frame, newtons.</param>
/// <param name="Moment_B">Moment of the robot on what carries it, about the base frame's origin, N·m.</param>
public readonly record struct Loads(PairForce One, PairForce Two, PairForce Three, Vec3 Force_B, Vec3 Moment_B)
{
    /// <summary>Rods of a chain, in the order of the chains. With two chains the third means nothing.</summary>
    public PairForce Rods(int chain) => chain switch
    {
        0 => One,
        1 => Two,
        2 => Three,
        _ => throw new ArgumentOutOfRangeException(nameof(chain), chain, "A robot has at most three chains."),
    };

    private static readonly PairForce Unknown = new(new(double.NaN, double.NaN), new(double.NaN, double.NaN));

    /// <summary>At one instant of a motion; not a number out of reach. Rods whose spacing is unknown are not a number.</summary>
    public static Loads Of(RobotDynamics dynamics, in MotionState state)
    {
        var (p, v, a, turn) = state;
        var robot = dynamics.Robot;
        var gravity = dynamics.Gravity_B;
        if (!robot.InPlane(p)) return new(Unknown, Unknown, Unknown, Vec3.NaN, Vec3.NaN);

        // Force and moment (about the platform reference point) that the platform with all it carries needs.
        var platform = dynamics.Platform;
        var turning = platform.Turning;
        var centre = turning.At(turn.Angle);
        Vec3 still = platform.Mass * (a - gravity), turned = turning.Mass * (a + RobotDynamics.CentreAcceleration(centre, turn) - gravity);
        double off2 = centre.X * centre.X + centre.Y * centre.Y;
        var force = still + turned;
        var moment = platform.Centre.Cross(still) + centre.Cross(turned) + (turning.Inertia - turning.Mass * off2) * turn.Acceleration * Vec3.UnitZ;
        Vec3 onRobot = force, momentOnRobot = moment + p.Cross(force);

        Span<Rod> rods = stackalloc Rod[3];
        int n = robot.Chains.Length;
        for (int i = 0; i < n; i++)
        {
            var chain = robot.Chains[i];
            var body = dynamics.Chains[i];
            var m = ChainMotion.Of(chain, p, v);
            var joint = m.JointAcceleration(m.Acceleration(a));
            Vec3 atJoint = dynamics.Rods.AtJoint(body.RodMass, joint, a, gravity), atPlatform = dynamics.Rods.AtPlatform(body.RodMass, joint, a, gravity);
            var along = m.Rod / chain.Rod;
            rods[i] = new(along, along.Dot(atJoint), along.Dot(atPlatform), body.RodSpacing / 2 * chain.Side.Cross(along), chain.B);
            force += 2 * atPlatform;
            moment += chain.B.Cross(2 * atPlatform);

            onRobot += 2 * (atJoint + atPlatform);
            momentOnRobot += m.Joint.Cross(2 * atJoint) + (p + chain.B).Cross(2 * atPlatform);
            var (own, ownMoment) = Own(chain, body, m, m.Acceleration(a), gravity);
            onRobot += own;
            momentOnRobot += ownMoment;
        }

        Span<double> sum = stackalloc double[3], difference = stackalloc double[3];
        Sums(rods[..n], force, sum);
        for (int i = 0; i < n; i++) moment += sum[i] * rods[i].Foot.Cross(rods[i].Along);
        Differences(rods[..n], moment, difference);
        Span<PairForce> pairs = [Unknown, Unknown, Unknown];
        for (int i = 0; i < n; i++)
        {
            double plus = (sum[i] + difference[i]) / 2, minus = (sum[i] - difference[i]) / 2;
            pairs[i] = new(new(plus - rods[i].AtJoint, plus + rods[i].AtPlatform), new(minus - rods[i].AtJoint, minus + rods[i].AtPlatform));
        }
        return new(pairs[0], pairs[1], pairs[2], -onRobot, -momentOnRobot);
    }

    /// <summary>What one chain's rods have in common: direction from joint to platform, the parts of what carries each end along it, the arm of
    /// the pair's couple per newton of difference, and the platform joint.</summary>
    private readonly record struct Rod(Vec3 Along, double AtJoint, double AtPlatform, Vec3 Couple, Vec3 Foot);

    /// <summary>Per chain the sum S of both rods' further tension: −Σ S·Along is the force that is needed.</summary>
    private static void Sums(ReadOnlySpan<Rod> rods, Vec3 force, Span<double> sum)
    {
        if (rods.Length == 2) (sum[0], sum[1]) = InPlane(rods[0].Along, rods[1].Along, -force);
        else (sum[0], sum[1], sum[2]) = InSpace(rods[0].Along, rods[1].Along, rods[2].Along, -force);
    }

    /// <summary>Per chain the difference D of both rods' tension: −Σ D·Couple is the moment that is left.</summary>
    private static void Differences(ReadOnlySpan<Rod> rods, Vec3 moment, Span<double> difference)
    {
        if (rods.Length == 2) (difference[0], difference[1]) = InPlane(rods[0].Couple, rods[1].Couple, -moment);
        else (difference[0], difference[1], difference[2]) = InSpace(rods[0].Couple, rods[1].Couple, rods[2].Couple, -moment);
    }

    private static (double, double, double) InSpace(Vec3 a, Vec3 b, Vec3 c, Vec3 f)
    {
        double volume = a.Dot(b.Cross(c));
        return (f.Dot(b.Cross(c)) / volume, f.Dot(c.Cross(a)) / volume, f.Dot(a.Cross(b)) / volume);
    }

    private static (double, double) InPlane(Vec3 a, Vec3 b, Vec3 f)
    {
        double area = a.X * b.Z - a.Z * b.X;
        return ((f.X * b.Z - f.Z * b.X) / area, (a.X * f.Z - a.Z * f.X) / area);
    }

    /// <summary>Force, and moment about the base frame's origin, that carriage and counterweight or arm need.</summary>
    private static (Vec3 Force, Vec3 Moment) Own(in Chain chain, in ChainBodies body, in ChainMotion m, double acceleration, Vec3 gravity)
    {
        var joint = m.JointAcceleration(acceleration);
        if (chain.Family == RobotFamily.RailDelta)
        {
            Vec3 carriage = body.Carriage * (joint - gravity), counterweight = body.Counterweight * (-joint - gravity);
            double mirrored = chain.TravelFrom + chain.TravelTo + 2 * chain.HomeOffset - (m.Joint - chain.Foot).Dot(chain.E);
            return (carriage + counterweight, m.Joint.Cross(carriage) + (chain.Foot + mirrored * chain.E).Cross(counterweight));
        }

        double reach = body.ArmCentre / chain.Arm;
        Vec3 momentum = body.ArmMass * reach * joint, weight = -body.ArmMass * gravity;
        // About the shoulder an arm on a principal axis needs its inertia times q̈ alone.
        var axis = chain.E.Cross(chain.F);
        return (momentum + weight,
            chain.Foot.Cross(momentum) + body.ArmInertia * acceleration * axis + (chain.Foot + reach * (m.Joint - chain.Foot)).Cross(weight));
    }
}

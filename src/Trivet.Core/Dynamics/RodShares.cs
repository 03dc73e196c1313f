using Trivet.Numerics;

namespace Trivet.Dynamics;

/// <summary>
/// How a rod's mass m acts at its two ends, the joint C at carriage or elbow and the joint P at the platform. Forces that carry it:
/// <c>m·(Joint·a_C + Coupling·a_P − JointWeight·g)</c> at C and <c>m·(Coupling·a_C + Platform·a_P − PlatformWeight·g)</c> at P.
/// <para>
/// <see cref="Consistent"/> is exact for a uniform slender rod whatever its ends do: its points move linearly between them, and integrating
/// over its length gives ⅓, ⅙, ⅓ (elementary; the consistent mass of a bar). The two lumped splits leave out the coupling and
/// are there for comparison with what others compute; <see cref="TwoThirds"/> is used by [Codourey1998] (from memory).
/// </para>
/// </summary>
public readonly record struct RodShares(double Joint, double Coupling, double Platform, double JointWeight, double PlatformWeight)
{
    /// <summary>A uniform slender rod, exact.</summary>
    public static RodShares Consistent { get; } = new(1.0 / 3, 1.0 / 6, 1.0 / 3, 0.5, 0.5);

    /// <summary>Two thirds as a point at carriage or elbow, one third as a point at the platform: approximate.</summary>
    public static RodShares TwoThirds { get; } = new(2.0 / 3, 0, 1.0 / 3, 2.0 / 3, 1.0 / 3);

    /// <summary>Half as a point at each end: approximate.</summary>
    public static RodShares Halves { get; } = new(0.5, 0, 0.5, 0.5, 0.5);

    /// <summary>Kinetic energy, joules, of a mass in kilograms whose ends move at the given velocities, metres per second.</summary>
    public double KineticEnergy(double mass, Vec3 vJoint, Vec3 vPlatform) =>
        mass * (Joint / 2 * vJoint.NormSquared + Coupling * vJoint.Dot(vPlatform) + Platform / 2 * vPlatform.NormSquared);

    /// <summary>What carries a mass at the joint C, newtons.</summary>
    internal Vec3 AtJoint(double mass, Vec3 aJoint, Vec3 aPlatform, Vec3 gravity) =>
        mass * (Joint * aJoint + Coupling * aPlatform - JointWeight * gravity);

    /// <summary>What carries a mass at the joint P, newtons.</summary>
    internal Vec3 AtPlatform(double mass, Vec3 aJoint, Vec3 aPlatform, Vec3 gravity) =>
        mass * (Coupling * aJoint + Platform * aPlatform - PlatformWeight * gravity);
}

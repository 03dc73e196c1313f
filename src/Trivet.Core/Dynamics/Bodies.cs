using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Dynamics;

/// <summary>
/// What moves in one chain, with its friction. Nothing is shared with the other chains. Forces and inertias of the drive are at the drive
/// coordinate: newtons and kilograms for a rail, newton metres and kg·m² for a crank. Values that a family does not have are zero.
/// </summary>
/// <param name="Carriage">Rail: mass of the carriage, kg, taken at the middle of its pair of joints.</param>
/// <param name="Counterweight">Rail: mass that moves along the rail as fast as the carriage, the other way, kg.</param>
/// <param name="ArmMass">Crank: mass of the upper arm, kg.</param>
/// <param name="ArmCentre">Crank: its centre of mass from the shoulder, along the arm, metres; negative beyond the shoulder.</param>
/// <param name="ArmInertia">Crank: its moment of inertia about the shoulder's axis, kg·m². The axis is taken as a principal one.</param>
/// <param name="RodMass">Mass of one of the two rods, kg: uniform and slender.</param>
/// <param name="RodSpacing">Distance between the two rods, metres; not a number where unknown: forces in single rods are then unknown too.</param>
/// <param name="RotorInertia">Inertia of motor and transmission as felt at the drive coordinate, kg or kg·m².</param>
/// <param name="Viscous">Friction that grows with the speed of the drive coordinate, N·s/m or N·m·s/rad.</param>
/// <param name="Coulomb">Friction against the direction of movement, N or N·m, not negative.</param>
public readonly record struct ChainBodies(
    double Carriage, double Counterweight, double ArmMass, double ArmCentre, double ArmInertia, double RodMass, double RodSpacing,
    double RotorInertia, double Viscous, double Coulomb)
{
    public static ChainBodies Rail(double carriage, double rodMass, double rodSpacing) =>
        new() { Carriage = carriage, RodMass = rodMass, RodSpacing = rodSpacing };

    public static ChainBodies Crank(double armMass, double armCentre, double armInertia, double rodMass, double rodSpacing) =>
        new() { ArmMass = armMass, ArmCentre = armCentre, ArmInertia = armInertia, RodMass = rodMass, RodSpacing = rodSpacing };

    /// <summary>Both rods together, kg.</summary>
    public double Pair => 2 * RodMass;

    /// <summary>Friction at a speed of the drive coordinate, against it, N or N·m. At rest zero: what it holds then is
    /// <see cref="ChainHolding"/>'s matter.</summary>
    public double FrictionAt(double speed) => Viscous * speed + (speed > 0 ? Coulomb : speed < 0 ? -Coulomb : 0 * speed);

    /// <summary>What the drive coordinate's acceleration meets apart from the rods, kg or kg·m².</summary>
    internal double Inertia => Carriage + Counterweight + ArmInertia + RotorInertia;

    /// <summary>Mass that would weigh the same at the joint C, kg: carriage less counterweight, or the arm at its tip.</summary>
    internal double WeightAtJoint(in Chain chain) =>
        chain.Family == RobotFamily.RailDelta ? Carriage - Counterweight : ArmMass * ArmCentre / chain.Arm;
}

/// <summary>
/// What moves with the platform, which keeps its orientation: plates, housing of the rotary axis, and what turns on it.
/// </summary>
/// <param name="Mass">Mass of what does not turn, kg.</param>
/// <param name="Centre">Its centre of mass from the platform reference point, base frame, metres.</param>
/// <param name="Turning">What turns about the platform's z; zero mass and inertia where nothing does.</param>
public readonly record struct PlatformBodies(double Mass, Vec3 Centre, TurningBody Turning = default);

/// <summary>What turns with the rotary axis, about the upright line through the platform reference point.</summary>
/// <param name="Mass">Mass, kg.</param>
/// <param name="Centre">Centre of mass from the platform reference point at rotary angle zero, metres. Off the axis it drags the platform
/// about when it turns, which is modelled exactly.</param>
/// <param name="Inertia">Moment of inertia about the axis, kg·m², the mass off the axis and the drive's rotor included. Products of inertia with the
/// axis are taken as those of the mass at its centre.</param>
/// <param name="Friction">Friction of the axis against its direction of turning, N·m.</param>
public readonly record struct TurningBody(double Mass, Vec3 Centre, double Inertia, double Friction)
{
    /// <summary>Position of the centre of mass from the platform reference point at a rotary angle, base frame.</summary>
    public Vec3 At(double angle) => Mat3.RotationZ(angle) * Centre;

    /// <summary>Friction at a speed, against it, N·m; none at rest.</summary>
    public double FrictionAt(double speed) => speed > 0 ? Friction : speed < 0 ? -Friction : 0 * speed;
}

/// <summary>Angle, speed and acceleration of the rotary axis, radians, counter-clockwise seen from above. Default: at rest at zero.</summary>
public readonly record struct Turn(double Angle, double Speed = 0, double Acceleration = 0);

/// <summary>One instant of a motion: platform reference point, its velocity and acceleration, base frame, SI; and the rotary axis.</summary>
public readonly record struct MotionState(Vec3 P, Vec3 V, Vec3 A, Turn Turn = default);

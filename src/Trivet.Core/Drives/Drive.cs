using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Drives;

/// <summary>
/// The computing form of one axis's drive. The drive coordinate is metres of a carriage or of the axis that carries the robot, radians of an
/// upper arm or of the rotary axis; motor quantities are at the motor's shaft.
/// </summary>
/// <param name="Axis">Chain id, "rotary" or "linear".</param>
/// <param name="Turns">The drive coordinate is an angle.</param>
/// <param name="Gearing">Motor angle per drive coordinate, rad/m or rad/rad, positive.</param>
/// <param name="OwnInertia">Rotor and transmission as the motor's shaft sees them, kg·m².</param>
/// <param name="Efficiency">Output over input power while the motor drives, above 0 up to 1.</param>
public sealed record Drive(string Axis, bool Turns, MotorKind Kind, TorqueCurve Curve, double Gearing, double OwnInertia, double Efficiency)
{
    /// <summary>Rotor and transmission as felt at the drive coordinate, kg or kg·m².</summary>
    public double ReflectedInertia => OwnInertia * Gearing * Gearing;

    /// <summary>
    /// Torque at the motor's shaft, N·m.
    /// </summary>
    /// <param name="force">
    /// Force or torque at the drive coordinate that the load needs, N or N·m: masses, gravity and friction, but neither rotor nor
    /// transmission. Positive towards growing coordinate.
    /// </param>
    /// <param name="speed">m/s or rad/s.</param>
    /// <param name="acceleration">m/s² or rad/s².</param>
    /// <remarks>
    /// The transmission loses a fixed share of the power that passes: where the motor drives the load, its torque is divided by the
    /// efficiency; where the load drives the motor, multiplied. At rest the direction about to be taken counts; standing still, none is lost.
    /// </remarks>
    public double Torque(double force, double speed, double acceleration)
    {
        double power = force * (speed != 0 ? speed : acceleration);
        double passed = power > 0 ? force / Efficiency : power < 0 ? force * Efficiency : force;
        return passed / Gearing + OwnInertia * acceleration * Gearing;
    }

    /// <summary>
    /// What the motor can bring at the drive coordinate against speed, straight between its points and with a fraction of both speed and force
    /// kept in reserve.
    /// </summary>
    /// <param name="voltage">Voltage at the drives, V.</param>
    /// <param name="comfort">Fraction kept in reserve, 0 to 1.</param>
    public ForceEnvelope Envelope(double voltage, double comfort)
    {
        double left = 1 - comfort, perSpeed = left * voltage / (Curve.Voltage * Gearing), perTorque = left * Gearing * Efficiency;
        return new([.. Curve.Speeds.Select(s => s * perSpeed)], [.. Curve.Torques.Select(t => t * perTorque)]);
    }
}

/// <summary>
/// Largest force of a drive at its coordinate against speed, the same both ways: piecewise straight, not rising, zero beyond the last speed.
/// It is meant for the force of the whole axis, reflected inertia included, and takes the transmission's loss for the whole of it. Where rotor
/// and load pull the same way the true limit is a little higher; where they pull opposite ways the check along the motion
/// (<see cref="AxisLoad"/>) has the last word.
/// </summary>
/// <param name="Speeds">Speeds, m/s or rad/s, rising, the first zero.</param>
/// <param name="Forces">Forces, N or N·m, not rising.</param>
public sealed record ForceEnvelope(ImmutableArray<double> Speeds, ImmutableArray<double> Forces)
{
    public double LargestSpeed => Speeds[^1];

    /// <summary>Largest force at a speed of either sign.</summary>
    public double At(double speed)
    {
        double at = Math.Abs(speed);
        if (!(at <= Speeds[^1])) return double.IsNaN(at) ? double.NaN : 0;
        int i = 1;
        while (i < Speeds.Length - 1 && at > Speeds[i]) i++;
        double part = (at - Speeds[i - 1]) / (Speeds[i] - Speeds[i - 1]);
        return Forces[i - 1] + part * (Forces[i] - Forces[i - 1]);
    }
}

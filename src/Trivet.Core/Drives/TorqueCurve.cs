using System.Collections.Immutable;

namespace Trivet.Drives;

/// <summary>
/// Largest torque of a motor against the speed of its shaft, at the voltage then present.
/// <para>
/// At a given torque the winding needs a certain current. What is left of the supply's voltage meets the induced voltage and the inductive drop,
/// both proportional to speed; the resistive drop is neglected. So a torque that the curve shows at a speed is to be had at a speed in
/// proportion to the voltage, and the torque at standstill, where the drive limits the current, does not depend on it:
/// <c>T(ω; V) = T(ω·V₀/V; V₀)</c>. The same for stepper and servo motors. At low voltage and large current the neglected drop makes the true
/// torque somewhat smaller near the end of the curve (derived here; common practice, no source).
/// </para>
/// Straight between its points; level from standstill to the first; zero beyond the last, since nothing is stated there.
/// </summary>
/// <param name="Speeds">Speeds, rad/s, rising, the first zero.</param>
/// <param name="Torques">Torques, N·m, not rising.</param>
/// <param name="Voltage">Voltage the curve holds for, V.</param>
public sealed record TorqueCurve(ImmutableArray<double> Speeds, ImmutableArray<double> Torques, double Voltage)
{
    /// <summary>Torque at standstill, N·m.</summary>
    public double Standstill => Torques[0];

    /// <summary>Speed beyond which the curve states nothing, rad/s, at a voltage.</summary>
    public double LargestSpeed(double voltage) => Speeds[^1] * Math.Max(voltage, 0) / Voltage;

    /// <summary>Largest torque, N·m, at a speed of either sign, rad/s, and a voltage. Without voltage there is none.</summary>
    public double At(double speed, double voltage)
    {
        if (!(voltage > 0)) return double.IsNaN(voltage) ? double.NaN : 0;
        double at = Math.Abs(speed) * Voltage / voltage;
        if (!(at <= Speeds[^1])) return double.IsNaN(at) ? double.NaN : 0;
        int i = 1;
        while (i < Speeds.Length - 1 && at > Speeds[i]) i++;
        double part = (at - Speeds[i - 1]) / (Speeds[i] - Speeds[i - 1]);
        return Torques[i - 1] + part * (Torques[i] - Torques[i - 1]);
    }
}

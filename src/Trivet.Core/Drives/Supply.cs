using System.Collections.Immutable;

namespace Trivet.Drives;

/// <summary>
/// The supply of the motors. The source has its voltage behind a resistance, takes nothing back, and holds its current to
/// <see cref="LargestPower"/> / <see cref="Voltage"/>. The chopper holds the voltage at its threshold (idealised: it switches so fast that it
/// has no hysteresis) until its resistor is on all the time; beyond that the voltage rises.
/// </summary>
/// <param name="Voltage">V₀, without load, V.</param>
/// <param name="Resistance">Of source and cable, there and back, Ω.</param>
/// <param name="LargestPower">W, as drawn from the source ahead of the resistance.</param>
/// <param name="Capacitance">At the drives, F.</param>
/// <param name="BrakingVoltage">Threshold of the chopper, above V₀, V; infinite without chopper.</param>
/// <param name="BrakingResistance">Ω; not used without chopper.</param>
/// <param name="IdlePower">Drawn by the drives at rest, W.</param>
public sealed record Supply(
    double Voltage, double Resistance, double LargestPower, double Capacitance,
    double BrakingVoltage = double.PositiveInfinity, double BrakingResistance = double.NaN, double IdlePower = 0)
{
    public bool HasChopper => double.IsFinite(BrakingVoltage);

    /// <summary>Largest current of the source, A.</summary>
    public double LargestCurrent => LargestPower / Voltage;

    /// <summary>Current of the source at a voltage of the capacitor, A.</summary>
    public double Current(double voltage) => Math.Min(Math.Max((Voltage - voltage) / Resistance, 0), LargestCurrent);
}

/// <summary>Why the simulation of a supply ended.</summary>
public enum SupplyEnd
{
    /// <summary>The cycle ends with the voltage it began with.</summary>
    Periodic,
    /// <summary>It still rises or falls from cycle to cycle after the most that are tried.</summary>
    NotPeriodic,
    /// <summary>The source can not deliver what is asked; the voltage breaks down.</summary>
    Collapsed,
}

/// <summary>Energies over the last cycle, J. They balance: <c>Source = Drives + Resistance + Braking + Capacitor</c>.</summary>
/// <param name="Source">Drawn from the source.</param>
/// <param name="Drives">Into the drives, less what they give back.</param>
/// <param name="Resistance">Lost in the source's resistance.</param>
/// <param name="Braking">Burnt in the braking resistor.</param>
/// <param name="Capacitor">Gained by the capacitor: nothing in a periodic cycle.</param>
public readonly record struct SupplyEnergies(double Source, double Drives, double Resistance, double Braking, double Capacitor);

/// <summary>The supply over the last simulated cycle.</summary>
/// <param name="Voltage">At the drives, V, at the times of the cycle.</param>
/// <param name="Lowest">Lowest voltage, V, between the times too, and when.</param>
/// <param name="Highest">Highest voltage, V, and when.</param>
/// <param name="PeakSourcePower">Largest power drawn from the source, W, and when.</param>
/// <param name="Cycles">Cycles simulated, the last included.</param>
public sealed record SupplyRun(
    ImmutableArray<double> Voltage, (double Value, double Time) Lowest, (double Value, double Time) Highest, (double Value, double Time) PeakSourcePower,
    SupplyEnergies Energies, double Duration, int Cycles, SupplyEnd End)
{
    /// <summary>The voltages are those of a cycle repeated without end.</summary>
    public bool Usable => End == SupplyEnd.Periodic;

    public double MeanSourcePower => Energies.Source / Duration;

    public double MeanBrakingPower => Energies.Braking / Duration;
}

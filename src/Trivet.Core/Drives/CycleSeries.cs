using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Drives;

/// <summary>
/// One cycle over time, as motion produces it and the drives take it: it begins as it ends and is repeated over the shift. Straight between its
/// times; a jump is two entries at one time.
/// </summary>
/// <param name="Cycle">Id of the cycle in the cell's motion plan.</param>
/// <param name="Times">Seconds from the start, not falling, the first zero; the last is the cycle's length. At least two.</param>
/// <param name="Axes">Every axis that moves.</param>
/// <param name="Places">Where the tool is at each time; empty where not known.</param>
/// <param name="Inputs">Pointers of everything the motion depends on, sorted.</param>
public sealed record CycleSeries(
    string Cycle, ImmutableArray<double> Times, ImmutableArray<AxisSeries> Axes, ImmutableArray<Place> Places, ImmutableArray<string> Inputs)
{
    public double Duration => Times[^1];
}

/// <summary>One axis over the times of a cycle, at its drive coordinate.</summary>
/// <param name="Axis">Chain id, "rotary" or "linear".</param>
/// <param name="Position">Drive reading, m or rad.</param>
/// <param name="Speed">m/s or rad/s.</param>
/// <param name="Acceleration">m/s² or rad/s².</param>
/// <param name="Force">
/// What the load needs, N or N·m, positive towards growing coordinate: masses, gravity and friction included, rotor and transmission left out
/// (<see cref="Drive.Torque"/> adds them, since the transmission's loss concerns the load's share only).
/// </param>
/// <param name="LoadInertia">
/// Largest inertia of the load along the motion, kg or kg·m²: force per acceleration of this axis while the others stand; rotor and transmission
/// left out. Not a number where unknown.
/// </param>
public sealed record AxisSeries(
    string Axis, ImmutableArray<double> Position, ImmutableArray<double> Speed, ImmutableArray<double> Acceleration, ImmutableArray<double> Force,
    double LoadInertia = double.NaN);

/// <summary>Electric power that all drives together draw over one cycle, and the voltage they then see: what the electrical trade takes.</summary>
/// <param name="Times">Seconds, as those of the cycle.</param>
/// <param name="Power">Watts into the drives, idle power included; negative where they give back.</param>
/// <param name="Voltage">Volts at the drives.</param>
public sealed record PowerSeries(string Cycle, ImmutableArray<double> Times, ImmutableArray<double> Power, ImmutableArray<double> Voltage);

namespace Trivet.Drives;

/// <summary>
/// Temperature of a winding that begins at that of its surroundings: one body with one time constant, heated in proportion to the mean square
/// of the torque (copper loss), which rises by the stated amount at the continuous torque. The ripple within a cycle is left out, since cycles last
/// seconds and time constants minutes; so is the growth of the resistance beyond what the stated rise contains.
/// </summary>
/// <param name="Ambient">°C.</param>
/// <param name="SteadyRise">Rise after a long time, K.</param>
/// <param name="TimeConstant">Seconds.</param>
/// <param name="Shift">Length of the run, seconds; infinite where it has no end.</param>
public readonly record struct Warming(double Ambient, double SteadyRise, double TimeConstant, double Shift = double.PositiveInfinity)
{
    /// <param name="share">Mean square of the torque over the square of the continuous torque.</param>
    public static Warming Of(double ambient, double rise, double timeConstant, double share, double shift = double.PositiveInfinity) =>
        new(ambient, rise * share, timeConstant, shift);

    /// <summary>Temperature at the end of the run, °C.</summary>
    public double AtEnd => At(Shift);

    /// <summary>Temperature after a long time, °C.</summary>
    public double Steady => Ambient + SteadyRise;

    /// <summary>Temperature some seconds after the start, °C.</summary>
    public double At(double seconds) => Ambient - SteadyRise * Math.Exp(-seconds / TimeConstant) + SteadyRise;
}

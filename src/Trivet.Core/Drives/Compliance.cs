namespace Trivet.Drives;

/// <summary>
/// How far an axis yields between its commanded and its true place, at the drive coordinate: the shaft lags its command as a spring, the
/// transmission is another behind the rotor. Infinite where rigid.
/// </summary>
/// <param name="Lag">Stiffness of the shaft against lagging, N/m or N·m/rad.</param>
/// <param name="Transmission">Stiffness between shaft and load, N/m or N·m/rad.</param>
/// <param name="Rotor">Reflected inertia, kg or kg·m².</param>
public readonly record struct Compliance(double Lag, double Transmission, double Rotor)
{
    /// <summary>Both springs one behind the other.</summary>
    public double Stiffness => 1 / (1 / Lag + 1 / Transmission);

    /// <summary>Yield under a force on the load, m or rad; zero where rigid.</summary>
    public double Deflection(double force) => force / Lag + force / Transmission;

    /// <summary>
    /// Lowest natural frequency, Hz, undamped, with the load on the far side of the transmission and the rotor between both springs:
    /// the smaller root of J·m·λ² − (k·J + (c + k)·m)·λ + c·k = 0 with λ = ω², lag c, transmission k, rotor J, load m. Infinite where rigid.
    /// </summary>
    public double Resonance(double load)
    {
        double c = Lag, k = Transmission, j = Rotor;
        double square;
        if (double.IsInfinity(c)) square = k / load;
        else if (double.IsInfinity(k)) square = c / (j + load);
        else
        {
            double b = k * j + (c + k) * load, product = c * k;
            // The smaller root without cancellation.
            square = 2 * product / (b + Math.Sqrt(b * b - 4 * j * load * product));
        }

        return Math.Sqrt(square) / Math.Tau;
    }

    /// <summary>
    /// Lag of a stepper motor without feedback about rest, N·m/rad at the shaft: torque follows the sine of the load angle, which turns through
    /// a full period in four full steps (two-phase motor; from memory), so the slope is the standstill torque by a quarter of the steps a turn.
    /// </summary>
    public static double OfStepper(double standstill, int stepsPerTurn) => standstill * stepsPerTurn / 4.0;
}

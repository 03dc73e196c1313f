using System.Collections.Immutable;

namespace Trivet.Drives;

/// <summary>
/// Simulates the voltage at the drives while they draw a given power, cycle after cycle until it repeats.
/// <para>
/// With x = U², the energy of the capacitor changes by <c>C/2·dx/dt = U·I(U) − p − B(U)</c>: what the source delivers behind its resistance, less
/// what the drives draw, less what the chopper burns. Integrated by the two-stage singly diagonal implicit Runge–Kutta method of order 2 that is
/// L-stable (γ = 1 − 1/√2; [Alexander1977], from memory), since the resistance and the capacitor can be much faster than the motion. Each stage is a
/// quadratic equation in U, solved in closed form for each state of source and chopper. Power is straight between the times, for which the
/// method's energy is exact, and each energy is summed with the method's own weights: so they balance to rounding whatever the step.
/// </para>
/// Steps are halved until the change of the rate over a step moves x by no more than a tolerance. What makes it fail is told in
/// <see cref="SupplyRun.End"/>.
/// </summary>
public static class SupplySimulation
{
    private const int MostCycles = 200;
    private const double Tolerance = 1e-5, Periodic = 1e-6, Broken = 0.1;
    private const double Gamma = 1 - 0.70710678118654752;

    /// <param name="times">Seconds, not falling; a jump is two entries at one time.</param>
    /// <param name="power">Into the drives, idle power included, W.</param>
    /// <param name="start">Voltage to begin with, V; the source's own where not given.</param>
    /// <param name="cycles">Most cycles to simulate.</param>
    public static SupplyRun Run(Supply supply, ImmutableArray<double> times, ImmutableArray<double> power, double? start = null, int cycles = MostCycles)
    {
        double x = Square(start ?? supply.Voltage);
        for (int cycle = 1; ; cycle++)
        {
            var pass = new Pass(supply, times, power, x);
            bool whole = pass.Run();
            bool periodic = whole && Math.Abs(Math.Sqrt(pass.X) - Math.Sqrt(x)) <= Periodic * supply.Voltage;
            if (!whole || periodic || cycle >= cycles)
                return pass.Result(cycle, !whole ? SupplyEnd.Collapsed : periodic ? SupplyEnd.Periodic : SupplyEnd.NotPeriodic);
            x = pass.X;
        }
    }

    private static double Square(double v) => v * v;

    /// <summary>One cycle.</summary>
    private sealed class Pass(Supply supply, ImmutableArray<double> times, ImmutableArray<double> power, double start)
    {
        private readonly double _perEnergy = 2 / supply.Capacitance;
        private readonly double[] _voltage = new double[times.Length];
        private (double Value, double Time) _lowest = (double.PositiveInfinity, 0), _highest = (double.NegativeInfinity, 0), _peak = (0, 0);
        private readonly double _start = start;
        private double _source, _drives, _resistance, _braking, _time;

        public double X { get; private set; } = start;

        /// <summary>False when the voltage broke down; it is then zero from there on.</summary>
        public bool Run()
        {
            Note(0, Math.Sqrt(X), supply.Current(Math.Sqrt(X)));
            _voltage[0] = Math.Sqrt(X);
            double wanted = double.PositiveInfinity;
            for (int i = 1; i < times.Length; i++)
            {
                double length = times[i] - times[i - 1], done = 0;
                while (done < length)
                {
                    bool last = wanted >= length - done;
                    double h = last ? length - done : wanted;
                    double p0 = At(i, done / length);
                    if (!Step(times[i - 1] + done, h, p0 + Gamma * (At(i, (done + h) / length) - p0), At(i, (done + h) / length), out double change))
                    {
                        if (h > 1e-9 * length)
                        {
                            wanted = h / 4;
                            continue;
                        }

                        Note(_time, 0, 0);
                        return false;
                    }

                    if (change > Tolerance * X && h > 1e-6 * length)
                    {
                        wanted = h / 2;
                        continue;
                    }

                    Take();
                    done = last ? length : done + h;
                    if (change < Tolerance * X / 6) wanted = Math.Max(wanted, 2 * h);
                }

                _voltage[i] = Math.Sqrt(X);
            }

            return true;
        }

        public SupplyRun Result(int cycles, SupplyEnd end) => new(
            [.. _voltage], _lowest, _highest, _peak,
            new(_source, _drives, _resistance, _braking, (X - _start) / _perEnergy), times[^1] - times[0], cycles, end);

        private double At(int i, double part) => power[i - 1] + part * (power[i] - power[i - 1]);

        // A step tried and not yet taken.
        private (double At, double H, double P1, double P2, Stage One, Stage Two) _tried;

        private bool Step(double at, double h, double p1, double p2, out double change)
        {
            change = double.PositiveInfinity;
            double g = Gamma * h * _perEnergy;
            if (!Solve(X, g, p1, out var one)) return false;
            double rate = (one.X - X) / (Gamma * h), from = X + (1 - Gamma) * h * rate;
            if (!Solve(from, g, p2, out var two)) return false;
            change = Math.Abs(two.X - from - Gamma * h * rate);
            _tried = (at, h, p1, p2, one, two);
            return Math.Sqrt(two.X) >= Broken * supply.Voltage;
        }

        private void Take()
        {
            var (at, h, p1, p2, one, two) = _tried;
            X = two.X;
            _time = at + h;
            double w1 = (1 - Gamma) * h, w2 = Gamma * h;
            _source += supply.Voltage * (w1 * one.Current + w2 * two.Current);
            _resistance += supply.Resistance * (w1 * Square(one.Current) + w2 * Square(two.Current));
            _braking += w1 * one.Braking + w2 * two.Braking;
            _drives += w1 * p1 + w2 * p2;
            Note(_time, Math.Sqrt(two.X), two.Current);
        }

        private void Note(double time, double voltage, double current)
        {
            if (voltage < _lowest.Value) _lowest = (voltage, time);
            if (voltage > _highest.Value) _highest = (voltage, time);
            // Held to the limit by the current; rounding shall not lift it above.
            double drawn = Math.Min(supply.Voltage * current, supply.LargestPower);
            if (drawn > _peak.Value) _peak = (drawn, time);
        }

        /// <summary>Solves <c>x = from + g·(U·I(U) − p − B(U))</c>, x = U². False where no voltage can deliver the power.</summary>
        private bool Solve(double from, double g, double p, out Stage stage)
        {
            double alone = from - g * p, none = Square(supply.Voltage);
            if (alone >= none)
            {
                double threshold = Square(supply.BrakingVoltage);
                if (alone <= threshold)
                {
                    stage = new(alone, 0, 0);
                    return true;
                }

                double full = alone / (1 + g / supply.BrakingResistance);
                stage = full >= threshold
                    ? new(full, 0, full / supply.BrakingResistance)
                    : new(threshold, 0, (alone - threshold) / g);
                return true;
            }

            // The source delivers behind its resistance: (1 + g/R)·U² − (g·V₀/R)·U − alone = 0.
            double perR = g / supply.Resistance;
            double u = Root(1 + perR, perR * supply.Voltage, alone);
            double current = (supply.Voltage - u) / supply.Resistance;
            if (!(current <= supply.LargestCurrent))
            {
                // At its limit: U² − g·I·U − alone = 0.
                u = Root(1, g * supply.LargestCurrent, alone);
                current = supply.LargestCurrent;
            }

            stage = new(u * u, current, 0);
            return u > 0;
        }

        /// <summary>Larger root of a·u² − b·u − c = 0; not a number where there is none.</summary>
        private static double Root(double a, double b, double c) => (b + Math.Sqrt(b * b + 4 * a * c)) / (2 * a);
    }

    /// <summary>x, current of the source and power burnt at one stage of a step.</summary>
    private readonly record struct Stage(double X, double Current, double Braking);
}

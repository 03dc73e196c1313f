using System.Collections.Immutable;
using CsCheck;
using Trivet.Drives;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Drives;

/// <summary>Held against solutions in closed form of the elementary circuits, and against the balance of energies.</summary>
public sealed class SupplySimulationTests
{
    private static readonly Supply Plain = new(48, 0.1, 500, 0.01);

    private static ImmutableArray<double> Even(double duration, int intervals) => [.. Enumerable.Range(0, intervals + 1).Select(i => duration * i / intervals)];

    private static ImmutableArray<double> Constant(double power, int intervals) => [.. Enumerable.Repeat(power, intervals + 1)];

    /// <summary>Above the source's voltage the capacitor alone gives or takes: C·U²/2 changes by the energy, so U² is straight at constant power.</summary>
    [Theory, InlineData(200), InlineData(-150)]
    public void Constant_power_from_a_capacitor_moves_the_square_of_the_voltage_evenly(double power)
    {
        var times = Even(0.01, 20);
        var run = SupplySimulation.Run(Plain, times, Constant(power, 20), start: 70, cycles: 1);
        for (int i = 0; i < times.Length; i++)
            Assert.Equal(Math.Sqrt(70 * 70 - 2 / 0.01 * power * times[i]), run.Voltage[i], 1e-10);
        Assert.Equal(0, run.Energies.Source);
        Assert.Equal(SupplyEnd.NotPeriodic, run.End);
    }

    /// <summary>A capacitor behind a resistance: V₀ − (V₀ − U₀)·e^(−t/RC).</summary>
    [Fact]
    public void A_source_charges_the_capacitor_exponentially()
    {
        var times = Even(0.005, 50);
        var run = SupplySimulation.Run(Plain with { LargestPower = 1e9 }, times, Constant(0, 50), start: 40, cycles: 1);
        for (int i = 0; i < times.Length; i++)
            Assert.Equal(48 - 8 * Math.Exp(-times[i] / 1e-3), run.Voltage[i], 2e-4);
        double through = 8 * 0.01 * (1 - Math.Exp(-5));
        Assert.Equal(48 * through, run.Energies.Source, 1e-3);
    }

    /// <summary>A capacitor on a resistor, the chopper being on all the time: U₀·e^(−t/RC).</summary>
    [Fact]
    public void A_braking_resistor_that_is_on_discharges_the_capacitor_exponentially()
    {
        var times = Even(0.02, 40);
        var run = SupplySimulation.Run(Plain with { BrakingVoltage = 50, BrakingResistance = 8 }, times, Constant(0, 40), start: 60, cycles: 1);
        for (int i = 0; i < times.Length; i++)
            Assert.Equal(Math.Max(60 * Math.Exp(-times[i] / 0.08), 50), run.Voltage[i], 2e-4);
    }

    /// <summary>What the drives give back beyond the threshold is burnt; the voltage stands still there while the resistor can take it all.</summary>
    [Fact]
    public void The_chopper_holds_the_voltage_and_burns_what_comes_back()
    {
        var supply = Plain with { BrakingVoltage = 56, BrakingResistance = 8 };
        // 56 V on 8 Ω take 392 W.
        var run = SupplySimulation.Run(supply, Even(0.1, 100), Constant(-300, 100), start: 56, cycles: 1);
        Assert.All(run.Voltage, v => Assert.Equal(56, v, 1e-9));
        Assert.Equal(30, run.Energies.Braking, 1e-9);
        Assert.Equal(300, run.MeanBrakingPower, 1e-7);

        // More than that lifts the voltage to where the resistor takes it: U² = P·R.
        var more = SupplySimulation.Run(supply, Even(2, 100), Constant(-500, 100), start: 56, cycles: 1);
        Assert.Equal(Math.Sqrt(500 * 8), more.Voltage[^1], 1e-6);
    }

    /// <summary>At rest the source delivers p at U, with U·(V₀ − U)/R = p: U = V₀/2 + √(V₀²/4 − p·R).</summary>
    [Fact]
    public void Constant_power_settles_where_the_source_delivers_it()
    {
        var run = SupplySimulation.Run(Plain, Even(0.2, 40), Constant(300, 40));
        Assert.True(run.Usable);
        Assert.Equal(24 + Math.Sqrt(24 * 24 - 300 * 0.1), run.Voltage[^1], 1e-5);
        Assert.Equal(run.Voltage[0], run.Voltage[^1], 1e-4);
        Assert.InRange(run.Cycles, 2, 4);
    }

    /// <summary>With the source at its current I and the drives at p: C·dU/dt = I − p/U, so t = C·[U/I + p/I²·ln|I·U − p|] from start to end.</summary>
    [Fact]
    public void A_source_at_its_limit_gives_no_more_and_the_capacitor_makes_up_for_it()
    {
        double current = 500 / 48.0, from = 48 - 0.1 * current;
        double Time(double u) => 0.01 * (u / current + 900 / (current * current) * Math.Log(Math.Abs(current * u - 900)));
        var times = Even(0.01, 10);
        var run = SupplySimulation.Run(Plain, times, Constant(900, 10), start: from, cycles: 1);
        for (int i = 1; i < times.Length; i++) Assert.Equal(times[i], Time(run.Voltage[i]) - Time(from), 2e-6);
        Assert.Equal(500, run.PeakSourcePower.Value, 1e-9);
        Assert.True(run.PeakSourcePower.Value <= 500);
        Assert.Equal((run.Voltage[^1], 0.01), run.Lowest);
    }

    [Fact]
    public void A_demand_beyond_the_source_breaks_the_voltage_down_and_says_so()
    {
        var run = SupplySimulation.Run(Plain, Even(0.5, 100), Constant(800, 100));
        Assert.Equal(SupplyEnd.Collapsed, run.End);
        Assert.False(run.Usable);
        Assert.Equal(0, run.Lowest.Value);
        Assert.InRange(run.Lowest.Time, 0, 0.1);
    }

    [Fact]
    public void Power_given_back_without_a_chopper_never_repeats()
    {
        var run = SupplySimulation.Run(Plain, Even(0.1, 10), Constant(-20, 10));
        Assert.Equal(SupplyEnd.NotPeriodic, run.End);
        Assert.Equal(200, run.Cycles);
    }

    [Fact]
    public void Energies_balance_and_that_of_the_drives_is_the_integral_of_their_power() =>
        Gen.Select(FixedCases.Between(-400, 450).Array[30], FixedCases.Between(0.02, 0.5), FixedCases.Between(0.5e-3, 2e-2)).Holds(40, c =>
        {
            var (power, resistance, capacitance) = c;
            var supply = new Supply(48, resistance, 600, capacitance, 55, 5, 10);
            var times = Even(0.3, 29);
            // Give back less than is drawn, so that the cycle has a rest to come to.
            ImmutableArray<double> p = [.. power.Select((w, i) => i % 3 == 0 ? w / 2 : Math.Abs(w) / 3)];
            var run = SupplySimulation.Run(supply, times, p);
            if (run.End == SupplyEnd.Collapsed) return;
            Assert.True(run.Usable, $"{run.End} after {run.Cycles}");
            var e = run.Energies;
            double drawn = Enumerable.Range(1, 29).Sum(i => (times[i] - times[i - 1]) * (p[i] + p[i - 1]) / 2);
            Assert.Equal(drawn, e.Drives, 1e-9);
            Assert.Equal(e.Source, e.Drives + e.Resistance + e.Braking + e.Capacitor, 1e-9);
            Assert.True(e.Resistance >= 0 && e.Braking >= 0);
            Assert.InRange(run.Highest.Value, run.Voltage.Max(), 60);
            Assert.InRange(run.Lowest.Value, 0, run.Voltage.Min());
        });

    [Fact]
    public void Finer_times_do_not_change_the_answer()
    {
        ImmutableArray<double> power = [15, 400, 100, -200, 15];
        var coarse = SupplySimulation.Run(Plain with { BrakingVoltage = 54, BrakingResistance = 10 }, Even(0.4, 4), power);
        ImmutableArray<double> fine = [.. Enumerable.Range(0, 401).Select(i => i == 400 ? 15 : power[i / 100] + i % 100 / 100.0 * (power[i / 100 + 1] - power[i / 100]))];
        var finer = SupplySimulation.Run(Plain with { BrakingVoltage = 54, BrakingResistance = 10 }, Even(0.4, 400), fine);
        Assert.Equal(finer.Lowest.Value, coarse.Lowest.Value, 2e-4);
        Assert.Equal(finer.MeanBrakingPower, coarse.MeanBrakingPower, 2e-2);
    }
}

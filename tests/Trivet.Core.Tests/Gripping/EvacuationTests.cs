using Trivet.Gripping;
using Trivet.Numerics;
using Xunit;

namespace Trivet.Core.Tests.Gripping;

/// <summary>
/// Evacuation and release. Published table of evacuation times (a public engineering reference, 1 m³ at 0.1 m³/s from 1000 mbar: 6.9 s to 500 mbar, 23 s to
/// 100 mbar, 46 s to 10 mbar), and the same equation integrated over time.
/// </summary>
public sealed class EvacuationTests
{
    [Theory]
    [InlineData(500, 6.9, 0.05)]
    [InlineData(100, 23, 0.5)]
    [InlineData(10, 46, 0.5)]
    public void Without_leakage_and_end_pressure_it_is_the_published_time(double millibar, double seconds, double printed)
    {
        var flow = new CupFlow(100_000, 100_000 - 100 * millibar, 100_000, 0.1, 0, 1, 0, double.NaN);
        Assert.Equal(seconds, Evacuation.Of(flow).UntilHeld, printed);
    }

    private static readonly CupFlow Leaking = new(101_325, 40_000, 75_000, 40 / 60e3, 4 / 60e3, 19e-6, 0.012, 30 / 60e3);

    [Fact]
    public void The_closed_form_is_what_the_flows_give_step_by_step()
    {
        const double Step = 1e-7;
        double p = Leaking.Ambient, t = 0, leak = Leaking.Leakage * Leaking.Ambient / Leaking.Level, end = Leaking.Ambient - Leaking.Deepest;
        for (; p > Leaking.Ambient - Leaking.Level; t += Step) p += Step * (-Leaking.Suction * (p - end) + leak * (Leaking.Ambient - p)) / Leaking.Volume;
        Assert.Equal(t, Evacuation.Of(Leaking).UntilHeld - Leaking.ValveTime, 5);
        // Run on for a second, far beyond its time constant: the level that remains.
        for (int i = 0; i < 10_000_000; i++) p += Step * (-Leaking.Suction * (p - end) + leak * (Leaking.Ambient - p)) / Leaking.Volume;
        Assert.Equal(Leaking.Ambient - p, Evacuation.Of(Leaking).Reached, 1e-3);
    }

    /// <summary>At the level, the stated leakage is what flows: suction there less the leak is nothing when the leak is exactly as large.</summary>
    [Fact]
    public void A_leak_as_large_as_the_suction_at_the_level_just_reaches_it()
    {
        double left = Leaking.Suction * (Leaking.Deepest - Leaking.Level) / Leaking.Ambient;
        Assert.Equal(Leaking.Level, Evacuation.Of(Leaking with { Leakage = left }).Reached, 1e-6);
        Assert.Equal(double.PositiveInfinity, Evacuation.Of(Leaking with { Leakage = 1.01 * left }).UntilHeld);
    }

    /// <summary>19 cm³ from 40 kPa below 101.325 kPa take 7.50 cm³ of free air; 30 l/min brings 0.5 cm³ in a millisecond.</summary>
    [Fact]
    public void The_release_fills_up_what_was_taken_away() => Assert.Equal(0.012 + 19e-6 * 40 / 101.325 / 0.5e-3, Evacuation.Of(Leaking).UntilFree, 9);

    /// <summary>Four cups on a circle tip about the side of their square, two about the line through both, one about its own lip.</summary>
    [Theory]
    [InlineData(1, 0.01)]
    [InlineData(2, 0.01)]
    [InlineData(3, 0.01 + 0.05 / 2)]
    [InlineData(4, 0.01 + 0.05 * 0.70710678118654757)]
    public void The_edge_about_which_a_part_tips(int cups, double lever) =>
        Assert.Equal(lever, new CupHold(cups, 0.02, 0.1, 4e4, 2, new Interval(0.5, 0.5)).Lever, 12);
}

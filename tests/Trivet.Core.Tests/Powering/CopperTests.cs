using CsCheck;
using Trivet.Cells;
using Trivet.Conductors;
using Trivet.Powering;
using Xunit;

namespace Trivet.Core.Tests.Powering;

public sealed class CopperTests
{
    private const double Mm2 = 1e-6;

    /// <summary>IEC 60204-1:2016 table 6 (rows of a public reproduction that compared two prints).</summary>
    [Theory]
    [InlineData(0.75, 8.6, 8.5, 9.8, 10.4)]
    [InlineData(1.0, 10.3, 10.1, 11.7, 12.4)]
    [InlineData(1.5, 13.5, 13.1, 15.2, 16.1)]
    [InlineData(4, 24, 23, 28, 30)]
    [InlineData(6, 31, 30, 36, 37)]
    [InlineData(16, 59, 54, 66, 70)]
    [InlineData(25, 77, 70, 84, 88)]
    public void A_wire_bears_what_the_table_says(double section, double b1, double b2, double c, double e) =>
        Assert.Equal([b1, b2, c, e], Enum.GetValues<WireLaying>().Select(l => Copper.Capacity(section * Mm2, l, 40, 1)));

    /// <summary>B2 of 10 mm² from memory: 40 A, as IEC 60364-5-52 gives at 40 °C too (an instruction book's reproduction).</summary>
    [Fact]
    public void Ten_square_millimetres_are_the_same_in_the_table_for_buildings() => Assert.Equal(40, Copper.Capacity(10 * Mm2, WireLaying.B2, 40, 1));

    /// <summary>Worked example: 1.5 mm² B2, 45 °C, four circuits: 13.1·0.91·0.65 = 7.749 A.</summary>
    [Fact]
    public void Warmth_and_company_take_their_share() => Assert.Equal(7.749, Copper.Capacity(1.5 * Mm2, WireLaying.B2, 45, 4), 5e-4);

    /// <summary>IEC 60204-1 tables D.1 and D.2; between rows the careful one.</summary>
    [Fact]
    public void Between_two_rows_the_careful_one_counts()
    {
        double[] warm = [25, 40, 41, 45, 50, 55, 60];
        int[] few = [1, 2, 3, 4, 5, 9], many = [2, 4, 6, 9];
        Assert.Equal([1, 1, 0.91, 0.91, 0.82, 0.71, 0.58], warm.Select(Copper.WarmthFactor));
        Assert.True(double.IsNaN(Copper.WarmthFactor(61)));
        Assert.Equal([1, 0.80, 0.65, 0.65, 0.57, 0.50], few.Select(n => Copper.CrowdFactor(n, WireLaying.B1)));
        Assert.Equal([0.85, 0.75, 0.72, 0.70], many.Select(n => Copper.CrowdFactor(n, WireLaying.C)));
        Assert.Equal([0.88, 0.77, 0.73, 0.72], many.Select(n => Copper.CrowdFactor(n, WireLaying.E)));
        Assert.True(double.IsNaN(Copper.CrowdFactor(10, WireLaying.E)));
        // A section that the table does not have bears what the next smaller one does.
        Assert.Equal(Copper.Capacity(0.2 * Mm2, WireLaying.C, 40, 1), Copper.Capacity(0.34 * Mm2, WireLaying.C, 40, 1));
        Assert.True(double.IsNaN(Copper.Capacity(0.14 * Mm2, WireLaying.C, 40, 1)));
    }

    /// <summary>Worked examples of the drop both ways: 0.75 mm², 12 m, 2.5 A: 1.5600 V at 20 °C, 1.8665 V at 70 °C; 1.5 mm², 15 m, 6 A: 2.3940 V and 2.8644 V.</summary>
    [Theory]
    [InlineData(0.75, 12, 2.5, 20, 1.5600)]
    [InlineData(0.75, 12, 2.5, 70, 1.8665)]
    [InlineData(1.5, 15, 6, 20, 2.3940)]
    [InlineData(1.5, 15, 6, 70, 2.8644)]
    public void The_drop_is_that_of_the_worked_examples(double section, double length, double current, double temperature, double volts) =>
        Assert.Equal(volts, current * new Wire(section * Mm2, length, WireLaying.B2, 1, 40, temperature).Loop, 5e-5);

    /// <summary>Resistance and section go together: ρ = R·A of every row lies near that of copper, 0.0172 to 0.0205 Ω·mm²/m with lay and tolerance (textbook).</summary>
    [Fact]
    public void No_row_is_far_from_copper() => Assert.All(Copper.Sections, s => Assert.InRange(Copper.Resistance(s * Mm2, 20) * s, 0.0185, 0.0202));

    [Fact]
    public void A_section_that_is_not_made_has_no_resistance() => Assert.True(double.IsNaN(Copper.Resistance(1.2 * Mm2, 20)));

    /// <summary>IEC 60898-1: B trips at 3 to 5, C at 5 to 10, D at 10 to 20 times the rated current.</summary>
    [Fact]
    public void Breakers_trip_within_their_band()
    {
        Assert.Equal((3.0, 5.0), Tripping.Magnet(Protection.BreakerB)!.Value);
        Assert.Equal((5.0, 10.0), Tripping.Magnet(Protection.BreakerC)!.Value);
        Assert.Equal((10.0, 20.0), Tripping.Magnet(Protection.BreakerD)!.Value);
        Assert.Equal(100, Tripping.Certain(Protection.BreakerC, 10, double.NaN, true));
        Gen.Select(Gen.OneOf(Gen.Const(Protection.BreakerB), Gen.Const(Protection.BreakerC), Gen.Const(Protection.BreakerD)), Gen.Double[1, 63]).Sample((p, rating) =>
            Assert.True(Tripping.LetsPass(p, rating, double.NaN, 0) < Tripping.Certain(p, rating, double.NaN, false)));
    }
}

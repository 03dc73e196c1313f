using System.Globalization;
using Trivet.Views.Words;

namespace Trivet.Views.Tests.Words;

public sealed class NumbersTests
{
    [Theory]
    [InlineData(0.0084, "m", "8.4 mm")]
    [InlineData(1.2, "m", "1200 mm")]
    [InlineData(1.20049, "m", "1200.5 mm")]
    [InlineData(0.0000123, "m", "0.0123 mm")]
    [InlineData(-0.35, "m", "-350 mm")]
    [InlineData(0, "m", "0 mm")]
    [InlineData(0.5235987755982988, "rad", "30°")]
    [InlineData(2.345678, "1", "2.35")]
    [InlineData(0.75, "1/s", "45 1/min")]
    [InlineData(double.NaN, "m", "not a number mm")]
    [InlineData(3, "K", "3 K")]
    public void Quantities_read_as_people_write_them(double si, string unit, string shown) => Assert.Equal(shown, Numbers.Quantity(si, unit));

    [Fact]
    public void Numbers_follow_the_culture_they_are_given_and_no_other()
    {
        var german = Locale.English with { Culture = CultureInfo.GetCultureInfo("de-DE") };
        Assert.Equal("8,4 mm", Numbers.Quantity(0.0084, "m", german));
        Assert.Equal("8.4 mm", Numbers.Quantity(0.0084, "m"));
    }

    [Theory]
    [InlineData(-0.16, "-16 %")]
    [InlineData(0.3333, "33 %")]
    [InlineData(0.0312, "3.1 %")]
    [InlineData(-0.0000042, "-0.0004 %")]
    [InlineData(0, "0 %")]
    public void Margins_read_as_percent(double fraction, string shown) => Assert.Equal(shown, Numbers.Percent(fraction));

    [Fact]
    public void A_margin_under_its_comfort_band_is_not_shown_as_reaching_it() =>
        Assert.Equal("4.999 %", Numbers.Percent(0.04999, comfortBand: 0.05));

    [Fact]
    public void A_limit_in_inches_keeps_its_digits() =>
        Assert.Equal(("26 mm", "", "25.4 mm"), Numbers.Against(0.026, double.NegativeInfinity, 0.0254, "m"));

    // From one part in two down to one unit in the last place: what lies beyond a limit is always shown beyond it.
    [Fact]
    public void Rounding_never_hides_that_a_value_is_beyond_its_limit()
    {
        var random = new Random(20260311);
        for (int i = 0; i < 4_000; i++)
        {
            double limit = Math.ScaleB(1 + random.NextDouble(), random.Next(-30, 12)) * (i % 7 == 0 ? -1 : 1);
            double off = Math.ScaleB(random.NextDouble(), random.Next(-52, 0));
            double beyond = Math.Max(limit + Math.Abs(limit) * off, Math.BitIncrement(limit));
            double below = Math.Min(limit - Math.Abs(limit) * off, Math.BitDecrement(limit));
            foreach (string unit in (string[])["m", "rad", "1", "1/s"])
            {
                var (value, _, upper) = Numbers.Against(beyond, double.NegativeInfinity, limit, unit);
                Assert.True(Number(value) > Number(upper), $"{beyond:R} over {limit:R} {unit} is shown as {value} against {upper}.");
                var (low, lower, _) = Numbers.Against(below, limit, double.PositiveInfinity, unit);
                Assert.True(Number(low) < Number(lower), $"{below:R} under {limit:R} {unit} is shown as {low} against {lower}.");
            }
        }
    }

    private static double Number(string shown) => double.Parse(shown.Split(' ', '°', 'r')[0], CultureInfo.InvariantCulture);
}

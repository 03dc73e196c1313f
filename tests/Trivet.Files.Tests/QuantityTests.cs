using CsCheck;
using Trivet.Files;
using Trivet.Testing;
using Xunit;

namespace Trivet.Files.Tests;

public class QuantityTests
{
    [Theory]
    [InlineData("300 mm", Dimension.Length, 0.3)]
    [InlineData("300mm", Dimension.Length, 0.3)]
    [InlineData("  30.5 cm ", Dimension.Length, 0.305)]
    [InlineData("1,5 m", Dimension.Length, 1.5)]
    [InlineData("0,125 m", Dimension.Length, 0.125)]
    [InlineData("1 000 mm", Dimension.Length, 1)]
    [InlineData("12\u2009345.5\u00a0mm", Dimension.Length, 12.3455)]
    [InlineData("\u22127 mm", Dimension.Length, -0.007)]
    [InlineData("50 µm", Dimension.Length, 50e-6)]
    [InlineData("50 μm", Dimension.Length, 50e-6)]
    [InlineData("50 um", Dimension.Length, 50e-6)]
    [InlineData("3/8 in", Dimension.Length, 0.009525)]
    [InlineData("1 1/2 in", Dimension.Length, 0.0381)]
    [InlineData("-1/4 in", Dimension.Length, -0.00635)]
    [InlineData("2 ft", Dimension.Length, 0.6096)]
    [InlineData("1e2 mm", Dimension.Length, 0.1)]
    [InlineData("180 deg", Dimension.Angle, Math.PI)]
    [InlineData("90°", Dimension.Angle, Math.PI / 2)]
    [InlineData("14 g", Dimension.Mass, 0.014)]
    [InlineData("90 min", Dimension.Time, 5400)]
    [InlineData("45 1/min", Dimension.Rate, 0.75)]
    [InlineData("60 /min", Dimension.Rate, 1)]
    [InlineData("30 m/min", Dimension.Speed, 0.5)]
    [InlineData("20 m/s2", Dimension.Acceleration, 20)]
    [InlineData("20 m/s^2", Dimension.Acceleration, 20)]
    [InlineData("60 rpm", Dimension.AngularSpeed, Math.Tau)]
    [InlineData("1.8 N·m", Dimension.Torque, 1.8)]
    [InlineData("1.8 Nm", Dimension.Torque, 1.8)]
    [InlineData("6 bar", Dimension.Pressure, 600000)]
    [InlineData("250 mA", Dimension.Current, 0.25)]
    [InlineData("8", Dimension.One, 8)]
    public void A_quantity_is_read_to_the_nearest_double(string text, Dimension dimension, double si)
    {
        var read = Quantity.Parse(text, dimension);
        Assert.True(read.Ok, read.Problem);
        Assert.Equal(si, read.Value);
    }

    [Theory]
    [InlineData("300", Dimension.Length, "no unit", "300 mm")]
    [InlineData("", Dimension.Length, "nothing", "300 mm")]
    [InlineData("mm", Dimension.Length, "no number", "300 mm")]
    [InlineData("NaN mm", Dimension.Length, "no number", "300 mm")]
    [InlineData("30 deg", Dimension.Length, "deg is the unit of an angle; a length belongs here", "mm")]
    [InlineData("30 mm", Dimension.Angle, "mm is the unit of a length; an angle belongs here", "deg")]
    [InlineData("30 furlongs", Dimension.Length, "not a unit", "mm")]
    [InlineData("30 MM", Dimension.Length, "capital and small letters differ", "mm")]
    [InlineData("1,000 mm", Dimension.Length, "1.000 or 1000", "1.000 or 1000")]
    [InlineData("1,234.5 mm", Dimension.Length, "more than one decimal mark", "1234.5")]
    [InlineData("1e400 mm", Dimension.Length, "too large", "machine")]
    [InlineData("1e999999999999 mm", Dimension.Length, "too large", "machine")]
    [InlineData("3/8 mm", Dimension.Length, "fractions", "0.375 mm")]
    [InlineData("1/0 in", Dimension.Length, "zero", "300 mm")]
    [InlineData("8 mm", Dimension.One, "no unit", "8")]
    [InlineData("3 s", Dimension.DriveCoordinate, "a length or an angle belongs here", "deg")]
    public void What_is_no_quantity_is_refused_with_reason_and_right_form(string text, Dimension dimension, string problem, string remedy)
    {
        var read = Quantity.Parse(text, dimension);
        Assert.False(read.Ok);
        Assert.True(double.IsNaN(read.Value));
        Assert.Contains(problem, read.Problem, StringComparison.Ordinal);
        Assert.Contains(remedy, read.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.56, Dimension.Length, "560 mm")]
    [InlineData(0.1 + 0.2, Dimension.Length, "300.00000000000004 mm")]
    [InlineData(Math.PI / 2, Dimension.Angle, "90 deg")]
    [InlineData(0.000001, Dimension.Length, "0.001 mm")]
    [InlineData(-0.0, Dimension.Length, "0 mm")]
    [InlineData(1e-20, Dimension.Length, "1e-17 mm")]
    [InlineData(double.MaxValue, Dimension.Time, "1.7976931348623157e308 s")]
    public void A_quantity_is_written_as_short_as_it_can_be(double si, Dimension dimension, string text) =>
        Assert.Equal(text, Quantity.Format(si, dimension));

    [Fact]
    public void Every_unit_reads_back_the_double_it_wrote()
    {
        var units = Units.Sets.SelectMany(s => s.All.Select(u => (s.Dimension, u.Symbol))).ToArray();
        Gen.Select(Gen.OneOf(RandomCells.Values, Gen.Double), Gen.OneOf(units)).Sample(
            (value, unit) =>
            {
                if (!double.IsFinite(value) || Math.Abs(value) is > 1e300 or (< 1e-300 and > 0)) return;
                string text = Quantity.Format(value, unit.Dimension, unit.Symbol);
                Assert.Equal(value, Quantity.Parse(text, unit.Dimension).Value);
            },
            seed: "0000000000002", iter: Effort.Cases(20_000));
    }

    [Fact]
    public void A_text_with_fifteen_digits_is_given_back_as_typed()
    {
        var units = Units.Sets.Where(s => s.Dimension != Dimension.One).SelectMany(s => s.All.Select(u => (s.Dimension, u.Symbol))).ToArray();
        Gen.Select(Gen.Long[1, 999_999_999_999_999], Gen.Int[0, 12], Gen.OneOf(units)).Sample(
            (digits, shift, unit) =>
            {
                string number = ExactNumber.Text(digits, -shift, false);
                string text = $"{number} {unit.Symbol}";
                Assert.Equal(text, Quantity.Format(Quantity.Parse(text, unit.Dimension).Value, unit.Dimension, unit.Symbol));
            },
            seed: "0000000000003", iter: Effort.Cases(20_000));
    }

    [Fact]
    public void Any_text_is_read_or_refused_with_words() =>
        Gen.Select(Gen.OneOf(Gen.String, Gen.String[Gen.OneOf("0123456789.,/ -+eEmincdgft°µ1s".ToCharArray()), 0, 20]), Gen.Enum<Dimension>()).Sample(
            (text, dimension) =>
            {
                var read = Quantity.Parse(text, dimension);
                Assert.Equal(read.Ok, double.IsFinite(read.Value));
                Assert.Equal(read.Ok, read.Remedy.Length == 0);
            },
            seed: "0000000000004", iter: Effort.Cases(50_000));

    /// <summary>The decimal shift of a metric unit is exact: the double nearest to the shifted text is what double.Parse gives.</summary>
    [Fact]
    public void Millimetres_agree_with_the_platform_reading_of_the_shifted_number() =>
        Gen.Select(Gen.Long[-99_999_999, 99_999_999], Gen.Int[0, 6]).Sample(
            (digits, shift) =>
            {
                string number = ExactNumber.Text(Math.Abs(digits), -shift, digits < 0);
                double expected = double.Parse(number + "e-3", System.Globalization.CultureInfo.InvariantCulture);
                Assert.Equal(expected, Quantity.Parse(number + " mm", Dimension.Length).Value);
            },
            seed: "0000000000005", iter: Effort.Cases(20_000));
}

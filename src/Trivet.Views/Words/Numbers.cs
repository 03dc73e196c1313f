using System.Globalization;
using Trivet.Findings;

namespace Trivet.Views.Words;

/// <summary>The unit a quantity is shown in.</summary>
/// <param name="Symbol">What stands behind the number; empty for a pure number.</param>
/// <param name="PerSi">Shown value for one SI unit.</param>
/// <param name="Decimals">Decimals worth showing even for large values.</param>
public readonly record struct DisplayUnit(string Symbol, double PerSi, int Decimals)
{
    /// <summary>Masses from here on are read in kilograms.</summary>
    private const double Heavy = 5;

    /// <summary>The unit people read for an SI unit of a rule. An unknown one is shown as it is.</summary>
    /// <param name="largest">Largest of the values that are shown together, SI.</param>
    public static DisplayUnit Of(string siUnit, double largest = 0) => siUnit switch
    {
        "kg" when Math.Abs(largest) >= Heavy => new("kg", 1, 1),
        // Copper of wires.
        "m²" when Math.Abs(largest) is > 0 and < 1e-3 => new("mm²", 1e6, 2),
        "m" => new("mm", 1000, 1),
        "m/m" => new("mm/m", 1000, 2),
        "rad" => new("°", 180 / Math.PI, 1),
        "1" or "" => new("", 1, 0),
        "kg" => new("g", 1000, 0),
        "m/s" => new("mm/s", 1000, 0),
        "m/s2" or "m/s²" => new("m/s²", 1, 1),
        "rad/s" => new("°/s", 180 / Math.PI, 0),
        "rad/s²" => new("°/s²", 180 / Math.PI, 0),
        "rad/s³" => new("°/s³", 180 / Math.PI, 0),
        "1/s" => new("1/min", 60, 1),
        "N/m" => new("N/mm", 1e-3, 0),
        "F" => new("mF", 1000, 1),
        "Pa" => new("bar", 1e-5, 2),
        "Hz" => new("Hz", 1, 1),
        "N" => new("N", 1, 1),
        "m³/s" => new("l/min", 60_000, 1),
        "kg m²" => new("kg cm²", 10_000, 2),
        _ => new(siUnit, 1, 0),
    };
}

/// <summary>
/// Numbers as people read them: about three significant digits, no trailing zeros. A value held against a limit gets as many
/// digits as it takes for the reader to see on which side it is: rounding never hides a verdict.
/// </summary>
public static class Numbers
{
    private const int MostDecimals = 12;
    private const int SignificantDigits = 3;

    /// <summary>A quantity in SI as text with its display unit.</summary>
    public static string Quantity(double si, string siUnit, Locale? locale = null)
    {
        var unit = DisplayUnit.Of(siUnit, si);
        double shown = si * unit.PerSi;
        return WithUnit(Fixed(shown, DecimalsFor(shown, unit.Decimals), locale), unit.Symbol);
    }

    /// <summary>A quantity whose doubt is far larger than its digits: rounded to three of them, whatever its size.</summary>
    public static string Rough(double si, string siUnit, Locale? locale = null)
    {
        if (!double.IsFinite(si) || si == 0) return Quantity(si, siUnit, locale);
        double step = Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(si))) - SignificantDigits + 1);
        return Quantity(Math.Round(si / step) * step, siUnit, locale);
    }

    /// <summary>The number of a quantity without its unit, with the given number of decimals at most.</summary>
    public static string Plain(double shown, int decimals, Locale? locale = null) => Fixed(shown, decimals, locale);

    /// <summary>
    /// Value and limits with the same number of decimals, enough that a value beyond a limit is also shown beyond it. Where even
    /// twelve decimals would show the two as equal, both are shown in SI with all their digits.
    /// </summary>
    public static (string Value, string Lower, string Upper) Against(double value, double lower, double upper, string siUnit, Locale? locale = null)
    {
        var unit = DisplayUnit.Of(siUnit, new[] { value, lower, upper }.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max());
        double v = value * unit.PerSi, lo = lower * unit.PerSi, hi = upper * unit.PerSi;
        int first = Math.Max(DecimalsFor(v, unit.Decimals), Math.Max(DecimalsToState(lo), DecimalsToState(hi)));
        for (int d = Math.Min(first, MostDecimals); d <= MostDecimals; d++)
        {
            if (Hides(v, lo, value < lower, d) || Hides(v, hi, value > upper, d)) continue;
            return (WithUnit(Fixed(v, d, locale), unit.Symbol), Shown(lo, d), Shown(hi, d));
        }

        return (Exact(value), Exact(lower), Exact(upper));

        string Shown(double limit, int d) => double.IsFinite(limit) ? WithUnit(Fixed(limit, d, locale), unit.Symbol) : "";
        string Exact(double si) => double.IsFinite(si) ? WithUnit(si.ToString("R", Culture(locale)), siUnit == "1" ? "" : siUnit) : "";
    }

    /// <summary>
    /// A fraction as percent: whole from 20 % on, one decimal below, and more where fewer would show a margin that is not zero as
    /// zero, or one under the comfort band as reaching it.
    /// </summary>
    public static string Percent(double fraction, Locale? locale = null, double comfortBand = 0)
    {
        if (!double.IsFinite(fraction)) return "–";
        double shown = fraction * 100, band = comfortBand * 100;
        for (int d = Math.Abs(shown) >= 20 ? 0 : 1; d <= MostDecimals; d++)
        {
            if (Hides(shown, 0, shown != 0, d) || Hides(shown, band, shown < band, d)) continue;
            return WithUnit(Fixed(shown, d, locale), "%");
        }

        return WithUnit(shown.ToString("R", Culture(locale)), "%");
    }

    /// <summary>Signed percent with its sign always shown, for tables: "+5.2 %", "-16 %".</summary>
    public static string SignedPercent(double fraction, Locale? locale = null, double comfortBand = 0) =>
        fraction > 0 && double.IsFinite(fraction) ? "+" + Percent(fraction, locale, comfortBand) : Percent(fraction, locale, comfortBand);

    /// <summary>Limit of a finding in words' order: the side that counts for its sense.</summary>
    internal static bool Beyond(Sense sense, double value, double lower, double upper) => sense switch
    {
        Sense.AtMost => value > upper,
        Sense.AtLeast => value < lower,
        _ => value < lower || value > upper,
    };

    private static bool Hides(double v, double limit, bool beyond, int decimals) =>
        beyond && Rounded(v, decimals) == Rounded(limit, decimals);

    private static double Rounded(double v, int decimals) =>
        double.Parse(v.ToString("F" + decimals, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static int DecimalsFor(double shown, int atLeast)
    {
        double size = Math.Abs(shown);
        if (!(size > 0) || !double.IsFinite(size)) return atLeast;
        int bySize = SignificantDigits - 1 - (int)Math.Floor(Math.Log10(size));
        return Math.Clamp(Math.Max(atLeast, bySize), 0, MostDecimals);
    }

    /// <summary>A limit that was typed is shown with its decimals (12.7 mm is not 13 mm); a computed one has none of its own.</summary>
    private static int DecimalsToState(double limit)
    {
        if (!double.IsFinite(limit)) return 0;
        for (int d = 0; d <= 3; d++)
            if (Math.Abs(Rounded(limit, d) - limit) < 1e-9 * Math.Max(1, Math.Abs(limit))) return d;
        return 0;
    }

    private static string Fixed(double v, int decimals, Locale? locale)
    {
        if (double.IsNaN(v)) return (locale ?? Locale.English).Language.NotANumber;
        if (double.IsInfinity(v)) return v > 0 ? "∞" : "-∞";
        var culture = Culture(locale);
        string text = v.ToString("F" + decimals, culture);
        if (decimals > 0) text = text.TrimEnd('0');
        string point = culture.NumberFormat.NumberDecimalSeparator;
        if (text.EndsWith(point, StringComparison.Ordinal)) text = text[..^point.Length];
        return text == culture.NumberFormat.NegativeSign + "0" ? "0" : text;
    }

    private static CultureInfo Culture(Locale? locale) => locale?.Culture ?? CultureInfo.InvariantCulture;

    /// <summary>A space before the unit, also before °C; the degree sign of an angle stands close (ISO 80000-1, from memory).</summary>
    private static string WithUnit(string number, string symbol) =>
        symbol.Length == 0 ? number : symbol.StartsWith('°') && symbol != "°C" ? number + symbol : number + " " + symbol;
}

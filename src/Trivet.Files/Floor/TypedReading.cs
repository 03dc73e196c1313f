using System.Text.RegularExpressions;

namespace Trivet.Files.Floor;

/// <summary>A quantity as it was read off and typed: its value and how finely it was read.</summary>
/// <param name="Quantity">Value in SI, or what is wrong with the text.</param>
/// <param name="Step">Smallest step the text tells apart, SI: "559.9 mm" was read to 0.1 mm, "22 1/16 in" to a sixteenth of an inch.</param>
/// <param name="Text">The text with its unit.</param>
public sealed partial record TypedReading(QuantityResult Quantity, double Step, string Text)
{
    /// <param name="unit">The unit shown beside the entry: it holds where the text names none. Empty for a plain number.</param>
    public static TypedReading Of(string text, string unit, Dimension dimension)
    {
        string typed = text.Trim();
        if (unit.Length > 0 && typed.Length > 0 && (char.IsAsciiDigit(typed[^1]) || typed[^1] is '.' or ',')) typed += " " + unit;
        var quantity = Files.Quantity.Parse(typed, dimension);
        if (!quantity.Ok || Parts().Match(typed) is not { Success: true } parts) return new(quantity, 0, typed);
        string smallest = parts.Groups["parts"] is { Success: true } denominator ? "1/" + denominator.Value
            : parts.Groups["decimals"] is { Success: true, Length: > 0 } decimals ? "0." + new string('0', decimals.Length - 1) + "1"
            : "1";
        // A temperature has no zero in its unit's size; a step of it is a step all the same.
        double step = Files.Quantity.Parse($"{smallest} {parts.Groups["unit"].Value}".Trim(), dimension).Value;
        return new(quantity, double.IsFinite(step) ? step : 0, typed);
    }

    /// <summary>The kind of quantity a step's SI unit stands for; null for a unit that is not known here.</summary>
    public static Dimension? DimensionOf(string si)
    {
        if (si is "1" or "") return Dimension.One;
        string plain = Units.Plain(si);
        foreach (var set in Units.Sets)
            if (set.Si.Spellings.Contains(plain)) return set.Dimension;
        return null;
    }

    /// <summary>Units to choose from beside an entry, the usual one first, at most four: what people at a machine use.</summary>
    public static string[] UnitsFor(Dimension dimension) => dimension switch
    {
        Dimension.Length => ["mm", "m", "in"],
        Dimension.Angle => ["deg", "mrad"],
        Dimension.Resistance => ["ohm", "kohm", "Mohm", "mohm"],
        Dimension.Pressure => ["bar", "kPa"],
        Dimension.Mass => ["kg", "g"],
        Dimension.Time => ["s", "ms"],
        Dimension.Rate => ["1/min", "1/s"],
        Dimension.Voltage => ["V", "mV"],
        Dimension.Current => ["A", "mA"],
        Dimension.One => [],
        _ => [Units.Set(dimension).UsualUnit.Symbol],
    };

    /// <summary>A value as people read it: rounded to four digits more than needed to tell readings apart, in the usual unit.</summary>
    /// <param name="comma">With a decimal comma.</param>
    public static string Shown(double si, Dimension dimension, bool comma = false, string? unit = null)
    {
        if (!double.IsFinite(si)) return "–";
        string chosen = unit ?? (UnitsFor(dimension) is [var first, ..] ? first : "");
        double rounded = si == 0 ? 0 : double.Parse(si.ToString("G7", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture);
        string text = chosen.Length == 0 ? Files.Quantity.Format(rounded, dimension) : Files.Quantity.Format(rounded, dimension, chosen);
        return comma ? text.Replace('.', ',') : text;
    }

    [GeneratedRegex(@"^[+-]?[\d\s]*([.,](?<decimals>\d*))?(/(?<parts>\d+))?\s*(?<unit>\D.*)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Parts();
}

using System.Text.RegularExpressions;

namespace Trivet.Files.Floor;

/// <summary>A length as it was read off and typed: its value and how finely it was read.</summary>
/// <param name="Length">Value in metres, or what is wrong with the text.</param>
/// <param name="Step">Smallest step the text tells apart, metres: "559.9 mm" was read to 0.1 mm, "22 1/16 in" to a sixteenth of an inch.</param>
/// <param name="Text">The text with its unit.</param>
public sealed partial record LengthReading(QuantityResult Length, double Step, string Text)
{
    /// <param name="unit">The unit shown beside the entry: it holds where the text names none.</param>
    public static LengthReading Of(string text, string unit)
    {
        string typed = text.Trim();
        if (typed.Length > 0 && (char.IsAsciiDigit(typed[^1]) || typed[^1] is '.' or ',')) typed += " " + unit;
        var length = Quantity.Parse(typed, Dimension.Length);
        if (!length.Ok || Parts().Match(typed) is not { Success: true } parts) return new(length, double.NaN, typed);
        string smallest = parts.Groups["parts"] is { Success: true } denominator ? "1/" + denominator.Value
            : parts.Groups["decimals"] is { Success: true, Length: > 0 } decimals ? "0." + new string('0', decimals.Length - 1) + "1"
            : "1";
        return new(length, Quantity.Parse($"{smallest} {parts.Groups["unit"].Value}", Dimension.Length).Value, typed);
    }

    [GeneratedRegex(@"^[+-]?[\d\s]*([.,](?<decimals>\d*))?(/(?<parts>\d+))?\s*(?<unit>\D+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Parts();
}

namespace Trivet.Files;

/// <summary>Reads a number of a table in a unit, to the nearest double of its SI value.</summary>
internal static class CsvNumber
{
    private const long LargestExact = 1L << 53;

    /// <summary>10^0 to 10^22, all exact as doubles.</summary>
    private static readonly double[] PowersOfTen =
        [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22];

    /// <summary>
    /// Sign, digits with a decimal point (or comma where allowed), exponent; false for anything else and beyond the range. Where
    /// digits and power of ten are exact as doubles, one division or product of them is the correctly rounded value; the rest
    /// goes the exact way, which is slower.
    /// </summary>
    public static bool TryRead(ReadOnlySpan<char> text, Unit unit, bool decimalComma, out double si)
    {
        si = double.NaN;
        int at = 0;
        bool negative = false;
        if (at < text.Length && text[at] is '-' or '+') negative = text[at++] == '-';

        long digits = 0;
        int count = 0, scale = 0, point = -1;
        for (; at < text.Length; at++)
        {
            char c = text[at];
            if (char.IsAsciiDigit(c))
            {
                if (digits < LargestExact) digits = digits * 10 + (c - '0');
                count++;
                if (point >= 0) scale++;
            }
            else if (point < 0 && (c == '.' || (c == ',' && decimalComma))) point = at;
            else break;
        }

        if (count == 0) return false;
        int exponent = 0;
        if (at < text.Length)
        {
            var rest = text[(at + 1)..];
            if (text[at] is not ('e' or 'E') || rest.Length is 0 or > 5 || !int.TryParse(rest, System.Globalization.NumberStyles.AllowLeadingSign, System.Globalization.CultureInfo.InvariantCulture, out exponent)) return false;
        }

        int power = exponent - scale + (unit.PowerOfTen ?? 0);
        if (unit.PowerOfTen is not null && digits <= LargestExact && Math.Abs(power) < PowersOfTen.Length)
        {
            si = power < 0 ? digits / PowersOfTen[-power] : digits * PowersOfTen[power];
            if (negative) si = -si;
            return true;
        }

        si = Quantity.Exactly(text.ToString().Replace(',', '.'), unit);
        return double.IsFinite(si);
    }
}

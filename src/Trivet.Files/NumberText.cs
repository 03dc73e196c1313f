using System.Globalization;
using System.Numerics;
using System.Text;

namespace Trivet.Files;

/// <summary>The number at the head of a quantity, as an exact fraction, or why it can not be read.</summary>
/// <param name="Length">How many characters the number takes.</param>
internal readonly record struct NumberText(BigInteger Numerator, BigInteger Denominator, int Length, bool IsFraction, string Problem, string Remedy)
{
    // Beyond this a double is infinite or zero whatever the digits; the bound keeps powers of ten small.
    private const int LargestExponent = 400;

    /// <summary>Every kind of blank as a plain blank, the typographic minus as a hyphen.</summary>
    public static string PlainBlanks(string text)
    {
        var plain = new StringBuilder(Math.Min(text.Length, 256));
        foreach (char c in text.AsSpan(0, Math.Min(text.Length, 256)))
        {
            plain.Append(c == '−' ? '-' : char.IsWhiteSpace(c) || c == '\u200b' ? ' ' : c);
        }

        return plain.ToString();
    }

    /// <summary>Reads sign, digits in groups, decimal comma or point, exponent, or a fraction with or without a whole part.</summary>
    public static NumberText Read(string text)
    {
        int at = 0;
        bool negative = false;
        if (at < text.Length && text[at] is '-' or '+') negative = text[at++] == '-';

        var digits = new StringBuilder();
        int start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at])) digits.Append(text[at++]);
        int leading = at - start;
        bool grouped = false;
        while (leading is >= 1 and <= 3 && IsGroup(text, at))
        {
            digits.Append(text, at + 1, 3);
            at += 4;
            grouped = true;
        }

        int whole = digits.Length, scale = 0;
        if (at < text.Length && text[at] is '.' or ',')
        {
            char mark = text[at];
            int fractionStart = at + 1, end = fractionStart;
            while (end < text.Length && char.IsAsciiDigit(text[end])) end++;
            int count = end - fractionStart;
            if (count == 0 && whole == 0) return Refuse("there is no number at the beginning");
            if (end + 1 < text.Length && text[end] is '.' or ',' && char.IsAsciiDigit(text[end + 1]))
            {
                return Refuse("there is more than one decimal mark", "write thousands without a mark: \"1234.5 mm\"");
            }

            if (mark == ',' && count == 3 && !grouped && whole is >= 1 and <= 3 && text[start] != '0')
            {
                string left = text[start..at], right = text[fractionStart..end];
                return Refuse($"{text[start..end]} may mean {left}.{right} or {left}{right}", $"write {left}.{right} or {left}{right}");
            }

            digits.Append(text, fractionStart, count);
            scale = count;
            at = end;
        }

        if (digits.Length == 0) return Refuse("there is no number at the beginning");
        var value = BigInteger.Parse(digits.ToString(), CultureInfo.InvariantCulture);

        if (scale == 0 && !grouped && TryFraction(text, at, value, out var top, out var bottom, out int after))
        {
            return bottom.IsZero
                ? Refuse("a fraction over zero is no number")
                : new NumberText(negative ? -top : top, bottom, after, true, "", "");
        }

        int exponent = ReadExponent(text, ref at);
        if (Math.Abs(exponent) > LargestExponent)
        {
            if (!value.IsZero) return Refuse("the number is too large or too small", "write a number that a machine can have");
            exponent = 0;
        }

        exponent -= scale;
        var numerator = exponent > 0 ? value * BigInteger.Pow(10, exponent) : value;
        var denominator = exponent < 0 ? BigInteger.Pow(10, -exponent) : BigInteger.One;
        return new NumberText(negative ? -numerator : numerator, denominator, at, false, "", "");
    }

    /// <summary>A blank and exactly three digits that do not begin a fraction: "1 000".</summary>
    private static bool IsGroup(string text, int at) =>
        at + 3 < text.Length && text[at] == ' '
        && char.IsAsciiDigit(text[at + 1]) && char.IsAsciiDigit(text[at + 2]) && char.IsAsciiDigit(text[at + 3])
        && (at + 4 == text.Length || (!char.IsAsciiDigit(text[at + 4]) && text[at + 4] != '/'));

    /// <summary>"/8" behind a whole number, or " 1/2" behind it; "1/min" is a unit and stays.</summary>
    private static bool TryFraction(string text, int at, BigInteger whole, out BigInteger top, out BigInteger bottom, out int after)
    {
        top = whole;
        bottom = 1;
        after = at;
        if (TryDigits(text, at, '/', out var below, out after))
        {
            bottom = below;
            return true;
        }

        int blank = at;
        while (blank < text.Length && text[blank] == ' ') blank++;
        if (blank == at || !TryDigits(text, blank - 1, ' ', out var above, out int slash) || !TryDigits(text, slash, '/', out below, out after)) return false;
        bottom = below;
        top = whole * below + above;
        return true;
    }

    private static bool TryDigits(string text, int at, char mark, out BigInteger value, out int after)
    {
        value = 0;
        after = at;
        if (at + 1 >= text.Length || text[at] != mark || !char.IsAsciiDigit(text[at + 1])) return false;
        int end = at + 1;
        while (end < text.Length && char.IsAsciiDigit(text[end])) end++;
        value = BigInteger.Parse(text.AsSpan(at + 1, end - at - 1), CultureInfo.InvariantCulture);
        after = end;
        return true;
    }

    private static int ReadExponent(string text, ref int at)
    {
        if (at >= text.Length || text[at] is not ('e' or 'E')) return 0;
        int end = at + 1;
        bool negative = false;
        if (end < text.Length && text[end] is '-' or '+') negative = text[end++] == '-';
        int first = end;
        int exponent = 0;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
        {
            if (exponent <= LargestExponent) exponent = exponent * 10 + (text[end] - '0');
            end++;
        }

        if (end == first) return 0;
        at = end;
        return negative ? -exponent : exponent;
    }

    private static NumberText Refuse(string problem, string remedy = "") => new(0, 1, 0, false, problem, remedy);
}

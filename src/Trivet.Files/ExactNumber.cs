using System.Numerics;
using System.Text;

namespace Trivet.Files;

/// <summary>
/// Exact fractions to doubles and back. A quantity is read as an exact fraction times the exact size of its unit and rounded
/// once, so that "560 mm" and "0.56 m" are the same double and every double has a text that reads back to it.
/// </summary>
internal static class ExactNumber
{
    /// <summary>The double nearest to a fraction, ties to even; infinity beyond the range. The denominator is positive.</summary>
    public static double ToDouble(BigInteger numerator, BigInteger denominator)
    {
        if (numerator.IsZero) return 0;
        bool negative = numerator.Sign < 0;
        if (negative) numerator = -numerator;

        // A quotient of 61 or 62 bits with a sticky last bit converts to 53 bits with one correct rounding.
        int shift = (int)(61 - (numerator.GetBitLength() - denominator.GetBitLength()));
        if (shift >= 0) numerator <<= shift;
        else denominator <<= -shift;
        var quotient = BigInteger.DivRem(numerator, denominator, out var rest);
        long bits = (long)quotient | (rest.IsZero ? 0L : 1L);
        double value = Math.ScaleB(bits, -shift);
        return negative ? -value : value;
    }

    /// <summary>A positive finite double times a fraction, rounded to a number of significant decimal digits: digits · 10^exponent.</summary>
    public static (BigInteger Digits, int Exponent) ToDecimal(double value, BigInteger numerator, BigInteger denominator, int digits)
    {
        long bits = BitConverter.DoubleToInt64Bits(value);
        int power = (int)((bits >> 52) & 0x7ff);
        long mantissa = bits & 0xfffffffffffffL;
        if (power == 0) power = 1;
        else mantissa |= 1L << 52;
        power -= 1075;

        var n = numerator * mantissa;
        var d = denominator;
        if (power >= 0) n <<= power;
        else d <<= -power;

        int exponent = (int)Math.Floor(BigInteger.Log10(n) - BigInteger.Log10(d)) + 1 - digits;
        if (exponent >= 0) d *= BigInteger.Pow(10, exponent);
        else n *= BigInteger.Pow(10, -exponent);
        var quotient = (2 * n + d) / (2 * d);
        return (quotient, exponent);
    }

    /// <summary>Digits · 10^exponent without needless zeros: plain where that is short, with an exponent otherwise.</summary>
    public static string Text(BigInteger digits, int exponent, bool negative)
    {
        if (digits.IsZero) return "0";
        string all = digits.ToString(System.Globalization.CultureInfo.InvariantCulture);
        string significant = all.TrimEnd('0');
        exponent += all.Length - significant.Length;
        int point = significant.Length + exponent;
        var text = new StringBuilder();
        if (negative) text.Append('-');
        if (point is > 15 or < -6)
        {
            text.Append(significant[0]);
            if (significant.Length > 1) text.Append('.').Append(significant, 1, significant.Length - 1);
            text.Append('e').Append(point - 1);
        }
        else if (point <= 0)
        {
            text.Append("0.").Append('0', -point).Append(significant);
        }
        else if (point >= significant.Length)
        {
            text.Append(significant).Append('0', point - significant.Length);
        }
        else
        {
            text.Append(significant, 0, point).Append('.').Append(significant, point, significant.Length - point);
        }

        return text.ToString();
    }
}

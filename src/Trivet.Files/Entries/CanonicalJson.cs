using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Trivet.Files.Entries;

/// <summary>
/// The one way in which a record of the journal is written: members sorted by ordinal, no white space, strings with the escapes that JSON
/// demands and no others, whole numbers only. Any program can tell whether a text is written so without knowing what it means.
/// </summary>
internal static class CanonicalJson
{
    /// <summary>Deepest nesting read; the journal needs four.</summary>
    public const int Deepest = 8;

    /// <summary>Whole numbers beyond this are not the same in every program that reads JSON (RFC 8259, 6): they are written as text.</summary>
    public const long LargestWhole = 1L << 53;

    /// <summary>Writes what was read; null where a number is not whole or too large.</summary>
    public static string? Of(JsonElement element)
    {
        var text = new StringBuilder();
        return Append(text, element) ? text.ToString() : null;
    }

    /// <summary>Writes members; null members are left out. Values are texts, whole numbers, members, or lists of these.</summary>
    public static string Of(IEnumerable<KeyValuePair<string, object?>> members)
    {
        var text = new StringBuilder();
        Append(text, members);
        return text.ToString();
    }

    private static void Append(StringBuilder text, object value)
    {
        switch (value)
        {
            case string s: JsonString.Append(text, s); break;
            case int or long: text.Append(((IConvertible)value).ToInt64(CultureInfo.InvariantCulture).ToString(CultureInfo.InvariantCulture)); break;
            case IEnumerable<KeyValuePair<string, object?>> members:
                Enclose(text, '{', '}', members.Where(m => m.Value is not null).OrderBy(m => m.Key, StringComparer.Ordinal), m =>
                {
                    JsonString.Append(text, m.Key);
                    text.Append(':');
                    Append(text, m.Value!);
                });
                break;
            case IEnumerable<object> list: Enclose(text, '[', ']', list, item => Append(text, item)); break;
            default: throw new ArgumentException($"{value.GetType().Name} has no canonical form", nameof(value));
        }
    }

    private static bool Append(StringBuilder text, JsonElement element)
    {
        bool fits = true;
        switch (element.ValueKind)
        {
            case JsonValueKind.String: JsonString.Append(text, element.GetString()!); break;
            case JsonValueKind.True: text.Append("true"); break;
            case JsonValueKind.False: text.Append("false"); break;
            case JsonValueKind.Number when element.TryGetInt64(out long whole) && Math.Abs(whole) <= LargestWhole:
                text.Append(whole.ToString(CultureInfo.InvariantCulture));
                break;
            case JsonValueKind.Object:
                Enclose(text, '{', '}', element.EnumerateObject().OrderBy(m => m.Name, StringComparer.Ordinal), m =>
                {
                    JsonString.Append(text, m.Name);
                    text.Append(':');
                    fits &= Append(text, m.Value);
                });
                break;
            case JsonValueKind.Array: Enclose(text, '[', ']', element.EnumerateArray(), item => fits &= Append(text, item)); break;
            default: return false;
        }
        return fits;
    }

    private static void Enclose<T>(StringBuilder text, char open, char close, IEnumerable<T> items, Action<T> append)
    {
        text.Append(open);
        bool first = true;
        foreach (var item in items)
        {
            if (!first) text.Append(',');
            first = false;
            append(item);
        }
        text.Append(close);
    }
}

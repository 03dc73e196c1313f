using System.Globalization;
using System.Text;

namespace Trivet.Files;

/// <summary>A JSON string with the escapes that JSON demands and no others (those of RFC 8785), so that a canonical form never depends on
/// a library's taste.</summary>
internal static class JsonString
{
    public static void Append(StringBuilder text, string value)
    {
        text.Append('"');
        foreach (char c in value)
        {
            switch (c)
            {
                case '"': text.Append("\\\""); break;
                case '\\': text.Append("\\\\"); break;
                case '\b': text.Append("\\b"); break;
                case '\f': text.Append("\\f"); break;
                case '\n': text.Append("\\n"); break;
                case '\r': text.Append("\\r"); break;
                case '\t': text.Append("\\t"); break;
                case < ' ': text.Append("\\u").Append(((int)c).ToString("x4", CultureInfo.InvariantCulture)); break;
                default: text.Append(c); break;
            }
        }
        text.Append('"');
    }
}

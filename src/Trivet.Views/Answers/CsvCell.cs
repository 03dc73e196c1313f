using System.Globalization;

namespace Trivet.Views.Answers;

/// <summary>A cell of a table for programs.</summary>
internal static class CsvCell
{
    /// <summary>All digits, a point as decimal sign; empty where not finite.</summary>
    public static string Of(double value) => double.IsFinite(value) ? value.ToString("R", CultureInfo.InvariantCulture) : "";

    /// <summary>Quoted where RFC 4180 asks for it.</summary>
    public static string Of(string text) => text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    /// <summary>The same; a text that a spreadsheet would take for a formula stays text.</summary>
    public static string Harmless(string text) => Of(text.Length > 0 && "=+-@\t\r".Contains(text[0], StringComparison.Ordinal) ? "'" + text : text);
}

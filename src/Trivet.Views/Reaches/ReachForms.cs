using System.Globalization;
using System.Text;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Reaches;

/// <summary>
/// What a robot can reach as text, Markdown, CSV and JSON. CSV and JSON are for programs: SI with all digits, and names that stay
/// (docs/output-json.md); what is not finite is empty or null.
/// </summary>
public static class ReachForms
{
    public const string Format = "trivet-reach";
    public const int Version = 1;

    private static ReachWords Words => Locale.English.Language.Reach;

    public static string Text(ReachSheet sheet)
    {
        int what = sheet.Rows.Max(r => r.What.Length), shown = sheet.Rows.Max(r => r.Shown.Length);
        var text = new StringBuilder(sheet.Title).Append('\n').Append(sheet.Places).Append("\n\n");
        foreach (var r in sheet.Rows) text.Append((r.What.PadRight(what) + "  " + r.Shown.PadLeft(shown) + "  " + r.Known).TrimEnd()).Append('\n');
        return text.ToString();
    }

    public static string Markdown(ReachSheet sheet)
    {
        var text = new StringBuilder($"# {sheet.Title}\n\n{sheet.Places}.\n\n| {Words.HeadWhat} | {Words.HeadValue} | {Words.HeadKnown} |\n| --- | ---: | --- |\n");
        foreach (var r in sheet.Rows) text.Append("| ").Append(r.What.Replace("|", "\\|", StringComparison.Ordinal)).Append(" | ").Append(r.Shown).Append(" | ").Append(r.Known).Append(" |\n");
        return text.ToString();
    }

    public static string Csv(ReachSheet sheet)
    {
        var text = new StringBuilder("id,value,unit\r\n");
        foreach (var r in sheet.Rows)
            text.Append(CultureInfo.InvariantCulture, $"{r.Id},{CsvCell.Of(r.Si)},{r.Unit}\r\n");
        return text.ToString();
    }

    /// <param name="revision">Hash that names the revision of the cell.</param>
    public static string Json(ReachSheet sheet, string revision) =>
        JsonAnswer.Of(Format, Version, sheet.Title, revision, json =>
        {
            json.WriteStartArray("within");
            foreach (string limit in sheet.Within) json.WriteStringValue(limit);
            json.WriteEndArray();
            json.WriteStartArray("rows");
            foreach (var r in sheet.Rows)
            {
                json.WriteStartObject();
                json.WriteString("id", r.Id);
                json.WriteFinite("value", r.Si);
                json.WriteString("unit", r.Unit);
                json.WriteString("known", r.Known);
                json.WriteString("what", r.What);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });
}

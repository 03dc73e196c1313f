using System.Globalization;
using System.Text;
using Trivet.Views.Answers;

namespace Trivet.Views.Frames;

/// <summary>
/// A frame as text, Markdown, CSV and JSON. CSV and JSON are for programs: SI with all digits, and names that stay (docs/output-json.md); what is not
/// finite is empty or null.
/// </summary>
public static class FrameForms
{
    public const string Format = "trivet-frame";
    public const int Version = 1;

    public static string Text(FrameSheet sheet)
    {
        var text = new StringBuilder(sheet.Title).Append('\n');
        int what = sheet.Rows.Max(r => r.What.Length), shown = sheet.Rows.Max(r => r.Shown.Length);
        foreach (var group in sheet.Rows.GroupBy(r => r.Group))
        {
            text.Append('\n').Append(group.First().GroupName).Append('\n');
            foreach (var r in group) text.Append(("  " + r.What.PadRight(what) + "  " + r.Shown.PadLeft(shown) + "  " + r.Known).TrimEnd()).Append('\n');
        }

        return text.ToString();
    }

    public static string Markdown(FrameSheet sheet)
    {
        var text = new StringBuilder($"# {sheet.Title}\n\n| of | what | value | known |\n| --- | --- | ---: | --- |\n");
        foreach (var r in sheet.Rows) text.Append(CultureInfo.InvariantCulture, $"| {Cell(r.GroupName)} | {Cell(r.What)} | {r.Shown} | {Cell(r.Known)} |\n");
        return text.ToString();

        static string Cell(string words) => words.Replace("|", "\\|", StringComparison.Ordinal);
    }

    public static string Csv(FrameSheet sheet)
    {
        var text = new StringBuilder("group,id,low,high,unit\r\n");
        foreach (var r in sheet.Rows) text.Append(CultureInfo.InvariantCulture, $"{r.Group},{r.Id},{CsvCell.Of(r.Low)},{CsvCell.Of(r.High)},{r.Unit}\r\n");
        return text.ToString();
    }

    /// <param name="revision">Hash that names the revision of the cell.</param>
    public static string Json(FrameSheet sheet, string revision) =>
        JsonAnswer.Of(Format, Version, sheet.Title, revision, json =>
        {
            json.WriteStartArray("rows");
            foreach (var r in sheet.Rows)
            {
                json.WriteStartObject();
                json.WriteString("group", r.Group);
                json.WriteString("id", r.Id);
                json.WriteFinite("low", r.Low);
                json.WriteFinite("high", r.High);
                json.WriteString("unit", r.Unit);
                json.WriteString("what", r.What);
                json.WriteString("known", r.Known);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });
}

using System.Globalization;
using System.Text;
using Trivet.Numerics;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Tooling;

/// <summary>
/// The tool's sheet as text, Markdown, CSV and JSON. CSV and JSON are for programs: SI with all digits, and names that stay (docs/output-json.md); what is not
/// known is empty or null.
/// </summary>
public static class ToolForms
{
    public const string Format = "trivet-tool";
    public const int Version = 1;

    public static string Text(ToolSheet sheet, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Tool;
        var text = new StringBuilder($"{words.Stack}: {Name(sheet, locale)}\n");
        string[][] rows = [[words.HeadPart, words.HeadMass, words.HeadCentre, words.HeadInertia, words.HeadInertiaTcp], .. Rows(sheet)];
        int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length))];
        if (rows.Length == 1) text.Append('\n').Append(words.NoTool).Append('\n');
        else
        {
            text.Append('\n');
            foreach (string[] row in rows) text.Append(("  " + string.Join("  ", row.Select((cell, c) => c == 0 ? cell.PadRight(widths[c]) : cell.PadLeft(widths[c])))).TrimEnd()).Append('\n');
            text.Append(words.FrameNote).Append('\n');
        }
        foreach (var section in Sections(sheet, words))
        {
            text.Append('\n').Append(section.Name).Append('\n');
            int width = section.Lines.Max(l => l.What.Length);
            foreach (var line in section.Lines) text.Append(CultureInfo.InvariantCulture, $"  {line.What.PadRight(width)}  {line.Shown}\n");
        }
        return text.ToString();
    }

    public static string Markdown(ToolSheet sheet, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Tool;
        var text = new StringBuilder($"# {words.Stack}: {Bare(Name(sheet, locale))}\n\n| {words.HeadPart} | {words.HeadMass} | {words.HeadCentre} | {words.HeadInertia} | {words.HeadInertiaTcp} |\n| --- | ---: | ---: | ---: | ---: |\n");
        foreach (string[] row in Rows(sheet)) text.Append(CultureInfo.InvariantCulture, $"| {string.Join(" | ", row.Select(Bare))} |\n");
        text.Append('\n').Append(words.FrameNote).Append('\n');
        foreach (var section in Sections(sheet, words))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## {section.Name}\n\n| {words.HeadWhat} | {words.HeadValue} |\n| --- | --- |\n");
            foreach (var line in section.Lines) text.Append(CultureInfo.InvariantCulture, $"| {Bare(line.What)} | {Bare(line.Shown)} |\n");
        }
        return text.ToString();

        static string Bare(string words) => words.Replace("|", "\\|", StringComparison.Ordinal).ReplaceLineEndings(" ");
    }

    /// <summary>One quantity in each row; of a body mass, centre and the six of its tensor about the mechanical interface, of a sum those about the tool
    /// centre point as well.</summary>
    public static string Csv(ToolSheet sheet)
    {
        var text = new StringBuilder("id,value,unit\r\n");
        foreach (var (id, value, unit) in Values(sheet)) text.Append(CultureInfo.InvariantCulture, $"{id},{CsvCell.Of(value)},{unit}\r\n");
        return text.ToString();
    }

    /// <param name="revision">Hash that names the revision of the cell.</param>
    public static string Json(ToolSheet sheet, string revision) =>
        JsonAnswer.Of(Format, Version, Name(sheet, null), revision, json =>
        {
            json.WriteStartArray("values");
            foreach (var (id, value, unit) in Values(sheet))
            {
                json.WriteStartObject();
                json.WriteString("id", id);
                json.WriteFinite("value", value);
                json.WriteString("unit", unit);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        });

    private static IEnumerable<(string Id, double Value, string Unit)> Values(ToolSheet sheet)
    {
        foreach (var row in sheet.Parts.Concat(sheet.Sums))
        {
            yield return ($"{row.Id}:mass", row.Body.Mass, "kg");
            foreach (var (axis, value) in Axes(row.Body.Centre)) yield return ($"{row.Id}:centre-{axis}", value, "m");
            foreach (var value in Tensor($"{row.Id}:interface", row.Body.About(Vec3.Zero))) yield return value;
            if (!row.Tcp.IsFinite) continue;
            foreach (var value in Tensor($"{row.Id}:tcp", row.Body.About(row.Tcp))) yield return value;
        }
        foreach (var line in sheet.Lines) yield return (line.Id, line.Si, line.Unit);

        static IEnumerable<(string, double)> Axes(Vec3 v) => [("x", v.X), ("y", v.Y), ("z", v.Z)];

        static IEnumerable<(string, double, string)> Tensor(string id, Mat3 m) =>
            new[] { ("xx", m.Row0.X), ("yy", m.Row1.Y), ("zz", m.Row2.Z), ("xy", m.Row0.Y), ("yz", m.Row1.Z), ("zx", m.Row2.X) }.Select(e => ($"{id}-{e.Item1}", e.Item2, "kg m²"));
    }

    private static IEnumerable<string[]> Rows(ToolSheet sheet) => sheet.Parts.Concat(sheet.Sums).Select(r => new[] { r.Name, r.Mass, r.Centre, r.Inertia, r.AtTcp });

    private static IEnumerable<(string Name, ToolLine[] Lines)> Sections(ToolSheet sheet, ToolWords words) =>
        from section in Enum.GetValues<ToolSection>()
        let lines = sheet.Lines.Where(l => l.Section == section && l.What.Length > 0).ToArray()
        where lines.Length > 0
        select (section switch { ToolSection.Gripping => words.Gripping, ToolSection.Air => words.Air, ToolSection.Guarding => words.Guarding, _ => words.Stack }, lines);

    private static string Name(ToolSheet sheet, Locale? locale) => sheet.Cell.Name ?? (locale ?? Locale.English).Language.UnnamedCell;
}

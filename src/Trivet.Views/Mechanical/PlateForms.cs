using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Mechanical;

/// <summary>Plates as text, Markdown, CSV and JSON; the last two in SI with all digits.</summary>
public static class PlateForms
{
    public const string Format = "trivet-plate";
    public const int Version = 1;

    public static string Text(ImmutableArray<PlateSheet> sheets)
    {
        var text = new StringBuilder();
        foreach (var sheet in sheets)
        {
            text.Append(sheet.Title).Append('\n').Append("  ").Append(sheet.Says).Append('\n');
            int wide = sheet.Facts.Select(f => f.What.Length).DefaultIfEmpty(0).Max() + 2;
            foreach (var (what, shown) in sheet.Facts) text.Append("  ").Append(what.PadRight(wide)).Append(shown).Append('\n');
            if (sheet.Rows.IsEmpty) continue;
            var rows = sheet.Rows.Select(r => r.Shown).Prepend(PlateSheet.Heads(Locale.English)).ToArray();
            int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length))];
            foreach (var row in rows) text.Append(("  " + string.Join("  ", row.Select((c, i) => c.PadLeft(widths[i])))).TrimEnd()).Append('\n');
        }
        return text.ToString();
    }

    public static string Markdown(ImmutableArray<PlateSheet> sheets)
    {
        var text = new StringBuilder();
        foreach (var sheet in sheets)
        {
            text.Append(CultureInfo.InvariantCulture, $"# {sheet.Title}\n\n{sheet.Says}\n\n| what | value |\n| --- | ---: |\n");
            foreach (var (what, shown) in sheet.Facts) text.Append(CultureInfo.InvariantCulture, $"| {what} | {shown} |\n");
            text.Append("\n| ").AppendJoin(" | ", PlateSheet.Heads(Locale.English)).Append(" |\n| ---: | ---: | ---: | ---: | ---: | --- |\n");
            foreach (var row in sheet.Rows) text.Append("| ").AppendJoin(" | ", row.Shown).Append(" |\n");
            text.Append('\n');
        }
        return text.ToString();
    }

    public static string Csv(ImmutableArray<PlateSheet> sheets)
    {
        var text = new StringBuilder("plate,clocking[rad],thickness[m],mass[kg],wall[m],keyRoom[m],firstFitted\r\n");
        foreach (var sheet in sheets)
            foreach (var r in sheet.Rows)
                text.Append(CultureInfo.InvariantCulture, $"{sheet.Id},{CsvCell.Of(r.Clocking)},{CsvCell.Of(r.Thickness)},{CsvCell.Of(r.Mass)},{CsvCell.Of(r.Wall)},{CsvCell.Of(r.KeyRoom)},{r.FirstFitted.ToString().ToLowerInvariant()}\r\n");
        return text.ToString();
    }

    /// <param name="revision">Hash that names the revision of the cell.</param>
    public static string Json(ImmutableArray<PlateSheet> sheets, string cell, string revision) =>
        JsonAnswer.Of(Format, Version, cell, revision, json =>
        {
            json.WriteStartArray("plates");
            foreach (var sheet in sheets) Plate(json, sheet);
            json.WriteEndArray();
        });

    private static void Plate(Utf8JsonWriter json, PlateSheet sheet)
    {
        json.WriteStartObject();
        json.WriteString("id", sheet.Id);
        json.WriteBoolean("works", sheet.Works);
        json.WriteString("says", sheet.Says);
        json.WriteStartArray("clockings");
        foreach (var r in sheet.Rows)
        {
            json.WriteStartObject();
            json.WriteNumber("clocking", r.Clocking);
            json.WriteNumber("thickness", r.Thickness);
            json.WriteNumber("mass", r.Mass);
            json.WriteNumber("wall", r.Wall);
            json.WriteFinite("keyRoom", r.KeyRoom);
            json.WriteString("firstFitted", r.FirstFitted.ToString().ToLowerInvariant());
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("pieces");
        foreach (var piece in sheet.Pieces)
        {
            json.WriteStartObject();
            json.WriteString("name", piece.FileName);
            json.WriteNumber("thickness", piece.Plate.Thickness);
            json.WriteNumber("mass", piece.Plate.Mass);
            json.WriteNumber("volume", piece.Plate.Volume);
            json.WriteNumber("turningInertia", piece.Plate.TurningInertia);
            json.WriteStartArray("holes");
            foreach (var group in HoleCallouts.Of(piece.Plate, Locale.English))
            {
                for (int i = 0; i < group.Holes.Length; i++)
                {
                    json.WriteStartObject();
                    json.WriteString("tag", $"{group.Letter}{i + 1}");
                    json.WriteNumber("x", group.Holes[i].At.X);
                    json.WriteNumber("y", group.Holes[i].At.Y);
                    json.WriteString("callout", group.Callout);
                    json.WriteString("screw", group.Screw);
                    json.WriteEndObject();
                }
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }
}

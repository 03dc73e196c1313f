using System.Globalization;
using System.Text;
using Trivet.Cells;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Listing;

/// <summary>The parts list as text, Markdown, CSV and JSON. CSV and JSON are for programs: sizes in metres, and names that stay (docs/output-json.md).</summary>
public static class PartsForms
{
    public const string Format = "trivet-parts";
    public const int Version = 1;

    public static string Text(PartsSheet sheet, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Parts;
        string[][] table = [[words.HeadName, words.HeadSizes, words.HeadQuantity, words.HeadSpares, words.HeadSupplied, words.HeadArticle], .. sheet.Rows.Select(r => Cells(r))];
        int[] widths = [.. Enumerable.Range(0, table[0].Length).Select(c => table.Max(row => row[c].Length))];
        var text = new StringBuilder($"{sheet.Title}: {sheet.Cell}\n");
        if (!sheet.Rows.IsEmpty) text.Append('\n').Append(Line(table[0]));
        foreach (var group in sheet.Rows.Select((row, i) => (row, i)).GroupBy(r => r.row.Group))
        {
            text.Append('\n').Append(group.Key).Append('\n');
            foreach (var (_, i) in group) text.Append(Line(table[i + 1]));
        }
        return text.Append('\n').Append(sheet.Summary).Append('\n').ToString();

        string Line(string[] row) => ("  " + string.Join("  ", row.Select((cell, c) => c is 2 or 3 ? cell.PadLeft(widths[c]) : cell.PadRight(widths[c])))).TrimEnd() + "\n";
    }

    public static string Markdown(PartsSheet sheet, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Parts;
        var text = new StringBuilder($"# {sheet.Title}: {Bare(sheet.Cell)}\n\n| {words.HeadGroup} | {words.HeadName} | {words.HeadSizes} | {words.HeadQuantity} | {words.HeadSpares} | {words.HeadSupplied} | {words.HeadArticle} | {words.HeadNote} |\n");
        text.Append("| --- | --- | --- | ---: | ---: | --- | --- | --- |\n");
        foreach (var r in sheet.Rows)
            text.Append(CultureInfo.InvariantCulture, $"| {r.Group} | {string.Join(" | ", Cells(r).Select(Bare))} | {Bare(r.Line.Note)} |\n");
        return text.Append('\n').Append(sheet.Summary).Append('\n').ToString();

        static string Bare(string words) => words.Replace("|", "\\|", StringComparison.Ordinal).ReplaceLineEndings(" ");
    }

    public static string Csv(PartsSheet sheet)
    {
        var text = new StringBuilder("group,of,kind,name,sizes[m],quantity,spares,supplied,stated,article,note\r\n");
        foreach (var r in sheet.Rows)
        {
            var l = r.Line;
            string[] cells =
            [
                Id(l.Group), string.Join(' ', l.Pointers), Id(l.Kind), l.Name, string.Join(' ', l.Sizes.Select(s => s.ToString("R", CultureInfo.InvariantCulture))),
                l.Quantity.ToString(CultureInfo.InvariantCulture), l.Spares.ToString(CultureInfo.InvariantCulture), Supplied(l.Supplied), l.Stated ? "yes" : "no", l.Article, l.Note,
            ];
            text.AppendJoin(',', cells.Select(CsvCell.Of)).Append("\r\n");
        }
        return text.ToString();
    }

    /// <param name="revision">Hash that names the revision of the cell.</param>
    public static string Json(PartsSheet sheet, string revision) =>
        JsonAnswer.Of(Format, Version, sheet.Cell, revision, json =>
        {
            json.WriteStartArray("parts");
            foreach (var r in sheet.Rows)
            {
                var l = r.Line;
                json.WriteStartObject();
                json.WriteString("group", Id(l.Group));
                json.WriteStartArray("of");
                foreach (string pointer in l.Pointers) json.WriteStringValue(pointer);
                json.WriteEndArray();
                json.WriteString("kind", Id(l.Kind));
                json.WriteString("name", r.Name);
                json.WriteStartArray("sizes");
                foreach (double size in l.Sizes) json.WriteNumberValue(size);
                json.WriteEndArray();
                json.WriteNumber("quantity", l.Quantity);
                json.WriteNumber("spares", l.Spares);
                if (l.Supplied is null) json.WriteNull("supplied");
                else json.WriteString("supplied", Supplied(l.Supplied));
                json.WriteBoolean("suppliedStated", l.Stated);
                json.WriteString("article", l.Article);
                json.WriteString("note", l.Note);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        });

    private static string[] Cells(PartsRow r) =>
    [
        r.Name, r.Sizes, r.Line.Quantity.ToString(CultureInfo.InvariantCulture), r.Line.Spares == 0 ? "" : r.Line.Spares.ToString(CultureInfo.InvariantCulture), r.Supplied, r.Line.Article,
    ];

    private static string Supplied(Supplied? supplied) => supplied switch { null => "", Trivet.Cells.Supplied.Bought => "bought", _ => "made" };

    /// <summary>A name for programs: the enumeration's, in lower case with hyphens.</summary>
    private static string Id(Enum value) =>
        string.Concat(value.ToString().Select((c, i) => char.IsAsciiLetterUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
}

using System.Globalization;
using System.Text;
using System.Text.Json;
using Trivet.Views.Answers;

namespace Trivet.Views.Cabinets;

/// <summary>Sections as text, Markdown, CSV and JSON.</summary>
public static class SectionForms
{
    public static string Text(IEnumerable<Section> sections)
    {
        var text = new StringBuilder();
        foreach (var section in sections)
        {
            text.Append('\n').Append(section.Title).Append('\n');
            foreach (string caution in section.Cautions)
                foreach (string line in Ledgers.LedgerText.Wrap("! " + caution, 110)) text.Append("  ").Append(line).Append('\n');
            int width = section.Facts.Select(f => f.What.Length).DefaultIfEmpty(0).Max();
            foreach (var fact in section.Facts) text.Append("  ").Append(fact.What.PadRight(width)).Append("  ").Append(fact.Text).Append('\n');
            foreach (var table in section.Tables.Where(t => !t.Rows.IsEmpty))
            {
                text.Append("  ").Append(table.Title).Append('\n');
                int[] widths = [.. table.Columns.Select((c, i) => table.Rows.Max(r => Math.Max(c.Head.Length, r[i].Text.Length)))];
                Line(i => table.Columns[i].Head);
                foreach (var row in table.Rows) Line(i => row[i].Text);

                void Line(Func<int, string> cell) => text.Append(string.Concat(
                    widths.Select((w, i) => "    "[(i > 0 ? 2 : 0)..] + (table.Columns[i].IsNumber ? cell(i).PadLeft(w) : cell(i).PadRight(w)))).TrimEnd()).Append('\n');
            }
        }
        return text.ToString();
    }

    public static string Markdown(IEnumerable<Section> sections)
    {
        var text = new StringBuilder();
        foreach (var section in sections)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## {section.Title}\n");
            foreach (string caution in section.Cautions) text.Append(CultureInfo.InvariantCulture, $"\n**{caution}**\n");
            if (!section.Facts.IsEmpty) text.Append("\n| | |\n| --- | --- |\n");
            foreach (var fact in section.Facts) text.Append(CultureInfo.InvariantCulture, $"| {Cell(fact.What)} | {Cell(fact.Text)} |\n");
            foreach (var table in section.Tables.Where(t => !t.Rows.IsEmpty))
            {
                text.Append(CultureInfo.InvariantCulture, $"\n### {table.Title}\n\n| ").AppendJoin(" | ", table.Columns.Select(c => Cell(c.Head))).Append(" |\n|");
                foreach (var column in table.Columns) text.Append(column.IsNumber ? " ---: |" : " --- |");
                text.Append('\n');
                foreach (var row in table.Rows) text.Append("| ").AppendJoin(" | ", row.Select(e => Cell(e.Text))).Append(" |\n");
            }
        }
        return text.ToString();

        static string Cell(string s) => s.Replace("|", "\\|", StringComparison.Ordinal);
    }

    /// <summary>One table: numbers in SI with the unit in the head. A text that a spreadsheet would take for a formula stays text.</summary>
    public static string Csv(SheetTable table)
    {
        var text = new StringBuilder("id,");
        text.AppendJoin(',', table.Columns.Select(c => c.Unit is null or "1" ? c.Key : $"{c.Key}[{c.Unit}]")).Append("\r\n");
        for (int i = 0; i < table.Rows.Length; i++)
        {
            string id = table.Pointers[i][(table.Pointers[i].LastIndexOf('/') + 1)..];
            text.Append(CsvCell.Harmless(id)).Append(',')
                .AppendJoin(',', table.Rows[i].Select((e, k) => table.Columns[k].IsNumber ? CsvCell.Of(e.Value) : CsvCell.Harmless(e.Text))).Append("\r\n");
        }
        return text.ToString();
    }

    /// <summary>An array "sections".</summary>
    public static void Write(Utf8JsonWriter json, IEnumerable<Section> sections)
    {
        json.WriteStartArray("sections");
        foreach (var section in sections)
        {
            json.WriteStartObject();
            json.WriteString("id", section.Id);
            json.WriteStartArray("values");
            foreach (var fact in section.Facts)
            {
                json.WriteStartObject();
                json.WriteString("id", fact.Id);
                json.WriteFinite("value", fact.Value);
                json.WriteString("unit", fact.Unit);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartObject("tables");
            foreach (var table in section.Tables)
            {
                json.WriteStartArray(table.Id);
                for (int i = 0; i < table.Rows.Length; i++)
                {
                    json.WriteStartObject();
                    json.WriteString("of", table.Pointers[i]);
                    for (int k = 0; k < table.Columns.Length; k++)
                    {
                        if (table.Columns[k].IsNumber) json.WriteFinite(table.Columns[k].Key, table.Rows[i][k].Value);
                        else json.WriteString(table.Columns[k].Key, table.Rows[i][k].Text);
                    }
                    json.WriteEndObject();
                }
                json.WriteEndArray();
            }
            json.WriteEndObject();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trivet.Findings;
using Trivet.Views.Answers;
using Trivet.Views.Cabinets;
using Trivet.Views.Words;

namespace Trivet.Views.Wiring;

/// <summary>Cabinet and bus as text, Markdown, CSV and JSON. CSV holds the modules; CSV and JSON are for programs (docs/output-json.md).</summary>
public static class WiringForms
{
    public const string Format = "trivet-wiring";
    public const int Version = 1;

    public static string Text(WiringSheet sheet, ImmutableArray<Section> sections, ImmutableArray<Finding> findings, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Wiring;
        var text = new StringBuilder(sheet.Title).Append('\n').Append(words.Caution).Append('\n');
        foreach (var (title, rows) in Tables(sheet, words))
        {
            text.Append('\n').Append(title).Append('\n');
            int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(i => rows.Max(r => r[i].Length))];
            foreach (string[] row in rows) text.Append(("  " + string.Join("  ", row.Select((c, i) => c.PadRight(widths[i])))).TrimEnd()).Append('\n');
        }
        text.Append(SectionForms.Text(sections));
        text.Append('\n').Append(sheet.ChangesWords).Append('\n');
        foreach (string why in sheet.Waits) text.Append(why).Append('\n');
        foreach (string sentence in NotHolding(sheet, findings, locale)) text.Append("- ").Append(sentence).Append('\n');
        return text.ToString();
    }

    public static string Markdown(WiringSheet sheet, ImmutableArray<Section> sections, ImmutableArray<Finding> findings, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Wiring;
        var text = new StringBuilder($"# {sheet.Title}: {words.Strip}\n\n**{words.Caution}**\n");
        foreach (var (title, rows) in Tables(sheet, words))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n");
            for (int i = 0; i < rows.Length; i++)
            {
                text.Append("| ").AppendJoin(" | ", rows[i].Select(c => c.Replace("|", "\\|", StringComparison.Ordinal))).Append(" |\n");
                if (i == 0) text.Append('|').Insert(text.Length, " --- |", rows[0].Length).Append('\n');
            }
        }
        text.Append(SectionForms.Markdown(sections));
        text.Append('\n').Append(sheet.ChangesWords).Append('\n');
        foreach (string why in sheet.Waits) text.Append('\n').Append(why).Append('\n');
        text.Append('\n');
        foreach (string sentence in NotHolding(sheet, findings, locale)) text.Append("- ").Append(sentence).Append('\n');
        return text.ToString();
    }

    public static string Csv(WiringSheet sheet)
    {
        var text = new StringBuilder("place,id,name,role,width[mm],address,planned,switches\r\n");
        foreach (var m in sheet.Modules)
        {
            text.AppendJoin(',', Number(m.Place), CsvCell.Harmless(m.Id), CsvCell.Harmless(m.Name), CsvCell.Harmless(m.Role), CsvCell.Of(1000 * m.Width),
                Number(m.Address), Number(m.Planned), CsvCell.Harmless(string.Join(' ', m.Digits))).Append("\r\n");
        }
        return text.ToString();
    }

    /// <param name="revision">Hash that names the revision of the cell.</param>
    public static string Json(WiringSheet sheet, ImmutableArray<Section> sections, string revision) =>
        JsonAnswer.Of(Format, Version, sheet.Title, revision, json =>
        {
            json.WriteStartArray("modules");
            foreach (var m in sheet.Modules)
            {
                json.WriteStartObject();
                json.WriteNumber("place", m.Place);
                json.WriteNumber("placeNow", m.PlaceNow);
                json.WriteString("id", m.Id);
                json.WriteString("name", m.Name);
                json.WriteString("role", m.Role);
                json.WriteFinite("width", m.Width);
                json.WriteFinite("address", m.Address ?? double.NaN);
                json.WriteFinite("planned", m.Planned ?? double.NaN);
                json.WriteStartArray("switches");
                foreach (string digit in m.Digits) json.WriteStringValue(digit);
                json.WriteEndArray();
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("messages");
            foreach (var t in sheet.Traffic)
            {
                json.WriteStartObject();
                json.WriteString("id", t.Of.Id);
                json.WriteString("from", t.Of.From);
                json.WriteNumber("bytes", t.Of.Bytes);
                json.WriteNumber("period", t.Of.Period);
                json.WriteFinite("identifier", t.Of.Identifier ?? double.NaN);
                json.WriteString("cause", t.Of.Cause);
                json.WriteNumber("leastBits", t.Of.LeastBits);
                json.WriteFinite("exactBits", t.Of.ExactBits ?? double.NaN);
                json.WriteNumber("worstBits", t.Of.WorstBits);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("startUp");
            foreach (var s in sheet.StartUp)
            {
                json.WriteStartObject();
                json.WriteString("module", s.Of.Module);
                json.WriteNumber("node", s.Of.Node);
                json.WriteNumber("identifier", s.Of.Identifier);
                json.WriteNumber("bits", s.Of.Bits);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            SectionForms.Write(json, sections);
            json.WriteStartArray("waits");
            foreach (string why in sheet.Waits) json.WriteStringValue(why);
            json.WriteEndArray();
        });

    /// <summary>What falls short or is open, the worst first.</summary>
    private static IEnumerable<string> NotHolding(WiringSheet sheet, ImmutableArray<Finding> findings, Locale? locale) =>
        Ledger.Of(findings, []).Findings.Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open).Select(f => Sentences.Of(f, sheet.Cell, locale));

    /// <summary>Each table with its head as the first row; empty ones are left out.</summary>
    private static IEnumerable<(string Title, string[][] Rows)> Tables(WiringSheet sheet, WiringWords words)
    {
        if (!sheet.Modules.IsEmpty)
            yield return (words.Addresses,
            [
                [words.HeadPlace, words.HeadModule, words.HeadRole, words.HeadAddress, words.HeadPlan, words.HeadSet],
                .. sheet.Modules.Select(m => (string[])[m.Moves ? $"{Number(m.Place)} ({Number(m.PlaceNow)})" : Number(m.Place), m.Name, m.Role, m.Address is null ? "–" : Number(m.Address), m.Verdict, m.SetBy]),
            ]);
        if (!sheet.Bus.IsEmpty) yield return (words.Bus, [.. sheet.Bus.Select(b => (string[])[b.What, b.Value])]);
        if (!sheet.Traffic.IsEmpty)
            yield return (words.Traffic,
            [
                [words.HeadIdentifier, words.HeadMessage, words.HeadFrom, words.HeadCause, words.HeadBytes, words.HeadPeriod, words.HeadLeast, words.HeadExact, words.HeadBits, words.HeadLoad],
                .. sheet.Traffic.Select(t => (string[])[t.Identifier, t.Name, t.From, t.Cause, Number(t.Of.Bytes), t.Period, Number(t.Of.LeastBits), t.Exact, Number(t.Of.WorstBits), t.Load]),
            ]);
        if (!sheet.StartUp.IsEmpty)
            yield return (words.StartUp,
            [
                [words.HeadIdentifier, words.HeadModule, words.HeadCause, words.HeadBusTime],
                .. sheet.StartUp.Select(s => (string[])[s.Identifier, s.Module, s.Cause, s.BusTime]),
            ]);
    }

    private static string Number(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";
}

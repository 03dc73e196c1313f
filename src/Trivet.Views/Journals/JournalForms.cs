using System.Globalization;
using System.Text;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Journals;

/// <summary>The journal as text, Markdown, CSV and JSON. What is hashed is in an export only (docs/journal.md).</summary>
public static class JournalForms
{
    public const string Format = "trivet-journal";
    public const int Version = 1;

    public static string Text(JournalSheet sheet, JournalWords words)
    {
        string[][] table = [Heads(words), .. sheet.Rows.Select(Cells)];
        int[] widths = [.. Enumerable.Range(0, table[0].Length).Select(c => table.Max(row => row[c].Length))];
        var text = new StringBuilder($"{sheet.Title}: {sheet.Summary}\n");
        if (!sheet.Rows.IsEmpty) text.Append('\n').AppendJoin("", table.Select(row => string.Join("  ", row.Select((cell, c) => cell.PadRight(widths[c]))).TrimEnd() + "\n"));
        text.Append('\n').Append(Found(sheet, words)).Append('\n');
        foreach (string contradiction in sheet.Contradictions) text.Append("  ").Append(contradiction).Append('\n');
        return text.Append(CultureInfo.InvariantCulture, $"{words.Head}: {(sheet.Head.Length == 0 ? words.NoHead : sheet.Head)}\n").ToString();
    }

    public static string Markdown(JournalSheet sheet, JournalWords words)
    {
        var text = new StringBuilder($"# {sheet.Title}\n\n{sheet.Summary}\n\n| {string.Join(" | ", Heads(words))} |\n|{string.Concat(Heads(words).Select(_ => " --- |"))}\n");
        foreach (var row in sheet.Rows) text.Append(CultureInfo.InvariantCulture, $"| {string.Join(" | ", Cells(row).Select(Bare))} |\n");
        text.Append('\n').Append(Found(sheet, words)).Append('\n');
        foreach (string contradiction in sheet.Contradictions) text.Append("- ").Append(Bare(contradiction)).Append('\n');
        return text.Append(CultureInfo.InvariantCulture, $"\n{words.Head}: {(sheet.Head.Length == 0 ? words.NoHead : sheet.Head)}\n").ToString();

        static string Bare(string words) => words.Replace("|", "\\|", StringComparison.Ordinal).ReplaceLineEndings(" ");
    }

    public static string Csv(JournalSheet sheet)
    {
        var text = new StringBuilder("receipt,hash,device,sequence,at,person,cell,revision,step,ask,says,instrument,note,corrected\r\n");
        foreach (var row in sheet.Rows)
        {
            var e = row.Kept.Entry;
            string[] cells =
            [
                row.Number, row.Kept.Hash, e.Device, e.Sequence.ToString(CultureInfo.InvariantCulture), At(e), e.Person, e.Cell, e.Revision, e.Step, e.Ask, row.Says, e.Instrument, e.Note,
                row.Superseded ? "yes" : "no",
            ];
            text.AppendJoin(',', cells.Select(CsvCell.Harmless)).Append("\r\n");
        }
        return text.ToString();
    }

    public static string Json(JournalSheet sheet) => JsonAnswer.Of(json =>
    {
        json.WriteString("format", Format);
        json.WriteNumber("version", Version);
        json.WriteString("head", sheet.Head);
        json.WriteStartArray("contradictions");
        foreach (string contradiction in sheet.Contradictions) json.WriteStringValue(contradiction);
        json.WriteEndArray();
        json.WriteStartArray("entries");
        foreach (var row in sheet.Rows)
        {
            var e = row.Kept.Entry;
            json.WriteStartObject();
            if (row.Kept.Receipt is { } receipt) json.WriteNumber("receipt", receipt.Number);
            json.WriteString("hash", row.Kept.Hash);
            json.WriteString("device", e.Device);
            json.WriteNumber("sequence", e.Sequence);
            json.WriteString("at", At(e));
            json.WriteString("person", e.Person);
            json.WriteString("cell", e.Cell);
            json.WriteString("revision", e.Revision);
            json.WriteString("step", e.Step);
            json.WriteString("ask", e.Ask);
            json.WriteString("says", row.Says);
            json.WriteString("instrument", e.Instrument);
            json.WriteString("note", e.Note);
            json.WriteBoolean("corrected", row.Superseded);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    });

    private static string At(Journal.Entry e) => new DateTime(e.Ticks, DateTimeKind.Utc).ToString("O", CultureInfo.InvariantCulture);

    private static string Found(JournalSheet sheet, JournalWords words) => JournalSentences.Contradictions(sheet.Contradictions.Length, words);

    private static string[] Heads(JournalWords words) => [words.HeadNumber, words.HeadWhen, words.HeadDevice, words.HeadPerson, words.HeadCell, words.HeadStep, words.HeadSays];

    private static string[] Cells(JournalRow row) =>
        [row.Number, row.When, $"{row.Kept.Entry.Device} {row.Kept.Entry.Sequence}", row.Kept.Entry.Person, row.Kept.Entry.Cell, row.Step, row.Says.ReplaceLineEndings(" ")];
}

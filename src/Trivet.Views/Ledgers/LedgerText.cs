using System.Text;
using Trivet.Views.Words;

namespace Trivet.Views.Ledgers;

/// <summary>
/// The ledger for a terminal: aligned columns where they fit without cutting a word, advice below its row; on a narrower terminal
/// one sentence a finding. The summary stands first, and last again where it has scrolled off.
/// </summary>
public static class LedgerText
{
    private const int Gap = 2;
    private const int NarrowestForColumns = 80;

    /// <summary>A ledger of so many lines leaves its head in sight on any terminal.</summary>
    private const int ShortEnough = 12;

    /// <param name="width">Columns of the terminal; 60 is the least that is used.</param>
    /// <param name="ascii">Marks in ASCII, for a terminal that shows no others.</param>
    public static string Render(LedgerTable table, int width = 100, bool ascii = false)
    {
        var words = table.Locale.Language;
        width = Math.Max(width, 60);
        var text = new StringBuilder();
        foreach (string line in (string[])[table.Title, table.Summary, table.Note]) AppendNote(text, "", line, 0, width);

        string[] head = ["", words.HeadVerdict, words.HeadRule, words.HeadSubject, words.HeadValue, words.HeadLimit, words.HeadMargin];
        string[][] rows = [.. table.Rows.Select(r => new[]
        {
            ascii ? VerdictMark.Ascii(r.Verdict) : r.Mark, r.Word, r.Rule, r.Subject, r.Value, r.Limit, r.Margin,
        })];
        if (rows.Length > 0)
        {
            text.Append('\n');
            int[]? widths = width < NarrowestForColumns ? null : Fit(head, rows, width);
            if (widths is not null) Append(text, head, widths);
            for (int i = 0; i < rows.Length; i++)
            {
                var row = table.Rows[i];
                if (widths is not null) Append(text, rows[i], widths);
                else AppendNote(text, rows[i][0] + " ", row.Sentence, 0, width);
                int indent = rows[i][0].Length + (widths is null ? 1 : Gap);
                // Without a number the sentence is the only place that says why.
                if (widths is not null && row.Value.Length == 0) AppendNote(text, "", row.Sentence, indent, width);
                if (row.Advice.Length > 0) AppendNote(text, "→ ", row.Advice, indent, width);
            }
        }

        if (!table.Coverage.IsEmpty)
        {
            text.Append('\n').Append(words.CoverageTitle).Append('\n');
            foreach (var c in table.Coverage) AppendNote(text, "", $"{c.Rule}, {c.Subject}: {c.Reason}", Gap, width);
        }

        if (rows.Length + table.Coverage.Length > ShortEnough)
        {
            text.Append('\n');
            AppendNote(text, "", table.Summary, 0, width);
        }

        return ascii ? text.ToString().Replace("→", "->", StringComparison.Ordinal).Replace("±", "+/-", StringComparison.Ordinal).Replace("°", " deg", StringComparison.Ordinal) : text.ToString();
    }

    /// <summary>Natural widths; when they do not fit, the widest column gives way first, down to its longest word. Null when that is not enough.</summary>
    private static int[]? Fit(string[] head, string[][] rows, int width)
    {
        int[] widths = [.. head.Select((h, c) => Math.Max(h.Length, rows.Max(r => r[c].Length)))];
        int[] least = [.. head.Select((h, c) => Math.Max(h.Length, rows.Max(r => r[c].Split(' ').Max(w => w.Length))))];
        while (widths.Sum() + Gap * (widths.Length - 1) > width)
        {
            int widest = Enumerable.Range(0, widths.Length).Where(c => widths[c] > least[c]).OrderByDescending(c => widths[c]).FirstOrDefault(-1);
            if (widest < 0) return null;
            widths[widest]--;
        }

        return widths;
    }

    private static void Append(StringBuilder text, string[] cells, int[] widths)
    {
        string[][] lines = [.. cells.Select((cell, c) => Wrap(cell, widths[c]))];
        for (int line = 0; line < lines.Max(l => l.Length); line++)
        {
            var row = new StringBuilder();
            for (int c = 0; c < cells.Length; c++)
                row.Append((line < lines[c].Length ? lines[c][line] : "").PadRight(widths[c] + Gap));
            text.Append(row.ToString().TrimEnd()).Append('\n');
        }
    }

    private static void AppendNote(StringBuilder text, string lead, string note, int indent, int width)
    {
        indent += lead.Length;
        foreach (string line in Wrap(note, width - indent))
        {
            text.Append(lead.PadLeft(indent)).Append(line).Append('\n');
            lead = "";
        }
    }

    /// <summary>Breaks at spaces; a word longer than the width is cut.</summary>
    internal static string[] Wrap(string text, int width)
    {
        if (text.Length == 0) return [];
        var lines = new List<string>();
        string line = "";
        foreach (string word in text.Split(' '))
        {
            string rest = word;
            if (line.Length > 0 && line.Length + 1 + rest.Length <= width)
            {
                line += " " + rest;
                continue;
            }

            if (line.Length > 0) lines.Add(line);
            for (; rest.Length > width; rest = rest[width..]) lines.Add(rest[..width]);
            line = rest;
        }

        if (line.Length > 0) lines.Add(line);
        return [.. lines];
    }
}

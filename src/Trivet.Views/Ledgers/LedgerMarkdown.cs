using System.Text;

namespace Trivet.Views.Ledgers;

/// <summary>The ledger as a Markdown document with tables (CommonMark with the tables extension).</summary>
public static class LedgerMarkdown
{
    public static string Render(LedgerTable table)
    {
        var words = table.Locale.Language;
        var text = new StringBuilder();
        text.Append("# ").Append(Escape(table.Title)).Append("\n\n").Append(Escape(table.Summary)).Append('\n');
        if (table.Note.Length > 0) text.Append("\n*").Append(Escape(table.Note)).Append("*\n");
        if (!table.Rows.IsEmpty)
        {
            text.Append('\n');
            Row(text, words.HeadVerdict, words.HeadRule, words.HeadSubject, words.HeadValue, words.HeadLimit, words.HeadMargin, words.HeadAdvice);
            text.Append("| --- | --- | --- | ---: | ---: | ---: | --- |\n");
            foreach (var r in table.Rows)
            {
                // A finding without a number says in its sentence what is missing.
                string last = r.Value.Length > 0 ? r.Advice : r.Sentence;
                Row(text, $"{r.Mark} {r.Word}", r.Rule, r.Subject, r.Value, r.Limit, r.Margin, last);
            }
        }

        if (table.Coverage.IsEmpty) return text.ToString();
        text.Append("\n## ").Append(words.CoverageTitle).Append("\n\n");
        Row(text, words.HeadRule, words.HeadSubject, words.HeadReason);
        text.Append("| --- | --- | --- |\n");
        foreach (var c in table.Coverage) Row(text, c.Rule, c.Subject, c.Reason);
        return text.ToString();
    }

    private static void Row(StringBuilder text, params ReadOnlySpan<string> cells)
    {
        foreach (string cell in cells) text.Append("| ").Append(Escape(cell)).Append(' ');
        text.Append("|\n");
    }

    /// <summary>A name may hold what Markdown would read as a sign of its own.</summary>
    private static string Escape(string s)
    {
        var text = new StringBuilder(s.Length);
        foreach (char c in s)
        {
            if (c is '\\' or '|' or '*' or '_' or '`' or '<' or '>' or '[' or ']' or '#') text.Append('\\');
            text.Append(c is '\n' or '\r' ? ' ' : c);
        }

        return text.ToString();
    }
}

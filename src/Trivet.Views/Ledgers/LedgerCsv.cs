using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Ledgers;

/// <summary>
/// The ledger as CSV (RFC 4180) for other programs: SI values with all their digits, a point as decimal sign, the unit in its
/// own column because it differs from row to row. Rules that do not apply follow with the verdict left empty.
/// </summary>
public static class LedgerCsv
{
    public static string Render(Assessed assessed, Locale? locale = null)
    {
        var text = new StringBuilder();
        Row(text, "verdict", "rule", "subject", "case", "value", "bound", "lower", "upper", "unit", "margin[1]", "assurance",
            "x[m]", "y[m]", "z[m]", "reason", "advice", "id");
        foreach (var f in assessed.Ledger.Findings)
        {
            var j = f as Judged;
            Row(text,
                AssessmentJson.Name(f.Verdict), f.Rule.Id, f.Subject.Pointer, f.Subject.Case,
                Number(j?.Value), Number(j?.Bound), Number(j?.Limit.Lower), Number(j?.Limit.Upper), j is null ? "" : f.Rule.Unit,
                Number(f.Margin), j is null ? "" : AssessmentJson.Name(j.Assurance),
                Number(f.Worst?.P_C.X), Number(f.Worst?.P_C.Y), Number(f.Worst?.P_C.Z),
                f is Unjudged u ? Reason(u, assessed.Cell, locale) : "",
                f.Advice.IsEmpty ? "" : Sentences.Of(f.Advice[0], assessed.Cell, locale),
                f.Id);
        }

        foreach (var c in assessed.Ledger.Coverage)
            Row(text, "", c.Rule.Id, c.Subject.Pointer, c.Subject.Case, "", "", "", "", "", "", "", "", "", "", Sentences.Of(c.Reason, assessed.Cell, locale), "", "");
        return text.ToString();
    }

    private static string Reason(Unjudged u, Cell cell, Locale? locale) =>
        u.Reason == OpenReason.Missing ? string.Join(' ', u.Missing) : u.Detail is { } detail ? Sentences.Of(detail, cell, locale) : "";

    private static string Number(double? v) => CsvCell.Of(v ?? double.NaN);

    private static void Row(StringBuilder text, params ReadOnlySpan<string> cells)
    {
        for (int i = 0; i < cells.Length; i++) text.Append(i == 0 ? "" : ",").Append(CsvCell.Of(cells[i]));
        text.Append("\r\n");
    }
}

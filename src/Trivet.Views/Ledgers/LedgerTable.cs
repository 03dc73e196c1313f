using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Views.Words;

namespace Trivet.Views.Ledgers;

/// <summary>One finding as people read it. Every text is finished; a renderer only sets it.</summary>
/// <param name="Id">Stable id of the finding, for links and for finding it again.</param>
/// <param name="Mark">The verdict's shape, see <see cref="VerdictMark"/>.</param>
/// <param name="Word">The verdict's word.</param>
/// <param name="Rule">What the rule looks at.</param>
/// <param name="Value">Value with unit; empty for a finding without a number.</param>
/// <param name="Margin">Signed percent; empty where there is none.</param>
/// <param name="Advice">The first advice in words; empty where there is none.</param>
public sealed record LedgerRow(
    string Id, Verdict Verdict, string Mark, string Word, string RuleId, string Rule, string Subject, string Pointer,
    string Value, string Limit, string Margin, string Advice, string Sentence);

/// <summary>A rule that does not apply, and why.</summary>
public sealed record CoverageRow(string RuleId, string Rule, string Subject, string Reason);

/// <summary>The ledger of a cell in words, in the ledger's own order.</summary>
/// <param name="Note">What the reader must know before reading on, such as that this is a preview; empty otherwise.</param>
public sealed record LedgerTable(
    string Title, string Summary, string Note, ImmutableArray<LedgerRow> Rows, ImmutableArray<CoverageRow> Coverage, Locale Locale)
{
    public static LedgerTable Of(Assessed assessed, Locale? locale = null) =>
        Of(assessed.Ledger, assessed.Cell, assessed.Proved, locale ?? Locale.English);

    private static LedgerTable Of(Ledger ledger, Cell cell, bool proved, Locale locale) => new(
        cell.Name ?? locale.Language.UnnamedCell,
        SummaryOf(ledger, locale),
        proved ? "" : locale.Language.PreviewNote,
        [.. ledger.Findings.Select(f => RowOf(f, cell, locale))],
        [.. ledger.Coverage.Select(c => new CoverageRow(c.Rule.Id, Sentences.RuleNoun(c.Rule, locale), Sentences.SubjectWords(c.Subject, cell, locale), Sentences.Of(c.Reason, cell, locale)))],
        locale);

    public static LedgerRow RowOf(Finding f, Cell cell, Locale? locale = null) => new(
        f.Id, f.Verdict, VerdictMark.Shape(f.Verdict), Sentences.VerdictWord(f.Verdict, locale),
        f.Rule.Id, Sentences.RuleNoun(f.Rule, locale), Sentences.SubjectWords(f.Subject, cell, locale), f.Subject.Pointer,
        f is Judged v ? Sentences.Value(v, locale) : "",
        f is Judged l ? Sentences.Limit(l, locale) : "",
        double.IsNaN(f.Margin) ? "" : Numbers.SignedPercent(ShownMargin(f), locale, f.Rule.ComfortBand),
        f.Advice.IsEmpty ? "" : Sentences.Of(f.Advice[0], cell, locale),
        Sentences.Of(f, cell, locale));

    /// <summary>Where a value falls short, the margin that follows from the value shown beside it; else the guaranteed one.</summary>
    private static double ShownMargin(Finding f) => f is Judged { Verdict: Verdict.FallsShort } j ? j.MarginAttained : f.Margin;

    /// <summary>"1 falling short, 2 open, 3 tight, 14 holding; worst margin -16 %".</summary>
    public static string SummaryOf(Ledger ledger, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language;
        if (ledger.Findings.IsEmpty) return words.SummaryNothing;
        string counts = Locale.Fill(words.Summary,
            ("fallsShort", Count(Verdict.FallsShort)), ("open", Count(Verdict.Open)), ("tight", Count(Verdict.Tight)), ("holds", Count(Verdict.Holds)));
        double worst = ledger.Findings.Select(ShownMargin).Where(double.IsFinite).DefaultIfEmpty(double.NaN).Min();
        return double.IsNaN(worst) ? counts : $"{counts}; {Locale.Fill(words.SummaryWorst, ("margin", Numbers.SignedPercent(worst, locale)))}";

        string Count(Verdict v) => ledger.Count(v).ToString((locale ?? Locale.English).Culture);
    }
}

/// <summary>A verdict as a shape, in one ink: the fuller the disc, the better; what falls short has another outline altogether.</summary>
public static class VerdictMark
{
    public static string Shape(Verdict verdict) => verdict switch
    {
        Verdict.FallsShort => "▼",
        Verdict.Open => "○",
        Verdict.Tight => "◐",
        _ => "●",
    };

    /// <summary>The shape where only ASCII can be shown.</summary>
    public static string Ascii(Verdict verdict) => verdict switch
    {
        Verdict.FallsShort => "v",
        Verdict.Open => "?",
        Verdict.Tight => "~",
        _ => "=",
    };
}

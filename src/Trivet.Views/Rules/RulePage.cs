using System.Collections.Immutable;
using System.Text;
using Trivet.Findings;
using Trivet.Views.Words;

namespace Trivet.Views.Rules;

/// <summary>The page of a rule under docs/rules, made from the rule itself and its text, so that it cannot say anything else.</summary>
public static class RulePage
{
    /// <summary>Where the page stands in the repository.</summary>
    public static string PathOf(Rule rule) => $"docs/rules/{rule.Id}.md";

    /// <summary>The page as finished texts: a host only sets them.</summary>
    public static RuleSheet Of(Rule rule, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.RulePages;
        var text = language.Rules[rule.Id];
        return new(
            rule.Title,
            [
                new(words.Id, rule.Id),
                new(words.Noun, text.Noun),
                new(words.Trade, words.Trades[(int)rule.Trade]),
                new(words.Unit, rule.Unit == "1" ? words.PureNumber : Shown(rule.Unit)),
                new(words.Sense, words.Senses[(int)rule.Sense]),
                new(words.Margin, rule.Scale is { } scale
                    ? Locale.Fill(words.MarginScale, ("scale", Numbers.Quantity(scale, rule.Unit, locale)))
                    : words.Margins[(int)rule.Sense]),
                new(words.Comfort, double.IsPositiveInfinity(rule.ComfortBand) ? words.ComfortNever : rule.ComfortBand > 0 ? Locale.Fill(words.ComfortBand, ("band", Numbers.Percent(rule.ComfortBand, locale))) : words.ComfortNone),
                new(words.Proof, rule.NeedsProof ? words.ProofNeeded : words.ProofNotNeeded),
                new(words.Method, rule.Method.Place == PathOf(rule) ? words.MethodHere : Sentences.Of(rule.Method, Cells.Cell.Empty, locale)),
                new(words.LimitSource, text.Limit),
            ],
            [new(words.Asks, Paragraphs(text.Asks)), new(words.Judged, Paragraphs(text.Judged))]);
    }

    public static string Markdown(Rule rule, Locale? locale = null)
    {
        var sheet = Of(rule, locale);
        var page = new StringBuilder();
        page.Append("# ").Append(sheet.Title).Append("\n\n").Append((locale ?? Locale.English).Language.RulePages.Generated).Append("\n\n");
        page.Append("| | |\n| --- | --- |\n");
        foreach (var row in sheet.Rows)
            page.Append("| ").Append(row.Head).Append(" | ").Append(row.Text == rule.Id ? $"`{row.Text}`" : row.Text.Replace("|", "\\|", StringComparison.Ordinal)).Append(" |\n");
        foreach (var part in sheet.Parts) page.Append("\n## ").Append(part.Head).Append("\n\n").Append(Wrapped(part.Paragraphs));
        return page.ToString();
    }

    /// <summary>The list of all rules, docs/rules/README.md.</summary>
    public static string Index(IEnumerable<Rule> rules, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.RulePages;
        var page = new StringBuilder();
        page.Append("# ").Append(words.IndexTitle).Append("\n\n").Append(words.Generated).Append("\n\n").Append(Wrapped(Paragraphs(words.IndexText))).Append('\n');
        page.Append("| ").Append(words.Id).Append(" | ").Append(words.Asks).Append(" | ").Append(words.Unit).Append(" | ").Append(words.Comfort).Append(" |\n| --- | --- | --- | ---: |\n");
        foreach (var rule in rules.OrderBy(r => r.Id, StringComparer.Ordinal))
            page.Append("| [`").Append(rule.Id).Append("`](").Append(rule.Id).Append(".md) | ").Append(rule.Title).Append(" | ")
                .Append(rule.Unit == "1" ? "" : DisplayUnit.Of(rule.Unit).Symbol).Append(" | ").Append(double.IsPositiveInfinity(rule.ComfortBand) ? words.ComfortNeverShort : Numbers.Percent(rule.ComfortBand, locale)).Append(" |\n");
        return page.ToString();
    }

    private static string Shown(string unit)
    {
        string symbol = DisplayUnit.Of(unit).Symbol;
        return symbol == unit ? unit : $"{unit} ({symbol})";
    }

    private static ImmutableArray<string> Paragraphs(string text) =>
        [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];

    private static string Wrapped(ImmutableArray<string> paragraphs)
    {
        var page = new StringBuilder();
        foreach (string paragraph in paragraphs)
        {
            if (page.Length > 0) page.Append('\n');
            foreach (string line in Ledgers.LedgerText.Wrap(paragraph, 120)) page.Append(line).Append('\n');
        }

        return page.ToString();
    }
}

/// <summary>The page of a rule in finished texts.</summary>
public sealed record RuleSheet(string Title, ImmutableArray<RuleRow> Rows, ImmutableArray<RulePart> Parts);

/// <summary>One property of a rule.</summary>
public sealed record RuleRow(string Head, string Text);

/// <summary>What a rule asks, or how it is judged.</summary>
public sealed record RulePart(string Head, ImmutableArray<string> Paragraphs);

using System.Text;
using Trivet.Findings;
using Trivet.Views.Words;

namespace Trivet.Views.Rules;

/// <summary>The page of a rule under docs/rules, made from the rule itself and its text, so that it cannot say anything else.</summary>
public static class RulePage
{
    /// <summary>Where the page stands in the repository.</summary>
    public static string PathOf(Rule rule) => $"docs/rules/{rule.Id}.md";

    public static string Markdown(Rule rule, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.RulePages;
        var text = language.Rules[rule.Id];
        var page = new StringBuilder();
        page.Append("# ").Append(rule.Title).Append("\n\n").Append(words.Generated).Append("\n\n");
        page.Append("| | |\n| --- | --- |\n");
        Row(words.Id, $"`{rule.Id}`");
        Row(words.Noun, text.Noun);
        Row(words.Trade, words.Trades[(int)rule.Trade]);
        Row(words.Unit, rule.Unit == "1" ? words.PureNumber : Shown(rule.Unit));
        Row(words.Sense, words.Senses[(int)rule.Sense]);
        Row(words.Margin, rule.Scale is { } scale
            ? Locale.Fill(words.MarginScale, ("scale", Numbers.Quantity(scale, rule.Unit, locale)))
            : words.Margins[(int)rule.Sense]);
        Row(words.Comfort, rule.ComfortBand > 0 ? Locale.Fill(words.ComfortBand, ("band", Numbers.Percent(rule.ComfortBand, locale))) : words.ComfortNone);
        Row(words.Proof, rule.NeedsProof ? words.ProofNeeded : words.ProofNotNeeded);
        Row(words.Method, rule.Method.Place == PathOf(rule) ? words.MethodHere : Sentences.Of(rule.Method, Cells.Cell.Empty, locale));
        Row(words.LimitSource, text.Limit);
        page.Append("\n## ").Append(words.Asks).Append("\n\n").Append(Wrapped(text.Asks));
        page.Append("\n## ").Append(words.Judged).Append("\n\n").Append(Wrapped(text.Judged));
        return page.ToString();

        void Row(string head, string value) => page.Append("| ").Append(head).Append(" | ").Append(value.Replace("|", "\\|", StringComparison.Ordinal)).Append(" |\n");
    }

    /// <summary>The list of all rules, docs/rules/README.md.</summary>
    public static string Index(IEnumerable<Rule> rules, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.RulePages;
        var page = new StringBuilder();
        page.Append("# ").Append(words.IndexTitle).Append("\n\n").Append(words.Generated).Append("\n\n").Append(Wrapped(words.IndexText)).Append('\n');
        page.Append("| ").Append(words.Id).Append(" | ").Append(words.Asks).Append(" | ").Append(words.Unit).Append(" | ").Append(words.Comfort).Append(" |\n| --- | --- | --- | ---: |\n");
        foreach (var rule in rules.OrderBy(r => r.Id, StringComparer.Ordinal))
            page.Append("| [`").Append(rule.Id).Append("`](").Append(rule.Id).Append(".md) | ").Append(rule.Title).Append(" | ")
                .Append(rule.Unit == "1" ? "" : DisplayUnit.Of(rule.Unit).Symbol).Append(" | ").Append(Numbers.Percent(rule.ComfortBand, locale)).Append(" |\n");
        return page.ToString();
    }

    private static string Shown(string unit)
    {
        string symbol = DisplayUnit.Of(unit).Symbol;
        return symbol == unit ? unit : $"{unit} ({symbol})";
    }

    private static string Wrapped(string text)
    {
        var page = new StringBuilder();
        foreach (string paragraph in text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (page.Length > 0) page.Append('\n');
            foreach (string line in Ledgers.LedgerText.Wrap(paragraph, 120)) page.Append(line).Append('\n');
        }

        return page.ToString();
    }
}

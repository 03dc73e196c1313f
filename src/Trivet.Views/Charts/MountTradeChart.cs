using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Reach;
using Trivet.Views.Words;

namespace Trivet.Views.Charts;

/// <summary>The mount's height against the worst margins: what each rule wins and pays, and where the worst of all is best.</summary>
public static class MountTradeChart
{
    // What lies far beyond a limit, or has reserve in plenty, decides nothing.
    private const double Least = -0.5, Most = 1;

    public static Chart Of(MountTrade trade, Cell cell, Locale? locale = null)
    {
        locale ??= Locale.English;
        var words = locale.Language.Drawing;
        ImmutableArray<double> heights = [.. trade.Heights.Select(z => 1000 * z)];
        var curves = trade.Curves.Select(c => new Series(Sentences.RuleNoun(c.Rule, locale), SeriesKind.Line, heights, Percent(c.Margins)));
        int best = Enumerable.Range(0, trade.Worst.Length).Where(i => trade.Worst[i] is >= Least and <= Most).OrderByDescending(i => trade.Worst[i]).FirstOrDefault(-1);
        return new(words.TradeTitle, new(words.TradeHeight, "mm"), new(words.TradeMargin, "%", 100 * Least, 100 * Most),
            [.. curves, new(words.TradeWorst, SeriesKind.Line, heights, Percent(trade.Worst), Strong: true)])
        {
            Guides =
            [
                new(words.LegendLimit, 0, Strong: true),
                .. cell.Mount.Z is { } now ? (Guide[])[new(words.TradeNow, 1000 * now, Upright: true)] : [],
            ],
            Marks = best < 0 ? [] : [new($"{words.TradeBest} {Numbers.Quantity(trade.Heights[best], "m", locale)}, {Numbers.Percent(trade.Worst[best], locale)}", heights[best], 100 * trade.Worst[best], Strong: true)],
            Cursor = "/mount/z",
        };
    }

    /// <summary>A curve that leaves the scale ends there.</summary>
    private static ImmutableArray<double> Percent(ImmutableArray<double> margins) => [.. margins.Select(m => m is >= Least and <= Most ? 100 * m : double.NaN)];
}

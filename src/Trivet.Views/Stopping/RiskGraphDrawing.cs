using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Stopping;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Stopping;

/// <summary>The risk graph of ISO 13849-1 with the way that each safety function takes, and at its end the functions themselves.</summary>
public static class RiskGraphDrawing
{
    private const double Width = 760, Top = 44, Row = 30, First = 26, Step = 108, Ends = 3 * Step + First;

    public static Drawing Of(Cell cell, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.Stopping;
        var page = new Sheet(words.Graph, $"{cell.Name ?? language.UnnamedCell}. {words.GraphDescription}", Width, Top + 8 * Row + 12);
        var taken = cell.Stopping.Functions.InOrder().Where(f => RiskGraph.Required(f.Value.Risk) is not null)
            .ToLookup(f => Leaf(f.Value.Risk), f => f.Value.Name ?? f.Key);
        foreach (var (head, level) in new[] { (words.GraphSeverity, 0), (words.GraphExposure, 1), (words.GraphAvoidance, 2) })
            page.Text(First + level * Step + Step / 2, 16, head, 12, "s", Anchor.Middle);
        page.Text(Ends + 6, 16, words.GraphLevel, 12, "s");
        // From the coarse branches to the fine ones; a way that is taken is drawn over the others.
        foreach (bool used in new[] { false, true })
            for (int level = 0; level < 3; level++)
                for (int branch = 0; branch < 2 << level; branch++)
                {
                    int size = 4 >> level;
                    bool on = Enumerable.Range(branch * size, size).Any(taken.Contains);
                    if (on != used) continue;
                    double from = First + level * Step, y = Middle(branch / 2, 2 * size), to = Middle(branch, size);
                    page.Polyline([(from, y), (from + 14, y), (from + 30, to), (from + Step, to)], on ? "x" : "d");
                    string name = $"{"SFP"[level]}{branch % 2 + 1}";
                    page.Text(from + 46, to - 4, name, 12, on ? "k" : "s");
                }
        for (int leaf = 0; leaf < 8; leaf++)
        {
            double y = Middle(leaf, 1);
            var level = RiskGraph.Required((RiskSeverity)(leaf >> 2), (RiskExposure)(leaf >> 1 & 1), (RiskAvoidance)(leaf & 1));
            string[] names = [.. taken[leaf]];
            page.Text(Ends + 6, y + 5, StopSections.Level(level), 15, names.Length > 0 ? "k" : "s");
            if (names.Length > 0) page.Text(Ends + 30, y + 4, Fitted(string.Join(", ", names), 12, Width - Ends - 36), 12);
        }
        return page.Finish();
    }

    private static double Middle(int branch, int size) => Top + (branch * size + size / 2.0) * Row;

    private static int Leaf(RiskEstimate risk) => 4 * (int)risk.Severity! + 2 * (int)risk.Exposure! + (int)risk.Avoidance!;

    private static string Fitted(string text, double size, double room)
    {
        while (text.Length > 2 && TextMetrics.Width(text, size) > room) text = text[..^2].TrimEnd() + "…";
        return text;
    }
}

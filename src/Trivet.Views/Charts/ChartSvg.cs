using System.Globalization;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Charts;

/// <summary>
/// Draws a chart as SVG in the manner of the drawings: one ink, told apart by line pattern and by names written beside the lines.
/// The plot's group carries data-cursor, data-origin-x, data-scale-x (pixels per unit), data-origin-y and data-scale-y, so that a
/// script can turn a pointer into values and link cursors.
/// </summary>
public static class ChartSvg
{
    private const double TickSize = 10.5, NameSize = 11.5, TitleSize = 13.5;
    // Tells lines apart where there is one ink.
    private static readonly string[] Patterns = ["w", "b h", "b q", "b m"];

    public static Drawing Render(Chart chart, double width = 640, double height = 380, Locale? locale = null)
    {
        locale ??= Locale.English;
        var sheet = new Sheet(chart.Title, $"{chart.Y.Title} / {chart.X.Title}: {string.Join(", ", chart.Series.Select(s => s.Name))}", width, height);
        bool bars = chart.Series.Any(s => s.Kind == SeriesKind.Bars);
        var x = TicksOf(chart.X, chart.Series.SelectMany(s => s.X), bars && !chart.Categories.IsEmpty, false, (int)(width / 80), bars);
        var y = TicksOf(chart.Y, chart.Series.SelectMany(s => s.Y).Concat(chart.Guides.Where(g => !g.Upright).Select(g => g.At)), false, bars, (int)(height / 52), false);
        string[] yText = [.. y.Values.Select(v => Numbers.Plain(v, y.Decimals, locale))];
        double left = 20 + yText.Select(t => TextMetrics.Width(t, TickSize)).DefaultIfEmpty(20).Max();
        double names = chart.Series.Where(s => s.Kind == SeriesKind.Line).Select(s => TextMetrics.Width(s.Name, NameSize)).DefaultIfEmpty(0).Max();
        double right = Math.Min(Math.Max(names + 18, 18), width * 0.3);
        var plot = new Box(left, 56, width - left - right, height - 56 - 46);
        var map = new Map(plot, x, y);

        sheet.Text(12, 21, TextMetrics.Cut(chart.Title, TitleSize, width - 24), TitleSize, "k");
        sheet.Text(12, 42, WithUnit(chart.Y), TickSize, "s");
        sheet.Text(plot.Right, height - 8, WithUnit(chart.X), TickSize, "s", Anchor.End);
        for (int i = 0; i < y.Values.Length; i++)
        {
            double at = map.Y(y.Values[i]);
            sheet.Line(plot.X, at, plot.Right, at, "g");
            sheet.Text(plot.X - 7, at + 3.7, yText[i], TickSize, "s", Anchor.End);
        }

        HorizontalTicks(sheet, chart, x, plot, map, height, locale);
        sheet.Line(plot.X, plot.Bottom, plot.Right, plot.Bottom, "");
        sheet.Line(plot.X, plot.Y, plot.X, plot.Bottom, "");

        sheet.Open(("class", "plot"), ("data-cursor", chart.Cursor), ("data-origin-x", R(map.X(0))), ("data-scale-x", R(map.ScaleX)), ("data-origin-y", R(map.Y(0))), ("data-scale-y", R(-map.ScaleY)),
            ("data-plot", string.Join(' ', Sheet.N(plot.X), Sheet.N(plot.Y), Sheet.N(plot.Width), Sheet.N(plot.Height))));
        int line = 0;
        foreach (var s in chart.Series) Draw(sheet, s, map, chart.Series.Count(o => o.Kind == SeriesKind.Bars), s.Kind == SeriesKind.Line ? Pattern(s) : "");
        sheet.Close();

        foreach (var g in chart.Guides) Guide(sheet, g, plot, map);
        DirectNames(sheet, chart, plot, map, right);
        foreach (var m in chart.Marks) Mark(sheet, m, plot, map);
        return sheet.Finish();

        // A line without a name goes with the one before it.
        string Pattern(Series s) => Patterns[(s.Name.Length > 0 ? line++ : Math.Max(line - 1, 0)) % Patterns.Length];
    }

    private static string WithUnit(Axis axis) => axis.Unit.Length == 0 ? axis.Title : $"{axis.Title}, {axis.Unit}";

    private static string R(double v) => v.ToString("R", CultureInfo.InvariantCulture);

    private static Ticks TicksOf(Axis axis, IEnumerable<double> data, bool categories, bool zero, int most, bool bars)
    {
        var finite = data.Where(double.IsFinite).ToList();
        double from = axis.From ?? finite.DefaultIfEmpty(0).Min(), to = axis.To ?? finite.DefaultIfEmpty(1).Max();
        if (zero) (from, to) = (Math.Min(from, 0), Math.Max(to, 0));
        if (categories || bars && axis.From is null && axis.To is null) return Ticks.For(from - 0.6, to + 0.6, most, true, true);
        return Ticks.For(from, to, Math.Max(most, 3), axis.From is not null, axis.To is not null);
    }

    private static void HorizontalTicks(Sheet sheet, Chart chart, Ticks x, Box plot, Map map, double height, Locale locale)
    {
        if (chart.Categories.IsEmpty)
        {
            foreach (double v in x.Values)
            {
                double at = map.X(v);
                sheet.Line(at, plot.Bottom, at, plot.Bottom + 4, "");
                sheet.Text(at, plot.Bottom + 16, Numbers.Plain(v, x.Decimals, locale), TickSize, "s", Anchor.Middle);
            }

            return;
        }

        double room = map.ScaleX - 6;
        for (int i = 0; i < chart.Categories.Length; i++)
            sheet.Text(map.X(i), plot.Bottom + 16, TextMetrics.Cut(chart.Categories[i], TickSize, room), TickSize, "s", Anchor.Middle);
    }

    private static void Draw(Sheet sheet, Series s, Map map, int barSeries, string pattern)
    {
        int n = Math.Min(s.X.Length, s.Y.Length);
        if (s.Id.Length > 0) sheet.Open(("data-series", s.Id));
        switch (s.Kind)
        {
            case SeriesKind.Line:
                var run = new List<(double, double)>();
                for (int i = 0; i <= n; i++)
                {
                    if (i < n && double.IsFinite(s.X[i]) && double.IsFinite(s.Y[i])) run.Add((map.X(s.X[i]), map.ClampedY(s.Y[i])));
                    else
                    {
                        if (run.Count > 1) sheet.Polyline(Simplified(run), s.Strong ? "x" : pattern);
                        run.Clear();
                    }
                }

                break;
            case SeriesKind.Points:
                for (int i = 0; i < n; i++)
                    if (map.Inside(s.X[i], s.Y[i])) sheet.Circle(map.X(s.X[i]), map.Y(s.Y[i]), s.Strong ? 3 : 2.2, s.Strong ? "xf" : "p");
                break;
            default:
                double w = Math.Max(Math.Min(0.7 * map.ScaleX / Math.Max(barSeries, 1), 60), 1);
                for (int i = 0; i < n; i++)
                {
                    if (!double.IsFinite(s.Y[i])) continue;
                    double y0 = map.ClampedY(0), y1 = map.ClampedY(s.Y[i]);
                    var bar = new Box(map.X(s.X[i]) - w / 2, Math.Min(y0, y1), w, Math.Abs(y1 - y0));
                    sheet.Rectangle(bar, s.Strong ? "xf" : "l b");
                    sheet.Reserve(bar);
                }

                break;
        }
        if (s.Id.Length > 0) sheet.Close();
    }

    /// <summary>The same line with the points left out that no eye would miss (the Ramer–Douglas–Peucker method, from memory).</summary>
    private static IEnumerable<(double X, double Y)> Simplified(List<(double X, double Y)> run)
    {
        const double Seen = 0.1; // pixels
        var keep = new bool[run.Count];
        keep[0] = keep[^1] = true;
        var open = new Stack<(int From, int To)>([(0, run.Count - 1)]);
        while (open.TryPop(out var part))
        {
            var ((x0, y0), (x1, y1)) = (run[part.From], run[part.To]);
            double dx = x1 - x0, dy = y1 - y0, length2 = dx * dx + dy * dy, most = Seen * Seen;
            int farthest = -1;
            for (int i = part.From + 1; i < part.To; i++)
            {
                double px = run[i].X - x0, py = run[i].Y - y0, along = length2 > 0 ? Math.Clamp((px * dx + py * dy) / length2, 0, 1) : 0;
                double away2 = (px - along * dx) * (px - along * dx) + (py - along * dy) * (py - along * dy);
                if (away2 > most) (most, farthest) = (away2, i);
            }
            if (farthest < 0) continue;
            keep[farthest] = true;
            open.Push((part.From, farthest));
            open.Push((farthest, part.To));
        }
        return run.Where((_, i) => keep[i]);
    }

    private static void Guide(Sheet sheet, Guide g, Box plot, Map map)
    {
        string style = g.Strong ? "x h" : "d h", words = g.Strong ? "a o" : "s o";
        if (g.Upright)
        {
            double at = map.X(g.At);
            if (at < plot.X || at > plot.Right) return;
            sheet.Line(at, plot.Y, at, plot.Bottom, style);
            Labels.Centred(sheet, sheet.Page, [(at, plot.Y - 7), (at + 40, plot.Y + 8), (at - 40, plot.Y + 8)], g.Name, TickSize, words);
            return;
        }

        double y = map.Y(g.At);
        if (y < plot.Y - 1 || y > plot.Bottom + 1) return;
        sheet.Line(plot.X, y, plot.Right, y, style);
        double half = TextMetrics.Width(g.Name, TickSize) / 2 + 6;
        Labels.Centred(sheet, sheet.Page, [(plot.X + half, y - 8), (plot.Right - half, y - 8), (plot.X + half, y + 9), (plot.Right - half, y + 9)], g.Name, TickSize, words);
    }

    /// <summary>The name of a line stands where the line ends, moved apart where lines end together; clouds are named at their densest height.</summary>
    private static void DirectNames(Sheet sheet, Chart chart, Box plot, Map map, double right)
    {
        var ends = chart.Series.Where(s => s.Kind == SeriesKind.Line && s.Name.Length > 0)
            .Select(s => (Series: s, Last: Enumerable.Range(0, Math.Min(s.X.Length, s.Y.Length)).LastOrDefault(i => double.IsFinite(s.Y[i]) && double.IsFinite(s.X[i]), -1)))
            .Where(e => e.Last >= 0).OrderBy(e => map.ClampedY(e.Series.Y[e.Last])).ToList();
        double[] put = LevelMarks.Spread([.. ends.Select(e => map.ClampedY(e.Series.Y[e.Last]))], NameSize * 1.35, plot.Y + 4, plot.Bottom - 4);
        for (int i = 0; i < ends.Count; i++)
        {
            var (s, last) = ends[i];
            double x = map.X(s.X[last]), y = map.ClampedY(s.Y[last]);
            sheet.Polyline([(x + 2, y), (plot.Right + 6, put[i])], "g");
            sheet.Text(plot.Right + 9, put[i] + 4, TextMetrics.Cut(s.Name, NameSize, right - 12), NameSize, s.Strong ? "a" : "");
        }

        foreach (var s in chart.Series.Where(s => s.Kind == SeriesKind.Points && s.Name.Length > 0))
        {
            int at = Enumerable.Range(0, Math.Min(s.X.Length, s.Y.Length)).Where(i => map.Inside(s.X[i], s.Y[i])).OrderByDescending(i => s.X[i]).FirstOrDefault(-1);
            if (at >= 0) Labels.Callout(sheet, sheet.Page, map.X(s.X[at]), map.Y(s.Y[at]), [s.Name], NameSize, s.Strong ? "a o" : "o", "d", 120);
        }
    }

    private static void Mark(Sheet sheet, ChartMark m, Box plot, Map map)
    {
        if (!map.Inside(m.X, m.Y)) return;
        double x = map.X(m.X), y = map.Y(m.Y);
        sheet.Circle(x, y, 4, m.Strong ? "xf" : "p w");
        Labels.Callout(sheet, plot, x, y, [m.Name], NameSize, m.Strong ? "a o" : "o", m.Strong ? "x" : "d", 160);
    }

    private sealed record Map(Box Plot, Ticks TickX, Ticks TickY)
    {
        public double ScaleX => Plot.Width / (TickX.To - TickX.From);
        public double ScaleY => Plot.Height / (TickY.To - TickY.From);
        public double X(double v) => Plot.X + (v - TickX.From) * ScaleX;
        public double Y(double v) => Plot.Bottom - (v - TickY.From) * ScaleY;
        public double ClampedY(double v) => Math.Clamp(Y(v), Plot.Y, Plot.Bottom);
        public bool Inside(double x, double y) => X(x) >= Plot.X - 1e-6 && X(x) <= Plot.Right + 1e-6 && Y(y) >= Plot.Y - 1e-6 && Y(y) <= Plot.Bottom + 1e-6;
    }
}

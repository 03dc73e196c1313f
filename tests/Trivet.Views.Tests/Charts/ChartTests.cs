using System.Collections.Immutable;
using System.Globalization;
using Trivet.Reach;
using Trivet.Views.Charts;
using Trivet.Views.Tests.Drawings;

namespace Trivet.Views.Tests.Charts;

public sealed class ChartTests
{
    private static ImmutableArray<double> Steps(int n, Func<double, double> f) => [.. Enumerable.Range(0, n).Select(i => f(i / (double)(n - 1)))];

    internal static Chart Trade { get; } = new("Mount height against the worst margin (invented)", new("mount height", "mm"), new("margin", "%"),
    [
        new("travel", SeriesKind.Line, Steps(40, t => 1700 + 100 * t), Steps(40, t => -20 + 60 * t)),
        new("ball joint swing", SeriesKind.Line, Steps(40, t => 1700 + 100 * t), Steps(40, t => 30 - 40 * t * t)),
        new("rod clearance", SeriesKind.Line, Steps(40, t => 1700 + 100 * t), Steps(40, t => t is > 0.4 and < 0.5 ? double.NaN : 12 - 4 * t)),
        new("worst of all", SeriesKind.Line, Steps(40, t => 1700 + 100 * t), Steps(40, t => Math.Min(Math.Min(-20 + 60 * t, 30 - 40 * t * t), 12 - 4 * t)), Strong: true),
    ])
    {
        Guides = [new("limit", 0, Strong: true), new("as described", 1750, Upright: true)],
        Marks = [new("largest worst margin", 1754, 9.8)],
        Cursor = "mount-height",
    };

    internal static Chart Cloud { get; } = new("Torque and speed of one axis (invented)", new("speed", "1/min"), new("torque", "N·m"),
        [new("moves", SeriesKind.Points, Steps(80, t => 3000 * t * Math.Abs(Math.Sin(40 * t))), Steps(80, t => 2 * Math.Cos(30 * t)))]);

    internal static Chart Counts { get; } = new("Findings by verdict (invented)", new("verdict"), new("findings"),
        [new("findings", SeriesKind.Bars, [0, 1, 2, 3], [1, 4, 3, 12])])
    { Categories = ["falls short", "open", "tight", "holds"] };

    public static TheoryData<string> Names => ["trade", "cloud", "counts", "empty"];

    private static Chart Named(string name) => name switch
    {
        "trade" => Trade,
        "cloud" => Cloud,
        "counts" => Counts,
        _ => new("Nothing measured yet", new("x"), new("y"), []),
    };

    [Theory, MemberData(nameof(Names))]
    public void No_two_texts_overlap_and_none_leaves_the_page(string name)
    {
        foreach (var (w, h) in ((double, double)[])[(640, 380), (420, 280), (1000, 500)]) new SvgPage(ChartSvg.Render(Named(name), w, h)).AssertTextsAreApart();
    }

    [Fact]
    public void Lines_are_named_beside_their_ends_and_parted_where_there_is_no_number()
    {
        var page = new SvgPage(ChartSvg.Render(Trade));
        var texts = page.Texts().Select(t => t.Text).ToList();
        Assert.All(Trade.Series, s => Assert.Contains(s.Name, texts));
        var plot = page.All("g").Single(g => g.Attribute("class")?.Value == "plot");
        Assert.Equal(5, plot.Elements().Count(e => e.Name.LocalName == "polyline"));
    }

    [Fact]
    public void The_plot_says_how_pixels_become_values()
    {
        var plot = new SvgPage(ChartSvg.Render(Trade)).All("g").Single(g => g.Attribute("class")?.Value == "plot");
        Assert.Equal("mount-height", plot.Attribute("data-cursor")!.Value);
        string[] first = plot.Elements().First().Attribute("points")!.Value.Split(' ')[0].Split(',');
        double x = (double.Parse(first[0], CultureInfo.InvariantCulture) - SvgPage.Number(plot, "data-origin-x")) / SvgPage.Number(plot, "data-scale-x");
        double y = (double.Parse(first[1], CultureInfo.InvariantCulture) - SvgPage.Number(plot, "data-origin-y")) / SvgPage.Number(plot, "data-scale-y");
        Assert.Equal(1700, x, 0.05);
        Assert.Equal(-20, y, 0.05);
    }

    [Fact]
    public void The_trade_of_the_mount_shows_each_rule_and_the_best_height()
    {
        var trade = new MountTrade([1.70, 1.75, 1.80], [new(HandMade.Travel, [0.1, 0.3, 0.2]), new(HandMade.Swing, [0.4, 0.2, -0.1])], [0.1, 0.2, -0.1]);
        var chart = MountTradeChart.Of(trade, HandMadeCells.RailDelta.Cell);
        var page = new SvgPage(ChartSvg.Render(chart));
        page.AssertTextsAreApart();
        var texts = page.Texts().Select(t => t.Text).ToList();
        Assert.Contains("best 1750 mm, 20 %", texts);
        Assert.Contains("rod swing", texts);
        Assert.Contains("as described", texts);
    }

    [Theory]
    [InlineData(0, 10, 6, 2)]
    [InlineData(0, 1, 6, 0.2)]
    [InlineData(-20, 40, 7, 10)]
    [InlineData(1700, 1800, 6, 20)]
    [InlineData(0.0001, 0.0009, 5, 0.0002)]
    public void Ticks_are_round(double from, double to, int most, double step)
    {
        var ticks = Ticks.For(from, to, most);
        Assert.Equal(step, ticks.Step, step * 1e-9);
        Assert.True(ticks.From <= from && ticks.To >= to);
        Assert.All(ticks.Values, v => Assert.Equal(Math.Round(v / step), v / step, 1e-6));
    }

    [Fact]
    public void Ticks_cover_any_range_with_about_the_number_wanted()
    {
        var random = new Random(5);
        for (int i = 0; i < 2000; i++)
        {
            double from = Math.ScaleB(random.NextDouble() - 0.5, random.Next(-20, 20)), to = from + Math.ScaleB(random.NextDouble() + 0.01, random.Next(-10, 20));
            var ticks = Ticks.For(from, to, 6);
            Assert.InRange(ticks.Values.Length, 2, 8);
            double lead = ticks.Step / Math.Pow(10, Math.Floor(Math.Log10(ticks.Step) + 1e-9));
            Assert.Contains(Math.Round(lead, 6), (double[])[1, 2, 5]);
        }
    }

    [Fact]
    public void A_range_without_width_still_gives_an_axis()
    {
        Assert.True(Ticks.For(5, 5, 6).Values.Length >= 2);
        Assert.True(Ticks.For(0, 0, 6).Values.Length >= 2);
        Assert.True(Ticks.For(double.NaN, double.PositiveInfinity, 6).Values.Length >= 2);
    }
}

using System.Globalization;
using Bunit;
using Trivet.Desk.Components.Ledgers;

namespace Trivet.Desk.Ledgers;

public sealed class MarginGaugeTests : BunitContext
{
    [Fact]
    public void The_mark_is_left_of_the_limit_when_the_margin_is_negative_and_right_of_it_otherwise()
    {
        double limit = Limit(0.2);
        Assert.True(Mark(-0.2) < limit);
        Assert.True(Mark(0.2) > limit);
    }

    [Fact]
    public void A_margin_beyond_the_scale_is_drawn_at_its_end()
    {
        Assert.Equal(Mark(-0.5), Mark(-7));
        Assert.Equal(Mark(1), Mark(12));
        Assert.InRange(Mark(-7), 0, 88);
    }

    [Fact]
    public void Without_a_margin_nothing_is_drawn() => Assert.Empty(Gauge(double.NaN).FindAll("svg"));

    private double Limit(double margin) => double.Parse(Gauge(margin).Find(".limit").GetAttribute("x1")!, CultureInfo.InvariantCulture);

    private double Mark(double margin) => double.Parse(Gauge(margin).Find(".mark").GetAttribute("d")![1..].Split(' ')[0], CultureInfo.InvariantCulture);

    private IRenderedComponent<MarginGauge> Gauge(double margin) => Render<MarginGauge>(p => p.Add(c => c.Margin, margin).Add(c => c.ComfortBand, 0.1));
}

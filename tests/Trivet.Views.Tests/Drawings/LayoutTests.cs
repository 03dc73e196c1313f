using Trivet.Views.Drawings;

namespace Trivet.Views.Tests.Drawings;

public sealed class LayoutTests
{
    [Fact]
    public void Level_marks_stand_apart_and_near_their_levels()
    {
        double[] put = LevelMarks.Spread([100, 104, 106, 300], 26, 0, 400);
        for (int i = 1; i < put.Length; i++) Assert.True(put[i] - put[i - 1] >= 26 - 1e-9);
        Assert.Equal(300, put[3], 1e-6);
        Assert.InRange(put[1], 90, 118);
    }

    [Fact]
    public void Dimensions_that_would_touch_go_to_another_tier()
    {
        var sheet = new Sheet("t", "d", 400, 300);
        int used = Dimensions.Below(sheet, 100, [new(50, 150, "100", 90, 90), new(100, 200, "100", 90, 90), new(160, 260, "100", 90, 90)], 3);
        Assert.Equal(2, used);
        new SvgPage(sheet.Finish()).AssertTextsAreApart();
    }

    [Fact]
    public void A_dimension_without_a_free_tier_is_left_out_rather_than_written_over()
    {
        var sheet = new Sheet("t", "d", 400, 300);
        Dimensions.Below(sheet, 100, [new(50, 150, "one", 90, 90), new(60, 160, "two", 90, 90)], 1);
        Assert.Single(new SvgPage(sheet.Finish()).Texts());
    }

    [Fact]
    public void Text_is_cut_to_the_width_it_is_given()
    {
        string cut = TextMetrics.Cut("a name that does not fit at all", 12, 80);
        Assert.EndsWith("…", cut);
        Assert.InRange(TextMetrics.Width(cut, 12), 40, 80);
        Assert.Equal("short", TextMetrics.Cut("short", 12, 80));
    }

    [Fact]
    public void Wrapped_text_keeps_its_words_and_its_width()
    {
        const string Text = "rod clearance at tray right, a / b: 8.4 mm, at least 10 mm wanted; falls short by 16 %";
        var lines = TextMetrics.Wrap(Text, 12, 160, 10);
        Assert.Equal(Text, string.Join(' ', lines));
        Assert.All(lines, l => Assert.True(TextMetrics.Width(l, 12) <= 160));
        Assert.Equal(2, TextMetrics.Wrap(Text, 12, 160, 2).Count);
    }

    [Fact]
    public void The_hull_of_a_square_with_points_inside_is_the_square() =>
        Assert.Equal([(0d, 0d), (2, 0), (2, 2), (0, 2)], Hull.Of([(0, 0), (1, 1), (2, 0), (1, 0), (2, 2), (0, 2), (0.5, 1.5)]));

    [Theory, InlineData(0.9, 1), InlineData(1.0, 2), InlineData(4.2, 5), InlineData(700, 3000)]
    public void A_view_takes_the_largest_scale_that_fits(double metres, int least)
    {
        var extents = new Extents(Seen.FromAbove);
        extents.Add(new(0, 0, 0));
        extents.Add(new(metres, metres / 2, 0));
        var view = View.Fit(Seen.FromAbove, extents, new(50, 40, 500, 400));
        Assert.True(view.Denominator >= least);
        var (x0, y0) = view.At(new(0, 0, 0));
        var (x1, y1) = view.At(new(metres, metres / 2, 0));
        Assert.True(x0 >= 50 && x1 <= 550 && y1 >= 40 && y0 <= 440);
        Assert.True(x1 - x0 > 500 / 2.2, "No scale between would have filled the room better.");
    }
}

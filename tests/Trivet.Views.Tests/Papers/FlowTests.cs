using System.Collections.Immutable;
using Trivet.Views.Papers;
using Xunit;

namespace Trivet.Views.Tests.Papers;

public sealed class FlowTests
{
    private static ImmutableArray<Paper> Set(params FlowBlock[] blocks) => Flow.Pages("title", "", 210, 100, blocks, (page, pages) => $"page {page} of {pages}");

    private static string[] Texts(Paper page) => [.. page.Marks.OfType<Label>().Select(l => l.Text)];

    private static FlowTable Rows(int count) => new(["head one", "head two"], [1, 1], [.. Enumerable.Range(1, count).Select(i => ImmutableArray.Create($"row {i}", "x"))]);

    [Fact]
    public void A_table_repeats_its_head_on_each_page_and_loses_no_row()
    {
        var pages = Set(Rows(60));
        Assert.True(pages.Length > 3);
        Assert.All(pages, p => Assert.Single(Texts(p), "head one"));
        Assert.Equal(Enumerable.Range(1, 60).Select(i => $"row {i}"), pages.SelectMany(Texts).Where(t => t.StartsWith("row ", StringComparison.Ordinal)));
        Assert.Contains($"page 2 of {pages.Length}", Texts(pages[1]));
    }

    [Fact]
    public void Every_page_but_the_first_says_what_goes_on_there_and_a_picture_stays_whole()
    {
        var picture = new FlowPicture([new Stroke([new(0, 0), new(60, 30)], Pen.Thin)], 60, 30);
        for (int lines = 0; lines < 30; lines++)
        {
            var pages = Flow.Pages("title", "", 210, 100, [.. Enumerable.Range(0, lines).Select(i => new FlowParagraph($"line {i}")), picture, Rows(3)], (_, _) => "", "going on");
            Assert.Equal(pages.Select((_, i) => i > 0), pages.Select(p => Texts(p).Contains("going on")));
            var line = Assert.Single(pages.SelectMany(p => p.Marks).OfType<Stroke>(), s => s.Points[1].Y - s.Points[0].Y > 29);
            Assert.InRange(line.Points[0].Y, 20, 100 - 15 - 30);
            Assert.Equal(210 / 2, (line.Points[0].X + line.Points[1].X) / 2, 1e-9);
        }
    }

    [Fact]
    public void A_heading_stands_on_the_page_of_what_follows()
    {
        for (int lines = 1; lines < 40; lines++)
        {
            var pages = Set([.. Enumerable.Range(0, lines).Select(i => new FlowParagraph($"line {i}")), new FlowHeading("heading"), Rows(3)]);
            var page = Assert.Single(pages, p => Texts(p).Contains("heading"));
            Assert.Contains("row 1", Texts(page));
        }
    }

    [Fact]
    public void Nothing_leaves_the_page_and_rows_do_not_overlap()
    {
        string long_ = string.Join(' ', Enumerable.Repeat("a long text that has to be set in several lines", 5));
        foreach (var page in Set(new FlowHeading("big", true), new FlowParagraph(long_), new FlowTable(["a", "b"], [1, 3], [.. Enumerable.Repeat(ImmutableArray.Create("short", long_), 12)])))
        {
            var labels = page.Marks.OfType<Label>().Where(l => l.At.Y > 15).ToArray();
            Assert.All(labels, l => Assert.InRange(l.At.X + DraftingTable.WidthOf(l.Text, l.Size), 0, 210 - 14));
            Assert.All(labels, l => Assert.InRange(l.At.Y + l.Size, 15, 100));
            foreach (var column in labels.GroupBy(l => l.At.X))
            {
                var levels = column.OrderByDescending(l => l.At.Y).ToArray();
                for (int i = 1; i < levels.Length; i++) Assert.True(levels[i - 1].At.Y - levels[i].At.Y > 0.9 * levels[i].Size);
            }
        }
    }

    /// <summary>The cable table has thirteen columns; in the widest of the samples none of its words may be cut.</summary>
    [Theory]
    [InlineData("jar-lids"), InlineData("biscuits"), InlineData("labels")]
    public void No_word_of_a_schedule_or_a_list_is_cut(string sample)
    {
        var cell = Files.CellFile.Read(System.Text.Encoding.UTF8.GetBytes(Files.Samples.Find(sample)!.Text), sample).Cell!;
        ImmutableArray<Paper> pages = [.. cell.Cables.IsEmpty ? [] : Trivet.Views.Cabling.CablePapers.Schedule(cell, "r"), .. Trivet.Views.Settings.SettingPapers.List(cell, "r")];
        Assert.NotEmpty(pages);
        Assert.DoesNotContain(pages.SelectMany(Texts), t => t.EndsWith('…'));
        Assert.All(pages.SelectMany(p => p.Marks.OfType<Label>()), l => Assert.InRange(l.Size, 1.6 - 1e-9, 6));
    }

    [Fact]
    public void A_table_of_long_words_gets_smaller_type_before_anything_is_cut()
    {
        string[] words = [.. Enumerable.Range(0, 9).Select(i => new string((char)('a' + i), 16))];
        var table = FlowTable.Fitted([.. words], [[.. words]], 210);
        Assert.InRange(table.Size, 1.6, 2.5);
        Assert.DoesNotContain(Texts(Set(table)[0]), t => t.EndsWith('…'));
        Assert.Equal(DraftingTable.Type, FlowTable.Fitted(["a", "b"], [["x", "a long text in many short words, which has the room that it needs"]], 210).Size);
    }

    [Fact]
    public void A_word_wider_than_its_column_is_cut_and_setting_ends() =>
        Assert.Contains(Texts(Set(new FlowTable(["h", "h"], [1, 20], [[new string('m', 400), "x"]]))[0]), t => t.EndsWith('…'));
}

using System.Text;
using System.Text.Json;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Procedures;
using Trivet.Views.Pictures;
using Trivet.Views.Procedures;
using Trivet.Views.Words;
using Xunit;

namespace Trivet.Views.Tests.Procedures;

public sealed class ProcedureSheetTests
{
    private static Cell Sample(string id) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(id)!.Text), id).Cell!;

    private static ProcedureSheet Lids(int people = 2, string tag = "en") => ProcedureSheet.Of(Sample("jar-lids"), people, ProcedureWords.In(tag));

    [Fact]
    public void A_drive_whose_discharge_time_nobody_stated_is_not_waited_for_no_time()
    {
        var lids = Sample("jar-lids");
        var modules = lids.Cabinet.Modules.SetItem("axis-a", lids.Cabinet.Modules["axis-a"] with { DischargeTime = null });
        var sheet = ProcedureSheet.Of(lids with { Cabinet = lids.Cabinet with { Modules = modules } }, 1, ProcedureWords.In("en"));
        foreach (var step in sheet.Steps.Where(s => s.Step.Kind is "motor-supply-locked" or "isolate"))
        {
            Assert.Contains("wait open: not stated", step.What, StringComparison.Ordinal);
            Assert.Equal(["/cabinet/modules/axis-a/dischargeTime"], step.Missing);
        }
        Assert.NotEmpty(sheet.Open);
        Assert.Equal("", Lids().Open);
    }

    [Fact]
    public void A_length_is_read_before_its_plan_is_told()
    {
        var blind = Lids().Steps.SelectMany(s => s.Asks).Where(a => a.Of is AskedValue { ShownAfter: true }).ToArray();
        Assert.NotEmpty(blind);
        Assert.All(blind, a => Assert.Equal(("", ProcedureWords.In("en").Labels.ShownAfter), (a.Accepted, a.Planned)));
    }

    [Fact]
    public void Programs_get_every_step_with_what_it_asks()
    {
        var sheet = Lids();
        var json = JsonDocument.Parse(ProcedureForms.Json(sheet, Sample("jar-lids"), "abc")).RootElement;
        Assert.Equal("trivet-procedure", json.GetProperty("format").GetString());
        var steps = json.GetProperty("steps").EnumerateArray().ToArray();
        Assert.Equal(sheet.Steps.Length, steps.Length);
        Assert.All(steps, s => Assert.All(s.GetProperty("held").EnumerateArray(), h => Assert.NotEmpty(h.GetProperty("by").GetString()!)));
        Assert.Equal(sheet.Steps.Length + 1, ProcedureForms.Csv(sheet).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public void Each_step_has_its_card_in_order_with_a_way_back_and_a_place_for_every_answer()
    {
        foreach (string tag in new[] { "en", "de" })
        {
            var sheet = Lids(tag: tag);
            var pictures = PictureSet.Of(Assess.Preview(Sample("jar-lids")), sheet.Procedure, StepTexts.LocaleOf(sheet.Words));
            var cards = StepCards.Of(sheet, pictures, "http://desk/cell/jar-lids/procedure", "12345678");
            Assert.Equal(sheet.Steps.Select(s => s.Step.Id), cards.Skip(1).Select(c => Uri.UnescapeDataString(c.Link.Split("?step=")[1])).Distinct());
            foreach (var step in sheet.Steps)
            {
                var marks = cards.Where(c => c.Link.EndsWith(Uri.EscapeDataString(step.Step.Id), StringComparison.Ordinal)).SelectMany(c => c.Paper.Marks).OfType<Views.Papers.Label>().ToArray();
                Assert.Equal(step.Asks.Length, marks.Count(m => m.Text == StepCards.Box));
                // Nothing is cut off on a card.
                Assert.DoesNotContain(marks, m => m.Text.EndsWith('…'));
                Assert.All(marks, m => Assert.InRange(m.At.Y, 5, StepCards.Height - 10));
                // The boxes stand in the order in which the floor asks, and every page after the first says what goes on there.
                Assert.Equal(step.Asks.Select(a => a.What.Split(' ')[0]), step.Asks.IsEmpty ? [] : Firsts(cards, step));
                Assert.All(Pages(cards, step).Skip(1), p => Assert.Contains(p.Marks.OfType<Views.Papers.Label>(), l => l.Strong && l.Text.EndsWith(tag == "de" ? "Fortsetzung" : "continued", StringComparison.Ordinal)));
            }
        }
    }

    private static Views.Papers.Paper[] Pages(IEnumerable<CardPage> cards, WordedStep step) => [.. cards.Where(c => c.Link.EndsWith("=" + Uri.EscapeDataString(step.Step.Id), StringComparison.Ordinal)).Select(c => c.Paper)];

    /// <summary>The first word of each row of the record, from the top: it stands left of its box.</summary>
    private static IEnumerable<string> Firsts(IEnumerable<CardPage> cards, WordedStep step)
    {
        foreach (var page in Pages(cards, step))
        {
            var labels = page.Marks.OfType<Views.Papers.Label>().ToArray();
            foreach (var box in labels.Where(l => l.Text == StepCards.Box).OrderByDescending(l => l.At.Y))
                yield return labels.Where(l => Math.Abs(l.At.Y - box.At.Y) < 0.01).MinBy(l => l.At.X)!.Text.Split(' ')[0];
        }
    }

    [Fact]
    public void A_card_keeps_its_page_for_its_picture_and_takes_another_only_where_the_smallest_does_not_fit()
    {
        var sheet = Lids();
        var pictures = PictureSet.Of(Assess.Preview(Sample("jar-lids")), sheet.Procedure);
        var none = pictures with { OfSteps = pictures.OfSteps.Clear() };
        int Count(PictureSet of, string step) => Pages(StepCards.Of(sheet, of, "http://desk", "12345678"), sheet.Steps.First(s => s.Step.Id == step)).Length;
        Assert.Equal((1, 1), (Count(none, "hand-move:a"), Count(pictures, "hand-move:a")));
        Assert.Equal((1, 2), (Count(none, "first-enable:a"), Count(pictures, "first-enable:a")));
        // A label of a picture is never smaller than what is read at arm's length (common practice, no source).
        Assert.All(StepCards.Of(sheet, pictures, "http://desk", "12345678").SelectMany(c => c.Paper.Marks).OfType<Views.Papers.Label>().Where(l => l.At.Y > 20), l => Assert.True(l.Size >= 1.6));
    }

    [Fact]
    public void The_lanes_show_every_step_once_for_each_who_does_it_and_no_words_that_need_translation()
    {
        var sheet = Lids();
        string svg = LaneChart.Of(sheet).Svg;
        Assert.All(sheet.Steps, s => Assert.Contains($"data-step=\"{s.Step.Id}\"", svg, StringComparison.Ordinal));
        Assert.True(Lids(1).Schedule.Minutes > sheet.Schedule.Minutes);
        Assert.True(sheet.Schedule.Minutes >= sheet.Schedule.Critical);
    }
}

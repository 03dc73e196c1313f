using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Views.Words;

namespace Trivet.Views.Tests.Words;

public sealed class SentencesTests
{
    private static string Of(Finding f) => Sentences.Of(f, HandMade.Cell);

    [Fact]
    public void A_finding_that_falls_short_says_by_how_much() =>
        Assert.Equal("rod clearance at tray-left: 8.4 mm, at least 10 mm wanted; falls short by 16 %", Of(HandMade.TooNear));

    [Fact]
    public void A_tight_finding_says_what_is_in_reserve() =>
        Assert.Equal("travel at infeed belt, chain b: 49.5 mm, 0 mm to 50 mm wanted; tight, 2 % in reserve",
            Of(HandMade.Judge(HandMade.Travel, 0.0495, 0, 0.05, "/stations/belt", "b")));

    [Fact]
    public void A_tight_finding_inside_its_uncertainty_says_so() =>
        Assert.Equal("rod clearance at tray-left: 12 ± 4 mm, at least 10 mm wanted; tight, 20 % in reserve is less than the uncertainty allows",
            Of(HandMade.Judge(HandMade.Clearance, 0.012, 0.010, double.PositiveInfinity) with { Uncertainty = 0.002 }));

    [Fact]
    public void A_finding_that_was_only_sampled_says_so() =>
        Assert.Equal("rod swing at tray-left: 22.9°, at most 34.4° wanted; open, only sampled so far",
            Of(HandMade.Judge(HandMade.Swing, 0.4, double.NegativeInfinity, 0.6004) with { Assurance = Assurance.Sampled }));

    [Fact]
    public void A_finding_whose_bound_does_not_suffice_says_what_was_proved() =>
        Assert.Equal("rod clearance at tray-left: 12 mm, at least 10 mm wanted; open, proved only to stay above 9.5 mm",
            Of(HandMade.Judge(HandMade.Clearance, 0.012, 0.010, double.PositiveInfinity) with { Bound = 0.0095 }));

    [Fact]
    public void Not_a_number_is_told_as_open() =>
        Assert.EndsWith("; open, not a number", Of(HandMade.Judge(HandMade.Clearance, double.NaN, 0.010, double.PositiveInfinity)));

    [Fact]
    public void What_is_missing_is_named_in_words() =>
        Assert.Equal("rod clearance at infeed belt: open, rod length of every chain and window of infeed belt not stated",
            Of(new Unjudged(HandMade.Clearance, new("/stations/belt"), [], OpenReason.Missing, ["/robot/common/rod", "/stations/belt/window"])));

    [Fact]
    public void Advice_says_the_change_and_what_it_brings() =>
        Assert.Equal("change height of tray-left from 750 mm to 765 mm; margin then 4 %, worst elsewhere 6 %",
            Sentences.Of(HandMade.TooNear.Advice[0], HandMade.Cell));

    [Fact]
    public void Advice_without_known_margins_says_the_change_alone() =>
        Assert.Equal("set yaw of mount to 30°", Sentences.Of(new Advice("/mount/yaw", double.NaN, Math.PI / 6, double.NaN), HandMade.Cell));

    [Theory]
    [InlineData(SourceKind.Standard, "ISO 9283:1998", "7.2.1", "ISO 9283:1998, 7.2.1")]
    [InlineData(SourceKind.Standard, "ISO 9283:1998", "", "ISO 9283:1998")]
    [InlineData(SourceKind.Literature, "Williams2016", "p. 12", "[Williams2016], p. 12")]
    [InlineData(SourceKind.Cell, "/robot/chains/a/rod", "", "stated in the cell: rod length of chain a")]
    [InlineData(SourceKind.CommonPractice, "", "", "common practice, no source")]
    [InlineData(SourceKind.FromMemory, "ISO 5455", "", "ISO 5455; from memory, not yet compared with it")]
    public void A_source_says_what_authority_it_has(SourceKind kind, string key, string place, string words) =>
        Assert.Equal(words, Sentences.Of(new Source(kind, key, place), HandMade.Cell));

    [Fact]
    public void The_worst_place_is_told_in_the_cell_frame() =>
        Assert.Equal("worst at x 100 mm, y -200 mm, z 750 mm", Sentences.Of(new Place(new(0.1, -0.2, 0.75), double.NaN, Vec3.NaN)));

    // A verdict's word never contradicts the numbers beside it, however close they are.
    [Fact]
    public void A_finding_that_falls_short_never_reads_as_falling_short_by_nothing()
    {
        for (double off = 0.1; off > 1e-14; off /= 3)
        {
            string sentence = Of(HandMade.Judge(HandMade.Clearance, 0.010 * (1 - off), 0.010, double.PositiveInfinity));
            Assert.DoesNotContain("by 0 %", sentence);
            Assert.DoesNotContain("10 mm, at least 10 mm", sentence);
        }
    }
}

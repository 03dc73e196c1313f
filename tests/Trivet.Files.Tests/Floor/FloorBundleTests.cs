using System.Collections.Immutable;
using System.Text;
using Trivet.BringUp;
using Trivet.Files.Floor;
using Trivet.Findings;
using Xunit;

namespace Trivet.Files.Tests.Floor;

public sealed class FloorBundleTests
{
    private static readonly FloorBundle Bundle = new("jar-lids", "Jar lids, “ä”", new string('a', 64),
        [
            new FloorStep(new Measuring("RodLength:/robot/chains/a", MeasuredLength.RodLength, new Subject("/robot/chains/a", "case"), ["/robot/chains/a/rod"], 0.56,
                Limit.Between(0.5592, 0.5608, new Source(SourceKind.FromMemory, "ISO-2768-1", "table 1, class m"))), "Rod", "How", "Caution", "plan"),
        ],
        ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal).Add("plan", "<svg>\"</svg>"));

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    [Fact]
    public void A_bundle_comes_back_as_it_was()
    {
        var read = FloorBundleFile.Read(Bytes(FloorBundleFile.Write(Bundle)));
        Assert.Equal("", read.Problem);
        Assert.Equal(FloorBundleFile.Write(Bundle), FloorBundleFile.Write(read.Bundle!));
        var step = Assert.Single(read.Bundle!.Steps);
        Assert.Equal(Bundle.Steps[0].Measuring.Limit, step.Measuring.Limit);
        Assert.Equal((0.56, "plan", "case"), (step.Measuring.Planned, step.Picture, step.Measuring.Subject.Case));
    }

    [Fact]
    public void White_space_does_not_matter_but_every_word_does()
    {
        string text = FloorBundleFile.Write(Bundle);
        Assert.NotNull(FloorBundleFile.Read(Bytes(text.Replace("\n", "\r\n\t", StringComparison.Ordinal))).Bundle);
        Assert.Contains("altered", FloorBundleFile.Read(Bytes(text.Replace("560.8 mm", "565.8 mm", StringComparison.Ordinal))).Problem, StringComparison.Ordinal);
        Assert.Contains("altered", FloorBundleFile.Read(Bytes(text.Replace("Caution", "Hurry", StringComparison.Ordinal))).Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "cannot be read")]
    [InlineData("[]", "not a floor bundle")]
    [InlineData("{ \"trivet\": 1 }", "not a floor bundle")]
    [InlineData("{ \"trivetFloor\": 2 }", "another version")]
    [InlineData("{ \"trivetFloor\": 1e400 }", "another version")]
    [InlineData("{ \"trivetFloor\": 1 }", "cannot be read")]
    [InlineData("{ \"trivetFloor\": 1, \"cell\": 3, \"steps\": {}, \"pictures\": [] }", "cannot be read")]
    public void What_is_no_bundle_is_refused_in_words(string text, string problem) =>
        Assert.Contains(problem, FloorBundleFile.Read(Bytes(text)).Problem, StringComparison.Ordinal);

    [Fact]
    public void Cut_anywhere_it_is_refused_and_never_throws()
    {
        byte[] whole = Bytes(FloorBundleFile.Write(Bundle));
        for (int length = 0; length < whole.Length - 1; length++)
            Assert.Null(FloorBundleFile.Read(whole.AsMemory(0, length)).Bundle);
        Assert.Contains("larger", FloorBundleFile.Read(new byte[FloorBundleFile.LargestFile + 1]).Problem, StringComparison.Ordinal);
    }
}

public sealed class LengthReadingTests
{
    [Theory]
    // Value and step in millimetres; an inch is 25.4 mm exactly (international yard and pound agreement, 1959).
    [InlineData("560", "mm", 560, 1)]
    [InlineData("559.9", "mm", 559.9, 0.1)]
    [InlineData("559,90", "mm", 559.9, 0.01)]
    [InlineData("56", "cm", 560, 10)]
    [InlineData("0.5599 m", "mm", 559.9, 0.1)]
    [InlineData("22 1/16 in", "mm", 560.3875, 25.4 / 16)]
    [InlineData("22 1/16", "in", 560.3875, 25.4 / 16)]
    [InlineData("1 850 mm", "mm", 1850, 1)]
    public void The_text_says_the_length_and_how_finely_it_was_read(string text, string unit, double millimetres, double step)
    {
        var reading = LengthReading.Of(text, unit);
        Assert.True(reading.Length.Ok, reading.Length.Problem);
        Assert.Equal(millimetres / 1000, reading.Length.Value, 12);
        Assert.Equal(step / 1000, reading.Step, 12);
    }

    [Theory, InlineData("abc"), InlineData("12 kg"), InlineData("1..2"), InlineData("mm"), InlineData("")]
    public void What_is_no_length_is_refused_with_the_right_form(string text)
    {
        var reading = LengthReading.Of(text, "mm");
        Assert.False(reading.Length.Ok);
        Assert.NotEmpty(reading.Length.Remedy);
    }
}

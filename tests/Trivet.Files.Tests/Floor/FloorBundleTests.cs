using System.Collections.Immutable;
using System.Text;
using Trivet.AsBuilt;
using Trivet.Files.Floor;
using Trivet.Findings;
using Trivet.Procedures;
using Xunit;

namespace Trivet.Files.Tests.Floor;

public sealed class FloorBundleTests
{
    private static readonly Source Common = new(SourceKind.CommonPractice, "", "test");

    private static readonly Step Step = new()
    {
        Id = "gap:a", Kind = "gap", Subject = new Subject("/robot/chains/a", "case"), Place = StepPlace.Site, Energy = EnergyLevel.OneAxisLimited, By = Skill.Electrician,
        People = 2, Minutes = 2.5, After = ["before"], Inputs = ["/robot/chains/a/rod"], Names = ["X1"], Tools = ["tape"], HoldPoint = true, UpsetBy = [Upset.PlugsMoved],
        Held = [new ChainHeld("a", "prop")],
        Asks =
        [
            new AskedValue("gap", "m", 0.1 + 0.2, Limit.Between(0.29, 0.31, Common), true), new AskedValue("dead", "V", double.NaN, Limit.AtMost(5, Common)), new AskedValue("free", "1", 0, null),
            new AskedChoice("lock", ["fitted", "not-fitted"], "fitted"), new AskedCount("screws", 6), new AskedText("serial"), new AskedTick("seen"), new AskedPhotograph("picture"),
            new AskedSignature("who", Skill.SafetyPerson),
        ],
    };

    private static readonly FloorBundle Bundle = new("jar-lids", "Jar lids, “ä”", new string('a', 64),
        [new FloorStep(Step, Sorted(("en", new FloorText("Gap", "How", "Caution", "Bad", Sorted(("gap", "Gap"))))), "plan")],
        new Releasing([Deviation.Differs], ["ada"]), Sorted((new string('b', 64), ImmutableArray.Create(new FieldMove("/mount/z", "1 m", "2 m")))), Sorted(("plan", "<svg>\"</svg>")),
        Sorted(("en", new SafeText(["the button at the door"], ["Q1"], ["60 s", "“not stated”"], [], ["stays on"], ["chain a: sinks"]))));

    private static ImmutableSortedDictionary<string, T> Sorted<T>(params (string, T)[] items) =>
        items.ToImmutableSortedDictionary(i => i.Item1, i => i.Item2, StringComparer.Ordinal);

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    [Fact]
    public void A_bundle_comes_back_as_it_was()
    {
        var read = FloorBundleFile.Read(Bytes(FloorBundleFile.Write(Bundle)));
        Assert.Equal(BundleProblem.None, read.Problem);
        Assert.Equal(FloorBundleFile.Write(Bundle), FloorBundleFile.Write(read.Bundle!));
        var step = Assert.Single(read.Bundle!.Procedure);
        Assert.Equal(Step.Asks.Select(a => a.ToString()).Where(a => !a!.Contains("Options", StringComparison.Ordinal)), step.Asks.Select(a => a.ToString()).Where(a => !a!.Contains("Options", StringComparison.Ordinal)));
        Assert.Equal(["fitted", "not-fitted"], step.Asks.OfType<AskedChoice>().Single().Options);
        Assert.Equal((Step.Id, Step.Energy, Step.By, Step.People, Step.Minutes, Step.HoldPoint), (step.Id, step.Energy, step.By, step.People, step.Minutes, step.HoldPoint));
        Assert.Equal((Step.After.Single(), Step.Held.Single(), Step.UpsetBy.Single()), (step.After.Single(), step.Held.Single(), step.UpsetBy.Single()));
        Assert.Equal("Gap", read.Bundle.Steps[0].Words["en"].Label("gap"));
        Assert.Equal("not fitted", read.Bundle.Steps[0].Words["en"].Label("lock=not-fitted"));
        Assert.Equal("2 m", read.Bundle.Moves[new string('b', 64)].Single().To);
        Assert.Equal((Deviation.Differs, "ada"), (read.Bundle.Releasing.BySecond.Single(), read.Bundle.Releasing.People.Single()));
    }

    [Fact]
    public void White_space_does_not_matter_but_every_word_does()
    {
        string text = FloorBundleFile.Write(Bundle);
        Assert.NotNull(FloorBundleFile.Read(Bytes(text.Replace("\n", "\r\n\t", StringComparison.Ordinal))).Bundle);
        Assert.Equal(BundleProblem.Altered, FloorBundleFile.Read(Bytes(text.Replace("0.31", "0.36", StringComparison.Ordinal))).Problem);
        Assert.Equal(BundleProblem.Altered, FloorBundleFile.Read(Bytes(text.Replace("Caution", "Hurry", StringComparison.Ordinal))).Problem);
    }

    [Theory]
    [InlineData("", BundleProblem.Unreadable)]
    [InlineData("[]", BundleProblem.NotABundle)]
    [InlineData("{ \"trivet\": 1 }", BundleProblem.NotABundle)]
    [InlineData("{ \"trivetFloor\": 4 }", BundleProblem.LaterVersion)]
    [InlineData("{ \"trivetFloor\": 1 }", BundleProblem.EarlierVersion)]
    [InlineData("{ \"trivetFloor\": 2 }", BundleProblem.EarlierVersion)]
    [InlineData("{ \"trivetFloor\": 1e400 }", BundleProblem.LaterVersion)]
    [InlineData("{ \"trivetFloor\": 3 }", BundleProblem.Unreadable)]
    [InlineData("{ \"trivetFloor\": 3, \"cell\": 3, \"steps\": {}, \"pictures\": [] }", BundleProblem.Unreadable)]
    public void What_is_no_bundle_is_refused_and_why(string text, BundleProblem problem)
    {
        var read = FloorBundleFile.Read(Bytes(text));
        Assert.Equal(problem, read.Problem);
        Assert.Null(read.Bundle);
    }

    [Fact]
    public void Cut_anywhere_it_is_refused_and_never_throws()
    {
        byte[] whole = Bytes(FloorBundleFile.Write(Bundle));
        for (int length = 0; length < whole.Length - 1; length += 3)
            Assert.Null(FloorBundleFile.Read(whole.AsMemory(0, length)).Bundle);
        Assert.Equal(BundleProblem.TooLarge, FloorBundleFile.Read(new byte[FloorBundleFile.LargestFile + 1]).Problem);
    }
}

public sealed class TypedReadingTests
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
        var reading = TypedReading.Of(text, unit, Dimension.Length);
        Assert.True(reading.Quantity.Ok, reading.Quantity.Problem);
        Assert.Equal(millimetres / 1000, reading.Quantity.Value, 12);
        Assert.Equal(step / 1000, reading.Step, 12);
    }

    [Theory]
    [InlineData("0,3", "V", 0.3, 0.1, "0,3 V")]
    [InlineData("12.5 MΩ", "Ω", 12.5e6, 0.1e6, "12.5 Mohm")]
    [InlineData("480 mΩ", "Ω", 0.48, 1e-3, "0,48 ohm")]
    [InlineData("6,1 bar", "Pa", 610000, 10000, "6,1 bar")]
    [InlineData("8 N m", "N m", 8, 1, "8 N m")]
    [InlineData("0.002", "1", 0.002, 0.001, "0,002")]
    public void Every_kind_of_reading_is_understood(string text, string si, double value, double step, string shown)
    {
        var kind = TypedReading.DimensionOf(si)!.Value;
        var reading = TypedReading.Of(text, TypedReading.UnitsFor(kind).FirstOrDefault() ?? "", kind);
        Assert.Equal(value, reading.Quantity.Value, 9);
        Assert.Equal(step, reading.Step, 9);
        if (!shown.Contains("Mohm", StringComparison.Ordinal)) Assert.Equal(shown, TypedReading.Shown(value, kind, comma: true));
    }

    [Theory, InlineData("abc"), InlineData("12 kg"), InlineData("1..2"), InlineData("mm"), InlineData("")]
    public void What_is_no_length_is_refused_with_the_right_form(string text)
    {
        var reading = TypedReading.Of(text, "mm", Dimension.Length);
        Assert.False(reading.Quantity.Ok);
        Assert.NotEmpty(reading.Quantity.Remedy);
    }
}

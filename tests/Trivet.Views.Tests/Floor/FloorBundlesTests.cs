using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Floor;
using Trivet.Procedures;
using Trivet.Views.Floor;
using Trivet.Views.Words;

namespace Trivet.Views.Tests.Floor;

public sealed class FloorBundlesTests
{
    private static Cell Sample(string name) => CellFile.Read(File.ReadAllBytes(Repository.PathOf($"samples/{name}.json")), name).Cell!;

    [Theory, InlineData("jar-lids"), InlineData("biscuits"), InlineData("labels")]
    public void A_sample_gives_steps_with_words_a_caution_and_their_picture(string name)
    {
        var bundle = FloorBundles.Of(name, Sample(name), new Assessor());

        Assert.NotEmpty(bundle.Steps);
        Assert.Equal(CellFile.Hash(Sample(name)), bundle.Revision);
        Assert.Equal(bundle.Steps.Length, bundle.Steps.Select(s => s.Step.Id).Distinct().Count());
        Assert.All(bundle.Steps, s =>
        {
            Assert.Equal(FloorWords.All.Select(w => w.Tag).Order(StringComparer.Ordinal), s.Words.Keys);
            Assert.All(s.Words.Values, w => Assert.DoesNotContain("", new[] { w.Title, w.How }));
            Assert.All(s.Words.Values, w => Assert.All(s.Step.Asks, a => Assert.True(w.Labels.ContainsKey(a.Id), a.Id)));
            Assert.NotEqual(s.Words["en"].How, s.Words["de"].How);
            Assert.All(s.Step.Held, h => Assert.All(FloorWords.All, w => Assert.True(w.Held.ContainsKey(h.By), h.By)));
            Assert.All(s.Step.Asks.OfType<AskedValue>(), a => Assert.NotNull(TypedReading.DimensionOf(a.Unit)));
            Assert.True(s.Picture.Length == 0 || bundle.Pictures.ContainsKey(s.Picture));
        });
        Assert.True(bundle.Steps.Count(s => s.Picture.Length > 0) > bundle.Steps.Length / 3, "Most steps about something with a place have its picture.");
        Assert.NotNull(FloorBundleFile.Read(System.Text.Encoding.UTF8.GetBytes(FloorBundleFile.Write(bundle))).Bundle);
    }

    [Fact]
    public void What_was_done_against_an_earlier_revision_is_stale_only_where_what_it_rests_on_moved()
    {
        var now = Sample("jar-lids");
        var then = now with { Mount = now.Mount with { Z = 1.6 } };
        var bundle = FloorBundles.Of("jar-lids", now, new Assessor(), new Dictionary<string, Cell> { [CellFile.Hash(then)] = then, [CellFile.Hash(now)] = now });
        Assert.Equal(["/mount/z"], Assert.Single(bundle.Moves).Value.Select(m => m.Pointer));
    }

    [Fact]
    public void The_example_that_the_page_carries_has_the_steps_of_the_sample()
    {
        string path = Repository.PathOf("src/Trivet.Floor/wwwroot/example.json");
        var now = FloorBundles.Of("jar-lids", Sample("jar-lids"), new Assessor());
        if (Environment.GetEnvironmentVariable("TRIVET_WRITE_DOCS") == "1") File.WriteAllText(path, FloorBundleFile.Write(now));
        var example = FloorBundleFile.Read(File.ReadAllBytes(path)).Bundle!;
        var none = ImmutableSortedDictionary<string, string>.Empty;
        Assert.Equal(FloorBundleFile.Write(now with { Pictures = none }), FloorBundleFile.Write(example with { Pictures = none }));
    }
}

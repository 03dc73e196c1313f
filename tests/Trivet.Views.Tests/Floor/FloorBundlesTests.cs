using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Floor;
using Trivet.Views.Floor;

namespace Trivet.Views.Tests.Floor;

public sealed class FloorBundlesTests
{
    private static Cell Sample(string name) => CellFile.Read(File.ReadAllBytes(Repository.PathOf($"samples/{name}.json")), name).Cell!;

    [Theory, InlineData("jar-lids"), InlineData("biscuits"), InlineData("labels")]
    public void A_sample_gives_steps_with_words_a_caution_and_their_picture(string name)
    {
        var bundle = FloorBundles.Of(name, Assess.Preview(Sample(name)));

        Assert.NotEmpty(bundle.Steps);
        Assert.Equal(CellFile.Hash(Sample(name)), bundle.Revision);
        Assert.Equal(bundle.Steps.Length, bundle.Steps.Select(s => s.Measuring.Id).Distinct().Count());
        Assert.All(bundle.Steps, s =>
        {
            Assert.NotEmpty(s.Title);
            Assert.NotEmpty(s.How);
            Assert.Contains("isolated", s.Caution, StringComparison.Ordinal);
            Assert.True(s.Picture.Length == 0 || bundle.Pictures.ContainsKey(s.Picture));
        });
        Assert.NotNull(FloorBundleFile.Read(System.Text.Encoding.UTF8.GetBytes(FloorBundleFile.Write(bundle))).Bundle);
    }

    [Fact]
    public void The_example_that_the_page_carries_has_the_steps_of_the_sample()
    {
        string path = Repository.PathOf("src/Trivet.Floor/wwwroot/example.json");
        var now = FloorBundles.Of("jar-lids", Assess.Preview(Sample("jar-lids")));
        if (Environment.GetEnvironmentVariable("TRIVET_WRITE_DOCS") == "1") File.WriteAllText(path, FloorBundleFile.Write(now));
        var example = FloorBundleFile.Read(File.ReadAllBytes(path)).Bundle!;
        var none = ImmutableSortedDictionary<string, string>.Empty;
        Assert.Equal(FloorBundleFile.Write(now with { Pictures = none }), FloorBundleFile.Write(example with { Pictures = none }));
    }
}

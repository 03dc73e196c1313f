using System.Text;
using Trivet.Cells;
using Xunit;

namespace Trivet.Files.Tests;

public class SamplesTests
{
    public static TheoryData<string> Good => [.. Samples.All.Where(s => s.Name != "broken").Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(Good))]
    public void A_sample_is_read_says_that_it_is_invented_and_survives_being_written(string name)
    {
        var read = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name);
        Assert.Empty(read.Errors);
        Assert.Contains("Invented for Trivet", read.Cell!.Note, StringComparison.Ordinal);
        var again = CellFile.Read(Encoding.UTF8.GetBytes(CellFile.Write(read.Cell)), name);
        Assert.Equal(CellFile.Hash(read.Cell), CellFile.Hash(again.Cell!));
    }

    [Fact]
    public void Every_file_of_the_samples_folder_is_listed() =>
        Assert.Equal(
            typeof(Samples).Assembly.GetManifestResourceNames().Where(n => n.StartsWith("samples/", StringComparison.Ordinal)).Order(StringComparer.Ordinal),
            Samples.All.Select(s => $"samples/{s.Name}.json").Order(StringComparer.Ordinal));

    [Fact]
    public void Cabinets_of_the_samples_differ_in_every_habit()
    {
        var cabinets = Samples.All.Where(s => s.Name is "jar-lids" or "biscuits")
            .Select(s => CellFile.Read(Encoding.UTF8.GetBytes(s.Text), s.Name).Cell!.Cabinet).ToArray();
        Assert.NotEqual(cabinets[0].Bus, cabinets[1].Bus);
        Assert.Empty(cabinets[0].Modules.Keys.Intersect(cabinets[1].Modules.Keys));
        Assert.NotEqual(cabinets[0].Modules.InOrder().First().Value.Role, cabinets[1].Modules.InOrder().First().Value.Role);
    }

    [Fact]
    public void The_broken_sample_shows_each_kind_of_error()
    {
        var read = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("broken")!.Text), "broken.json");
        Assert.Null(read.Cell);
        Assert.Equal(
            [
                "/brief/meanRate", "/brief/peakRate", "/brief/openQuestion", "/robot/family", "/robot/common/baseRadius", "/robot/common/rod",
                "/robot/common/platformRadius", "/robot/common/travelTo", "/robot/common/swingLimit", "/robot/common/holding", "/robot/chains/a", "/robot/chains/Third Chain",
                "/robot/dexterity/largestCondition", "/mount/hight", "/frame/members", "/stations/belt/window", "/stations/belt/columns", "/stations/belt/approach",
            ],
            read.Errors.Select(e => e.Pointer));
        Assert.Equal("broken.json:7:17: /brief/meanRate: 40 has no unit, so it may mean anything; write it as text with its unit: \"40 1/min\" (units that fit: 1/s, 1/min, 1/h)", read.Errors[0].ToString());
    }
}

using System.Xml.Linq;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary><c>trivet picture</c> as a user calls it; what it writes is read by the platform's XML reader.</summary>
public sealed class PictureTests
{
    [Fact]
    public async Task A_picture_goes_to_standard_output_or_to_a_file()
    {
        var run = await Run.Trivet("picture", Repository.Sample("jar-lids"), "/stations/belt");
        Assert.Equal(ExitCode.AllHold, run.Code);
        Assert.Equal("svg", XDocument.Parse(run.Output).Root!.Name.LocalName);
        Assert.Contains("Belt from the press", run.Output, StringComparison.Ordinal);
        using var folder = new TemporaryFolder();
        var written = await Run.Trivet("picture", Repository.Sample("jar-lids"), "/stations/belt", "--out", folder.File("belt.svg"));
        Assert.Equal(ExitCode.AllHold, written.Code);
        Assert.Equal(run.Output, await File.ReadAllTextAsync(folder.File("belt.svg"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task All_steps_get_their_pictures_in_a_folder()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Trivet("picture", Repository.Sample("biscuits"), "--steps", folder.File("pictures"));
        Assert.Equal(ExitCode.AllHold, run.Code);
        string[] named = [.. run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split("  ")[1].Trim()).Distinct().Order(StringComparer.Ordinal)];
        Assert.Equal(named, Directory.GetFiles(folder.File("pictures")).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));
        Assert.True(named.Length > 20);
    }

    [Fact]
    public async Task What_is_not_fitted_is_left_out()
    {
        var all = await Run.Trivet("picture", Repository.Sample("jar-lids"));
        var bare = await Run.Trivet("picture", Repository.Sample("jar-lids"), "--without", "Rods", "Platform", "Tool");
        Assert.Equal(ExitCode.AllHold, bare.Code);
        Assert.NotEqual(all.Output, bare.Output);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("picture", Repository.Sample("jar-lids"), "--without", "Wheels")).Code);
    }

    [Fact]
    public async Task A_part_without_a_place_is_refused_with_those_that_have_one()
    {
        var run = await Run.Trivet("picture", Repository.Sample("jar-lids"), "/brief");
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("/robot/chains/a", run.Error, StringComparison.Ordinal);
    }
}

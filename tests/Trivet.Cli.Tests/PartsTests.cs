using Xunit;

namespace Trivet.Cli.Tests;

/// <summary><c>trivet parts</c> as a user calls it.</summary>
public sealed class PartsTests
{
    [Fact]
    public async Task The_parts_of_a_sample_are_listed()
    {
        var run = await Run.Trivet("parts", Repository.Sample("jar-lids"));
        Assert.Equal(0, run.Code);
        Assert.Contains("vacuum cup with holder", run.Output, StringComparison.Ordinal);
        Assert.Contains("Dowel pin", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_line_about_nothing_ends_with_1_and_says_so()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("cell.json");
        await File.WriteAllTextAsync(path, """{ "trivet": 1, "partsList": { "a": { "of": "/tool/parts/gone" } } }""", TestContext.Current.CancellationToken);
        var run = await Run.Trivet("parts", path);
        Assert.Equal(1, run.Code);
        Assert.Contains("pointer", run.Error, StringComparison.Ordinal);
    }
}

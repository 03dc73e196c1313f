using System.Text.Json;
using Xunit;

namespace Trivet.Cli.Tests;

public sealed class NewAndSchemaTests
{
    [Fact]
    public async Task A_new_file_never_overwrites_one()
    {
        using var folder = new TemporaryFolder();
        string file = folder.File("mine.json");
        await File.WriteAllTextAsync(file, "mine", TestContext.Current.CancellationToken);
        var run = await Run.Trivet("new", file);
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Equal("mine", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_copy_of_a_sample_is_judged_like_the_sample()
    {
        using var folder = new TemporaryFolder();
        string file = folder.File("mine.json");
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("new", file, "--sample", "jar-lids")).Code);
        Assert.Equal((await Run.Trivet("check", Repository.Sample("jar-lids"))).Output, (await Run.Trivet("check", file)).Output);
    }

    [Fact]
    public async Task A_sample_there_is_not_is_refused_with_those_there_are()
    {
        var run = await Run.Trivet("new", "never-written.json", "--sample", "nothing");
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("jar-lids", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists("never-written.json"));
    }

    [Fact]
    public async Task The_schema_is_a_json_document_of_draft_2020_12()
    {
        using var schema = JsonDocument.Parse((await Run.Trivet("schema")).Output);
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", schema.RootElement.GetProperty("$schema").GetString());
    }

    [Fact]
    public async Task A_file_that_cannot_be_written_is_refused()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Trivet("schema", "--out", folder.File("no/such/folder.json"));
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("cannot be written", run.Error, StringComparison.Ordinal);
    }
}

using System.Text.Json;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>Adapter plates and bolted joints from the command line.</summary>
public sealed class PlateAndJointsTests
{
    [Fact]
    public async Task A_plate_is_told_and_all_its_papers_are_written()
    {
        using var folder = new TemporaryFolder();
        string to = folder.File("papers");
        var run = await Run.Trivet("plate", Repository.Sample("jar-lids"), "--all", to, "--format", "json");
        Assert.Equal(ExitCode.AllHold, run.Code);
        using var json = JsonDocument.Parse(run.Output);
        var plate = json.RootElement.GetProperty("plates")[0];
        Assert.True(plate.GetProperty("works").GetBoolean());
        Assert.Equal(0.008, plate.GetProperty("pieces")[0].GetProperty("thickness").GetDouble());
        Assert.Equal([".dxf", ".pdf", ".step", ".stl", ".svg"], Directory.GetFiles(to).Select(f => Path.GetExtension(f)).Order());
        byte[] pdf = await File.ReadAllBytesAsync(Path.Combine(to, "adapter.pdf"), TestContext.Current.CancellationToken);
        Assert.Equal("%PDF-"u8.ToArray(), pdf[..5]);
        Assert.StartsWith("ISO-10303-21;", await File.ReadAllTextAsync(Path.Combine(to, "adapter.step"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plate_that_is_not_there_is_refused_with_those_that_are()
    {
        var run = await Run.Trivet("plate", Repository.Sample("jar-lids"), "--plate", "lid");
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("It has adapter.", run.Error, StringComparison.Ordinal);
        Assert.Contains("/plates", (await Run.Trivet("plate", Repository.Sample("biscuits"))).Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_torque_sheet_comes_as_table_and_on_paper()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Trivet("joints", Repository.Sample("jar-lids"), "--format", "csv");
        Assert.Equal(ExitCode.AllHold, run.Code);
        string[] lines = run.Output.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(4, lines.Length);
        Assert.StartsWith("1,mount,M8,8.8,4,", lines[1], StringComparison.Ordinal);
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("joints", Repository.Sample("jar-lids"), "--out", folder.File("torque.pdf"))).Code);
        Assert.True(new FileInfo(folder.File("torque.pdf")).Length > 5000);
    }
}

using System.Globalization;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary><c>trivet tool</c> as a user calls it. Mass properties of a block by the closed forms of elementary mechanics.</summary>
public sealed class ToolTests
{
    [Fact]
    public async Task The_numbers_of_a_sample_come_in_si()
    {
        var run = await Run.Trivet("tool", Repository.Sample("jar-lids"), "--format", "csv");
        Assert.Equal(ExitCode.AllHold, run.Code);
        var values = run.Output.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.Split(',')).ToDictionary(l => l[0], l => l[1]);
        // The plate has the mass of its design, which is near what is typed beside it, and its middle about 4 mm down.
        Assert.Equal(0.032 + 0.42 + 0.085 + 0.009, double.Parse(values["sum:lid:mass"], CultureInfo.InvariantCulture), 5e-4);
        Assert.Equal(-(0.032 * 0.004 + 0.42 * 0.03 + 0.085 * 0.071) / 0.537, double.Parse(values["sum:centre-z"], CultureInfo.InvariantCulture), 5e-5);
        Assert.Contains("thrown:to-left:part", values.Keys);
    }

    [Fact]
    public async Task A_mesh_beside_the_cell_file_is_read_and_goes_into_the_file_that_is_written()
    {
        using var folder = new TemporaryFolder();
        var stop = TestContext.Current.CancellationToken;
        await File.WriteAllTextAsync(folder.File("block.stl"), Block(inverted: false), stop);
        await File.WriteAllTextAsync(folder.File("cell.json"), """{ "trivet": 1, "tool": { "tcpZ": "-20 mm", "parts": { "block": { "shape": "mesh", "density": "2700 kg/m³", "height": "20 mm", "mesh": { "file": "block.stl" } } } } }""", stop);
        var run = await Run.Trivet("tool", folder.File("cell.json"), "--out", folder.File("whole.json"));
        Assert.Equal(ExitCode.AllHold, run.Code);
        File.Delete(folder.File("block.stl"));
        var again = await Run.Trivet("tool", folder.File("whole.json"));
        Assert.Equal(ExitCode.AllHold, again.Code);
        // 80 × 50 × 20 mm at 2700 kg/m³.
        Assert.Contains("216 g", again.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_inverted_mesh_is_refused_with_its_place()
    {
        using var folder = new TemporaryFolder();
        var stop = TestContext.Current.CancellationToken;
        await File.WriteAllTextAsync(folder.File("block.stl"), Block(inverted: true), stop);
        await File.WriteAllTextAsync(folder.File("cell.json"), """{ "trivet": 1, "tool": { "parts": { "block": { "shape": "mesh", "density": "2700 kg/m³", "mesh": { "file": "block.stl" } } } } }""", stop);
        var run = await Run.Trivet("check", folder.File("cell.json"));
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("cell.json:1:", run.Error, StringComparison.Ordinal);
        Assert.Contains("inverted", run.Error, StringComparison.Ordinal);
    }

    private static string Block(bool inverted)
    {
        int[] order = [0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5];
        if (inverted) Array.Reverse(order);
        return "solid block\n" + string.Concat(order.Chunk(3).Select(t => "facet normal 0 0 0\nouter loop\n"
            + string.Concat(t.Select(i => $"vertex {-40 + 80 * (i & 1)} {-25 + 50 * ((i >> 1) & 1)} {-20 + 20 * ((i >> 2) & 1)}\n")) + "endloop\nendfacet\n")) + "endsolid block\n";
    }
}

using System.Globalization;
using System.Text.Json;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>The values to type, an export against them, a restored backup: as the command tells them.</summary>
public sealed class SettingsTests
{
    private static string Export(string name) => Repository.File($"samples/exports/{name}");

    [Fact]
    public async Task The_list_says_what_to_type_with_the_controllers_own_sign()
    {
        var lids = await Run.Trivet("settings", Repository.Sample("jar-lids"));
        Assert.Equal((ExitCode.AllHold, ""), (lids.Code, lids.Error));
        Assert.Matches(@"Height of the robot's base +Robot, geometry +-638\.00 +mm", lids.Output);
        var biscuits = await Run.Trivet("settings", Repository.Sample("biscuits"));
        Assert.Matches(@"M P101 Rod +Axis M +680,20 +mm", biscuits.Output);
        Assert.Matches(@"K P110 Lower end +Axis K +-80000 +0\.001 deg", biscuits.Output);
    }

    [Fact]
    public async Task Programs_get_numbers_with_points_whatever_the_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            var csv = await Run.Trivet("settings", Repository.Sample("biscuits"), "--format", "csv");
            string[] rod = csv.Output.Split("\r\n").Single(l => l.StartsWith("m-rod,", StringComparison.Ordinal)).Split(',');
            Assert.Equal(("680.20", "mm", "0.6802", "m"), (rod[6], rod[7], rod[8], rod[^1]));
            var json = JsonDocument.Parse((await Run.Trivet("settings", Repository.Sample("biscuits"), "--format", "json")).Output).RootElement;
            var own = json.GetProperty("settings").EnumerateArray().Single(s => s.GetProperty("id").GetString() == "m-rod");
            Assert.Equal((0.6802, 680.2, "680,20", "/robot/chains/east/rod"), (own.GetProperty("plan").GetDouble(), Math.Round(own.GetProperty("number").GetDouble(), 9), own.GetProperty("typed").GetString(), own.GetProperty("field").GetString()));
            Assert.Equal(ExitCode.NotAllHold, (await Run.Trivet("settings", Repository.Sample("biscuits"), "--export", Export("biscuits.xml"))).Code);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public async Task An_export_that_is_the_same_ends_with_0_and_one_that_differs_with_1()
    {
        var same = await Run.Trivet("settings", Repository.Sample("jar-lids"), "--export", Export("jar-lids.txt"));
        Assert.Equal(ExitCode.AllHold, same.Code);
        Assert.Contains("Every planned parameter is there", same.Output, StringComparison.Ordinal);
        var differs = await Run.Trivet("settings", Repository.Sample("biscuits"), "--export", Export("biscuits.xml"));
        Assert.Equal(ExitCode.NotAllHold, differs.Code);
        Assert.Contains("34 equal, 1 different, 1 missing.", differs.Output, StringComparison.Ordinal);
        Assert.Contains("Type 680,20, or change rod length of chain east if the controller is right.", differs.Output, StringComparison.Ordinal);
        Assert.Contains("2 in the export that the plan does not name", differs.Output, StringComparison.Ordinal);
        foreach (string format in (string[])["csv", "json", "markdown"])
            Assert.Contains("M P101 Rod", (await Run.Trivet("settings", Repository.Sample("biscuits"), "--export", Export("biscuits.xml"), "--format", format)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_restored_backup_is_proved_and_put_on_paper()
    {
        using var folder = new TemporaryFolder();
        string paper = folder.File("proof.pdf");
        var proof = await Run.Trivet("settings", Repository.Sample("jar-lids"), "--backup", Export("jar-lids.txt"), "--restored", Export("jar-lids-read-out.txt"));
        Assert.Equal(ExitCode.AllHold, proof.Code);
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("settings", Repository.Sample("jar-lids"), "--backup", Export("jar-lids.txt"), "--restored", Export("jar-lids-read-out.txt"), "--out", paper)).Code);
        Assert.Contains("50 equal, 3 different, of which 3 may be.", proof.Output, StringComparison.Ordinal);
        // SHA-256 as the system's own program tells it.
        Assert.Contains(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(await File.ReadAllBytesAsync(Export("jar-lids.txt"), TestContext.Current.CancellationToken))), proof.Output, StringComparison.Ordinal);
        Assert.Equal("%PDF"u8.ToArray(), (await File.ReadAllBytesAsync(paper, TestContext.Current.CancellationToken))[..4]);
        string other = folder.File("other.txt");
        await File.WriteAllTextAsync(other, (await File.ReadAllTextAsync(Export("jar-lids.txt"), TestContext.Current.CancellationToken)).Replace("gain_i = 7.5", "gain_i = 7.6", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        var broken = await Run.Trivet("settings", Repository.Sample("jar-lids"), "--backup", Export("jar-lids.txt"), "--restored", other);
        Assert.Equal(ExitCode.NotAllHold, broken.Code);
        Assert.Contains("first rail/gain_i", broken.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_read_is_refused_with_its_place()
    {
        var json = await Run.Trivet("settings", Repository.Sample("jar-lids"), "--export", Repository.Sample("jar-lids"));
        Assert.Equal(ExitCode.Refused, json.Code);
        Assert.Contains("jar-lids.json:1:1:", json.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("settings", Repository.Sample("jar-lids"), "--export", "nowhere.txt")).Code);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("settings", Repository.Sample("jar-lids"), "--backup", Export("jar-lids.txt"))).Code);
        Assert.Contains("/controller/export/form", (await Run.Trivet("settings", Repository.Sample("labels"), "--export", Export("jar-lids.txt"))).Error, StringComparison.Ordinal);
    }
}

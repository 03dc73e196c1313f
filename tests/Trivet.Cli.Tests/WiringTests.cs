using System.Text.Json;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>The cabinet from the command line.</summary>
public sealed class WiringTests
{
    [Fact]
    public async Task Text_tells_each_switch_and_what_is_to_be_heard()
    {
        var run = await Run.Trivet("wiring", Repository.Sample("jar-lids"));
        Assert.Equal(ExitCode.AllHold, run.Code);
        Assert.Contains("rotary switches 1 2", run.Output, StringComparison.Ordinal);
        Assert.Contains("70Bh", run.Output, StringComparison.Ordinal);
        Assert.Contains("60 Ω", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_second_module_of_one_address_ends_with_1_and_the_plan_changes_that_one_alone()
    {
        using var folder = new TemporaryFolder();
        string file = folder.File("cell.json");
        string text = await File.ReadAllTextAsync(Repository.Sample("jar-lids"), TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(file, text.Replace("\"address\": 12", "\"address\": 11", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        var run = await Run.Trivet("wiring", file, "--format", "json");
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        using var json = JsonDocument.Parse(run.Output);
        var changed = json.RootElement.GetProperty("modules").EnumerateArray()
            .Where(m => m.GetProperty("planned").ValueKind == JsonValueKind.Number && m.GetProperty("planned").GetInt32() != m.GetProperty("address").GetInt32());
        var one = Assert.Single(changed);
        Assert.Equal(("axis-b", 12), (one.GetProperty("id").GetString(), one.GetProperty("planned").GetInt32()));
    }

    [Fact]
    public async Task The_table_has_a_row_for_each_module_and_no_text_that_a_spreadsheet_would_compute()
    {
        using var folder = new TemporaryFolder();
        string file = folder.File("cell.json");
        string text = await File.ReadAllTextAsync(Repository.Sample("jar-lids"), TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(file, text.Replace("\"Inputs 16\"", "\"=1+1, or so\"", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        var run = await Run.Trivet("wiring", file, "--format", "csv");
        string[] lines = run.Output.TrimEnd().Split("\r\n");
        Assert.Equal(10, lines.Length);
        Assert.StartsWith("4,axis-a,Axis first rail,axis,45,11,11,1 1", lines[4], StringComparison.Ordinal);
        Assert.Contains(",\"'=1+1, or so\",", lines[8], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_module_in_the_wrong_place_is_shown_where_it_should_stand()
    {
        using var folder = new TemporaryFolder();
        string file = folder.File("cell.json");
        string text = await File.ReadAllTextAsync(Repository.Sample("jar-lids"), TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(file, text.Replace("\"motor-supply\": { \"order\": 2", "\"motor-supply\": { \"order\": 9", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        var run = await Run.Trivet("wiring", file, "--format", "json");
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        using var json = JsonDocument.Parse(run.Output);
        var moved = json.RootElement.GetProperty("modules").EnumerateArray().Single(m => m.GetProperty("id").GetString() == "motor-supply");
        Assert.Equal((2, 8), (moved.GetProperty("place").GetInt32(), moved.GetProperty("placeNow").GetInt32()));
        var heat = json.RootElement.GetProperty("sections").EnumerateArray().Single(s => s.GetProperty("id").GetString() == "heat");
        Assert.Equal(134, heat.GetProperty("tables").GetProperty("heat-by-module").EnumerateArray().Sum(r => r.GetProperty("atLoad").GetDouble()), 1e-9);
    }

    [Fact]
    public async Task Another_table_comes_by_its_name_and_an_unknown_name_is_refused_with_those_there_are()
    {
        var run = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--format", "csv", "--table", "heat-by-module");
        string[] lines = run.Output.TrimEnd().Split("\r\n");
        Assert.Equal("id,module,atRest[W],atLoad[W],bears[°C],dischargeTime[s],fan", lines[0]);
        Assert.Equal("motor-supply,Supply 48 V,8,45,60,60,–", lines[2]);
        var refused = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--format", "csv", "--table", "warmth");
        Assert.Equal(ExitCode.Refused, refused.Code);
        Assert.Contains("heat-by-module", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Supplies_wires_and_the_stop_of_all_axes_are_told_with_their_numbers()
    {
        var run = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--format", "json");
        Assert.Equal(ExitCode.AllHold, run.Code);
        using var json = JsonDocument.Parse(run.Output);
        JsonElement Table(string section, string table) =>
            json.RootElement.GetProperty("sections").EnumerateArray().Single(s => s.GetProperty("id").GetString() == section).GetProperty("tables").GetProperty(table);
        var logic = Table("branches", "branches").EnumerateArray().Single(r => r.GetProperty("of").GetString() == "/cabinet/branches/logic");
        // 0.5 mm² in trunking, 7.5 A, four circuits together 0.65 (IEC 60204-1).
        Assert.Equal(7.5 * 0.65, logic.GetProperty("bears").GetDouble(), 1e-9);
        Assert.True(logic.GetProperty("load").GetDouble() <= logic.GetProperty("rating").GetDouble());
        foreach (var row in Table("motor-supply", "stops").EnumerateArray())
        {
            double energy = row.GetProperty("kinetic").GetDouble() + row.GetProperty("falling").GetDouble();
            Assert.Equal(energy, row.GetProperty("stored").GetDouble() + row.GetProperty("burnt").GetDouble(), 1e-6);
            // 10 mF and no chopper reached: V = √(V₀² + 2E/C).
            Assert.Equal(Math.Sqrt(Math.Pow(row.GetProperty("before").GetDouble(), 2) + 2 * energy / 0.010), row.GetProperty("reached").GetDouble(), 1e-4);
        }
    }

    [Theory, InlineData("jar-lids"), InlineData("biscuits"), InlineData("labels")]
    public async Task Every_form_is_written_for_any_cabinet(string sample)
    {
        foreach (string format in (string[])["text", "markdown", "csv", "json"])
        {
            var run = await Run.Trivet("wiring", Repository.Sample(sample), "--format", format);
            Assert.NotEqual(ExitCode.Refused, run.Code);
            Assert.DoesNotContain("not a number", run.Output, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", run.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task One_axis_more_is_planned_and_what_then_falls_short_is_said()
    {
        var run = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--add", "axis");
        Assert.Matches(@"8 \(10\)\s+axis-turn-2\s+axis\s+–\s+change to 22", run.Output);
        // 465 mm and 45 mm more on a rail of 500 mm.
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        Assert.Contains("- rail taken of cabinet: 510 mm, at most 500 mm wanted", run.Output, StringComparison.Ordinal);
        var refused = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--add", "valve");
        Assert.Equal(ExitCode.Refused, refused.Code);
        Assert.Contains("axis", refused.Error, StringComparison.Ordinal);
    }
}

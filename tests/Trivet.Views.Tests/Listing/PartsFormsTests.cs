using System.Text.Json;
using Trivet.Cells;
using Trivet.Views.Listing;

namespace Trivet.Views.Tests.Listing;

/// <summary>The parts list in its four forms; JSON by an independent reader, CSV by the rules of RFC 4180.</summary>
public sealed class PartsFormsTests
{
    private static PartsSheet Sheet => PartsSheet.Of(Cell.Empty with
    {
        Name = "A | B",
        Tool = new() { Parts = Keyed.Empty<ToolPart>().Add("cup", new() { Kind = ToolPartKind.Cup, Name = "Cup, \"soft\"" }) },
        Cables = Keyed.Empty<Cable>().Add("motor", new() { Name = "Motor", Length = 4.5 }),
        PartsList = Keyed.Empty<ListedPart>().Add("cup", new() { Of = "/tool/parts/cup", Quantity = 4, Supplied = Supplied.Bought, Article = "17|4" }),
    });

    [Fact]
    public void Csv_quotes_what_needs_it_and_keeps_si() =>
        Assert.Equal(
            "group,of,kind,name,sizes[m],quantity,spares,supplied,stated,article,note\r\n"
            + "tool,/tool/parts/cup,named,\"Cup, \"\"soft\"\"\",,4,1,bought,yes,17|4,\r\n"
            + "cables,/cables/motor,named,Motor,4.5,1,0,bought,no,,\r\n",
            PartsForms.Csv(Sheet));

    [Fact]
    public void Json_says_the_same()
    {
        using var json = JsonDocument.Parse(PartsForms.Json(Sheet, "abc"));
        Assert.Equal("trivet-parts", json.RootElement.GetProperty("format").GetString());
        var cup = json.RootElement.GetProperty("parts")[0];
        Assert.Equal(4, cup.GetProperty("quantity").GetInt32());
        Assert.Equal("Cup, \"soft\"", cup.GetProperty("name").GetString());
        Assert.Equal(4.5, json.RootElement.GetProperty("parts")[1].GetProperty("sizes")[0].GetDouble());
    }

    [Fact]
    public void Markdown_escapes_bars_and_text_lines_up()
    {
        Assert.Contains("# Parts list: A \\| B", PartsForms.Markdown(Sheet), StringComparison.Ordinal);
        Assert.Contains("17\\|4", PartsForms.Markdown(Sheet), StringComparison.Ordinal);
        string[] lines = PartsForms.Text(Sheet).Split('\n');
        string head = lines.Single(l => l.Contains("Pieces", StringComparison.Ordinal)), cup = lines.Single(l => l.Contains("soft", StringComparison.Ordinal));
        Assert.Equal(head.IndexOf("Pieces", StringComparison.Ordinal) + "Pieces".Length - 1, cup.IndexOf('4', StringComparison.Ordinal));
        Assert.Contains("2 lines, 5 pieces: 5 bought, 0 made.", lines);
    }
}

using System.Text;
using System.Xml.Linq;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Views.Cabinets;
using Trivet.Views.Wiring;
using Xunit;

namespace Trivet.Views.Tests;

public sealed class CabinetStripTests
{
    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    [Theory, InlineData("jar-lids"), InlineData("biscuits"), InlineData("labels"), InlineData("tight-corner")]
    public void Every_module_stands_once_in_order_within_the_page(string sample)
    {
        var sheet = WiringSheet.Of(Sample(sample));
        var drawing = CabinetStrip.Of(sheet);
        var svg = XDocument.Parse(drawing.Svg);
        XNamespace ns = "http://www.w3.org/2000/svg";
        var modules = svg.Descendants(ns + "g").Where(g => (string?)g.Attribute("class") == "module").ToArray();
        Assert.Equal(sheet.Modules.Select(m => $"/cabinet/modules/{m.Id}"), modules.Select(m => (string)m.Attribute("data-pointer")!));
        double right = 0;
        foreach (var outline in modules.Select(m => m.Elements(ns + "rect").First()))
        {
            double x = (double)outline.Attribute("x")!, width = (double)outline.Attribute("width")!;
            Assert.True(x >= right - 0.02 && x + width <= drawing.Width);
            right = x + width;
        }
    }

    [Fact]
    public void Names_longer_than_the_outline_are_cut_and_stay_in_the_tooltip()
    {
        var cell = Sample("jar-lids");
        string name = new('W', 60);
        cell = cell with { Cabinet = cell.Cabinet with { Modules = cell.Cabinet.Modules.SetItem("inputs", cell.Cabinet.Modules["inputs"] with { Name = name }) } };
        string svg = CabinetStrip.Of(WiringSheet.Of(cell)).Svg;
        Assert.Contains(name + ":", svg, StringComparison.Ordinal);
        Assert.Matches("W+…<", svg);
    }

    [Fact]
    public void An_outline_leads_to_the_facts_of_its_module()
    {
        var cell = Sample("jar-lids");
        var sheet = WiringSheet.Of(cell);
        var svg = XDocument.Parse(CabinetStrip.Of(sheet, link: id => "/facts/" + id).Svg);
        XNamespace ns = "http://www.w3.org/2000/svg";
        Assert.Equal(sheet.Modules.Select(m => "/facts/" + m.Id), svg.Descendants(ns + "a").Select(a => (string)a.Attribute("href")!));
        Assert.DoesNotContain("<a ", CabinetStrip.Of(sheet).Svg, StringComparison.Ordinal);

        var facts = ModuleFacts.Of(sheet, ElectricalSections.Of(cell), "axis-b").ToDictionary(f => f.Id, f => f.Text);
        Assert.Equal(("12, keep", "rotary switches 1 2", "16 W", "70Ch"), (facts["address"], facts["set-by"], facts["heat-by-module-atLoad"], facts["start-up"]));
        Assert.Contains("18Ch", facts["sends-from-b"], StringComparison.Ordinal);
        Assert.Empty(ModuleFacts.Of(sheet, [], "nobody"));
    }

    [Fact]
    public void A_gap_is_left_between_the_outlines()
    {
        var sheet = WiringSheet.Of(Sample("jar-lids"));
        XNamespace ns = "http://www.w3.org/2000/svg";
        var outlines = XDocument.Parse(CabinetStrip.Of(sheet).Svg).Descendants(ns + "g").Where(g => (string?)g.Attribute("class") == "module").Select(g => g.Elements(ns + "rect").First()).ToArray();
        double Right(int i) => (double)outlines[i].Attribute("x")! + (double)outlines[i].Attribute("width")!;
        double scale = (double)outlines[0].Attribute("width")! / 0.060;
        Assert.Equal(0.020, ((double)outlines[2].Attribute("x")! - Right(1)) / scale, 1e-4);
    }
}

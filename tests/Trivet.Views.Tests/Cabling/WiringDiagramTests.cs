using System.Globalization;
using System.Xml.Linq;
using Trivet.Cells;
using Trivet.Views.Cabling;
using Trivet.Views.Drawings;
using Xunit;

namespace Trivet.Views.Tests.Cabling;

public sealed class WiringDiagramTests
{
    private readonly record struct Span(double X1, double Y1, double X2, double Y2)
    {
        public bool Meets(Span o) => X1 < o.X2 && o.X1 < X2 && Y1 < o.Y2 && o.Y1 < Y2;
    }

    /// <summary>Twelve modules and forty cables: to ten devices, between neighbours, two to words, with long names.</summary>
    private static Cell Forty()
    {
        var cell = Cell.Empty with { Name = "Forty cables" };
        var modules = Keyed.Empty<Module>();
        for (int i = 0; i < 12; i++) modules = modules.Add($"m{i:00}", new() { Order = i, Name = $"Module number {i} of a cabinet with long names" });
        var devices = Keyed.Empty<CabledDevice>();
        for (int i = 0; i < 10; i++) devices = devices.Add($"d{i:00}", new() { Order = i, Name = $"Device number {i} somewhere on the frame" });
        var cables = Keyed.Empty<Cable>();
        for (int i = 0; i < 40; i++)
        {
            string to = i % 9 == 4 ? $"m{(i + 5) % 12:00}" : i % 19 == 7 ? $"a place in words {i}" : $"d{i * 7 % 10:00}";
            cables = cables.Add($"c{i:00}", new()
            {
                Order = i, From = $"m{i * 5 % 12:00}", To = to, Kind = (CableKind)(i % 9), Label = $"W{i:000}-LONG-LABEL", FromEnd = new() { Socket = $"X{i}", Connector = "D-sub 15" }, ToEnd = new() { Connector = "M12", Coding = "A" },
            });
        }
        return cell with { Cabinet = new() { Modules = modules }, Cabling = new() { Devices = devices }, Cables = cables };
    }

    private static (XElement Svg, Span[] Texts, (double X, double Y)[][] Lines, Span[] Boxes) Read(Cell cell)
    {
        var svg = XDocument.Parse(WiringDiagram.Of(cell).Svg).Root!;
        XNamespace ns = "http://www.w3.org/2000/svg";
        return (
            svg,
            [
                .. svg.Descendants(ns + "text").Select(t =>
                {
                    var box = Sheet.BoxOf(N(t, "x"), N(t, "y"), t.Value, N(t, "font-size"), (string?)t.Attribute("text-anchor") switch { "end" => Anchor.End, "middle" => Anchor.Middle, _ => Anchor.Start }, false);
                    return new Span(box.X, box.Y, box.Right, box.Bottom);
                }),
            ],
            [.. svg.Descendants(ns + "polyline").Select(l => l.Attribute("points")!.Value.Split(' ').Select(p => p.Split(',')).Select(p => (Number(p[0]), Number(p[1]))).ToArray())],
            [.. svg.Descendants(ns + "rect").Where(r => (string?)r.Attribute("class") != "page").Select(r => new Span(N(r, "x"), N(r, "y"), N(r, "x") + N(r, "width"), N(r, "y") + N(r, "height")))]);

        static double N(XElement e, string name) => Number(e.Attribute(name)!.Value);
        static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Forty_cables_have_no_text_on_another_and_four_bends_at_most()
    {
        var (_, texts, lines, boxes) = Read(Forty());
        Assert.Equal(40, lines.Length);
        Assert.Equal(12, boxes.Count(b => b.X1 == boxes.Min(o => o.X1)));
        Assert.True(texts.Length >= 80 + 22);
        for (int i = 0; i < texts.Length; i++)
            for (int j = 0; j < i; j++) Assert.False(texts[i].Meets(texts[j]), $"texts {i} and {j}");
        for (int i = 0; i < boxes.Length; i++)
            for (int j = 0; j < i; j++) Assert.False(boxes[i].Meets(boxes[j]), $"outlines {i} and {j}");
        foreach (var line in lines)
        {
            Assert.InRange(line.Length - 2, 0, 4);
            for (int k = 1; k < line.Length; k++)
            {
                Assert.True(line[k].X == line[k - 1].X || line[k].Y == line[k - 1].Y);
                var stretch = Stretch(line[k - 1], line[k], 0.4);
                Assert.DoesNotContain(texts, t => t.Meets(stretch));
                Assert.DoesNotContain(boxes, b => new Span(b.X1 + 1, b.Y1 + 1, b.X2 - 1, b.Y2 - 1).Meets(stretch));
            }
        }
    }

    [Fact]
    public void No_two_cables_run_on_each_other()
    {
        var (_, _, lines, _) = Read(Forty());
        var stretches = lines.SelectMany((l, i) => Enumerable.Range(1, l.Length - 1).Select(k => (Cable: i, A: l[k - 1], B: l[k]))).ToArray();
        foreach (var s in stretches)
            foreach (var o in stretches.Where(o => o.Cable < s.Cable && (s.A.X == s.B.X) == (o.A.X == o.B.X)))
                Assert.False(Stretch(s.A, s.B, 0.4).Meets(Stretch(o.A, o.B, 0.4)), $"cables {s.Cable} and {o.Cable}");
    }

    [Fact]
    public void An_axis_shows_its_cables_alone()
    {
        var cell = Forty();
        cell = cell with { Cables = cell.Cables.SetItem("c03", cell.Cables["c03"] with { Axis = "a" }) };
        Assert.Single(XDocument.Parse(WiringDiagram.Of(cell, "a").Svg).Descendants("{http://www.w3.org/2000/svg}polyline"));
    }

    private static Span Stretch((double X, double Y) a, (double X, double Y) b, double half) =>
        new(Math.Min(a.X, b.X) - half, Math.Min(a.Y, b.Y) - half, Math.Max(a.X, b.X) + half, Math.Max(a.Y, b.Y) + half);
}

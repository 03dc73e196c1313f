using System.Globalization;
using System.Xml.Linq;
using Trivet.Views.Drawings;

namespace Trivet.Views.Tests.Drawings;

/// <summary>A drawing read back from its SVG text: where its texts are, and whether it is well-formed.</summary>
internal sealed class SvgPage
{
    public SvgPage(Drawing drawing)
    {
        Drawing = drawing;
        Root = XDocument.Parse(drawing.Svg).Root!;
    }

    public Drawing Drawing { get; }
    public XElement Root { get; }

    public IEnumerable<XElement> All(string name) => Root.Descendants().Where(e => e.Name.LocalName == name);

    public IEnumerable<(string Text, Box Box)> Texts() => All("text").Select(t =>
    {
        double x = Number(t, "x"), y = Number(t, "y"), size = Number(t, "font-size");
        var anchor = t.Attribute("text-anchor")?.Value switch { "middle" => Anchor.Middle, "end" => Anchor.End, _ => Anchor.Start };
        return (t.Value, Sheet.BoxOf(x, y, t.Value, size, anchor, t.Attribute("transform") is not null));
    });

    public static double Number(XElement e, string attribute) => double.Parse(e.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);

    /// <summary>Every text within the page, and no two over each other.</summary>
    public void AssertTextsAreApart()
    {
        var texts = Texts().ToList();
        var page = new Box(0, 0, Drawing.Width, Drawing.Height);
        Assert.All(texts, t => Assert.True(page.Contains(t.Box), $"\"{t.Text}\" leaves the page of \"{Drawing.Title}\": {t.Box}."));
        for (int i = 0; i < texts.Count; i++)
            for (int j = 0; j < i; j++)
                Assert.False(texts[i].Box.Overlaps(texts[j].Box), $"\"{texts[i].Text}\" and \"{texts[j].Text}\" overlap in \"{Drawing.Title}\": {texts[i].Box}, {texts[j].Box}.");
    }
}

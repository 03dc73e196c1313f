using System.Globalization;
using System.Xml.Linq;
using Trivet.Motion;
using Trivet.Views.Charts;
using Trivet.Views.Drawings;
using Trivet.Views.Frames;
using Trivet.Views.Tests.Motion;

namespace Trivet.Views.Tests.Frames;

/// <summary>The pictures of docs/frame.md: made by the program from the jar lids, and still what it makes. TRIVET_WRITE_DOCS=1 writes them.</summary>
public sealed class FramePicturesTests
{
    private static readonly FrameReport Report = FrameReport.Of(MotionSheetTests.Sample("jar-lids"), [], CancellationToken.None);

    public static TheoryData<string> Names => ["corner", "mode", "band", "settle"];

    private static Drawing Draw(string name) => name switch
    {
        "corner" => FrameDrawing.Of(Report, FrameView.FromACorner),
        "mode" => FrameDrawing.Of(Report, FrameView.FromACorner, 2),
        "band" => ChartSvg.Render(FrameCharts.Band(Report), 620, 300),
        _ => ChartSvg.Render(FrameCharts.Settle(Report, Report.Under[0], Report.Under[0].Settling.Single(s => s.Wait == "pick")), 620, 300),
    };

    [Theory, MemberData(nameof(Names))]
    public void A_picture_is_what_the_program_draws(string name)
    {
        string path = Repository.PathOf($"docs/frame/{name}.svg"), now = Draw(name).Svg;
        if (Environment.GetEnvironmentVariable("TRIVET_WRITE_DOCS") == "1") File.WriteAllText(path, now);
        // Another processor may round otherwise, and a mode may come out the other way round: texts are held to the letter, still lines by the room they take.
        XElement there = XDocument.Load(path).Root!, here = XDocument.Parse(now).Root!;
        Assert.Equal(Texts(there), Texts(here));
        Assert.Equal(Lines(there).Length, Lines(here).Length);
        if (name != "mode") Assert.All(Lines(there).Zip(Lines(here)), pair => Assert.All(pair.First.Zip(pair.Second), v => Assert.Equal(v.First, v.Second, 0.5)));
    }

    [Fact]
    public void The_page_shows_every_picture()
    {
        string page = File.ReadAllText(Repository.PathOf("docs/frame.md"));
        Assert.All(Names, name => Assert.Contains($"(frame/{name.Data}.svg)", page, StringComparison.Ordinal));
    }

    [Fact]
    public void A_mode_that_moves_swings_between_both_its_ends_and_through_where_it_stands()
    {
        var svg = XDocument.Parse(FrameDrawing.Of(Report, FrameView.AlongY, 0, moving: true).Svg).Root!;
        var moves = svg.Descendants().Where(e => e.Name.LocalName == "animate").ToArray();
        Assert.True(moves.Length >= Report.Study!.Mesh.Lines.Length);
        var still = svg.Descendants().Where(e => e.Name.LocalName == "polyline" && e.Attribute("class")!.Value == "d h").Select(e => Numbers(e.Attribute("points")!.Value)).ToArray();
        for (int i = 0; i < moves.Length; i++)
        {
            string[] forms = moves[i].Attribute("values")!.Value.Split(';');
            Assert.Equal(forms[0], forms[2]);
            double[] one = Numbers(forms[0]), other = Numbers(forms[1]);
            for (int k = 0; k < one.Length; k++) Assert.Equal(still[i][k], (one[k] + other[k]) / 2, 0.02);
        }

        Assert.DoesNotContain(XDocument.Parse(FrameDrawing.Of(Report, FrameView.AlongY, 0).Svg).Root!.Descendants(), e => e.Name.LocalName == "animate");
    }

    [Fact]
    public void Every_row_has_a_text_and_every_number_a_row()
    {
        var sheet = FrameSheet.Of(Report, []);
        Assert.Equal(10, sheet.Rows.Count(r => r.Group == "modes"));
        Assert.All(sheet.Rows, r => Assert.False(string.IsNullOrWhiteSpace(r.What) || string.IsNullOrWhiteSpace(r.Shown)));
        Assert.All(sheet.Rows, r => Assert.True(r.Low <= r.High));
        string csv = FrameForms.Csv(sheet);
        Assert.Equal(sheet.Rows.Length + 1, csv.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.Contains("mode-1", FrameForms.Json(sheet, "x"), StringComparison.Ordinal);
    }

    private static double[] Numbers(string points) => [.. points.Split(' ', ',').Select(v => double.Parse(v, CultureInfo.InvariantCulture))];

    private static string[] Texts(XElement svg) => [.. svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];

    private static double[][] Lines(XElement svg) =>
    [
        .. svg.Descendants().Where(e => e.Name.LocalName is "polyline" or "polygon").Select(e =>
        {
            double[] all = Numbers(e.Attribute("points")!.Value), x = [.. all.Where((_, i) => i % 2 == 0)], y = [.. all.Where((_, i) => i % 2 == 1)];
            return new[] { x.Min(), x.Max(), y.Min(), y.Max() };
        }),
    ];
}

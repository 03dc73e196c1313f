using System.Globalization;
using System.Xml.Linq;
using Trivet.Assessment;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Views.Charts;
using Trivet.Views.Drawings;
using Trivet.Views.Motion;

namespace Trivet.Views.Tests.Motion;

/// <summary>The pictures of docs/motion.md: made by the program from the jar lids, and still what it makes. TRIVET_WRITE_DOCS=1 writes them.</summary>
public sealed class MotionPicturesTests
{
    private static readonly MotionSheet Sheet = MotionSheet.Of(MotionSheetTests.Sample("jar-lids"), "to-left");

    private static readonly double[] Blends = [0.01, 0.025, 0.05];

    public static TheoryData<string> Names => ["elevation", "corner", "laws", "speeds", "accelerations", "forces", "cloud", "voltage"];

    private static Drawing Draw(string name)
    {
        var run = MotionRun.Of(Sheet, TimingLaw.Controller)!;
        return name switch
        {
            "elevation" => CellDrawings.Elevation(Assess.Preview(Sheet.Cell), way: Sheet.Way),
            "corner" => ChartSvg.Render(Corner(), 560, 420),
            "laws" => ChartSvg.Render(MotionCharts.Laws(Sheet, TimingLaw.Controller), 720, 300),
            "speeds" => ChartSvg.Render(MotionCharts.Speeds(Sheet), 720, 340),
            "accelerations" => OverTime("acceleration"),
            "forces" => OverTime("force"),
            "voltage" => OverTime("voltage"),
            _ => ChartSvg.Render(MotionCharts.Cloud(run, run.WorstAxis!)!.Chart, 720, 440),
        };

        Drawing OverTime(string id) => ChartSvg.Render(MotionCharts.OverTime(run, rotary: false).Single(c => c.Id == id).Chart, 720, 300);
    }

    /// <summary>One corner of a gate under three blends, true to scale.</summary>
    private static Chart Corner() => new("A corner of a gate under three blends", new("x", "mm", -60, 80), new("z", "mm", -80, 20),
    [
        .. Blends.Select((blend, i) =>
        {
            var path = ToolPath.Through([new(0, 0, -0.08), new(0, 0, 0), new(0.08, 0, 0)], blend);
            var points = Enumerable.Range(0, 161).Select(k => path.At(path.Length * k / 160).P).ToArray();
            return new Series($"{blend * 1000:0} mm", SeriesKind.Line, [.. points.Select(p => p.X * 1000)], [.. points.Select(p => p.Z * 1000)], Strong: i == 1);
        }),
    ])
    { Marks = [new("corner", 0, 0)] };

    [Theory, MemberData(nameof(Names))]
    public void A_picture_is_what_the_program_draws(string name)
    {
        string path = Repository.PathOf($"docs/motion/{name}.svg");
        string now = Draw(name).Svg;
        if (Environment.GetEnvironmentVariable("TRIVET_WRITE_DOCS") == "1") File.WriteAllText(path, now);
        // Another processor may round a hundredth of a pixel otherwise: texts are held to the letter, lines by the room they take.
        XElement there = XDocument.Load(path).Root!, here = XDocument.Parse(now).Root!;
        Assert.Equal(Texts(there), Texts(here));
        Assert.Equal(Lines(there).Length, Lines(here).Length);
        Assert.All(Lines(there).Zip(Lines(here)), pair => Assert.All(pair.First.Zip(pair.Second), v => Assert.Equal(v.First, v.Second, 0.5)));
    }

    [Fact]
    public void The_page_shows_every_picture()
    {
        string page = File.ReadAllText(Repository.PathOf("docs/motion.md"));
        Assert.All(Names, name => Assert.Contains($"(motion/{name.Data}.svg)", page, StringComparison.Ordinal));
    }

    private static string[] Texts(XElement svg) => [.. svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];

    private static double[][] Lines(XElement svg) =>
    [
        .. svg.Descendants().Where(e => e.Name.LocalName is "polyline" or "polygon").Select(e =>
        {
            double[][] points = [.. e.Attribute("points")!.Value.Split(' ').Select(p => p.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray())];
            return new[] { points.Min(p => p[0]), points.Max(p => p[0]), points.Min(p => p[1]), points.Max(p => p[1]) };
        }),
    ];
}

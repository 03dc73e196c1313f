using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Trivet.Numerics;
using Trivet.Views.Drawings;
using Trivet.Views.Papers;

namespace Trivet.Views.Pictures;

/// <summary>
/// A picture of a step as lines of a paper: read from the picture as the desk and the floor show it, so that paper and screen cannot differ. Its empty edges are left out.
/// </summary>
internal sealed partial record PictureOnPaper(ImmutableArray<Mark> Marks, double Width, double Height)
{
    /// <summary>Type that is read at arm's length with ease, and the least that is read there (common practice, no source), millimetres.</summary>
    private const double ReadableType = 2.1, SmallestType = 1.6;

    /// <summary>A picture's label is read with ease, and at most twice as large as the type of a card; millimetres of the paper for one of the picture's sheet.</summary>
    public const double Smallest = ReadableType / PicturePage.Label, Largest = 2 * DraftingTable.Type / PicturePage.Label;

    /// <summary>Rounds the dot of a leader.</summary>
    private const int Corners = 16;

    /// <param name="svg">Of <see cref="StepPictures"/>.</param>
    public static PictureOnPaper Of(string svg)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        foreach (var element in XDocument.Parse(svg).Root!.Descendants()) Add(marks, element);
        var (low, high) = BoundsOf(marks);
        return new([.. marks.Select(m => m.Moved(new(-low.X, -low.Y)))], high.X - low.X, high.Y - low.Y);
    }

    /// <summary>Set on a page.</summary>
    /// <param name="scale">Millimetres of the paper for one of the picture's sheet.</param>
    public FlowPicture At(double scale) => new(
        [
            .. Marks.Select(m => (Mark)(m switch
            {
                Stroke s => s with { Points = [.. s.Points.Select(p => scale * p)] },
                FillMark f => f with { Points = [.. f.Points.Select(p => scale * p)] },
                Label l => l with { At = scale * l.At, Size = Math.Max(scale * l.Size, SmallestType) },
                _ => throw new ArgumentException($"{m.GetType().Name} does not stand in a picture"),
            })),
        ],
        scale * Width, scale * Height);

    private static void Add(ImmutableArray<Mark>.Builder marks, XElement element)
    {
        string[] style = ((string?)element.Attribute("class") ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        switch (element.Name.LocalName)
        {
            // What is said of the picture, what is gathered, and the paper itself.
            case "title" or "desc" or "style" or "g":
            case "rect" when style.Contains("page"):
                break;
            case "line":
                marks.Add(new Stroke([Point("x1", "y1"), Point("x2", "y2")], PenOf(style)));
                break;
            case "polyline":
                marks.Add(new Stroke(Points((string)element.Attribute("points")!), PenOf(style)));
                break;
            case "polygon":
                Shape(Points((string)element.Attribute("points")!));
                break;
            case "rect":
                double x = Number("x"), y = Number("y"), right = x + Number("width"), bottom = y + Number("height");
                Shape([new(x, -y), new(right, -y), new(right, -bottom), new(x, -bottom)]);
                break;
            case "circle":
                var centre = Point("cx", "cy");
                marks.Add(new FillMark([.. Enumerable.Range(0, Corners).Select(i => centre + Number("r") * new Vec2(Math.Cos(2 * Math.PI * i / Corners), Math.Sin(2 * Math.PI * i / Corners)))]));
                break;
            case "path":
                foreach (var line in Lines((string)element.Attribute("d")!)) marks.Add(new Stroke(line, PenOf(style)));
                break;
            case "text":
                marks.Add(new Label(
                    Point("x", "y"), element.Value, Number("font-size"), (string?)element.Attribute("text-anchor") switch { "middle" => TextAnchor.Middle, "end" => TextAnchor.End, _ => TextAnchor.Start },
                    style.Contains("k"), element.Attribute("transform") is not null));
                break;
            default:
                throw new ArgumentException($"a picture's {element.Name.LocalName} has no form on paper", nameof(element));
        }

        double Number(string name) => double.Parse((string)element.Attribute(name)!, CultureInfo.InvariantCulture);

        Vec2 Point(string across, string down) => new(Number(across), -Number(down));

        void Shape(ImmutableArray<Vec2> points)
        {
            if (style.Any(s => s is "p" or "u")) marks.Add(new FillMark(points, White: true));
            marks.Add(new Stroke(points, PenOf(style), true));
        }
    }

    /// <summary>As <see cref="Ink"/> inks them, in the widths of a paper.</summary>
    private static Papers.Pen PenOf(string[] style) => style switch
    {
        _ when style.Any(s => s is "r" or "w") => Papers.Pen.Outline,
        _ when style.Contains("c") => Papers.Pen.Centre,
        _ when style.Any(s => s is "e" or "n" or "d" or "g") => Papers.Pen.Fine,
        _ when style.Any(s => s is "v" or "h") => Papers.Pen.Hidden,
        _ => Papers.Pen.Thin,
    };

    private static ImmutableArray<Vec2> Points(string text) =>
        [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(p => p.Split(',')).Select(p => new Vec2(double.Parse(p[0], CultureInfo.InvariantCulture), -double.Parse(p[1], CultureInfo.InvariantCulture)))];

    /// <summary>Path data of <see cref="LineWork.Path"/>: a place to begin, then steps.</summary>
    private static IEnumerable<ImmutableArray<Vec2>> Lines(string data)
    {
        var line = new List<Vec2>();
        foreach (Match step in Steps().Matches(data))
        {
            var by = new Vec2(double.Parse(step.Groups[2].ValueSpan, CultureInfo.InvariantCulture), -double.Parse(step.Groups[3].ValueSpan, CultureInfo.InvariantCulture));
            if (step.Groups[1].Value == "l") line.Add(line[^1] + by);
            else
            {
                if (line.Count > 1) yield return [.. line];
                line = [by];
            }
        }
        if (line.Count > 1) yield return [.. line];
    }

    [GeneratedRegex("([Ml])(-?[0-9.]+) (-?[0-9.]+)")]
    private static partial Regex Steps();

    private static (Vec2 Low, Vec2 High) BoundsOf(IEnumerable<Mark> marks)
    {
        double left = double.PositiveInfinity, low = double.PositiveInfinity, right = double.NegativeInfinity, high = double.NegativeInfinity;
        foreach (var p in marks.SelectMany(PointsOf)) (left, low, right, high) = (Math.Min(left, p.X), Math.Min(low, p.Y), Math.Max(right, p.X), Math.Max(high, p.Y));
        return (new(left, low), new(right, high));
    }

    private static IEnumerable<Vec2> PointsOf(Mark mark)
    {
        switch (mark)
        {
            case Stroke s:
                return s.Points;
            case FillMark f:
                return f.Points;
            case Label l:
                var box = Sheet.BoxOf(l.At.X, -l.At.Y, l.Text, l.Size, (Anchor)(int)l.Anchor, l.Upright);
                return [new(box.X, -box.Y), new(box.Right, -box.Bottom)];
            default:
                return [];
        }
    }
}

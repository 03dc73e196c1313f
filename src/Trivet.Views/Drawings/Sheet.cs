using System.Globalization;
using System.Text;

namespace Trivet.Views.Drawings;

/// <summary>A rectangle on the sheet, pixels, y down.</summary>
internal readonly record struct Box(double X, double Y, double Width, double Height)
{
    public double Right => X + Width;
    public double Bottom => Y + Height;
    public bool Overlaps(Box o) => X < o.Right && o.X < Right && Y < o.Bottom && o.Y < Bottom;
    public bool Contains(Box o) => o.X >= X && o.Y >= Y && o.Right <= Right && o.Bottom <= Bottom;
    public Box Grown(double by) => new(X - by, Y - by, Width + 2 * by, Height + 2 * by);
}

internal enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>
/// Writes one SVG sheet, pixels at 96 per inch, y down. It remembers where each text was put, so that the next one can be put
/// elsewhere. All numbers are written in the invariant culture with two decimals.
/// </summary>
internal sealed class Sheet
{
    /// <summary>A picture as long as nothing in it leads anywhere: what is inside a picture is not reached by assistive technology.</summary>
    private string _role = "img";
    private readonly StringBuilder _body = new();
    private readonly List<Box> _taken = [];
    private readonly string _title;
    private readonly string _description;

    public Sheet(string title, string description, double width, double height)
    {
        (_title, _description, Width, Height) = (title, description, width, height);
    }

    public double Width { get; }
    public double Height { get; }

    /// <summary>Inked as a picture of a step, with wider lines and fewer of them.</summary>
    public bool Bold { get; init; }

    public Box Page => new(0, 0, Width, Height);

    public void Line(double x1, double y1, double x2, double y2, string style) =>
        _body.Append(CultureInfo.InvariantCulture, $"<line x1=\"{N(x1)}\" y1=\"{N(y1)}\" x2=\"{N(x2)}\" y2=\"{N(y2)}\" class=\"{style}\"/>\n");

    public void Polyline(IEnumerable<(double X, double Y)> points, string style) =>
        _body.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{Points(points)}\" class=\"{style}\"/>\n");

    /// <summary>A line that swings between two forms, one way in half the time given: drawn in the first, moved by the picture itself, without a script.</summary>
    public void Swinging(IEnumerable<(double X, double Y)> one, IEnumerable<(double X, double Y)> other, string style, double seconds)
    {
        string a = Points(one), b = Points(other);
        // The splines are half waves of a sine, within a hundredth.
        _body.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{a}\" class=\"{style}\"><animate attributeName=\"points\" dur=\"{N(seconds)}s\" repeatCount=\"indefinite\" ")
            .Append(CultureInfo.InvariantCulture, $"values=\"{a};{b};{a}\" keyTimes=\"0;0.5;1\" calcMode=\"spline\" keySplines=\".364 0 .636 1;.364 0 .636 1\"/></polyline>\n");
    }

    public void Polygon(IEnumerable<(double X, double Y)> points, string style) =>
        _body.Append(CultureInfo.InvariantCulture, $"<polygon points=\"{Points(points)}\" class=\"{style}\"/>\n");

    public void Path(string d, string style, string attributes = "") => _body.Append(CultureInfo.InvariantCulture, $"<path d=\"{d}\" class=\"{style}\"{attributes}/>\n");

    public void Rectangle(Box b, string style, string attributes = "") =>
        _body.Append(CultureInfo.InvariantCulture, $"<rect x=\"{N(b.X)}\" y=\"{N(b.Y)}\" width=\"{N(b.Width)}\" height=\"{N(b.Height)}\" class=\"{style}\"{attributes}/>\n");

    public void Circle(double x, double y, double r, string style) =>
        _body.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(r)}\" class=\"{style}\"/>\n");

    /// <summary>Text on its baseline. <paramref name="upright"/> turns it a quarter left about its anchor, to be read from the right.</summary>
    public void Text(double x, double y, string text, double size, string style = "", Anchor anchor = Anchor.Start, bool upright = false)
    {
        _taken.Add(BoxOf(x, y, text, size, anchor, upright));
        string turn = upright ? $" transform=\"rotate(-90 {N(x)} {N(y)})\"" : "";
        string at = anchor switch { Anchor.Middle => " text-anchor=\"middle\"", Anchor.End => " text-anchor=\"end\"", _ => "" };
        _body.Append(CultureInfo.InvariantCulture, $"<text x=\"{N(x)}\" y=\"{N(y)}\" font-size=\"{N(size)}\"{at}{turn} class=\"t {style}\">{Escape(text)}</text>\n");
    }

    /// <summary>The rectangle a text takes.</summary>
    public static Box BoxOf(double x, double y, string text, double size, Anchor anchor, bool upright)
    {
        double w = TextMetrics.Width(text, size), h = (TextMetrics.Ascent + TextMetrics.Descent) * size;
        double before = anchor switch { Anchor.Middle => w / 2, Anchor.End => w, _ => 0 };
        return upright
            ? new(x - TextMetrics.Ascent * size, y - w + before, h, w)
            : new(x - before, y - TextMetrics.Ascent * size, w, h);
    }

    /// <summary>True when nothing was written or reserved there.</summary>
    public bool Free(Box box) => Page.Contains(box) && !_taken.Exists(box.Overlaps);

    /// <summary>Keeps a place free of labels that are put later.</summary>
    public void Reserve(Box box) => _taken.Add(box);

    /// <summary>Opens a group; attributes are written as given, after escaping.</summary>
    public void Open(params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        _body.Append("<g");
        foreach (var (name, value) in attributes) _body.Append(CultureInfo.InvariantCulture, $" {name}=\"{Escape(value)}\"");
        _body.Append(">\n");
    }

    /// <summary>What is drawn until <see cref="CloseLink"/> leads somewhere.</summary>
    public void OpenLink(string target)
    {
        _role = "group";
        _body.Append(CultureInfo.InvariantCulture, $"<a href=\"{Escape(target)}\">\n");
    }

    public void CloseLink() => _body.Append("</a>\n");

    public void Tooltip(string text) => _body.Append(CultureInfo.InvariantCulture, $"<title>{Escape(text)}</title>\n");

    public void Close() => _body.Append("</g>\n");

    public Drawing Finish() => new(_title, $"""
        <svg xmlns="http://www.w3.org/2000/svg" class="{(Bold ? "tp" : "tv")}" viewBox="0 0 {N(Width)} {N(Height)}" width="{N(Width)}" height="{N(Height)}" role="{_role}" aria-label="{Escape(_title)}">
        <title>{Escape(_title)}</title>
        <desc>{Escape(_description)}</desc>
        <style>
        {(Bold ? Ink.Picture : Ink.Style)}
        </style>
        <rect class="page" width="{N(Width)}" height="{N(Height)}"/>
        {_body}</svg>

        """, Width, Height);

    /// <summary>A number for an attribute; two decimals are a hundredth of a pixel.</summary>
    public static string N(double v)
    {
        string text = v.ToString("0.##", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    public static string Points(IEnumerable<(double X, double Y)> points) => string.Join(' ', points.Select(p => $"{N(p.X)},{N(p.Y)}"));

    /// <summary>Text for XML: the five signs, and nothing that XML 1.0 does not allow.</summary>
    public static string Escape(string text)
    {
        var safe = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            _ = rune.Value switch
            {
                '&' => safe.Append("&amp;"),
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '"' => safe.Append("&quot;"),
                '\'' => safe.Append("&#39;"),
                < ' ' or 0xFFFE or 0xFFFF => safe.Append(' '),
                _ => safe.Append(rune),
            };
        }

        return safe.ToString();
    }
}

using System.Collections.Immutable;
using Trivet.Numerics;
using Trivet.Views.Drawings;

namespace Trivet.Views.Papers;

/// <summary>One line of a title block: what it names, and what stands there.</summary>
public readonly record struct TitleEntry(string Head, string Text);

/// <summary>
/// Collects the marks of a technical drawing: border and title block [ISO-7200], dimensions with their arrows [ISO-129-1], tables, hatching.
/// Positions in millimetres of the paper.
/// </summary>
public sealed class DraftingTable(string title, string description, double width, double height)
{
    /// <summary>Type of a drawing's lettering, and of its headings, millimetres.</summary>
    public const double Type = 2.6, Heading = 3.5;

    private const double BindingMargin = 20, Margin = 10, Arrow = 2.6, TitleWidth = 180, TitleRow = 9;
    private readonly ImmutableArray<Mark>.Builder _marks = ImmutableArray.CreateBuilder<Mark>();

    public Paper Done() => new(title, description, width, height, _marks.ToImmutable());

    public static double Left => BindingMargin;
    public double Right => width - Margin;
    public static double Bottom => Margin;
    public double Top => height - Margin;

    public void Add(Mark mark) => _marks.Add(mark);

    public void Line(double x1, double y1, double x2, double y2, Pen pen) => Add(new Stroke([new(x1, y1), new(x2, y2)], pen));

    public void Rectangle(double x, double y, double w, double h, Pen pen) => Add(new Stroke([new(x, y), new(x + w, y), new(x + w, y + h), new(x, y + h)], pen, true));

    public void Text(double x, double y, string text, double size = Type, TextAnchor anchor = TextAnchor.Start, bool strong = false, bool upright = false) =>
        Add(new Label(new(x, y), text, size, anchor, strong, upright));

    /// <summary>Width of a line of type, millimetres; never less than it is.</summary>
    public static double WidthOf(string text, double size = Type) => TextMetrics.Width(text, size);

    /// <summary>Border and title block at the lower right; three entries a row.</summary>
    /// <returns>Height of the title block's upper edge.</returns>
    public double Frame(string name, IReadOnlyList<TitleEntry> entries)
    {
        Rectangle(Left, Bottom, Right - Left, Top - Bottom, Pen.Outline);
        const int Columns = 3;
        int rows = (entries.Count + Columns - 1) / Columns;
        double x = Right - TitleWidth, top = Bottom + TitleRow * (rows + 1);
        Rectangle(x, Bottom, TitleWidth, top - Bottom, Pen.Outline);
        Text(x + 3, top - 6, Cut(name, 5, TitleWidth - 6), 5, strong: true);
        for (int i = 0; i < entries.Count; i++)
        {
            double cell = TitleWidth / Columns, left = x + cell * (i % Columns), upper = top - TitleRow * (1 + i / Columns);
            Rectangle(left, upper - TitleRow, cell, TitleRow, Pen.Thin);
            Text(left + 2, upper - 3, entries[i].Head, 2);
            Text(left + 2, upper - 7.2, Cut(entries[i].Text, Heading, cell - 4), Heading);
        }
        return top;
    }

    /// <summary>A text in lines of type no wider than so many millimetres.</summary>
    public static IEnumerable<string> Lines(string text, double most, int lines = 4) => TextMetrics.Wrap(text, Type, most, lines);

    public static string Cut(string text, double size, double most) => TextMetrics.Cut(text, size, most);

    /// <summary>A table hanging from a point, its first row the heads.</summary>
    /// <param name="widths">Of the columns.</param>
    /// <returns>Height of its lower edge.</returns>
    public double Table(double x, double y, ImmutableArray<double> widths, IReadOnlyList<IReadOnlyList<string>> rows, double pitch = 4.6)
    {
        double total = widths.Sum();
        Line(x, y, x + total, y, Pen.Outline);
        for (int r = 0; r < rows.Count; r++)
        {
            double left = x;
            for (int c = 0; c < widths.Length; c++)
            {
                Text(left + 1, y - pitch + 1.3, Cut(rows[r][c], Type, widths[c] - 1.6), Type, strong: r == 0);
                left += widths[c];
            }
            y -= pitch;
            Line(x, y, x + total, y, r == 0 ? Pen.Outline : Pen.Thin);
        }
        return y;
    }

    /// <summary>A dimension between two points across, its line at a height, with lines that lead to it.</summary>
    public void Across(double x1, double x2, double from, double at, string text)
    {
        double beyond = Math.Sign(at - from) * 1.2;
        Line(x1, from, x1, at + beyond, Pen.Thin);
        Line(x2, from, x2, at + beyond, Pen.Thin);
        Line(x1, at, x2, at, Pen.Thin);
        Head(new(x1, at), new(-1, 0));
        Head(new(x2, at), new(1, 0));
        Text((x1 + x2) / 2, at + 0.9, text, Type, TextAnchor.Middle);
    }

    /// <summary>A dimension between two points upward, its line at an x. Where it is short its arrows point inward from outside.</summary>
    public void Upward(double y1, double y2, double from, double at, string text)
    {
        double beyond = Math.Sign(at - from) * 1.2;
        Line(from, y1, at + beyond, y1, Pen.Thin);
        Line(from, y2, at + beyond, y2, Pen.Thin);
        bool small = y2 - y1 < 2.5 * Arrow;
        Line(at, y1 - (small ? 2 * Arrow : 0), at, y2 + (small ? 2 * Arrow : 0), Pen.Thin);
        Head(new(at, y1), new(0, small ? 1 : -1));
        Head(new(at, y2), new(0, small ? -1 : 1));
        double w = WidthOf(text);
        if (small) Text(at - 0.9, y2 + 1.2 * Arrow, text, Type, upright: true);
        else if (w < y2 - y1) Text(at - 0.9, (y1 + y2) / 2, text, Type, TextAnchor.Middle, upright: true);
        else Text(at - 0.9, y2 + 1, text, Type, upright: true);
    }

    /// <summary>A line from a point to a text beside the drawing.</summary>
    public void Leader(Vec2 to, Vec2 from, string text)
    {
        bool right = from.X >= to.X;
        Line(to.X, to.Y, from.X, from.Y, Pen.Thin);
        Line(from.X, from.Y, from.X + (right ? 3 : -3), from.Y, Pen.Thin);
        Head(to, (to - from) / (to - from).Norm);
        Text(from.X + (right ? 4 : -4), from.Y - 0.9, text, Type, right ? TextAnchor.Start : TextAnchor.End);
    }

    /// <summary>Lines at 45° over an upright rectangle of cut material.</summary>
    public void Hatch(double x, double y, double w, double h, double pitch = 2.2)
    {
        // One family of lines over the whole paper, so that neighbouring areas of a part are hatched alike.
        for (double c = Math.Ceiling((y - (x + w)) / pitch) * pitch; c <= y + h - x; c += pitch)
        {
            double x1 = Math.Max(x, y - c), x2 = Math.Min(x + w, y + h - c);
            if (x2 - x1 > 0.05) Line(x1, x1 + c, x2, x2 + c, Pen.Thin);
        }
    }

    /// <summary>An arrow's head with its point at a place, pointing along a unit direction.</summary>
    private void Head(Vec2 at, Vec2 along)
    {
        var back = at - Arrow * along;
        var aside = new Vec2(-along.Y, along.X);
        Add(new FillMark([at, back + Arrow / 6 * aside, back - Arrow / 6 * aside]));
    }
}

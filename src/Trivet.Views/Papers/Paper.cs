using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Views.Papers;

/// <summary>Line types of a technical drawing [ISO-128], wide ones twice as wide as narrow ones.</summary>
public enum Pen
{
    /// <summary>Visible edges, wide.</summary>
    Outline,
    /// <summary>Dimensions, leaders, tables, hatching; narrow.</summary>
    Thin,
    /// <summary>Edges behind material; narrow, dashed.</summary>
    Hidden,
    /// <summary>Axes and circles through holes; narrow, long dash and dot.</summary>
    Centre,
    /// <summary>Edges and hatching of a picture set small, half as wide as a narrow line.</summary>
    Fine,
}

public enum TextAnchor
{
    Start,
    Middle,
    End,
}

/// <summary>
/// Something on a paper. Closed: strokes, arcs, filled areas and text are all there are. Millimetres of the paper from its lower left corner, y up.
/// </summary>
public abstract record Mark
{
    /// <summary>The same elsewhere on the paper.</summary>
    public Mark Moved(Vec2 by) => this switch
    {
        Stroke s => s with { Points = [.. s.Points.Select(p => p + by)] },
        ArcMark a => a with { Centre = a.Centre + by },
        FillMark f => f with { Points = [.. f.Points.Select(p => p + by)] },
        Label l => l with { At = l.At + by },
        _ => throw new ArgumentException($"{GetType().Name} has no place"),
    };
}

/// <summary>Straight lines from point to point.</summary>
public sealed record Stroke(ImmutableArray<Vec2> Points, Pen Pen, bool Closed = false) : Mark;

/// <summary>An arc of a circle, counter-clockwise; a sweep of 2π is the whole circle.</summary>
/// <param name="Start">Radians from x.</param>
public sealed record ArcMark(Vec2 Centre, double Radius, double Start, double Sweep, Pen Pen) : Mark
{
    public static ArcMark Circle(Vec2 centre, double radius, Pen pen) => new(centre, radius, 0, 2 * Math.PI, pen);
}

/// <summary>A filled area: an arrow's head.</summary>
/// <param name="White">Filled as the paper is: it hides what lies under it.</param>
public sealed record FillMark(ImmutableArray<Vec2> Points, bool White = false) : Mark;

/// <summary>A line of text on its baseline.</summary>
/// <param name="Size">Of the type, millimetres.</param>
/// <param name="Upright">Turned a quarter counter-clockwise, to be read from the right.</param>
public sealed record Label(Vec2 At, string Text, double Size, TextAnchor Anchor = TextAnchor.Start, bool Strong = false, bool Upright = false) : Mark;

/// <summary>One sheet of paper, of which SVG and PDF are written, so that the two can't disagree.</summary>
/// <param name="Width">Millimetres.</param>
/// <param name="Description">For those who can't see it.</param>
public sealed record Paper(string Title, string Description, double Width, double Height, ImmutableArray<Mark> Marks);

using System.Collections.Immutable;

namespace Trivet.Views.Charts;

/// <summary>How a series is drawn.</summary>
public enum SeriesKind
{
    /// <summary>Points joined in their order; a value that is not a number parts the line.</summary>
    Line,
    /// <summary>A cloud of points.</summary>
    Points,
    /// <summary>Bars from zero.</summary>
    Bars,
}

/// <summary>An axis. Values are already in the unit shown.</summary>
/// <param name="Title">What is measured, in words.</param>
/// <param name="Unit">Unit of the numbers; empty for a pure number.</param>
/// <param name="From">Smallest value shown; taken from the data when null. Charts with bars always show zero.</param>
/// <param name="To">Largest value shown.</param>
public sealed record Axis(string Title, string Unit = "", double? From = null, double? To = null);

/// <summary>One set of points with the name that stands beside it.</summary>
/// <param name="Strong">Drawn in the accent: the one the reader is meant to look at.</param>
/// <param name="Id">Written as data-series, for a script that moves this line; empty where none does.</param>
public sealed record Series(string Name, SeriesKind Kind, ImmutableArray<double> X, ImmutableArray<double> Y, bool Strong = false, string Id = "");

/// <summary>A line across the chart with its name: a limit, a nominal value.</summary>
/// <param name="Upright">True: at a value of the horizontal axis; false: at a value of the vertical one.</param>
public sealed record Guide(string Name, double At, bool Upright = false, bool Strong = false);

/// <summary>A point with a name and a leader.</summary>
public sealed record ChartMark(string Name, double X, double Y, bool Strong = false);

/// <summary>
/// The one description of a chart, for screen and paper alike. Charts that share a cursor id move their cursors together; the
/// script needs only the attributes that <see cref="ChartSvg"/> writes.
/// </summary>
public sealed record Chart(string Title, Axis X, Axis Y, ImmutableArray<Series> Series)
{
    public ImmutableArray<Guide> Guides { get; init; } = [];
    public ImmutableArray<ChartMark> Marks { get; init; } = [];

    /// <summary>Names of bars along the horizontal axis, in place of numbers; bar i stands at x = i.</summary>
    public ImmutableArray<string> Categories { get; init; } = [];

    public string Cursor { get; init; } = "";
}

namespace Trivet.Views.Drawings;

/// <summary>A finished drawing: SVG text, self-contained, with its size in pixels at 96 per inch. Colours come from CSS variables
/// with fallbacks, so that one drawing serves dark, light and paper.</summary>
public sealed record Drawing(string Title, string Svg, double Width, double Height)
{
    /// <summary>The part of the sheet with the picture alone, without title strip and tables: what a page shows that has its own.
    /// Null where the whole sheet is the picture.</summary>
    public (double X, double Y, double Width, double Height)? Picture { get; init; }
}

using System.Globalization;
using Trivet.Numerics;

namespace Trivet.Views.Drawings;

/// <summary>Which way a view looks.</summary>
internal enum Seen
{
    /// <summary>From above: cell x to the right, y up the sheet.</summary>
    FromAbove,
    /// <summary>Along cell y: x to the right, z up the sheet.</summary>
    AlongY,
}

/// <summary>
/// The affine map of a view: <c>sheet x = OriginX + Scale·x</c>, <c>sheet y = OriginY − Scale·y</c> (or z), Scale in pixels per metre.
/// The group of each view carries it as data attributes (docs/drawings.md), so that a page can turn a pointer back into metres.
/// </summary>
internal sealed record View(Seen Seen, double OriginX, double OriginY, double Scale, int Denominator)
{
    /// <summary>Pixels at 96 per inch for one metre at full size.</summary>
    private const double PixelsPerMetre = 96 / 0.0254;

    /// <summary>Scales to choose from: those of ISO 5455 (from memory) and steps between, so that a sheet is filled.</summary>
    private static readonly int[] Denominators = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200, 500, 1000];

    public (double X, double Y) At(Vec3 p_C) => (OriginX + Scale * p_C.X, OriginY - Scale * Up(p_C));

    public double Up(Vec3 p_C) => Seen == Seen.FromAbove ? p_C.Y : p_C.Z;

    public double Depth(Vec3 p_C) => Seen == Seen.FromAbove ? p_C.Z : -p_C.Y;

    public double AtX(double x) => OriginX + Scale * x;
    public double AtUp(double up) => OriginY - Scale * up;

    /// <summary>The largest scale at which everything fits into a box of the sheet, centred there.</summary>
    public static View Fit(Seen seen, Extents e, Box box)
    {
        double width = Math.Max(e.MaxX - e.MinX, 1e-3), height = Math.Max(e.MaxUp - e.MinUp, 1e-3);
        int denominator = Array.Find(Denominators, d => width * PixelsPerMetre / d <= box.Width && height * PixelsPerMetre / d <= box.Height);
        if (denominator == 0) denominator = (int)Math.Ceiling(PixelsPerMetre * Math.Max(width / box.Width, height / box.Height));
        double scale = PixelsPerMetre / denominator;
        return new(seen,
            box.X + box.Width / 2 - scale * (e.MinX + e.MaxX) / 2,
            box.Y + box.Height / 2 + scale * (e.MinUp + e.MaxUp) / 2,
            scale, denominator);
    }

    public void Open(Sheet sheet) => sheet.Open(
        ("data-view", Seen == Seen.FromAbove ? "plan" : "elevation"),
        ("data-origin-x", OriginX.ToString("R", CultureInfo.InvariantCulture)),
        ("data-origin-y", OriginY.ToString("R", CultureInfo.InvariantCulture)),
        ("data-scale", Scale.ToString("R", CultureInfo.InvariantCulture)));
}

/// <summary>The box of all that a view shows, cell frame, metres.</summary>
internal sealed class Extents(Seen seen)
{
    public double MinX { get; private set; } = double.PositiveInfinity;
    public double MaxX { get; private set; } = double.NegativeInfinity;
    public double MinUp { get; private set; } = double.PositiveInfinity;
    public double MaxUp { get; private set; } = double.NegativeInfinity;
    public bool Empty => !(MinX <= MaxX);

    public void Add(Vec3 p_C)
    {
        if (!p_C.IsFinite) return;
        double up = seen == Seen.FromAbove ? p_C.Y : p_C.Z;
        (MinX, MaxX) = (Math.Min(MinX, p_C.X), Math.Max(MaxX, p_C.X));
        (MinUp, MaxUp) = (Math.Min(MinUp, up), Math.Max(MaxUp, up));
    }
}

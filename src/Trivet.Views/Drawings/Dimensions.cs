namespace Trivet.Views.Drawings;

/// <summary>One dimension along an axis of the sheet: between two coordinates, with its text.</summary>
/// <param name="A">From, pixels.</param>
/// <param name="B">To, pixels.</param>
/// <param name="AtA">Where the extension line of A begins, across the axis, pixels.</param>
/// <param name="AtB">Where the extension line of B begins.</param>
internal readonly record struct Dimension(double A, double B, string Text, double AtA, double AtB);

/// <summary>
/// Dimension lines in tiers, nearest first: extension lines past a small gap, filled arrows, the number over the line and read from
/// below or from the right (ISO 129-1, common practice from memory). Dimensions that would touch go to the next tier.
/// </summary>
internal static class Dimensions
{
    public const double TierPitch = 19;
    private const double TextSize = 11;
    private const double Arrow = 8;
    private const double Gap = 3;

    /// <summary>Below a view: <paramref name="y"/> is the first tier. Returns how many tiers were used.</summary>
    public static int Below(Sheet sheet, double y, IEnumerable<Dimension> dimensions, int tiers) => Draw(sheet, y, dimensions, tiers, false);

    /// <summary>Left of a view: <paramref name="x"/> is the first tier, the next ones farther left.</summary>
    public static int Left(Sheet sheet, double x, IEnumerable<Dimension> dimensions, int tiers) => Draw(sheet, x, dimensions, tiers, true);

    private static int Draw(Sheet sheet, double first, IEnumerable<Dimension> dimensions, int tiers, bool upright)
    {
        var taken = new List<(double From, double To)>[tiers];
        for (int t = 0; t < tiers; t++) taken[t] = [];
        int used = 0;
        // Short ones inside, long ones outside: then no dimension line crosses an extension line of a shorter one.
        foreach (var d in dimensions.Where(d => Math.Abs(d.B - d.A) > 2).OrderBy(d => Math.Abs(d.B - d.A)))
        {
            double a = Math.Min(d.A, d.B), b = Math.Max(d.A, d.B), middle = (a + b) / 2;
            double half = TextMetrics.Width(d.Text, TextSize) / 2 + 3;
            bool outside = b - a < 2 * Arrow + 4;
            double from = Math.Min(outside ? a - 2 * Arrow : a, middle - half), to = Math.Max(outside ? b + 2 * Arrow : b, middle + half);
            int tier = Array.FindIndex(taken, list => !list.Exists(o => from < o.To && o.From < to));
            if (tier < 0) continue;
            taken[tier].Add((from, to));
            used = Math.Max(used, tier + 1);
            One(sheet, upright ? first - tier * TierPitch : first + tier * TierPitch, d, outside, upright);
        }

        return used;
    }

    private static void One(Sheet sheet, double across, Dimension d, bool outside, bool upright)
    {
        double a = Math.Min(d.A, d.B), b = Math.Max(d.A, d.B);
        double overshoot = upright ? -2.5 : 2.5, gap = upright ? -Gap : Gap;
        Line(d.A, d.AtA + gap, d.A, across + overshoot);
        Line(d.B, d.AtB + gap, d.B, across + overshoot);
        double reach = outside ? 2 * Arrow : 0;
        Line(a - reach, across, b + reach, across);
        ArrowHead(a, outside ? -1 : 1);
        ArrowHead(b, outside ? 1 : -1);
        double middle = (a + b) / 2;
        if (upright) sheet.Text(across - 3, middle, d.Text, TextSize, "o", Anchor.Middle, upright: true);
        else sheet.Text(middle, across - 3, d.Text, TextSize, "o", Anchor.Middle);

        void Line(double along1, double across1, double along2, double across2)
        {
            if (upright) sheet.Line(across1, along1, across2, along2, "d");
            else sheet.Line(along1, across1, along2, across2, "d");
        }

        void ArrowHead(double tip, int into)
        {
            double back = tip + into * Arrow;
            (double, double)[] points = upright
                ? [(across, tip), (across - 1.4, back), (across + 1.4, back)]
                : [(tip, across), (back, across - 1.4), (back, across + 1.4)];
            sheet.Polygon(points, "ff");
        }
    }
}

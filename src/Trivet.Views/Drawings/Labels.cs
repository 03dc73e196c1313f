namespace Trivet.Views.Drawings;

/// <summary>Puts labels where nothing else is written: near what they name, with a leader when they had to go farther.</summary>
internal static class Labels
{
    // Directions tried in turn, each farther out than the one before; right and above read best.
    private static readonly (double X, double Y)[] Directions =
        [(1, -0.6), (1, 0.6), (-1, -0.6), (-1, 0.6), (0, -1), (0, 1), (1, 0), (-1, 0), (0.5, -1), (-0.5, -1), (0.5, 1), (-0.5, 1)];

    /// <summary>Writes lines of text beside a point, with a leader from the point. Where no place is free nothing is written: better missing than unreadable.</summary>
    public static bool Callout(Sheet sheet, Box within, double x, double y, IReadOnlyList<string> lines, double size, string style, string leader, double farthest = 330)
    {
        double w = lines.Max(l => TextMetrics.Width(l, size)), pitch = size * 1.25;
        double h = (lines.Count - 1) * pitch + (TextMetrics.Ascent + TextMetrics.Descent) * size;
        for (double far = 26; far < farthest; far += 12)
        {
            foreach (var (dx, dy) in Directions)
            {
                double ex = x + far * dx, ey = y + far * dy;
                bool right = dx >= 0;
                const double Shelf = 12;
                var box = new Box(right ? ex + Shelf + 4 : ex - Shelf - 4 - w, ey - h / 2, w, h);
                var whole = box.Grown(4);
                if (!within.Contains(whole) || !sheet.Free(whole)) continue;
                sheet.Polyline([(x, y), (ex, ey), (right ? ex + Shelf : ex - Shelf, ey)], leader);
                // Towards the leader the text stands exactly, whatever the face.
                for (int i = 0; i < lines.Count; i++)
                    sheet.Text(right ? box.X : box.Right, box.Y + TextMetrics.Ascent * size + i * pitch, lines[i], size, style, right ? Anchor.Start : Anchor.End);
                return true;
            }
        }

        return false;
    }

    /// <summary>Writes a text centred on the first free place of those given; false when none is free.</summary>
    public static bool Centred(Sheet sheet, Box within, IEnumerable<(double X, double Y)> places, string text, double size, string style)
    {
        foreach (var (x, y) in places)
        {
            double baseline = y + (TextMetrics.Ascent - TextMetrics.Descent) * size / 2;
            var box = Sheet.BoxOf(x, baseline, text, size, Anchor.Middle, false).Grown(2);
            if (!within.Contains(box) || !sheet.Free(box)) continue;
            sheet.Text(x, baseline, text, size, style, Anchor.Middle);
            return true;
        }

        return false;
    }
}

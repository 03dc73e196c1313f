namespace Trivet.Views.Drawings;

/// <summary>Level marks of an elevation: a triangle on the level, its height, what it is; spread so that none covers another.</summary>
internal static class LevelMarks
{
    private const double Size = 11, Small = 10, Pitch = 26;

    public static void Draw(Sheet sheet, View view, Box area, double x, IReadOnlyList<(double Z, string Name, double From)> levels, Func<double, string> text)
    {
        var sorted = levels.OrderByDescending(l => l.Z).ToList();
        double[] at = [.. sorted.Select(l => view.AtUp(l.Z))];
        double[] put = Spread(at, Pitch, area.Y + 22, area.Bottom - 6);
        double room = area.Right - x - 22;
        for (int i = 0; i < sorted.Count; i++)
        {
            var (z, name, from) = sorted[i];
            double y = at[i], yl = put[i];
            sheet.Polyline([(from, y), (x - 8, y), (x, yl), (area.Right - 8, yl)], "d");
            sheet.Polygon([(x + 8, yl), (x + 4, yl - 7), (x + 12, yl - 7)], "p");
            sheet.Text(x + 16, yl - 3, text(z), Size, "k");
            double number = TextMetrics.Width(text(z), Size) + 5;
            // The name stands behind the number where there is room, else under the line.
            if (number + TextMetrics.Width(name, Small) <= room) sheet.Text(x + 16 + number, yl - 3, name, Small, "s");
            else sheet.Text(x + 4, yl + 10, TextMetrics.Cut(name, Small, area.Right - x - 10), Small, "s");
        }
    }

    /// <summary>Moves positions apart to a pitch, as little as the neighbours force, within bounds. Positions rise.</summary>
    internal static double[] Spread(double[] at, double pitch, double low, double high)
    {
        double[] put = [.. at];
        for (int pass = 0; pass < 60; pass++)
        {
            for (int i = 1; i < put.Length; i++)
            {
                double lack = pitch - (put[i] - put[i - 1]);
                if (lack <= 0) continue;
                put[i - 1] -= lack / 2;
                put[i] += lack / 2;
            }

            if (put.Length > 0)
            {
                put[0] = Math.Max(put[0], low);
                put[^1] = Math.Min(put[^1], high);
            }
        }

        // Whatever the passes left, the last word has the pitch.
        for (int i = put.Length - 2; i >= 0; i--) put[i] = Math.Min(put[i], put[i + 1] - pitch);
        return put;
    }
}

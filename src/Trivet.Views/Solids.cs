using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Frames;
using Trivet.Numerics;

namespace Trivet.Views;

/// <summary>A straight bar of rectangular section, cell frame, metres: half sizes along three unit axes.</summary>
/// <param name="Name">Id of a frame's member.</param>
internal sealed record Bar(string Pointer, string Name, Vec3 Centre, Vec3 Along, Vec3 Across, Vec3 Up, double HalfLength, double HalfWidth, double HalfHeight)
{
    public IEnumerable<Vec3> Corners()
    {
        for (int i = 0; i < 8; i++)
            yield return Centre + ((i & 1) == 0 ? -HalfLength : HalfLength) * Along + ((i & 2) == 0 ? -HalfWidth : HalfWidth) * Across
                + ((i & 4) == 0 ? -HalfHeight : HalfHeight) * Up;
    }

    /// <summary>Members of the frame whose ends and section are stated; the others cannot be drawn.</summary>
    public static ImmutableArray<Bar> Members(Cell cell) =>
    [
        .. FrameMembers.Of(cell.Frame, new()).Where(b => b.IsPlaced && b.Length > 0 && double.IsFinite(b.Width + b.Height))
            .Select(b => Between(b.Pointer, b.From, b.To, b.Width, b.Height) with { Name = b.Id }),
    ];

    /// <summary>The width of a level bar lies level; that of an upright one lies along the cell's x.</summary>
    public static Bar Between(string pointer, Vec3 from, Vec3 to, double width, double height)
    {
        var along = (to - from).Unit();
        var across = Math.Abs(along.Z) > 0.9 ? (Vec3.UnitX - along.X * along).Unit() : Vec3.UnitZ.Cross(along).Unit();
        return new(pointer, "", 0.5 * (from + to), along, across, along.Cross(across), (to - from).Norm / 2, width / 2, height / 2);
    }
}

/// <summary>Plane geometry of pictures.</summary>
internal static class Hull
{
    /// <summary>Convex hull of points of the sheet (monotone chain, Andrew 1979).</summary>
    public static ImmutableArray<(double X, double Y)> Of(IEnumerable<(double X, double Y)> points)
    {
        var p = points.Distinct().OrderBy(q => q.X).ThenBy(q => q.Y).ToList();
        if (p.Count < 3) return [.. p];
        var hull = new List<(double X, double Y)>();
        foreach (var pass in (IEnumerable<(double X, double Y)>[])[p, Enumerable.Reverse(p)])
        {
            int start = hull.Count;
            foreach (var q in pass)
            {
                while (hull.Count >= start + 2 && Turn(hull[^2], hull[^1], q) <= 0) hull.RemoveAt(hull.Count - 1);
                hull.Add(q);
            }

            hull.RemoveAt(hull.Count - 1);
        }

        return [.. hull];
    }

    private static double Turn((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) =>
        (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
}

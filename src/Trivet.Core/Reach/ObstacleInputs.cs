using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Frames;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// Reads what rods, platform and tool must stay clear of: frame members and the walls of stations.
/// <para>
/// A member is the capsule around its centre line with half the diagonal of its section as radius: the description does not say
/// how a section is turned about its line, and this radius covers every turn (and rounds the ends outward). A wall is an upright
/// plate without thickness from the working height up to the wall's height; a real wall's thickness lies on its far side. A tray
/// or nest has four (its rim), a belt has two (its guides).
/// </para>
/// </summary>
public static class ObstacleInputs
{
    /// <summary>Members whose fields are complete. What an incomplete one lacks is listed as missing by the reading.</summary>
    public static ImmutableArray<Obstacle> Frame(Cell cell, Reading reading)
    {
        return [.. FrameMembers.Of(cell.Frame, reading)
            .Select(b => new Obstacle(b.Pointer, b.From, b.To, Math.Sqrt(b.Width * b.Width + b.Height * b.Height) / 2)).Where(IsComplete)];
    }

    /// <summary>Walls of all stations whose fields are complete: while the tool works in one station it may reach the rim of the next.</summary>
    public static ImmutableArray<Obstacle> Walls(Cell cell, Reading reading)
    {
        reading.Used("/stations", string.Join('\n', cell.Stations.Keys));
        return [.. cell.Stations.InOrder().SelectMany(s => Walls(cell, s.Key, s.Value, reading)).Where(IsComplete)];
    }

    private static bool IsComplete(Obstacle o) => o.From_C.IsFinite && o.To_C.IsFinite && double.IsFinite(o.Radius);

    private static IEnumerable<Obstacle> Walls(Cell cell, string id, Station station, Reading reading)
    {
        string at = StationInputs.Pointer(id);
        double height = reading.Or(station.WallHeight, at + "/wallHeight", 0);
        if (!(height > 0)) yield break;

        double gap = reading.Need(station.WallGap, at + "/wallGap");
        var box = StationInputs.Read(cell, id, reading).Box;
        if (box is null)
        {
            // Walls that nobody can place may stand anywhere.
            reading.Missing(at);
            yield break;
        }

        double left = box.Low.X - gap, right = box.High.X + gap, near = box.Low.Y - gap, far = box.High.Y + gap;
        var rise = new Vec3(0, 0, height);
        bool belt = station.Kind == StationKind.Belt;
        if (belt) (left, right) = (box.Low.X, box.High.X);
        yield return Wall(new(left, near, 0), new(right, near, 0));
        yield return Wall(new(left, far, 0), new(right, far, 0));
        if (belt) yield break;
        yield return Wall(new(left, near, 0), new(left, far, 0));
        yield return Wall(new(right, near, 0), new(right, far, 0));

        Obstacle Wall(Vec3 from, Vec3 to) => new(at, box.X_CS * from, box.X_CS * to, 0) { Rise_C = rise };
    }
}

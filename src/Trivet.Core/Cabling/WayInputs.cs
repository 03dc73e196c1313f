using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Frames;
using Trivet.Numerics;

namespace Trivet.Cabling;

/// <summary>A way with its line. A loop has one point, from which it hangs.</summary>
/// <param name="InChain">Energy chain: length of cable within it; not a number for other ways.</param>
/// <param name="Hanging">Loop: length that hangs free; not a number for other ways and while not stated.</param>
public sealed record Way(string Id, CableWayKind Kind, Line Line, double InChain, double Hanging, Reading Used)
{
    public string At => $"/cabling/ways/{Id}";
}

/// <summary>Reads ways and places.</summary>
public static class WayInputs
{
    /// <summary>Null while something is missing or the member is not there, which the reading lists.</summary>
    public static Way? Read(Cell cell, string id, Reading reading)
    {
        var way = cell.Cabling.Ways[id];
        string at = $"/cabling/ways/{id}";
        var own = new Reading();
        var kind = own.Or(way.Kind, at + "/kind", CableWayKind.Duct);
        var points = Points(cell, way, at, own);
        if (points.Length < (kind == CableWayKind.Loop ? 1 : 2)) own.Missing(at + "/points");
        double inChain = double.NaN, hanging = double.NaN;
        if (kind == CableWayKind.EnergyChain)
        {
            // Half of the travel, half a turn, and as far as the fixed end stands off the middle of the travel (common practice).
            inChain = own.Need(way.Travel, at + "/travel") / 2 + Math.Abs(own.Or(way.FixedOffset, at + "/fixedOffset", 0)) + Math.PI * own.Need(way.BendRadius, at + "/bendRadius");
        }
        if (kind == CableWayKind.Loop) hanging = own.Need(way.Length, at + "/length");
        reading.Used(own);
        foreach (string missing in own.MissingFields) reading.Missing(missing);
        return own.Complete ? new(id, kind, new(points), inChain, hanging, own) : null;
    }

    private static ImmutableArray<Vec3> Points(Cell cell, CableWay way, string at, Reading reading)
    {
        reading.Used(at + "/along", way.Along);
        reading.Used(at + "/points", string.Join('\n', way.Points.Keys));
        if (way.Along is { } member && way.Points.IsEmpty)
        {
            if (cell.Frame.Members.TryGetValue(member, out var m))
            {
                string on = $"/frame/members/{member}";
                return
                [
                    new(reading.Need(m.FromX, on + "/fromX"), reading.Need(m.FromY, on + "/fromY"), reading.Need(m.FromZ, on + "/fromZ")),
                    new(reading.Need(m.ToX, on + "/toX"), reading.Need(m.ToY, on + "/toY"), reading.Need(m.ToZ, on + "/toZ")),
                ];
            }
            var bars = new Reading();
            var bar = FrameMembers.Of(cell.Frame, bars).FirstOrDefault(b => b.Id == member);
            reading.Used(bars);
            if (bar is { IsPlaced: true }) return [bar.From, bar.To];
            reading.Missing(at + "/along");
            return [];
        }
        return
        [
            .. way.Points.InOrder().Select(p =>
            {
                string on = $"{at}/points/{p.Key}";
                reading.Used(on + "/order", p.Value.Order);
                return new Vec3(reading.Need(p.Value.X, on + "/x"), reading.Need(p.Value.Y, on + "/y"), reading.Need(p.Value.Z, on + "/z"));
            }),
        ];
    }

    /// <summary>The ids of a route's ways, in their order.</summary>
    public static ImmutableArray<string> Ids(string? route) =>
        route is null ? [] : [.. route.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
}

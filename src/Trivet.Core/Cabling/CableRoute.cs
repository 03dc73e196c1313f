using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Cabling;

/// <summary>Why a cable's length does not follow from its route.</summary>
public enum NoRoute
{
    None,
    /// <summary>An end is told in words.</summary>
    InWords,
    /// <summary>No way is stated.</summary>
    NotRouted,
    /// <summary>Both ends are modules of the cabinet.</summary>
    WithinCabinet,
}

/// <summary>
/// The length a cable needs. It goes from its one end to the nearest point of its first way, along it to where that comes nearest to the next, across to that, and so
/// on to its other end; what lies within the cabinet, an energy chain, a loop and the slack are added.
/// </summary>
/// <param name="InWays">Along the ways, metres.</param>
/// <param name="Between">Straight from way to way and to the ends.</param>
/// <param name="Hanging">In energy chains and loops.</param>
/// <param name="Inside">Within the cabinet.</param>
public sealed record CableRoute(double InWays, double Between, double Hanging, double Inside, double Slack)
{
    public double Needed => InWays + Between + Hanging + Inside + Slack;

    /// <summary>Common practice, no source.</summary>
    public const double UsualSlack = 0.3, UsualInside = 1.0;

    /// <summary>Null where the length does not follow, or while something is missing, which the reading lists.</summary>
    public static (CableRoute? Route, NoRoute Why) Of(Cell cell, string id, Func<string, Way?> ways, Reading reading)
    {
        var cable = cell.Cables[id];
        string at = $"/cables/{id}";
        reading.Used(at + "/from", cable.From);
        reading.Used(at + "/to", cable.To);
        reading.Used(at + "/route", cable.Route);
        var (from, to) = (Place.Of(cell, cable.From, reading), Place.Of(cell, cable.To, reading));
        if (from is null || to is null) return (null, NoRoute.InWords);
        if (from.Inside && to.Inside) return (null, NoRoute.WithinCabinet);
        var ids = WayInputs.Ids(cable.Route);
        if (ids.IsEmpty) return (null, NoRoute.NotRouted);
        double slack = cable.Slack is { } own ? reading.Or<double>(own, at + "/slack", own) : reading.Or(cell.Cabling.Slack, "/cabling/slack", UsualSlack);
        reading.Used(at + "/slack", cable.Slack);
        double inside = (from.Inside ? 1 : 0) + (to.Inside ? 1 : 0);
        if (inside > 0) inside *= reading.Or(cell.Cabling.InsideCabinet, "/cabling/insideCabinet", UsualInside);
        var line = ids.Select(ways).ToArray();
        foreach (var way in line) if (way is not null) reading.Used(way.Used);
        foreach (string unknown in ids.Where(w => !cell.Cabling.Ways.ContainsKey(w))) reading.Missing($"/cabling/ways/{unknown}");
        if (!reading.Complete || Array.Exists(line, w => w is null)) return (null, NoRoute.None);
        return (Along(from.P, line!, to.P, slack, inside), NoRoute.None);
    }

    private static CableRoute Along(Vec3? from, Way[] ways, Vec3? to, double slack, double inside)
    {
        double along = 0, between = 0, hanging = 0;
        double? entered = null;
        for (int i = 0; i < ways.Length; i++)
        {
            var way = ways[i];
            double enter = entered ?? 0, leave = way.Line.Length;
            if (i == 0 && from is { } start)
            {
                (enter, double gap) = way.Line.Nearest(start);
                between += gap;
            }
            entered = null;
            if (i + 1 < ways.Length)
            {
                (leave, double next, double gap) = way.Line.Nearest(ways[i + 1].Line);
                entered = next;
                between += gap;
            }
            else if (to is { } end && way.Kind != CableWayKind.Loop)
            {
                (leave, double gap) = way.Line.Nearest(end);
                between += gap;
            }
            if (way.Kind == CableWayKind.Duct) along += Math.Abs(leave - enter);
            else hanging += double.IsNaN(way.InChain) ? way.Hanging : way.InChain;
        }
        return new(along, between, hanging, inside, slack);
    }

    /// <summary>Where an end is; no point for what moves with the platform, to which a loop leads.</summary>
    private sealed record Place(Vec3? P, bool Inside)
    {
        public static Place? Of(Cell cell, string? id, Reading reading)
        {
            if (id is null) return null;
            if (cell.Cabinet.Modules.ContainsKey(id))
            {
                const string at = "/cabling/cabinet";
                return new(new Vec3(reading.Need(cell.Cabling.CabinetX, at + "X"), reading.Need(cell.Cabling.CabinetY, at + "Y"), reading.Need(cell.Cabling.CabinetZ, at + "Z")), true);
            }
            if (!cell.Cabling.Devices.TryGetValue(id, out var device)) return null;
            string on = $"/cabling/devices/{id}";
            bool moves = reading.Or(device.MovesWith, on + "/movesWith", Carrier.Nothing) == Carrier.Platform;
            var p = new Vec3(reading.Need(device.X, on + "/x"), reading.Need(device.Y, on + "/y"), reading.Need(device.Z, on + "/z"));
            return new(moves ? null : p, false);
        }
    }
}

using Trivet.Cells;

namespace Trivet.Reach;

/// <summary>A stated number of the description that an engineer can change to gain reach.</summary>
/// <param name="Pointer">JSON pointer of the field.</param>
/// <param name="From">Its present value, metres or radians.</param>
/// <param name="Grain">Values are whole multiples of it: 1 mm or half a degree. Nobody builds to less.</param>
/// <param name="Farthest">Largest change tried, each way.</param>
/// <param name="Ways">Both ways, or only up or down where the other could never help.</param>
/// <param name="With">The cell with another value there.</param>
internal sealed record Lever(string Pointer, double From, double Grain, double Farthest, LeverWays Ways, Func<Cell, double, Cell> With)
{
    private const double Millimetre = 0.001;
    private const double HalfDegree = Math.PI / 360;

    /// <summary>Changes that concern the whole cell, then those of one station.</summary>
    /// <param name="stationId">The station in question, or null.</param>
    public static IEnumerable<Lever> Of(Cell cell, string? stationId)
    {
        var mount = cell.Mount;
        IEnumerable<Lever?> all =
        [
            Length("/mount/z", mount.Z, 0.4, (c, v) => c with { Mount = c.Mount with { Z = v } }),
            Length("/mount/x", mount.X, 0.4, (c, v) => c with { Mount = c.Mount with { X = v } }),
            Length("/mount/y", mount.Y, 0.4, (c, v) => c with { Mount = c.Mount with { Y = v } }),
            Angle("/mount/yaw", mount.Yaw, Math.PI / 3, (c, v) => c with { Mount = c.Mount with { Yaw = v } }),
            Length("/tool/tcpZ", cell.Tool.TcpZ, 0.2, (c, v) => c with { Tool = c.Tool with { TcpZ = v } }),
            .. OfRobot(cell),
            .. stationId is not null && cell.Stations.TryGetValue(stationId, out var station) ? OfStation(stationId, station) : [],
        ];
        return all.OfType<Lever>();
    }

    private static IEnumerable<Lever?> OfRobot(Cell cell)
    {
        var robot = cell.Robot;
        bool turns = robot.Family == RobotFamily.CrankDelta;
        foreach (var lever in OfChain("/robot/common", robot.Common, turns, (c, change) => c with { Robot = c.Robot with { Common = change(c.Robot.Common) } }))
            yield return lever;
        foreach (var (id, chain) in robot.Chains.InOrder())
        {
            Cell Change(Cell c, Func<ChainDescription, ChainDescription> change) =>
                c with { Robot = c.Robot with { Chains = c.Robot.Chains.SetItem(id, change(c.Robot.Chains[id])) } };
            foreach (var lever in OfChain($"/robot/chains/{Escaped(id)}", chain, turns, Change)) yield return lever;
        }
    }

    private static IEnumerable<Lever?> OfChain(
        string at, ChainDescription chain, bool turns, Func<Cell, Func<ChainDescription, ChainDescription>, Cell> change)
    {
        yield return Length(at + "/rod", chain.Rod, 0.3, (c, v) => change(c, d => d with { Rod = v }));
        yield return Length(at + "/baseRadius", chain.BaseRadius, 0.2, (c, v) => change(c, d => d with { BaseRadius = v }));
        yield return Length(at + "/platformRadius", chain.PlatformRadius, 0.05, (c, v) => change(c, d => d with { PlatformRadius = v }));
        if (turns) yield return Length(at + "/upperArm", chain.UpperArm, 0.2, (c, v) => change(c, d => d with { UpperArm = v }));
        yield return Travel(at + "/travelFrom", chain.TravelFrom, LeverWays.Down, (c, v) => change(c, d => d with { TravelFrom = v }));
        yield return Travel(at + "/travelTo", chain.TravelTo, LeverWays.Up, (c, v) => change(c, d => d with { TravelTo = v }));
        yield return Angle(at + "/swingLimit", chain.SwingLimit, Math.PI / 6, (c, v) => change(c, d => d with { SwingLimit = v }), LeverWays.Up);

        Lever? Travel(string pointer, double? from, LeverWays ways, Func<Cell, double, Cell> with) =>
            turns ? Angle(pointer, from, Math.PI / 4, with, ways) : Length(pointer, from, 0.4, with, ways);
    }

    private static IEnumerable<Lever?> OfStation(string id, Station station)
    {
        string at = $"/stations/{Escaped(id)}";
        yield return Length(at + "/x", station.X, 0.4, (c, v) => Change(c, s => s with { X = v }));
        yield return Length(at + "/y", station.Y, 0.4, (c, v) => Change(c, s => s with { Y = v }));
        yield return Length(at + "/z", station.Z, 0.3, (c, v) => Change(c, s => s with { Z = v }));
        yield return Length(at + "/approach", station.Approach, station.Approach ?? 0, (c, v) => Change(c, s => s with { Approach = v }), LeverWays.Down);
        yield return Angle(at + "/rotaryFrom", station.RotaryFrom, Math.PI / 2, (c, v) => Change(c, s => s with { RotaryFrom = v }), LeverWays.Up);
        yield return Angle(at + "/rotaryTo", station.RotaryTo, Math.PI / 2, (c, v) => Change(c, s => s with { RotaryTo = v }), LeverWays.Down);

        Cell Change(Cell c, Func<Station, Station> change) => c with { Stations = c.Stations.SetItem(id, change(c.Stations[id])) };
    }

    private static Lever? Length(string pointer, double? from, double farthest, Func<Cell, double, Cell> with, LeverWays ways = LeverWays.Both) =>
        from is { } v ? new(pointer, v, Millimetre, farthest, ways, with) : null;

    private static Lever? Angle(string pointer, double? from, double farthest, Func<Cell, double, Cell> with, LeverWays ways = LeverWays.Both) =>
        from is { } v ? new(pointer, v, HalfDegree, farthest, ways, with) : null;

    /// <summary>A part of a JSON pointer (RFC 6901, 3).</summary>
    private static string Escaped(string id) => id.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);
}

[Flags]
internal enum LeverWays
{
    Up = 1,
    Down = 2,
    Both = Up | Down,
}

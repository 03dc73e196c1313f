using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Cabling;

/// <summary>What is judged of the ways that cables are laid in.</summary>
internal static class WayChecks
{
    /// <summary>Common practice, no source: power and signals 100 to 200 mm apart; a short stretch at terminals and devices does no harm.</summary>
    private const double UsualParting = 0.1, ShortStretch = 0.3;
    private const double UsualFill = 0.6, SteepCrossing = 70 * Math.PI / 180;

    /// <summary>Smallest bend radius over the diameter (common practice, no source).</summary>
    public const double StaticBend = 5, MovingBend = 10;

    public static bool IsPower(CableKind? kind) => kind is CableKind.Motor or CableKind.Brake or CableKind.Supply;

    public static bool IsSignal(CableKind? kind) => kind is CableKind.Feedback or CableKind.LimitSwitch or CableKind.InputOutput or CableKind.Network;

    /// <summary>The cables laid in each way; the reading knows every route and kind.</summary>
    public static ILookup<string, string> In(Cell cell, Reading reading)
    {
        reading.Used("/cables", string.Join('\n', cell.Cables.Keys));
        foreach (var (id, cable) in cell.Cables) reading.Used($"/cables/{id}/route", cable.Route);
        return cell.Cables.InOrder().SelectMany(c => WayInputs.Ids(c.Value.Route).Distinct().Select(way => (Way: way, Cable: c.Key))).ToLookup(p => p.Way, p => p.Cable);
    }

    public static IEnumerable<Finding> Parting(Cell cell, ImmutableArray<Way> ways, Reading routes, ILookup<string, string> laid)
    {
        var shared = new Reading(routes);
        foreach (var (id, cable) in cell.Cables) shared.Used($"/cables/{id}/kind", cable.Kind);
        double parting = shared.Or(cell.Cabling.LeastParting, "/cabling/leastParting", UsualParting);
        foreach (var power in ways.Where(w => Has(w, IsPower))) shared.Used(power.Used);
        foreach (var signals in ways.Where(w => Has(w, IsSignal)))
        {
            var reading = new Reading(shared);
            double beside = 0, angle = Math.PI / 2;
            reading.Used(signals.Used);
            reading.Used(signals.At + "/divider", cell.Cabling.Ways[signals.Id].Divider);
            // Nothing parts what hangs together or moves in one chain; there a screen bonded at both ends does (common practice, no source).
            bool moves = signals.Kind != CableWayKind.Duct;
            bool together = laid[signals.Id].Any(c => IsPower(cell.Cables[c].Kind) && !(moves && Screened(c, reading))) && (signals.Kind == CableWayKind.Loop || cell.Cabling.Ways[signals.Id].Divider != true);
            foreach (var power in ways.Where(w => w.Id != signals.Id && Has(w, IsPower)))
            {
                if (signals.Kind == CableWayKind.Loop || power.Kind == CableWayKind.Loop)
                {
                    // Two loops that hang from one place lead to the platform side by side.
                    if (signals.Kind == power.Kind && (signals.Line.Points[0] - power.Line.Points[0]).Norm < parting && laid[power.Id].Any(c => IsPower(cell.Cables[c].Kind) && !Screened(c, reading)))
                        beside = Math.Max(beside, Math.Min(signals.Hanging, power.Hanging));
                    continue;
                }
                var lie = SideBySide.Of(signals.Line, power.Line, parting);
                beside = Math.Max(beside, lie.Beside);
                angle = Math.Min(angle, lie.Angle);
            }
            if (together) beside = signals.Kind switch { CableWayKind.Duct => signals.Line.Length, CableWayKind.EnergyChain => signals.InChain, _ => signals.Hanging };
            var practice = new Source(SourceKind.CommonPractice, "");
            yield return new Judged(CablingRules.SideBySide, new(signals.At), reading.Inputs, beside, Limit.AtMost(ShortStretch, practice), Assurance.Exact);
            if (signals.Kind != CableWayKind.Loop) yield return new Judged(CablingRules.Crossing, new(signals.At), reading.Inputs, angle, Limit.AtLeast(SteepCrossing, practice), Assurance.Exact);
        }

        bool Has(Way way, Func<CableKind?, bool> kind) => laid[way.Id].Any(c => kind(cell.Cables[c].Kind));

        bool Screened(string id, Reading reading)
        {
            var c = cell.Cables[id];
            reading.Used($"/cables/{id}/shielded", c.Shielded);
            reading.Used($"/cables/{id}/fromEnd/bonded", c.FromEnd.Bonded);
            reading.Used($"/cables/{id}/toEnd/bonded", c.ToEnd.Bonded);
            return c is { Shielded: true, FromEnd.Bonded: true, ToEnd.Bonded: true };
        }
    }

    /// <summary>Fill and bends of one way, with all that lies in it.</summary>
    public static IEnumerable<Finding> Filled(Cell cell, string id, Reading routes, ILookup<string, string> laid, ImmutableArray<NotApplicable>.Builder coverage, bool asked)
    {
        var way = cell.Cabling.Ways[id];
        string at = $"/cabling/ways/{id}";
        if (!laid[id].Any()) yield break;
        var (fill, bend) = (new Reading(routes), new Reading(routes));
        var kind = fill.Or(way.Kind, at + "/kind", CableWayKind.Duct);
        bend.Used(at + "/kind", way.Kind);
        double area = 0, needed = 0;
        Source limit = new(SourceKind.CommonPractice, "");
        foreach (string cable in laid[id])
        {
            var c = cell.Cables[cable];
            string on = $"/cables/{cable}";
            double d = fill.Need(c.Diameter, on + "/diameter");
            area += Math.PI / 4 * d * d;
            bool moves = kind != CableWayKind.Duct;
            double factor = moves ? bend.Or(c.MovingBend, on + "/movingBend", MovingBend) : bend.Or(c.StaticBend, on + "/staticBend", StaticBend);
            double radius = factor * bend.Need(c.Diameter, on + "/diameter");
            if (!(radius <= needed))
            {
                needed = radius;
                limit = (moves ? c.MovingBend : c.StaticBend) is null ? new(SourceKind.CommonPractice, "") : new(SourceKind.Cell, on + (moves ? "/movingBend" : "/staticBend"));
            }
        }
        if (kind == CableWayKind.Loop) yield break;
        double inside = fill.Need(way.Width, at + "/width") * fill.Need(way.Height, at + "/height"), most = fill.Or(way.LargestFill, at + "/largestFill", UsualFill);
        var fillLimit = way.LargestFill is null ? new Source(SourceKind.CommonPractice, "") : new(SourceKind.Cell, at + "/largestFill");
        if ((fill.Complete ? new Judged(CablingRules.Fill, new(at), fill.Inputs, area / inside, Limit.AtMost(most, fillLimit), Assurance.Exact)
            : CableChecks.Open(CablingRules.Fill, at, fill, asked, coverage)) is { } filled) yield return filled;
        double bends = bend.Need(way.BendRadius, at + "/bendRadius");
        if ((bend.Complete ? new Judged(CablingRules.Bend, new(at), bend.Inputs, bends, Limit.AtLeast(needed, limit), Assurance.Exact)
            : CableChecks.Open(CablingRules.Bend, at, bend, asked, coverage)) is { } bent) yield return bent;
    }

    /// <summary>A loop at the platform: long enough over the stations and wherever the drives lead, and not bent too sharply.</summary>
    public static IEnumerable<Finding> Loop(Cell cell, Way way, Reading routes, ILookup<string, string> laid, ImmutableArray<NotApplicable>.Builder coverage, bool asked)
    {
        var reading = new Reading(routes);
        reading.Used(way.Used);
        double needed = 0;
        Vec3? to = null;
        foreach (string cable in laid[way.Id])
        {
            var c = cell.Cables[cable];
            string on = $"/cables/{cable}";
            needed = Math.Max(needed, reading.Or(c.MovingBend, on + "/movingBend", MovingBend) * reading.Need(c.Diameter, on + "/diameter"));
            reading.Used(on + "/to", c.To);
            reading.Used(on + "/from", c.From);
            foreach (string end in new[] { c.From, c.To }.OfType<string>())
                if (cell.Cabling.Devices.TryGetValue(end, out var device) && device.MovesWith == Carrier.Platform)
                {
                    string p = $"/cabling/devices/{end}";
                    reading.Used(p + "/movesWith", device.MovesWith);
                    to = new(reading.Need(device.X, p + "/x"), reading.Need(device.Y, p + "/y"), reading.Need(device.Z, p + "/z"));
                }
        }
        if (to is not { } point)
        {
            yield return new Unjudged(CablingRules.LoopLength, new(way.At), reading.Inputs, OpenReason.Failed, [], CablingReasons.LoopToNowhere);
            yield break;
        }
        if (PlatformLoop.Of(cell, way.Line.Points[0], point, reading) is not { } loop)
        {
            if (CableChecks.Open(CablingRules.LoopLength, way.At, reading, asked, coverage) is { } open) yield return open;
            yield break;
        }
        var source = new Source(SourceKind.CommonPractice, "");
        if (double.IsFinite(loop.Farthest))
            yield return new Judged(CablingRules.LoopLength, new(way.At, "stations"), reading.Inputs, way.Hanging, Limit.AtLeast((1 + PlatformLoop.Reserve) * loop.Farthest, source), Assurance.Exact);
        if (double.IsFinite(loop.FarthestEver))
            yield return new Judged(CablingRules.LoopLength, new(way.At, "everywhere"), reading.Inputs, way.Hanging, Limit.AtLeast(loop.FarthestEver, source), Assurance.Sampled);
        double chord = Math.Min(loop.Nearest, way.Hanging);
        if (double.IsFinite(chord) && needed > 0)
            yield return new Judged(CablingRules.LoopBend, new(way.At), reading.Inputs, PlatformLoop.ArcRadius(way.Hanging, chord) is var r && double.IsInfinity(r) ? 1e3 : r,
                Limit.AtLeast(needed, source), Assurance.Estimated);
    }
}

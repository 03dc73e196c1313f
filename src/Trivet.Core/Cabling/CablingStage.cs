using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Cabling;

/// <summary>What the cables and their ways have to say of a cell. Closed forms, so nothing is left to a task.</summary>
public static class CablingStage
{
    public static StagePlan Of(Cell cell) => Laid(cell) + Loops(cell);

    /// <summary>All but the loops at the platform: rests on cables, ways, cabinet, frame and depth alone.</summary>
    public static StagePlan Laid(Cell cell)
    {
        if (cell.Cables.IsEmpty) return new([], [new(CablingRules.Described, new("/cables"), CablingReasons.NoCables)], []);
        // Until a cable says what it is for, or in what it is laid, there is a list and no plan.
        if (cell.Cables.Values.All(c => c.Kind is null && c.Route is null)) return new([], [new(CablingRules.Described, new("/cables"), CablingReasons.NotTyped)], []);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        bool asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;

        findings.AddRange(Impossible(cell));
        var missing = new Reading();
        var ways = cell.Cabling.Ways.InOrder().Select(w => WayInputs.Read(cell, w.Key, missing)).OfType<Way>().ToDictionary(w => w.Id);
        var rail = new Lazy<RailPlaces>(() => RailPlaces.Read(cell));
        foreach (var (id, _) in cell.Cables.InOrder())
        {
            Add(CableChecks.Length(cell, id, w => ways.GetValueOrDefault(w), () => rail.Value, coverage, asked));
            foreach (var fits in SocketChecks.Of(cell, id, coverage, asked)) Add(fits);
            Add(CableChecks.Drop(cell, id, coverage, asked));
            Add(CableChecks.Bonding(cell, id, coverage, asked));
            Add(CableChecks.Pinning(cell, id));
        }
        if (!missing.Complete) Add(CableChecks.Open(CablingRules.Described, "/cabling/ways", missing, asked, coverage));
        var routes = new Reading();
        var laid = WayChecks.In(cell, routes);
        ImmutableArray<Way> inOrder = [.. cell.Cabling.Ways.InOrder().Where(w => ways.ContainsKey(w.Key)).Select(w => ways[w.Key])];
        findings.AddRange(WayChecks.Parting(cell, inOrder, routes, laid));
        foreach (var (id, _) in cell.Cabling.Ways.InOrder()) findings.AddRange(WayChecks.Filled(cell, id, routes, laid, coverage, asked));
        findings.AddRange(SocketChecks.Shared(cell));
        findings.AddRange(Swaps(cell));
        findings.Add(Labels(cell));
        return new(findings.ToImmutable(), coverage.ToImmutable(), []);

        void Add(Finding? finding)
        {
            if (finding is not null) findings.Add(finding);
        }
    }

    /// <summary>The loops at the platform, which also rest on where the robot goes.</summary>
    public static StagePlan Loops(Cell cell)
    {
        var loops = cell.Cabling.Ways.InOrder().Where(w => w.Value.Kind == CableWayKind.Loop).Select(w => WayInputs.Read(cell, w.Key, new())).OfType<Way>().ToArray();
        if (loops.Length == 0 || cell.Cables.Values.All(c => c.Kind is null && c.Route is null)) return new([], [], []);
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        var routes = new Reading();
        var laid = WayChecks.In(cell, routes);
        bool asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;
        ImmutableArray<Finding> findings = [.. loops.Where(w => laid[w.Id].Any()).SelectMany(w => WayChecks.Loop(cell, w, routes, laid, coverage, asked))];
        return new(findings, coverage.ToImmutable(), []);
    }

    private static IEnumerable<Finding> Impossible(Cell cell)
    {
        ImmutableArray<string> known = [.. cell.Cabling.Ways.Keys.Select(w => $"/cabling/ways/{w}")];
        foreach (var (id, cable) in cell.Cables)
        {
            string at = $"/cables/{id}";
            if (WayInputs.Ids(cable.Route).Any(w => !cell.Cabling.Ways.ContainsKey(w))) yield return Wrong(at + "/route", CablingReasons.NoSuchWay.Naming(known));
            foreach (var (value, name) in new[] { (cable.Length, "length"), (cable.CoreArea, "coreArea"), (cable.Diameter, "diameter"), (cable.Voltage, "voltage"), (cable.LargestDrop, "largestDrop") })
                if (value <= 0) yield return Wrong($"{at}/{name}", CablingReasons.NotPositive);
        }
        foreach (var (id, way) in cell.Cabling.Ways)
            foreach (var (value, name) in new[] { (way.Width, "width"), (way.Height, "height"), (way.BendRadius, "bendRadius"), (way.Length, "length"), (way.Travel, "travel"), (way.LargestFill, "largestFill") })
                if (value <= 0) yield return Wrong($"/cabling/ways/{id}/{name}", CablingReasons.NotPositive);
    }

    private static Unjudged Wrong(string pointer, Reason reason) => new(CablingRules.Described, new(pointer), [pointer], OpenReason.Failed, [], reason);

    /// <summary>One finding for each group of plugs that fit each other: whether every cable of it has a mark of its own.</summary>
    private static IEnumerable<Finding> Swaps(Cell cell)
    {
        var reading = new Reading();
        var groups = SwapGroups.Of(cell, reading);
        foreach (string id in groups.SelectMany(g => g.Ends).Select(e => e.Cable).Distinct()) reading.Used($"/cables/{id}/mark", cell.Cables[id].Mark);
        var inputs = reading.Inputs;
        foreach (var group in groups)
        {
            string[] cables = [.. group.Ends.Select(e => e.Cable).Distinct()];
            var marks = cables.ToLookup(id => cell.Cables[id].Mark?.Trim() ?? "", id => $"/cables/{id}/mark");
            ImmutableArray<string> alike = [.. marks.Where(m => m.Key.Length == 0 || m.Count() > 1).SelectMany(m => m)];
            yield return new YesNo(
                CablingRules.Swap, new("/cables", group.Face.Length == 0 ? group.Form : $"{group.Face}: {group.Form}"), inputs, alike.IsEmpty, alike.IsEmpty ? [.. cables.Select(c => $"/cables/{c}/mark")] : alike);
        }
    }

    private static YesNo Labels(Cell cell)
    {
        var reading = new Reading();
        reading.Used("/cables", string.Join('\n', cell.Cables.Keys));
        foreach (var (id, cable) in cell.Cables) reading.Used($"/cables/{id}/label", cable.Label);
        ImmutableArray<string> twice = [.. cell.Cables.ToLookup(c => (c.Value.Label ?? c.Key).Trim(), c => $"/cables/{c.Key}/label").Where(l => l.Count() > 1).SelectMany(l => l)];
        return new(CablingRules.Label, new("/cables"), reading.Inputs, twice.IsEmpty, twice.IsEmpty ? ["/cables"] : twice);
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Conductors;
using Trivet.Findings;

namespace Trivet.Cabling;

/// <summary>What is judged of a single cable.</summary>
internal static class CableChecks
{
    /// <summary>IEC 60204-1, 12.5, from memory: 5 % from the supply to the load.</summary>
    private const double LargestDrop = 0.05;

    /// <summary>Length held against the route.</summary>
    public static Finding? Length(Cell cell, string id, Func<string, Way?> ways, Func<RailPlaces> rail, ImmutableArray<NotApplicable>.Builder coverage, bool asked)
    {
        var reading = new Reading();
        var (route, why) = CableRoute.Of(cell, id, ways, reading);
        string at = $"/cables/{id}";
        if (why == NoRoute.WithinCabinet && rail().Between(cell, id, reading) is { } inside) (route, why) = (inside, NoRoute.None);
        if (why != NoRoute.None)
        {
            coverage.Add(new(CablingRules.Length, new(at), why switch
            {
                NoRoute.InWords => CablingReasons.InWords,
                NoRoute.NotRouted => CablingReasons.NotRouted,
                _ => CablingReasons.WithinCabinet,
            }));
            return null;
        }
        double stated = reading.Need(cell.Cables[id].Length, at + "/length");
        if (route is null || !reading.Complete) return Open(CablingRules.Length, at, reading, asked, coverage);
        var advice = stated < route.Needed ? ImmutableArray.Create(new Advice(at + "/length", stated, Math.Ceiling(route.Needed * 10) / 10, double.NaN)) : [];
        return new Judged(CablingRules.Length, new(at), reading.Inputs, stated, Limit.AtLeast(route.Needed, CablingRules.Length.Method), Assurance.Exact) { Advice = advice };
    }

    /// <summary>Null for a cable that states no current.</summary>
    public static Finding? Drop(Cell cell, string id, ImmutableArray<NotApplicable>.Builder coverage, bool asked)
    {
        var cable = cell.Cables[id];
        string at = $"/cables/{id}";
        if (cable.Current is null) return null;
        var reading = new Reading();
        double current = reading.Need(cable.Current, at + "/current"), voltage = reading.Need(cable.Voltage, at + "/voltage");
        double area = reading.Need(cable.CoreArea, at + "/coreArea"), length = reading.Need(cable.Length, at + "/length");
        double share = reading.Or(cable.LargestDrop, at + "/largestDrop", LargestDrop);
        if (!reading.Complete) return Open(CablingRules.Drop, at, reading, asked, coverage);
        var source = cable.LargestDrop is null ? new Source(SourceKind.FromMemory, "IEC-60204-1", "12.5") : new(SourceKind.Cell, at + "/largestDrop");
        return new Judged(CablingRules.Drop, new(at), reading.Inputs, Copper.Drop(area, length, current), Limit.AtMost(share * voltage, source), Assurance.Exact);
    }

    /// <summary>Null for kinds that need no shield.</summary>
    public static Finding? Bonding(Cell cell, string id, ImmutableArray<NotApplicable>.Builder coverage, bool asked)
    {
        var cable = cell.Cables[id];
        if (cable.Kind is not (CableKind.Motor or CableKind.Feedback or CableKind.Network)) return null;
        string at = $"/cables/{id}";
        var reading = new Reading();
        reading.Used(at + "/kind", cable.Kind);
        bool shielded = reading.Need(cable.Shielded, at + "/shielded", false);
        if (cable.Shielded == false) return new YesNo(CablingRules.Bonding, new(at), reading.Inputs, false, [at + "/shielded"]);
        bool from = reading.Need(cable.FromEnd.Bonded, at + "/fromEnd/bonded", false), to = reading.Need(cable.ToEnd.Bonded, at + "/toEnd/bonded", false);
        if (!reading.Complete) return Open(CablingRules.Bonding, at, reading, asked, coverage);
        ImmutableArray<string> open = [.. new[] { (from, at + "/fromEnd/bonded"), (to, at + "/toEnd/bonded") }.Where(e => !e.Item1).Select(e => e.Item2)];
        // A motor's shield carries the current of the capacitances back and works only with both ends on ground; signals need it at one end at least.
        bool good = shielded && (cable.Kind == CableKind.Motor ? open.IsEmpty : open.Length < 2);
        return new YesNo(CablingRules.Bonding, new(at), reading.Inputs, good, good ? [at + "/shielded"] : open);
    }

    /// <summary>IEC 60947-5-2, annex D, from memory: contact 1 brown, 2 white, 3 blue, 4 black. Null where no core states contact and colour.</summary>
    public static Finding? Pinning(Cell cell, string id)
    {
        var cable = cell.Cables[id];
        if (cable.Kind is not (CableKind.LimitSwitch or CableKind.InputOutput)) return null;
        string at = $"/cables/{id}";
        var reading = new Reading();
        reading.Used(at + "/kind", cable.Kind);
        reading.Used(at + "/toEnd/connector", cable.ToEnd.Connector);
        if (cable.ToEnd.Connector?.Trim() is not ("M8" or "M12")) return null;
        reading.Used(at + "/cores", string.Join('\n', cable.Cores.Keys));
        var wrong = ImmutableArray.CreateBuilder<string>();
        int seen = 0;
        foreach (var (core, c) in cable.Cores.InOrder())
        {
            string on = $"{at}/cores/{core}";
            reading.Used(on + "/toPin", c.ToPin);
            reading.Used(on + "/colour", c.Colour);
            // Cores with printed numbers say nothing of the contact.
            if (c.Colour is not { } colour || !colour.Any(char.IsLetter) || SensorContacts.Colour(c.ToPin) is not { } right) continue;
            seen++;
            if (!colour.Trim().Equals(right, StringComparison.OrdinalIgnoreCase)) wrong.Add(on + "/colour");
        }
        return seen == 0 ? null : new YesNo(CablingRules.Pinning, new(at), reading.Inputs, wrong.Count == 0, wrong.Count == 0 ? [at + "/cores"] : wrong.ToImmutable());
    }

    internal static Finding? Open(Rule rule, string at, Reading reading, bool asked, ImmutableArray<NotApplicable>.Builder coverage, string @case = "")
    {
        if (asked) return new Unjudged(rule, new(at, @case), [.. reading.Inputs.Append("/depth").Order(StringComparer.Ordinal)], OpenReason.Missing, reading.MissingFields);
        coverage.Add(new(rule, new(at, @case), CommonReasons.NotAskedYet));
        return null;
    }
}

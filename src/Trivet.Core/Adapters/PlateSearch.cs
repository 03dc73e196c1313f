using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Findings;

namespace Trivet.Adapters;

/// <summary>
/// Finds the plates that work between two faces: for each clocking the thinnest, counterbored before countersunk. Where none works it says what
/// forbids it and makes a stack of two.
/// </summary>
public static class PlateSearch
{
    private static readonly ScrewHead[] Heads = [ScrewHead.Cap, ScrewHead.Countersunk];

    public static AdapterResult Solve(AdapterInput input)
    {
        var result = Singles(input);
        return input.Pieces == 2 || result.Works.IsEmpty ? result with { Stack = PlateStack.Solve(input) } : result;
    }

    /// <summary>The best single plate, null where there is none.</summary>
    internal static AdapterPlate? One(AdapterInput input) => Singles(input).Works.FirstOrDefault();

    private static AdapterResult Singles(AdapterInput input)
    {
        var kept = new HashSet<string>(StringComparer.Ordinal);
        var found = new List<AdapterPlate>();
        AdapterPlate? closest = null;
        int tried = 0;
        foreach (double clocking in input.Clockings)
        {
            AdapterPlate? best = null;
            foreach (var choice in Choices(input, clocking))
            {
                if (best is not null && choice.Thickness > best.Thickness) continue;
                var plate = PlateDesign.Of(input, choice);
                tried++;
                foreach (var rule in plate.Measures.GroupBy(m => m.Rule.Id))
                    if (rule.All(m => m.Holds)) kept.Add(rule.Key);
                if (plate.Works && (best is null || Compare(plate, best) < 0)) best = plate;
                if (closest is null || Closer(plate, closest)) closest = plate;
                // Countersunk heads come only where no thickness takes a counterbore, so a plate that works ends the clocking's search.
                if (best is not null && choice.Thickness >= best.Thickness && choice.FirstFitted == input.Orders[^1]) break;
            }
            if (best is not null) found.Add(Lighter(input, best));
        }
        found.Sort(Compare);
        ImmutableArray<Rule> forbids = found.Count > 0 || closest is null ? [] : Forbidding(closest, kept);
        return new(input, [.. found], found.Count > 0 ? null : closest, forbids, [], tried);
    }

    /// <summary>The lighter first, then the thicker wall, then the freer keys; equal within what a shop can tell.</summary>
    private static int Compare(AdapterPlate a, AdapterPlate b)
    {
        if (Math.Abs(a.Mass - b.Mass) > 1e-6) return a.Mass.CompareTo(b.Mass);
        if (Math.Abs(a.Wall - b.Wall) > 1e-6) return b.Wall.CompareTo(a.Wall);
        if (a.KeyRoom != b.KeyRoom && !(Math.Abs(a.KeyRoom - b.KeyRoom) < 1e-6)) return b.KeyRoom.CompareTo(a.KeyRoom);
        return a.Clocking.CompareTo(b.Clocking);
    }

    /// <summary>In the order of preference: counterbored heads over all thicknesses first.</summary>
    private static IEnumerable<PlateChoice> Choices(AdapterInput input, double clocking)
    {
        // Only heads that lie on a face are a choice: those of the part on the other side, where it has threads.
        ScrewHead[] above = input.Below.Tapped ? Heads : [ScrewHead.Cap], below = input.Above.Tapped ? Heads : [ScrewHead.Cap];
        foreach (var (a, b) in above.SelectMany(a => below.Select(b => (a, b))).OrderBy(p => (int)p.a + (int)p.b))
            foreach (double t in input.Thicknesses)
                foreach (var order in input.Orders)
                    yield return new(clocking, t, order, a, b);
    }

    private static bool Closer(AdapterPlate a, AdapterPlate b)
    {
        int brokenA = a.Measures.Count(m => !m.Holds), brokenB = b.Measures.Count(m => !m.Holds);
        return brokenA != brokenB ? brokenA < brokenB : a.Measures.Min(m => m.Margin) > b.Measures.Min(m => m.Margin) + 1e-9;
    }

    private static ImmutableArray<Rule> Forbidding(AdapterPlate closest, HashSet<string> kept)
    {
        var broken = closest.Measures.Where(m => !m.Holds).Select(m => m.Rule).Distinct().ToArray();
        var never = broken.Where(r => !kept.Contains(r.Id)).ToImmutableArray();
        return never.IsEmpty ? [.. broken] : never;
    }

    private static AdapterPlate Lighter(AdapterInput input, AdapterPlate plate)
    {
        if (!input.Lighten) return plate;
        var holes = plate.Holes.AddRange(Lightening.Found(input, plate.Holes, plate.Outline, plate.Thickness));
        double volume = plate.Outline.Area * plate.Thickness - holes.Sum(h => h.Volume);
        return plate with { Holes = holes, Volume = volume, Mass = volume * plate.Stuff.Density };
    }
}

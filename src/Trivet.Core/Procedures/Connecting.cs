using System.Collections.Immutable;
using Trivet.Cabling;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;

namespace Trivet.Procedures;

/// <summary>Cables, isolated, one axis at a time, so that no two plugs that fit each other are loose at once; then switches at their places.</summary>
internal static class Connecting
{
    public static void Add(StepList steps)
    {
        var cell = steps.Cell;
        var last = ImmutableArray.CreateBuilder<string>();
        var after = steps.After(Gate.Robot, Gate.Rail, Gate.Bench);
        if (cell.Cables.Values.Any(c => c.Kind == CableKind.Earth)) last.Add(Cables(steps, "connect-earth", "", "/cables", c => c.Kind == CableKind.Earth, after));
        foreach (var (id, pointer) in steps.Axes)
        {
            // Of the tool nothing is there yet.
            if (id == "rotary") continue;
            // One after the other: while one axis is plugged in, no other plug is loose.
            last.Add(Cables(steps, "connect-axis", id, pointer, c => c.Axis == id && c.Kind != CableKind.Earth, [.. after, .. last]));
        }
        if (cell.Cables.Values.Any(c => c.Axis is null && c.Kind != CableKind.Earth)) last.Add(Cables(steps, "connect-rest", "", "/cables", c => c.Axis is null && c.Kind != CableKind.Earth, [.. after, .. last]));
        foreach (var (id, travel) in cell.Io.Switches.InOrder()) last.Add(Switch(steps, id, travel, after));
        steps.Gates[Gate.Cables] = last.ToImmutable();
    }

    /// <summary>The cables of one axis, or of what the axes share.</summary>
    public static string Cables(StepList steps, string kind, string of, string pointer, Func<Cable, bool> which, ImmutableArray<string> after)
    {
        var cell = steps.Cell;
        var reading = new Reading();
        reading.Used("/cables", string.Join('\n', cell.Cables.Keys));
        var names = ImmutableArray.CreateBuilder<string>();
        var mine = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (id, cable) in cell.Cables.InOrder())
        {
            reading.Used($"/cables/{id}/axis", cable.Axis);
            reading.Used($"/cables/{id}/kind", cable.Kind);
            if (!which(cable)) continue;
            mine.Add(id);
            foreach (var (field, value) in new (string, object?)[] { ("label", cable.Label), ("from", cable.From), ("to", cable.To), ("mark", cable.Mark) }) reading.Used($"/cables/{id}/{field}", value);
            names.Add(cable.Label ?? id);
        }
        // Which plugs could be taken for these: fault finding asks for them first.
        SwapGroup[] alike = [.. SwapGroups.Of(cell, reading).Where(g => g.Ends.Any(e => mine.Contains(e.Cable)) && g.Ends.Any(e => !mine.Contains(e.Cable)))];
        return steps.Add(kind, of, pointer, StepPlace.Site, EnergyLevel.Isolated, Skill.Electrician, 3 + 4 * mine.Count, after, reading, s => s with
        {
            Names = names.ToImmutable(),
            Numbers = [new("cables", "1", mine.Count), new("alike", "1", alike.Length)],
            Words = alike.Length == 0 ? [] : [new("partners", Partners(cell, alike, mine, reading))],
            Asks = [new AskedCount("plugged", mine.Count), new AskedChoice("labels", ["both-ends-agree", "differ"], "both-ends-agree"), new AskedPhotograph("plugs")],
            Tools = ["continuity-tester"],
            Probes = [Probe.CableContinuity],
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        });
    }

    /// <summary>For each kind of plug the labels of what belongs here, and of what fits here too: "W1A – W1B, W1C (M23 ♀ 6)".</summary>
    private static string Partners(Cell cell, IEnumerable<SwapGroup> alike, HashSet<string> mine, Reading reading)
    {
        return string.Join("; ", alike.Select(g => $"{Labels(g, true)} – {Labels(g, false)} ({g.Form})").Distinct());

        string Labels(SwapGroup group, bool own) => string.Join(", ", group.Ends.Select(e => e.Cable).Distinct().Where(c => mine.Contains(c) == own).Select(c =>
        {
            reading.Used($"/cables/{c}/label", cell.Cables[c].Label);
            return cell.Cables[c].Label ?? c;
        }));
    }

    private static string Switch(StepList steps, string id, TravelSwitch travel, ImmutableArray<string> after)
    {
        string at = $"/io/switches/{id}";
        var reading = new Reading();
        string name = Shop.Named(reading, at + "/name", travel.Name, id);
        double place = reading.Need(travel.At, at + "/at");
        double tolerance = reading.Or(travel.Tolerance, at + "/tolerance", 1e-3);
        reading.Used(at + "/axis", travel.Axis);
        bool turns = steps.Turns(travel.Axis);
        reading.Used("/robot/family", steps.Cell.Robot.Family);
        reading.Used(at + "/kind", travel.Kind);
        var asks = ImmutableArray.CreateBuilder<Asked>();
        asks.Add(new AskedValue("place", turns ? "rad" : "m", place, double.IsNaN(place) ? null : Limit.Between(place - tolerance, place + tolerance, new(SourceKind.Cell, at + "/tolerance"))));
        if (travel.Kind == SwitchKind.Inductive)
        {
            double gap = reading.Need(travel.Gap, at + "/gap");
            // A quarter of the gap either way: a feeler is not set finer. Common practice, no source.
            asks.Add(new AskedValue("gap", "m", gap, double.IsNaN(gap) ? null : Limit.Between(0.75 * gap, 1.25 * gap, new(SourceKind.CommonPractice, ""))));
        }
        return steps.Add("switch-place", id, at, StepPlace.Site, EnergyLevel.Isolated, Skill.Fitter, 8, after, reading, s => s with
        {
            Names = [name],
            Asks = asks.ToImmutable(),
            Tools = ["ruler", "feeler-gauge"],
            Probes = [Probe.PlacesAgainstPlan],
            UpsetBy = [Upset.Transported],
        });
    }
}

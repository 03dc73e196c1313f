using System.Collections.Immutable;
using Trivet.BringUp;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;

namespace Trivet.Procedures;

/// <summary>Rods and platform fitted, all chains homed together, the extra axis and the tool mounted: each with everything off, since nothing is plugged under power.</summary>
internal static class Completing
{
    private static readonly Source Practice = new(SourceKind.CommonPractice, "");

    public static void Add(StepList steps)
    {
        var cell = steps.Cell;
        var whole = steps.After(Gate.Identified, Gate.FirstEnable, Gate.Robot);
        if (!steps.CameAssembled)
        {
            string locked = Isolate(steps, "rods", whole);
            var rods = ImmutableArray.CreateBuilder<string>();
            foreach (var length in MeasuringSteps.Of(cell).Where(m => m.What == MeasuredLength.RodLength)) rods.Add(Erecting.Length(steps, length, steps.After(Gate.Goods)));
            steps.Fitted = Fitted.Whole;
            whole = [Platform(steps, [locked, .. rods, .. whole])];
            whole = [.. whole, Identifying.Push(steps, whole)];
        }
        whole = [.. whole, Level(steps, whole)];
        steps.Gates[Gate.Complete] = whole;
        steps.Gates[Gate.Homed] = [HomeTogether(steps, steps.After(Gate.Complete, Gate.Identified, Gate.FirstEnable))];
        if (cell.Robot.Rotary.Fitted == true) Rotary(steps);
        Tool(steps);
    }

    /// <summary>Everything off, locked and measured dead before hands go in.</summary>
    public static string Isolate(StepList steps, string before, ImmutableArray<string> after)
    {
        var reading = new Reading();
        double discharge = ControlSupply.Discharge(steps.Cell, reading);
        return steps.Add("isolate", before, "/cabinet", StepPlace.Site, EnergyLevel.Isolated, Skill.Electrician, 3 + ControlSupply.Waiting(discharge), after, reading, s => s with
        {
            Numbers = [new("discharge", "s", discharge)],
            Asks = [MeasuredDead.Ask, new AskedChoice("lock", ["fitted", "not-fitted"], "fitted")],
            Tools = ["voltmeter", "lock"],
            UpsetBy = [Upset.PowerCycled],
        });
    }

    private static string Platform(StepList steps, ImmutableArray<string> after)
    {
        var cell = steps.Cell;
        var reading = new Reading();
        reading.Used("/robot/common/rod", cell.Robot.Common.Rod);
        reading.Used("/robot/common/jointPreload", cell.Robot.Common.JointPreload);
        foreach (var (id, chain) in cell.Robot.Chains)
        {
            reading.Used($"/robot/chains/{id}/rod", chain.Rod);
            reading.Used($"/robot/chains/{id}/jointPreload", chain.JointPreload);
        }
        return steps.Add("rods-and-platform", "", "/robot", StepPlace.Site, EnergyLevel.Isolated, Skill.Fitter, 30, after, reading, s => s with
        {
            People = 2,
            Numbers = [new("rods", "1", 2 * cell.Robot.Chains.Count), .. cell.Robot.Common.JointPreload is { } preload ? new[] { new StepNumber("preload", "N", preload) } : []],
            Asks =
            [
                new AskedCount("rods", 2 * cell.Robot.Chains.Count), new AskedChoice("crossed", ["none", "found"], "none"), new AskedChoice("platform", ["as-planned", "turned"], "as-planned"),
                new AskedChoice("play", ["none", "found"], "none"), new AskedPhotograph("from-below"),
            ],
            Tools = ["eye-protection", "props"],
            Probes = [Probe.PlacesAgainstPlan],
            HoldPoint = true,
        });
    }

    private static string Level(StepList steps, ImmutableArray<string> after) =>
        steps.Add("platform-level", "", "/robot", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 15, after, new Reading(), s => s with
        {
            People = 2,
            Held = [.. s.Held.Select(h => h with { By = "prop" })],
            // A tenth of a degree: a digital level reads no finer. Common practice, no source.
            Asks = [new AskedCount("places", 7), new AskedValue("worst", "rad", 0, Limit.AtMost(0.1 * Math.PI / 180, Practice)), new AskedChoice("rattles", ["not", "does"], "not")],
            Tools = ["digital-level", "props"],
            Probes = [Probe.PlatformLevel],
            UpsetBy = [Upset.Transported],
        });

    /// <summary>All chains at once, from readings near each other, so that no rod is bent; then enabled again and watched.</summary>
    private static string HomeTogether(StepList steps, ImmutableArray<string> after)
    {
        var cell = steps.Cell;
        var reading = new Reading();
        reading.Used("/robot/homingDifference", cell.Robot.HomingDifference);
        reading.Used("/robot/family", cell.Robot.Family);
        bool turns = cell.Robot.Family == RobotFamily.CrankDelta;
        return steps.Add("home-together", "", "/robot", StepPlace.Site, EnergyLevel.AllAxes, Skill.Engineer, 15, after, reading, s => s with
        {
            People = 2,
            Numbers = cell.Robot.HomingDifference is { } difference ? [new("difference", turns ? "rad" : "m", difference)] : [],
            Asks =
            [
                new AskedChoice("homes", ["all-at-their-switches", "one-away", "times-out"], "all-at-their-switches"), new AskedChoice("after", ["all-stay", "goes-limp"], "all-stay"),
                new AskedChoice("disabled", ["all-hold", "one-sinks"], "all-hold"), new AskedValue("scatter", turns ? "rad" : "m", 0, Limit.AtMost(turns ? 3e-4 : 1e-4, Practice)),
            ],
            Tools = ["props", "dial-indicator"],
            Bounded = true,
            Probes = [Probe.Homing, Probe.DisableAndWatch],
            UpsetBy = [Upset.PowerCycled, Upset.PlugsMoved, Upset.Transported],
        });
    }

    private static void Rotary(StepList steps)
    {
        const string Pointer = "/robot/rotary";
        string locked = Isolate(steps, "rotary", steps.After(Gate.Homed));
        string plugged = Connecting.Cables(steps, "connect-axis", "rotary", Pointer, c => c.Axis == "rotary" && c.Kind != CableKind.Earth, [locked, .. steps.After(Gate.Bench)]);
        var gate = ImmutableArray.CreateBuilder<string>();
        gate.Add(plugged);
        ImmutableArray<string> after = [plugged, .. steps.After(Gate.FirstEnable, Gate.StopChain)];
        string hand = Identifying.Hand(steps, "rotary", Pointer, after);
        string jog = Identifying.Jog(steps, "rotary", Pointer, [hand]);
        foreach (string id in new[] { hand, jog, Identifying.Home(steps, "rotary", Pointer, [jog]) }) gate.Add(id);
        steps.Gates[Gate.Rotary] = gate.ToImmutable();
    }

    private static void Tool(StepList steps)
    {
        var cell = steps.Cell;
        string locked = Isolate(steps, "tool", steps.After(Gate.Homed, Gate.Rotary));
        var reading = new Reading();
        reading.Used("/tool/parts", string.Join('\n', cell.Tool.Parts.InOrder().Select(p => p.Key)));
        reading.Used("/pneumatics/hoses", string.Join('\n', cell.Pneumatics.Hoses.Keys));
        steps.Gates[Gate.Tool] =
        [
            steps.Add("tool-mounted", "", "/tool", StepPlace.Site, EnergyLevel.Isolated, Skill.Fitter, 25, [locked, .. steps.After(Gate.Bench)], reading, s => s with
            {
                Names = [.. cell.Tool.Parts.InOrder().Select(p => Shop.Named(reading, $"/tool/parts/{p.Key}/name", p.Value.Name, p.Key))],
                Asks =
                [
                    new AskedChoice("clocking", ["as-planned", "differs"], "as-planned"), new AskedChoice("hoses", ["as-planned", "differs"], "as-planned"),
                    new AskedChoice("loop", ["free-everywhere", "pulls"], "free-everywhere"), new AskedPhotograph("tool"),
                ],
                Tools = ["torque-wrench"],
                Probes = [Probe.PlacesAgainstPlan],
                HoldPoint = true,
            }),
        ];
    }
}

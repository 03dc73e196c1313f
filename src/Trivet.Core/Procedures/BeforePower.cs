using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;
using Trivet.Wiring;

namespace Trivet.Procedures;

/// <summary>What is measured with everything off before anything is switched on (the record of IEC 60204-1, clause 18, from memory). A licensed person's.</summary>
internal static class BeforePower
{
    private static readonly Source Clause18 = new(SourceKind.FromMemory, "IEC-60204-1", "18");

    /// <summary>Ohms of bonding that contacts add to the wire. Common practice, no source.</summary>
    private const double Contacts = 0.1;

    /// <summary>Ohm metres of copper at 20 °C (IEC 60228).</summary>
    private const double Copper = 1.7241e-8;

    public static void Add(StepList steps)
    {
        var cell = steps.Cell;
        var after = steps.After(Gate.Cables);
        var checks = ImmutableArray.CreateBuilder<string>();
        checks.Add(Bonding(steps, after));
        if (cell.Cabinet.Network.Protocol == BusProtocol.CanOpen) checks.Add(BusOhms(steps, after));
        var polarity = new Reading();
        polarity.Used("/cabinet/sources", string.Join('\n', cell.Cabinet.Sources.InOrder().Select(s => s.Key)));
        checks.Add(steps.Add("supply-polarity", "", "/cabinet/sources", StepPlace.Site, EnergyLevel.Isolated, Skill.Electrician, 15, after, polarity, s => s with
        {
            Names = [.. cell.Cabinet.Sources.InOrder().Select(p => Shop.Named(polarity, $"/cabinet/sources/{p.Key}/name", p.Value.Name, p.Key))],
            Asks = [new AskedChoice("polarity", ["as-planned", "reversed"], "as-planned"), new AskedChoice("shorts", ["none", "found"], "none"), new AskedChoice("voltage-set", ["as-planned", "differs"], "as-planned")],
            Tools = ["voltmeter", "continuity-tester"],
            Probes = [Probe.SupplyPolarity],
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        }));
        checks.Add(steps.Add("disconnection", "", "/cabinet/branches", StepPlace.Site, EnergyLevel.Isolated, Skill.Electrician, 20, after, Branches(cell), s => s with
        {
            Asks = [new AskedChoice("loop", ["proven", "not-proven"], "proven"), new AskedText("instrument")],
            Tools = ["loop-tester"],
            UpsetBy = [Upset.Transported],
        }));
        // Only circuits that the plan marks are tested at voltage, and none is marked while electronics hang on them.
        checks.Add(steps.Add("insulation", "", "/cabinet", StepPlace.Site, EnergyLevel.Isolated, Skill.Electrician, 10, after, new Reading(), s => s with
        {
            Asks = [new AskedChoice("insulation", ["not-applicable", "tested"], "not-applicable"), new AskedValue("ohms", "Ω", double.NaN, Limit.AtLeast(1e6, Clause18)), new AskedText("reason")],
            Tools = ["insulation-tester"],
        }));
        steps.Gates[Gate.BeforePower] =
        [
            steps.Add("before-power", "", "/cabinet", StepPlace.Site, EnergyLevel.Isolated, Skill.Electrician, 10, checks.ToImmutable(), new Reading(), s => s with
            {
                Asks = [new AskedChoice("documents", ["match", "differ"], "match"), new AskedSignature("electrician", Skill.Electrician)],
                HoldPoint = true,
                UpsetBy = [Upset.PlugsMoved, Upset.Transported],
            }),
        ];
    }

    private static Reading Branches(Cell cell)
    {
        var reading = new Reading();
        reading.Used("/cabinet/branches", string.Join('\n', cell.Cabinet.Branches.Keys));
        foreach (var (id, branch) in cell.Cabinet.Branches)
        {
            reading.Used($"/cabinet/branches/{id}/protection", branch.Protection);
            reading.Used($"/cabinet/branches/{id}/rating", branch.Rating);
            reading.Used($"/cabinet/branches/{id}/section", branch.Section);
            reading.Used($"/cabinet/branches/{id}/length", branch.Length);
        }
        return reading;
    }

    /// <summary>Every bonding wire may have the resistance of its copper and of its contacts.</summary>
    private static string Bonding(StepList steps, ImmutableArray<string> after)
    {
        var cell = steps.Cell;
        var reading = new Reading();
        reading.Used("/cables", string.Join('\n', cell.Cables.Keys));
        double most = 0;
        foreach (var (id, cable) in cell.Cables)
        {
            reading.Used($"/cables/{id}/kind", cable.Kind);
            if (cable.Kind != CableKind.Earth) continue;
            double length = reading.Need(cable.Length, $"/cables/{id}/length"), area = reading.Need(cable.CoreArea, $"/cables/{id}/coreArea");
            most = Math.Max(most, Copper * length / area);
        }
        return steps.Add("bonding", "", "/cables", StepPlace.Site, EnergyLevel.Isolated, Skill.Electrician, 20, after, reading, s => s with
        {
            Asks = [new AskedValue("worst", "Ω", most, reading.Complete ? Limit.AtMost(most + Contacts, Clause18) : null), new AskedChoice("shields", ["all-clamped", "not-all"], "all-clamped"), new AskedText("instrument")],
            Tools = ["bonding-tester"],
            Probes = [Probe.Bonding],
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        });
    }

    private static string BusOhms(StepList steps, ImmutableArray<string> after)
    {
        var reading = new Reading();
        int terminators = reading.Need(steps.Cell.Cabinet.Network.Terminators, "/cabinet/network/terminators", 0);
        reading.Used("/cabinet/network/protocol", steps.Cell.Cabinet.Network.Protocol);
        double ohms = BusCase.Ohms(terminators);
        // A tenth either way: resistors of one per cent, contacts and the meter. Common practice, no source.
        var limit = reading.Complete && terminators > 0 ? Limit.Between(0.9 * ohms, 1.1 * ohms, new(SourceKind.CommonPractice, "")) : null;
        return steps.Add("bus-ohms", "", "/cabinet/network", StepPlace.Site, EnergyLevel.Isolated, Skill.Electrician, 5, after, reading, s => s with
        {
            Asks = [new AskedValue("ohms", "Ω", ohms, limit, ShownAfter: true)],
            Tools = ["ohmmeter"],
            Probes = [Probe.BusOhms],
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        });
    }
}

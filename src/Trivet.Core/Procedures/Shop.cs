using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;
using Trivet.Wiring;

namespace Trivet.Procedures;

/// <summary>On the bench: what came, modules in order and addressed, what is screwed together before it leaves.</summary>
internal static class Shop
{
    public static void Add(StepList steps)
    {
        var cell = steps.Cell;
        var goods = new Reading();
        goods.Used("/partsList", string.Join('\n', cell.PartsList.Keys));
        steps.Gates[Gate.Goods] =
        [
            steps.Add("goods-in", "", "/partsList", StepPlace.Shop, EnergyLevel.Isolated, Skill.Fitter, 45, [], goods, s => s with
            {
                Asks = [new AskedCount("missing", 0), new AskedChoice("damage", ["none", "found"], "none"), new AskedText("serials"), new AskedPhotograph("plates")],
            }),
        ];
        Rail(steps);
        Bench(steps);
        var packed = new Reading();
        steps.Gates[Gate.Bench] =
        [
            steps.Add("transport", "", "/robot", StepPlace.Transport, EnergyLevel.Isolated, Skill.Fitter, 60, steps.After(Gate.Goods, Gate.Rail, Gate.Bench), packed, s => s with
            {
                People = 2,
                Asks = [new AskedChoice("secured", ["all", "not-all"], "all"), new AskedPhotograph("packed")],
                Tools = ["lifting-gear", "straps"],
            }),
        ];
    }

    /// <summary>Modules in their order along the rail, then the address of each.</summary>
    private static void Rail(StepList steps)
    {
        var cell = steps.Cell;
        if (cell.Cabinet.Modules.IsEmpty)
        {
            steps.Gates[Gate.Rail] = [];
            return;
        }
        var order = new Reading();
        order.Used("/cabinet/modules", string.Join('\n', cell.Cabinet.Modules.InOrder().Select(m => m.Key)));
        string stacked = steps.Add("rail-order", "", "/cabinet/modules", StepPlace.Shop, EnergyLevel.Isolated, Skill.Electrician, 5 + 4 * cell.Cabinet.Modules.Count, steps.After(Gate.Goods), order, s => s with
        {
            Names = [.. cell.Cabinet.Modules.InOrder().Select(m => Named(order, $"/cabinet/modules/{m.Key}/name", m.Value.Name, m.Key))],
            Asks = [new AskedChoice("order", ["as-planned", "differs"], "as-planned"), new AskedPhotograph("rail")],
            Probes = [Probe.PlacesAgainstPlan],
        });
        var last = ImmutableArray.CreateBuilder<string>();
        last.Add(stacked);
        var reading = new Reading();
        foreach (var of in AddressInputs.Read(cell, reading))
        {
            if (of.Switches is not { } switches) continue;
            foreach (var module in of.Modules)
            {
                var own = new Reading();
                foreach (string input in of.Inputs.Where(i => i.StartsWith(of.At, StringComparison.Ordinal))) own.Used(input, null);
                double address = own.Need(module.Set, module.At + "/address", 0);
                string name = Named(own, module.At + "/name", cell.Cabinet.Modules[module.Id].Name, module.Id);
                var digits = module.Set is { } set ? switches.For(set) : null;
                last.Add(steps.Add("module-address", module.Id, module.At, StepPlace.Shop, EnergyLevel.Isolated, Skill.Electrician, 2, [stacked], own, s => s with
                {
                    Names = digits is { } d ? [name, string.Join(' ', d.Select(v => v.ToString("X", System.Globalization.CultureInfo.InvariantCulture)))] : [name],
                    Numbers = own.Complete ? [new("address", "1", address)] : [],
                    Asks = [new AskedCount("address", (int)address), new AskedText("serial")],
                    Probes = [Probe.PlacesAgainstPlan],
                }));
            }
        }
        steps.Gates[Gate.Rail] = last.ToImmutable();
    }

    /// <summary>Joints of the tool stack, tightened on the bench, and the frame where it is built up there.</summary>
    private static void Bench(StepList steps)
    {
        var bench = ImmutableArray.CreateBuilder<string>();
        foreach (var (id, joint) in steps.Cell.Joints.InOrder())
            if (joint.Load != JointLoad.Mount) bench.Add(Joint(steps, id, StepPlace.Shop, steps.After(Gate.Goods)));
        steps.Gates[Gate.Bench] = bench.ToImmutable();
    }

    /// <summary>A bolted joint: its screws crosswise in three steps up to its torque.</summary>
    public static string Joint(StepList steps, string id, StepPlace place, ImmutableArray<string> after)
    {
        string at = $"/joints/{id}";
        var reading = new Reading();
        string name = Named(reading, at + "/name", steps.Cell.Joints[id].Name, id);
        reading.Used(at + "/order", steps.Cell.Joints[id].Order);
        var torque = steps.Torques.FirstOrDefault(t => t.Joint == id);
        if (torque is null) reading.Missing(at);
        else
            foreach (string input in torque.Inputs) reading.Used(input, null);
        return steps.Add("joint", id, at, place, EnergyLevel.Isolated, Skill.Fitter, torque is null ? 10 : 4 + 1.5 * torque.Screws, after, reading, s => s with
        {
            Names = [name],
            Numbers = torque is null ? [] : [new("torque", "N m", torque.Torque), new("screws", "1", torque.Screws)],
            Asks =
            [
                torque is null ? new AskedValue("torque", "N m", double.NaN, null)
                    : new AskedValue("torque", "N m", torque.Torque, Limit.Between(torque.Torque * (1 - torque.Scatter), torque.Torque * (1 + torque.Scatter), new(SourceKind.Derived, "bolting"))),
                new AskedTick("marked"),
            ],
            Tools = ["torque-wrench", "paint-marker"],
        });
    }

    /// <summary>What people call it: the name where it has one, and the dependence on it.</summary>
    public static string Named(Reading reading, string pointer, string? name, string id)
    {
        reading.Used(pointer, name);
        return string.IsNullOrWhiteSpace(name) ? id : name;
    }
}

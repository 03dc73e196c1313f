using System.Collections.Immutable;
using Trivet.Cabinets;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Views.Words;

namespace Trivet.Views.Cabinets;

/// <summary>The stack of modules and its enclosure in finished texts.</summary>
public static class CabinetSections
{
    public static ImmutableArray<Section> Of(Cell cell, Locale? locale = null)
    {
        var writer = new Writer(cell, locale);
        return [.. new[] { writer.Stack(), writer.Heat() }.Where(s => !s.IsEmpty)];
    }

    private sealed class Writer(Cell cell, Locale? locale)
    {
        private readonly CabinetWords _words = (locale ?? Locale.English).Language.Cabinet;

        public Section Stack()
        {
            var rail = RailCase.Read(cell, new());
            var facts = ImmutableArray.CreateBuilder<Fact>();
            double taken = rail.Begins()[^1];
            if (double.IsFinite(taken) && taken > 0)
            {
                string limit = cell.Cabinet.Enclosure.RailLength is { } has ? Q(has, "m") : "–";
                facts.Add(new("rail-taken", _words.RailTaken, Locale.Fill(_words.RailOf, ("length", Q(taken, "m")), ("limit", limit)), taken, "m"));
            }
            if (!rail.Rules.IsEmpty)
            {
                bool broken = rail.Rules.Any(r => !r.BrokenBy(rail.Modules).IsEmpty);
                var plan = broken ? RailPlan.Of(rail.Modules, rail.Rules) : null;
                string moves = plan is null ? _words.NoMoves : plan.End == RailEnd.Found
                    ? Locale.Fill(_words.MovesOf, ("modules", Fields.List(plan.Order.Where(plan.Moved.Contains).Select(Name), locale)))
                    : _words.NoOrder;
                facts.Add(new("moves", _words.Moves, moves, plan?.Moved.Count ?? 0, "1"));
            }
            var rows = rail.Rules.Select(r => ImmutableArray.Create<Entry>(new(Rule(r)), new(Verdict(r, rail)))).ToImmutableArray();
            return new("order", _words.Stack, [], facts.ToImmutable(),
                [new("rail-rules", _words.RailRules, [new("rule", _words.HeadRule), new("verdict", _words.HeadVerdict)], rows, [.. rail.Rules.Select(r => r.At)])],
                ["cabinet.rail", "cabinet.described"]);
        }

        public Section Heat()
        {
            var modules = cell.Cabinet.Modules.InOrder().Where(m => m.Value.HeatAtRest is not null || m.Value.HeatAtLoad is not null || m.Value.DischargeTime is not null).ToArray();
            var facts = ImmutableArray.CreateBuilder<Fact>();
            var limit = Tenderest.Read(cell, new());
            if (modules.Length > 0 && CabinetHeat.Read(cell, new()) is { } heat)
            {
                Add("heat-at-rest", _words.AtRest, heat.RestPower, "W");
                Add("heat-at-load", _words.AtLoad, heat.Power, "W");
                Add("cooling-surface", _words.Surface, heat.Surface, "m²");
                Add("walls", _words.Walls, heat.Transfer * heat.Surface, "W/K");
                if (heat.Gain > 0) Add("gain", _words.Gain, heat.Gain, "W");
                if (heat.Cooling > 0) Add("cooling", _words.Cooler, heat.Cooling, "W");
                if (heat.Flow > 0) facts.Add(new("fan-flow", _words.FanCarries, Flow(heat.Flow), heat.Flow, "m³/s"));
                if (limit is { } least)
                {
                    facts.Add(new("inside", _words.Inside,
                        Locale.Fill(_words.InsideOf, ("temperature", Q(heat.Inside, "°C")), ("limit", Q(least.Largest, "°C")), ("module", Name(least.Module))), heat.Inside, "°C"));
                    double flow = heat.FlowFor(least.Largest);
                    facts.Add(new("flow-wanted", _words.FlowWanted, flow == 0 ? _words.WallsAlone : double.IsFinite(flow) ? Flow(flow) : _words.NoFlow, flow, "m³/s"));
                }
                if (cell.Brief.HoursPerYear is { } running and >= 0 and <= CabinetHeat.Year)
                {
                    double energy = heat.StandbyEnergy(running);
                    facts.Add(new("standby", _words.Standby, Locale.Fill(
                        _words.StandbyOf, ("energy", $"{Numbers.Plain(energy / 3.6e6, 0, locale)} kWh"), ("hours", $"{Numbers.Plain((CabinetHeat.Year - running) / 3600, 0, locale)} h")), energy, "J"));
                }
            }
            var slowest = modules.Where(m => m.Value.DischargeTime > 0).OrderByDescending(m => m.Value.DischargeTime).FirstOrDefault();
            bool charged = slowest.Value is not null;
            if (charged)
                facts.Add(new("discharge", _words.Discharge,
                    Locale.Fill(_words.DischargeOf, ("time", Q(slowest.Value!.DischargeTime!.Value, "s")), ("module", Name(slowest.Key))), slowest.Value.DischargeTime.Value, "s"));
            ImmutableArray<string> cautions = [.. facts.Any(f => f.Id == "inside") ? _words.HeatCautions : [], .. charged ? _words.DischargeCautions : []];
            return new("heat", _words.Heat, cautions, facts.ToImmutable(),
            [
                new("heat-by-module", _words.HeatByModule,
                    [
                        new("module", _words.HeadModule), new("atRest", _words.HeadAtRest, "W"), new("atLoad", _words.HeadAtLoad, "W"), new("bears", _words.HeadBears, "°C"),
                        new("dischargeTime", _words.HeadDischarge, "s"), new("fan", _words.HeadFan),
                    ],
                    [
                        .. modules.Select(m => ImmutableArray.Create<Entry>(
                            new(Name(m.Key)), E(m.Value.HeatAtRest, "W"), E(m.Value.HeatAtLoad ?? m.Value.HeatAtRest, "W"), E(m.Value.LargestAmbient, "°C"), E(m.Value.DischargeTime, "s"),
                            new(m.Value.Fan == true ? _words.Fan : "–"))),
                    ],
                    [.. modules.Select(m => $"/cabinet/modules/{m.Key}")]),
            ],
            ["cabinet.temperature"]);

            void Add(string id, string what, double value, string unit) => facts.Add(new(id, what, Q(value, unit), value, unit));
        }

        private string Rule(OrderRule rule)
        {
            if (cell.Cabinet.RailRules[rule.Id].Name is { } name) return name;
            return Locale.Fill(_words.Rules[(int)rule.Kind], ("of", Means(rule.Of)), ("to", rule.To.Length > 0 ? Means(rule.To) : _words.AnyNeighbour),
                ("count", rule.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("gap", Q(rule.Gap, "m")));
        }

        private string Means(string name) => cell.Cabinet.Modules.ContainsKey(name) ? Name(name) : name;

        private string Verdict(OrderRule rule, RailCase rail)
        {
            if (!rail.Modules.Any(m => m.Is(rule.Of))) return _words.NobodyMeant;
            var broken = rule.BrokenBy(rail.Modules);
            return broken.IsEmpty ? _words.Kept : Locale.Fill(_words.Broken, ("modules", Fields.List(broken.Select(i => Name(rail.Modules[i].Id)), locale)));
        }

        private string Name(string module) => cell.Cabinet.Modules[module].Name ?? module;

        private string Flow(double flow) => $"{Numbers.Plain(flow * 3600, 0, locale)} m³/h";

        private string Q(double value, string unit) => Numbers.Quantity(value, unit, locale);

        private Entry E(double? value, string unit) => value is { } v ? new(Q(v, unit), v) : new("–");
    }
}

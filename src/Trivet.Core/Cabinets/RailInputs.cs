using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Cabinets;

/// <summary>The modules in their present order, and the rules for it.</summary>
/// <param name="Inputs">Everything that orders and rules were read from; widths are apart.</param>
public sealed record RailCase(ImmutableArray<RailModule> Modules, ImmutableArray<OrderRule> Rules, ImmutableArray<string> Inputs)
{
    /// <summary>Rules that are not complete are listed as missing in the reading, and left out.</summary>
    public static RailCase Read(Cell cell, Reading reading)
    {
        var cabinet = cell.Cabinet;
        reading.Used("/cabinet/modules", string.Join('\n', cabinet.Modules.Keys));
        reading.Used("/cabinet/railRules", string.Join('\n', cabinet.RailRules.Keys));
        var modules = ImmutableArray.CreateBuilder<RailModule>();
        foreach (var (id, m) in cabinet.Modules.InOrder())
        {
            reading.Used($"/cabinet/modules/{id}/order", m.Order);
            reading.Used($"/cabinet/modules/{id}/role", m.Role);
            modules.Add(new(id, m.Role ?? "", m.Width ?? double.NaN, m.Order is not null));
        }
        var rules = ImmutableArray.CreateBuilder<OrderRule>();
        foreach (var (id, stated) in cabinet.RailRules.InOrder())
            if (Rule(id, stated, reading) is { } rule) rules.Add(rule);
        return new(modules.ToImmutable(), rules.ToImmutable(), reading.Inputs);
    }

    private static OrderRule? Rule(string id, RailRule stated, Reading reading)
    {
        string at = $"/cabinet/railRules/{id}";
        var own = new Reading();
        var kind = own.Need(stated.Kind, at + "/kind", RailRuleKind.Gap);
        string of = Name("of", stated.Of, true);
        string to = Name("to", stated.To, kind is RailRuleKind.Before or RailRuleKind.Beside or RailRuleKind.NotBeside or RailRuleKind.AtMostAfter);
        int count = kind == RailRuleKind.AtMostAfter ? own.Need(stated.Count, at + "/count", 0) : 0;
        double gap = kind == RailRuleKind.Gap && stated.Kind is not null ? own.Need(stated.Gap, at + "/gap") : 0;
        reading.Used(own);
        foreach (string missing in own.MissingFields) reading.Missing(missing);
        return own.Complete ? new(id, kind, of, to, count, gap) : null;

        string Name(string field, string? value, bool needed)
        {
            if (needed && string.IsNullOrWhiteSpace(value)) own.Missing($"{at}/{field}");
            else own.Used($"{at}/{field}", value);
            return value ?? "";
        }
    }

    /// <summary>Free width between two neighbours, metres: the largest that a rule wants.</summary>
    public double Gap(RailModule left, RailModule right) => Rules.Select(r => r.Between(left, right)).DefaultIfEmpty(0).Max();

    /// <summary>Where each module begins, metres from the left end of the first; one more for where the last ends.</summary>
    public ImmutableArray<double> Begins()
    {
        var begins = ImmutableArray.CreateBuilder<double>(Modules.Length + 1);
        double x = 0;
        for (int i = 0; i < Modules.Length; i++)
        {
            if (i > 0) x += Gap(Modules[i - 1], Modules[i]);
            begins.Add(x);
            x += Modules[i].Width;
        }
        begins.Add(x);
        return begins.ToImmutable();
    }

    /// <summary>The cell with its modules in another order: their order fields count up from 1.</summary>
    public static Cell InOrder(Cell cell, ImmutableArray<string> order)
    {
        var modules = cell.Cabinet.Modules;
        for (int i = 0; i < order.Length; i++) modules = modules.SetItem(order[i], modules[order[i]] with { Order = i + 1 });
        return cell with { Cabinet = cell.Cabinet with { Modules = modules } };
    }

    /// <summary>The cell as it is where all rules hold or no order obeys them, else with the nearest order that does.</summary>
    public static Cell AsPlanned(Cell cell)
    {
        var rail = Read(cell, new());
        if (rail.Rules.All(r => r.BrokenBy(rail.Modules).IsEmpty)) return cell;
        var plan = RailPlan.Of(rail.Modules, rail.Rules);
        return plan.End == RailEnd.Found ? InOrder(cell, plan.Order) : cell;
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Cabinets;

/// <summary>Holds the order along the rail against its rules, and the warmth inside against what the modules bear.</summary>
internal static class CabinetChecks
{
    public static IEnumerable<YesNo> Order(RailCase rail)
    {
        foreach (var rule in rail.Rules)
        {
            // A gap is kept by leaving it; whether there is room for it the length of the rail tells.
            if (rule.Kind == RailRuleKind.Gap || !rail.Modules.Any(m => m.Is(rule.Of))) continue;
            var broken = rule.BrokenBy(rail.Modules);
            yield return new(CabinetRules.Order, new(rule.At), rail.Inputs, broken.IsEmpty, [.. broken.Select(i => rail.Modules[i].At)]);
        }
    }

    /// <summary>The same with the nearest order that obeys all: the order of each module that comes to stand elsewhere.</summary>
    public static ImmutableArray<Finding> Advised(Cell cell, RailCase rail, ImmutableArray<YesNo> found)
    {
        if (found.All(f => f.Good)) return [.. found];
        var plan = RailPlan.Of(rail.Modules, rail.Rules);
        if (plan.End != RailEnd.Found)
        {
            var reason = plan.End == RailEnd.Impossible ? CabinetReasons.NoOrder : CabinetReasons.TooManyOrders;
            return [.. found, new Unjudged(CabinetRules.Described, new("/cabinet/railRules"), rail.Inputs, OpenReason.Failed, [], reason)];
        }
        ImmutableArray<Advice> advice =
        [
            .. plan.Order.Select((id, i) => (Id: id, Is: cell.Cabinet.Modules[id].Order, To: i + 1)).Where(m => m.Is != m.To)
                .Select(m => new Advice($"/cabinet/modules/{m.Id}/order", m.Is ?? double.NaN, m.To, double.NaN)),
        ];
        return [.. found.Select(f => f.Good ? f : f with { Advice = advice })];
    }

    public static Finding Temperature(CabinetHeat heat, Tenderest limit, double? flow, ImmutableArray<string> inputs)
    {
        const string fan = "/cabinet/enclosure/fanFlow";
        var source = new Source(SourceKind.Cell, $"/cabinet/modules/{limit.Module}/largestAmbient");
        if (double.IsInfinity(heat.Inside) || !double.IsFinite(heat.Inside))
            return new Unjudged(CabinetRules.Temperature, new("/cabinet"), inputs, OpenReason.Failed, []);
        var finding = new Judged(CabinetRules.Temperature, new("/cabinet"), inputs, heat.Inside, Limit.AtMost(limit.Largest, source), Assurance.Estimated);
        double wanted = heat.FlowFor(limit.Largest);
        return finding.Verdict == Verdict.FallsShort && double.IsFinite(wanted) && heat.Cooling == 0 ? finding with { Advice = [new(fan, flow ?? double.NaN, wanted, 0)] } : finding;
    }
}

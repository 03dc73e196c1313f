using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Cabinets;

/// <summary>What the stack of modules and its enclosure have to say of a cell. Only the search for a better order is left to a task.</summary>
public static class CabinetStage
{
    private const string At = "/cabinet/enclosure";
    private static readonly Subject Cabinet = new("/cabinet");

    public static StagePlan Of(Cell cell)
    {
        if (cell.Cabinet.Modules.IsEmpty) return new([], [new(CabinetRules.Order, new("/cabinet"), CabinetReasons.NoModules)], []);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        bool asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;
        foreach (var (pointer, reason) in Impossible(cell.Cabinet))
            findings.Add(new Unjudged(CabinetRules.Described, new(pointer), [pointer, .. reason.Fields], OpenReason.Failed, [], reason));

        var reading = new Reading();
        var rail = RailCase.Read(cell, reading);
        Missing(reading, CabinetRules.Order, new("/cabinet"));
        if (cell.Cabinet.RailRules.IsEmpty) coverage.Add(new(CabinetRules.Order, new("/cabinet"), CabinetReasons.NoRailRules));
        foreach (var rule in rail.Rules.Where(r => !rail.Modules.Any(m => m.Is(r.Of)))) coverage.Add(new(CabinetRules.Order, new(rule.At), CabinetReasons.NobodyMeant));

        Length();
        Heat();
        ImmutableArray<StageTask> tasks = rail.Rules.IsEmpty ? [] :
            [new("cabinet.order", reading.Key, () => [.. CabinetChecks.Order(rail)], _ => CabinetChecks.Advised(cell, rail, [.. CabinetChecks.Order(rail)]))];
        return new(findings.ToImmutable(), coverage.ToImmutable(), tasks);

        void Length()
        {
            var own = new Reading();
            own.Used(reading);
            foreach (var m in rail.Modules) own.Need(cell.Cabinet.Modules[m.Id].Width, m.At + "/width");
            double has = own.Need(cell.Cabinet.Enclosure.RailLength, At + "/railLength");
            Missing(own, CabinetRules.Rail, Cabinet);
            if (own.Complete)
                findings.Add(new Judged(CabinetRules.Rail, Cabinet, own.Inputs, rail.Begins()[^1], Limit.AtMost(has, new(SourceKind.Cell, At + "/railLength")), Assurance.Exact));
        }

        void Heat()
        {
            var own = new Reading();
            var heat = CabinetHeat.Read(cell, own);
            var limit = Tenderest.Read(cell, own);
            Missing(own, CabinetRules.Temperature, Cabinet);
            if (limit is null) coverage.Add(new(CabinetRules.Temperature, Cabinet, CabinetReasons.NoLimit));
            else if (heat is not null) findings.Add(CabinetChecks.Temperature(heat, limit, cell.Cabinet.Enclosure.FanFlow, own.Inputs));
        }

        // Asked for once the cell is to be built; before that it waits.
        void Missing(Reading of, Rule rule, Subject subject)
        {
            if (of.Complete) return;
            if (asked) findings.Add(new Unjudged(rule, subject, [.. of.Inputs.Append("/depth").Order(StringComparer.Ordinal)], OpenReason.Missing, of.MissingFields));
            else coverage.Add(new(rule, subject, CommonReasons.NotAskedYet));
        }
    }

    private static IEnumerable<(string Pointer, Reason Reason)> Impossible(Cells.Cabinet cabinet)
    {
        var e = cabinet.Enclosure;
        foreach (var (name, value) in new (string, double?)[] { ("railLength", e.RailLength), ("width", e.Width), ("height", e.Height), ("depth", e.Depth), ("coolingSurface", e.CoolingSurface), ("heatTransfer", e.HeatTransfer) })
            if (value <= 0) yield return ($"/cabinet/enclosure/{name}", CabinetReasons.NotPositive);
        if (e.CoolingPower < 0) yield return ("/cabinet/enclosure/coolingPower", CabinetReasons.Negative);
        if (e.SolarGain < 0) yield return ("/cabinet/enclosure/solarGain", CabinetReasons.Negative);
        // A cooler in an enclosure that fans blow through cools the hall.
        if (e is { CoolingPower: > 0, FanFlow: > 0 }) yield return ("/cabinet/enclosure/coolingPower", CabinetReasons.CoolerAndFan);
        if (e.FanFlow < 0) yield return ("/cabinet/enclosure/fanFlow", CabinetReasons.Negative);
        foreach (var (id, m) in cabinet.Modules)
        {
            if (m.Width <= 0) yield return ($"/cabinet/modules/{id}/width", CabinetReasons.NotPositive);
            if (m.HeatAtRest < 0) yield return ($"/cabinet/modules/{id}/heatAtRest", CabinetReasons.Negative);
            if (m.HeatAtLoad < 0) yield return ($"/cabinet/modules/{id}/heatAtLoad", CabinetReasons.Negative);
            if (m.DischargeTime < 0) yield return ($"/cabinet/modules/{id}/dischargeTime", CabinetReasons.Negative);
        }
        foreach (var (id, r) in cabinet.RailRules)
        {
            if (r.Count < 0) yield return ($"/cabinet/railRules/{id}/count", CabinetReasons.Negative);
            if (r.Gap < 0) yield return ($"/cabinet/railRules/{id}/gap", CabinetReasons.Negative);
        }
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Stopping;

/// <summary>A hazard that the description shows. It may not be one, and there are others: a person looks at the machine.</summary>
/// <param name="Id">Stable: an entry of the register with this id, or one that names it, answers it.</param>
/// <param name="Why">What happens, with the fields that show it.</param>
public sealed record ProposedHazard(string Id, HazardKind Kind, LifePhase Phase, Reason Why)
{
    /// <summary>Id of the register's entry that answers it; null while there is none.</summary>
    public string? Entry { get; init; }
}

/// <summary>What a description shows of hazards, in the manner of the list of ISO 12100, annex B. An aid against forgetting, never a complete list.</summary>
public static class ProposedHazards
{
    private const double Hot = 60;

    public static ImmutableArray<ProposedHazard> Of(Cell cell, Reading reading)
    {
        var found = ImmutableArray.CreateBuilder<ProposedHazard>();
        bool robot = Uses("/robot/family", cell.Robot.Family) is not null;
        if (robot)
        {
            Add("sinking", HazardKind.Falling, LifePhase.Maintenance, HazardReasons.Sinking, "/robot/chains");
            Add("crushing", HazardKind.Crushing, LifePhase.Operation, HazardReasons.Crushing, "/robot");
            Add("unexpected-start", HazardKind.UnexpectedStart, LifePhase.Maintenance, HazardReasons.UnexpectedStart, "/robot");
            Add("rod-off", HazardKind.Ejection, LifePhase.Operation, HazardReasons.RodOff, "/robot/chains");
        }
        bool parts = Ids("/brief/parts", cell.Brief.Parts.Keys), cycles = Ids("/motion/cycles", cell.Motion.Cycles.Keys);
        if (robot && parts && cycles) Add("thrown-part", HazardKind.Ejection, LifePhase.Operation, HazardReasons.ThrownPart, "/motion/cycles");
        bool cups = Uses("/tool/vacuum/cups", cell.Tool.Vacuum.Cups) is not null, fingers = Uses("/tool/fingers/count", cell.Tool.Fingers.Count) is not null;
        if (cups || fingers) Add("dropped-part", HazardKind.Falling, LifePhase.Operation, HazardReasons.DroppedPart, cups ? "/tool/vacuum" : "/tool/fingers");
        Ids("/stations", cell.Stations.Keys);
        foreach (var (id, station) in cell.Stations)
            if (Uses($"/stations/{id}/kind", station.Kind) is StationKind.Belt)
            {
                Add("drawing-in", HazardKind.DrawingIn, LifePhase.Operation, HazardReasons.DrawingIn, $"/stations/{id}");
                break;
            }
        bool modules = Ids("/cabinet/modules", cell.Cabinet.Modules.Keys), charged = false;
        foreach (var (id, module) in cell.Cabinet.Modules) charged |= Uses($"/cabinet/modules/{id}/dischargeTime", module.DischargeTime) > 0;
        charged |= Uses("/drives/supply/capacitance", cell.Drives.Supply.Capacitance) > 0;
        if (charged) Add("capacitors", HazardKind.StoredEnergy, LifePhase.Maintenance, HazardReasons.Capacitors, "/cabinet/modules");
        if (Uses("/pneumatics/supplyPressure", cell.Pneumatics.SupplyPressure) > 0 || Ids("/pneumatics/users", cell.Pneumatics.Users.Keys))
            Add("compressed-air", HazardKind.StoredEnergy, LifePhase.Maintenance, HazardReasons.CompressedAir, "/pneumatics");
        if (Ids("/handling/lifts", cell.Handling.Lifts.Keys) || Uses("/handling/hanging/mass", cell.Handling.Hanging.Mass) > 0)
            Add("lifting", HazardKind.Falling, LifePhase.Installation, HazardReasons.Lifting, "/handling");
        if (modules) Add("electric-shock", HazardKind.Electrical, LifePhase.Maintenance, HazardReasons.ElectricShock, "/cabinet/modules");
        Ids("/drives/motors", cell.Drives.Motors.Keys);
        bool hot = Uses("/drives/supply/brakingResistance", cell.Drives.Supply.BrakingResistance) > 0;
        // Burns by a short touch begin near 60 °C on bare metal (ISO 13732-1, from memory).
        foreach (var (id, motor) in cell.Drives.Motors) hot |= Uses($"/drives/motors/{id}/largestTemperature", motor.LargestTemperature) >= Hot;
        if (hot) Add("hot-surfaces", HazardKind.Thermal, LifePhase.Maintenance, HazardReasons.HotSurfaces, "/drives");

        Ids("/hazards", cell.Hazards.Keys);
        foreach (var (id, hazard) in cell.Hazards) reading.Used($"/hazards/{id}/proposed", hazard.Proposed);
        return [.. found.Select(p => p with { Entry = cell.Hazards.Where(h => (h.Value.Proposed ?? h.Key) == p.Id).Select(h => h.Key).FirstOrDefault() })];

        void Add(string id, HazardKind kind, LifePhase phase, Reason why, string field) => found.Add(new(id, kind, phase, why.Naming(field)));

        T? Uses<T>(string pointer, T? value) where T : struct
        {
            reading.Used(pointer, value);
            return value;
        }

        bool Ids(string pointer, IEnumerable<string> ids)
        {
            string joined = string.Join('\n', ids);
            reading.Used(pointer, joined);
            return joined.Length > 0;
        }
    }
}

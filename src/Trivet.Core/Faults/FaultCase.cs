using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Faults;

/// <summary>A fault at one place of this cell.</summary>
/// <param name="Where">Ids of what it sits in: one axis, both of a pair, one module; empty where it is the cell's as a whole.</param>
/// <param name="Parts">Pointers of what it can be seen at: those, with their cables, switches and modules; empty where it is the cell's as a whole.</param>
public sealed record FaultCase(Fault Fault, ImmutableArray<string> Where, ImmutableArray<string> Parts)
{
    public string Id => Where.IsEmpty ? Fault.Id : $"{Fault.Id}:{string.Join('+', Where)}";
}

/// <summary>Which faults of the catalogue this cell can have at all, and where.</summary>
public static class FaultCases
{
    /// <param name="reading">Takes note of what the choice rests on.</param>
    public static ImmutableArray<FaultCase> Of(Cell cell, Reading reading)
    {
        var axes = Axes(cell, reading);
        var common = Common(cell, axes.Length, reading);
        reading.Used("/cabinet/modules", string.Join('\n', cell.Cabinet.Modules.Keys));
        var cases = ImmutableArray.CreateBuilder<FaultCase>();
        foreach (var fault in FaultCatalogue.All)
        {
            switch (fault.Scope)
            {
                case FaultScope.Axis:
                    foreach (var axis in axes)
                        if (Has(common | axis.Has, fault.Needs)) cases.Add(new(fault, [axis.Id], axis.Parts));
                    break;
                case FaultScope.AxisPair:
                    for (int i = 0; i < axes.Length; i++)
                        for (int j = i + 1; j < axes.Length; j++)
                            if (Has(common | axes[i].Has, fault.Needs) && Has(common | axes[j].Has, fault.Needs)) cases.Add(new(fault, [axes[i].Id, axes[j].Id], [.. axes[i].Parts, .. axes[j].Parts]));
                    break;
                case FaultScope.Module:
                    foreach (var (id, module) in cell.Cabinet.Modules.InOrder())
                    {
                        reading.Used($"/cabinet/modules/{id}/address", module.Address);
                        bool onBus = module.Address is not null || (fault.Needs & (FaultNeeds.Bus | FaultNeeds.CanBus)) == 0;
                        if (onBus && Has(common, fault.Needs)) cases.Add(new(fault, [id], [$"/cabinet/modules/{id}"]));
                    }
                    break;
                case FaultScope.Belt:
                    foreach (var (id, station) in cell.Stations.InOrder())
                        if (station.Kind == StationKind.Belt) cases.Add(new(fault, [id], [$"/stations/{id}"]));
                    break;
                case FaultScope.Frame:
                case FaultScope.Robot:
                case FaultScope.Tool:
                case FaultScope.Cabinet:
                default:
                    var any = axes.Aggregate(common, (all, axis) => all | axis.Has);
                    if (Has(any, fault.Needs)) cases.Add(new(fault, [], []));
                    break;
            }
        }
        return cases.ToImmutable();

        static bool Has(FaultNeeds has, FaultNeeds needs) => (has & needs) == needs;
    }

    private static FaultNeeds Common(Cell cell, int axes, Reading reading)
    {
        var has = axes >= 3 && cell.Robot.Chains.Count >= 3 ? FaultNeeds.ThreeChains : FaultNeeds.Nothing;
        foreach (var (id, module) in cell.Cabinet.Modules)
        {
            reading.Used($"/cabinet/modules/{id}/fan", module.Fan);
            reading.Used($"/cabinet/modules/{id}/address", module.Address);
            if (module.Fan == true) has |= FaultNeeds.Fan;
            if (module.Address is not null) has |= FaultNeeds.Bus;
        }
        reading.Used("/cabinet/network/protocol", cell.Cabinet.Network.Protocol);
        // Terminators, bit rates and identifiers are those of CAN.
        if ((has & FaultNeeds.Bus) != 0 && cell.Cabinet.Network.Protocol == BusProtocol.CanOpen) has |= FaultNeeds.CanBus;
        foreach (var (id, way) in cell.Cabling.Ways)
        {
            reading.Used($"/cabling/ways/{id}/kind", way.Kind);
            if (way.Kind is CableWayKind.EnergyChain or CableWayKind.Loop) has |= FaultNeeds.EnergyChain;
        }
        reading.Used("/cabling/ways", string.Join('\n', cell.Cabling.Ways.Keys));
        reading.Used("/pneumatics/users", string.Join('\n', cell.Pneumatics.Users.Keys));
        if (!cell.Pneumatics.Users.IsEmpty) has |= FaultNeeds.Air;
        foreach (var (id, signal) in cell.Io.Signals)
        {
            reading.Used($"/io/signals/{id}/direction", signal.Direction);
            if (signal.Direction == SignalDirection.Output) has |= FaultNeeds.Outputs;
        }
        reading.Used("/io/signals", string.Join('\n', cell.Io.Signals.Keys));
        foreach (var (id, station) in cell.Stations) reading.Used($"/stations/{id}/kind", station.Kind);
        reading.Used("/stations", string.Join('\n', cell.Stations.Keys));
        return has;
    }

    private sealed record Axis(string Id, ImmutableArray<string> Parts, FaultNeeds Has);

    private static ImmutableArray<Axis> Axes(Cell cell, Reading reading)
    {
        var axes = ImmutableArray.CreateBuilder<Axis>();
        reading.Used("/robot/chains", string.Join('\n', cell.Robot.Chains.InOrder().Select(c => c.Key)));
        reading.Used("/robot/common/feedback", cell.Robot.Common.Feedback);
        reading.Used("/robot/common/holding", cell.Robot.Common.Holding);
        foreach (var (id, chain) in cell.Robot.Chains.InOrder())
        {
            reading.Used($"/robot/chains/{id}/feedback", chain.Feedback);
            reading.Used($"/robot/chains/{id}/holding", chain.Holding);
            var has = FaultNeeds.Chain;
            if ((chain.Feedback ?? cell.Robot.Common.Feedback) is Feedback.MotorSide or Feedback.CarriageSide) has |= FaultNeeds.Feedback;
            if ((chain.Holding ?? cell.Robot.Common.Holding) == Holding.Brake) has |= FaultNeeds.Brake;
            axes.Add(AxisOf(cell, id, $"/robot/chains/{id}", has, reading));
        }
        reading.Used("/robot/rotary/fitted", cell.Robot.Rotary.Fitted);
        reading.Used("/robot/linearAxis/fitted", cell.Robot.LinearAxis.Fitted);
        if (cell.Robot.Rotary.Fitted == true) axes.Add(AxisOf(cell, "rotary", "/robot/rotary", FaultNeeds.Rotary, reading));
        if (cell.Robot.LinearAxis.Fitted == true) axes.Add(AxisOf(cell, "linear", "/robot/linearAxis", FaultNeeds.Nothing, reading));
        return axes.ToImmutable();
    }

    /// <summary>An axis with its cables, switches and modules: at each of them its faults can be seen.</summary>
    private static Axis AxisOf(Cell cell, string id, string pointer, FaultNeeds has, Reading reading)
    {
        var transmission = cell.Drives.Axes.GetValueOrDefault(id)?.Transmission;
        reading.Used($"/drives/axes/{id}/transmission", transmission);
        if (transmission == TransmissionKind.Belt) has |= FaultNeeds.BeltDrive;
        var parts = ImmutableArray.CreateBuilder<string>();
        parts.Add(pointer);
        Take("/io/switches", cell.Io.Switches, "axis", s => s.Axis);
        if (parts.Count > 1) has |= FaultNeeds.Switch;
        Take("/cables", cell.Cables, "axis", c => c.Axis);
        Take("/cabinet/modules", cell.Cabinet.Modules, "drives", m => m.Drives);
        return new(id, parts.ToImmutable(), has);

        void Take<T>(string at, ImmutableSortedDictionary<string, T> of, string field, Func<T, string?> axis)
        {
            reading.Used(at, string.Join('\n', of.Keys));
            foreach (var (key, one) in of)
            {
                reading.Used($"{at}/{key}/{field}", axis(one));
                if (axis(one) == id) parts.Add($"{at}/{key}");
            }
        }
    }
}

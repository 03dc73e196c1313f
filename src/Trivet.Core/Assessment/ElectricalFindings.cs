using System.Collections.Immutable;
using Trivet.Cabinets;
using Trivet.Cabling;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Powering;
using Trivet.Settings;
using Trivet.Signals;
using Trivet.Stopping;
using Trivet.Wiring;

namespace Trivet.Assessment;

/// <summary>What the trades of the cabinet find by themselves, for one who asks for nothing else.</summary>
public static class ElectricalFindings
{
    public static ImmutableArray<Finding> Of(Cell cell, CancellationToken stop)
    {
        var plan = CabinetStage.Of(cell) + PowerStage.Of(cell) + MotorFeedStage.Of(cell, TimedCycle.Of(cell)) + WiringStage.Of(cell) + CablingStage.Of(cell) + SignalStage.Of(cell) + SettingStage.Of(cell) + StopStage.Of(cell) + HazardStage.Of(cell);
        return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Prove(stop))];
    }
}

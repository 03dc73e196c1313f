using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Signals;

/// <summary>The travel that a switch must leave free.</summary>
public static class SwitchTravel
{
    /// <summary>The end of the used travel on the switch's side; null where the axis states none.</summary>
    public static double? End(Cell cell, string? axis, bool upper, Reading reading)
    {
        string name = upper ? "travelTo" : "travelFrom";
        switch (axis)
        {
            case "rotary":
                return Stated(upper ? cell.Robot.Rotary.TravelTo : cell.Robot.Rotary.TravelFrom, "/robot/rotary/" + name);
            case "linear":
                return Stated(upper ? cell.Robot.LinearAxis.TravelTo : cell.Robot.LinearAxis.TravelFrom, "/robot/linearAxis/" + name);
            case { } chain when cell.Robot.Chains.TryGetValue(chain, out var own):
                var common = cell.Robot.Common;
                return Stated(upper ? own.TravelTo : own.TravelFrom, $"/robot/chains/{chain}/{name}") ?? Stated(upper ? common.TravelTo : common.TravelFrom, "/robot/common/" + name);
            default:
                return null;
        }

        double? Stated(double? value, string pointer)
        {
            reading.Used(pointer, value);
            return value;
        }
    }
}

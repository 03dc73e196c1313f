using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;

namespace Trivet.Gripping;

/// <summary>Free air of one user in one cycle.</summary>
/// <param name="Volume">m³ at ambient pressure; not a number while something is missing.</param>
public sealed record AirShare(string User, double Volume);

/// <summary>
/// Compressed air of a cell, as free air at ambient pressure (isothermal). A cylinder's chamber fills from nothing, so it takes its stroke's volume times
/// (p + p₀)/p₀; hoses already hold ambient air and take p/p₀ of theirs. An ejector runs from the begin of the pick to the middle of the place, of the cycle
/// that keeps it on longest; a blow-off for the time it states.
/// </summary>
/// <param name="Shares">By user, in their order.</param>
public sealed record AirUse(ImmutableArray<AirShare> Shares)
{
    public const string At = "/pneumatics";

    /// <summary>m³ of free air in a cycle; not a number while a user is not described.</summary>
    public double PerCycle => Shares.Sum(s => s.Volume);

    public static AirUse Of(Cell cell, ImmutableArray<TimedCycle> cycles, Reading reading)
    {
        reading.Used(At + "/users", string.Join('\n', cell.Pneumatics.Users.Keys));
        reading.Used(At + "/hoses", string.Join('\n', cell.Pneumatics.Hoses.Keys));
        double vacuumOn = double.NaN;
        if (cell.Pneumatics.Users.Values.Any(u => u.Kind == AirUserKind.Ejector))
        {
            foreach (var cycle in cycles)
            {
                reading.Used(cycle.Reading());
                if (cycle.ByController is { Controller.Found: true } timed)
                    vacuumOn = Math.Max(double.IsNaN(vacuumOn) ? 0 : vacuumOn, timed.Input.Plan.Pick.Duration + timed.Controller.Loaded.Duration + timed.Input.Plan.Place.Duration / 2);
            }
            reading.Used("/motion/cycles", string.Join('\n', cell.Motion.Cycles.Keys));
            if (double.IsNaN(vacuumOn)) reading.Missing("/motion/cycles");
        }

        return new([.. cell.Pneumatics.Users.InOrder().Select(u => new AirShare(u.Key, Volume(cell, u.Key, u.Value, vacuumOn, reading)))]);
    }

    private static double Volume(Cell cell, string id, AirUser user, double vacuumOn, Reading reading)
    {
        string at = $"{At}/users/{id}";
        reading.Used(at + "/order", user.Order);
        switch (reading.Need(user.Kind, at + "/kind", AirUserKind.Cylinder))
        {
            case AirUserKind.Ejector:
                return reading.Need(user.Flow, at + "/flow") * vacuumOn;
            case AirUserKind.BlowOff:
                return reading.Need(user.Flow, at + "/flow") * reading.Need(user.OnTime, at + "/onTime");
            default:
                double p = reading.Need(user.Pressure, at + "/pressure"), bore = reading.Need(user.Bore, at + "/bore");
                double rod = reading.Or(user.RodDiameter, at + "/rodDiameter", 0), stroke = reading.Need(user.Stroke, at + "/stroke");
                bool spring = reading.Or(user.SpringReturn, at + "/springReturn", false);
                double areas = Math.PI / 4 * (bore * bore + (spring ? 0 : bore * bore - rod * rod)), hoses = 0;
                foreach (var (hoseId, hose) in cell.Pneumatics.Hoses)
                {
                    string hoseAt = $"{At}/hoses/{hoseId}";
                    reading.Used(hoseAt + "/user", hose.User);
                    if (hose.User != id) continue;
                    double d = reading.Need(hose.InnerDiameter, hoseAt + "/innerDiameter");
                    hoses += Math.PI / 4 * d * d * reading.Need(hose.Length, hoseAt + "/length");
                }
                double filled = areas * stroke * (p + GripInputs.Atmosphere) + hoses * p;
                return reading.Or(user.StrokesPerCycle, at + "/strokesPerCycle", 1) * filled / GripInputs.Atmosphere;
        }
    }
}

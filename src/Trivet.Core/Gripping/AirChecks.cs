using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;

namespace Trivet.Gripping;

/// <summary>Holds the use of compressed air against the supply.</summary>
public static class AirChecks
{
    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles)
    {
        var subject = new Subject(AirUse.At);
        if (cell.Pneumatics.Users.IsEmpty) return new([], [new(GripRules.AirFlow, subject, GripReasons.NoAir)], []);

        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (var (id, user) in cell.Pneumatics.Users.InOrder())
        {
            string at = $"{AirUse.At}/users/{id}";
            var own = new Reading();
            double asks = own.Or(user.Pressure, at + "/pressure", double.NaN), has = own.Or(cell.Pneumatics.SupplyPressure, AirUse.At + "/supplyPressure", double.NaN);
            if (!double.IsNaN(asks + has))
                findings.Add(new Judged(GripRules.AirPressure, new(at), own.Inputs, asks, Limit.AtMost(has, new(SourceKind.Cell, AirUse.At + "/supplyPressure")), Assurance.Exact));
        }

        var reading = new Reading();
        double air = AirUse.Of(cell, cycles, reading).PerCycle;
        double rate = reading.Need(cell.Brief.PeakRate, "/brief/peakRate"), supply = reading.Need(cell.Pneumatics.SupplyFlow, AirUse.At + "/supplyFlow");
        if (!reading.Complete) return new(findings.ToImmutable(), [new(GripRules.AirFlow, subject, GripReasons.WaitsFor.Naming(reading.MissingFields))], []);
        findings.Add(new Judged(
            GripRules.AirFlow, subject, reading.Inputs, air * rate, Limit.AtMost(supply, new(SourceKind.Cell, AirUse.At + "/supplyFlow")), Assurance.Estimated));
        return new(findings.ToImmutable(), [], []);
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Tooling;

namespace Trivet.Gripping;

/// <summary>Holds cups and fingers against what a cycle asks of them.</summary>
public static class GripChecks
{
    /// <summary>Standard uncertainty of a computed time until it was measured, as a share of it. Common practice, no source.</summary>
    private const double TimeUncertainty = 0.1;

    /// <summary>Whether the cups hold the part, and whether it is peeled off them.</summary>
    public static IEnumerable<Finding> Cups(Cell cell, TimedCycle cycle, CarriedMotion motion, CupHold hold, string part, Reading reading)
    {
        var subject = new Subject(CyclePlan.Pointer(cycle.Id));
        var body = ToolInputs.Carried(cell, part, new())!.Value;
        bool turns = cell.Robot.Rotary.Fitted == true;
        var (at, most) = Worst(motion, body, turns, (felt, up) => GripForces.OfCups(hold.Safety, body.Mass, felt, up, hold.Friction.Lower));
        double least = Worst(motion, body, turns, (felt, up) => GripForces.OfCups(hold.Safety, body.Mass, felt, up, hold.Friction.Upper)).Value;
        yield return new Judged(
            GripRules.VacuumForce, subject, reading.Inputs, least, Limit.AtMost(hold.Force, new(SourceKind.Cell, GripInputs.VacuumAt + "/level")), Assurance.Sampled)
        { Bound = most, Worst = at.Place, WorstTime = at.T };

        var fromLips = body.Centre - ToolInputs.Tcp(cell, new());
        var (peels, moment) = Worst(motion, body, turns, (felt, up) => GripForces.Peel(hold.Safety, body.Mass, felt, up, fromLips, hold.Lever));
        yield return new Judged(
            GripRules.Peel, subject, reading.Inputs, moment, Limit.AtMost(hold.Force * hold.Lever, new(SourceKind.Cell, GripInputs.VacuumAt + "/cupDiameter")), Assurance.Sampled)
        { Worst = peels.Place, WorstTime = peels.T };
    }

    public static Finding Fingers(Cell cell, TimedCycle cycle, CarriedMotion motion, FingerHold hold, string part, Reading reading)
    {
        var body = ToolInputs.Carried(cell, part, new())!.Value;
        bool turns = cell.Robot.Rotary.Fitted == true;
        var (at, most) = Worst(motion, body, turns, (felt, up) => GripForces.OfFinger(hold, body.Mass, felt, up, hold.Friction.Lower));
        double least = Worst(motion, body, turns, (felt, up) => GripForces.OfFinger(hold, body.Mass, felt, up, hold.Friction.Upper)).Value;
        return new Judged(
            GripRules.FingerForce, new(CyclePlan.Pointer(cycle.Id)), reading.Inputs, least,
            Limit.AtMost(hold.Force, new(SourceKind.Cell, GripInputs.FingersAt + "/force")), Assurance.Sampled)
        { Bound = most, Worst = at.Place, WorstTime = at.T };
    }

    /// <summary>A time of cups or fingers against the dwell that a cycle gives it.</summary>
    /// <param name="way">"vacuum" or "fingers".</param>
    public static Finding Time(Rule rule, string cycle, string way, double time, double dwell, string field, Reading reading) =>
        new Judged(rule, new(CyclePlan.Pointer(cycle), way), reading.Inputs, time, Limit.AtMost(dwell, new(SourceKind.Cell, field)), Assurance.Estimated)
        { Uncertainty = TimeUncertainty * time };

    public static Finding Level(CupFlow flow, Evacuation evacuation, Reading reading) =>
        new Judged(
            GripRules.VacuumLevel, new(GripInputs.VacuumAt), reading.Inputs, evacuation.Reached,
            Limit.AtLeast(flow.Level, new(SourceKind.Cell, GripInputs.VacuumAt + "/level")), Assurance.Estimated);

    private static (ToolInstant Instant, double Value) Worst(CarriedMotion motion, MassProperties body, bool turns, Func<Vec3, Vec3, double> force) =>
        motion.Worst(i => force(i.Felt(body.Centre, motion.Gravity_B, turns), motion.Up_B), partHeld: true);
}

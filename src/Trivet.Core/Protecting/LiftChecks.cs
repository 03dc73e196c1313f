using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;

namespace Trivet.Protecting;

/// <summary>
/// Lifts and what hangs. One person alone is judged by the lifting equation. What takes more than one person, goes above shoulder height or lies outside
/// the equation gets a lifting aid as the answer; how many people could lift it is never computed.
/// </summary>
public static class LiftChecks
{
    /// <summary>Shoulder height of small people with shoes. Common practice, no source.</summary>
    private const double UsualShoulder = 1.4;

    /// <summary>Once in five minutes, the least of the lifting equation, per second.</summary>
    private const double Rarely = 0.2 / 60;

    private const string At = "/handling";

    public static StagePlan Of(Cell cell)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        var byHand = new List<(LiftTask Lift, Reading Reading)>();
        foreach (var (id, lift) in cell.Handling.Lifts.InOrder()) Lift(cell, $"{At}/lifts/{id}", lift, byHand, findings, coverage);
        Together(cell, byHand, findings, coverage);
        if (cell.Handling.Lifts.IsEmpty) coverage.Add(new(ProtectRules.Lift, new(At), ProtectReasons.NoLifts));
        Hanging(cell.Handling.Hanging, findings, coverage);
        return new(findings.ToImmutable(), coverage.ToImmutable(), []);
    }

    private static void Lift(Cell cell, string at, Lift lift, List<(LiftTask, Reading)> byHand, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        var subject = new Subject(at);
        var reading = new Reading();
        double mass = reading.Need(lift.Mass, at + "/mass");
        double shoulder = reading.Or(cell.Handling.ShoulderHeight, At + "/shoulderHeight", UsualShoulder);
        LiftEnd from = new(reading.Need(lift.FromReach, at + "/fromReach"), reading.Need(lift.FromHeight, at + "/fromHeight"), reading.Or(lift.FromTurn, at + "/fromTurn", 0));
        LiftEnd to = new(reading.Need(lift.ToReach, at + "/toReach"), reading.Need(lift.ToHeight, at + "/toHeight"), reading.Or(lift.ToTurn, at + "/toTurn", 0));
        int people = reading.Or(lift.People, at + "/people", 1);
        reading.Used(at + "/aid", lift.Aid);
        bool aid = !string.IsNullOrWhiteSpace(lift.Aid), together = people > 1, high = from.Height > shoulder || to.Height > shoulder;

        if (mass <= 0) findings.Add(new Unjudged(ProtectRules.Described, new(at + "/mass"), reading.Inputs, OpenReason.Failed, [], ProtectReasons.NotPositive));
        else if (together || high || aid) Aid(lift, at, mass, aid, reading, findings, coverage);
        else if (!reading.Complete) findings.Add(new Unjudged(ProtectRules.Lift, subject, reading.Inputs, OpenReason.Missing, reading.MissingFields));
        else
        {
            double often = reading.Or(lift.Frequency, at + "/frequency", Rarely);
            var duration = reading.Or(lift.Duration, at + "/duration", LiftDuration.Short);
            reading.Used(at + "/coupling", lift.Coupling);
            if (lift.Coupling is not { } coupling)
            {
                findings.Add(new Unjudged(ProtectRules.Lift, subject, reading.Inputs, OpenReason.Missing, [at + "/coupling"]));
                return;
            }
            bool placed = reading.Or(lift.Controlled, at + "/controlled", true);
            double most = LiftingEquation.Recommended(from, to, from, often, duration, coupling);
            if (placed) most = Math.Min(most, LiftingEquation.Recommended(from, to, to, often, duration, coupling));
            // Outside the equation nobody should lift by hand at all.
            if (!(most > 0)) Aid(lift, at, mass, aid, reading, findings, coverage);
            else
            {
                findings.Add(new Judged(
                    ProtectRules.Lift, subject, reading.Inputs, mass / most, Limit.AtMost(1, new(SourceKind.Literature, "Waters1994", "lifting index")), Assurance.Exact));
                coverage.Add(new(ProtectRules.LiftAid, subject, ProtectReasons.OnePerson));
                byHand.Add((new(mass, most / LiftingEquation.Frequency(often, duration, from.Height), often, duration, from.Height), reading));
            }
        }
    }

    /// <summary>What one person lifts in a shift adds up; whether it is one person is not known, so it is taken as one.</summary>
    private static void Together(
        Cell cell, List<(LiftTask Lift, Reading Reading)> byHand, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        var subject = new Subject(At + "/lifts");
        if (byHand.Count < 2)
        {
            coverage.Add(new(ProtectRules.LiftsTogether, subject, ProtectReasons.OneLift));
            return;
        }
        var reading = new Reading();
        reading.Used(At + "/lifts", string.Join('\n', cell.Handling.Lifts.Keys));
        foreach (var (_, own) in byHand) reading.Used(own);
        // Too many together: far beyond any index that could be told.
        double index = Math.Min(LiftingEquation.Composite(byHand.Select(l => l.Lift)), 1000);
        findings.Add(new Judged(ProtectRules.LiftsTogether, subject, reading.Inputs, index, Limit.AtMost(1, new(SourceKind.Literature, "Waters1994", "lifting index")), Assurance.Exact));
    }

    private static void Aid(
        Lift lift, string at, double mass, bool aid, Reading reading, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        var subject = new Subject(at);
        coverage.Add(new(ProtectRules.Lift, subject, ProtectReasons.AidPlanned));
        reading.Used(at + "/aidCapacity", lift.AidCapacity);
        if (!aid) findings.Add(new YesNo(ProtectRules.LiftAid, subject, reading.Inputs, false, [at + "/aid"]));
        else if (lift.AidCapacity is not { } carries || double.IsNaN(mass))
            findings.Add(new Unjudged(ProtectRules.LiftAid, subject, reading.Inputs, OpenReason.Missing, double.IsNaN(mass) ? [at + "/mass"] : [at + "/aidCapacity"]));
        else findings.Add(new Judged(ProtectRules.LiftAid, subject, reading.Inputs, mass, Limit.AtMost(carries, new(SourceKind.Cell, at + "/aidCapacity")), Assurance.Exact));
    }

    /// <summary>Bolts not in one line, so that what hangs on them can not turn (common practice, no source).</summary>
    private const int LeastBolts = 3;

    /// <summary>
    /// Pull in the worst bolt: S·m·g·(1/n + e/b). The weight hangs evenly on n bolts; its distance e from their middle turns it about them, which one
    /// bolt at the smallest spacing b takes alone (statics, on the safe side).
    /// </summary>
    private static void Hanging(Hanging hanging, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        const string Own = At + "/hanging";
        var subject = new Subject(Own);
        var reading = new Reading();
        reading.Used(Own + "/bolts", hanging.Bolts);
        if (hanging is { Bolts: null, Mass: null })
        {
            reading.Used(Own + "/mass", null);
            coverage.Add(new(ProtectRules.Bolts, subject, ProtectReasons.NoHanging));
            return;
        }

        int bolts = reading.Need(hanging.Bolts, Own + "/bolts", 1);
        double mass = reading.Need(hanging.Mass, Own + "/mass"), offset = reading.Or(hanging.Offset, Own + "/offset", 0), safety = reading.Need(hanging.Safety, Own + "/safety");
        double spacing = offset > 0 ? reading.Need(hanging.BoltSpacing, Own + "/boltSpacing") : reading.Or(hanging.BoltSpacing, Own + "/boltSpacing", 1);
        double most = reading.Need(hanging.LargestBoltForce, Own + "/largestBoltForce");
        reading.Used(Own + "/boltForceSource", hanging.BoltForceSource);
        if (string.IsNullOrWhiteSpace(hanging.BoltForceSource)) reading.Missing(Own + "/boltForceSource");
        if (!reading.Complete) findings.Add(new Unjudged(ProtectRules.Bolts, subject, reading.Inputs, OpenReason.Missing, reading.MissingFields));
        else if (bolts < 1 || mass <= 0 || offset < 0 || safety < 1 || spacing <= 0 || most <= 0)
            findings.Add(new Unjudged(ProtectRules.Described, subject, reading.Inputs, OpenReason.Failed, [], ProtectReasons.NotPositive));
        else if (bolts < LeastBolts)
        {
            // On fewer it turns about its bolts, whatever one of them bears.
            findings.Add(new YesNo(ProtectRules.Bolts, subject, reading.Inputs, false, [Own + "/bolts"]) { Advice = [new(Own + "/bolts", bolts, LeastBolts, double.NaN)] });
        }
        else
        {
            // A balance without prying and without the give of what it hangs on: an estimate, so never more than tight.
            findings.Add(new Judged(
                ProtectRules.Bolts, subject, reading.Inputs, safety * mass * RobotDynamics.StandardGravity * (1.0 / bolts + offset / spacing),
                Limit.AtMost(most, new(SourceKind.Cell, Own + "/largestBoltForce")), Assurance.Estimated));
        }
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Stopping;

/// <summary>What the hazard register has to say, and what is not in it.</summary>
public static class HazardStage
{
    public const string At = "/hazards";

    public static StagePlan Of(Cell cell)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        bool asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;
        var reading = new Reading();
        reading.Used("/depth", cell.Depth);
        var proposals = ProposedHazards.Of(cell, reading);
        if (!asked) coverage.Add(new(HazardRules.Registered, new(At), CommonReasons.NotAskedYet));
        else
            foreach (var p in proposals)
            {
                var subject = new Subject(At, p.Id);
                findings.Add(p.Entry is { } entry
                    ? new YesNo(HazardRules.Registered, subject, reading.Inputs, true, [$"{At}/{entry}"])
                    : new Unjudged(HazardRules.Registered, subject, reading.Inputs, OpenReason.NotProved, [], p.Why));
            }
        foreach (var (id, hazard) in cell.Hazards.InOrder())
        {
            foreach (var finding in Entry(cell, hazard, $"{At}/{id}"))
            {
                if (finding is Unjudged && !asked) coverage.Add(new(finding.Rule, finding.Subject, CommonReasons.NotAskedYet));
                else findings.Add(finding);
            }
            if (hazard.Proposed is { } proposed && proposals.All(p => p.Id != proposed))
                findings.Add(new Unjudged(HazardRules.Described, new($"{At}/{id}/proposed"), reading.Inputs, OpenReason.Failed, [], HazardReasons.NoSuchProposal));
        }
        return new(findings.ToImmutable(), coverage.ToImmutable(), []);
    }

    private static IEnumerable<Finding> Entry(Cell cell, Hazard hazard, string at)
    {
        var subject = new Subject(at);
        var described = new Reading();
        described.Used("/depth", cell.Depth);
        Text(described, hazard.Name, at + "/name");
        described.Need(hazard.Kind, at + "/kind", HazardKind.Other);
        described.Need(hazard.Phase, at + "/phase", LifePhase.Operation);
        Text(described, hazard.Who, at + "/who");
        Text(described, hazard.Owner, at + "/owner");
        var risks = new Reading();
        var before = Estimate(hazard.Before, at + "/before", risks);
        var after = Estimate(hazard.After, at + "/after", risks);
        described.Include(risks);
        if (!described.Complete) yield return new Unjudged(HazardRules.Described, subject, described.Inputs, OpenReason.Missing, described.MissingFields);

        var measures = hazard.Measures.InOrder().ToArray();
        var reading = new Reading();
        reading.Used("/depth", cell.Depth);
        reading.Used(at + "/measures", string.Join('\n', hazard.Measures.Keys));
        if (measures.Length == 0)
        {
            yield return new YesNo(HazardRules.Measure, subject, [.. reading.Inputs], false, [at + "/measures"]);
        }
        else
        {
            foreach (var (id, measure) in measures)
            {
                Text(reading, measure.Name, $"{at}/measures/{id}/name");
                reading.Need(measure.Step, $"{at}/measures/{id}/step", MeasureStep.InformationForUse);
            }
            yield return reading.Complete
                ? new YesNo(HazardRules.Measure, subject, reading.Inputs, true, [at + "/measures"])
                : new Unjudged(HazardRules.Measure, subject, reading.Inputs, OpenReason.Missing, reading.MissingFields);
            if (reading.Complete)
            {
                reading.Used(at + "/onlyInformation", hazard.OnlyInformation);
                bool better = measures.Any(m => m.Value.Step != MeasureStep.InformationForUse);
                yield return new YesNo(
                    HazardRules.Order, subject, reading.Inputs, better || !string.IsNullOrWhiteSpace(hazard.OnlyInformation),
                    better ? [.. hazard.Measures.Where(m => m.Value.Step != MeasureStep.InformationForUse).Select(m => $"{at}/measures/{m.Key}")] : [at + "/onlyInformation"]);
            }
        }
        foreach (var (id, measure) in measures)
            if (measure.Function is { } function)
                yield return new YesNo(
                    HazardRules.Function, new($"{at}/measures/{id}"), [.. new[] { $"{at}/measures/{id}/function", StopInputs.FunctionsAt }.Order(StringComparer.Ordinal)],
                    cell.Stopping.Functions.ContainsKey(function), [$"{at}/measures/{id}/function"]);

        // Equal only where nothing could be lower: the graph's lowest level asks for least, and the three estimates may not rise.
        if (before is { } was && after is { } remains)
            yield return new YesNo(HazardRules.Reduced, subject, risks.Inputs, Lower(hazard.Before, hazard.After) && (remains < was || was == PerformanceLevel.A), [at + "/before", at + "/after"]);

        var proof = new Reading();
        proof.Used("/depth", cell.Depth);
        proof.Used(at + "/proofs", string.Join('\n', hazard.Proofs.Keys));
        foreach (var (id, p) in hazard.Proofs)
        {
            foreach (var (field, text) in new[] { ("document", p.Document), ("rule", p.Rule), ("step", p.Step) }) proof.Used($"{at}/proofs/{id}/{field}", text);
            if (new[] { p.Document, p.Rule, p.Step }.All(string.IsNullOrWhiteSpace)) proof.Missing($"{at}/proofs/{id}/document");
        }
        if (hazard.Proofs.IsEmpty) proof.Missing(at + "/proofs");
        yield return proof.Complete
            ? new YesNo(HazardRules.Proof, subject, proof.Inputs, true, [.. hazard.Proofs.Keys.Select(k => $"{at}/proofs/{k}")])
            : new Unjudged(HazardRules.Proof, subject, proof.Inputs, OpenReason.Missing, proof.MissingFields);
    }

    private static bool Lower(RiskEstimate before, RiskEstimate after) =>
        after.Severity <= before.Severity && after.Exposure <= before.Exposure && after.Avoidance <= before.Avoidance;

    private static PerformanceLevel? Estimate(RiskEstimate risk, string at, Reading reading)
    {
        reading.Need(risk.Severity, at + "/severity", RiskSeverity.S1);
        reading.Need(risk.Exposure, at + "/exposure", RiskExposure.F1);
        reading.Need(risk.Avoidance, at + "/avoidance", RiskAvoidance.P1);
        return RiskGraph.Required(risk);
    }

    private static void Text(Reading reading, string? text, string pointer)
    {
        reading.Used(pointer, text);
        if (string.IsNullOrWhiteSpace(text)) reading.Missing(pointer);
    }
}

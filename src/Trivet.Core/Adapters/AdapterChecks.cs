using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Adapters;

/// <summary>Holds adapter plates against what shop, screws and keys ask.</summary>
public static class AdapterChecks
{
    public static StagePlan Of(Cell cell, FoundPlates plates)
    {
        if (cell.Plates.IsEmpty) return new([], [new(AdapterRules.Described, new("/plates"), AdapterReasons.NoPlates)], []);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        var tasks = ImmutableArray.CreateBuilder<StageTask>();
        foreach (var (id, _) in cell.Plates.InOrder())
        {
            var subject = new Subject(AdapterInput.Pointer(id));
            var reading = new Reading();
            var wrong = new List<Contradiction>();
            bool asked = reading.Or(cell.Depth, "/depth", Depth.Quote) >= Depth.Build;
            var input = AdapterInput.Read(cell, id, reading, wrong);
            foreach (var problem in wrong) findings.Add(new Unjudged(AdapterRules.Described, new(problem.Pointer), reading.Inputs, OpenReason.Failed, [], problem.Reason));
            if (input is null)
            {
                if (wrong.Count > 0) continue;
                if (asked) findings.Add(new Unjudged(AdapterRules.Described, subject, reading.Inputs, OpenReason.Missing, reading.MissingFields));
                else coverage.Add(new(AdapterRules.Described, subject, CommonReasons.NotAskedYet));
                continue;
            }
            tasks.Add(new($"adapter:{id}", reading.Key, () => Judge(input, plates, subject, reading.Inputs), _ => Judge(input, plates, subject, reading.Inputs)));
        }
        return new(findings.ToImmutable(), coverage.ToImmutable(), tasks.ToImmutable());
    }

    /// <summary>The plates that were found best; where none works, the one that comes closest shows what it lacks.</summary>
    private static ImmutableArray<Finding> Judge(AdapterInput input, FoundPlates found, Subject subject, ImmutableArray<string> inputs)
    {
        var result = found.Of(input);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        if (input.Pieces == 2 && result.Stack.IsEmpty) findings.Add(new Unjudged(AdapterRules.Described, subject, inputs, OpenReason.Failed, [], AdapterReasons.NoStack));
        var plates = !result.Chosen.IsEmpty ? result.Chosen : result.Closest is { } closest ? [closest] : [];
        for (int i = 0; i < plates.Length; i++)
        {
            string piece = plates.Length == 1 ? "" : i == 0 ? "upper" : "lower";
            foreach (var m in plates[i].Measures)
            {
                var here = subject with { Case = string.Join(' ', new[] { piece, m.Case }.Where(c => c.Length > 0)) };
                findings.Add(new Judged(m.Rule, here, inputs, m.Value, Limit.AtLeast(m.Limit, SourceOf(m.Rule, subject.Pointer)), Assurance.Exact));
            }
            if (plates[i].Measures.All(m => m.Rule != AdapterRules.Key)) findings.Add(new YesNo(AdapterRules.Key, subject with { Case = piece }, inputs, true, []));
        }
        return findings.ToImmutable();
    }

    private static Source SourceOf(Rule rule, string at) => rule.Id switch
    {
        "adapter.wall" => new(SourceKind.Cell, at + "/wall"),
        "adapter.edge" => new(SourceKind.Cell, at + "/edge"),
        "adapter.floor" => new(SourceKind.Cell, at + "/floor"),
        "adapter.key" => new(SourceKind.Cell, at + "/keyRoom"),
        _ => new(SourceKind.CommonPractice, ""),
    };
}

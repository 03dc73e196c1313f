using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;

namespace Trivet.Procedures;

/// <summary>What the procedure has to say of a cell: what it needs and is not told, and which single faults would slip through it.</summary>
public static class ProcedureStage
{
    /// <summary>Every number that a step needs is stated.</summary>
    public static Rule Planned { get; } = new(
        "bringup.planned", "What the steps of bring-up need is stated", Trade.BringUp, "1", Sense.AtLeast, 0, new(SourceKind.CommonPractice, "", "a step without its number is a tick"));

    public static ImmutableArray<Rule> Rules { get; } = [Planned, .. CoverageChecks.Rules];

    /// <param name="last">What was found last: an edit's preview shows it, since the whole procedure takes longer than an edit may. Null before the first proof.</param>
    /// <param name="found">Takes what is found.</param>
    public static StagePlan Of(Cell cell, ImmutableArray<Finding>? last, Action<ImmutableArray<Finding>> found)
    {
        // Before the depth that is built from, nobody brings up anything.
        if ((cell.Depth ?? Depth.Quote) < Depth.Build) return new([], [.. Rules.Select(r => new NotApplicable(r, new("/robot"), CommonReasons.NotAskedYet))], []);
        return new([], [], [new("procedure", [new("", cell)], () => last ?? [.. Rules.Select(r => new Unjudged(r, new("/robot"), ["/depth", "/robot"], OpenReason.NotComputed, []))], _ =>
        {
            var findings = Check(cell);
            found(findings);
            return findings;
        })]);
    }

    /// <summary>All that is found, of a cell that is to be built.</summary>
    public static ImmutableArray<Finding> Check(Cell cell)
    {
        // Whether a joint can be calculated is told by the joints themselves.
        var procedure = Procedure.Of(cell, [.. cell.Joints.Keys.Select(j => new JointTorque(j, double.NaN, 0, 0, []))]);
        var reading = new Reading();
        reading.Used("/depth", cell.Depth);
        var cases = FaultCases.Of(cell, reading);
        foreach (string input in procedure.Inputs) reading.Used(input, null);
        var by = procedure.Steps.ToDictionary(s => s.Id, StringComparer.Ordinal);
        return
        [
            .. procedure.Gaps.GroupBy(g => by[g.Step].Subject.Pointer, StringComparer.Ordinal).Select(g => new Unjudged(
                Planned, new(g.Key), [.. g.SelectMany(x => by[x.Step].Inputs).Append("/depth").Distinct().Order(StringComparer.Ordinal)], OpenReason.Missing,
                [.. g.SelectMany(x => x.Fields).Distinct().Order(StringComparer.Ordinal)])),
            .. CoverageChecks.Of(Coverage.Of(procedure.Steps, cases), reading.Inputs),
        ];
    }
}

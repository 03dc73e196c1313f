using System.Collections.Immutable;

namespace Trivet.Findings;

/// <summary>One piece of work that can be done apart from the others and remembered under what it used.</summary>
/// <param name="Name">Rule and subject.</param>
/// <param name="Used">Every field it was read from, with its value.</param>
/// <param name="Sample">The fast answer.</param>
/// <param name="Prove">The full answer.</param>
public sealed record StageTask(
    string Name, ImmutableArray<KeyValuePair<string, object?>> Used,
    Func<ImmutableArray<Finding>> Sample, Func<CancellationToken, ImmutableArray<Finding>> Prove);

/// <summary>What a stage of the assessment has to say of a cell: what is known without work, and the tasks that remain.</summary>
public sealed record StagePlan(ImmutableArray<Finding> Findings, ImmutableArray<NotApplicable> Coverage, ImmutableArray<StageTask> Tasks)
{
    public static StagePlan operator +(StagePlan a, StagePlan b) =>
        new(a.Findings.AddRange(b.Findings), a.Coverage.AddRange(b.Coverage), a.Tasks.AddRange(b.Tasks));
}

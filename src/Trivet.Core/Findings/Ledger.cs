using System.Collections.Immutable;

namespace Trivet.Findings;

/// <summary>A rule that does not apply to a subject, and why: silence must be distinguishable from success.</summary>
public sealed record NotApplicable(Rule Rule, Subject Subject, Reason Reason);

/// <summary>All findings of a cell, verdict first, then worst margin; with a coverage list of what does not apply and why.</summary>
public sealed record Ledger(ImmutableArray<Finding> Findings, ImmutableArray<NotApplicable> Coverage)
{
    public static Ledger Empty { get; } = new([], []);

    /// <summary>Puts findings in the order of the ledger. Ties fall back on the id, so the same cell always reads the same.</summary>
    public static Ledger Of(IEnumerable<Finding> findings, IEnumerable<NotApplicable> coverage) => new(
        [.. findings.OrderBy(f => f.Verdict).ThenBy(f => double.IsNaN(f.Margin) ? double.NegativeInfinity : f.Margin).ThenBy(f => f.Id, StringComparer.Ordinal)],
        [.. coverage.OrderBy(c => c.Rule.Id, StringComparer.Ordinal).ThenBy(c => c.Subject.Pointer, StringComparer.Ordinal)]);

    public int Count(Verdict verdict) => Findings.Count(f => f.Verdict == verdict);

    /// <summary>True when nothing falls short and nothing is open: the command line then ends with 0.</summary>
    public bool AllHold => Findings.All(f => f.Verdict is Verdict.Tight or Verdict.Holds);

    /// <summary>The smallest margin of the judged findings; not a number when there is none.</summary>
    public double WorstMargin => Findings.Where(f => !double.IsNaN(f.Margin)).Select(f => f.Margin).DefaultIfEmpty(double.NaN).Min();
}

using System.Collections.Immutable;
using Trivet.Faults;
using Trivet.Findings;

namespace Trivet.Procedures;

/// <summary>Holds what a procedure would notice against what it should. Odds are rough, so nothing here is more than an estimate.</summary>
public static class CoverageChecks
{
    /// <summary>Each single fault is more likely noticed than not.</summary>
    public static Rule Noticed { get; } = new(
        "bringup.fault-noticed", "The procedure notices each single fault", Trade.BringUp, "1", Sense.AtLeast, 0.2, new(SourceKind.CommonPractice, "", "rough odds of the trade"));

    /// <summary>A fault that can do harm is more likely noticed than not before the first step in which it can. People rely on it, so it never says more than tight.</summary>
    public static Rule BeforeHarm { get; } = new(
        "bringup.fault-before-harm", "A fault that can do harm is noticed before it can", Trade.BringUp, "1", Sense.AtLeast, double.PositiveInfinity,
        new(SourceKind.CommonPractice, "", "rough odds of the trade"));

    public static ImmutableArray<Rule> Rules { get; } = [Noticed, BeforeHarm];

    /// <summary>One finding for each kind of fault that slips through, at the place where it does so most; where none does, one for the kind that comes nearest to it.</summary>
    public static IEnumerable<Finding> Of(Coverage coverage, ImmutableArray<string> inputs)
    {
        return Worst(Noticed, n => n.Probability, coverage.Faults).Concat(Worst(BeforeHarm, n => n.BeforeHarm, coverage.Faults.Where(f => f.Case.Fault.HarmfulFrom is not null)));

        IEnumerable<Finding> Worst(Rule rule, Func<Noticed, double> value, IEnumerable<Noticed> of)
        {
            Judged[] kinds = [.. of.GroupBy(n => n.Case.Fault).Select(g => g.MinBy(value)!).OrderBy(value).ThenBy(n => n.Case.Fault.Number)
                .Select(n => new Judged(rule, SubjectOf(n.Case), inputs, value(n), Limit.AtLeast(Coverage.Enough, new(SourceKind.CommonPractice, "", "more likely than not")), Assurance.Estimated))];
            return kinds.TakeWhile((k, i) => i == 0 || k.Verdict == Verdict.FallsShort);
        }
    }

    private static Subject SubjectOf(FaultCase fault) => new(
        !fault.Parts.IsEmpty ? fault.Parts[0] : fault.Fault.Scope switch
        {
            FaultScope.Frame => "/frame",
            FaultScope.Tool => "/tool",
            FaultScope.Cabinet => "/cabinet",
            _ => "/robot",
        },
        fault.Fault.Id);
}

using System.Collections.Immutable;
using Trivet.Faults;
using Trivet.Findings;
using Trivet.Procedures;
using Xunit;

namespace Trivet.Core.Tests.Procedures;

public sealed class CoverageChecksTests
{
    private static Noticed Case(string fault, double probability, double beforeHarm) =>
        new(new(FaultCatalogue.All.Single(f => f.Id == fault), [], []), "", probability >= Coverage.Enough ? EnergyLevel.Isolated : null, probability, beforeHarm);

    private static Judged[] Of(Rule rule, params ImmutableArray<Noticed> noticed) =>
        [.. CoverageChecks.Of(new(noticed), ["/robot"]).OfType<Judged>().Where(f => f.Rule == rule)];

    [Fact]
    public void Every_kind_of_fault_that_slips_through_is_a_finding()
    {
        var findings = Of(CoverageChecks.Noticed, Case("out-of-level", 0.3, 1), Case("base-turned", 0, 0), Case("not-square", 0.9, 1));
        Assert.Equal(["base-turned", "out-of-level"], findings.Select(f => f.Subject.Case));
        Assert.All(findings, f => Assert.Equal(Verdict.FallsShort, f.Verdict));
        Assert.Equal("/frame", findings[1].Subject.Pointer);
    }

    [Fact]
    public void Where_none_does_the_one_that_comes_nearest_is_told()
    {
        var finding = Assert.Single(Of(CoverageChecks.Noticed, Case("out-of-level", 0.97, 1), Case("not-square", 0.8, 1)));
        Assert.Equal(("not-square", Verdict.Holds), (finding.Subject.Case, finding.Verdict));
    }

    [Fact]
    public void What_people_rely_on_is_at_best_tight_and_only_harmful_faults_are_asked()
    {
        var finding = Assert.Single(Of(CoverageChecks.BeforeHarm, Case("out-of-level", 0.97, 1), Case("control-supply-reversed", 0.99, 0.98)));
        Assert.Equal(("control-supply-reversed", Verdict.Tight), (finding.Subject.Case, finding.Verdict));
        Assert.Equal(Verdict.FallsShort, Assert.Single(Of(CoverageChecks.BeforeHarm, Case("control-supply-reversed", 0.99, 0.2))).Verdict);
    }
}

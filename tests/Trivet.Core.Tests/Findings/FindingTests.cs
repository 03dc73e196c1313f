using System.Collections.Immutable;
using Trivet.Findings;
using Xunit;

namespace Trivet.Core.Tests.Findings;

/// <summary>Margins and verdicts against numbers worked out by hand from their definitions.</summary>
public sealed class FindingTests
{
    private static readonly Source Nowhere = new(SourceKind.CommonPractice, "");

    private static Rule Rule(Sense sense, double comfort = 0.1, double? scale = null, bool needsProof = false) =>
        new("test.rule", "A rule", Trade.Reach, "m", sense, comfort, Nowhere, scale, needsProof);

    private static Judged Judge(Rule rule, double value, Limit limit, Assurance assurance = Assurance.Exact) =>
        new(rule, new("/part"), [], value, limit, assurance);

    [Theory]
    [InlineData(8, 10, 0.2)]
    [InlineData(10, 10, 0)]
    [InlineData(12, 10, -0.2)]
    public void Margin_of_at_most_is_one_less_the_value_over_the_limit(double value, double limit, double margin) =>
        Assert.Equal(margin, Judge(Rule(Sense.AtMost), value, Limit.AtMost(limit, Nowhere)).Margin, 12);

    [Theory]
    [InlineData(12, 10, 0.2)]
    [InlineData(8, 10, -0.2)]
    public void Margin_of_at_least_is_the_value_over_the_limit_less_one(double value, double limit, double margin) =>
        Assert.Equal(margin, Judge(Rule(Sense.AtLeast), value, Limit.AtLeast(limit, Nowhere)).Margin, 12);

    [Theory]
    [InlineData(0.5, 1)]
    [InlineData(0.1, 0.2)]
    [InlineData(0.9, 0.2)]
    [InlineData(-0.1, -0.2)]
    public void Margin_within_is_the_distance_to_the_nearer_edge_over_half_the_width(double value, double margin) =>
        Assert.Equal(margin, Judge(Rule(Sense.Within), value, Limit.Between(0, 1, Nowhere)).Margin, 12);

    [Fact]
    public void A_scale_serves_a_limit_of_zero()
    {
        Assert.Equal(0.5, Judge(Rule(Sense.AtLeast, scale: 0.02), 0.01, Limit.AtLeast(0, Nowhere)).Margin, 12);
        Assert.Equal(Verdict.Open, Judge(Rule(Sense.AtLeast), 0.01, Limit.AtLeast(0, Nowhere)).Verdict);
    }

    [Theory]
    [InlineData(8.9, Verdict.Holds)]
    [InlineData(9.1, Verdict.Tight)]
    [InlineData(10, Verdict.Tight)]
    [InlineData(10.1, Verdict.FallsShort)]
    public void The_comfort_band_makes_a_finding_tight(double value, Verdict verdict) =>
        Assert.Equal(verdict, Judge(Rule(Sense.AtMost), value, Limit.AtMost(10, Nowhere)).Verdict);

    [Theory]
    [InlineData(0.9, Verdict.Holds)]
    [InlineData(1.1, Verdict.Tight)]
    public void Two_standard_uncertainties_are_kept_clear(double uncertainty, Verdict verdict) =>
        Assert.Equal(verdict, (Judge(Rule(Sense.AtMost), 8, Limit.AtMost(10, Nowhere)) with { Uncertainty = uncertainty }).Verdict);

    [Fact]
    public void Not_a_number_never_passes()
    {
        foreach (var sense in Enum.GetValues<Sense>())
        {
            var limit = Limit.Between(1, 2, Nowhere);
            var good = Judge(Rule(sense, 0), 1.5, limit);
            Assert.Equal(Verdict.Holds, good.Verdict);
            Judged[] spoilt =
            [
                Judge(Rule(sense, 0), double.NaN, limit), good with { Bound = double.NaN }, good with { Uncertainty = double.NaN }, good with { Uncertainty = -1 },
                Judge(Rule(sense, 0), 1.5, new(double.NaN, double.NaN, Nowhere)), Judge(Rule(sense, 0), double.PositiveInfinity, limit), Judge(Rule(sense, 0), double.NegativeInfinity, limit),
            ];
            Assert.All(spoilt, f => Assert.Equal((Verdict.Open, OpenReason.Failed), (f.Verdict, f.OpenBecause)));
        }
    }

    [Fact]
    public void A_comfort_band_that_is_not_a_number_does_not_hide_a_violation() =>
        Assert.Equal(Verdict.FallsShort, Judge(Rule(Sense.AtMost, double.NaN), 11, Limit.AtMost(10, Nowhere)).Verdict);

    [Theory]
    [InlineData(Assurance.Exact, Verdict.Holds)]
    [InlineData(Assurance.Proved, Verdict.Holds)]
    [InlineData(Assurance.Sampled, Verdict.Open)]
    [InlineData(Assurance.Estimated, Verdict.Open)]
    public void A_rule_that_needs_proof_never_holds_on_samples(Assurance assurance, Verdict verdict)
    {
        Assert.Equal(verdict, Judge(Rule(Sense.AtMost, needsProof: true), 1, Limit.AtMost(10, Nowhere), assurance).Verdict);
        Assert.Equal(Verdict.Holds, Judge(Rule(Sense.AtMost), 1, Limit.AtMost(10, Nowhere), assurance).Verdict);
        Assert.Equal(Verdict.FallsShort, Judge(Rule(Sense.AtMost, needsProof: true), 11, Limit.AtMost(10, Nowhere), assurance).Verdict);
    }

    [Fact]
    public void A_bound_beyond_the_limit_leaves_the_finding_open()
    {
        var finding = Judge(Rule(Sense.AtMost), 8, Limit.AtMost(10, Nowhere), Assurance.Proved) with { Bound = 11 };
        Assert.Equal((Verdict.Open, OpenReason.NotProved), (finding.Verdict, finding.OpenBecause));
        Assert.Equal(-0.1, finding.Margin, 12);
        Assert.Equal(0.2, finding.MarginAttained, 12);
    }

    [Fact]
    public void An_infinite_bound_leaves_the_finding_open() =>
        Assert.Equal(Verdict.Open, (Judge(Rule(Sense.AtMost), 8, Limit.AtMost(10, Nowhere), Assurance.Proved) with { Bound = double.PositiveInfinity }).Verdict);

    [Fact]
    public void A_bound_on_the_wrong_side_of_the_value_gains_nothing() =>
        Assert.Equal(0.2, (Judge(Rule(Sense.AtMost), 8, Limit.AtMost(10, Nowhere), Assurance.Proved) with { Bound = 5 }).Margin, 12);

    /// <summary>A rule whose comfort band nothing exceeds leaves the last word to a person, also where it asks yes or no.</summary>
    [Theory]
    [InlineData(0.1, true, Verdict.Holds)]
    [InlineData(double.PositiveInfinity, true, Verdict.Tight)]
    [InlineData(double.PositiveInfinity, false, Verdict.FallsShort)]
    public void A_passed_check_of_a_rule_that_never_holds_is_tight(double comfort, bool good, Verdict verdict) =>
        Assert.Equal(verdict, new YesNo(Rule(Sense.AtLeast, comfort), new("/part"), [], good, []).Verdict);

    [Fact]
    public void A_ledger_puts_what_needs_an_engineer_first()
    {
        var rule = Rule(Sense.AtMost);
        Finding Of(string part, double value) => new Judged(rule, new(part), [], value, Limit.AtMost(10, Nowhere), Assurance.Exact);
        Finding open = new Unjudged(rule, new("/open"), [], OpenReason.Missing, ["/open/field"]);
        Finding yes = new YesNo(rule, new("/yes"), [], true, []), no = new YesNo(rule, new("/no"), [], false, ["/no/field"]);

        var ledger = Ledger.Of([Of("/good", 1), Of("/better", 0.5), Of("/tight", 9.5), open, Of("/bad", 11), Of("/worse", 12), yes, no], []);
        string[] expected = ["/no", "/worse", "/bad", "/open", "/tight", "/yes", "/good", "/better"];
        Assert.Equal(expected, ledger.Findings.Select(f => f.Subject.Pointer));
        Assert.Equal(-0.2, ledger.WorstMargin, 12);
        Assert.False(ledger.AllHold);
    }

    [Fact]
    public void The_same_findings_in_another_order_read_the_same()
    {
        var rule = Rule(Sense.AtMost);
        ImmutableArray<Finding> findings =
            [.. Enumerable.Range(0, 6).Select(i => new Judged(rule, new("/part", $"{i}"), [], i / 2, Limit.AtMost(10, Nowhere), Assurance.Exact))];
        Assert.Equal(Ledger.Of(findings, []).Findings.Select(f => f.Id), Ledger.Of(findings.Reverse(), []).Findings.Select(f => f.Id));
    }

    [Fact]
    public void A_cell_holds_only_when_nothing_is_open()
    {
        var rule = Rule(Sense.AtMost);
        Finding good = new Judged(rule, new("/a"), [], 1, Limit.AtMost(10, Nowhere), Assurance.Exact);
        Assert.True(Ledger.Of([good], []).AllHold);
        Assert.False(Ledger.Of([good, new Unjudged(rule, new("/b"), [], OpenReason.NotComputed, [])], []).AllHold);
        Assert.True(double.IsNaN(Ledger.Empty.WorstMargin));
    }
}

using CsCheck;
using Trivet.Cells;
using Trivet.Stopping;
using Xunit;

namespace Trivet.Core.Tests.Stopping;

public sealed class RiskGraphTests
{
    /// <summary>All eight ways of the graph (ISO 13849-1, annex A, from memory; published-values S24).</summary>
    [Theory]
    [InlineData("S1 F1 P1", 'a')]
    [InlineData("S1 F1 P2", 'b')]
    [InlineData("S1 F2 P1", 'b')]
    [InlineData("S1 F2 P2", 'c')]
    [InlineData("S2 F1 P1", 'c')]
    [InlineData("S2 F1 P2", 'd')]
    [InlineData("S2 F2 P1", 'd')]
    [InlineData("S2 F2 P2", 'e')]
    public void A_way_through_the_graph_ends_at_its_level(string way, char level)
    {
        string[] w = way.Split(' ');
        var found = RiskGraph.Required(Enum.Parse<RiskSeverity>(w[0]), Enum.Parse<RiskExposure>(w[1]), Enum.Parse<RiskAvoidance>(w[2]));
        Assert.Equal(level, char.ToLowerInvariant(found.ToString()[0]));
    }

    [Fact]
    public void A_graver_estimate_never_asks_for_less()
    {
        var gen = Gen.Select(Gen.Int[0, 1], Gen.Int[0, 1], Gen.Int[0, 1], Gen.Int[0, 1], Gen.Int[0, 1], Gen.Int[0, 1]);
        gen.Sample((s, f, p, ds, df, dp) => Of(s, f, p) <= Of(Math.Max(s, ds), Math.Max(f, df), Math.Max(p, dp)), seed: "0N0XIzNsQ0O2");

        static PerformanceLevel Of(int s, int f, int p) => RiskGraph.Required((RiskSeverity)s, (RiskExposure)f, (RiskAvoidance)p);
    }

    [Fact]
    public void An_estimate_that_is_not_whole_asks_for_nothing_yet() =>
        Assert.Null(RiskGraph.Required(new RiskEstimate { Severity = RiskSeverity.S2, Avoidance = RiskAvoidance.P2 }));

    /// <summary>Bands of PFHd in 1/h (ISO 13849-1, from memory; published-values S25). They join without a gap.</summary>
    [Theory]
    [InlineData(PerformanceLevel.A, 1e-5, 1e-4)]
    [InlineData(PerformanceLevel.B, 3e-6, 1e-5)]
    [InlineData(PerformanceLevel.C, 1e-6, 3e-6)]
    [InlineData(PerformanceLevel.D, 1e-7, 1e-6)]
    [InlineData(PerformanceLevel.E, 1e-8, 1e-7)]
    public void A_level_is_a_band_of_dangerous_failures(PerformanceLevel level, double from, double to)
    {
        var band = RiskGraph.Band(level);
        Assert.Equal(from, band.From * 3600, from * 1e-12);
        Assert.Equal(to, band.To * 3600, to * 1e-12);
        if (level < PerformanceLevel.E) Assert.Equal(band.From, RiskGraph.Band(level + 1).To, band.From * 1e-12);
    }
}

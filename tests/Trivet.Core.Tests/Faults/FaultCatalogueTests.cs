using Trivet.Faults;
using Xunit;

namespace Trivet.Core.Tests.Faults;

/// <summary>
/// The odds have no source but the trade's notes (common practice), whose own sums the catalogue is held against: 58 faults, 703 expected in a thousand first
/// power-ups, and how many of them each of six probes is the first to show.
/// </summary>
public sealed class FaultCatalogueTests
{
    private static readonly Probe[] Six = [Probe.Indicators, Probe.BusListening, Probe.HandMove, Probe.SwitchTarget, Probe.SmallJog, Probe.Homing];

    [Fact]
    public void There_are_58_faults_numbered_through_with_ids_of_their_own()
    {
        Assert.Equal(Enumerable.Range(1, 58), FaultCatalogue.All.Select(f => f.Number));
        Assert.Equal(58, FaultCatalogue.All.Select(f => f.Id).Distinct().Count());
    }

    [Fact]
    public void The_weights_are_those_of_the_trade()
    {
        Assert.Equal(703, FaultCatalogue.All.Sum(f => f.Weight));
        // Every second first power-up has at least one: 1 − Π(1 − w).
        Assert.Equal(0.51, 1 - FaultCatalogue.All.Aggregate(1.0, (none, f) => none * (1 - f.Weight / 1000)), 0.01);
    }

    [Theory]
    [InlineData(Probe.Indicators, 39)]
    [InlineData(Probe.BusListening, 90)]
    [InlineData(Probe.HandMove, 114)]
    [InlineData(Probe.SwitchTarget, 79)]
    // The notes count 80: they take a motor supply of wrong voltage (5) for shown, whose only outcome there is the planned one.
    [InlineData(Probe.SmallJog, 75)]
    [InlineData(Probe.Homing, 37)]
    public void Each_probe_is_the_first_to_show_what_the_trade_counts(Probe probe, double weight)
    {
        // Counted there by the outcomes named alone.
        double first = FaultCatalogue.All.Where(f => Six.Cast<Probe?>().FirstOrDefault(p => Named(f, p!.Value) >= 0.5) == probe).Sum(f => f.Weight);
        Assert.Equal(weight, first);
    }

    [Fact]
    public void What_the_six_probes_never_show_are_the_nine_of_the_trade()
    {
        Assert.Equal([43, 44, 45, 46, 48, 49, 50, 51, 56], FaultCatalogue.All.Where(f => Six.All(p => f.ShownBy(p) == 0)).Select(f => f.Number));
    }

    [Fact]
    public void Every_sign_is_an_outcome_of_its_probe_and_no_probe_shows_more_than_all()
    {
        foreach (var fault in FaultCatalogue.All)
        {
            Assert.All(fault.Signs, s => Assert.Contains(s.Outcome, Outcomes.Of(s.Probe)));
            Assert.All(fault.Signs, s => Assert.InRange(s.Probability, 0.01, 0.99));
            Assert.All(fault.Signs.GroupBy(s => s.Probe), g => Assert.InRange(g.Sum(s => s.Probability), 0, 1));
            Assert.All(fault.Signs.GroupBy(s => (s.Probe, s.Outcome)), g => Assert.Single(g));
            Assert.Contains(fault.Signs, s => fault.ShownBy(s.Probe) >= 0.5);
        }
    }

    [Fact]
    public void Every_probe_shows_something_and_every_outcome_is_a_sign_of_something_but_the_two_that_name_none()
    {
        Assert.All(Enum.GetValues<Probe>(), p => Assert.Contains(FaultCatalogue.All, f => f.ShownBy(p) > 0));
        var used = FaultCatalogue.All.SelectMany(f => f.Signs).Select(s => (s.Probe, s.Outcome)).ToHashSet();
        var unused = Enum.GetValues<Probe>().SelectMany(p => Outcomes.Of(p).Select(o => (p, o))).Where(o => !used.Contains(o));
        // A stranger goes with a missing node, and all dark with no control supply at all: an observer may see them.
        Assert.Equal([(Probe.Indicators, "all-dark"), (Probe.BusListening, "stranger")], unused);
    }

    private static double Named(Fault fault, Probe probe) => fault.Signs.Where(s => s.Probe == probe).Sum(s => s.Probability);
}

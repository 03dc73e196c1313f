using System.Collections.Immutable;
using Trivet.Faults;
using Trivet.Findings;
using Trivet.Procedures;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Procedures;

/// <summary>Which mistakes slip through a procedure.</summary>
public sealed class CoverageTests
{
    private static Step Step(string id, EnergyLevel energy, string at, params ImmutableArray<Probe> probes) =>
        new() { Id = id, Kind = id, Subject = new(at), Place = StepPlace.Site, Energy = energy, By = Skill.Engineer, Minutes = 5, Probes = probes };

    private static FaultCase Case(string fault, params string[] parts) => new(FaultCatalogue.All.Single(f => f.Id == fault), [.. parts], [.. parts]);

    private static Noticed Of(FaultCase fault, params ImmutableArray<Step> steps) => Coverage.Of(steps, [fault]).Faults.Single();

    [Fact]
    public void A_fault_is_noticed_by_the_first_step_that_more_likely_shows_it_than_not()
    {
        var noticed = Of(Case("feedback-cables-swapped", "/robot/chains/a", "/robot/chains/b"),
            Step("lamps", EnergyLevel.ControlSupplyOnly, "/cabinet", Probe.Indicators),
            Step("hand:c", EnergyLevel.ControlSupplyOnly, "/robot/chains/c", Probe.HandMove),
            Step("hand:b", EnergyLevel.ControlSupplyOnly, "/robot/chains/b", Probe.HandMove),
            Step("jog:b", EnergyLevel.OneAxisLimited, "/robot/chains/b", Probe.SmallJog));
        Assert.Equal("hand:b", noticed.Step);
        Assert.True(noticed.BeforePower);
        // By hand .96 named and three tenths of the rest, then the jog: by multiplication, all against it missed.
        Assert.Equal(1 - (1 - (.96 + .3 * .04)) * (1 - (.93 + .3 * .07)), noticed.Probability, 12);
        Assert.Equal(.96 + .3 * .04, noticed.BeforeHarm, 12);
    }

    [Fact]
    public void A_step_that_brings_the_harm_notices_too_late()
    {
        var reversed = Case("control-supply-reversed");
        var lamps = Step("lamps", EnergyLevel.ControlSupplyOnly, "/cabinet", Probe.Indicators);
        var meter = Step("meter", EnergyLevel.Isolated, "/cabinet", Probe.SupplyPolarity);
        Assert.Equal(0, Of(reversed, lamps, meter).BeforeHarm);
        Assert.Equal(0, Of(reversed, lamps with { Probes = [Probe.SupplyPolarity, Probe.Indicators] }).BeforeHarm);
        Assert.True(Of(reversed, meter, lamps).BeforeHarm > 0.95);
    }

    [Fact]
    public void A_step_that_keeps_the_harm_small_may_be_the_one_that_notices()
    {
        var reversed = Case("motor-phases-reversed", "/robot/chains/a");
        var jog = Step("jog", EnergyLevel.OneAxisLimited, "/robot/chains/a", Probe.SmallJog);
        Assert.Equal(0, Of(reversed, jog).BeforeHarm);
        Assert.True(Of(reversed, jog with { Bounded = true }).BeforeHarm > 0.9);
        Assert.True(Of(reversed, jog with { Bounded = true }, jog with { Id = "again" }).BeforeHarm > 0.9);
    }

    [Fact]
    public void Who_overlooks_a_thing_overlooks_it_again()
    {
        var once = Step("look", EnergyLevel.Isolated, "/cabinet", Probe.LevelAndDiagonals);
        Assert.Equal(Of(Case("not-square"), once).Probability, Of(Case("not-square"), once, once with { Id = "again" }).Probability);
    }

    [Fact]
    public void What_nothing_shows_slips_through_and_the_best_addition_catches_most_of_it()
    {
        var coverage = Coverage.Of([Step("lamps", EnergyLevel.ControlSupplyOnly, "/cabinet", Probe.Indicators)], [Case("out-of-level"), Case("not-square"), Case("base-turned")]);
        Assert.Equal(3, coverage.Missed.Count());
        Assert.Equal(Probe.LevelAndDiagonals, coverage.Best!.Probe);
        Assert.Equal(["out-of-level", "not-square"], coverage.Best.Shows.Select(c => c.Fault.Id));
        Assert.Null(new Coverage([]).Best);
    }

    [Fact]
    public void One_step_more_never_hides_a_fault_and_one_less_never_shows_one()
    {
        var random = new Random(4711);
        var probes = Enum.GetValues<Probe>();
        for (int i = 0; i < Effort.Cases(200); i++)
        {
            Step[] steps = [.. Enumerable.Range(0, 1 + random.Next(8)).Select(n =>
                Step($"s{n}", (EnergyLevel)random.Next(5), random.Next(2) == 0 ? "/robot" : "/robot/chains/a", probes[random.Next(probes.Length)]))];
            FaultCase[] cases = [.. FaultCatalogue.All.Select(f => f.Scope == FaultScope.Axis ? Case(f.Id, "/robot/chains/a") : Case(f.Id))];
            var all = Coverage.Of([.. steps], [.. cases]);
            int out_ = random.Next(steps.Length);
            var less = Coverage.Of([.. steps.Where((_, n) => n != out_)], [.. cases]);
            Assert.All(all.Faults.Zip(less.Faults), f => Assert.True(f.First.Probability >= f.Second.Probability - 1e-15, f.First.Case.Id));
        }
    }
}

using Trivet.Cells;
using Trivet.Findings;
using Trivet.Protecting;
using Xunit;

namespace Trivet.Core.Tests.Protecting;

/// <summary>
/// The revised NIOSH lifting equation. Source: T. Waters, V. Putz-Anderson, A. Garg, Applications manual for the revised NIOSH lifting equation, DHHS (NIOSH)
/// 94-110, 1994: tables 1 to 5 and 7 (metric columns from memory), worked examples 1 and 4 (published-values S18, S19).
/// </summary>
public sealed class LiftingEquationTests
{
    [Fact]
    public void The_factors_are_those_of_the_printed_tables()
    {
        foreach (var (cm, hm) in ((double, double)[])[(20, 1), (25, 1), (28, .89), (30, .83), (36, .69), (40, .63), (50, .50), (58, .43), (63, .40), (64, 0)])
            Assert.Equal(hm, LiftingEquation.Horizontal(cm / 100), 0.0051);
        foreach (var (cm, vm) in ((double, double)[])[(0, .78), (20, .84), (40, .90), (75, 1), (100, .93), (130, .84), (160, .75), (175, .70), (176, 0)])
            Assert.Equal(vm, LiftingEquation.Vertical(cm / 100), 0.0051);
        foreach (var (cm, dm) in ((double, double)[])[(10, 1), (25, 1), (40, .93), (55, .90), (70, .88), (100, .87), (175, .85), (176, 0)])
            Assert.Equal(dm, LiftingEquation.Distance(cm / 100), 0.0051);
        foreach (var (deg, am) in ((double, double)[])[(0, 1), (15, .95), (30, .90), (60, .81), (90, .71), (135, .57), (136, 0)])
            Assert.Equal(am, LiftingEquation.Asymmetry(deg * Math.PI / 180), 0.0051);
    }

    /// <summary>Table 5, up to 1 h (published-values S22), and its ends for longer work.</summary>
    [Theory]
    [InlineData(0.1, 0.5, LiftDuration.Short, 1.00)]
    [InlineData(0.5, 0.5, LiftDuration.Short, .97)]
    [InlineData(3, 0.5, LiftDuration.Short, .88)]
    [InlineData(7, 0.9, LiftDuration.Short, .70)]
    [InlineData(10, 0.5, LiftDuration.Short, .45)]
    [InlineData(13, 0.5, LiftDuration.Short, 0)]
    [InlineData(13, 0.8, LiftDuration.Short, .34)]
    [InlineData(15, 0.8, LiftDuration.Short, .28)]
    [InlineData(16, 0.8, LiftDuration.Short, 0)]
    [InlineData(0.2, 0.5, LiftDuration.Long, .85)]
    [InlineData(9, 0.5, LiftDuration.Long, 0)]
    [InlineData(12, 0.8, LiftDuration.Moderate, .21)]
    public void The_frequency_factor_is_that_of_table_5(double perMinute, double height, LiftDuration duration, double factor) =>
        Assert.Equal(factor, LiftingEquation.Frequency(perMinute / 60, duration, height), 12);

    /// <summary>
    /// Printed for inches and pounds; the metric constants (25 cm for 10 in, 23 kg for 51 lb) come out up to 3.5 % lower.
    /// Example 1: H 23, V 15 → H 23, V 63, D 48, fair, F at most 0.2: 16.3 and 14.5 lb printed, 16.031
    /// and 14.308 in full precision. Example 4: H 10, V 22 → H 20, V 59, F 3, fair: 34.9 and 15.2 lb printed, 34.814 and 15.253.
    /// </summary>
    [Theory]
    [InlineData(23, 15, 23, 63, 0.2, 16.031, 14.308)]
    [InlineData(10, 22, 20, 59, 3, 34.814, 15.253)]
    public void Worked_examples(double h1, double v1, double h2, double v2, double perMinute, double origin, double destination)
    {
        const double Inch = 0.0254, Pound = 0.45359237;
        LiftEnd from = new(h1 * Inch, v1 * Inch, 0), to = new(h2 * Inch, v2 * Inch, 0);
        double first = LiftingEquation.Recommended(from, to, from, perMinute / 60, LiftDuration.Short, Coupling.Fair) / Pound;
        double last = LiftingEquation.Recommended(from, to, to, perMinute / 60, LiftDuration.Short, Coupling.Fair) / Pound;
        Assert.InRange(first / origin, 0.965, 1.0);
        Assert.InRange(last / destination, 0.965, 1.0);
    }

    private static Cell With(Lift lift) => Cell.Empty with { Handling = new() { Lifts = Keyed.Empty<Lift>().Add("load", lift) } };

    private static Lift Easy => new() { Mass = 9, FromReach = 0.3, FromHeight = 0.7, ToReach = 0.4, ToHeight = 1.1, Coupling = Coupling.Good };

    [Fact]
    public void One_person_is_judged_by_the_index_and_the_harder_end_counts()
    {
        var finding = Assert.IsType<Judged>(Assert.Single(LiftChecks.Of(With(Easy)).Findings));
        double rwl = 23 * (25.0 / 40) * (1 - 0.003 * 35) * (0.82 + 4.5 / 40);
        Assert.Equal(9 / rwl, finding.Value, 9);
        Assert.Equal(Verdict.Holds, finding.Verdict);
        Assert.True(Assert.IsType<Judged>(LiftChecks.Of(With(Easy with { Controlled = false })).Findings[0]).Value < finding.Value);
        Assert.Equal(Verdict.FallsShort, LiftChecks.Of(With(Easy with { Mass = 20 })).Findings[0].Verdict);
    }

    [Fact]
    public void Two_people_or_above_shoulder_height_ask_for_an_aid_whatever_the_mass()
    {
        foreach (var lift in (Lift[])[Easy with { People = 2 }, Easy with { ToHeight = 1.45 }, Easy with { ToReach = 0.7 }])
        {
            var none = LiftChecks.Of(With(lift)).Findings.Single();
            Assert.Equal((ProtectRules.LiftAid, Verdict.FallsShort), (none.Rule, none.Verdict));
            var planned = LiftChecks.Of(With(lift with { Aid = "chain hoist on the frame", AidCapacity = 50 })).Findings.Single();
            Assert.Equal((ProtectRules.LiftAid, Verdict.Holds), (planned.Rule, planned.Verdict));
            Assert.Equal(Verdict.FallsShort, LiftChecks.Of(With(lift with { Aid = "belt", AidCapacity = 5 })).Findings.Single().Verdict);
            Assert.Equal(Verdict.Open, LiftChecks.Of(With(lift with { Aid = "chain hoist" })).Findings.Single().Verdict);
        }
    }

    /// <summary>40 kg on 4 bolts, twice the weight, 50 mm off the middle of bolts 200 mm apart: 2·40·g·(1/4 + 1/4). A simple balance: never more than tight.</summary>
    [Fact]
    public void The_first_bolts_carry_weight_and_offset()
    {
        var hanging = new Hanging { Mass = 40, Bolts = 4, Offset = 0.05, BoltSpacing = 0.2, Safety = 2, LargestBoltForce = 1500, BoltForceSource = "thread in aluminium, 2 d deep" };
        Judged Of(Hanging h) => Assert.IsType<Judged>(LiftChecks.Of(Cell.Empty with { Handling = new() { Hanging = h } }).Findings.Single());
        Assert.Equal(2 * 40 * 9.80665 * 0.5, Of(hanging).Value, 9);
        Assert.Equal(Verdict.Tight, Of(hanging).Verdict);
        Assert.Equal(Verdict.FallsShort, Of(hanging with { Offset = 0.4 }).Verdict);
        var two = LiftChecks.Of(Cell.Empty with { Handling = new() { Hanging = hanging with { Bolts = 2, LargestBoltForce = 1e6 } } }).Findings.Single();
        Assert.Equal((Verdict.FallsShort, 3.0), (two.Verdict, two.Advice.Single().To));
        var open = Assert.IsType<Unjudged>(LiftChecks.Of(Cell.Empty with { Handling = new() { Hanging = hanging with { BoltForceSource = null } } }).Findings.Single());
        Assert.Equal("/handling/hanging/boltForceSource", Assert.Single(open.Missing));
    }
}

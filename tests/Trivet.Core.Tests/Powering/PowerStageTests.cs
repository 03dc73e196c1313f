using System.Text;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Powering;
using Xunit;

namespace Trivet.Core.Tests.Powering;

public sealed class PowerStageTests
{
    private static readonly Cell Lids = Sample("jar-lids"), Biscuits = Sample("biscuits");

    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    private static Cell With(Cell cell, Func<Cabinet, Cabinet> change) => cell with { Cabinet = change(cell.Cabinet) };

    private static Cell With(Cell cell, string branch, Func<PowerBranch, PowerBranch> change) => With(cell, c => c with { Branches = c.Branches.SetItem(branch, change(c.Branches[branch])) });

    private static Cell Consumer(Cell cell, string consumer, Func<PowerConsumer, PowerConsumer> change) =>
        With(cell, c => c with { Consumers = c.Consumers.SetItem(consumer, change(c.Consumers[consumer])) });

    private static Finding[] Bad(Cell cell) => [.. PowerStage.Of(cell).Findings.Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open)];

    private static double Value(Cell cell, Rule rule, string at) =>
        Assert.IsType<Judged>(Assert.Single(PowerStage.Of(cell).Findings, f => f.Rule == rule && f.Subject.Pointer == at)).Value;

    /// <summary>One supply of 24 V and 10 A, one branch of 0.75 mm² and 12 m, one consumer of 2.5 A at its end.</summary>
    private static Cell Bench(Protection protection = Protection.Electronic, double temperature = 20, double shortCircuit = 12) => Cell.Empty with
    {
        Depth = Depth.Build,
        Cabinet = new Cabinet
        {
            Sources = Keyed.Empty<PowerSource>().Add("dc", new() { Voltage = 24, Current = 10, ShortCircuitCurrent = shortCircuit }),
            Branches = Keyed.Empty<PowerBranch>().Add("b", new() { From = "dc", Protection = protection, Rating = 4, Section = 0.75e-6, Length = 12, ConductorTemperature = temperature }),
            Consumers = Keyed.Empty<PowerConsumer>().Add("valve", new() { Branch = "b", Purpose = LoadPurpose.Outputs, Steady = 2.5 }),
        },
    };

    [Fact]
    public void Two_contrasting_cabinets_hold()
    {
        Assert.Empty(Bad(Lids));
        Assert.Empty(Bad(Biscuits));
        Assert.Contains(PowerStage.Of(Lids).Findings, f => f.Rule == PowerRules.Inrush);
        Assert.Contains(PowerStage.Of(Biscuits).Findings, f => f.Rule == PowerRules.Voltage);
    }

    /// <summary>Worked examples: the drop is 1.5600 V at 20 °C and 1.8665 V at 70 °C.</summary>
    [Theory, InlineData(20, 24 - 1.5600), InlineData(70, 24 - 1.8665)]
    public void The_voltage_at_the_far_end_is_that_of_the_worked_example(double temperature, double volts) =>
        Assert.Equal(volts, Value(Bench(temperature: temperature), PowerRules.Voltage, "/cabinet/consumers/valve"), 5e-5);

    /// <summary>24 V less 15 % (IEC 61131-2): 20.4 V. At 20 °C, 0.624 Ω there and back: 5.77 A are the most.</summary>
    [Fact]
    public void A_valve_works_down_to_20_4_volts()
    {
        Assert.DoesNotContain(Bad(Consumer(Bench(), "valve", c => c with { Peak = 5.76 })), f => f.Rule == PowerRules.Voltage);
        Assert.Contains(Bad(Consumer(Bench(), "valve", c => c with { Peak = 5.78 })), f => f.Rule == PowerRules.Voltage);
    }

    /// <summary>A long thin wire behind a C breaker: 24 V over 0.624 Ω are 38 A, and a supply held to 12 A gives no more than that; C4 wants 10·4·√2 = 57 A.</summary>
    [Fact]
    public void A_long_thin_wire_never_trips_a_breaker_and_an_electronic_one_does()
    {
        Assert.Contains(Bad(Bench(Protection.BreakerC, shortCircuit: 1000)), f => f.Rule == PowerRules.Trip);
        Assert.Equal(24 / 0.624, Value(Bench(shortCircuit: 1000), PowerRules.Trip, "/cabinet/branches/b"), 1e-9);
        Assert.Equal(12, Value(Bench(), PowerRules.Trip, "/cabinet/branches/b"));
        Assert.Empty(Bad(Bench()));
        Assert.Equal(Verdict.Tight, PowerStage.Of(Bench()).Findings.Single(f => f.Rule == PowerRules.Trip).Verdict);
    }

    [Fact]
    public void The_wire_of_a_consumer_counts_for_what_protects_it()
    {
        // 0.25 mm² bears 4.3 A (IEC 60204-1, pairs of electronics, from memory).
        var thin = Consumer(Bench(), "valve", c => c with { Section = 0.25e-6, Length = 2 });
        Assert.DoesNotContain(Bad(thin), f => f.Rule == PowerRules.Wires);
        var weak = Assert.Single(Bad(With(thin, "b", b => b with { Rating = 5 })), f => f.Rule == PowerRules.Wires);
        // The next that bears it: 0.5 mm² with 7.5 A.
        Assert.Equal(("/cabinet/consumers/valve/section", 0.5e-6), (weak.Advice[0].Pointer, weak.Advice[0].To));
        // A fuse wants more wire than a breaker: 4·1.6/1.45 = 4.41 A.
        Assert.Contains(Bad(With(thin, "b", b => b with { Protection = Protection.Fuse })), f => f.Rule == PowerRules.Wires);
    }

    [Fact]
    public void Thirty_in_reserve_and_a_peak_no_longer_than_the_supply_bears()
    {
        Assert.DoesNotContain(Bad(With(Consumer(Bench(), "valve", c => c with { Count = 3, Steady = 2.56 }), "b", b => b with { Section = 2.5e-6, Rating = 8 })), f => f.Rule == PowerRules.Reserve);
        Assert.Contains(Bad(Consumer(Bench(), "valve", c => c with { Count = 4, Steady = 1.93 })), f => f.Rule == PowerRules.Reserve);
        var peaking = With(Consumer(Bench(), "valve", c => c with { Peak = 12, PeakTime = 0.02 }), c => c with { Sources = c.Sources.SetItem("dc", c.Sources["dc"] with { PeakCurrent = 15, PeakTime = 0.05 }) });
        Assert.DoesNotContain(Bad(peaking), f => f.Rule == PowerRules.Peak);
        Assert.Contains(Bad(Consumer(peaking, "valve", c => c with { PeakTime = 0.1 })), f => f.Rule == PowerRules.Peak);
        // Of four of which half are on together, two count.
        Assert.Equal(5, Value(Consumer(Bench(), "valve", c => c with { Count = 4, Simultaneity = 0.5 }), PowerRules.Reserve, "/cabinet/sources/dc"), 1e-12);
    }

    [Fact]
    public void A_brake_on_the_branch_of_valves_is_told()
    {
        var mixed = With(Bench(), c => c with { Consumers = c.Consumers.Add("brake", new() { Branch = "b", Purpose = LoadPurpose.Brakes, Steady = 0.5 }) });
        Assert.Contains(Bad(mixed), f => f.Rule == PowerRules.Separate);
    }

    /// <summary>A fuse of 4 A bears 20 A for 0.1 s and 8 A for 10 s (gates of IEC 60269-1 for 16 A, 85 and 33 A, scaled; from memory); an electronic one what it switches off at; C4 4·5·√2 = 28.3 A.</summary>
    [Theory]
    [InlineData(Protection.Fuse, 18, 0.05, false)]
    [InlineData(Protection.Fuse, 18, 0.5, true)]
    [InlineData(Protection.Fuse, 7.5, 5, false)]
    [InlineData(Protection.Fuse, 7.5, 20, true)]
    [InlineData(Protection.Electronic, 5, 0.05, false)]
    [InlineData(Protection.Electronic, 5.5, 0.05, true)]
    [InlineData(Protection.BreakerC, 28, 0.05, false)]
    [InlineData(Protection.BreakerC, 29, 0.05, true)]
    public void What_a_branch_feeds_may_be_switched_on(Protection protection, double peak, double lasting, bool trips)
    {
        var cell = With(Consumer(Bench(), "valve", c => c with { Count = 1, Simultaneity = 1, Peak = peak, PeakTime = lasting }), "b", b => b with { Protection = protection, Rating = 4, TripCurrent = null });
        Assert.Equal(trips, Bad(cell).Any(f => f.Rule == PowerRules.Inrush));
        Assert.Equal(peak, Value(cell, PowerRules.Inrush, "/cabinet/branches/b"), 1e-9);
    }

    [Fact]
    public void What_must_go_on_without_mains_hangs_on_a_source_that_does()
    {
        var needs = Consumer(Bench(), "valve", c => c with { BackedUp = true });
        Assert.Equal("/cabinet/consumers/valve", Assert.Single(Bad(needs), f => f.Rule == PowerRules.BackedUp).Subject.Pointer);
        Cell Holding(double seconds) => With(needs, c => c with { Sources = c.Sources.SetItem("dc", c.Sources["dc"] with { HoldTime = seconds }) });
        Assert.DoesNotContain(Bad(Holding(5)), f => f.Rule == PowerRules.BackedUp || f.Rule == PowerRules.HoldTime);
        Assert.Contains(Bad(Holding(0.5)), f => f.Rule == PowerRules.HoldTime);
        Assert.Contains(Bad(Consumer(Holding(5), "valve", c => c with { HoldTime = 30 })), f => f.Rule == PowerRules.HoldTime);
        Assert.DoesNotContain(PowerStage.Of(Bench()).Findings, f => f.Rule == PowerRules.BackedUp || f.Rule == PowerRules.HoldTime);
    }

    /// <summary>C10 lets a surge of 5·10·√2 = 70.7 A pass: two supplies of 30 A each, not three.</summary>
    [Theory, InlineData(2, false), InlineData(3, true)]
    public void So_many_supplies_start_behind_one_breaker(int count, bool trips)
    {
        var sources = Keyed.Empty<PowerSource>().Add("mains", new() { Alternating = true, Voltage = 230, ShortCircuitCurrent = 1000 });
        for (int i = 0; i < count; i++) sources = sources.Add($"s{i}", new() { FedBy = "in", Voltage = 24, Current = 5, ShortCircuitCurrent = 6, InputCurrent = 1, Inrush = 30 });
        var cell = Cell.Empty with
        {
            Depth = Depth.Build,
            Cabinet = new() { Sources = sources, Branches = Keyed.Empty<PowerBranch>().Add("in", new() { From = "mains", Protection = Protection.BreakerC, Rating = 10, Section = 1.5e-6, Length = 3 }) },
        };
        Assert.Equal(trips, Bad(cell).Any(f => f.Rule == PowerRules.Inrush));
        Assert.Equal(30.0 * count, Value(cell, PowerRules.Inrush, "/cabinet/branches/in"));
    }

    [Fact]
    public void What_can_not_be_is_named_with_its_place()
    {
        Assert.Contains(Bad(With(Bench(), "b", b => b with { Section = 1.2e-6 })), f => f is Unjudged { Detail: { } d } && d == PowerReasons.NoSuchSection && f.Subject.Pointer == "/cabinet/branches/b/section");
        Assert.Contains(Bad(Consumer(Bench(), "valve", c => c with { Branch = "x" })), f => f is Unjudged { Detail: { } d } && d == PowerReasons.NoSuchBranch);
        Assert.Contains(Bad(Consumer(Bench(), "valve", c => c with { Simultaneity = 1.5 })), f => f is Unjudged { Detail: { } d } && d == PowerReasons.NotAShare);
        Assert.Contains(Bad(With(Bench(), "b", b => b with { Ambient = 70 })), f => f is Unjudged { Detail: { } d } && d == PowerReasons.BeyondTables);
    }

    [Fact]
    public void What_is_missing_is_asked_for_at_the_depth_of_building_only()
    {
        var bare = With(Bench(), "b", b => b with { Section = null });
        Assert.Contains(Bad(bare), f => f is Unjudged u && u.Missing.Contains("/cabinet/branches/b/section"));
        Assert.Empty(Bad(bare with { Depth = Depth.Quote }));
        // Half a budget would look like a whole one.
        Assert.DoesNotContain(PowerStage.Of(bare).Findings, f => f.Rule == PowerRules.Reserve);
    }

    [Fact]
    public void A_wire_may_have_the_length_of_its_cable_and_then_depends_on_it()
    {
        var cell = Consumer(Lids, "valves", c => c with { Length = null, Cable = "valves" });
        var finding = PowerStage.Of(cell).Findings.Single(f => f.Rule == PowerRules.Voltage && f.Subject.Pointer == "/cabinet/consumers/valves");
        Assert.Contains("/cables/valves/length", finding.Inputs);
    }
}

using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Signals;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Signals;

public sealed class SignalTests
{
    private static readonly Cell Lids = Sample("jar-lids"), Biscuits = Sample("biscuits");

    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    private static Cell With(string id, Func<Signal, Signal> change) => Lids with { Io = Lids.Io with { Signals = Lids.Io.Signals.SetItem(id, change(Lids.Io.Signals[id])) } };

    private static Cell WithBank(string id, Func<ChannelBank, ChannelBank> change) => Lids with { Io = Lids.Io with { Banks = Lids.Io.Banks.SetItem(id, change(Lids.Io.Banks[id])) } };

    private static Cell WithSwitch(Func<TravelSwitch, TravelSwitch> change) => Lids with { Io = Lids.Io with { Switches = Lids.Io.Switches.SetItem("low-a", change(Lids.Io.Switches["low-a"])) } };

    private static Finding[] Bad(Cell cell) => [.. SignalStage.Of(cell).Findings.Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open)];

    private static string Only(Cell cell) => Assert.Single(Bad(cell)).Id;

    /// <summary>Object 6000h has sub-indices 1 and 2 of eight bits each on the sample's inputs (CiA 301: unsigned 8, from memory).</summary>
    [Fact]
    public void A_signal_has_a_bit_of_its_module_to_itself()
    {
        Assert.Equal("signal.mapped:/io/signals/low-a", Only(With("low-a", s => s with { Bit = 8 })));
        Assert.Equal("signal.mapped:/io/signals/low-a", Only(With("low-a", s => s with { SubIndex = 3 })));
        Assert.Equal(["signal.mapped:/io/signals/low-a", "signal.mapped:/io/signals/low-b"], Bad(With("low-a", s => s with { Bit = 1 })).Select(f => f.Id).Order());
        Assert.Empty(Bad(With("low-a", s => s with { SubIndex = 2, Bit = 7 })));
        Assert.DoesNotContain(SignalStage.Of(Biscuits).Findings, f => f.Rule == SignalRules.Mapped);
    }

    [Fact]
    public void Two_contrasting_samples_hold()
    {
        Assert.Empty(Bad(Lids));
        Assert.Empty(Bad(Biscuits));
    }

    /// <summary>IEC 61131-2: type 1 on from 15 V at 2 mA, off below 0.5 mA; type 3 on from 11 V at 2 mA, off below 1.5 mA; both off up to 5 V.</summary>
    [Fact]
    public void Levels_of_inputs_are_those_of_the_standard()
    {
        Assert.Equal(new InputLevels(15, 0.002, 5, 0.0005), InputLevels.Of(InputType.Type1));
        Assert.Equal(new InputLevels(11, 0.002, 5, 0.0015), InputLevels.Of(InputType.Type3));
        // A two-wire sensor that loses 8 V and lets 1 mA through: type 3 sees it, type 1 does not.
        var twoWire = With("part-held", s => s with { SensorDrop = 8, OffCurrent = 0.001 });
        Assert.Empty(Bad(twoWire));
        var type1 = twoWire with { Io = twoWire.Io with { Banks = twoWire.Io.Banks.SetItem("inputs", twoWire.Io.Banks["inputs"] with { InputType = InputType.Type1 }) } };
        Assert.Equal([SignalRules.OnLevel, SignalRules.OffCurrent], Bad(type1).Select(f => f.Rule));
    }

    [Fact]
    public void Each_mistake_of_wiring_has_its_finding()
    {
        Assert.Equal("signal.broken-wire:/io/signals/low-a", Only(With("low-a", s => s with { Contact = ContactKind.NormallyOpen, OnAtRest = false, OnWhenActed = true })));
        Assert.Equal("signal.rest:/io/signals/part-held", Only(With("part-held", s => s with { OnAtRest = true })));
        Assert.Equal("signal.safe-state:/io/signals/blow", Only(With("blow", s => s with { SafeOn = true })));
        Assert.Equal("signal.suppression:/io/signals/blow", Only(With("blow", s => s with { Suppressed = false })));
        Assert.Empty(Bad(Biscuits with { Io = Biscuits.Io with { Signals = Biscuits.Io.Signals.SetItem("ejector", Biscuits.Io.Signals["ejector"] with { Suppressed = false }) } }));
        Assert.Equal("signal.load:/io/signals/blow", Only(With("blow", s => s with { Load = 0.6 })));
        Assert.Equal("signal.inrush:/io/signals/blow", Only(With("blow", s => s with { Inrush = 1.1 })));
        Assert.Equal("signal.group:/io/banks/outputs", Only(WithBank("outputs", b => b with { GroupCurrent = 0.2 })));
        Assert.Contains(Bad(With("low-a", s => s with { Switching = Switching.Npn })), f => f.Rule == SignalRules.Switching);
        Assert.Contains(Bad(With("low-a", s => s with { Bank = "inptus" })), f => f is Unjudged { Detail: { } d } && d.Id == SignalReasons.NoSuchBank.Id);
    }

    [Fact]
    public void Two_signals_on_one_channel_fall_short_and_the_second_is_told_a_free_one()
    {
        var bad = Bad(With("low-b", s => s with { Channel = 1 }));
        Assert.Equal(["/io/signals/low-a", "/io/signals/low-b"], bad.Select(f => f.Subject.Pointer));
        Assert.Equal(("/io/signals/low-b/channel", 2.0), (Assert.Single(bad.SelectMany(f => f.Advice)).Pointer, bad[1].Advice[0].To));
        Assert.Equal("signal.channel:/io/signals/blow", Only(With("blow", s => s with { Channel = 17 })));
        Assert.Equal(4, Assert.Single(Bad(With("part-held", s => s with { Channel = null }))).Advice[0].To);
    }

    [Fact]
    public void A_channel_and_a_bank_that_are_no_longer_there_are_planned_anew()
    {
        var lost = With("part-held", s => s with { Bank = null, Channel = null });
        var plan = SignalInputs.Channels(lost, new());
        Assert.Equal(("inputs", 4), plan.For("part-held"));
        Assert.Equal(("inputs", 1), plan.For("low-a"));
    }

    /// <summary>Two want channel 0 of a full bank and one of both could go elsewhere: who moves must be the one that makes room for the other.</summary>
    [Fact]
    public void Of_two_on_one_channel_the_one_that_can_go_elsewhere_makes_room()
    {
        var plan = ChannelPlan.Of([new([0, 1], 0, 1), new([0, 1], 0, 0), new([0], 0, 0)], [2, 2]);
        Assert.Equal([new(0, 1), new(1, 0), new(0, 0)], plan);
    }

    /// <summary>Against every way to give out the channels: no plan places more signals, and where all have a place none changes fewer.</summary>
    [Fact]
    public void No_plan_of_channels_changes_fewer() =>
        Gen.Select(
            Gen.Int[1, 2].Array[1, 3],
            Gen.Select(Gen.Int[1, 7], Gen.Int[-1, 2], Gen.Int[0, 1]).Array[1, 4]).Sample(
            g =>
            {
                var (channels, raw) = g;
                ImmutableArray<ChannelWish> wishes = [.. raw.Select(w => new ChannelWish([.. Enumerable.Range(0, channels.Length).Where(b => (w.Item1 >> b & 1) != 0)], w.Item2 < channels.Length ? w.Item2 : -1, w.Item3))];
                var plan = ChannelPlan.Of(wishes, [.. channels]);
                for (int i = 0; i < wishes.Length; i++)
                    Assert.True(plan[i].Bank < 0 || wishes[i].Banks.Contains(plan[i].Bank) && plan[i].Channel >= 0 && plan[i].Channel < channels[plan[i].Bank]);
                var given = plan.Where(p => p.Bank >= 0).ToArray();
                Assert.Equal(given.Length, given.Distinct().Count());
                var best = Best(0, [], wishes, channels);
                Assert.Equal(best.Placed, given.Length);
                if (best.Placed == wishes.Length) Assert.Equal(best.Changes, Changes(plan, wishes));
            },
            seed: "0000000000012", iter: Effort.Cases(2000));

    private static int Changes(IReadOnlyList<ChannelPlace> plan, ImmutableArray<ChannelWish> wishes) =>
        wishes.Where((w, i) => plan[i].Bank >= 0 && (plan[i].Bank != w.Bank || plan[i].Channel != w.Channel)).Count();

    private static (int Placed, int Changes) Best(int at, ImmutableList<ChannelPlace> so, ImmutableArray<ChannelWish> wishes, int[] channels)
    {
        if (at == wishes.Length) return (so.Count(p => p.Bank >= 0), Changes(so, wishes));
        var best = Best(at + 1, so.Add(new(-1, -1)), wishes, channels);
        foreach (int bank in wishes[at].Banks)
            for (int channel = 0; channel < channels[bank]; channel++)
            {
                if (so.Contains(new(bank, channel))) continue;
                var found = Best(at + 1, so.Add(new(bank, channel)), wishes, channels);
                if (found.Placed > best.Placed || found.Placed == best.Placed && found.Changes < best.Changes) best = found;
            }
        return best;
    }

    /// <summary>CiA 301, from memory: 1000h, 1001h and 1018h sub 1 are what every device has.</summary>
    [Fact]
    public void A_bus_device_without_what_every_one_has_falls_short()
    {
        Cell Without(Func<BusNode, BusNode> change) => Lids with { Io = Lids.Io with { Nodes = Lids.Io.Nodes.SetItem("inputs", change(Lids.Io.Nodes["inputs"])) } };
        Assert.Equal("signal.objects:/io/nodes/inputs", Only(Without(n => n with { Objects = n.Objects.Remove("errors") })));
        var twice = Assert.IsType<YesNo>(Assert.Single(Bad(Without(n => n with { Objects = n.Objects.SetItem("high", n.Objects["high"] with { SubIndex = 1 }) }))));
        Assert.Equal(["/io/nodes/inputs/objects/high/index", "/io/nodes/inputs/objects/low/index"], twice.Evidence);
        Assert.Contains(Bad(Without(n => n with { Objects = n.Objects.SetItem("high", n.Objects["high"] with { Index = 0x6000F }) })), f => f is Unjudged { Detail: { } d } && d == SignalReasons.NoSuchObject);
    }

    /// <summary>By hand: 0.1 m/s for 20 ms is 2 mm, 0.1² / (2·1) is 5 mm; with 0.5 mm and 1 mm the switch needs 8.5 mm before the stop.</summary>
    [Fact]
    public void The_way_behind_a_switch_is_that_of_a_stop()
    {
        var stop = TravelStop.Of(0.1, 1, 0.020, 0.0005, 0.001);
        Assert.Equal(0.0085, stop.Needed, 1e-12);
        // Between 500 + 1.5 mm and 520 − 8.5 mm, either way round.
        Assert.Equal(0.5065, stop.Place(0.5, 0.52), 1e-12);
        Assert.Equal(-0.5065, stop.Place(-0.5, -0.52), 1e-12);
        Assert.True(double.IsNaN(stop.Place(0.5, 0.509)));
        Assert.True(double.IsNaN(TravelStop.Of(0.1, 0, 0, 0, 0).Needed));
        // IEC 60947-5-2, from memory: 0.9 · 0.9 of the rated distance; 0.4 for aluminium is common practice.
        Assert.Equal(0.81 * 0.004 * 0.4, TravelStop.AssuredDistance(0.004, 0.4), 1e-12);
    }

    [Fact]
    public void A_switch_too_near_the_stop_or_within_the_travel_is_told_its_place()
    {
        var near = Assert.Single(Bad(WithSwitch(s => s with { At = 0.539 })));
        Assert.Equal(SignalRules.SwitchStop, near.Rule);
        Assert.InRange(near.Advice[0].To, 0.53, 0.5375);
        var within = Assert.Single(Bad(WithSwitch(s => s with { At = 0.5205 })));
        Assert.Equal(SignalRules.SwitchClear, within.Rule);
        Assert.Equal((0.5214 + 0.537475) / 2, within.Advice[0].To, 1e-9);
        Assert.Equal("signal.switch-gap:/io/switches/low-a", Only(WithSwitch(s => s with { TargetFactor = 0.4 })));
        Assert.Equal(OpenReason.Missing, Assert.Single(Bad(WithSwitch(s => s with { Delay = null }))).OpenBecause);
        Assert.Contains(Bad(WithSwitch(s => s with { HardStop = 0.527 })), f => f is Unjudged { Detail: { } d } && d == SignalReasons.StopAtSwitch);
    }
}

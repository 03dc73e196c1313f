using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Wiring;
using Xunit;

namespace Trivet.Core.Tests.Wiring;

public sealed class WiringStageTests
{
    private static readonly Cell Lids = Sample("jar-lids"), Biscuits = Sample("biscuits");

    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    private static Cell With(Cell cell, string module, Func<Module, Module> change) => cell with
    {
        Cabinet = cell.Cabinet with { Modules = cell.Cabinet.Modules.SetItem(module, change(cell.Cabinet.Modules[module])) },
    };

    private static Cell With(Cell cell, Func<Network, Network> change) => cell with { Cabinet = cell.Cabinet with { Network = change(cell.Cabinet.Network) } };

    private static Finding[] Bad(Cell cell) => [.. WiringStage.Of(cell).Findings.Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open)];

    [Fact]
    public void Two_contrasting_cabinets_hold()
    {
        Assert.Empty(Bad(Lids));
        Assert.Empty(Bad(Biscuits));
        Assert.Contains(WiringStage.Of(Lids).Findings, f => f.Rule == WiringRules.Load);
        Assert.DoesNotContain(WiringStage.Of(Biscuits).Findings, f => f.Rule == WiringRules.BusLength);
    }

    [Fact]
    public void A_duplicate_address_falls_short_at_both_modules_and_only_the_wrong_one_is_to_change()
    {
        var bad = Bad(With(Lids, "axis-b", m => m with { Address = 11 }));
        Assert.Equal(["/cabinet/modules/axis-a", "/cabinet/modules/axis-b"], bad.Where(f => f.Rule == WiringRules.Unique).Select(f => f.Subject.Pointer));
        var advised = bad.SelectMany(f => f.Advice).Distinct().ToArray();
        Assert.Equal(("/cabinet/modules/axis-b/address", 12.0), (Assert.Single(advised).Pointer, advised[0].To));
        Assert.Contains(bad, f => f.Rule == WiringRules.InClass && f.Subject.Pointer == "/cabinet/modules/axis-b");
    }

    [Theory]
    [InlineData(0), InlineData(128)]
    public void CANopen_knows_the_addresses_1_to_127(int address) =>
        Assert.Contains(Bad(With(Lids, "inputs", m => m with { Address = address })), f => f.Rule == WiringRules.Legal);

    [Fact]
    public void Counting_from_the_right_is_data()
    {
        var swapped = With(With(Biscuits, "drive-north", m => m with { Address = 1 }), "drive-east", m => m with { Address = 3 });
        Assert.Equal([3.0, 1.0], Bad(swapped).Where(f => f.Rule == WiringRules.InClass).Select(f => f.Advice[0].To));
    }

    [Fact]
    public void A_module_without_address_is_open_with_the_address_to_give_it()
    {
        var open = Assert.Single(Bad(With(Lids, "axis-turn", m => m with { Address = null })));
        Assert.Equal((OpenReason.Missing, 21.0), (open.OpenBecause, open.Advice[0].To));
    }

    [Fact]
    public void Classes_of_one_range_must_not_meet_and_those_of_two_may()
    {
        Cell Meeting(string? range) => Lids with
        {
            Cabinet = Lids.Cabinet with { AddressClasses = Lids.Cabinet.AddressClasses.SetItem("io", Lids.Cabinet.AddressClasses["io"] with { First = 25, Range = range }) },
        };
        Assert.Contains(Bad(Meeting(null)), f => f.Rule == WiringRules.Classes);
        Assert.DoesNotContain(Bad(Meeting("other bus")), f => f.Rule == WiringRules.Classes);
    }

    /// <summary>CiA 301, from memory: 100 m at 500 kbit/s. Two terminators of 120 Ω make 60 Ω (ISO 11898-2).</summary>
    [Fact]
    public void Length_and_terminators_are_held_against_the_standards()
    {
        Assert.DoesNotContain(Bad(With(Lids, n => n with { Length = 99 })), f => f.Rule == WiringRules.BusLength);
        Assert.Contains(Bad(With(Lids, n => n with { Length = 101 })), f => f.Rule == WiringRules.BusLength);
        Assert.Contains(Bad(With(Lids, n => n with { Terminators = 3 })), f => f.Rule == WiringRules.Terminators && f.Advice[0].To == 2);
        Assert.Equal(60, BusCase.Ohms(2));
        Assert.Equal(40, BusCase.Ohms(3));
        Assert.Contains(Bad(With(Lids, n => n with { BitRate = 2e6 })), f => f is Unjudged { Detail: { } d } && d == WiringReasons.TooFast);
    }

    /// <summary>Worked example of the reference list: three nodes with one message of eight bytes each way and a clock without data every 4 ms, heartbeats
    /// of one byte every 100 ms, 500 kbit/s: 0.4364.</summary>
    [Fact]
    public void The_load_is_that_of_the_worked_example()
    {
        var messages = Keyed.Empty<BusMessage>().Add("sync", new() { Bytes = 0, Period = 0.004 });
        for (int i = 0; i < 6; i++) messages = messages.Add($"pdo-{i}", new() { Bytes = 8, Period = 0.004 });
        for (int i = 0; i < 3; i++) messages = messages.Add($"heartbeat-{i}", new() { Bytes = 1, Period = 0.1 });
        var load = Assert.IsType<Judged>(Assert.Single(WiringStage.Of(With(Lids, n => n with { Messages = messages })).Findings, f => f.Rule == WiringRules.Load));
        Assert.Equal(0.4364, load.Value, 5e-5);
    }

    [Fact]
    public void What_can_not_be_is_named_with_its_place()
    {
        var wrong = Bad(With(With(Lids, "inputs", m => m with { AddressClass = "oi" }), n => n with { Messages = n.Messages.SetItem("sync", n.Messages["sync"] with { Bytes = 9 }) }));
        Assert.Contains(wrong, f => f is Unjudged { Detail: { } d } && d.Id == WiringReasons.NoSuchClass.Id && f.Subject.Pointer == "/cabinet/modules/inputs/addressClass");
        Assert.Contains(wrong, f => f is Unjudged { Detail: { } d } && d == WiringReasons.EightBytes && f.Subject.Pointer == "/cabinet/network/messages/sync/bytes");
    }

    [Fact]
    public void A_finding_declares_every_field_it_used()
    {
        var before = Assess.Preview(Lids).Ledger.Findings.Single(f => f.Id == "wiring.address-class:/cabinet/modules/axis-a");
        Assert.Contains("/cabinet/addressClasses/rails/first", before.Inputs);
        Assert.DoesNotContain("/cabinet/addressClasses/io/first", before.Inputs);
        Assert.DoesNotContain("/cabinet/modules/inputs/address", before.Inputs);
        // Whether an address is given twice depends on all of them.
        Assert.Contains("/cabinet/modules/inputs/address", Assess.Preview(Lids).Ledger.Findings.Single(f => f.Id == "wiring.address-unique:/cabinet/modules/axis-a").Inputs);
    }

    [Fact]
    public void Early_on_nothing_is_asked_for()
    {
        var plan = WiringStage.Of(Lids with { Depth = Depth.Quote, Cabinet = Lids.Cabinet with { Network = new() } });
        Assert.DoesNotContain(plan.Findings, f => f.OpenBecause == OpenReason.Missing);
        Assert.Contains(plan.Coverage, c => c.Reason == CommonReasons.NotAskedYet);
    }

    private static Cell Heard(params (string Id, BusMessage Message)[] messages) =>
        With(Lids, n => n with { Messages = messages.Aggregate(Keyed.Empty<BusMessage>(), (all, m) => all.Add(m.Id, m.Message)) });

    private static BusTraffic Only(BusMessage message) => Assert.Single(BusCase.Read(Heard(("one", message)), new())!.Traffic);

    /// <summary>Frames of the reference list, counted by two implementations: 123#1122334455667788 112 bits, 000#0000000000000000 127, 705#05 59, 181#3700000000 94.</summary>
    [Theory]
    [InlineData("123h", "11 22 33 44 55 66 77 88", 8, 112)]
    [InlineData("0h", "0000000000000000", 8, 127)]
    [InlineData("705", "05", 1, 59)]
    [InlineData("181h", "37 00 00 00 00", 5, 94)]
    public void A_stated_frame_has_its_exact_length_between_the_least_and_the_worst(string identifier, string data, int bytes, int bits)
    {
        var traffic = Only(new() { Identifier = identifier, Data = data, Bytes = bytes, Period = 0.01 });
        Assert.Equal(bits, traffic.ExactBits);
        Assert.InRange(bits, traffic.LeastBits, traffic.WorstBits);
    }

    /// <summary>Without stuffing, 0, 1, 4 and 8 bytes with 11 bits of identifier: 47, 55, 79, 111 (the same list).</summary>
    [Theory, InlineData(0, 47), InlineData(1, 55), InlineData(4, 79), InlineData(8, 111)]
    public void The_least_is_a_frame_without_stuff_bits(int bytes, int bits) => Assert.Equal(bits, Only(new() { Bytes = bytes, Period = 0.01 }).LeastBits);

    [Fact]
    public void An_identifier_follows_the_address_of_its_module()
    {
        var message = new BusMessage { Identifier = "180h", AddressOf = "axis-a", Bytes = 0, Period = 0.01 };
        Assert.Equal(0x180u + 11, Only(message).Identifier);
        var moved = With(Heard(("one", message)), "axis-a", m => m with { Address = 14 });
        Assert.Equal(0x180u + 14, BusCase.Read(moved, new())!.Traffic[0].Identifier);
    }

    [Theory]
    [InlineData("18Gh", null, "/cabinet/network/messages/one/identifier")]
    [InlineData("800h", null, "/cabinet/network/messages/one/identifier")]
    [InlineData("180h", "nobody", "/cabinet/network/messages/one/addressOf")]
    public void An_identifier_that_can_not_be_is_named(string identifier, string? of, string place) =>
        Assert.Contains(Bad(Heard(("one", new() { Identifier = identifier, AddressOf = of, Bytes = 1, Period = 0.01 }))), f => f.Subject.Pointer == place);

    [Fact]
    public void Two_messages_of_one_identifier_and_data_of_another_length_are_told()
    {
        var bad = Bad(Heard(("one", new() { Identifier = "181h", Bytes = 1, Period = 0.01 }), ("two", new() { Identifier = "181h", Bytes = 2, Data = "00", Period = 0.01 })));
        Assert.Contains(bad, f => f is Unjudged { Detail: { } d } && d == WiringReasons.SameIdentifier && f.Subject.Pointer == "/cabinet/network/messages/two/identifier");
        Assert.Contains(bad, f => f is Unjudged { Detail: { } d } && d == WiringReasons.NotTheBytes && f.Subject.Pointer == "/cabinet/network/messages/two/data");
    }
}

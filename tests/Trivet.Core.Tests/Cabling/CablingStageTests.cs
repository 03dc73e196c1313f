using System.Text;
using Trivet.Cabling;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;
using Trivet.Signals;
using Xunit;

namespace Trivet.Core.Tests.Cabling;

public sealed class CablingStageTests
{
    private static readonly Cell Lids = Sample("jar-lids"), Biscuits = Sample("biscuits");

    private static readonly string[] Moved = ["/cables", "/cabling", "/io", "/stations", "/mount", "/tool/tcpZ", "/cabinet/modules"];

    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    private static Cell With(string id, Func<Cable, Cable> change) => Lids with { Cables = Lids.Cables.SetItem(id, change(Lids.Cables[id])) };

    private static Cell WithWay(string id, Func<CableWay, CableWay> change) => Lids with { Cabling = Lids.Cabling with { Ways = Lids.Cabling.Ways.SetItem(id, change(Lids.Cabling.Ways[id])) } };

    private static Finding[] Bad(Cell cell) => [.. CablingStage.Of(cell).Findings.Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open)];

    private static string Only(Cell cell) => Assert.Single(Bad(cell)).Id;

    [Fact]
    public void Two_contrasting_samples_hold_and_one_from_before_has_a_list_only()
    {
        Assert.Empty(Bad(Lids));
        Assert.Empty(Bad(Biscuits));
        Assert.Contains(CablingStage.Of(Lids with { Cables = Keyed.Empty<Cable>().Add("m", new() { From = "axis-a", To = "motor", Length = 3 }) }).Coverage, c => c.Reason == CablingReasons.NotTyped);
    }

    [Fact]
    public void A_cable_too_short_for_its_route_is_told_the_length_to_cut()
    {
        var bad = Assert.Single(Bad(With("motor-b", c => c with { Length = 4.2 })));
        Assert.Equal(("cable.length:/cables/motor-b", "/cables/motor-b/length", 4.4), (bad.Id, bad.Advice[0].Pointer, Math.Round(bad.Advice[0].To, 9)));
    }

    [Fact]
    public void A_signal_in_the_duct_of_power_falls_short_until_a_wall_parts_them()
    {
        var mixed = With("encoder-a", c => c with { Route = "power-riser, signal-top" });
        Assert.Contains(Bad(mixed), f => f.Id == "cable.side-by-side:/cabling/ways/power-riser");
        var parted = mixed with { Cabling = mixed.Cabling with { Ways = mixed.Cabling.Ways.SetItem("power-riser", mixed.Cabling.Ways["power-riser"] with { Divider = true }) } };
        Assert.DoesNotContain(Bad(parted), f => f.Id == "cable.side-by-side:/cabling/ways/power-riser");
    }

    [Fact]
    public void Two_ducts_on_one_post_fall_short()
    {
        var near = WithWay("signal-riser", w => w with { Points = w.Points.SetItem("p1", w.Points["p1"] with { X = 0.41 }).SetItem("p2", w.Points["p2"] with { X = 0.41 }) });
        var short_ = Assert.IsType<Judged>(Assert.Single(Bad(near), f => f.Id == "cable.side-by-side:/cabling/ways/signal-riser"));
        Assert.Equal(1.08, short_.Value, 1e-9);
    }

    /// <summary>A signal in the loop of a motor: nothing parts them, unless the motor's screen is bonded at both ends.</summary>
    [Fact]
    public void A_loop_and_an_energy_chain_count_as_ways_side_by_side()
    {
        Cell Loop(Cell cell) => cell with { Cables = cell.Cables.SetItem("vacuum-switch", cell.Cables["vacuum-switch"] with { Route = "signal-riser, signal-top, tool-loop", Length = 9 }) };
        Assert.DoesNotContain(Bad(Loop(Lids)), f => f.Rule == CablingRules.SideBySide);
        var bare = Loop(With("motor-turn", c => c with { ToEnd = c.ToEnd with { Bonded = false } }));
        var found = Assert.IsType<Judged>(Assert.Single(Bad(bare), f => f.Rule == CablingRules.SideBySide));
        Assert.Equal(("/cabling/ways/tool-loop", 1.3), (found.Subject.Pointer, found.Value));

        // A chain of 600 mm travel and 100 mm radius holds 300 + 314 mm of cable.
        CableWay chain = new()
        {
            Kind = CableWayKind.EnergyChain, Travel = 0.6, BendRadius = 0.1, Width = 0.06, Height = 0.06,
            Points = Keyed.Empty<WayPoint>().Add("p1", new() { Order = 1, X = 5, Y = 5, Z = 1 }).Add("p2", new() { Order = 2, X = 5, Y = 5.6, Z = 1 }),
        };
        Cell Chained(bool divider) => Lids with
        {
            Cabling = Lids.Cabling with { Ways = Lids.Cabling.Ways.Add("chain", chain with { Divider = divider ? true : null }) },
            Cables = Lids.Cables.SetItem("brake-a", Lids.Cables["brake-a"] with { Route = "power-riser, power-top, chain", Length = 40 })
                .SetItem("low-a", Lids.Cables["low-a"] with { Route = "signal-riser, signal-top, chain", Length = 40 }),
        };
        Assert.Equal(0.3 + 0.1 * Math.PI, Assert.IsType<Judged>(Assert.Single(Bad(Chained(false)), f => f.Rule == CablingRules.SideBySide)).Value, 1e-9);
        Assert.DoesNotContain(Bad(Chained(true)), f => f.Rule == CablingRules.SideBySide);
    }

    /// <summary>Modules of 45 mm stand 45 mm apart, so two times 100 mm down and up, 45 along and 100 in reserve are 345 mm.</summary>
    [Fact]
    public void A_cable_within_the_cabinet_is_measured_along_the_rail()
    {
        Judged Length(Cell cell) => Assert.IsType<Judged>(CablingStage.Of(cell).Findings.Single(f => f.Rule == CablingRules.Length && f.Subject.Pointer == "/cables/bus-2"));
        Assert.Equal(0.345, Length(Lids).Limit.Lower, 1e-12);
        Assert.Equal(("/cables/bus-2/length", 0.4), (Length(With("bus-2", c => c with { Length = 0.3 })).Advice[0].Pointer, Math.Round(Length(With("bus-2", c => c with { Length = 0.3 })).Advice[0].To, 9)));
        Assert.Equal(0.645, Length(Lids with { Cabling = Lids.Cabling with { DuctDrop = 0.25 } }).Limit.Lower, 1e-12);
        // From the first rail's axis to the third's: two modules on.
        Assert.Equal(0.39, Length(With("bus-2", c => c with { To = "axis-c" })).Limit.Lower, 1e-12);
        var blank = Lids with { Cabinet = Lids.Cabinet with { Modules = Lids.Cabinet.Modules.SetItem("controller", Lids.Cabinet.Modules["controller"] with { Width = null }) } };
        Assert.Contains(CablingStage.Of(blank).Coverage, c => c.Reason == CablingReasons.WithinCabinet && c.Subject.Pointer == "/cables/bus-2");
    }

    [Fact]
    public void A_plug_has_to_fit_the_socket_of_its_module()
    {
        string Told(Cell cell) => string.Join(' ', Bad(cell).Where(f => f.Rule == CablingRules.Socket).SelectMany(f => f is YesNo y ? y.Evidence : [f.Id]));
        Cell End(Func<CableEnd, CableEnd> change) => With("encoder-a", c => c with { FromEnd = change(c.FromEnd) });
        const string socket = "/cabinet/modules/axis-a/sockets/x4", end = "/cables/encoder-a/fromEnd";
        Assert.Equal("", Told(Lids));
        Assert.Equal($"{end}/connector {socket}/connector", Told(End(e => e with { Connector = "D-sub 9" })));
        Assert.Equal($"{end}/contacts {socket}/contacts", Told(End(e => e with { Contacts = 9 })));
        Assert.Equal($"{end}/gender {socket}/gender", Told(End(e => e with { Gender = ContactGender.Sockets })));
        Assert.Equal($"{end}/socket /cabinet/modules/axis-a/sockets", Told(End(e => e with { Socket = "X44" })));
        Assert.Contains("cable.socket:" + end, Told(End(e => e with { Socket = null })), StringComparison.Ordinal);
        // Blanks and capitals do not make another socket.
        Assert.Equal("", Told(End(e => e with { Socket = " x4 ", Connector = "d-SUB 15" })));
        // Two motors in one socket; two wires under one strip of terminals are as it should be.
        Assert.Contains("/cables/motor-a/fromEnd/socket /cables/motor-b/fromEnd/socket", Told(With("motor-b", c => c with { From = "axis-a" })), StringComparison.Ordinal);
    }

    [Fact]
    public void Fill_bend_and_drop_are_held_against_what_is_stated()
    {
        // 7 cables of the riser by hand: 3·8.5² + 8² + 3·5.5² = 371.5 mm², times π/4 over the inside.
        var fill = Assert.IsType<Judged>(Assert.Single(Bad(WithWay("power-riser", w => w with { Width = 0.02, Height = 0.02 }))));
        Assert.Equal((CablingRules.Fill, Math.PI / 4 * 371.5 / 400), (fill.Rule, Math.Round(fill.Value, 12)), new Near());
        Assert.Equal("cable.bend:/cabling/ways/power-top", Only(WithWay("power-top", w => w with { BendRadius = 0.04 })));
        Assert.Equal("cable.drop:/cables/brake-a", Only(With("brake-a", c => c with { Current = 5 })));
        Assert.Equal("cable.drop:/cables/brake-a", Only(With("brake-a", c => c with { LargestDrop = 0.005 })));
    }

    private sealed class Near : IEqualityComparer<(Rule, double)>
    {
        public bool Equals((Rule, double) x, (Rule, double) y) => x.Item1 == y.Item1 && Math.Abs(x.Item2 - y.Item2) < 1e-9;
        public int GetHashCode((Rule, double) x) => 0;
    }

    [Fact]
    public void A_motors_shield_needs_both_ends_and_a_feedbacks_one()
    {
        Assert.Equal("cable.bonding:/cables/motor-a", Only(With("motor-a", c => c with { ToEnd = c.ToEnd with { Bonded = false } })));
        Assert.Empty(Bad(With("encoder-a", c => c with { ToEnd = c.ToEnd with { Bonded = false } })));
        Assert.Equal("cable.bonding:/cables/encoder-a", Only(With("encoder-a", c => c with { Shielded = false })));
        Assert.Equal(OpenReason.Missing, Assert.Single(Bad(With("motor-a", c => c with { ToEnd = c.ToEnd with { Bonded = null } }))).OpenBecause);
    }

    [Fact]
    public void Plugs_that_fit_each_other_need_marks_of_their_own()
    {
        var groups = SwapGroups.Of(Lids, new());
        Assert.Contains(groups, g => g.Form == "plug 5.08 ♀ 4" && g.Ends.Select(e => e.Cable).SequenceEqual(["motor-a", "motor-b", "motor-c", "motor-turn"]));
        // Motor, feedback and brake of one motor have three different plugs; the pieces of the bus may change places.
        Assert.DoesNotContain(groups, g => g.Face == "motor-a" || g.Ends.Any(e => e.Cable == "bus-1"));
        var alike = Assert.IsType<YesNo>(Assert.Single(Bad(With("motor-b", c => c with { Mark = "one ring" }))));
        Assert.Equal(["/cables/motor-a/mark", "/cables/motor-b/mark"], alike.Evidence);
    }

    [Fact]
    public void A_label_given_twice_falls_short() => Assert.Equal("cable.label:/cables", Only(With("motor-b", c => c with { Label = "W1A" })));

    /// <summary>IEC 60947-5-2, annex D, from memory: 1 brown, 2 white, 3 blue, 4 black.</summary>
    [Fact]
    public void Cores_on_the_wrong_contact_of_a_sensor_are_named()
    {
        Assert.Equal(["BN", "WH", "BU", "BK", null], Enumerable.Range(1, 5).Select(n => SensorContacts.Colour($"{n}")));
        var wrong = Assert.IsType<YesNo>(Assert.Single(Bad(With("low-a", c => c with { Cores = c.Cores.SetItem("plus", c.Cores["plus"] with { ToPin = "3" }).SetItem("zero", c.Cores["zero"] with { ToPin = "1" }) }))));
        Assert.Equal((CablingRules.Pinning, 2), (wrong.Rule, wrong.Evidence.Length));
    }

    [Fact]
    public void The_loop_must_reach_over_the_whole_work()
    {
        Assert.Equal("cable.loop-length:/cabling/ways/tool-loop:everywhere", Only(WithWay("tool-loop", w => w with { Length = 1.1 })));
        Assert.Equal(2, Bad(WithWay("tool-loop", w => w with { Length = 0.95 })).Count(f => f.Rule == CablingRules.LoopLength));
        Assert.Contains(Bad(With("motor-turn", c => c with { Diameter = 0.06 })), f => f.Rule == CablingRules.LoopBend);
    }

    /// <summary>Against a plain sampling of the stations' boxes, corner by corner and between.</summary>
    [Fact]
    public void No_place_of_a_station_is_farther_or_nearer_than_the_loop_says()
    {
        var (anchor, on) = (new Vec3(0.2, 0, 1.74), new Vec3(0, 0, -0.03));
        var loop = PlatformLoop.Of(Lids, anchor, on, new())!;
        var geometry = CellGeometry.Of(Lids);
        double farthest = 0, nearest = double.PositiveInfinity;
        foreach (var box in geometry.Stations)
            for (int i = 0; i <= 1000; i++)
            {
                double u = i % 10 / 9.0, v = i / 10 % 10 / 9.0, w = i / 100 % 10 / 9.0;
                var p_C = box.X_CS * new Vec3(box.Low.X + u * (box.High.X - box.Low.X), box.Low.Y + v * (box.High.Y - box.Low.Y), box.Low.Z + w * (box.High.Z - box.Low.Z));
                double d = (geometry.X_CB * (geometry.PlatformFor(p_C, 0, 0) + on) - anchor).Norm;
                (farthest, nearest) = (Math.Max(farthest, d), Math.Min(nearest, d));
            }
        Assert.Equal(farthest, loop.Farthest, 1e-9);
        Assert.InRange(loop.Nearest, nearest - 0.2, nearest + 1e-9);
        Assert.True(loop.FarthestEver >= farthest);
    }

    [Fact]
    public void A_way_that_is_not_there_is_named_with_those_that_are() =>
        Assert.Contains(Bad(With("motor-a", c => c with { Route = "power-rizer" })), f => f is Unjudged { Detail: { } d } && d.Id == CablingReasons.NoSuchWay.Id && f.Subject.Pointer == "/cables/motor-a/route");

    [Fact]
    public void Early_on_nothing_is_asked_for()
    {
        var plan = CablingStage.Of(With("motor-a", c => c with { Length = null, Diameter = null }) with { Depth = Depth.Quote });
        Assert.DoesNotContain(plan.Findings, f => f.OpenBecause == OpenReason.Missing);
        Assert.Contains(plan.Coverage, c => c.Reason == CommonReasons.NotAskedYet);
    }

    /// <summary>Every field of cables, ways, devices and signals is moved a little: what does not declare it does not move.</summary>
    [Fact]
    public void A_finding_declares_every_field_it_used()
    {
        var before = All(Lids);
        int moved = 0;
        foreach (var field in Moved.SelectMany(p => CellFields.Below(Lids, p)))
        {
            if (Changed(field) is not { } changed) continue;
            var after = All(changed);
            foreach (var (id, finding) in before)
            {
                if (after.TryGetValue(id, out var now) && Shown(now) == Shown(finding)) continue;
                moved++;
                Assert.True(finding.Inputs.Contains(field.Pointer), $"{id} moved with {field.Pointer} and does not declare it");
            }
        }
        Assert.True(moved > 100);

        static Cell? Changed(CellField field) => field.Kind switch
        {
            FieldKind.Quantity when field.Si is { } si => CellFields.SetSi(Lids, field.Pointer, si * 1.37 + 0.003),
            FieldKind.YesNo when field.Text.Length > 0 => CellFields.Set(Lids, field.Pointer, field.Text == "yes" ? "no" : "yes").Cell,
            FieldKind.Whole when field.Text.Length > 0 && !field.Pointer.EndsWith("/order", StringComparison.Ordinal) => CellFields.Set(Lids, field.Pointer, "3").Cell,
            FieldKind.Choice when field.Text.Length > 0 => CellFields.Set(Lids, field.Pointer, field.Choices[(field.Choices.IndexOf(field.Text) + 1) % field.Choices.Length]).Cell,
            FieldKind.Text when field.Text.Length > 0 && !field.Pointer.EndsWith("/note", StringComparison.Ordinal) => CellFields.Set(Lids, field.Pointer, "another").Cell,
            _ => null,
        };

        static Dictionary<string, Finding> All(Cell cell) => CablingStage.Of(cell).Findings.Concat(SignalStage.Of(cell).Findings).GroupBy(f => f.Id).ToDictionary(g => g.Key, g => g.First());

        static string Shown(Finding f) => f switch
        {
            Judged j => $"{j.Value:R} {j.Limit.Lower:R} {j.Limit.Upper:R}",
            YesNo y => y.Good.ToString(),
            _ => f.Verdict.ToString(),
        };
    }
}

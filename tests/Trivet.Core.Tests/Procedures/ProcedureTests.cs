using System.Text;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Procedures;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Procedures;

/// <summary>The order of work holds what people rely on, for every cell.</summary>
public sealed class ProcedureTests
{
    private static readonly string[] Holders = ["brake", "counterweight", "friction", "prop", "drive", "not fitted"];

    private static Cell Sample(string id) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(id)!.Text), id).Cell!;

    public static TheoryData<string> Cells => ["jar-lids", "biscuits", "labels", "tight-corner"];

    private static Procedure Of(Cell cell) => Procedure.Of(cell, [.. cell.Joints.Keys.Select(j => new JointTorque(j, 5, 0.1, 4, [$"/joints/{j}/thread"]))]);

    private static Dictionary<string, HashSet<string>> Ancestors(Procedure procedure)
    {
        var ancestors = new Dictionary<string, HashSet<string>>();
        foreach (var step in procedure.Steps) ancestors[step.Id] = [.. step.After, .. step.After.SelectMany(a => ancestors[a])];
        return ancestors;
    }

    /// <summary>Samples with parts taken out and turned round at random: what is missing must not break the order.</summary>
    private static IEnumerable<Cell> Random(int seed, int cases)
    {
        var random = new Random(seed);
        Cell[] samples = [Sample("jar-lids"), Sample("biscuits"), Sample("labels"), Sample("tight-corner")];
        for (int i = 0; i < cases; i++)
        {
            var cell = samples[random.Next(samples.Length)];
            var robot = cell.Robot with { CameAssembled = random.Next(2) == 0, Rotary = cell.Robot.Rotary with { Fitted = random.Next(2) == 0 } };
            robot = robot with { Common = robot.Common with { Holding = (Holding)random.Next(5), Feedback = (Feedback)random.Next(3) } };
            cell = cell with { Robot = robot, Frame = cell.Frame with { Feet = cell.Frame.Feet with { Anchored = random.Next(2) == 0 } } };
            if (random.Next(3) == 0) cell = cell with { Cabinet = new() };
            if (random.Next(3) == 0) cell = cell with { Io = new() };
            if (random.Next(3) == 0) cell = cell with { Cables = cell.Cables.Clear() };
            if (random.Next(3) == 0) cell = cell with { Joints = cell.Joints.Clear(), Handling = new() };
            if (random.Next(4) == 0) cell = cell with { Stations = cell.Stations.Clear(), Brief = new() };
            yield return cell;
        }
    }

    private static IEnumerable<Procedure> Many() => Random(90125, Effort.Cases(60)).Select(Of);

    [Fact]
    public void Each_step_stands_behind_those_it_needs_and_tells_each_once()
    {
        foreach (var procedure in Many())
        {
            var ancestors = new Dictionary<string, HashSet<string>>();
            foreach (var step in procedure.Steps)
            {
                Assert.All(step.After, a => Assert.Contains(a, ancestors.Keys));
                var further = step.After.SelectMany(a => ancestors[a]).ToHashSet();
                Assert.DoesNotContain(step.After, further.Contains);
                further.UnionWith(step.After);
                ancestors[step.Id] = further;
            }
            Assert.Equal(procedure.Steps.Length, procedure.Steps.Select(s => s.Id).Distinct().Count());
        }
    }

    [Fact]
    public void Nothing_is_switched_on_before_the_checks_with_all_off()
    {
        foreach (var procedure in Many())
        {
            var ancestors = Ancestors(procedure);
            string[] first = [.. procedure.Steps.Where(s => s.Kind is "bonding" or "supply-polarity" or "bus-ohms" or "before-power" or "motor-supply-locked" or "connect-earth").Select(s => s.Id)];
            Assert.Contains("before-power", first);
            Assert.All(procedure.Steps.Where(s => s.Energy > EnergyLevel.Isolated), s => Assert.All(first, f => Assert.Contains(f, ancestors[s.Id])));
        }
    }

    [Fact]
    public void No_motor_is_energised_before_the_stop_chain_is_proven_and_none_further_before_it_is_proven_again()
    {
        foreach (var procedure in Many())
        {
            var ancestors = Ancestors(procedure);
            var first = procedure.Steps.SingleOrDefault(s => s.Kind == "first-enable");
            Assert.NotNull(first);
            Assert.Equal(EnergyLevel.OneAxisLimited, first.Energy);
            foreach (var step in procedure.Steps.Where(s => s.Energy > EnergyLevel.ControlSupplyOnly))
            {
                Assert.Contains("stop-chain", ancestors[step.Id]);
                if (step != first) Assert.Contains(first.Id, ancestors[step.Id]);
            }
            // Proven before anything but the lamps is looked at, and with the motor supply locked off.
            Assert.All(procedure.Steps.Where(s => s.Energy == EnergyLevel.ControlSupplyOnly && s.Kind is not ("indicators" or "stop-chain")), s => Assert.Contains("stop-chain", ancestors[s.Id]));
        }
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public void A_supply_that_is_on_never_passes_for_dead_whichever_way_the_leads_are_held(string sample)
    {
        var cell = Sample(sample);
        var asks = Of(cell).Steps.SelectMany(s => s.Asks).OfType<AskedValue>().Where(a => a.Id == "dead").ToArray();
        Assert.NotEmpty(asks);
        foreach (double volts in new[] { cell.Drives.Supply.Voltage ?? 24, 24 })
            Assert.All(asks, a => Assert.True(a.Accepted!.Upper < volts && a.Accepted.Lower > -volts, $"{volts} V pass for dead"));
    }

    [Fact]
    public void Nothing_is_plugged_or_mounted_under_power()
    {
        string[] kinds = ["connect-earth", "connect-axis", "connect-rest", "switch-place", "rods-and-platform", "tool-mounted", "joint", "robot-hung", "isolate", "module-address", "rail-order"];
        foreach (var procedure in Many())
        {
            Assert.All(procedure.Steps.Where(s => kinds.Contains(s.Kind)), s => Assert.Equal(EnergyLevel.Isolated, s.Energy));
            var ancestors = Ancestors(procedure);
            // What is fitted after power was on comes behind a step that isolates.
            foreach (var step in procedure.Steps.Where(s => s.Energy == EnergyLevel.Isolated && s.Kind is not ("isolate" or "hand-over")))
            {
                var powered = procedure.Steps.Where(p => p.Energy > EnergyLevel.Isolated && ancestors[step.Id].Contains(p.Id)).Select(p => p.Id).ToArray();
                if (powered.Length == 0) continue;
                Assert.Contains(procedure.Steps, i => i.Kind == "isolate" && ancestors[step.Id].Contains(i.Id) && powered.All(p => ancestors[i.Id].Contains(p)));
            }
        }
    }

    [Fact]
    public void Something_holds_every_chain_in_every_step_and_one_tried_alone_stands_over_a_prop()
    {
        foreach (var procedure in Many())
        {
            foreach (var step in procedure.Steps)
            {
                Assert.All(step.Held, h => Assert.Contains(h.By, Holders));
                if (step.Energy is EnergyLevel.OneAxis or EnergyLevel.OneAxisLimited) Assert.All(step.Held, h => Assert.Equal("prop", h.By));
                if (step.Kind is "platform-push" or "platform-level") Assert.All(step.Held, h => Assert.Equal("prop", h.By));
                if (step.Energy < EnergyLevel.OneAxisLimited) Assert.DoesNotContain(step.Held, h => h.By == "drive");
            }
        }
    }

    [Fact]
    public void A_robot_that_came_assembled_has_no_chain_tried_by_hand_or_homed_alone()
    {
        var lids = Sample("jar-lids");
        var apart = Of(lids with { Robot = lids.Robot with { CameAssembled = false } });
        var whole = Of(lids with { Robot = lids.Robot with { CameAssembled = true } });
        Assert.Equal(["hand-move:a", "hand-move:b", "hand-move:c", "hand-move:rotary"], apart.Steps.Where(s => s.Kind == "hand-move").Select(s => s.Id));
        Assert.Equal(["home-alone:a", "home-alone:b", "home-alone:c", "home-alone:rotary"], apart.Steps.Where(s => s.Kind == "home-alone").Select(s => s.Id));
        Assert.Equal(["hand-move:rotary"], whole.Steps.Where(s => s.Kind == "hand-move").Select(s => s.Id));
        Assert.Equal(["home-alone:rotary"], whole.Steps.Where(s => s.Kind == "home-alone").Select(s => s.Id));
        Assert.Contains(whole.Steps, s => s.Id == "platform-push");
        Assert.DoesNotContain(whole.Steps, s => s.Kind == "rods-and-platform");
        Assert.True(IndexOf(whole, "platform-push") < IndexOf(whole, "first-enable"));
        Assert.True(IndexOf(apart, "rods-and-platform") > IndexOf(apart, "home-alone:c"));

        static int IndexOf(Procedure procedure, string kind) => procedure.Steps.Select((s, i) => (s, i)).First(s => s.s.Id == kind || s.s.Kind == kind).i;
    }

    [Fact]
    public void A_step_depends_on_the_fields_it_names_and_on_no_other()
    {
        // Every leaf of the sample is changed in turn by the file's own text, and only the steps that name it, or what holds it, may differ.
        var lids = Sample("jar-lids");
        var before = Of(lids);
        var changes = new (string Pointer, Cell Cell)[]
        {
            ("/name", lids with { Name = "Other" }),
            ("/cabinet/modules/axis-b/address", lids with { Cabinet = lids.Cabinet with { Modules = lids.Cabinet.Modules.SetItem("axis-b", lids.Cabinet.Modules["axis-b"] with { Address = 14 }) } }),
            ("/cabinet/modules/axis-c/dischargeTime", lids with { Cabinet = lids.Cabinet with { Modules = lids.Cabinet.Modules.SetItem("axis-c", lids.Cabinet.Modules["axis-c"] with { DischargeTime = 90 }) } }),
            ("/cables/encoder-b/label", lids with { Cables = lids.Cables.SetItem("encoder-b", lids.Cables["encoder-b"] with { Label = "W99" }) }),
            ("/io/switches/low-b/gap", lids with { Io = lids.Io with { Switches = lids.Io.Switches.SetItem("low-b", lids.Io.Switches["low-b"] with { Gap = 0.003 }) } }),
            ("/mount/z", lids with { Mount = lids.Mount with { Z = 1.71 } }),
            ("/tool/vacuum/level", lids with { Tool = lids.Tool with { Vacuum = lids.Tool.Vacuum with { Level = 5e4 } } }),
            ("/robot/common/holding", lids with { Robot = lids.Robot with { Common = lids.Robot.Common with { Holding = Holding.Friction } } }),
            ("/guarding/note", lids with { Guarding = lids.Guarding with { Note = "other" } }),
            ("/cabinet/network/terminators", lids with { Cabinet = lids.Cabinet with { Network = lids.Cabinet.Network with { Terminators = 1 } } }),
            ("/brief/peakRate", lids with { Brief = lids.Brief with { PeakRate = 0.9 } }),
        };
        foreach (var (pointer, changed) in changes)
        {
            var after = Of(changed).Steps.ToDictionary(s => s.Id);
            foreach (var step in before.Steps)
                if (!step.Inputs.Contains(pointer)) Assert.True(Same(step, after[step.Id]), $"{step.Id} changed with {pointer}");
        }
        // And what is named does change something, or could.
        Assert.Contains(before.Steps, s => s.Id == "module-address:axis-b" && s.Inputs.Contains("/cabinet/modules/axis-b/address"));
        Assert.DoesNotContain(before.Steps.Single(s => s.Id == "module-address:axis-a").Inputs, i => i.Contains("axis-b", StringComparison.Ordinal) && i.EndsWith("address", StringComparison.Ordinal));

        static bool Same(Step a, Step b) =>
            a.Numbers.SequenceEqual(b.Numbers) && a.Names.SequenceEqual(b.Names) && a.Held.SequenceEqual(b.Held) && a.Asks.Select(x => x.ToString()).SequenceEqual(b.Asks.Select(x => x.ToString())) && a.Minutes == b.Minutes;
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public void Every_sample_has_a_procedure_that_notices_every_fault_it_can_have(string sample)
    {
        var cell = Sample(sample);
        var coverage = Coverage.Of(Of(cell).Steps, FaultCases.Of(cell, new()));
        Assert.Empty(coverage.Missed.Select(m => m.Case.Id));
        Assert.Empty(coverage.Faults.Where(f => f.BeforeHarm < Coverage.Enough).Select(f => f.Case.Id));
    }

    [Fact]
    public void What_is_not_stated_is_a_gap_with_its_fields_and_the_step_is_there()
    {
        var lids = Sample("jar-lids");
        Assert.Empty(Of(lids).Gaps);
        var bare = lids with { Cabinet = lids.Cabinet with { Modules = lids.Cabinet.Modules.SetItem("axis-a", lids.Cabinet.Modules["axis-a"] with { DischargeTime = null }) }, Joints = lids.Joints };
        Assert.Contains(Of(bare).Gaps, g => g.Step == "motor-supply-locked" && g.Fields.SequenceEqual(["/cabinet/modules/axis-a/dischargeTime"]));
        Assert.Contains(Procedure.Of(lids, []).Gaps, g => g.Step == "joint:mount");
    }

    [Fact]
    public void The_stop_chain_is_proven_function_by_function_and_channel_by_channel_twice()
    {
        var lids = Sample("jar-lids");
        foreach (var step in Of(lids).Steps.Where(s => s.Kind is "stop-chain" or "first-enable"))
        {
            Assert.All(lids.Stopping.Functions.Values, f => Assert.Contains(step.Names, n => n.StartsWith(f.Name!, StringComparison.Ordinal)));
            Assert.Contains(step.Asks, a => a is AskedCount { Id: "channels" } c && c.Expected == lids.Stopping.Functions.Values.Sum(f => f.Channels.Count));
        }
        Assert.Contains(Of(lids with { Stopping = new(), Guarding = new() }).Gaps, g => g.Step == "stop-chain" && g.Fields.SequenceEqual(["/stopping/functions"]));
    }

    [Fact]
    public void One_axis_is_plugged_in_after_the_other()
    {
        var ancestors = Ancestors(Of(Sample("jar-lids")));
        Assert.Contains("connect-axis:a", ancestors["connect-axis:b"]);
        Assert.Contains("connect-axis:b", ancestors["connect-axis:c"]);
    }
}

using System.Text;
using Trivet.Adapters;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Frames;
using Trivet.Motion;
using Trivet.Tooling;
using Xunit;

namespace Trivet.Core.Tests.Assessment;

/// <summary>What is computed stands in for what is not typed, in every trade, and is said.</summary>
public sealed class CompletionTests
{
    private static readonly Cell Lids = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;

    /// <summary>The sample with a narrower tolerance: its frame asks a wait after a move.</summary>
    private static readonly Cell Swinging = Lids with { Frame = Lids.Frame with { Limits = Lids.Frame.Limits with { SettleTolerance = 2e-5 } } };

    private static Cell Settle(Cell cell, string cycle, double? settle) =>
        cell with { Motion = cell.Motion with { Cycles = cell.Motion.Cycles.SetItem(cycle, cell.Motion.Cycles[cycle] with { Settle = settle }) } };

    private static Cell Plate(Cell cell, Func<ToolPart, ToolPart> change) => cell with { Tool = cell.Tool with { Parts = cell.Tool.Parts.SetItem("plate", change(cell.Tool.Parts["plate"])) } };

    [Fact]
    public void A_part_that_names_its_plate_is_as_heavy_and_as_thick_as_the_plate_whatever_is_typed()
    {
        var plate = PlateSearch.Solve(AdapterInput.Read(Lids, "adapter", new(), [])!).Chosen.Single();
        foreach (var cell in new[] { Plate(Lids, p => p with { Mass = null, Height = null, Shape = null, Diameter = null }), Plate(Lids, p => p with { Mass = 0.3 }) })
        {
            var assessed = Assess.Preview(cell);
            var part = assessed.Planned.Tool.Parts["plate"];
            Assert.Equal(plate.Mass, part.Mass!.Value, 1e-9);
            Assert.Equal(plate.Thickness, part.Height);
            Assert.Equal(plate.TurningInertia, ToolInputs.Read(assessed.Planned, new()).Elements[0].Body.About(default).Row2.Z, 1e-12);
            Assert.Same(cell, assessed.Cell);
            var payload = assessed.Ledger.Findings.OfType<Judged>().Single(f => f.Rule == ToolRules.Payload && f.Subject.Pointer == "/tool");
            Assert.Equal(plate.Mass + 0.420 + 0.085 + 0.009, payload.Value, 1e-9);
            Assert.Contains("/plates/adapter/material", payload.Inputs);
        }
    }

    [Fact]
    public void A_typed_mass_that_differs_falls_short_and_is_told_what_it_should_be()
    {
        var finding = Assess.Preview(Plate(Lids, p => p with { Mass = 0.110 })).Ledger.Findings.OfType<Judged>().Single(f => f.Rule == ToolRules.Plate && f.Subject.Pointer == "/tool/parts/plate/mass");
        Assert.Equal(Verdict.FallsShort, finding.Verdict);
        var advice = Assert.Single(finding.Advice);
        Assert.Equal(0.110, advice.From);
        var mended = Assess.Preview(Plate(Lids, p => p with { Mass = advice.To })).Ledger.Findings.Single(f => f.Id == finding.Id);
        Assert.Equal(Verdict.Holds, mended.Verdict);
    }

    [Fact]
    public void A_cycle_that_states_no_settling_time_is_timed_with_what_its_frame_asks()
    {
        var stop = TestContext.Current.CancellationToken;
        var assessor = new Assessor();
        var cell = Settle(Swinging, "to-left", null);
        var whole = assessor.Complete(cell, stop);
        var wait = whole.Waits.Single(w => w.Cycle == "to-left");
        Assert.Equal(WaitKnown.Computed, wait.Known);
        Assert.True(wait.Wait > 0, "this frame needs a wait");
        Assert.Equal(WaitKnown.Typed, whole.Waits.Single(w => w.Cycle == "to-right").Known);

        // Enough by the frame's own finding, and a hundredth less is not.
        double Margin(double settle) => new Assessor().OfFrame(assessor.Complete(Settle(Swinging, "to-left", settle), stop), stop)
            .Where(f => f.Rule == FrameRules.Settle && f.Subject.Pointer == "/motion/cycles/to-left").Min(f => f.Margin);
        Assert.True(Margin(wait.Wait) >= 0);
        Assert.True(Margin(wait.Wait - 0.01) < 0);

        // Two waits in a cycle: it is longer by both than with none. Belt stations pass on meanwhile, so the way itself changes a little.
        double Time(Cell of) => TimedCycle.Of(of, "to-left").ByController!.Controller.CycleTime;
        Assert.Equal(2 * wait.Wait, Time(whole.Cell) - Time(Settle(Swinging, "to-left", 0)), 0.2 * wait.Wait);
    }

    [Fact]
    public void A_rate_rests_on_the_frame_only_where_the_wait_is_computed()
    {
        var stop = TestContext.Current.CancellationToken;
        const string Joints = "/frame/joints/stiffnessFrom";
        Finding Rate(Cell cell)
        {
            var assessor = new Assessor();
            assessor.Complete(cell, stop);
            return assessor.Preview(cell).Ledger.Findings.Single(f => f.Rule == MotionRules.PeakRate);
        }

        Assert.DoesNotContain(Joints, Rate(Swinging).Inputs);
        Assert.Contains(Joints, Rate(Settle(Swinging, "to-left", null)).Inputs);
    }

    [Fact]
    public void A_preview_takes_the_last_computed_wait_and_says_so()
    {
        var stop = TestContext.Current.CancellationToken;
        var assessor = new Assessor();
        var cell = Settle(Swinging, "to-left", null);
        Assert.Equal(WaitKnown.NotComputed, assessor.Preview(cell).Waits[0].Known);
        double wait = assessor.Complete(cell, stop).Waits[0].Wait;
        Assert.Equal(new CycleWait("to-left", WaitKnown.Computed, wait), assessor.Preview(cell).Waits[0]);
        var edited = cell with { Frame = cell.Frame with { RobotMass = cell.Frame.RobotMass + 4 } };
        var preview = assessor.Preview(edited);
        Assert.Equal(new CycleWait("to-left", WaitKnown.LastComputed, wait), preview.Waits[0]);
        Assert.False(preview.Proved);
    }

    [Fact]
    public void A_rate_is_open_while_the_frame_is_not_known_to_settle()
    {
        // Hardly damped and held to a hundred nanometres: the swing of one wait reaches the next, whatever wait is tried.
        var cell = Settle(Lids, "to-left", null);
        cell = cell with { Frame = cell.Frame with { DampingFrom = 1e-5, DampingTo = 1e-5, Limits = cell.Frame.Limits with { SettleTolerance = 1e-7 } } };
        var assessor = new Assessor();
        Assert.All(Rates(assessor.Preview(cell)), r => Assert.Equal(OpenReason.NotComputed, r.OpenBecause));
        var proved = assessor.Prove(cell, null, TestContext.Current.CancellationToken, withAdvice: false);
        Assert.Equal(WaitKnown.NotFound, proved.Waits.Single(w => w.Cycle == "to-left").Known);
        Assert.All(Rates(proved), r => Assert.Equal((Verdict.Open, OpenReason.Failed), (r.Verdict, r.OpenBecause)));
        Assert.All(Rates(proved), r => Assert.Contains("/motion/cycles/to-left/settle", r.Inputs));
        Assert.All(Rates(assessor.Preview(cell)), r => Assert.Equal(OpenReason.Failed, r.OpenBecause));

        // A person may know better: a typed wait is held against the frame and the rate is judged again.
        Assert.All(Rates(assessor.Preview(Settle(cell, "to-left", 3))), r => Assert.NotEqual(Verdict.Open, r.Verdict));

        static Finding[] Rates(Assessed of)
        {
            Finding[] rates = [.. of.Ledger.Findings.Where(f => f.Rule == MotionRules.MeanRate || f.Rule == MotionRules.PeakRate)];
            Assert.Equal(2, rates.Length);
            return rates;
        }
    }

    [Fact]
    public void Where_nothing_is_left_to_computation_the_cell_is_the_same()
    {
        var typed = Lids with { Plates = Lids.Plates.Clear() };
        Assert.Same(typed, Assess.Preview(typed).Planned);
    }
}

using System.Text;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Frames;
using Trivet.Motion;
using Xunit;

namespace Trivet.Core.Tests.Frames;

/// <summary>What the frame says in the ledger.</summary>
public class FrameStageTests
{
    private static readonly Cell Lids = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;

    private static StagePlan Of(Cell cell) => FrameStage.Of(cell, TimedCycle.Of(cell), new(), new HashSet<string>());

    private static Finding[] Judged(Cell cell)
    {
        var plan = Of(cell);
        return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Prove(TestContext.Current.CancellationToken))];
    }

    [Fact]
    public void The_sample_is_judged_whole_and_what_protects_people_is_at_best_tight()
    {
        var findings = Judged(Lids);
        foreach (var rule in new[] { FrameRules.Frequency, FrameRules.Sag, FrameRules.Tilt }) Assert.Single(findings, f => f.Rule == rule);
        Assert.Equal(4, findings.Count(f => f.Rule == FrameRules.Settle));
        Assert.Equal(2, findings.Count(f => f.Rule == FrameRules.Anchor));
        Assert.Equal(2, findings.Count(f => f.Rule == FrameRules.AnchorShear));
        Assert.Equal(2, findings.Count(f => f.Rule == FrameRules.AnchorTogether));
        Assert.All(findings.Where(f => double.IsPositiveInfinity(f.Rule.ComfortBand)), f => Assert.Equal(Verdict.Tight, f.Verdict));
        Assert.All(findings, f => Assert.True(f.Verdict is Verdict.Holds or Verdict.Tight, f.Id));
    }

    [Fact]
    public void A_softer_frame_takes_longer_to_settle_than_the_cycle_plans()
    {
        var soft = Lids with
        {
            Frame = Lids.Frame with
            {
                Members = Lids.Frame.Members.RemoveRange(Lids.Frame.Members.Keys.Where(k => k.StartsWith("brace", StringComparison.Ordinal))),
                Limits = Lids.Frame.Limits with { SettleTolerance = 1e-5 },
            },
        };
        var settle = Judged(soft).OfType<Judged>().Where(f => f.Rule == FrameRules.Settle).ToArray();
        Assert.Contains(settle, f => f.Verdict == Verdict.FallsShort && f.Value > f.Limit.Upper);
        Assert.All(settle, f => Assert.Equal(Assurance.Sampled, f.Assurance));
    }

    /// <summary>The case that coarse samples missed: single stiffness 50 kN·m/rad swings beyond what seven stiffnesses show.</summary>
    [Fact]
    public void The_band_of_the_swing_left_takes_in_each_single_stiffness()
    {
        var band = Residual(Lids);
        foreach (double joint in new[] { 3.1e4, 4.3e4, 4.9e4, 5.0e4, 5.1e4, 6.2e4 })
        {
            var one = Residual(Lids with { Frame = Lids.Frame with { Joints = Lids.Frame.Joints with { StiffnessFrom = joint, StiffnessTo = joint } } });
            Assert.True(one.Largest <= band.Largest * band.Rise, $"{joint}: {one.Largest} beyond {band.Largest}");
        }

        static (double Largest, double Rise) Residual(Cell cell)
        {
            var report = FrameReport.Of(cell, [], TestContext.Current.CancellationToken);
            var settling = report.Under.Single(u => u.Load.Name == "to-right").Settling.Single(s => s.Wait == "place");
            return (settling.Samples.Max(s => s.Residual), report.Study!.FineJoints.Rise);
        }
    }

    [Fact]
    public void A_settling_time_that_is_not_planned_counts_as_none_and_the_one_advised_is_enough()
    {
        var silent = Lids with
        {
            Frame = Lids.Frame with { Limits = Lids.Frame.Limits with { SettleTolerance = 1e-5 } },
            Motion = Lids.Motion with { Cycles = Lids.Motion.Cycles.SetItem("to-right", Lids.Motion.Cycles["to-right"] with { Settle = null }) },
        };
        var advice = Judged(silent).OfType<Judged>().Where(f => f.Rule == FrameRules.Settle && f.Subject.Pointer == "/motion/cycles/to-right" && f.Verdict == Verdict.FallsShort)
            .SelectMany(f => f.Advice).Distinct().ToArray();
        var one = Assert.Single(advice);
        Assert.Equal("/motion/cycles/to-right/settle", one.Pointer);
        Assert.True(double.IsNaN(one.From) && one.To > 0);
        var then = silent with { Motion = silent.Motion with { Cycles = silent.Motion.Cycles.SetItem("to-right", silent.Motion.Cycles["to-right"] with { Settle = one.To }) } };
        Assert.All(Judged(then).Where(f => f.Rule == FrameRules.Settle && f.Subject.Pointer == "/motion/cycles/to-right"), f => Assert.True(f.Verdict is Verdict.Holds or Verdict.Tight));
    }

    [Fact]
    public void Anchors_are_held_against_a_stop_harder_than_the_plan()
    {
        double Pull(double? factor) => Judged(Lids with { Frame = Lids.Frame with { LoadFactor = factor } }).OfType<Judged>().Where(f => f.Rule == FrameRules.Anchor).Max(f => f.Value);
        double once = Pull(1), twice = Pull(null), thrice = Pull(3);
        Assert.True(twice > once);
        // Weight counts once, so the pull is a straight line over the factor once motion is what lifts the same foot.
        Assert.Equal(twice - once, thrice - twice, 0.01 * Math.Abs(twice));
        var wrong = Assert.Single(Judged(Lids with { Frame = Lids.Frame with { LoadFactor = 0 } }).OfType<Unjudged>());
        Assert.Equal(("/frame/loadFactor", FrameReasons.NotPositive), (wrong.Subject.Pointer, wrong.Detail!));
    }

    [Fact]
    public void What_is_missing_is_asked_for_when_it_is_built_and_not_before()
    {
        var bare = Lids with { Frame = Lids.Frame with { Joints = new(), Feet = new() } };
        var missing = Judged(bare).OfType<Unjudged>().SelectMany(f => f.Missing).ToArray();
        Assert.Contains("/frame/joints/stiffnessFrom", missing);
        Assert.Contains("/frame/feet/anchored", missing);
        var early = Of(bare with { Depth = Depth.Quote });
        Assert.Empty(early.Findings);
        Assert.Contains(early.Coverage, c => c.Reason == CommonReasons.NotAskedYet);
        Assert.Equal(FrameReasons.None, Assert.Single(Of(Lids with { Frame = new() }).Coverage).Reason);
    }

    [Fact]
    public void What_can_not_be_is_named_where_it_stands()
    {
        var wrong = Lids with
        {
            Frame = Lids.Frame with
            {
                Members = Lids.Frame.Members.SetItem("low-left", Lids.Frame.Members["low-left"] with { Profile = "extrusion-6" }),
                Joints = Lids.Frame.Joints with { StiffnessTo = 1e3 },
                MountPoints = Lids.Frame.MountPoints.RemoveRange(["front-left", "front-right"]),
            },
        };
        var reasons = Judged(wrong).OfType<Unjudged>().Select(f => (f.Subject.Pointer, f.Detail?.Id)).ToArray();
        Assert.Contains(("/frame/members/low-left/profile", FrameReasons.NoSuchProfile.Id), reasons);
        Assert.Contains(("/frame/joints/stiffnessFrom", FrameReasons.FromAboveTo.Id), reasons);
    }

    [Fact]
    public void A_member_that_meets_nothing_is_named_as_loose()
    {
        var floating = new FrameMember { Order = 99, FromX = 0, FromY = 0, FromZ = 0.4, ToX = 0.2, ToY = 0, ToZ = 0.4, Profile = "extrusion-40" };
        var loose = Judged(Lids with { Frame = Lids.Frame with { Members = Lids.Frame.Members.Add("floating", floating) } });
        var told = Assert.Single(loose.OfType<Unjudged>(), f => f.Rule == FrameRules.Described);
        Assert.Equal(["/frame/members/floating"], told.Detail!.Fields);
    }

    [Fact]
    public void An_unanchored_frame_is_judged_by_what_it_takes_to_tip_it()
    {
        var free = Judged(Lids with { Frame = Lids.Frame with { Feet = Lids.Frame.Feet with { Anchored = false } } });
        Assert.Equal(2, free.Count(f => f.Rule == FrameRules.Overturning && f.Verdict == Verdict.Tight));
        Assert.DoesNotContain(free, f => f.Rule == FrameRules.Anchor);
    }

    [Fact]
    public void Each_finding_declares_what_it_rests_on()
    {
        // Every declared field that holds a length, mass or stiffness of the frame moves the study; a field that is not declared moves nothing.
        var plan = Of(Lids);
        Assert.All(plan.Tasks, t => Assert.All(t.Prove(TestContext.Current.CancellationToken), f => Assert.Empty(f.Inputs.Except(t.Used.Select(u => u.Key)))));
        var other = Lids with { Cabinet = Lids.Cabinet with { Note = "moved" }, Brief = Lids.Brief with { Customer = "another" } };
        Assert.Equal(Judged(Lids).Select(f => (f.Id, f.Margin)), Judged(other).Select(f => (f.Id, f.Margin)));
        foreach (var task in Of(other).Tasks) Assert.Equal(plan.Tasks.Single(t => t.Name == task.Name).Used, task.Used);
    }

    [Fact]
    public void A_box_by_its_dimensions_is_the_frame_of_the_same_members()
    {
        var box = Lids.Frame with
        {
            Members = Keyed.Empty<FrameMember>(),
            Box = new()
            {
                Width = 1, Depth = 0.9, Height = 1.77, LowBeams = 0.25, CrossBeams = 2, CrossBeamSpacing = 0.4, Braces = BoxBraces.Back,
                PostProfile = "extrusion-60", CrossBeamProfile = "extrusion-40x80", BraceProfile = "extrusion-40",
            },
        };
        var bars = FrameMembers.Of(box, new());
        var free = box with
        {
            Box = new(),
            Members = bars.Select((b, i) => (b, i)).Aggregate(Keyed.Empty<FrameMember>(), (all, m) => all.Add(m.b.Id, new()
            {
                Order = m.i, FromX = m.b.From.X, FromY = m.b.From.Y, FromZ = m.b.From.Z, ToX = m.b.To.X, ToY = m.b.To.Y, ToZ = m.b.To.Z, Profile = m.b.Profile,
            })),
        };
        Assert.Equal(4 + 8 + 2 + 1, bars.Length);
        var (one, two) = (FrameReport.Of(Lids with { Frame = box }, [], TestContext.Current.CancellationToken).Study!, FrameReport.Of(Lids with { Frame = free }, [], TestContext.Current.CancellationToken).Study!);
        for (int i = 0; i < 6; i++) Assert.Equal(one.Band(i).Low, two.Band(i).Low, 1e-6);
    }
}

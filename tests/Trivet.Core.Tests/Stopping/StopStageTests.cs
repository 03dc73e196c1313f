using System.Text;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Stopping;
using Xunit;

namespace Trivet.Core.Tests.Stopping;

/// <summary>One sample that nothing can be said against, and one change for each rule that must notice it.</summary>
public sealed class StopStageTests
{
    private static readonly Cell Lids = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;
    private static readonly Cell Biscuits = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("biscuits")!.Text), "biscuits").Cell!;

    [Fact]
    public void A_sample_that_is_whole_is_tight_and_never_holds()
    {
        foreach (var cell in new[] { Lids, Biscuits })
        {
            var findings = All(cell);
            Assert.True(findings.Length > 20);
            Assert.All(findings, f => Assert.Equal((f.Id, Verdict.Tight), (f.Id, f.Verdict)));
            Assert.All(findings, f => Assert.Equal(double.PositiveInfinity, f.Rule.ComfortBand));
        }
    }

    [Fact]
    public void A_level_below_the_required_one_falls_short() =>
        Only("stop.level", With(Lids, "guard", f => f with { Risk = f.Risk with { Avoidance = RiskAvoidance.P2 } }), "/stopping/functions/guard");

    [Fact]
    public void A_category_that_can_not_come_to_the_level_falls_short() =>
        Only("stop.architecture", With(Lids, "main-switch", f => f with { Category = SafetyCategory.B }), "/stopping/functions/main-switch");

    [Fact]
    public void One_channel_does_not_do_for_category_3() =>
        Only("stop.channels", With(Lids, "guard", f => f with { Channels = f.Channels.Remove("second") }), "/stopping/functions/guard");

    [Fact]
    public void Failures_above_the_band_of_the_level_fall_short() =>
        Only("stop.failure-rate", With(Lids, "emergency-stop", f => f with { FailureRate = 1.1e-6 / 3600 }), "/stopping/functions/emergency-stop");

    [Fact]
    public void A_channel_on_standard_inputs_falls_short_and_names_the_bank()
    {
        var cell = With(Lids, "guard", f => f with { Channels = f.Channels.SetItem("first", new() { Signal = "low-a" }) });
        var found = Only("stop.ends", cell, "/stopping/functions/guard");
        Assert.Equal(["/io/banks/inputs/safety"], Assert.IsType<YesNo>(found).Evidence);
        Only("stop.ends", Biscuits with { Io = Biscuits.Io with { Banks = Biscuits.Io.Banks.SetItem("safe", Biscuits.Io.Banks["safe"] with { Safety = null }) } }, "/stopping/functions/stop");
    }

    [Fact]
    public void An_emergency_stop_that_keeps_power_falls_short() =>
        Only("stop.category", With(Lids, "emergency-stop", f => f with { StopCategory = StopCategory.Two }), "/stopping/functions/emergency-stop");

    [Fact]
    public void A_reset_that_starts_or_does_not_see_falls_short()
    {
        Only("stop.reset", With(Lids, "guard", f => f with { ResetStarts = true }), "/stopping/functions/guard");
        Only("stop.reset", With(Lids, "guard", f => f with { ResetSees = false }), "/stopping/functions/guard");
        Only("stop.reset", With(Lids, "guard", f => f with { ResetBy = null }), "/stopping/functions/guard", Verdict.Open);
    }

    [Fact]
    public void What_the_guarding_states_has_its_function()
    {
        var opens = Biscuits with { Guarding = Biscuits.Guarding with { Fences = Biscuits.Guarding.Fences.SetItem("left", Biscuits.Guarding.Fences["left"] with { Opens = true }) } };
        Assert.Equal("interlock", Only("stop.required", opens, "/guarding/fences/left").Subject.Case);
        Only("stop.required", With(Biscuits, "curtain", f => f with { Guards = null }), "/guarding/devices/front");
        Only("stop.required", Lids with { Stopping = Lids.Stopping with { Functions = Lids.Stopping.Functions.SetItem("emergency-stop", Lids.Stopping.Functions["emergency-stop"] with { Kind = SafetyKind.Other }) } }, "/stopping");
        Assert.Equal(Verdict.Open, All(Lids with { Stopping = new(), Hazards = Lids.Hazards.Clear() }).Single(f => f.Rule == StopRules.Required).Verdict);
        Assert.DoesNotContain(All(Lids with { Stopping = new(), Hazards = Lids.Hazards.Clear(), Depth = Depth.Quote }), f => f.Verdict is Verdict.Open or Verdict.FallsShort);
    }

    [Fact]
    public void A_function_without_its_trigger_is_open_and_names_it()
    {
        var found = Only("stop.described", With(Lids, "guard", f => f with { Trigger = " " }), "/stopping/functions/guard", Verdict.Open);
        Assert.Equal(["/stopping/functions/guard/trigger"], Assert.IsType<Unjudged>(found).Missing);
        Only("stop.described", With(Lids, "guard", f => f with { RampTime = null }), "/stopping/functions/guard", Verdict.Open);
        Only("stop.described", With(Lids, "guard", f => f with { Guards = "moat" }), "/stopping/functions/guard/guards", Verdict.Open);
    }

    [Fact]
    public void What_nothing_holds_falls_short_at_every_stop_that_cuts_the_torque()
    {
        var loose = Lids with { Robot = Lids.Robot with { Common = Lids.Robot.Common with { Holding = Holding.Nothing } } };
        var short1 = All(loose).Where(f => f.Verdict == Verdict.FallsShort).ToArray();
        Assert.Equal(["/stopping/functions/emergency-stop", "/stopping/functions/enabling", "/stopping/functions/guard"], short1.Select(f => f.Subject.Pointer).Order(StringComparer.Ordinal));
        Assert.All(short1, f => Assert.Equal(["/robot/common/holding"], Assert.IsType<YesNo>(f).Evidence));
        var propped = All(Lids with { Robot = Lids.Robot with { Common = Lids.Robot.Common with { Holding = Holding.Prop } } });
        Assert.Equal(3, propped.Count(f => f is Unjudged { Verdict: Verdict.Open } && f.Rule == StopRules.Held));
    }

    [Fact]
    public void Where_nothing_says_how_far_it_may_sink_that_is_said()
    {
        Assert.Contains(StopStage.Of(Biscuits).Coverage, c => c.Rule == StopRules.Sink && c.Reason == StopReasons.NoSink);
        Assert.DoesNotContain(StopStage.Of(Lids).Coverage, c => c.Rule == StopRules.Sink);
    }

    [Fact]
    public void A_slow_brake_lets_the_tool_sink_further_than_allowed()
    {
        var found = Only("stop.sink", With(Lids with { Robot = Lids.Robot with { Common = Lids.Robot.Common with { BrakeDelay = 0.1 } } }, "guard", f => f with { TorqueTime = null }), "/stopping/functions/guard", others: true);
        Assert.InRange(Assert.IsType<Judged>(found).Value, 0.02, 0.06);
    }

    /// <summary>Field by field: where one is cleared, no finding moves that does not name it.</summary>
    [Theory]
    [InlineData("jar-lids")]
    [InlineData("biscuits")]
    public void A_finding_moves_only_with_what_it_names(string sample)
    {
        var cell = sample == "jar-lids" ? Lids : Biscuits;
        var before = Told(cell);
        int changes = 0;
        var moved = new List<string>();
        foreach (string section in (string[])["/depth", "/stopping", "/hazards", "/guarding", "/io", "/robot", "/pneumatics", "/drives", "/cabinet/modules", "/handling", "/tool", "/stations"])
            foreach (var field in CellFields.Below(cell, section).Where(f => f.Text.Length > 0))
            {
                if (CellFields.Set(cell, field.Pointer, "").Cell is not { } changed) continue;
                changes++;
                var after = Told(changed).ToDictionary(f => f.Finding.Id + f.Finding.GetType().Name, f => f.Said);
                foreach (var (finding, said) in before.Where(f => !f.Finding.Inputs.Contains(field.Pointer)))
                    if (!after.TryGetValue(finding.Id + finding.GetType().Name, out string? now) || now != said) moved.Add($"{finding.Id} moved with {field.Pointer}");
            }
        Assert.True(changes > 300);
        Assert.Empty(moved);

        static (Finding Finding, string Said)[] Told(Cell of) =>
            [.. (StopStage.Of(of) + HazardStage.Of(of)).Findings.Select(f => (f, $"{f.Verdict} {(f is YesNo y ? string.Join(' ', y.Evidence) : f is Unjudged u ? string.Join(' ', u.Missing) + u.Detail?.Id : "")}"))];
    }

    internal static Finding[] All(Cell cell)
    {
        var plan = StopStage.Of(cell) + HazardStage.Of(cell);
        return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Prove(TestContext.Current.CancellationToken))];
    }

    internal static Finding Only(string rule, Cell cell, string pointer, Verdict verdict = Verdict.FallsShort, bool others = false)
    {
        var bad = All(cell).Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open).ToArray();
        var found = Assert.Single(bad, f => f.Rule.Id == rule && f.Subject.Pointer == pointer);
        if (!others) Assert.Single(bad);
        Assert.Equal(verdict, found.Verdict);
        return found;
    }

    private static Cell With(Cell cell, string function, Func<SafetyFunction, SafetyFunction> change) =>
        cell with { Stopping = cell.Stopping with { Functions = cell.Stopping.Functions.SetItem(function, change(cell.Stopping.Functions[function])) } };
}

using System.Text;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Drives;

public sealed class DriveStageTests
{
    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    private static StagePlan StageOf(Cell cell) => DriveStage.Of(cell, TimedCycle.Of(cell));

    /// <summary>The samples are invented so that their drives bear what their cycles ask.</summary>
    [Theory, InlineData("jar-lids", 4), InlineData("biscuits", 3)]
    public void Every_axis_of_every_cycle_of_a_sample_is_judged_and_bears_it(string name, int axes)
    {
        var cell = Sample(name);
        var plan = StageOf(cell);
        Finding[] findings = [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Sample())];
        Assert.All(findings, f => Assert.True(f.Verdict is Verdict.Holds or Verdict.Tight, $"{f.Id}: {f.Verdict}, {f.Margin}"));
        foreach (var rule in new[] { DriveRules.Torque, DriveRules.Speed, DriveRules.Temperature, DriveRules.InertiaRatio })
            Assert.Equal(axes * cell.Motion.Cycles.Count, findings.Count(f => f.Rule == rule));
        foreach (var rule in new[] { DriveRules.VoltageLow, DriveRules.VoltageHigh, DriveRules.Braking, DriveRules.SupplyPower })
            Assert.Equal(cell.Motion.Cycles.Count, findings.Count(f => f.Rule == rule));
        Assert.Equal(axes, findings.Count(f => f.Rule == DriveRules.Resolution));
        Assert.All(findings.Where(f => f.Rule == DriveRules.Torque), f => Assert.True(f is { WorstTime: >= 0, Worst: not null }));
        // What each task says declares what it was remembered under.
        Assert.All(plan.Tasks, t => Assert.All(t.Sample(), f => Assert.Empty(f.Inputs.Except(t.Used.Select(u => u.Key)))));
    }

    [Fact]
    public void A_weaker_motor_falls_short_with_advice_that_helps()
    {
        var cell = Sample("jar-lids");
        var motor = cell.Drives.Motors["rail-motor"];
        double asked = Bearing(cell).Where(f => f.Subject.Case == "a").Max(f => f.Value);
        cell = cell with { Drives = cell.Drives with { Motors = cell.Drives.Motors.SetItem("rail-motor", motor with { ContinuousTorque = 0.97 * asked }) } };
        var bearing = Bearing(cell);
        Assert.Contains(bearing, f => f.Verdict == Verdict.FallsShort);
        Assert.Contains(bearing, f => !f.Advice.IsEmpty);
        Assert.All(bearing.SelectMany(f => f.Advice), a => Assert.True(a.MarginThen >= DriveRules.Continuous.ComfortBand));

        static Judged[] Bearing(Cell cell) =>
            [.. StageOf(cell).Tasks.SelectMany(t => t.Prove(CancellationToken.None)).OfType<Judged>().Where(f => f.Rule == DriveRules.Continuous)];
    }

    [Fact]
    public void Without_a_cycle_nothing_is_asked_of_the_drives_but_what_can_not_be_is_told()
    {
        var plan = StageOf(ReachCells.Rail);
        Assert.Empty(plan.Findings);
        Assert.Equal(DriveReasons.NoCycles, Assert.Single(plan.Coverage).Reason);
        var wrong = StageOf(DrivenCells.Rail.WithCommon(d => d with { Efficiency = 2 }));
        Assert.Contains(wrong.Findings, f => f is Unjudged u && u.Detail == DriveReasons.EfficiencyAboveOne);
    }

    [Fact]
    public void Early_on_drives_are_not_asked_for()
    {
        var plan = StageOf(Sample("labels"));
        Assert.Empty(plan.Findings);
        Assert.Empty(plan.Tasks);
        Assert.Contains(plan.Coverage, c => c.Rule == DriveRules.Described && c.Reason == CommonReasons.NotAskedYet);
    }
}

using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Xunit;

namespace Trivet.Core.Tests.Motion;

/// <summary>Every change that is advised is made, and the whole cell judged anew by the assessment, which knows nothing of the search.</summary>
public sealed class MotionAdviceTests
{
    [Theory]
    [InlineData("motion.speed")]
    [InlineData("motion.acceleration")]
    [InlineData("motion.jerk")]
    [InlineData("motion.joint-preload")]
    [InlineData("motion.peak-rate")]
    [InlineData("drive.torque")]
    public void What_is_advised_gives_what_it_promises_and_harms_nothing(string rule)
    {
        var cell = rule switch
        {
            "motion.speed" => Limited(MotionCells.Planar, d => d with { LargestSpeed = 0.6 }),
            "motion.acceleration" => Limited(MotionCells.Planar, d => d with { LargestAcceleration = 8 }),
            "motion.jerk" => Limited(MotionCells.Planar, d => d with { LargestJerk = 200 }),
            "motion.joint-preload" => MotionCells.Planar with { Robot = MotionCells.Planar.Robot with { Common = MotionCells.Planar.Robot.Common with { JointPreload = 3.4 } } },
            "motion.peak-rate" => MotionCells.Planar with { Brief = MotionCells.Planar.Brief with { PeakRate = 0.78 } },
            _ => Limited(MotionCells.Planar, d => d with
            {
                Motors = d.Motors.SetItem("motor", d.Motors["motor"] with { TorqueConstant = 0.1, Resistance = 0.3, Curve = Keyed.Empty<TorquePoint>().Add("a", new() { Speed = 0, Torque = 0.3 }).Add("b", new() { Speed = 450, Torque = 0.25 }) }),
                Supply = new() { Voltage = 48, Resistance = 0.1, LargestPower = 500, Capacitance = 0.01 },
            }),
        };
        cell = cell with { Depth = Depth.Quote };
        var before = Assess.Preview(cell).Ledger.Findings;
        var wanting = before.Where(f => f.Rule.Id == rule && f.Verdict == Verdict.FallsShort).ToArray();
        Assert.True(wanting.Length > 0, string.Join("; ", before.OfType<Judged>().Where(f => f.Rule.Trade == Trade.Motion).Select(f => $"{f.Id} {f.Value:G4} of {f.Limit.Upper:G4}/{f.Limit.Lower:G4}")));
        int tried = 0;
        foreach (var finding in wanting)
        {
            foreach (var advice in MotionAdvice.For(cell, finding, TestContext.Current.CancellationToken))
            {
                tried++;
                var then = Assess.Preview(Changed(cell, advice)).Ledger.Findings.ToDictionary(f => f.Id);
                // The preview resolves the bound less finely; everything else is the same.
                if (rule != "motion.law") Assert.Equal(advice.MarginThen, then[finding.Id].Margin, 1e-9);
                Assert.True(then[finding.Id].Margin >= 0, $"{advice} leaves {then[finding.Id].Margin}");
                foreach (var other in then.Values.Where(f => f.Rule.Trade == Trade.Motion && f.Rule != MotionRules.Law && f.Verdict == Verdict.FallsShort))
                    Assert.True(before.Single(f => f.Id == other.Id).Margin <= other.Margin, $"{advice} harms {other.Id}");
            }
        }
        Assert.True(tried > 0, string.Join("; ", before.OfType<Judged>().Where(f => f.Rule.Trade == Trade.Motion).Select(f => $"{f.Id} {f.Value:G4} of {f.Limit.Upper:G4}/{f.Limit.Lower:G4}")));
    }

    /// <summary>Slowed down by the setting that rules, the margin follows the law of scaling: a peak speed v of a move that reaches its path speed falls in proportion.</summary>
    [Fact]
    public void A_speed_advised_follows_the_scaling_of_time()
    {
        var cell = Limited(MotionCells.Planar.With(s => s with { PathSpeed = 0.3, PathAcceleration = 20, PathJerk = 2000 }), d => d with { LargestSpeed = 0.3, LargestAcceleration = 400, LargestJerk = 1e6 });
        cell = cell with { Brief = cell.Brief with { MeanRate = null, PeakRate = null } };
        var finding = Assess.Preview(cell).Ledger.Findings.OfType<Judged>().First(f => f.Rule == MotionRules.Speed && f.Verdict == Verdict.FallsShort);
        var advice = MotionAdvice.For(cell, finding, TestContext.Current.CancellationToken).Single(a => a.Pointer == "/motion/settings/pathSpeed");
        Assert.Equal(1 - (1 - finding.Margin) * advice.To / advice.From, advice.MarginThen, 0.01);
        Assert.InRange(advice.MarginThen, finding.Rule.ComfortBand, finding.Rule.ComfortBand + 0.06);
    }

    [Fact]
    public void The_proof_brings_the_advice_and_the_preview_does_not()
    {
        var cell = MotionCells.Planar with { Brief = MotionCells.Planar.Brief with { PeakRate = 0.78 } };
        Assert.All(Assess.Preview(cell).Ledger.Findings.Where(f => f.Rule == MotionRules.PeakRate), f => Assert.Empty(f.Advice));
        var proved = Assess.Prove(cell, null, TestContext.Current.CancellationToken).Ledger.Findings.Single(f => f.Rule == MotionRules.PeakRate);
        Assert.NotEmpty(proved.Advice);
    }

    private static Cell Limited(Cell cell, Func<Trivet.Cells.Drives, Trivet.Cells.Drives> change) => cell with { Drives = change(cell.Drives) };

    private static Cell Changed(Cell cell, Advice advice) => advice.Pointer switch
    {
        "/motion/settings/pathSpeed" => cell.With(s => s with { PathSpeed = advice.To }),
        "/motion/settings/pathAcceleration" => cell.With(s => s with { PathAcceleration = advice.To }),
        "/motion/settings/pathJerk" => cell.With(s => s with { PathJerk = advice.To }),
        "/motion/settings/blend" => cell.With(s => s with { Blend = advice.To }),
        "/motion/cycles/across/pickDwell" => cell.WithCycle("across", c => c with { PickDwell = advice.To }),
        "/motion/cycles/across/placeDwell" => cell.WithCycle("across", c => c with { PlaceDwell = advice.To }),
        _ => throw new ArgumentOutOfRangeException(nameof(advice), advice.Pointer, "no such change is known here"),
    };
}

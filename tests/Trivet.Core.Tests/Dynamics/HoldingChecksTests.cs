using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Dynamics;

public class HoldingChecksTests
{
    private static readonly Brief TwoParts = new()
    {
        Parts = Keyed.Empty<Part>().Add("jar", new() { Mass = 0.4 }).Add("lid", new() { Mass = 0.01 }),
    };

    private static readonly Cell Rail = Heavy(ReachCells.Rail, c => c with { CarriageMass = 0.9, RodMass = 0.06, Holding = Holding.Brake, HoldingForce = 40 });

    private static readonly Cell Crank = Heavy(
        ReachCells.Crank,
        c => c with { ArmMass = 1.9, ArmCentre = -0.03, ArmInertia = 0.06, RodMass = 0.05, Holding = Holding.Counterweight, HoldingForce = 20 });

    private static readonly Cell Planar = Heavy(ReachCells.Planar, c => c with { CarriageMass = 0.9, RodMass = 0.06, Holding = Holding.Friction, HoldingForce = 60 });

    private static Cell Heavy(Cell cell, Func<ChainDescription, ChainDescription> common) => cell with
    {
        Robot = cell.Robot with { Common = common(cell.Robot.Common), PlatformMass = 0.5, Rotary = cell.Robot.Rotary with { Inertia = 1e-4 } },
        Mount = cell.Mount with { TiltX = 0.01 },
        Brief = TwoParts,
    };

    private static Cell With(Cell cell, Func<ChainDescription, ChainDescription> common) =>
        cell with { Robot = cell.Robot with { Common = common(cell.Robot.Common) } };

    private static Finding[] Prove(Cell cell)
    {
        var plan = HoldingChecks.Of(cell);
        return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Prove(CancellationToken.None))];
    }

    /// <summary>The largest load that the gripper, empty or with the jar, gives anywhere on a fine grid of a station's box.</summary>
    private static double Sampled(Cell cell, string station, int chain)
    {
        var geometry = CellGeometry.Of(cell);
        var box = geometry.Stations.Single(s => s.Id == station);
        double most = 0;
        foreach (string? part in new[] { null, "jar" })
        {
            var d = DynamicsInputs.Read(cell, part, new()).Dynamics!;
            for (int i = 0; i <= 20; i++)
                for (int j = 0; j <= 20; j++)
                    for (int k = 0; k <= 4; k++)
                        for (int turn = 0; turn <= 4; turn++)
                        {
                            var s = new Vec3(
                                box.Low.X + i / 20.0 * (box.High.X - box.Low.X), box.Low.Y + j / 20.0 * (box.High.Y - box.Low.Y),
                                box.Low.Z + k / 4.0 * (box.High.Z - box.Low.Z));
                            var p = geometry.PlatformFor(box.X_CS * s, box.RotaryFrom + turn / 4.0 * (box.RotaryTo - box.RotaryFrom), box.LinearAxisAt);
                            if (d.Robot.Planar) p = p with { Y = 0 };
                            most = Math.Max(most, Math.Abs(d.Inverse(p, Vec3.Zero, Vec3.Zero)[chain]));
                        }
        }
        return most;
    }

    [Theory]
    [InlineData("rail")]
    [InlineData("crank")]
    [InlineData("planar")]
    public void The_load_is_bounded_over_the_whole_volume_and_close_to_what_is_attained(string name)
    {
        var cell = name switch { "rail" => Rail, "crank" => Crank, _ => Planar };
        var ids = cell.Robot.Chains.InOrder().Select(c => c.Key).ToArray();
        var findings = Prove(cell);
        Assert.Equal(cell.Stations.Count * ids.Length, findings.Length);
        Assert.All(findings, f =>
        {
            var judged = Assert.IsType<Judged>(f);
            Assert.Equal(name == "crank" ? "motion.hold-turn" : "motion.hold", f.Rule.Id);
            double sampled = Sampled(cell, f.Subject.Pointer["/stations/".Length..], Array.IndexOf(ids, f.Subject.Case));
            Assert.True(judged.Bound >= sampled * (1 - 1e-12), $"{f.Id}: bound {judged.Bound} under {sampled}");
            // A grid misses the very worst place; a search that is far from its limit need not be close.
            Assert.InRange(judged.Value, 0.97 * sampled, judged.Bound);
            Assert.InRange(judged.Bound - judged.Value, 0, Math.Max(0.0051 * judged.Limit.Upper, 0.1001 * Math.Abs(judged.Limit.Upper - judged.Bound)));
            Assert.Equal(Assurance.Proved, judged.Assurance);
            Assert.Equal(Verdict.Holds, f.Verdict);
            Assert.NotNull(f.Worst);
        });
    }

    [Fact]
    public void A_holding_force_that_is_too_small_falls_short_and_one_with_little_to_spare_is_tight()
    {
        var value = Prove(Rail).OfType<Judged>().Single(f => f.Subject == new Subject("/stations/tray", "b"));
        Finding At(double force) => Prove(With(Rail, c => c with { HoldingForce = force })).Single(f => f.Id == value.Id);
        Assert.Equal(Verdict.FallsShort, At(value.Value * 0.99).Verdict);
        Assert.Equal(Verdict.Tight, At(value.Value * 1.3).Verdict);
        Assert.Equal(Verdict.Holds, At(value.Value * 1.6).Verdict);
    }

    [Fact]
    public void What_is_only_sampled_never_holds()
    {
        var findings = HoldingChecks.Of(Rail).Tasks.SelectMany(t => t.Sample()).ToArray();
        Assert.Equal(9, findings.Length);
        Assert.All(findings, f => Assert.Equal(Verdict.Open, f.Verdict));
    }

    [Fact]
    public void A_chain_that_nothing_holds_falls_short()
    {
        var own = Rail.Robot.Chains["b"] with { Holding = Holding.Nothing };
        var findings = Prove(Rail with { Robot = Rail.Robot with { Chains = Rail.Robot.Chains.SetItem("b", own) } });
        var nothing = Assert.IsType<YesNo>(Assert.Single(findings, f => f.Subject.Pointer == "/robot/chains/b"));
        Assert.Equal(Verdict.FallsShort, nothing.Verdict);
        Assert.Equal(["/robot/chains/b/holding"], nothing.Evidence);
        Assert.Equal(6, findings.OfType<Judged>().Count());
    }

    [Fact]
    public void Friction_that_nobody_measured_stays_open()
    {
        var findings = Prove(With(Planar, c => c with { HoldingForce = null }));
        Assert.Equal(2, findings.Length);
        Assert.All(findings, f =>
        {
            var open = Assert.IsType<Unjudged>(f);
            Assert.Equal(OpenReason.Missing, open.Reason);
            Assert.Equal(["/robot/common/holdingForce"], open.Missing);
        });
        Assert.All(Prove(With(Planar, c => c with { HoldingForce = 0 })), f => Assert.Equal(Verdict.FallsShort, f.Verdict));
    }

    [Fact]
    public void A_prop_is_not_judged_and_says_why()
    {
        var plan = HoldingChecks.Of(With(Rail, c => c with { Holding = Holding.Prop }));
        Assert.Empty(plan.Findings);
        Assert.Empty(plan.Tasks);
        Assert.Equal(3, plan.Coverage.Length);
        Assert.All(plan.Coverage, c => Assert.Equal(DynamicsReasons.HeldByProp, c.Reason));
    }

    [Fact]
    public void A_quote_waits_for_the_masses_and_a_build_asks_for_them()
    {
        var bare = Rail with { Robot = Rail.Robot with { PlatformMass = null } };
        Assert.All(Prove(bare), f => Assert.Equal(["/robot/platformMass"], Assert.IsType<Unjudged>(f).Missing));
        var quote = HoldingChecks.Of(bare with { Depth = Depth.Quote });
        Assert.Empty(quote.Findings);
        Assert.All(quote.Coverage, c => Assert.Equal(CommonReasons.NotAskedYet, c.Reason));
    }

    [Fact]
    public void A_mass_that_can_not_be_makes_it_fail_with_its_reason()
    {
        var findings = Prove(Rail with { Robot = Rail.Robot with { PlatformMass = -1 } });
        Assert.All(findings, f =>
        {
            Assert.Equal("/robot/platformMass", f.Subject.Pointer);
            Assert.Equal(DynamicsReasons.Negative, Assert.IsType<Unjudged>(f).Detail);
        });
        Assert.Equal(3, findings.Length);
    }
}

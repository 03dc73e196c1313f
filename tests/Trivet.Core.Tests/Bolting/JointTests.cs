using System.Collections.Immutable;
using System.Text;
using Trivet.Bolting;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Bolting;

/// <summary>Loads and their sharing out, held against balances of force and moment and against numbers a person gets by hand.</summary>
public sealed class JointTests
{
    private static Cell Sample => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;

    [Fact]
    public void The_forces_of_the_screws_balance_any_load()
    {
        var random = new Random(11);
        double N() => 200 * (random.NextDouble() - 0.5);
        for (int k = 0; k < 100; k++)
        {
            Vec2[] at = [.. Enumerable.Range(0, 3 + random.Next(6)).Select(_ => new Vec2(random.NextDouble(), random.NextDouble()))];
            var load = new JointForce(new(0, 0, N()), new(N(), N(), 0), 0);
            var forces = new BoltForces(at, hangs: false);
            double sum = 0, mx = 0, my = 0;
            for (int i = 0; i < at.Length; i++)
            {
                double f = forces.At(i, load).Pull;
                (sum, mx, my) = (sum + f, mx + f * at[i].Y, my - f * at[i].X);
            }
            Assert.Equal(load.Force.Z, sum, 1e-6);
            Assert.Equal(load.Moment.X, mx, 1e-6);
            Assert.Equal(load.Moment.Y, my, 1e-6);
        }
    }

    [Fact]
    public void Four_screws_share_a_moment_and_a_twist_as_by_hand()
    {
        var forces = new BoltForces(PublishedBoltingTests.Joint().Points, hangs: true);
        // 8 N·m about x over four screws 20 mm above and below: 100 N each; 40 N hang on them.
        var load = new JointForce(new(0, 0, -40), new(8, 0, 0), 0);
        Assert.Equal(10 - 100, forces.At(0, load).Pull, 1e-9);
        Assert.Equal(10 + 100, forces.At(2, load).Pull, 1e-9);
        // A twist of 5.656 N·m at 28.28 mm: 50 N each.
        Assert.Equal(50, forces.At(1, new(Vec3.Zero, new(0, 0, 0.2 * Math.Sqrt(800)), 0)).Shear, 1e-9);
        Assert.True(double.IsNaN(new BoltForces([new(0, 0), new(1, 0)], true).At(0, new(Vec3.Zero, new(1, 0, 0), 0)).Pull), "two screws carry no moment about their line");
    }

    [Fact]
    public void Screws_are_tightened_crosswise_each_once()
    {
        Assert.Equal([0, 2, 1, 3], JointResult.Crosswise(PublishedBoltingTests.Joint().Points));
        int[] six = JointResult.Crosswise([.. Enumerable.Range(0, 6).Select(i => Vec2.Polar(1, i * Math.PI / 3))]);
        Assert.Equal(Enumerable.Range(0, 6), six.Order());
        Assert.Equal(3, six[1]);
    }

    /// <summary>The mean of the reaction over a cycle is the weight of all that moves; the tool's joint at standstill carries the tool's weight.</summary>
    [Fact]
    public void Without_motion_the_joints_carry_the_weights()
    {
        var cell = Sample;
        var cycles = TimedCycle.Of(cell);
        Cell Slow(string id) => cell with { Joints = cell.Joints.SetItem(id, cell.Joints[id] with { LoadFactor = 1e-9, ForceZ = null }) };
        var tool = JointLoads.Of(Slow("plate-platform"), "plate-platform", cycles, new(), [])!();
        double empty = 0.032 + 0.420 + 0.085, loaded = empty + 0.009;
        Assert.Equal(-9.80665 * empty, tool.Instants.Max(i => i.Force.Z), 0.01);
        Assert.Equal(-9.80665 * loaded, tool.Instants.Min(i => i.Force.Z), 0.01);
        // Carriages 0.9 kg, rods 62 g, platform 340 g, tool; and on the way the lid.
        double moving = 3 * 0.9 + 6 * 0.062 + 0.340 + empty;
        var mount = JointLoads.Of(Slow("mount"), "mount", cycles, new(), [])!();
        Assert.All(mount.Instants, i => Assert.InRange(i.Force.Z, -9.82 * (moving + 0.02), -9.80 * moving));
        Assert.All(mount.Instants, i => Assert.True(i.Force.X is < 0.05 and > -0.05 && i.Force.Y is < 0.05 and > -0.05));
    }

    /// <summary>Newton: the force across the tool's joint is mass times the platform's acceleration, whose largest size the cycle's own series has.</summary>
    [Fact]
    public void The_tools_joint_carries_mass_times_acceleration()
    {
        var cell = Sample;
        var cycles = TimedCycle.Of(cell);
        var one = cell with { Joints = cell.Joints.SetItem("plate-platform", cell.Joints["plate-platform"] with { LoadFactor = 1 }) };
        var load = JointLoads.Of(one, "plate-platform", cycles, new(), [])!();
        double most = cycles.Max(c => c.Trace!.ToolAcceleration.Max()), mass = 0.537;
        double sideways = load.Instants.Max(i => (i.Force + mass * 9.80665 * Vec3.UnitZ).Norm);
        // With the lid, and what little the tool's parts lie off the axis.
        Assert.InRange(sideways, 0.98 * mass * most, 1.05 * (mass + 0.009) * most);
    }

    [Fact]
    public void The_samples_joints_hold_and_take_their_screws_from_the_plate()
    {
        var findings = JointStage.Of(Sample, TimedCycle.Of(Sample), new()).Tasks.SelectMany(t => t.Sample()).ToArray();
        Assert.Equal(3 * 6 + 1, findings.Length);
        Assert.All(findings, f => Assert.True(f.Verdict is Verdict.Holds or Verdict.Tight, f.Id));
        var results = JointStage.Results(Sample);
        Assert.Equal(["mount", "plate-platform", "plate-turn"], results.Select(r => r.Input.Id));
        Assert.Equal(("M5", 4), (results[1].Input.Thread.Name, results[1].Input.Points.Length));
    }

    /// <summary>
    /// By hand after VDI 2230-1 (formula from memory), M8 cap screw on a washer 16 × 1.6 mm: the head turns on the washer with its own 12.33 mm, hole 9 mm,
    /// so D = 10.665 mm and M/F at 0.10 is 0.16·1.25 + 0.58·0.1·7.188 + 0.1·10.665/2 = 1.1502 mm; 11 N·m with a wrench of 10 % make up to 10.52 kN. The layers are
    /// pressed on 12.33 + 2·1.6 = 15.53 mm.
    /// </summary>
    [Fact]
    public void A_washer_spreads_the_pressure_and_leaves_the_friction_under_the_head()
    {
        var cell = Sample with { Joints = Sample.Joints.SetItem("mount", Sample.Joints["mount"] with { Torque = 11 }) };
        var mount = JointStage.Results(cell).Single(r => r.Input.Id == "mount");
        Assert.Equal(15.53e-3, mount.Input.Bearing, 1e-9);
        Assert.Equal(1.1502e-3, Tightening.Arm(mount.Input, 0.10), 0.0001e-3);
        Assert.Equal(10_520, mount.PreloadTo, 10.0);
        // Without the washer the torque makes the same preload.
        var bare = JointResult.Solve(mount.Input with { Bearing = mount.Input.Screw.Bearing }, null);
        Assert.Equal(mount.PreloadTo, bare.PreloadTo, 1e-9);
        Assert.True(bare.PressureUse > mount.PressureUse);
    }

    [Fact]
    public void A_joint_with_too_little_torque_slips_and_one_that_is_not_whole_is_open()
    {
        Cell With(Func<Joint, Joint> change) => Sample with { Joints = Sample.Joints.SetItem("plate-turn", change(Sample.Joints["plate-turn"])) };
        Finding[] Of(Cell cell)
        {
            var plan = JointStage.Of(cell, TimedCycle.Of(cell), new());
            return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Sample())];
        }
        Assert.Contains(Of(With(j => j with { Torque = 0.5 })), f => f.Rule == JointRules.Slip && f.Verdict == Verdict.FallsShort);
        Assert.Contains(Of(With(j => j with { Torque = 9 })), f => f.Rule == JointRules.Screw && f.Verdict == Verdict.FallsShort);
        Assert.Equal("/joints/plate-turn/propertyClass", Assert.Single(Assert.IsType<Unjudged>(Assert.Single(Of(With(j => j with { PropertyClass = null })), f => f.Verdict == Verdict.Open)).Missing));
        Assert.Equal("/joints/plate-turn/side", Assert.Single(Of(With(j => j with { Side = JointSide.Between })), f => f.Verdict == Verdict.Open).Subject.Pointer);
        Assert.Equal("/joints/plate-turn/carriesFrom", Assert.Single(Of(With(j => j with { CarriesFrom = "nothing" })), f => f.Verdict == Verdict.Open).Subject.Pointer);
    }

    [Fact]
    public void A_stack_of_two_has_a_joint_between()
    {
        var cell = AdapterCells.With(AdapterCells.Covered, p => p with { Pieces = 2 });
        cell = cell with { Joints = cell.Joints.Add("between", new() { Plate = "adapter", Side = JointSide.Between, PropertyClass = "8.8", Load = JointLoad.Stated, ForceZ = -50 }) };
        var joint = Assert.Single(JointStage.Results(cell));
        Assert.Equal(("M5", 4), (joint.Input.Thread.Name, joint.Input.Points.Length));
        Assert.Equal(50.0 / 4, joint.Pull, 1e-9);
        Assert.True(joint.Separation is > 0 and < 1);
    }
}

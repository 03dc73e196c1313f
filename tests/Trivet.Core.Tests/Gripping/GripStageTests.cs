using System.Collections.Immutable;
using System.Text;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Gripping;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Tooling;
using Xunit;

namespace Trivet.Core.Tests.Gripping;

/// <summary>
/// Findings over real cycles. Second opinion for the accelerations: positions of the part over time, differentiated twice by differences.
/// </summary>
public sealed class GripStageTests
{
    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    private static ImmutableArray<Finding> Findings(Cell cell)
    {
        var plan = GripStage.Of(cell, TimedCycle.Of(cell));
        return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Sample())];
    }

    private static Judged Of(Cell cell, Rule rule, string subject) => Findings(cell).OfType<Judged>().Single(f => f.Rule == rule && f.Subject.Pointer == subject);

    [Theory]
    [InlineData("jar-lids", "to-left")]
    [InlineData("labels", "lay")]
    public void The_accelerations_are_those_of_the_parts_centre_over_time(string name, string id)
    {
        var cell = Sample(name);
        var cycle = TimedCycle.Of(cell).Single(c => c.Id == id);
        var motion = CarriedMotion.Of(cell, cycle)!;
        string part = cell.Motion.Cycles[id].Part!;
        Vec3 centre = ToolInputs.Carried(cell, part, new())!.Value.Centre;
        bool turns = cell.Robot.Rotary.Fitted == true;
        var held = motion.Instants.Where(i => i.PartHeld).ToArray();
        int compared = 0;
        for (int i = 1; i + 1 < held.Length; i++)
        {
            double before = held[i].T - held[i - 1].T, after = held[i + 1].T - held[i].T;
            if (before < 1e-4 || Math.Abs(before - after) > 1e-9) continue;
            var second = (At(i + 1) - 2 * At(i) + At(i - 1)) / (before * before);
            var felt = held[i].Felt(centre, motion.Gravity_B, turns) + motion.Gravity_B;
            // A trapezoid's acceleration jumps between instants.
            if ((held[i + 1].State.A - held[i - 1].State.A).Norm > 1.5) continue;
            compared++;
            Assert.InRange((second - felt).Norm, 0, 0.4);
        }
        Assert.True(compared > 20, $"{compared} of {held.Length}");

        Vec3 At(int i) => held[i].State.P + (turns ? Mat3.RotationZ(held[i].State.Turn.Angle) : Mat3.Identity) * centre;
    }

    [Fact]
    public void The_worst_instant_is_named_and_its_force_is_that_of_the_formula()
    {
        var cell = Sample("jar-lids");
        var finding = Of(cell, GripRules.VacuumForce, "/motion/cycles/to-left");
        var motion = CarriedMotion.Of(cell, TimedCycle.Of(cell)[0])!;
        double acceleration = motion.Instants.Where(i => i.PartHeld).Max(i => i.State.A.Norm);
        // Between resting and everything sideways at the smallest friction.
        Assert.InRange(finding.Bound, 2 * 0.009 * 9.80665, 2 * 0.009 * (9.80665 + acceleration * (1 + 1 / 0.4)));
        Assert.True(finding.Value < finding.Bound);
        Assert.NotNull(finding.Worst);
        Assert.InRange(finding.WorstTime!.Value, 0.1, motion.Instants.Where(i => i.PartHeld).Max(i => i.T));
        Assert.Equal(Math.PI / 4 * 0.022 * 0.022 * 40_000, finding.Limit.Upper, 9);
    }

    [Fact]
    public void Between_the_two_ends_of_the_friction_it_stays_open()
    {
        var cell = Sample("jar-lids");
        var finding = Of(cell, GripRules.VacuumForce, "/motion/cycles/to-left");
        double level = 40_000 * (finding.Value + finding.Bound) / 2 / finding.Limit.Upper;
        var between = Of(With(cell, v => v with { Level = level }), GripRules.VacuumForce, "/motion/cycles/to-left");
        Assert.Equal((Verdict.Open, OpenReason.NotProved), (between.Verdict, between.OpenBecause));
        Assert.Equal(Verdict.FallsShort, Of(With(cell, v => v with { Level = 0.9 * 40_000 * finding.Value / finding.Limit.Upper }), GripRules.VacuumForce, "/motion/cycles/to-left").Verdict);
    }

    [Fact]
    public void Evacuation_and_release_are_held_against_the_dwells()
    {
        var cell = Sample("jar-lids");
        var pick = Of(cell, GripRules.PickTime, "/motion/cycles/to-left");
        Assert.Equal((0.07, Verdict.Holds), (pick.Limit.Upper, pick.Verdict));
        var longHose = With(cell, v => v with { Hose = null, HoseDiameter = 0.004, HoseLength = 5 });
        Assert.Equal(Verdict.FallsShort, Of(longHose, GripRules.PickTime, "/motion/cycles/to-left").Verdict);
        Assert.Equal(Verdict.FallsShort, Of(longHose, GripRules.ReleaseTime, "/motion/cycles/to-left").Verdict);
        // Named or stated, the same hose is the same; both at once is a contradiction.
        var stated = With(cell, v => v with { Hose = null, HoseDiameter = 0.004, HoseLength = 1.2 });
        Assert.Equal(pick.Value, Of(stated, GripRules.PickTime, "/motion/cycles/to-left").Value, 1e-12);
        Assert.Contains(Findings(With(cell, v => v with { HoseLength = 1.2 })), f => f is Unjudged { Detail: { } why } && why == GripReasons.HoseTwice);
        var porous = With(cell, v => v with { Leakage = 25 / 60e3 });
        Assert.Equal(Verdict.FallsShort, Of(porous, GripRules.VacuumLevel, "/tool/vacuum").Verdict);
        Assert.DoesNotContain(Findings(porous), f => f.Rule == GripRules.PickTime);
    }

    [Fact]
    public void Fingers_hold_the_label_and_a_weak_one_does_not()
    {
        var cell = Sample("labels");
        var finding = Of(cell, GripRules.FingerForce, "/motion/cycles/lay");
        Assert.Equal((Verdict.Holds, 3.0), (finding.Verdict, finding.Limit.Upper));
        var weak = cell with { Tool = cell.Tool with { Fingers = cell.Tool.Fingers with { Force = 0.9 * finding.Value } } };
        Assert.Equal(Verdict.FallsShort, Of(weak, GripRules.FingerForce, "/motion/cycles/lay").Verdict);
    }

    [Fact]
    public void What_lacks_is_asked_for_from_the_depth_of_building_on()
    {
        var cell = With(Sample("jar-lids"), v => v with { Safety = null });
        var open = Assert.IsType<Unjudged>(Findings(cell).First(f => f.Rule == GripRules.VacuumForce));
        Assert.Equal("/tool/vacuum/safety", Assert.Single(open.Missing));
        Assert.DoesNotContain(Findings(cell with { Depth = Depth.Quote }), f => f.Rule == GripRules.VacuumForce);
        var wrong = Assert.IsType<Unjudged>(Findings(With(cell, v => v with { Level = 120_000 })).First(f => f.Rule == GripRules.Described));
        Assert.Equal(GripReasons.DeeperThanNothing, wrong.Detail);
    }

    /// <summary>
    /// Two hoses of 2.5 mm by 1.6 m and a piston of 10 mm with a rod of 4 mm, stroke 6 mm, at 4 bar: by hand with p₀ = 1.01325 bar
    /// (0.471 + 0.396 cm³)·4.9477 + 2·7.854 cm³·3.9477.
    /// </summary>
    [Fact]
    public void Air_of_a_cylinder_with_its_hoses()
    {
        var reading = new Reading();
        double air = AirUse.Of(Sample("labels"), [], reading).PerCycle;
        Assert.True(reading.Complete);
        Assert.Equal((0.47124 + 0.39584) * 4.94769 + 2 * 7.85398 * 3.94769, 1e6 * air, 0.01);
    }

    [Fact]
    public void An_ejector_runs_while_the_part_is_picked_and_carried()
    {
        var cell = Sample("jar-lids");
        var cycles = TimedCycle.Of(cell);
        double on = cycles.Max(c => c.Trace!.Begins[2] + (c.Trace.Begins[3] - c.Trace.Begins[2]) / 2);
        var use = AirUse.Of(cell, cycles, new());
        Assert.Equal(55 / 60e3 * on, use.Shares[0].Volume, 9);
        Assert.Equal(30 / 60e3 * 0.04, use.Shares[1].Volume, 12);
    }

    /// <summary>A tool that hangs straight down and is accelerated by a across bends its interface by m·a·h, and by nothing at rest.</summary>
    [Fact]
    public void The_moment_at_the_interface_is_mass_times_acceleration_times_height()
    {
        var cell = Sample("jar-lids");
        var moment = Findings(cell).OfType<Judged>().Single(f => f.Rule == ToolRules.Moment && f.Subject == new Subject("/tool", "to-left"));
        var motion = CarriedMotion.Of(cell, TimedCycle.Of(cell)[0])!;
        var sums = ToolSums.Of(cell, new())!;
        double expected = motion.Instants.Max(i =>
        {
            var body = i.PartHeld ? sums.Heaviest.Body : sums.Empty.Body;
            return body.Mass * Math.Abs(body.Centre.Z) * new Vec3(i.State.A.X, i.State.A.Y, 0).Norm;
        });
        Assert.Equal(expected, moment.Value, 1e-6);
    }

    private static Cell With(Cell cell, Func<Vacuum, Vacuum> change) => cell with { Tool = cell.Tool with { Vacuum = change(cell.Tool.Vacuum) } };
}

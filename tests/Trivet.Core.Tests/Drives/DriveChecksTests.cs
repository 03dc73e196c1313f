using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Drives;

public sealed class DriveChecksTests
{
    private static readonly Cell Rail = DrivenCells.Rail with
    {
        Brief = new() { Requirements = Keyed.Empty<Requirement>().Add("place", new() { Tolerance = 0.001 }) },
        Robot = DrivenCells.Rail.Robot with { Rotary = DrivenCells.Rail.Robot.Rotary with { DriveStep = ReachCells.Degrees(0.01) } },
    };

    /// <summary>A load of 2 kg on each rail, up and down again at 20 m/s² with a rest, against 8 N of friction; the turn stands still.</summary>
    private static CycleSeries Series(double acceleration = 20, double load = 2, string[]? axes = null)
    {
        double[] t = [0, 0.05, 0.05, 0.15, 0.15, 0.2, 0.2, 0.4, 0.4, 0.45, 0.45, 0.55, 0.55, 0.6, 0.6, 1];
        double[] shape = [1, 1, 0, 0, -1, -1, 0, 0, -1, -1, 0, 0, 1, 1, 0, 0];
        double[] a = [.. shape.Select(s => s * acceleration)], v = new double[t.Length];
        for (int i = 1; i < t.Length; i++) v[i] = v[i - 1] + (t[i] - t[i - 1]) * (a[i] + a[i - 1]) / 2;
        for (int i = 0; i < t.Length; i++) v[i] = Math.Round(v[i], 12);
        double[] force = [.. a.Select((x, i) => load * x + 8 * Math.Sign(v[i]))], still = new double[t.Length];
        var places = t.Select((_, i) => new Place(new(i, 0, 0), double.NaN, Vec3.NaN)).ToImmutableArray();
        return new("only", [.. t], [.. (axes ?? ["a", "b", "c", "rotary"]).Select(id => id == "rotary"
            ? new AxisSeries(id, [.. still], [.. still], [.. still], [.. still], 4e-5)
            : new AxisSeries(id, [.. still], [.. v], [.. a], [.. force], load))], places, ["/motion/cycles/only/pick"]);
    }

    private static DriveReport Report(Cell cell, CycleSeries? series = null) => DriveChecks.Of(cell, [series ?? Series()]);

    private static Judged Judged(DriveReport report, Rule rule, string part) =>
        Assert.IsType<Judged>(Assert.Single(report.Findings, f => f.Rule == rule && f.Subject.Case == part));

    [Fact]
    public void A_sound_axis_holds_in_every_rule()
    {
        var report = Report(Rail);
        Assert.All(report.Findings, f => Assert.True(f.Verdict is Verdict.Holds or Verdict.Tight, $"{f.Id}: {f.Verdict} {f.Margin} {(f as Judged)?.Value}"));
        Assert.Equal(
            ["drive.continuous", "drive.following", "drive.inertia-ratio", "drive.resonance", "drive.slack", "drive.speed", "drive.strand",
             "drive.temperature", "drive.tooth", "drive.torque"],
            report.Findings.Where(f => f.Subject.Case == "a").Select(f => f.Rule.Id).Order());
        Assert.Equal(
            ["drive.braking", "drive.supply-power", "drive.voltage-high", "drive.voltage-low"],
            report.Findings.Where(f => f.Subject == new Subject("/motion/cycles/only")).Select(f => f.Rule.Id).Order());
        Assert.Contains(report.Coverage, c => c.Rule == DriveRules.Continuous && c.Subject.Pointer == "/robot/rotary" && c.Reason == DriveReasons.HeldCurrent);
    }

    /// <summary>Everything by hand: pulley radius 40 mm / 2π, efficiency 0.95, own inertia 4e-5 kg·m².</summary>
    [Fact]
    public void Values_are_those_of_a_computation_by_hand()
    {
        var report = Report(Rail);
        double r = 0.04 / Math.Tau;
        // The torque while it speeds up at 1 m/s: 48 N over the belt, and the rotor.
        double torque = 48 * r / 0.95 + 4e-5 * 20 / r;
        var load = report.Cycles[0].Axes["a"].Load;
        Assert.Equal(torque, load.Torque[1], 1e-12);
        // Against growing friction it brakes with 40 − 8 N, of which the transmission takes its share.
        Assert.Equal(-(32 * r * 0.95 + 4e-5 * 20 / r), load.Torque[4], 1e-12);
        Assert.Equal(160 + 24, Judged(report, DriveRules.Strand, "a").Value, 1e-9);
        Assert.Equal(24.0 / 160, Judged(report, DriveRules.Slack, "a").Value, 1e-12);
        Assert.Equal(4.8, Judged(report, DriveRules.Tooth, "a").Value, 1e-12);
        Assert.Equal(2 / (4e-5 / (r * r)), Judged(report, DriveRules.InertiaRatio, "a").Value, 1e-9);
        Assert.Equal(48 / (300 / (r * r)) + 48 / 2.5e5, Judged(report, DriveRules.Following, "a").Value, 1e-12);
        // Both springs in a row, the light rotor between them, and 2 kg.
        double f = new Compliance(300 / (r * r), 2.5e5, 4e-5 / (r * r)).Resonance(2);
        Assert.InRange(f, 0.8 * Math.Sqrt(2.5e5 / 2) / Math.Tau, Math.Sqrt(2.5e5 / 2) / Math.Tau);
        Assert.Equal(20 / Math.Pow(Math.Tau * f, 2), Judged(report, DriveRules.Resonance, "a").Value, 1e-12);
        Assert.Equal(f, report.Cycles[0].Axes["a"].Resonance);
        Assert.Equal(35 + 80 * Math.Pow(Judged(report, DriveRules.Continuous, "a").Value / 0.8, 2), Judged(report, DriveRules.Temperature, "a").Value, 1e-9);
        Assert.Equal(35 + 70, Judged(report, DriveRules.Temperature, "rotary").Value, 1e-9);
        Assert.Equal(0, Judged(report, DriveRules.LostStep, "rotary").Value, 1e-12);
    }

    /// <summary>After one time constant 63.2 % of the rise; what it would come to is told beside it.</summary>
    [Fact]
    public void The_winding_is_judged_at_the_end_of_the_shift_and_its_steady_state_named()
    {
        var endless = Judged(Report(Rail), DriveRules.Temperature, "a");
        Assert.Null(endless.Beside);
        var shift = Judged(Report(Rail with { Brief = Rail.Brief with { Shift = 1000 } }), DriveRules.Temperature, "a");
        Assert.Equal(35 + (endless.Value - 35) * 0.6321205588, shift.Value, 1e-7);
        Assert.Equal(new Aside("drive.steady", endless.Value), shift.Beside);
        Assert.Contains("/brief/shift", shift.Inputs);
        var none = Report(Rail with { Brief = Rail.Brief with { Shift = 0 } }).Findings.OfType<Unjudged>().Single(f => f.Subject.Pointer == "/brief/shift");
        Assert.Equal(DriveReasons.NotPositive, none.Detail);
    }

    [Fact]
    public void The_cloud_is_held_against_the_curve_at_the_voltage_of_the_moment()
    {
        var report = Report(Rail);
        var cycle = report.Cycles[0];
        Assert.True(cycle.Supply!.Usable);
        Assert.InRange(cycle.Supply.Lowest.Value, 38, 48);
        Assert.InRange(cycle.Supply.Highest.Value, 48, 56.000001);
        var result = cycle.Axes["a"];
        for (int i = 0; i < result.Use.Length; i++)
            Assert.Equal(Math.Abs(result.Load.Torque[i]) / result.Load.Drive.Curve.At(result.Load.Speed[i], cycle.Power!.Voltage[i]), result.Use[i], 1e-12);
        var torque = Judged(report, DriveRules.Torque, "a");
        Assert.Equal(result.Use.Max(), torque.Value);
        int worst = result.Use.IndexOf(torque.Value);
        Assert.Equal((Series().Times[worst], (double)worst), (torque.WorstTime, torque.Worst!.P_C.X));

        // A thinner cable: the same motion takes more of what is left.
        var sagging = Report(Rail.WithSupply(s => s with { Resistance = 0.4, Capacitance = 0.001 }));
        Assert.True(Judged(sagging, DriveRules.VoltageLow, "").Value < cycle.Supply.Lowest.Value - 1);
        Assert.True(Judged(sagging, DriveRules.Speed, "a").Value > Judged(report, DriveRules.Speed, "a").Value);
    }

    [Fact]
    public void Power_is_that_of_all_axes_and_of_rest()
    {
        var report = Report(Rail);
        var cycle = report.Cycles[0];
        var servo = new ElectricSide(0.1, 0.35);
        double current = 0.3 / 0.24;
        for (int i = 0; i < cycle.Power!.Power.Length; i++)
            Assert.Equal(15 + current * current * 1.2 + 3 * cycle.Axes["a"].Load.Power(i, servo), cycle.Power.Power[i], 1e-9);
        Assert.True(cycle.Power.Power.Min() < 0);
    }

    [Fact]
    public void Beyond_the_end_of_the_curve_speed_falls_short_and_torque_can_not_be_told()
    {
        var report = Report(Rail.WithCommon(d => d with { Ratio = 3.2 }));
        Assert.Equal(Verdict.FallsShort, Judged(report, DriveRules.Speed, "a").Verdict);
        var torque = Assert.IsType<Unjudged>(report.Findings.Single(f => f.Rule == DriveRules.Torque && f.Subject.Case == "a"));
        Assert.Equal(DriveReasons.BeyondCurve, torque.Detail);
    }

    [Fact]
    public void A_supply_that_breaks_down_leaves_torque_open_and_says_how_low_it_went()
    {
        var report = Report(Rail.WithSupply(s => s with { LargestPower = 30 }), Series(acceleration: 40));
        Assert.Equal(SupplyEnd.Collapsed, report.Cycles[0].Supply!.End);
        Assert.Equal(Verdict.FallsShort, Judged(report, DriveRules.VoltageLow, "").Verdict);
        Assert.All(report.Findings.Where(f => f.Rule == DriveRules.Torque), f => Assert.Equal(DriveReasons.VoltageCollapsed, Assert.IsType<Unjudged>(f).Detail));
    }

    [Fact]
    public void A_stated_drive_step_that_differs_is_told_with_the_right_one()
    {
        var other = Rail with { Robot = Rail.Robot with { Common = Rail.Robot.Common with { DriveStep = 1.25e-5 } } };
        var finding = Judged(DriveChecks.Of(other, []), DriveRules.Resolution, "");
        Assert.Equal("/robot/chains/a", finding.Subject.Pointer);

        static Judged Judged(DriveReport report, Rule rule, string part) => report.Findings.OfType<Judged>().First(f => f.Rule == rule && f.Subject.Case == part);
        Assert.Equal(0.2, finding.Value, 1e-12);
        var advice = Assert.Single(finding.Advice);
        Assert.Equal(("/robot/common/driveStep", 1.25e-5), (advice.Pointer, advice.From));
        Assert.Equal(1e-5, advice.To, 1e-15);
    }

    [Fact]
    public void What_is_missing_is_asked_for_when_building_and_waits_before()
    {
        var bare = DriveChecks.Of(ReachCells.Rail, []);
        var described = Assert.IsType<Unjudged>(Assert.Single(bare.Findings, f => f.Rule == DriveRules.Described));
        Assert.Equal(OpenReason.Missing, described.Reason);
        Assert.Contains("/drives/common/motor", described.Missing);
        Assert.Contains("/drives/axes/rotary/motor", described.Missing);
        Assert.Contains(bare.Findings, f => f.Rule == DriveRules.Torque && f is Unjudged { Reason: OpenReason.Missing });

        var quote = DriveChecks.Of(ReachCells.Rail with { Depth = Depth.Quote }, []);
        Assert.Empty(quote.Findings);
        Assert.Contains(quote.Coverage, c => c.Rule == DriveRules.Described && c.Reason == CommonReasons.NotAskedYet);
    }

    [Fact]
    public void A_contradiction_in_what_all_chains_share_is_told_once()
    {
        var report = DriveChecks.Of(Rail.WithCommon(d => d with { Efficiency = 1.2 }), []);
        var finding = Assert.IsType<Unjudged>(Assert.Single(report.Findings, f => f.Rule == DriveRules.Described));
        Assert.Equal(("/drives/common/efficiency", DriveReasons.EfficiencyAboveOne), (finding.Subject.Pointer, finding.Detail));
        var supply = DriveChecks.Of(Rail.WithSupply(s => s with { BrakingVoltage = 48 }), []);
        Assert.Contains(supply.Findings, f => f is Unjudged u && u.Detail == DriveReasons.ChopperBelowSource);
    }

    [Fact]
    public void Without_chopper_tolerance_or_stiffness_the_rules_do_not_apply_and_say_why()
    {
        var bare = Rail.WithSupply(s => s with { BrakingVoltage = null }).WithCommon(d => d with { Stiffness = null }) with { Brief = new() };
        var report = Report(bare);
        Assert.DoesNotContain(report.Findings, f => f.Rule == DriveRules.Braking || f.Rule == DriveRules.Following);
        Assert.Contains(report.Coverage, c => c.Reason == DriveReasons.NoChopper);
        Assert.Contains(report.Coverage, c => c.Reason == DriveReasons.NoTolerance);
        Assert.Contains(report.Coverage, c => c.Reason == DriveReasons.NoStiffness && c.Subject.Pointer == "/robot/chains/a");
    }

    [Fact]
    public void What_is_not_a_number_never_holds()
    {
        var series = Series();
        var broken = series with { Axes = [series.Axes[0] with { Force = series.Axes[0].Force.SetItem(7, double.NaN) }, .. series.Axes[1..]] };
        var open = Assert.IsType<Unjudged>(Assert.Single(Report(Rail, broken).Findings, f => f.Subject.Pointer == "/motion/cycles/only"));
        Assert.Equal((DriveRules.Torque, DriveReasons.ForceUnknown), (open.Rule, open.Detail));
        Assert.Null(Report(Rail, broken).Cycles[0].Power);
    }

    [Fact]
    public void An_axis_that_does_not_move_is_not_judged_but_still_draws_its_current()
    {
        var report = Report(Rail, Series(axes: ["a", "b", "c"]));
        Assert.DoesNotContain(report.Findings, f => f.Subject.Case == "rotary");
        Assert.Equal(Report(Rail).Cycles[0].Power!.Power, report.Cycles[0].Power!.Power);
    }

    [Fact]
    public void Advice_lifts_a_finding_to_its_comfort_band_and_promises_what_comes_of_it()
    {
        var weak = Rail.WithCommon(d => d with { Pretension = 25 });
        ImmutableArray<CycleSeries> cycles = [Series()];
        var slack = DriveChecks.Of(weak, cycles).Findings.Single(f => f.Rule == DriveRules.Slack && f.Subject.Case == "b");
        Assert.Equal(Verdict.Tight, slack.Verdict);
        var advice = Assert.Single(DriveAdvice.For(weak, cycles, slack));
        Assert.Equal(("/drives/common/pretension", 25, 28), (advice.Pointer, advice.From, advice.To));
        var then = DriveChecks.Of(weak.WithCommon(d => d with { Pretension = advice.To }), cycles).Findings.Single(f => f.Id == slack.Id);
        Assert.Equal(then.Margin, advice.MarginThen, 1e-12);
        Assert.Equal(Verdict.Holds, then.Verdict);

        // A motor of too little torque with speed to spare: the load, seen through the next ratio of those tried, asks a seventh less (D11).
        var small = Rail.WithMotor("rail", m => m with { Curve = DrivenCells.Curve((0, 0.36), (800, 0.36), (900, 0.1)), ContinuousTorque = 0.4, RotorInertia = 1e-5 });
        var torque = DriveChecks.Of(small, cycles).Findings.Single(f => f.Rule == DriveRules.Torque && f.Subject.Case == "a");
        Assert.Equal(Verdict.FallsShort, torque.Verdict);
        var ratio = Assert.Single(DriveAdvice.For(small, cycles, torque));
        Assert.Equal(("/drives/common/ratio", 1, 1.5), (ratio.Pointer, ratio.From, ratio.To));
        Assert.Empty(DriveAdvice.For(Rail, cycles, Judged(Report(Rail), DriveRules.Tooth, "a")));
    }

    /// <summary>On this rests what is stale after an edit.</summary>
    [Fact]
    public void A_field_that_a_finding_does_not_list_does_not_move_it()
    {
        ImmutableArray<CycleSeries> cycles = [Series()];
        var before = DriveChecks.Of(Rail, cycles).Findings;
        int changed = 0;
        foreach (var field in CellFields.Below(Rail, "/drives").Concat(CellFields.Below(Rail, "/robot")).Concat(CellFields.Below(Rail, "/brief")))
        {
            if (field.Kind is not (FieldKind.Quantity or FieldKind.Whole or FieldKind.Choice or FieldKind.YesNo)) continue;
            string text = field.Kind switch
            {
                FieldKind.Quantity => Quantity.Format(1.01 * (Quantity.Parse(field.Text, field.Dimension) is { Ok: true } q ? q.Value : 0.123) + 0.001, field.Dimension),
                FieldKind.Whole => "7",
                _ => field.Choices.First(c => c != field.Text),
            };
            if (CellFields.Set(Rail, field.Pointer, text).Cell is not { } other) continue;
            changed++;
            var now = DriveChecks.Of(other, cycles);
            var after = now.Findings.ToDictionary(f => f.Id);
            foreach (var finding in before.Where(f => !f.Inputs.Contains(field.Pointer)))
            {
                Assert.True(after.TryGetValue(finding.Id, out var then), $"{finding.Id} is gone after {field.Pointer} = '{text}'");
                Assert.True((finding.Margin, finding.Verdict, (finding as Judged)?.Value) == (then.Margin, then.Verdict, (then as Judged)?.Value), $"{finding.Id} moved after {field.Pointer} = '{text}'");
            }
        }

        Assert.True(changed > 100, $"only {changed} changes could be tried");
    }
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using CsCheck;
using Trivet.Cells;
using Trivet.Core.Tests.Reach;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Settings;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Settings;

public sealed class SettingStageTests
{
    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    private static readonly Cell Lids = Sample("jar-lids") with { Controller = Sample("jar-lids").Controller with { Settings = Keyed.Empty<ControllerSetting>() } };

    private static Cell With(Cell cell, params (string Id, ControllerSetting Setting)[] settings) => cell with
    {
        Controller = cell.Controller with { Settings = settings.Aggregate(cell.Controller.Settings, (all, s) => all.SetItem(s.Id, s.Setting)) },
    };

    private static PlannedSetting Only(Cell cell) => Assert.Single(SettingInputs.Read(cell));

    private static ControllerSetting Holds(SettingQuantity quantity, string? of = null, int? digits = 3, double? perUnit = null) => new() { Quantity = quantity, Of = of, Digits = digits, PerUnit = perUnit };

    /// <summary>Worked by hand from the sample: 560 mm rods; a step of 0.015 mm; 0.8 N·m over 0.1 N·m/A; a turn that counts the other way from −180° to 180°; a base 638 mm above a zero that z grows away from.</summary>
    [Theory]
    [InlineData(SettingQuantity.Rod, null, 1e-3, 560)]
    [InlineData(SettingQuantity.BaseHeight, null, 1e-3, -60)]
    [InlineData(SettingQuantity.LargestReading, "a", null, 520)]
    [InlineData(SettingQuantity.SmallestReading, "rotary", null, -180)]
    [InlineData(SettingQuantity.Direction, "rotary", null, -1)]
    [InlineData(SettingQuantity.DriveStep, "b", 1e-6, 15)]
    [InlineData(SettingQuantity.ContinuousCurrent, "c", 1.0, 8)]
    [InlineData(SettingQuantity.PeakCurrent, "c", 1.0, 24)]
    [InlineData(SettingQuantity.CountsPerTurn, "a", null, 4000)]
    [InlineData(SettingQuantity.AxisSpeed, null, null, 2000)]
    [InlineData(SettingQuantity.PathJerk, null, 1.0, 140)]
    [InlineData(SettingQuantity.MountHeight, null, 1e-3, -638)]
    [InlineData(SettingQuantity.TcpZ, null, 1e-3, -90)]
    [InlineData(SettingQuantity.Address, "axis-b", null, 12)]
    [InlineData(SettingQuantity.BitRate, null, 1e3, 500)]
    [InlineData(SettingQuantity.Period, "sync", 1e-3, 4)]
    public void A_planned_quantity_comes_as_the_controller_writes_it(SettingQuantity quantity, string? of, double? perUnit, double typed) =>
        Assert.Equal(typed, Only(With(Lids, ("p", Holds(quantity, of, 3, perUnit)))).Typed, 1e-9);

    /// <summary>Crank delta, axis counted against ours: from −30° to 80° it shows −80 to 30. A gear of 20 turns the arm 18° for a turn of the motor.</summary>
    [Fact]
    public void A_reversed_axis_swaps_the_ends_of_its_travel()
    {
        var biscuits = Sample("biscuits");
        biscuits = biscuits with { Controller = biscuits.Controller with { Settings = Keyed.Empty<ControllerSetting>() } };
        Assert.Equal(-80, Only(With(biscuits, ("p", Holds(SettingQuantity.SmallestReading, "north")))).Typed, 1e-9);
        Assert.Equal(30, Only(With(biscuits, ("p", Holds(SettingQuantity.LargestReading, "north")))).Typed, 1e-9);
        Assert.Equal("/robot/common/travelTo", Only(With(biscuits, ("p", Holds(SettingQuantity.SmallestReading, "north")))).Field);
        Assert.Equal(18, Only(With(biscuits, ("p", Holds(SettingQuantity.TravelPerTurn, "west")))).Typed, 1e-9);
        // Rods are 680, 680 and 680.2 mm: no one value is right for all.
        Assert.Empty(SettingInputs.Read(With(biscuits, ("p", Holds(SettingQuantity.Rod, null, 2, 1e-3)))));
        var open = Assert.Single(SettingStage.Of(With(biscuits, ("p", Holds(SettingQuantity.Rod, null, 2, 1e-3)))).Findings.OfType<Unjudged>());
        Assert.Equal((SettingRules.Described, SettingReasons.NotTheSame.Id), (open.Rule, open.Detail!.Id));
    }

    /// <summary>Handbook values: an inch is 25.4 mm exactly (international yard, 1959); a radian 57.29578°; a knot of units such as 45 1/min is 270°/s.</summary>
    [Theory]
    [InlineData(SettingQuantity.Rod, null, 0.0254, 22.047)]
    [InlineData(SettingQuantity.LargestReading, "rotary", 1.0, 3.141)]
    [InlineData(SettingQuantity.TcpZ, null, 0.3048, -0.295)]
    [InlineData(SettingQuantity.BitRate, null, 1e6, 0.5)]
    public void Units_of_the_controller_convert_as_handbooks_have_them(SettingQuantity quantity, string? of, double perUnit, double typed) =>
        Assert.Equal(typed, Only(With(Lids, ("p", Holds(quantity, of, 3, perUnit)))).Typed, 1e-9);

    [Fact]
    public void What_is_typed_gives_the_plan_back_within_the_step()
    {
        var cases =
            from plan in Gen.Double[-2, 2]
            from perUnit in Gen.OneOf(1e-3, 0.0254, 1e-6, Math.PI / 180, 1, 0.37)
            from zero in Gen.Double[-1, 1]
            from reversed in Gen.Bool
            from digits in Gen.Int[0, 6]
            from rounding in Gen.Enum<SettingRounding>()
            select (plan, perUnit, zero, reversed, digits, rounding);
        cases.Sample(
            c =>
            {
                var cell = With(Lids with { Tool = Lids.Tool with { TcpX = c.plan } },
                    ("p", new() { Quantity = SettingQuantity.TcpX, PerUnit = c.perUnit, ZeroAt = c.zero, Reversed = c.reversed, Digits = c.digits, Rounding = c.rounding }));
                var p = Only(cell);
                double share = c.rounding == SettingRounding.Nearest ? 0.5 : 1;
                Assert.True(Math.Abs(p.Off) <= (share + 1e-6) * Math.Pow(10, -c.digits) * c.perUnit + 1e-12, $"{c} {p.Off}");
                // Typed is a multiple of the step: its decimals are all there is to it.
                Assert.Equal(p.Typed, double.Parse(p.Typed.ToString("F" + c.digits, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), 1e-9 * Math.Max(1, Math.Abs(p.Typed)));
                if (c.rounding == SettingRounding.Down) Assert.True(p.Typed <= p.Scale.Shown(c.plan) + 1e-6 * p.Step + 1e-12 * Math.Abs(p.Typed));
                if (c.rounding == SettingRounding.Up) Assert.True(p.Typed >= p.Scale.Shown(c.plan) - 1e-6 * p.Step - 1e-12 * Math.Abs(p.Typed));
            },
            seed: "0000000000031", iter: Effort.Cases(2000));
    }

    [Theory]
    [InlineData(1.24, false, 1)]
    [InlineData(-1.24, false, -1)]
    [InlineData(0.3, false, 0)]
    public void Rounding_goes_where_it_is_told(double shown, bool up, double whole)
    {
        Assert.Equal(whole, SettingStep.Round(shown, 1, SettingRounding.Nearest));
        Assert.Equal(up ? whole : Math.Floor(shown), SettingStep.Round(shown, 1, SettingRounding.Down));
        // 0.3 in thousandths is 299.99999999999997 in doubles, and 300 to everybody else.
        Assert.Equal(0.3, SettingStep.Round(0.3, 0.001, SettingRounding.Down), 1e-15);
        Assert.True(double.IsNaN(SettingStep.Round(double.NaN, 1, SettingRounding.Nearest)) && double.IsNaN(SettingStep.Round(1e300, 1, SettingRounding.Nearest)) && double.IsNaN(SettingStep.Round(1, 0, SettingRounding.Nearest)));
    }

    /// <summary>A limit never grows by rounding, also where the controller asks for it the other way about.</summary>
    [Fact]
    public void A_limit_is_rounded_to_the_safe_side()
    {
        var slow = Lids with { Drives = Lids.Drives with { LargestSpeed = 1.9996 } };
        Assert.Equal(1999, Only(With(slow, ("p", Holds(SettingQuantity.AxisSpeed, digits: 0)))).Typed);
        var inverse = Only(With(slow, ("p", new() { Quantity = SettingQuantity.AxisSpeed, Inverse = true, PerUnit = 1, Digits = 2 })));
        Assert.True(inverse.Value <= 1.9996 && inverse.Typed == 0.51, $"{inverse.Typed}");
        var shorter = Lids with { Robot = Lids.Robot with { Common = Lids.Robot.Common with { TravelFrom = 0.0004, TravelTo = 0.5196 } } };
        Assert.Equal((1, 519), (Only(With(shorter, ("p", Holds(SettingQuantity.SmallestReading, "a", 0)))).Typed, Only(With(shorter, ("p", Holds(SettingQuantity.LargestReading, "a", 0)))).Typed));
    }

    /// <summary>A rail delta over its middle stands h = √(L² − R²) below its carriages, so a rod taken longer by d lowers the platform by d·L/h (Pythagoras).</summary>
    [Fact]
    public void The_shift_of_the_platform_is_that_of_the_closed_form()
    {
        double rod = 0.5604, r = 0.33 - 0.055, h = Math.Sqrt(rod * rod - r * r);
        var cell = Lids with
        {
            Robot = Lids.Robot with { Common = Lids.Robot.Common with { Rod = rod } },
            Tool = Lids.Tool with { TcpX = 0, TcpY = 0, TcpZ = 0 },
            Stations = Keyed.Empty<Station>().Add("middle", new() { Kind = StationKind.Nest, X = Lids.Mount.X, Y = Lids.Mount.Y, Z = 1.7 - 0.9, Yaw = 0, Approach = 0, Width = 0, Depth = 0, RotaryFrom = 0, RotaryTo = 0 }),
        };
        var finding = Assert.Single(SettingStage.Of(With(cell, ("p", Holds(SettingQuantity.Rod, null, 0, 1e-3)))).Findings.OfType<Judged>());
        Assert.Equal(SettingRules.Accuracy, finding.Rule);
        Assert.Equal(0.0004 * rod / h, finding.Value, 2e-6);
        Assert.Equal(0.8e-3 / 10, finding.Limit.Upper, 1e-12);
        Assert.Equal(Verdict.FallsShort, finding.Verdict);
        // With one decimal the rod is as planned, and nothing moves.
        Assert.Equal(0, Assert.Single(SettingStage.Of(With(cell, ("p", Holds(SettingQuantity.Rod, null, 1, 1e-3)))).Findings.OfType<Judged>()).Value);
        // All drives 0.4 mm off: so is the platform, straight down.
        var home = With(cell, ("p", new() { Quantity = SettingQuantity.ReadingAtHome, ZeroAt = 0.0004, Digits = 0 }));
        Assert.Equal(0.0004, Assert.Single(SettingStage.Of(home).Findings.OfType<Judged>()).Value, 1e-9);
    }

    [Fact]
    public void A_rounding_beyond_its_tolerance_falls_short_and_a_stated_one_counts()
    {
        var coarse = With(Lids, ("p", Holds(SettingQuantity.PathSpeed, null, 0, 0.1)));
        var finding = Assert.Single(SettingStage.Of(coarse).Findings.OfType<Judged>());
        Assert.Equal((SettingRules.Rounding, Verdict.FallsShort), (finding.Rule, finding.Verdict));
        Assert.Equal(0.04 / (0.01 * 0.94), finding.Value, 1e-9);
        var borne = With(Lids, ("p", Holds(SettingQuantity.PathSpeed, null, 0, 0.1) with { Tolerance = 0.05 }));
        Assert.Equal((0.8, Verdict.Holds), (Math.Round(Assert.Single(SettingStage.Of(borne).Findings.OfType<Judged>()).Value, 9), Assert.Single(SettingStage.Of(borne).Findings).Verdict));
    }

    [Fact]
    public void What_cannot_be_typed_is_open_with_its_reason()
    {
        (ControllerSetting Setting, Reason Reason)[] cases =
        [
            (Holds(SettingQuantity.Rod, "z", 2, 1e-3), SettingReasons.NoSuchChain),
            (Holds(SettingQuantity.AxisSpeed, "linear"), SettingReasons.NoSuchAxis),
            (Holds(SettingQuantity.Address, "nobody"), SettingReasons.NoSuchModule),
            (Holds(SettingQuantity.Period, "never", 1, 1e-3), SettingReasons.NoSuchMessage),
            (Holds(SettingQuantity.Blend, "nowhere", 1, 1e-3), SettingReasons.NoSuchCycle),
            (Holds(SettingQuantity.Rod, null, 2, -1e-3), SettingReasons.PerUnit),
            (Holds(SettingQuantity.Rod, null, 13, 1e-3), SettingReasons.Digits),
            (Holds(SettingQuantity.Rod, null, null, 1e-3) with { Step = 0 }, SettingReasons.Step),
            (Holds(SettingQuantity.TcpX, null, 2, 1e-3) with { Inverse = true }, SettingReasons.NoNumber),
        ];
        foreach (var (setting, reason) in cases)
        {
            var open = Assert.Single(SettingStage.Of(With(Lids, ("p", setting))).Findings.OfType<Unjudged>());
            Assert.Equal((SettingRules.Described, reason.Id), (open.Rule, open.Detail?.Id ?? "missing " + string.Join(' ', open.Missing)));
        }
        var lacking = Assert.Single(SettingStage.Of(With(Lids, ("p", Holds(SettingQuantity.Rod, null, null)))).Findings.OfType<Unjudged>());
        Assert.Equal(["/controller/settings/p/digits", "/controller/settings/p/perUnit"], lacking.Missing);
        var trapezoid = Lids with { Motion = Lids.Motion with { Settings = Lids.Motion.Settings with { Profile = ProfileKind.Trapezoidal } } };
        Assert.Equal(SettingReasons.NoLimit.Id, Assert.Single(SettingStage.Of(With(trapezoid, ("p", Holds(SettingQuantity.PathJerk, null, 1, 1)))).Findings.OfType<Unjudged>()).Detail!.Id);
        var twice = With(Lids, ("p", Holds(SettingQuantity.Rod, null, 2, 1e-3) with { Name = "rod" }), ("q", Holds(SettingQuantity.BaseRadius, null, 2, 1e-3) with { Key = "rod" }));
        Assert.Equal("/controller/settings/q/key", Assert.Single(SettingStage.Of(twice).Findings.OfType<Unjudged>()).Subject.Pointer);
        Assert.Equal(SettingReasons.NoSettings, Assert.Single(SettingStage.Of(Lids).Coverage).Reason);
    }

    /// <summary>Findings declare every field they rest on: change another one, and they do not move.</summary>
    [Theory]
    [InlineData("jar-lids", "/controller/settings")]
    [InlineData("jar-lids", "/controller/axes/axis-4")]
    [InlineData("jar-lids", "/robot/common")]
    [InlineData("jar-lids", "/drives")]
    [InlineData("jar-lids", "/motion/settings")]
    [InlineData("jar-lids", "/stations")]
    [InlineData("jar-lids", "/brief")]
    [InlineData("biscuits", "/controller")]
    [InlineData("biscuits", "/robot/chains")]
    [InlineData("biscuits", "/tool")]
    public void A_field_that_a_finding_does_not_list_does_not_move_it(string sample, string below)
    {
        var cell = Sample(sample);
        // Coarse steps, so that there is something to move.
        cell = cell with { Controller = cell.Controller with { Settings = cell.Controller.Settings.ToImmutableSortedDictionary(s => s.Key, s => s.Value.Digits > 0 ? s.Value with { Digits = 0 } : s.Value, StringComparer.Ordinal) } };
        var before = SettingStage.Of(cell).Findings;
        Assert.NotEmpty(before);
        int changed = 0;
        foreach (var field in CellFields.Below(cell, below).Where(f => f.Text.Length > 0 && f.Kind == FieldKind.Quantity))
        {
            var edited = CellFields.SetSi(cell, field.Pointer, field.Si!.Value * 1.01 + 0.001);
            changed++;
            var after = SettingStage.Of(edited).Findings.GroupBy(f => f.Id).ToDictionary(g => g.Key, g => g.First());
            foreach (var finding in before.Where(f => !f.Inputs.Contains(field.Pointer)))
            {
                Assert.True(after.TryGetValue(finding.Id, out var now), $"{finding.Id} is gone after {field.Pointer}");
                Assert.True(StationChecksTests.Told(finding).Equals(StationChecksTests.Told(now!)), $"{finding.Id} moved after {field.Pointer}");
            }
        }
        Assert.True(changed >= 1, "nothing could be changed");
    }
}

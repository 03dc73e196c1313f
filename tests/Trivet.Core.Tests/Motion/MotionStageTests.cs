using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Motion;
using Xunit;

namespace Trivet.Core.Tests.Motion;

/// <summary>What the ledger says of cycles, and the settings that hold every limit.</summary>
public sealed class MotionStageTests
{
    [Fact]
    public void Ways_are_proved_by_bounds_that_hold_all_samples()
    {
        var cell = MotionCells.Rail;
        var ledger = Assess.Prove(cell, null, TestContext.Current.CancellationToken).Ledger;
        var input = MotionCells.Input(cell, "belt-to-tray");
        int compared = 0;
        foreach (var (way, path) in new[] { ("loaded", input.Plan.Loaded), ("empty", input.Plan.Empty) })
        {
            for (int chain = 0; chain < 3; chain++)
            {
                var id = path.Robot.ChainIds[chain];
                var travel = (Judged)ledger.Findings.Single(f => f.Id == $"reach.travel:/motion/cycles/belt-to-tray:{way} {id}");
                var swing = (Judged)ledger.Findings.Single(f => f.Id == $"reach.swing:/motion/cycles/belt-to-tray:{way} {id}");
                Assert.Equal(Assurance.Proved, travel.Assurance);
                double middle = (travel.Limit.Lower + travel.Limit.Upper) / 2;
                for (int i = 0; i <= 300; i++)
                {
                    var p = path.At(path.Length * i / 300).Platform.P;
                    double q = path.Robot.Inverse(p)[chain];
                    Assert.True(Math.Abs(q - middle) <= Math.Abs(travel.Bound - middle) + 1e-9);
                    Assert.True(Swing.Of(path.Robot.Chains[chain], RobotInputs.Joints(cell.Robot, new())[chain], p, q) <= swing.Bound + 1e-9);
                    compared++;
                }
            }
        }
        Assert.Equal(6 * 301, compared);
    }

    [Fact]
    public void A_part_that_hangs_low_comes_nearer_to_walls_than_the_empty_tool()
    {
        var ledger = Assess.Prove(MotionCells.Rail, null, TestContext.Current.CancellationToken).Ledger;
        double Of(string way) => ((Judged)ledger.Findings.Single(f => f.Id == $"reach.tool-clearance:/motion/cycles/belt-to-tray:{way} walls")).Value;
        Assert.True(Of("loaded") < Of("empty"));
    }

    [Fact]
    public void A_preview_leaves_ways_open_and_judges_time_at_once()
    {
        var findings = Assess.Preview(MotionCells.Rail).Ledger.Findings;
        Assert.Equal(OpenReason.NotComputed, findings.Single(f => f.Id == "reach.travel:/motion/cycles/belt-to-tray:loaded a").OpenBecause);
        Assert.Equal(Verdict.Holds, findings.Single(f => f.Id == "motion.speed:/motion/cycles/belt-to-tray:a").Verdict);
        Assert.Contains(findings, f => f.Id == "motion.mean-rate:/motion");
        Assert.Contains(findings, f => f.Id == "motion.window:/motion/cycles/belt-to-tray:belt");
    }

    [Fact]
    public void What_a_cycle_lacks_is_asked_for_where_the_depth_asks_and_waited_for_before()
    {
        var lacking = MotionCells.Planar.WithCycle("across", c => c with { PickDwell = null });
        var open = Assert.IsType<Unjudged>(Assess.Preview(lacking).Ledger.Findings.Single(f => f.Rule == MotionRules.Described));
        Assert.Equal("/motion/cycles/across/pickDwell", Assert.Single(open.Missing));
        var early = Assess.Preview(lacking with { Depth = Depth.Quote }).Ledger;
        Assert.DoesNotContain(early.Findings, f => f.Rule == MotionRules.Described);
        Assert.Contains(early.Coverage, c => c.Rule == MotionRules.Described && c.Reason == CommonReasons.NotAskedYet);
    }

    [Fact]
    public void A_station_that_is_not_there_and_an_arc_from_a_belt_are_named()
    {
        var astray = MotionCells.Planar.WithCycle("across", c => c with { Place = "nowhere" });
        Assert.Contains(Assess.Preview(astray).Ledger.Findings.OfType<Unjudged>(), f => f.Detail?.Id == MotionReasons.NoSuchStation.Id && f.Subject.Pointer == "/motion/cycles/across/place");
        var arc = MotionCells.Rail.WithCycle("belt-to-tray", c => c with
        {
            Shape = PathShape.Arc,
            Waypoints = Keyed.Empty<Waypoint>().Add("top", new() { X = 0, Y = 0, Z = 0.95 }),
        });
        Assert.Contains(Assess.Preview(arc).Ledger.Findings.OfType<Unjudged>(), f => f.Detail == MotionReasons.ArcOnBelt);
    }

    /// <summary>The rules that Assess tries field by field on the cells of reach, here on a cell that moves.</summary>
    [Theory]
    [InlineData("/drives/largestSpeed")]
    [InlineData("/motion/settings/pathSpeed")]
    [InlineData("/motion/settings/blend")]
    [InlineData("/motion/cycles/across/pickDwell")]
    [InlineData("/robot/common/carriageMass")]
    [InlineData("/brief/parts/part/mass")]
    [InlineData("/stations/left/x")]
    public void Every_field_that_moves_a_finding_is_among_its_inputs(string pointer)
    {
        var cell = MotionCells.Planar;
        var changed = pointer switch
        {
            "/drives/largestSpeed" => cell with { Drives = cell.Drives with { LargestSpeed = 1.9 } },
            "/motion/settings/pathSpeed" => cell.With(s => s with { PathSpeed = 0.59 }),
            "/motion/settings/blend" => cell.With(s => s with { Blend = 0.029 }),
            "/motion/cycles/across/pickDwell" => cell.WithCycle("across", c => c with { PickDwell = 0.09 }),
            "/robot/common/carriageMass" => cell with { Robot = cell.Robot with { Common = cell.Robot.Common with { CarriageMass = 0.9 } } },
            "/brief/parts/part/mass" => cell with { Brief = cell.Brief with { Parts = cell.Brief.Parts.SetItem("part", cell.Brief.Parts["part"] with { Mass = 0.05 }) } },
            _ => cell with { Stations = cell.Stations.SetItem("left", cell.Stations["left"] with { X = -0.101 }) },
        };
        var before = Assess.Preview(cell).Ledger.Findings.Where(f => f.Subject.Pointer.StartsWith("/motion", StringComparison.Ordinal)).ToDictionary(f => f.Id);
        int moved = 0;
        foreach (var now in Assess.Preview(changed).Ledger.Findings.OfType<Judged>().Where(f => f.Subject.Pointer.StartsWith("/motion", StringComparison.Ordinal)))
        {
            if (before[now.Id] is not Judged was || (was.Value == now.Value && was.Limit == now.Limit)) continue;
            moved++;
            Assert.Contains(pointer, was.Inputs);
        }
        Assert.True(moved > 0);
    }

    [Fact]
    public void The_fastest_settings_are_faster_and_keep_every_limit_with_its_reserve()
    {
        foreach (var cell in new[] { MotionCells.Planar, MotionCells.Rail })
        {
            var found = FastestSettings.Find(cell, TestContext.Current.CancellationToken);
            Assert.NotNull(found.Settings);
            Assert.True(found.MeanTime < found.MeanTimeNow, $"{found.MeanTime} against {found.MeanTimeNow}");
            foreach (var cycle in found.Cycles)
                Assert.All(cycle.LoadedUse.AddRange(cycle.EmptyUse), u => Assert.True(u.Use <= 0.9 + 1e-12, $"{u.Axis} {u.Kind} {u.Use}"));
            // Typed into the cell they give what was promised.
            var s = found.Settings;
            var typed = cell.With(m => m with { PathSpeed = s.Speed, PathAcceleration = s.Acceleration, PathJerk = s.Jerk, Blend = s.Blend });
            Assert.Equal(found.Cycles[0].Controller.CycleTime, CycleTiming.Solve(MotionCells.Input(typed, found.Cycles[0].Input.Plan.Id)).Controller.CycleTime, 1e-12);
        }
    }

    [Theory]
    [InlineData(1.2345, 1.2)]
    [InlineData(1.26, 1.25)]
    [InlineData(0.947, 0.94)]
    [InlineData(5678, 5600)]
    public void Settings_are_rounded_down_to_what_a_person_types(double value, double typed)
    {
        var law = new ControllerSettings(ProfileKind.SevenPhase, ProfileAlong.Path, value, 1, 1, 0, 0);
        Assert.Equal(typed, FastestSettings.AsTyped(law).Speed);
    }
}

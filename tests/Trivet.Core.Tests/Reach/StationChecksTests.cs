using System.Collections.Immutable;
using System.Globalization;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Reach;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Reach;

/// <summary>Single stations whose worst values are known in closed form, and what is said when they can not be judged.</summary>
public sealed class StationChecksTests
{
    private static Ledger Prove(Cell cell) => Assess.Prove(cell, null, TestContext.Current.CancellationToken).Ledger;

    private static Judged Find(Ledger ledger, string id) => Assert.IsType<Judged>(ledger.Findings.Single(f => f.Id == id));

    /// <summary>The rail delta without rotary axis or frame, the tool straight down, over one nest centred under it.</summary>
    private static Cell Nest(double width, double depth, double approach) => ReachCells.Rail with
    {
        Robot = ReachCells.Rail.Robot with { Rotary = new(), Dexterity = ReachCells.Rail.Robot.Dexterity with { TravelReserve = 0 } },
        Tool = ReachCells.Rail.Tool with { TcpX = 0 },
        Frame = new(),
        Stations = Keyed.Empty<Station>().Add("nest", new() { Kind = StationKind.Nest, X = 0, Y = 0, Z = 0.85, Width = width, Depth = depth, Approach = approach }),
    };

    /// <summary>
    /// Upright rails, offset D = 300 mm, rods L = 500 mm: the reading is q = −z − √(L² − r²), r the distance of the platform joint from
    /// the rail seen from above. Chain a (azimuth 0): smallest at the highest z, nearest r = D − x, y = 0, inside the box.
    /// </summary>
    [Fact]
    public void Smallest_reading_agrees_with_its_closed_form()
    {
        var found = Find(Prove(Nest(0.20, 0.10, 0.30)), "reach.travel:/stations/nest:a");
        double expected = 0.300 - Math.Sqrt(0.25 - 0.04);
        Assert.Equal(expected, found.Value, 2e-4);
        Assert.InRange(expected, found.Bound, found.Value);
        Assert.Equal(Verdict.FallsShort, found.Verdict);
    }

    /// <summary>The same station just as high as the upper end of travel allows: margin zero, to rounding.</summary>
    [Fact]
    public void A_volume_that_just_touches_the_end_of_travel_has_no_margin()
    {
        double approach = 0.600 - Math.Sqrt(0.25 - 0.04);
        var found = Find(Prove(Nest(0.20, 0, approach)), "reach.travel:/stations/nest:a");
        Assert.Equal(0, found.Margin, 1e-9);
        Assert.Equal(0, found.Value, 1e-9);
        Assert.Equal(0.10, found.Worst!.P_C.X, 9);
    }

    /// <summary>Use of reach r/L: with |y| = 50 mm and x = −100 mm, r = √(400² + 50²) mm.</summary>
    [Fact]
    public void Use_of_reach_agrees_with_its_closed_form()
    {
        var found = Find(Prove(Nest(0.20, 0.10, 0.05)), "reach.closure:/stations/nest:a");
        double expected = Math.Sqrt(0.4 * 0.4 + 0.05 * 0.05) / 0.5;
        Assert.Equal(expected, found.Value, 12);
        Assert.InRange(found.Bound, expected, expected + 1e-9);
    }

    /// <summary>Sideways lean of a cross bar's rod: asin(y/L) for chain a, largest at |y| = 50 mm.</summary>
    [Fact]
    public void Swing_agrees_with_its_closed_form()
    {
        var found = Find(Prove(Nest(0.20, 0.10, 0.05)), "reach.swing:/stations/nest:a");
        Assert.Equal(Math.Asin(0.1), found.Value, 12);
        Assert.InRange(found.Bound, found.Value, found.Value + 1e-9);
    }

    /// <summary>
    /// On the axis ∂q/∂p has the singular values √3 and (D/s)·√(3/2) twice, s = 400 mm (published example K21; tests/reference). A nest
    /// without extent is that one point.
    /// </summary>
    [Fact]
    public void Condition_number_of_a_point_agrees_with_the_published_one()
    {
        var found = Find(Prove(Nest(0, 0, 0)), "reach.dexterity:/stations/nest");
        double expected = Math.Sqrt(3) / (0.75 * Math.Sqrt(1.5));
        Assert.Equal(expected, found.Value, 12);
        Assert.InRange(found.Bound, found.Value, found.Value + 1e-6);
    }

    [Fact]
    public void A_wall_keeps_its_gap_from_the_tool()
    {
        var cell = Nest(0.04, 0.04, 0);
        cell = cell with
        {
            Robot = cell.Robot with { Dexterity = cell.Robot.Dexterity with { PlatformRadius = 0.01 } },
            Stations = cell.Stations.SetItem("nest", cell.Stations["nest"] with { WallHeight = 0.02, WallGap = 0.03 }),
        };
        var found = Find(Prove(cell), "reach.tool-clearance:/stations/nest:walls");
        Assert.Equal(0.03 - 0.015, found.Value, 12);
        Assert.InRange(found.Bound, found.Value - 1e-4, found.Value);
    }

    [Fact]
    public void A_station_out_of_reach_falls_short_in_closure_and_leaves_the_rest_open()
    {
        var cell = Nest(0.04, 0.04, 0.05);
        cell = cell with { Stations = cell.Stations.SetItem("nest", cell.Stations["nest"] with { X = 0.45 }) };
        var ledger = Prove(cell);
        Assert.Equal(Verdict.FallsShort, ledger.Findings.Single(f => f.Id == "reach.closure:/stations/nest:b").Verdict);
        Assert.Equal(OpenReason.Failed, ledger.Findings.Single(f => f.Id == "reach.dexterity:/stations/nest").OpenBecause);
    }

    [Fact]
    public void Depth_across_the_plane_of_two_chains_falls_short()
    {
        var planar = ReachCells.Planar;
        Assert.Equal(Verdict.Holds, Find(Prove(planar), "reach.plane:/stations/nest").Verdict);
        var deep = planar with { Stations = planar.Stations.SetItem("nest", planar.Stations["nest"] with { Depth = 0.02 }) };
        var found = Find(Prove(deep), "reach.plane:/stations/nest");
        Assert.Equal(Verdict.FallsShort, found.Verdict);
        Assert.Equal(0.01, found.Value, 12);
    }

    [Fact]
    public void Angles_beyond_the_rotary_axis_fall_short()
    {
        var cell = ReachCells.Rail with { Stations = ReachCells.Rail.Stations.SetItem("nest", ReachCells.Rail.Stations["nest"] with { RotaryTo = ReachCells.Degrees(200) }) };
        var found = Find(Assess.Preview(cell).Ledger, "reach.turn:/stations/nest:rotary");
        Assert.Equal(Verdict.FallsShort, found.Verdict);
        Assert.Equal(ReachCells.Degrees(200), found.Value, 12);
    }

    [Fact]
    public void Angles_without_a_rotary_axis_fall_short()
    {
        var cell = ReachCells.Rail with { Robot = ReachCells.Rail.Robot with { Rotary = new() } };
        var ledger = Assess.Preview(cell).Ledger;
        Assert.Equal(Verdict.FallsShort, ledger.Findings.Single(f => f.Id == "reach.axis:/stations/belt:rotary").Verdict);
        Assert.Contains(ledger.Coverage, c => c.Rule.Id == "reach.turn" && c.Subject == new Subject("/stations/belt", "rotary"));
    }

    [Fact]
    public void A_missing_field_of_a_station_is_named_once_and_its_checks_wait()
    {
        var cell = ReachCells.Rail with { Stations = ReachCells.Rail.Stations.SetItem("nest", ReachCells.Rail.Stations["nest"] with { Width = null }) };
        var ledger = Assess.Preview(cell).Ledger;
        var open = Assert.IsType<Unjudged>(Assert.Single(ledger.Findings, f => f.Subject.Pointer == "/stations/nest"));
        Assert.Equal(["/stations/nest/width"], open.Missing);
        Assert.Contains(ledger.Coverage, c => c.Rule.Id == "reach.closure" && c.Subject.Pointer == "/stations/nest");
        Assert.Contains(ledger.Findings, f => f.Subject.Pointer == "/stations/belt" && f is Judged);
    }

    [Fact]
    public void A_missing_limit_is_asked_for_once_and_only_from_the_depth_that_needs_it()
    {
        var cell = ReachCells.Rail with { Robot = ReachCells.Rail.Robot with { Dexterity = ReachCells.Rail.Robot.Dexterity with { LargestStep = null } } };
        var build = Assess.Preview(cell).Ledger;
        Assert.Equal(["/robot/dexterity/largestStep"], Assert.IsType<Unjudged>(Assert.Single(build.Findings, f => f.Rule.Id == "reach.step")).Missing);
        var quote = Assess.Preview(cell with { Depth = Depth.Quote }).Ledger;
        Assert.DoesNotContain(quote.Findings, f => f.Rule.Id == "reach.step");
        Assert.Equal(3, quote.Coverage.Count(c => c.Rule.Id == "reach.step"));
    }

    [Fact]
    public void An_empty_cell_asks_for_its_parts_and_judges_nothing()
    {
        var ledger = Assess.Preview(Cell.Empty).Ledger;
        Assert.All(ledger.Findings, f => Assert.Equal(Verdict.Open, f.Verdict));
        string[] subjects = ["/robot", "/mount", "/tool", "/stations"];
        Assert.All(subjects, s => Assert.Contains(ledger.Findings, f => f.Rule.Id == "reach.described" && f.Subject.Pointer == s));
    }

    [Fact]
    public void A_station_that_contradicts_itself_says_how()
    {
        var cell = ReachCells.Rail with { Stations = ReachCells.Rail.Stations.SetItem("tray", ReachCells.Rail.Stations["tray"] with { Columns = 0 }) };
        var ledger = Assess.Preview(cell).Ledger;
        var open = Assert.IsType<Unjudged>(ledger.Findings.Single(f => f.Subject.Pointer == "/stations/tray/columns"));
        Assert.Equal((OpenReason.Failed, ReachReasons.NoPocket), (open.Reason, open.Detail));
        // Its walls may stand anywhere, so no station's clearance to walls is judged.
        Assert.DoesNotContain(ledger.Findings, f => f is Judged && f.Id.EndsWith(":walls", StringComparison.Ordinal));
    }

    [Fact]
    public void A_preview_never_holds_what_needs_proof_but_shows_a_violation()
    {
        var ledger = Assess.Preview(ReachCells.Crank).Ledger;
        Assert.All(ledger.Findings.Where(f => f.Rule.NeedsProof && f is Judged { Assurance: Assurance.Sampled }), f => Assert.NotEqual(Verdict.Holds, f.Verdict));
        Assert.Equal(Verdict.FallsShort, ledger.Findings.Single(f => f.Rule.Id == "reach.step").Verdict);
    }

    [Fact]
    public void A_stopped_proof_ends_and_what_it_reached_is_remembered()
    {
        using var source = new CancellationTokenSource();
        var assessor = new Assessor { MostSideBySide = 1 };
        var halfway = new AtOnce(done => { if (done > 0.5) source.Cancel(); });
        Assert.ThrowsAny<OperationCanceledException>(() => assessor.Prove(ReachCells.Rail, halfway, source.Token));
        var then = assessor.Preview(ReachCells.Rail);
        Assert.False(then.Proved);
        Assert.Contains(then.Ledger.Findings, f => f is Judged { Assurance: Assurance.Proved });
        Assert.Contains(then.Ledger.Findings, f => f is Judged { Assurance: Assurance.Sampled });
    }

    private sealed class AtOnce(Action<double> act) : IProgress<double>
    {
        public void Report(double value) => act(value);
    }

    [Fact]
    public async Task The_same_cell_gives_the_same_findings_on_any_number_of_threads_and_in_any_culture()
    {
        var many = Prove(ReachCells.Rail);
        var scheduler = new ConcurrentExclusiveSchedulerPair(TaskScheduler.Default, 1).ConcurrentScheduler;
        var one = await Task.Factory.StartNew(() =>
        {
            var before = CultureInfo.CurrentCulture;
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            try
            {
                return Prove(ReachCells.Rail);
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        }, TestContext.Current.CancellationToken, TaskCreationOptions.None, scheduler);
        Assert.Equal(many.Findings.Select(Told), one.Findings.Select(Told));
    }

    [Fact]
    public void An_edit_of_one_station_leaves_the_proofs_of_the_others()
    {
        var assessor = new Assessor();
        var before = assessor.Prove(ReachCells.Rail, null, TestContext.Current.CancellationToken);
        var nest = ReachCells.Rail.Stations["nest"];
        var edited = assessor.Preview(ReachCells.Rail with { Stations = ReachCells.Rail.Stations.SetItem("nest", nest with { X = nest.X + 0.001 }) });
        Assert.True(before.Proved);
        Assert.False(edited.Proved);
        foreach (var finding in edited.Ledger.Findings.OfType<Judged>().Where(f => f.Subject.Pointer.StartsWith("/stations/", StringComparison.Ordinal)))
        {
            var expected = finding.Subject.Case is "rotary" or "linear" ? Assurance.Exact
                : finding.Subject.Pointer == "/stations/nest" || finding.Subject.Case == "walls" && finding.Inputs.Contains("/stations/nest/x") ? Assurance.Sampled
                : Assurance.Proved;
            Assert.True(expected == finding.Assurance, finding.Id);
        }
    }

    internal static (string, Verdict, double, double, string) Told(Finding f) => f switch
    {
        Judged j => (j.Id, j.Verdict, j.Value, j.Bound, string.Join(' ', j.Inputs)),
        Unjudged u => (u.Id, u.Verdict, double.NaN, double.NaN, string.Join(' ', u.Missing) + u.Detail?.Id),
        _ => (f.Id, f.Verdict, double.NaN, double.NaN, ""),
    };
}

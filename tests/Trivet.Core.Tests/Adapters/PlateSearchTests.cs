using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Adapters;

/// <summary>Plates measured again by other means than those that made them: points strewn over the plate, and rules of the trade one by one.</summary>
public sealed class PlateSearchTests
{
    [Fact]
    public void A_plate_between_a_flange_and_a_gripper_is_found_with_every_measure_kept()
    {
        var result = AdapterCells.Solve(AdapterCells.Simple);
        Assert.NotEmpty(result.Works);
        Assert.All(result.Works, p => Assert.True(p.Works));
        var best = result.Works[0];
        // M4 wants 8 mm of aluminium behind a grip of 6 mm: 16 mm is the shortest screw. It ends a pitch of 0.7 mm short of the flange, so the plate has
        // 10.7 mm at least; 12 mm is the thinnest in stock.
        Assert.Equal(0.012, best.Thickness);
        Assert.Equal(4, best.Holes.Count(h => h is { Kind: HoleKind.Counterbored, From: PlateFace.Below }));
        Assert.Equal(4, best.Holes.Count(h => h.Kind == HoleKind.Tapped));
        Assert.Single(best.Holes, h => h.Kind == HoleKind.Dowel);
        var screw = best.Holes.First(h => h.Serves == PlateFace.Above && h.Fitted is not null).Fitted!;
        Assert.Equal(screw.Length, screw.Clamped + screw.Engaged, 1e-12);
        Assert.True(screw.Engaged <= 0.009 - 0.001 + 1e-12, "the screw does not reach the last pitch of the thread");
    }

    [Fact]
    public void The_list_runs_from_light_to_heavy_then_by_wall_and_leaves_out_no_clocking_that_works()
    {
        var result = AdapterCells.Solve(AdapterCells.Simple);
        for (int i = 1; i < result.Works.Length; i++)
        {
            var (a, b) = (result.Works[i - 1], result.Works[i]);
            Assert.True(a.Mass <= b.Mass + 1e-6);
            if (Math.Abs(a.Mass - b.Mass) < 1e-6) Assert.True(a.Wall >= b.Wall - 1e-6);
        }
        var listed = result.Works.Select(p => p.Clocking).ToHashSet();
        foreach (double clocking in result.Input.Clockings)
        {
            bool works = AdapterCells.Solve(AdapterCells.With(AdapterCells.Simple, p => p with { Clocking = clocking })).Works.Length > 0;
            Assert.Equal(works, listed.Contains(clocking));
        }
    }

    [Fact]
    public void Points_strewn_over_a_plate_find_its_volume_and_no_point_in_two_holes()
    {
        var plate = AdapterCells.Solve(AdapterCells.With(AdapterCells.Simple, p => p with { Lighten = true, Bore = 0.010 })).Works[0];
        var (least, most) = plate.Outline.Box;
        var random = new Random(7);
        int inside = 0, tried = 400_000;
        for (int i = 0; i < tried; i++)
        {
            Vec2 p = new(least.X + random.NextDouble() * (most.X - least.X), least.Y + random.NextDouble() * (most.Y - least.Y));
            double z = random.NextDouble() * plate.Thickness;
            int holes = plate.Holes.Count(h => h.Steps.Any(s => z <= s.Top && z >= s.Bottom && (p - h.At).Norm < s.RadiusTop));
            Assert.True(holes <= 1);
            bool within = plate.Outline.Depth(p) > 0;
            Assert.True(within || holes == 0, "a hole outside the outline");
            if (within && holes == 0) inside++;
        }
        double volume = (most.X - least.X) * (most.Y - least.Y) * plate.Thickness * inside / tried;
        // Four standard errors of so many points.
        Assert.Equal(plate.Volume, volume, plate.Volume * 4 * Math.Sqrt(1.0 / inside));
    }

    [Fact]
    public void Where_both_parts_have_threads_and_cover_the_plate_the_key_forbids_one_plate_and_two_do()
    {
        var result = AdapterCells.Solve(AdapterCells.Covered);
        Assert.Empty(result.Works);
        Assert.Contains(AdapterRules.Key, result.Forbids);
        Assert.Equal(2, result.Stack.Length);
        Assert.All(result.Stack, p => Assert.True(p.Works));
        Assert.Equal((PlateFace.Above, PlateFace.Below), (result.Stack[0].FirstFitted, result.Stack[1].FirstFitted));
        // The joining ring is one ring in both plates.
        Vec2[] Ring(AdapterPlate p, PlateFace side) => [.. p.Holes.Where(h => h.Serves == side && h.Fitted is not null).Select(h => h.At)];
        var upper = Ring(result.Stack[0], PlateFace.Below);
        var lower = Ring(result.Stack[1], PlateFace.Above);
        Assert.Equal(upper.Length, lower.Length);
        Assert.Equal(upper[0].Norm, lower[0].Norm, 1e-12);
    }

    /// <summary>A screw that came through onto the part that covers the far face would jack the two apart: it ends a pitch short.</summary>
    [Fact]
    public void A_screw_in_a_tapped_plate_ends_a_pitch_short_of_a_part_on_the_far_face_and_flush_beside_it()
    {
        // Grip 8 mm and a plate of 12 mm: 20 mm would be flush. The flange of 63 mm covers the gripper's screws 22 mm out.
        static Cell Of(Func<Interface, Interface> change) =>
            AdapterCells.With(AdapterCells.WithInterface(AdapterCells.Simple, i => change(i with { Grip = 0.008 })), p => p with { Thickness = 0.012 });
        var covered = AdapterCells.Solve(Of(i => i)).Works[0];
        Assert.Equal(0.016, covered.Holes.First(h => h.Kind == HoleKind.Tapped).Fitted!.Length, 1e-12);
        // A part that lies beside the flange: nothing is in the screw's way.
        var beside = AdapterCells.Solve(Of(i => i with { Width = 0.090, Depth = 0.090, FaceWidth = 0.110, FaceDepth = 0.110 })).Works[0];
        Assert.Equal(0.020, beside.Holes.First(h => h.Kind == HoleKind.Tapped).Fitted!.Length, 1e-12);
    }

    [Fact]
    public void Two_pins_place_one_plate_of_a_stack_on_the_other_in_one_way_alone()
    {
        var stack = AdapterCells.Solve(AdapterCells.Covered).Stack;
        Vec2[] Pins(AdapterPlate p, PlateFace side, double turn) => [.. p.Holes.Where(h => h.Serves == side && h.Kind == HoleKind.Dowel).Select(h => h.At.Turned(turn))];
        // The lower plate's axes are the ring's; in the upper plate the ring is turned by that plate's clocking.
        var upper = Pins(stack[0], PlateFace.Below, -stack[0].Clocking);
        var lower = Pins(stack[1], PlateFace.Above, 0);
        Assert.Equal(2, upper.Length);
        for (int i = 0; i < 2; i++) Assert.True((upper[i] - lower[i]).Norm < 1e-12);
        for (int k = 1; k < 4; k++)
            Assert.False(upper.All(p => lower.Any(q => (p.Turned(k * Math.PI / 2) - q).Norm < 1e-4)), "fits turned");
        // Far apart, since the doubt of a turn is that of the pins' fit over their distance.
        Assert.True((lower[0] - lower[1]).Norm > 1.9 * lower[0].Norm);
        // The joining screws end short of the part behind the far plate.
        var far = stack.Single(p => p.Holes.Any(h => h.Kind == HoleKind.Tapped));
        var near = stack.Single(p => p != far);
        var screw = near.Holes.First(h => h.Fitted is { Screw.Thread.Name: "M5" } && h.Serves == (near == stack[0] ? PlateFace.Below : PlateFace.Above)).Fitted!;
        bool covered = far.Holes.Any(h => h.Kind == HoleKind.Tapped && (near == stack[0] ? far.Below : far.Above).Face.Beyond(h.At) < 0.0025);
        Assert.True(screw.Engaged <= far.Thickness - (covered ? 0.0008 : 0) + 1e-12);
    }

    [Fact]
    public void A_stack_asked_for_at_one_clocking_has_it()
    {
        const double Clocking = 0.3;
        var result = AdapterCells.Solve(AdapterCells.With(AdapterCells.Covered, p => p with { Pieces = 2, Clocking = Clocking }));
        Assert.Equal(2, result.Chosen.Length);
        Assert.Equal(Clocking, result.Chosen[0].Clocking + result.Chosen[1].Clocking, 1e-12);
    }

    [Fact]
    public void Screws_beside_the_first_part_are_reached_and_stand_proud()
    {
        // A small flange above, threads far outside it below: heads on the upper face beside the flange.
        var cell = AdapterCells.WithInterface(AdapterCells.Covered, i => i with { Circle = 0.100, FaceDiameter = 0.120 });
        var best = AdapterCells.Solve(cell).Works[0];
        Assert.Equal(PlateFace.Above, best.FirstFitted);
        Assert.All(best.Holes.Where(h => h.Serves == PlateFace.Below && h.Fitted is not null), h => Assert.Equal((HoleKind.Through, PlateFace.Above), (h.Kind, h.From)));
        // 50 mm out, the flange ends at 31.5 mm; M5: head 8.5 mm, half of it with half a millimetre.
        Assert.Equal(0.050 - 0.0315 - (0.00425 + 0.0005), best.KeyRoom, 1e-9);
    }

    [Fact]
    public void Two_patterns_on_one_circle_break_into_each_other_at_their_common_angle_alone()
    {
        var cell = AdapterCells.WithInterface(AdapterCells.Covered, i => i with { Tapped = false, Grip = 0.006, Circle = 0.050, FaceDiameter = 0.063 });
        var result = AdapterCells.Solve(AdapterCells.With(cell, p => p with { ClockingStep = Math.PI / 180 }));
        Assert.NotEmpty(result.Works);
        Assert.DoesNotContain(result.Works, p => Math.Abs(p.Clocking - Math.PI / 4) < 1e-9);
        // Counterbore 11 mm and thread 5 mm with a wall of 1.5 mm on a radius of 25 mm.
        double apart = 2 * Math.Asin((0.0055 + 0.0025 + 0.0015) / 0.050);
        Assert.All(result.Works, p => Assert.True(p.Holes.Where(h => h.Kind == HoleKind.Tapped).All(t =>
            p.Holes.Where(h => h.Kind == HoleKind.Counterbored).All(c => Math.Acos(Math.Clamp(t.At.Dot(c.At) / (t.At.Norm * c.At.Norm), -1, 1)) >= apart - 1e-9))));
    }

    [Fact]
    public void Lightening_takes_mass_and_keeps_every_wall()
    {
        var plain = AdapterCells.Solve(AdapterCells.Simple).Works[0];
        var light = AdapterCells.Solve(AdapterCells.With(AdapterCells.Simple, p => p with { Lighten = true, Clocking = plain.Clocking })).Works[0];
        Assert.True(light.Mass < 0.99 * plain.Mass);
        for (int i = 0; i < light.Holes.Length; i++)
        {
            for (int j = 0; j < i; j++) Assert.True(light.Holes[i].WallTo(light.Holes[j]) >= 0.0015 - 1e-9);
            Assert.True(light.Outline.Depth(light.Holes[i].At) - light.Holes[i].Widest >= 0.003 - 1e-9);
        }
    }

    [Fact]
    public void What_is_missing_or_impossible_is_told_with_its_field()
    {
        var missing = AdapterChecks.Of(AdapterCells.With(AdapterCells.Simple, p => p with { Material = null }), new()).Findings;
        Assert.Equal("/plates/adapter/material", Assert.Single(Assert.IsType<Unjudged>(Assert.Single(missing)).Missing));
        var wrong = AdapterChecks.Of(AdapterCells.With(AdapterCells.Simple, p => p with { Below = "nothing" }), new()).Findings;
        Assert.Equal("/plates/adapter/below", Assert.Single(wrong).Subject.Pointer);
        Assert.Equal(AdapterRules.Described, Assert.Single(AdapterChecks.Of(Cell.Empty, new()).Coverage).Rule);
    }

    [Fact]
    public void The_checks_hold_for_a_plate_that_works_and_show_what_one_lacks_that_does_not()
    {
        static Finding[] Of(Cell cell) => [.. AdapterChecks.Of(cell, new()).Tasks.SelectMany(t => t.Sample())];
        Assert.All(Of(AdapterCells.Simple), f => Assert.True(f.Verdict is Verdict.Holds or Verdict.Tight, f.Id));
        Assert.Contains(Of(AdapterCells.Covered), f => f.Rule == AdapterRules.Key && f.Verdict == Verdict.FallsShort);
    }
}

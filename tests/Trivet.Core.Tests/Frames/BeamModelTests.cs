using Trivet.Cells;
using Trivet.Frames;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Frames;

/// <summary>
/// The beam model against closed forms of the handbooks and against two independent models (tests/reference/README-frames.md).
/// </summary>
public class BeamModelTests
{
    [Fact]
    public void Sections_have_the_handbook_properties()
    {
        // Published values R1, R2 (thin-walled hollow sections, computed by the usual formulas).
        var (square, oblong) = (FrameCases.Tube40, Section.Tube(0.04, 0.08, 0.003, 0.3));
        Assert.Equal(444e-6, square.Area, 1e-12);
        Assert.Equal(10.1972e-8, square.MomentY, 1e-12);
        Assert.Equal(15.1959e-8, square.Torsion, 1e-12);
        Assert.Equal(684e-6, oblong.Area, 1e-12);
        Assert.Equal(55.8532e-8, oblong.MomentY, 1e-12);
        Assert.Equal(18.4292e-8, oblong.MomentZ, 1e-12);
        // Cowper 1966 (from memory): thin-walled square tube 20(1+ν)/(48+39ν); solid rectangle 10(1+ν)/(12+11ν).
        Assert.Equal(20 * 1.3 / (48 + 39 * 0.3), square.ShearZ, 1e-12);
        Assert.Equal(13 / 15.3, Section.Bar(0.06, 0.06, 0.3).ShearY, 1e-12);
        // Saint-Venant's torsion constant of a square, 0.1406·a⁴ (Timoshenko, from memory).
        Assert.Equal(0.1406, Section.Bar(1, 1, 0.3).Torsion, 3e-4);
    }

    [Theory]
    [InlineData("A-box")]
    [InlineData("C-braced")]
    public void Frames_of_tube_ring_as_in_an_independent_beam_model(string name)
    {
        var hz = FrameCases.Hz(FrameCases.Reference(name, Section.Tube(0.08, 0.08, 0.004, 0.3)), 6);
        Within(0.001, FrameCases.ReferenceHz(name, "ownTimoshenkoHz"), hz);
        // Its own tolerance: the solver expands beams to solids, so torsion, shear and joints differ.
        Within(0.06, FrameCases.ReferenceHz(name, "ccxHz"), hz);
    }

    [Theory]
    [InlineData("A-box")]
    [InlineData("C-braced")]
    public void Frames_of_bar_ring_as_in_an_independent_beam_model(string name)
    {
        var hz = FrameCases.Hz(FrameCases.Reference(name, Section.Bar(0.06, 0.06, 0.3)), 6);
        Within(0.001, FrameCases.ReferenceHz(name, "solid60", "ownTimoshenkoHz"), hz);
        Within(0.03, FrameCases.ReferenceHz(name, "solid60", "ccxHz"), hz);
    }

    [Fact]
    public void A_slender_cantilever_bends_and_rings_as_the_handbook_says()
    {
        // Shear is taken away, since the closed forms are Euler's and Bernoulli's: R3 (Roark), R5 (Blevins).
        var line = Slender(new(0, 0, 0), new(0, 0, 1));
        var solution = FrameSolution.Of(FrameMesh.Of(FrameCases.Input(FootHold.Fixed, line), 2000), double.PositiveInfinity, 2);
        Assert.Equal(9.339632e-3, 200 * solution.Give(solution.Mesh.Lines[0][^1], Vec3.UnitX), 1e-8);
        Assert.Equal(43.1804, solution.Modes[0].Hz, 0.01);
        Assert.Equal(solution.Modes[0].Hz, solution.Modes[1].Hz, 1e-6);
    }

    [Fact]
    public void A_cantilever_with_a_mass_at_its_tip_rings_as_the_handbook_says()
    {
        // R6, Blevins: 33/140 of the beam's mass at the tip; the approximation itself is good to some per mille.
        var input = FrameCases.Input(FootHold.Fixed, Slender(new(0, 0, 0), new(0, 0, 1))) with { Masses = [new(new(0, 0, 1), 5)] };
        Assert.Equal(10.1332, FrameCases.Hz(input, 1)[0], 0.01);
    }

    [Theory]
    [InlineData(FootHold.Fixed, 76261.11)]
    [InlineData(FootHold.Pinned, 18588.65)]
    public void Portals_sway_as_the_handbook_says(FootHold hold, double stiffness)
    {
        // R9: portal of h = 1.2 m, b = 0.8 m, beam of the posts' section. Two of them stand one behind the other, their masses on their corners.
        const double H = 1.2, B = 0.8, D = 1.0, Corner = 1000;
        var input = FrameCases.Input(hold,
        [
            .. new[] { 0, D }.SelectMany(y => new[]
            {
                Slender(new(0, y, 0), new(0, y, H), $"left-{y}"), Slender(new(B, y, 0), new(B, y, H), $"right-{y}"), Slender(new(0, y, H), new(B, y, H), $"beam-{y}"),
            }),
            .. new[] { 0, B }.Select(x => Slender(new(x, 0, H), new(x, D, H), $"across-{x}")),
        ]) with
        {
            Masses = [.. new[] { 0, B }.SelectMany(x => new[] { 0, D }.Select(y => new PointMass(new(x, y, H), Corner)))],
        };
        input = input with { Lines = [.. input.Lines.Select(l => l with { Beam = l.Beam with { Mass = 1e-4 } })] };
        double expected = Math.Sqrt(2 * stiffness / (4 * Corner)) / Math.Tau;
        double nearest = FrameCases.Hz(input, 3, 20).MinBy(f => Math.Abs(f - expected));
        Assert.Equal(expected, nearest, 2e-5 * expected);
    }

    [Fact]
    public void Posts_with_joints_that_turn_sway_as_the_slope_deflection_method_says()
    {
        // Posts under a rigid top, springs of stiffness c at both ends: k = 12·E·I/h³ / (1 + 6·E·I/(c·h)) (slope-deflection method).
        // With 40 × 40 tube of I 9 cm⁴ and c = 20 kN·m/rad under 60 kg on four posts: 5.4 Hz (trade notes).
        const double H = 1.2, C = 20e3, EI = 70e9 * 9e-8;
        var post = Slender(Vec3.Zero, new(0, 0, 1));
        var input = FrameCases.Input(FootHold.Joint,
        [
            // The first member is the top: heavy, stiff, and earlier than the posts, so that it carries them.
            .. Top(), .. from x in new[] { 0, 0.6 } from y in new[] { 0, 0.6 } select post with
            {
                Bar = post.Bar with { Id = $"post-{x}-{y}", From = new(x, y, 0), To = new(x, y, H) },
                Beam = post.Beam with { BendingY = EI, BendingZ = EI, Mass = 1e-3 },
            },
        ]) with
        { Rigid = false, JointFrom = C, JointTo = C, Masses = [new(new(0.3, 0, H), 30), new(new(0.3, 0.6, H), 30)] };
        double expected = Math.Sqrt(4 * 12 * EI / (H * H * H) / (1 + 6 * EI / (C * H)) / 60) / Math.Tau;
        Assert.Equal(5.4, expected, 0.05);
        // Along x each top is one stiff member; along y the joints between the tops turn too.
        Assert.Equal(expected, FrameCases.Hz(input, 3, 20, C).MinBy(f => Math.Abs(f - expected)), 1e-3);

        FrameLine[] Top() =>
        [
            Stiff(new(-0.1, 0, H), new(0.7, 0, H), "top-1"), Stiff(new(-0.1, 0.6, H), new(0.7, 0.6, H), "top-2"),
            Stiff(new(0.3, 0, H), new(0.3, 0.6, H), "top-3"), Stiff(new(0.1, 0, H), new(0.1, 0.6, H), "top-4"),
        ];

        FrameLine Stiff(Vec3 from, Vec3 to, string id) => post with
        {
            Bar = post.Bar with { Id = id, From = from, To = to },
            Beam = post.Beam with { BendingY = 1e9, BendingZ = 1e9, Torsion = 1e9, Mass = 1e-3 },
        };
    }

    [Theory]
    [InlineData("A-box", 0.004)]
    [InlineData("C-braced", 0.004)]
    [InlineData("A-box", 0)]
    [InlineData("C-braced", 0)]
    public void Frames_ring_as_in_the_finite_element_solver_here(string name, double wall)
    {
        double side = wall > 0 ? 0.08 : 0.06;
        var input = FrameCases.Reference(name, wall > 0 ? Section.Tube(side, side, wall, 0.3) : Section.Bar(side, side, 0.3));
        var outside = FiniteElements.Modes(
            [.. input.Lines.Select(l => (Of(l.Bar.From), Of(l.Bar.To)))], [.. input.Masses.Select(m => (Of(m.P_C), m.Mass))], side, wall, 6);
        Assert.SkipWhen(outside.NotRun.Length > 0, outside.NotRun);
        Within(wall > 0 ? 0.06 : 0.03, outside.Hz, FrameCases.Hz(input, 6));

        static double[] Of(Vec3 p) => [p.X, p.Y, p.Z];
    }

    [Fact]
    public void Double_modes_are_found_twice()
    {
        // A square column rings alike along x and y: every bending mode is double.
        var hz = FrameCases.Hz(FrameCases.Input(FootHold.Fixed, Slender(new(0, 0, 0), new(0, 0, 1))), 6, 3000);
        for (int i = 0; i < 6; i += 2) Assert.Equal(hz[i], hz[i + 1], 1e-5 * hz[i]);
        // Roots of cos λ·cosh λ = −1 (Blevins): 1.875104, 4.694091, 7.854757.
        Assert.Equal(Math.Pow(4.694091 / 1.875104, 2), hz[2] / hz[0], 2e-4 * 6);
    }

    [Fact]
    public void What_nothing_holds_is_named()
    {
        var input = FrameCases.Input(FootHold.Pinned, FrameCases.Line(new(0, 0, 0), new(0, 0, 1), FrameCases.Tube40, id: "post"));
        var solution = FrameSolution.Of(FrameMesh.Of(input, 100), double.PositiveInfinity, 2);
        Assert.False(solution.Usable);
        Assert.Equal("/frame/members/post", solution.Loose);
    }

    private static FrameLine Slender(Vec3 from, Vec3 to, string id = "line")
    {
        var line = FrameCases.Line(from, to, FrameCases.Tube40, id: id);
        return line with { Beam = line.Beam with { ShearY = 1e15, ShearZ = 1e15, Axial = 1e13, RotaryY = 0, RotaryZ = 0 } };
    }

    private static void Within(double part, double[] expected, double[] hz)
    {
        Assert.Equal(expected.Length, hz.Length);
        for (int i = 0; i < expected.Length; i++)
            Assert.True(Math.Abs(hz[i] / expected[i] - 1) <= part, $"mode {i + 1}: {hz[i]} Hz for {expected[i]} Hz, {100 * (hz[i] / expected[i] - 1):0.000} %");
    }
}

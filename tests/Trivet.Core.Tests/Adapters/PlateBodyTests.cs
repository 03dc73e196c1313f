using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Adapters;

/// <summary>The body of a plate against closed forms of mechanics and against points strewn over it.</summary>
public sealed class PlateBodyTests
{
    private static AdapterPlate Designed { get; } = AdapterCells.Solve(AdapterCells.With(AdapterCells.Simple, p => p with { Lighten = true, Bore = 0.010 })).Works[0];

    /// <summary>A disc: m·r²/2 and m·(3r² + t²)/12; an eccentric hole taken out by Steiner's theorem (any handbook of mechanics).</summary>
    [Fact]
    public void A_disc_with_an_eccentric_hole_is_disc_less_cylinder()
    {
        const double R = 0.04, T = 0.01, A = 0.005, X = 0.02, Y = -0.01;
        var plate = Designed with
        {
            Thickness = T,
            Outline = Outline.Circle(R),
            Holes = [new(HoleKind.Through, PlateFace.Above, null, new(X, Y), [new(T, 0, A, A)])],
        };
        double density = plate.Stuff.Density, disc = density * Math.PI * R * R * T, hole = density * Math.PI * A * A * T, mass = disc - hole;
        var body = PlateBody.Of(plate);
        Assert.Equal(mass, body.Mass, 1e-12);
        Assert.Equal(-hole * X / mass, body.Centre.X, 1e-12);
        Assert.Equal(-hole * Y / mass, body.Centre.Y, 1e-12);
        Assert.Equal(T / 2, body.Centre.Z, 1e-12);
        var about = body.About(new(0, 0, T / 2));
        Assert.Equal(disc * R * R / 2 - hole * (A * A / 2 + X * X + Y * Y), about.Row2.Z, 1e-14);
        Assert.Equal(disc * (3 * R * R + T * T) / 12 - hole * ((3 * A * A + T * T) / 12 + Y * Y), about.Row0.X, 1e-14);
        Assert.Equal(hole * X * Y, about.Row0.Y, 1e-14);
    }

    /// <summary>A cone of height h and base radius r: mass ρπr²h/3, centre h/4 above its base, 3mr²/10 about its axis (any handbook of mechanics).</summary>
    [Fact]
    public void A_countersink_is_a_cone()
    {
        const double R = 0.04, T = 0.01, C = 0.008;
        var whole = Designed with { Thickness = T, Outline = Outline.Circle(R), Holes = [] };
        var plate = whole with { Holes = [new(HoleKind.Countersunk, PlateFace.Above, null, default, [new(T, 0, C, 0)])] };
        double cone = plate.Stuff.Density * Math.PI * C * C * T / 3;
        var (with, without) = (PlateBody.Of(plate), PlateBody.Of(whole));
        Assert.Equal(cone, without.Mass - with.Mass, 1e-12);
        Assert.Equal((without.Mass * T / 2 - cone * 3 * T / 4) / with.Mass, with.Centre.Z, 1e-12);
        Assert.Equal(3 * cone * C * C / 10, without.Inertia.Row2.Z - with.Inertia.Row2.Z, 1e-14);
    }

    [Fact]
    public void Points_strewn_over_a_designed_plate_have_its_centre_and_inertia()
    {
        var (least, most) = Designed.Outline.Box;
        var random = new Random(11);
        const int Tried = 400_000;
        double volume = (most.X - least.X) * (most.Y - least.Y) * Designed.Thickness / Tried;
        Vec3 first = Vec3.Zero;
        double zz = 0, xx = 0;
        int inside = 0;
        for (int i = 0; i < Tried; i++)
        {
            Vec3 p = new(least.X + random.NextDouble() * (most.X - least.X), least.Y + random.NextDouble() * (most.Y - least.Y), random.NextDouble() * Designed.Thickness);
            Vec2 flat = new(p.X, p.Y);
            if (Designed.Outline.Depth(flat) < 0 || Designed.Holes.Any(h => h.Steps.Any(s =>
                p.Z <= s.Top && p.Z >= s.Bottom && (flat - h.At).Norm < s.RadiusBottom + (p.Z - s.Bottom) / (s.Top - s.Bottom) * (s.RadiusTop - s.RadiusBottom)))) continue;
            inside++;
            first += p;
            zz += p.X * p.X + p.Y * p.Y;
            xx += p.Y * p.Y + p.Z * p.Z;
        }

        double density = Designed.Stuff.Density;
        var body = PlateBody.Of(Designed);
        Assert.Equal(Designed.Mass, body.Mass, 1e-9);
        Assert.Equal(1, density * volume * inside / body.Mass, 0.01);
        Assert.True((first / inside - body.Centre).Norm < 2e-4);
        Assert.Equal(1, density * volume * zz / body.About(Vec3.Zero).Row2.Z, 0.01);
        Assert.Equal(1, density * volume * xx / body.About(Vec3.Zero).Row0.X, 0.01);
    }

    [Fact]
    public void A_stack_hangs_below_its_face_each_plate_turned_by_those_above()
    {
        var body = PlateBody.Of([Designed, Designed]);
        var one = PlateBody.Of(Designed);
        Assert.Equal(2 * one.Mass, body.Mass, 1e-12);
        double t = Designed.Thickness;
        Assert.Equal(((one.Centre.Z - t) + (one.Centre.Z - 2 * t)) / 2, body.Centre.Z, 1e-12);
        var turned = Mat3.RotationZ(Designed.Clocking) * one.Centre;
        Assert.Equal((one.Centre.X + turned.X) / 2, body.Centre.X, 1e-12);
    }
}

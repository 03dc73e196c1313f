using System.Collections.Immutable;
using Xunit;

namespace Trivet.Numerics.Tests.Solids;

/// <summary>Mass properties of closed meshes: against closed forms, against integrals over faces (Eberly), against points drawn at random.</summary>
public class ClosedMeshTests
{
    private static readonly Vec3 Far = new(0.4, -0.2, 0.15);

    [Fact]
    public void A_block_is_exact()
    {
        var report = ClosedMesh.Of(Meshes.Box(Far, 0.08, 0.05, 0.02));
        var box = SolidShapes.Box(0.08, 0.05, 0.02).MovedBy(Far + new Vec3(0.04, 0.025, 0.01));
        Assert.Equal((MeshFault.None, 12), (report.Fault, report.Triangles));
        Same(box, report.Body, 1e-12);
    }

    /// <summary>A fine ball comes to the sphere from within as the square of the mesh width.</summary>
    [Fact]
    public void A_ball_converges_to_the_sphere()
    {
        double coarse = Error(24), fine = Error(96);
        Assert.InRange(fine, 0, 0.002);
        Assert.InRange(coarse / fine, 14, 18);

        static double Error(int rings)
        {
            var sphere = SolidShapes.Sphere(0.06);
            var body = ClosedMesh.Of(Meshes.Ball(Far, rings, _ => 0.03)).Body;
            Assert.InRange((body.Centre - Far).Norm, 0, 1e-12);
            double volume = 1 - body.Mass / sphere.Mass, inertia = 1 - body.Inertia.Row0.X / sphere.Inertia.Row0.X;
            Assert.True(volume > 0 && inertia > volume);
            return volume;
        }
    }

    [Fact]
    public void An_uneven_body_agrees_with_integrals_over_its_faces()
    {
        var mesh = Uneven(40);
        Same(FaceIntegrals.Of(mesh), ClosedMesh.Of(mesh).Body, 1e-9);
    }

    /// <summary>Another kind of second opinion: half a million points, inside where their direction's radius reaches them. Fixed seed.</summary>
    [Fact]
    public void An_uneven_body_agrees_with_points_drawn_at_random()
    {
        const int Points = 500_000;
        const double Half = 0.05;
        var random = new Random(12);
        var sum = default(MassProperties);
        double volume = 8 * Half * Half * Half, second = 0;
        Vec3 first = Vec3.Zero;
        int inside = 0;
        for (int i = 0; i < Points; i++)
        {
            var p = Half * new Vec3(2 * random.NextDouble() - 1, 2 * random.NextDouble() - 1, 2 * random.NextDouble() - 1);
            if (p.Norm > Radius(p.Unit())) continue;
            inside++;
            first += p;
            second += p.X * p.X + p.Y * p.Y;
        }
        sum = ClosedMesh.Of(Uneven(160)).Body;
        double mass = volume * inside / Points;
        Assert.InRange(sum.Mass / mass, 0.99, 1.01);
        Assert.InRange((sum.Centre - Far - first / inside).Norm, 0, 0.0002);
        Assert.InRange(sum.About(Far).Row2.Z / (mass * second / inside), 0.985, 1.015);
    }

    [Fact]
    public void A_hole_is_found_and_where_it_is()
    {
        var report = ClosedMesh.Of(Meshes.Box(Vec3.Zero, 0.1, 0.1, 0.1)[..^3]);
        Assert.Equal((MeshFault.Open, 3), (report.Fault, report.BadEdges));
        Assert.Equal(0.1, report.At.X, 12);
    }

    [Fact]
    public void A_triangle_that_faces_the_wrong_way_is_found()
    {
        var box = Meshes.Box(Vec3.Zero, 0.1, 0.1, 0.1);
        ImmutableArray<Vec3> turned = [.. box[..^3], box[^3], box[^1], box[^2]];
        Assert.Equal((MeshFault.Flipped, 3), (ClosedMesh.Of(turned).Fault, ClosedMesh.Of(turned).BadEdges));
    }

    [Fact]
    public void A_body_inside_out_a_sheet_and_nothing_are_told_apart()
    {
        var box = Meshes.Box(Vec3.Zero, 0.1, 0.1, 0.1);
        Assert.Equal(MeshFault.Inverted, ClosedMesh.Of([.. box.Reverse()]).Fault);
        Assert.Equal(MeshFault.Flat, ClosedMesh.Of(Meshes.Box(Vec3.Zero, 0.1, 0.1, 0)).Fault);
        Assert.Equal(MeshFault.Empty, ClosedMesh.Of([Vec3.UnitX, Vec3.UnitX, Vec3.UnitY]).Fault);
    }

    [Fact]
    public void A_hollow_within_is_taken_off()
    {
        ImmutableArray<Vec3> hollow = [.. Meshes.Box(Vec3.Zero, 0.1, 0.1, 0.1), .. Meshes.Box(new(0.02, 0.02, 0.02), 0.05, 0.05, 0.05).Reverse()];
        var report = ClosedMesh.Of(hollow);
        Assert.Equal(MeshFault.None, report.Fault);
        Assert.Equal(0.001 - 0.000125, report.Body.Mass, 15);
    }

    private static ImmutableArray<Vec3> Uneven(int rings) => Meshes.Ball(Far, rings, Radius);

    private static double Radius(Vec3 d) => 0.03 + 0.008 * d.X + 0.006 * d.X * d.Y - 0.004 * d.Z * d.Z + 0.003 * d.Y;

    internal static void Same(MassProperties expected, MassProperties actual, double relative)
    {
        Assert.InRange(Math.Abs(actual.Mass / expected.Mass - 1), 0, relative);
        Assert.InRange((actual.Centre - expected.Centre).Norm, 0, relative);
        double scale = expected.Inertia.Row0.X + expected.Inertia.Row1.Y + expected.Inertia.Row2.Z;
        for (int i = 0; i < 3; i++) Assert.InRange((actual.Inertia.Column(i) - expected.Inertia.Column(i)).Norm / scale, 0, relative);
    }
}

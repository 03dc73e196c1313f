using Xunit;

namespace Trivet.Numerics.Tests.Solids;

/// <summary>Closed forms against numeric integrals of another kind, and the rules by which bodies add up.</summary>
public class SolidShapesTests
{
    /// <summary>Rings of the section turned about z, by the midpoint rule: moments of any body of revolution.</summary>
    private static MassProperties Revolved(Func<double, double, bool> within, double radius, double halfLength)
    {
        const int Steps = 1200;
        double volume = 0, axial = 0, across = 0, dr = radius / Steps, dz = 2 * halfLength / Steps;
        for (int i = 0; i < Steps; i++)
        {
            double r = (i + 0.5) * dr;
            for (int k = 0; k < Steps; k++)
            {
                double z = -halfLength + (k + 0.5) * dz;
                if (!within(r, z)) continue;
                double dv = Math.Tau * r * dr * dz;
                volume += dv;
                axial += dv * r * r;
                across += dv * (r * r / 2 + z * z);
            }
        }
        return new(volume, Vec3.Zero, new(across * Vec3.UnitX, across * Vec3.UnitY, axial * Vec3.UnitZ));
    }

    [Fact]
    public void Round_shapes_agree_with_rings_added_up()
    {
        ClosedMeshTests.Same(Revolved((_, _) => true, 0.02, 0.015), SolidShapes.Cylinder(0.04, 0.03), 1e-5);
        ClosedMeshTests.Same(Revolved((r, _) => r > 0.01, 0.02, 0.015), SolidShapes.Tube(0.04, 0.02, 0.03), 2e-3);
        ClosedMeshTests.Same(Revolved((r, z) => r * r + z * z < 0.0004, 0.02, 0.02), SolidShapes.Sphere(0.04), 1e-3);
        ClosedMeshTests.Same(Revolved((r, z) => Math.Pow(r - 0.0175, 2) + z * z < 0.0025 * 0.0025, 0.02, 0.0025), SolidShapes.Ring(0.04, 0.03), 1e-3);
    }

    [Fact]
    public void A_block_is_the_sum_of_its_halves()
    {
        var half = SolidShapes.Box(0.05, 0.04, 0.02);
        var whole = half.MovedBy(new(0.025, 0, 0)) + half.MovedBy(new(-0.025, 0, 0));
        ClosedMeshTests.Same(SolidShapes.Box(0.1, 0.04, 0.02), whole, 1e-12);
    }

    [Fact]
    public void A_block_turned_by_a_quarter_has_its_sides_exchanged() =>
        ClosedMeshTests.Same(SolidShapes.Box(0.02, 0.1, 0.05), SolidShapes.Box(0.1, 0.02, 0.05).Turned(Mat3.RotationZ(Math.PI / 2)), 1e-12);

    /// <summary>Rod of 1 kg and 1 m about its end: m·l²/3 (any table of moments of inertia).</summary>
    [Fact]
    public void A_rod_about_its_end_is_a_third()
    {
        var rod = SolidShapes.Box(1, 1e-6, 1e-6).WithMass(1);
        Assert.Equal(1.0 / 3, rod.About(new(-0.5, 0, 0)).Row2.Z, 9);
    }

    [Fact]
    public void An_unknown_inertia_stays_unknown_in_a_sum()
    {
        var sum = SolidShapes.Sphere(0.1) + MassProperties.WithoutInertia(1, Vec3.UnitX);
        Assert.False(sum.InertiaKnown);
        Assert.True(sum.Centre.IsFinite);
    }
}

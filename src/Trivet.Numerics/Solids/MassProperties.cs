namespace Trivet.Numerics;

/// <summary>
/// Mass, centre of mass and inertia tensor of a rigid body, all in one right-handed frame, SI. Not a number where not known: a sum with an unknown
/// inertia has a known mass and centre and an unknown inertia.
/// </summary>
/// <param name="Mass">Kilograms, not negative.</param>
/// <param name="Centre">Centre of mass, metres.</param>
/// <param name="Inertia">Tensor about the centre of mass, kg·m²: moments on the diagonal, negative products (−∫xy dm) beside it.</param>
public readonly record struct MassProperties(double Mass, Vec3 Centre, Mat3 Inertia)
{
    private static readonly Mat3 UnknownTensor = new(Vec3.NaN, Vec3.NaN, Vec3.NaN);

    /// <summary>A body of which mass and centre alone are known.</summary>
    public static MassProperties WithoutInertia(double mass, Vec3 centre) => new(mass, centre, UnknownTensor);

    /// <summary>All its mass in one point.</summary>
    public static MassProperties Point(double mass, Vec3 at) => new(mass, at, default);

    public bool InertiaKnown => Inertia.Row0.IsFinite && Inertia.Row1.IsFinite && Inertia.Row2.IsFinite;

    public MassProperties MovedBy(Vec3 by) => this with { Centre = Centre + by };

    /// <summary>The same body turned about the frame's origin.</summary>
    public MassProperties Turned(Mat3 r) => new(Mass, r * Centre, r * Inertia * r.Transpose());

    /// <summary>The same shape with another mass, evenly spread.</summary>
    public MassProperties WithMass(double mass) => new(mass, Centre, mass / Mass * Inertia);

    /// <summary>Tensor about another point, kg·m²: the parallel axis theorem (Huygens and Steiner).</summary>
    public Mat3 About(Vec3 point) => Inertia + Mass * Steiner(Centre - point);

    /// <summary>Both bodies as one.</summary>
    public static MassProperties operator +(MassProperties a, MassProperties b)
    {
        double mass = a.Mass + b.Mass;
        if (mass == 0) return new(0, a.Centre, a.Inertia + b.Inertia);
        var centre = (a.Mass * a.Centre + b.Mass * b.Centre) / mass;
        return new(mass, centre, a.About(centre) + b.About(centre));
    }

    /// <summary>|r|²·1 − r·rᵀ, square metres.</summary>
    internal static Mat3 Steiner(Vec3 r)
    {
        double n = r.NormSquared;
        return new(n * Vec3.UnitX - r.X * r, n * Vec3.UnitY - r.Y * r, n * Vec3.UnitZ - r.Z * r);
    }
}

namespace Trivet.Numerics;

/// <summary>
/// A 3×3 matrix, kept as its rows. As a rotation <c>R_AB</c> it turns the components of a vector in frame B into those in
/// frame A: <c>v_A = R_AB * v_B</c>.
/// </summary>
public readonly record struct Mat3(Vec3 Row0, Vec3 Row1, Vec3 Row2)
{
    public static Mat3 Identity => new(Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ);

    /// <summary>Rotation about x by an angle in radians, right-handed.</summary>
    public static Mat3 RotationX(double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return new(Vec3.UnitX, new(0, c, -s), new(0, s, c));
    }

    /// <summary>Rotation about y by an angle in radians, right-handed.</summary>
    public static Mat3 RotationY(double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return new(new(c, 0, s), Vec3.UnitY, new(-s, 0, c));
    }

    /// <summary>Rotation about z by an angle in radians, right-handed.</summary>
    public static Mat3 RotationZ(double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return new(new(c, -s, 0), new(s, c, 0), Vec3.UnitZ);
    }

    public static Vec3 operator *(Mat3 m, Vec3 v) => new(m.Row0.Dot(v), m.Row1.Dot(v), m.Row2.Dot(v));
    public static Mat3 operator *(double s, Mat3 m) => new(s * m.Row0, s * m.Row1, s * m.Row2);
    public static Mat3 operator +(Mat3 a, Mat3 b) => new(a.Row0 + b.Row0, a.Row1 + b.Row1, a.Row2 + b.Row2);

    public static Mat3 operator *(Mat3 a, Mat3 b)
    {
        var t = b.Transpose();
        return new(t * a.Row0, t * a.Row1, t * a.Row2);
    }

    public Mat3 Transpose() => new(Column(0), Column(1), Column(2));

    public Vec3 Column(int j) => new(Row0[j], Row1[j], Row2[j]);

    public double Determinant() => Row0.Dot(Row1.Cross(Row2));

    /// <summary>Singular values, largest first (<see cref="Spectrum"/>).</summary>
    public Vec3 SingularValues() => Spectrum.SingularValues(this);

    /// <summary>Largest over smallest singular value (2-norm): 1 at best, infinite for a singular matrix.</summary>
    public double ConditionNumber()
    {
        var values = SingularValues();
        return values.X / values.Z;
    }

    /// <summary>The inverse by cofactors. A singular matrix gives components that are infinite or not a number.</summary>
    public Mat3 Inverse()
    {
        Vec3 c0 = Row1.Cross(Row2), c1 = Row2.Cross(Row0), c2 = Row0.Cross(Row1);
        double det = Row0.Dot(c0);
        return new Mat3(c0 / det, c1 / det, c2 / det).Transpose();
    }
}

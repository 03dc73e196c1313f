namespace Trivet.Numerics;

/// <summary>A box of vectors, axis-parallel in the frame that the variable names.</summary>
public readonly record struct IntervalVec3(Interval X, Interval Y, Interval Z)
{
    public static IntervalVec3 Zero => default;
    public static IntervalVec3 Whole => new(Interval.Whole, Interval.Whole, Interval.Whole);

    /// <summary>The single vector v, taken as exact.</summary>
    public static implicit operator IntervalVec3(Vec3 v) => new(v.X, v.Y, v.Z);

    /// <summary>v, each component known to within ± error.</summary>
    public static IntervalVec3 Around(Vec3 v, double error) =>
        new(Interval.Around(v.X, error), Interval.Around(v.Y, error), Interval.Around(v.Z, error));

    public bool IsBounded => X.IsBounded && Y.IsBounded && Z.IsBounded;
    public Vec3 Mid => new(X.Mid, Y.Mid, Z.Mid);

    public bool Contains(Vec3 v) => X.Contains(v.X) && Y.Contains(v.Y) && Z.Contains(v.Z);

    public static IntervalVec3 operator +(IntervalVec3 a, IntervalVec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);
    public static IntervalVec3 operator -(IntervalVec3 a, IntervalVec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);
    public static IntervalVec3 operator -(IntervalVec3 a) => new(-a.X, -a.Y, -a.Z);
    public static IntervalVec3 operator *(Interval s, IntervalVec3 a) => new(s * a.X, s * a.Y, s * a.Z);
    public static IntervalVec3 operator /(IntervalVec3 a, Interval s) => new(a.X / s, a.Y / s, a.Z / s);

    public Interval Dot(IntervalVec3 b) => X * b.X + Y * b.Y + Z * b.Z;
    public Interval Dot(Vec3 b) => b.X * X + b.Y * Y + b.Z * Z;

    public IntervalVec3 Cross(Vec3 b) => new(b.Z * Y - b.Y * Z, b.X * Z - b.Z * X, b.Y * X - b.X * Y);
    public IntervalVec3 Cross(IntervalVec3 b) => new(Y * b.Z - Z * b.Y, Z * b.X - X * b.Z, X * b.Y - Y * b.X);

    /// <summary>|v|²; each component is squared for itself, so nothing is lost to their dependence.</summary>
    public Interval NormSquared => Interval.Square(X) + Interval.Square(Y) + Interval.Square(Z);

    /// <summary>Largest distance of a vector of the box from v, rounded up.</summary>
    public double RadiusAbout(Vec3 v)
    {
        double x = X.RadiusAbout(v.X), y = Y.RadiusAbout(v.Y), z = Z.RadiusAbout(v.Z);
        return Math.Sqrt(x * x + y * y + z * z) * (1 + 1e-15);
    }

    /// <summary>The same box with axes R v: the smallest axis-parallel box around the turned one.</summary>
    public static IntervalVec3 operator *(Mat3 r, IntervalVec3 v) => new(v.Dot(r.Row0), v.Dot(r.Row1), v.Dot(r.Row2));

    /// <summary>v times every number of s.</summary>
    public static IntervalVec3 Along(Vec3 v, Interval s) => new(v.X * s, v.Y * s, v.Z * s);
}

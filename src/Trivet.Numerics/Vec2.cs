namespace Trivet.Numerics;

/// <summary>A vector of two doubles, in a plane whose axes the variable's place says.</summary>
public readonly record struct Vec2(double X, double Y)
{
    public static Vec2 Zero => default;

    public double NormSquared => X * X + Y * Y;
    public double Norm => Math.Sqrt(NormSquared);

    public static Vec2 operator +(Vec2 a, Vec2 b) => new(a.X + b.X, a.Y + b.Y);
    public static Vec2 operator -(Vec2 a, Vec2 b) => new(a.X - b.X, a.Y - b.Y);
    public static Vec2 operator *(double s, Vec2 a) => new(s * a.X, s * a.Y);
    public static Vec2 operator /(Vec2 a, double s) => new(a.X / s, a.Y / s);

    public double Dot(Vec2 b) => X * b.X + Y * b.Y;

    /// <summary>Positive where b lies counter-clockwise of this.</summary>
    public double Cross(Vec2 b) => X * b.Y - Y * b.X;

    /// <summary>Turned counter-clockwise by an angle, radians.</summary>
    public Vec2 Turned(double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        return new(cos * X - sin * Y, sin * X + cos * Y);
    }

    /// <summary>At a distance along a direction, radians from x counter-clockwise.</summary>
    public static Vec2 Polar(double radius, double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        return new(radius * cos, radius * sin);
    }
}

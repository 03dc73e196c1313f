using Trivet.Numerics;

namespace Trivet.Views.Pictures;

/// <summary>A parallel projection: the unit vectors to the right and up the page and towards the eye, a right-handed frame.</summary>
internal sealed record Axonometry(Vec3 Right, Vec3 Up, Vec3 Eye)
{
    /// <summary>Cell x to the right, y up.</summary>
    public static Axonometry FromAbove { get; } = new(Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ);

    /// <summary>As one sees it who stands in front and looks straight up: x to the right, y down the page.</summary>
    public static Axonometry FromBelow { get; } = new(Vec3.UnitX, -Vec3.UnitY, -Vec3.UnitZ);

    /// <summary>The eye stands in a direction of the cell and over the level, radians; z points up the page.</summary>
    public static Axonometry From(double azimuth, double elevation)
    {
        var (s, c) = Math.SinCos(azimuth);
        var (se, ce) = Math.SinCos(elevation);
        return new(new(-s, c, 0), new(-se * c, -se * s, ce), new(ce * c, ce * s, se));
    }

    public (double X, double Y) At(Vec3 p) => (Right.Dot(p), Up.Dot(p));
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Tests.Reach;

/// <summary>Robots with chains alike, built straight from chains so that these tests stand on nothing but the kinematics' records.</summary>
internal static class ExampleRobots
{
    private const double Degree = Math.PI / 180;

    /// <summary>Rail delta; lengths in metres, inclination from straight down, positive inward at the lower end, radians.</summary>
    public static DeltaRobot Rail(double baseRadius, double platformRadius, double rod, double stroke, double inclination = 0) =>
        new(RobotFamily.RailDelta, [.. Azimuths.Select(a =>
        {
            var (s, c) = Math.SinCos(a);
            Vec3 outward = new(c, s, 0);
            Vec3 rail = -Math.Sin(inclination) * outward - Math.Cos(inclination) * Vec3.UnitZ;
            return new Chain(RobotFamily.RailDelta, baseRadius * outward, rail, Vec3.Zero, 1, platformRadius * outward, rod, 0, 0, stroke, new(-s, c, 0));
        })], Ids);

    /// <summary>Crank delta; lengths in metres, travel in radians.</summary>
    public static DeltaRobot Crank(double baseRadius, double platformRadius, double arm, double rod, double from, double to) =>
        new(RobotFamily.CrankDelta, [.. Azimuths.Select(a =>
        {
            var (s, c) = Math.SinCos(a);
            Vec3 outward = new(c, s, 0);
            return new Chain(RobotFamily.CrankDelta, baseRadius * outward, outward, -Vec3.UnitZ, arm, platformRadius * outward, rod, 0, from, to, new(-s, c, 0));
        })], Ids);

    /// <summary>Two upright rails at ±x, in the plane y = 0.</summary>
    public static DeltaRobot TwoRails(double baseRadius, double platformRadius, double rod, double stroke) =>
        new(RobotFamily.RailDelta, [.. new[] { 1.0, -1.0 }.Select(side => new Chain(
            RobotFamily.RailDelta, new(side * baseRadius, 0, 0), -Vec3.UnitZ, Vec3.Zero, 1, new(side * platformRadius, 0, 0), rod, 0, 0, stroke, new(0, side, 0)))],
            ["right", "left"]);

    /// <summary>Williams 2016, rotary example: triangle sides 0.567 m and 0.076 m, arm 0.524 m, rod 1.244 m.</summary>
    public static DeltaRobot Williams => Crank(0.567 * Math.Sqrt(3) / 6, 0.076 * Math.Sqrt(3) / 3, 0.524, 1.244, -30 * Degree, 80 * Degree);

    private static readonly double[] Azimuths = [-90 * Degree, 30 * Degree, 150 * Degree];
    private static readonly ImmutableArray<string> Ids = ["a", "b", "c"];
}

using System.Collections.Immutable;
using System.Text.Json;
using CsCheck;
using Trivet.Kinematics;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Reach;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Motion;

/// <summary>Paths of the tool centre point: the law of rounded corners, arcs, derivatives, and what follows for the drives.</summary>
public sealed class ToolPathTests
{
    private static readonly Gen<Vec3> Anywhere =
        Gen.Select(FixedCases.Between(-0.3, 0.3), FixedCases.Between(-0.3, 0.3), FixedCases.Between(-0.3, 0.3), (x, y, z) => new Vec3(x, y, z));

    [Fact]
    public void A_corner_is_rounded_by_the_stated_law_and_ends_on_the_second_leg()
    {
        var path = ToolPath.Through([Vec3.Zero, new(0, 0, 0.1), new(0.2, 0, 0.1)], 0.03);
        Assert.Equal(0.3, path.Length, 1e-15);
        for (double u = 0; u <= 1; u += 0.125)
        {
            var at = path.At(0.07 + 0.06 * u);
            double turned = 3 * u * u - 2 * u * u * u;
            Near(new(turned, 0, 1 - turned), at.D1, 1e-12);
            // dp/ds integrated by hand: u³ − u⁴/2.
            Near(new(0.06 * (u * u * u - u * u * u * u / 2), 0, 0.07 + 0.06 * (u - u * u * u + u * u * u * u / 2)), at.P, 1e-12);
        }
        Near(new(0.03, 0, 0.1), path.At(0.13).P, 1e-12);
        Assert.Equal([0, 0.07, 0.13, 0.3], path.Joints.Select(s => Math.Round(s, 12)));
    }

    [Fact]
    public void Roundings_share_a_leg_by_halves_and_one_alone_may_take_it_whole()
    {
        var path = ToolPath.Through([Vec3.Zero, new(0, 0, 0.02), new(0.05, 0, 0.02), new(0.05, 0, -0.08)], 0.03);
        Assert.Equal([0.02, 0.025], path.Corners.Select(c => c.Half));
        Assert.All(path.Corners, c => Assert.True(c.Limited));
        Near(new(0.05, 0, -0.08), path.At(path.Length).P, 1e-12);
    }

    [Fact]
    public void Repeated_points_and_straight_on_make_no_corner()
    {
        var path = ToolPath.Through([Vec3.Zero, Vec3.Zero, new(0.1, 0, 0), new(0.3, 0, 0)], 0.03);
        Assert.Equal(0, Assert.Single(path.Corners).Half);
        Near(new(0.15, 0, 0), path.At(0.15).P, 1e-15);
    }

    /// <summary>A half circle of radius 0.5 m as in published example J8: length π·r, all of it at the radius, curvature 1/r.</summary>
    [Fact]
    public void An_arc_through_a_point_is_an_exact_circle()
    {
        var path = ToolPath.Arc(new(0.5, 0, 0.2), new(0, 0.5, 0.2), new(-0.5, 0, 0.2))!;
        Assert.Equal(Math.PI * 0.5, path.Length, 1e-12);
        for (double s = 0; s < path.Length; s += 0.1)
        {
            var at = path.At(s);
            Assert.Equal(0.5, (at.P - new Vec3(0, 0, 0.2)).Norm, 1e-12);
            Assert.Equal(1, at.D1.Norm, 1e-12);
            Near(-2 * (at.P - new Vec3(0, 0, 0.2)) / 0.5, at.D2, 1e-12);
        }
        Near(new(-0.5, 0, 0.2), path.At(path.Length).P, 1e-12);
        Assert.Null(ToolPath.Arc(Vec3.Zero, Vec3.UnitX, 2 * Vec3.UnitX));
    }

    [Fact]
    public void An_arc_begins_passes_and_ends_where_it_is_told_to() => Gen.Select(Anywhere, Anywhere, Anywhere).Holds(50, t =>
    {
        var (a, b, c) = t;
        if ((b - a).Cross(c - a).Norm < 1e-3) return;
        var path = ToolPath.Arc(a, b, c)!;
        Near(a, path.At(0).P, 1e-9);
        Near(c, path.At(path.Length).P, 1e-9);
        double nearest = Enumerable.Range(0, 4001).Min(i => (path.At(path.Length * i / 4000).P - b).Norm);
        Assert.True(nearest <= path.Length / 4000, $"{nearest}");
    });

    [Fact]
    public void Derivatives_of_path_platform_and_drives_agree_with_differences() =>
        Gen.Select(RandomRobots.All, Anywhere.Array[3], FixedCases.Between(0.02, 0.1), FixedCases.Between(-2, 2)).Holds(60, t =>
    {
        var ((robot, middle), aside, blend, turn) = t;
        var geometry = Geometry(robot) with { Tcp_P = new(0.02, robot.Planar ? 0 : 0.01, -0.1) };
        var points = new Vec3[] { middle, middle + 0.2 * aside[0], middle + 0.2 * aside[1], middle + 0.2 * aside[2] };
        if (robot.Planar) points = [.. points.Select(p => p with { Y = 0 })];
        var path = ToolPath.Through(points.Select(p => p + geometry.Tcp_P), blend);
        var platform = new PlatformPath(geometry, robot, path, new(0.3, 0.3 + turn, 0.1 * path.Length, 0.9 * path.Length), true, 0);
        const double h = 1e-6;
        for (int k = 1; k < 8; k++)
        {
            double s = (k - 0.3) / 8 * path.Length;
            if (path.Joints.Any(j => Math.Abs(j - s) < 2 * h)) continue;
            PlatformPoint before = platform.At(s - h), at = platform.At(s), after = platform.At(s + h);
            Near((after.Platform.P - before.Platform.P) / (2 * h), at.Platform.D1, 1e-6);
            Near((after.Platform.D1 - before.Platform.D1) / (2 * h), at.Platform.D2, 1e-3 * (1 + at.Platform.D3.Norm));
            Near((after.Platform.D2 - before.Platform.D2) / (2 * h), at.Platform.D3, 1e-4 * (1 + at.Platform.D3.Norm));
            Assert.Equal((after.Angle - before.Angle) / (2 * h), at.Angle1, 1e-5);
            Assert.Equal((after.Angle1 - before.Angle1) / (2 * h), at.Angle2, 1e-3 * (1 + Math.Abs(at.Angle3)));
            Assert.Equal((after.Angle2 - before.Angle2) / (2 * h), at.Angle3, 1e-3 * (1 + Math.Abs(at.Angle3)));
            for (int i = 0; i < robot.Chains.Length; i++)
            {
                AxisPoint b = platform.Axis(i, before.Platform), m = platform.Axis(i, at.Platform), a = platform.Axis(i, after.Platform);
                if (double.IsNaN(b.Q + a.Q)) continue;
                Assert.Equal((a.Q - b.Q) / (2 * h), m.D1, 1e-5 * (1 + Math.Abs(m.D2)));
                Assert.Equal((a.D1 - b.D1) / (2 * h), m.D2, 1e-5 * (1 + Math.Abs(m.D3)));
                Assert.Equal((a.D2 - b.D2) / (2 * h), m.D3, 1e-3 * (1 + Math.Abs(m.D3)));
            }
        }
    });

    /// <summary>Positions and first and second derivatives of the drives on the gate path of the trade, computed independently for this project
    /// (tests/reference/path-timing.json; its rail coordinate grows upward).</summary>
    [Fact]
    public void The_gate_path_of_the_reference_is_reproduced()
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reference", "path-timing.json")));
        var platform = GateOfTheReference();
        foreach (var sample in json.RootElement.GetProperty("samples").EnumerateArray())
        {
            double s = sample.GetProperty("s").GetDouble();
            var at = platform.At(s);
            Near(Vector(sample.GetProperty("p")), at.Platform.P, 1e-11);
            for (int i = 0; i < 3; i++)
            {
                var axis = platform.Axis(i, at.Platform);
                Assert.Equal(-sample.GetProperty("q")[i].GetDouble(), axis.Q, 1e-11);
                Assert.Equal(-sample.GetProperty("dq_ds")[i].GetDouble(), axis.D1, 1e-10);
                Assert.Equal(-sample.GetProperty("d2q_ds2")[i].GetDouble(), axis.D2, 1e-8);
            }
        }
    }

    [Fact]
    public void Bounds_hold_what_is_attained_between_them() =>
        Gen.Select(RandomRobots.All, Anywhere.Array[3], FixedCases.Between(0, 0.1), FixedCases.Between(-2, 2), FixedCases.Between(0, 1).Array[3]).Holds(60, t =>
    {
        var ((robot, middle), aside, blend, turn, share) = t;
        var geometry = Geometry(robot) with { Tcp_P = new(0.02, 0.01, -0.1) };
        var path = aside[2].X > 0 ? ToolPath.Through([middle, .. aside.Select(a => middle + 0.2 * a)], blend) : ToolPath.Arc(middle, middle + aside[0], middle + aside[1])!;
        HoldsOver(new(geometry, robot, path, new(0.3, 0.3 + turn, 0.1 * path.Length, 0.9 * path.Length), true, 0), share);
    });

    [Theory]
    [InlineData(3.0, -3.0, -4.0, 4.0, 3.2831853)] // the short way across ±180°
    [InlineData(3.0, -3.0, -3.1, 3.1, -3.0)] // not where the travel ends before it
    [InlineData(0.0, 0.5, -1.0, 1.0, 0.5)]
    [InlineData(0.0, 2.0, -1.0, 1.0, 2.0)] // out of travel either way: left to the check
    public void The_rotary_axis_turns_the_shortest_way_its_travel_allows(double from, double wanted, double low, double high, double to) =>
        Assert.Equal(to, TurnLaw.Nearest(from, wanted, low, high), 1e-6);

    internal static PlatformPath GateOfTheReference()
    {
        var robot = Robots.Rail(0.3, 0.05, 0.5, azimuths: [0, 120, 240]);
        Vec3 a = new(-0.1525, 0, -0.6), up = new(0, 0, 0.025), across = new(0.305, 0, 0);
        var path = ToolPath.Through([a, a + up, a + up + across, a + across], 0.02);
        return new(Geometry(robot), robot, path, default, false, 0);
    }

    internal static CellGeometry Geometry(DeltaRobot robot) => new(robot, Pose.Identity, Vec3.Zero, Vec3.Zero, [], []);

    private static void HoldsOver(PlatformPath path, double[] share)
    {
        double a = path.Length * Math.Min(share[0], share[1]), b = path.Length * Math.Max(share[0], share[1]);
        var box = ((IPlatformMotion)path).Over([a], [b]);
        var (platform, rate) = (box.Platform, box.Rate[0]);
        for (int i = 0; i <= 20; i++)
        {
            var at = path.At(a + (b - a) * i / 20).Platform;
            Assert.True(platform.Contains(at.P), $"{at.P} outside {platform}");
            Assert.True(Wider(rate).Contains(at.D1), $"{at.D1} outside {rate}");
        }

        // The point's own rounding, which the bound need not hold.
        static IntervalVec3 Wider(IntervalVec3 v) => v + IntervalVec3.Around(Vec3.Zero, 1e-12);
    }

    private static Vec3 Vector(JsonElement e) => new(e[0].GetDouble(), e[1].GetDouble(), e[2].GetDouble());

    private static void Near(Vec3 expected, Vec3 actual, double tolerance) =>
        Assert.True((expected - actual).Norm <= tolerance, $"{expected} is not {actual} to within {tolerance}");
}

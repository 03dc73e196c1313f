using CsCheck;
using Trivet.Cabling;
using Trivet.Conductors;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Cabling;

public sealed class CableGeometryTests
{
    private static readonly Gen<Vec3> Points = Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[-1, 1], (x, y, z) => new Vec3(x, y, z));

    /// <summary>The slow twin: both stretches in a thousand pieces.</summary>
    [Fact]
    public void Two_stretches_come_as_near_as_a_fine_grid_says() =>
        Gen.Select(Points, Points, Points, Points).Sample(
            g =>
            {
                var (a, b, c, d) = g;
                var (s, t, distance) = Line.Closest(a, b, c, d);
                Assert.Equal((a + s * (b - a) - c - t * (d - c)).Norm, distance, 1e-12);
                double grid = double.PositiveInfinity;
                const int n = 60;
                for (int i = 0; i <= n; i++)
                    for (int j = 0; j <= n; j++) grid = Math.Min(grid, (a + (double)i / n * (b - a) - c - (double)j / n * (d - c)).Norm);
                Assert.True(distance <= grid + 1e-12);
                Assert.True(distance >= grid - ((b - a).Norm + (d - c).Norm) / (2 * n));
            },
            seed: "0000000000011", iter: Effort.Cases(200));

    [Fact]
    public void Parallel_stretches_and_points_have_their_distance_too()
    {
        Assert.Equal(0.2, Line.Closest(new(0, 0, 0), new(1, 0, 0), new(0.5, 0.2, 0), new(3, 0.2, 0)).Distance, 1e-12);
        Assert.Equal(1, Line.Closest(new(0, 0, 0), new(1, 0, 0), new(2, 0, 0), new(2, 0, 0)).Distance, 1e-12);
    }

    /// <summary>Published worked examples: 0.75 mm², 12 m, 2.5 A loses 1.5600 V at 20 °C and 1.8665 V at 70 °C; 1.5 mm², 15 m, 6 A loses 2.3940 V and
    /// 2.8644 V (resistances of IEC 60228, class 5; 0.00393 per kelvin).</summary>
    [Theory]
    [InlineData(0.75, 12, 2.5, 20, 1.5600), InlineData(0.75, 12, 2.5, 70, 1.8665), InlineData(1.5, 15, 6, 20, 2.3940), InlineData(1.5, 15, 6, 70, 2.8644)]
    public void Voltage_drop_is_that_of_the_worked_examples(double area, double length, double current, double celsius, double volts) =>
        Assert.Equal(volts, Copper.Drop(area * 1e-6, length, current, celsius), 5e-5);

    [Fact]
    public void Without_copper_there_is_no_number() => Assert.True(double.IsNaN(Copper.Drop(0, 1, 1)));

    /// <summary>Arcs of a circle of radius 0.2 m: a quarter, a half and five sixths (chord 2·r·sin(α/2), length r·α).</summary>
    [Theory]
    [InlineData(Math.PI / 2), InlineData(Math.PI), InlineData(5 * Math.PI / 3)]
    public void The_roundest_curve_is_the_arc_of_a_circle(double angle) =>
        Assert.Equal(0.2, PlatformLoop.ArcRadius(0.2 * angle, 0.4 * Math.Sin(angle / 2)), 1e-9);

    [Fact]
    public void A_chord_longer_than_the_cable_has_no_arc()
    {
        Assert.True(double.IsNaN(PlatformLoop.ArcRadius(1, 1.01)));
        Assert.True(double.IsInfinity(PlatformLoop.ArcRadius(1, 1)));
    }

    /// <summary>By hand: cabinet at the origin, up 1 m of duct 0.3 m away, across 0.5 m to a device 0.2 m beside it.</summary>
    [Fact]
    public void A_route_is_as_long_as_by_hand()
    {
        var cell = Cell.Empty with
        {
            Cabinet = new() { Modules = Keyed.Empty<Module>().Add("drive", new()) },
            Cabling = new()
            {
                CabinetX = 0, CabinetY = 0, CabinetZ = 0, InsideCabinet = 0.7,
                Devices = Keyed.Empty<CabledDevice>().Add("motor", new() { X = 0.8, Y = 0.2, Z = 1 }),
                Ways = Keyed.Empty<CableWay>().Add("up", Duct((0.3, 0, 0), (0.3, 0, 1))).Add("across", Duct((0.3, 0, 1), (2, 0, 1)))
                    .Add("chain", new() { Kind = CableWayKind.EnergyChain, Travel = 1.2, FixedOffset = 0.1, BendRadius = 0.1, Points = Duct((0.3, 0, 1), (0.8, 0, 1)).Points }),
            },
            Cables = Keyed.Empty<Cable>().Add("w", new() { From = "drive", To = "motor", Route = "up, across", Slack = 0.25 }).Add("c", new() { From = "drive", To = "motor", Route = "up,chain", Slack = 0 }),
        };
        var reading = new Reading();
        var ways = cell.Cabling.Ways.Keys.ToDictionary(w => w, w => WayInputs.Read(cell, w, reading));
        var (route, _) = CableRoute.Of(cell, "w", w => ways.GetValueOrDefault(w), new());
        Assert.Equal((1.5, 0.5, 0.7, 0.25), (Math.Round(route!.InWays, 9), Math.Round(route.Between, 9), route.Inside, route.Slack));
        Assert.Equal(2.95, route.Needed, 1e-9);
        // Half of the travel, as far as the fixed end is off the middle, half a turn.
        Assert.Equal(0.6 + 0.1 + Math.PI * 0.1, CableRoute.Of(cell, "c", w => ways.GetValueOrDefault(w), new()).Route!.Hanging, 1e-9);

        static CableWay Duct(params (double X, double Y, double Z)[] points) => new()
        {
            Points = points.Aggregate(Keyed.Empty<WayPoint>(), (all, p) => all.Add($"p{all.Count}", new() { Order = all.Count, X = p.X, Y = p.Y, Z = p.Z })),
        };
    }

    [Fact]
    public void Ways_that_run_along_and_those_that_cross_are_told_apart()
    {
        var power = new Line([new(0, 0, 0), new(2, 0, 0)]);
        var along = SideBySide.Of(new([new(0.5, 0.05, 0), new(1.5, 0.05, 0)]), power, 0.1);
        Assert.Equal((1.0, Math.PI / 2), (Math.Round(along.Beside, 9), along.Angle));
        Assert.Equal(0, SideBySide.Of(new([new(0.5, 0.11, 0), new(1.5, 0.11, 0)]), power, 0.1).Beside);
        var square = SideBySide.Of(new([new(1, -1, 0.02), new(1, 1, 0.02)]), power, 0.1);
        Assert.Equal((0, Math.PI / 2), (square.Beside, square.Angle));
        Assert.Equal(Math.PI / 3, SideBySide.Of(new([new(1, -1, 0), new(1 + 2 / Math.Sqrt(3), 1, 0)]), power, 0.1).Angle, 1e-9);
    }
}

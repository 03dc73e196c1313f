using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;
using Xunit;

namespace Trivet.Tests.Reach;

public class PlaneMapTests
{
    // Base frame 1 m above the cell's floor, turned by 30°, the tool centre point 0.1 m below the platform and 20 mm to its side.
    private static readonly CellGeometry Cell = new(
        ExampleRobots.Rail(0.35, 0.05, 0.5, 0.6), new(Mat3.RotationZ(Math.PI / 6), new(0.2, -0.1, 1.0)), Vec3.Zero, new(0.02, 0, -0.1), [], []);

    [Fact]
    public void Map_is_empty_where_nothing_is_reached_and_without_a_robot()
    {
        Assert.Equal(0, PlaneMap.Of(Cell, WorkingPlane.Level(2), MapQuantity.TravelLeft).Columns);
        Assert.Equal(0, PlaneMap.Of(Cell with { Robot = null }, WorkingPlane.Level(0.2), MapQuantity.TravelLeft).Columns);
    }

    /// <summary>The map's cells that hold a value, counted, cover the area of the section; a Riemann sum against a polygon.</summary>
    [Fact]
    public void Map_covers_the_area_of_the_section()
    {
        var map = PlaneMap.Of(Cell, WorkingPlane.Level(0.2), MapQuantity.TravelLeft, 200);
        double area = ReachableVolume.HorizontalSection(new(Cell.Robot!), 0.2 + 0.1 - 1.0).Area();
        Assert.Equal(area, map.Values.Count(v => !double.IsNaN(v)) * map.Step * map.Step, 0.01 * area);
        Assert.All(map.Values.Where(v => !double.IsNaN(v)), v => Assert.InRange(v, 0, 1));
    }

    /// <summary>On the robot's axis all readings are alike: published example K18, q = 200 mm at z = −600 mm, so a third of 600 mm.</summary>
    [Fact]
    public void Travel_left_on_the_axis_follows_from_the_published_reading()
    {
        var onAxis = Cell with { Tcp_P = new(0, 0, -0.1), X_CB = new(Mat3.Identity, new(0, 0, 1)) };
        var map = PlaneMap.Of(onAxis, WorkingPlane.Level(0.3), MapQuantity.TravelLeft, 101);
        int column = (int)Math.Round(-map.FromU / map.Step), row = (int)Math.Round(-map.FromV / map.Step);
        Assert.Equal(2.0 / 3, map.At(column, row), 0.02);
    }

    /// <summary>Published K22: with D = l·√(2/3) an upright rail delta is isotropic on its axis.</summary>
    [Fact]
    public void Condition_is_one_where_the_isotropic_robot_stands()
    {
        const double L = 0.5;
        double d = L * Math.Sqrt(2.0 / 3);
        var isotropic = new CellGeometry(ExampleRobots.Rail(d, 0, L, 0.6), Pose.Identity, Vec3.Zero, Vec3.Zero, [], []);
        var map = PlaneMap.Of(isotropic, WorkingPlane.Level(-0.6), MapQuantity.Condition, 81);
        Assert.Equal(1, map.Values.Where(v => !double.IsNaN(v)).Min(), 0.02);
    }

    [Fact]
    public void Swing_map_agrees_with_the_pose_at_each_place()
    {
        System.Collections.Immutable.ImmutableArray<BallJoint> joints = [.. Cell.Robot!.Chains.Select(_ => new BallJoint(JointKind.CrossBar, 0.5, 0))];
        var map = PlaneMap.Of(Cell, WorkingPlane.Level(0.2), MapQuantity.Swing, 24, joints, rotary: 0.4);
        int seen = 0;
        for (int j = 0; j < map.Rows; j++)
        {
            for (int i = 0; i < map.Columns; i++)
            {
                if (double.IsNaN(map.At(i, j))) continue;
                Vec3 p = Cell.PlatformFor(new(map.FromU + i * map.Step, map.FromV + j * map.Step, 0.2), 0.4, 0);
                double worst = Cell.Robot!.Chains.Max(c => Math.Abs(c.CrossBarSwing(p, c.Inverse(p))));
                Assert.Equal(worst, map.At(i, j), 1e-12);
                seen++;
            }
        }

        Assert.True(seen > 100);
        Assert.Throws<ArgumentException>(() => PlaneMap.Of(Cell, WorkingPlane.Level(0.2), MapQuantity.Swing));
    }

    /// <summary>Two chains, turned and offset in the cell: over their own plane the map holds what the base frame's own numbers are there.</summary>
    [Fact]
    public void Two_chains_have_a_map_of_the_plane_they_move_in()
    {
        var robot = Trivet.Testing.Robots.Rail(0.35, 0.05, 0.5, azimuths: [0, 180]);
        CellGeometry cell = new(robot, new(Mat3.RotationZ(Math.PI / 6), new(0.2, -0.1, 1.0)), Vec3.Zero, new(0.02, 0.01, -0.1), [], []);
        var map = PlaneMap.Of(cell, WorkingPlane.OfRobot(cell), MapQuantity.TravelLeft, 60);
        int held = 0;
        for (int j = 0; j < map.Rows; j++)
            for (int i = 0; i < map.Columns; i++)
            {
                if (double.IsNaN(map.At(i, j))) continue;
                held++;
                Vec3 p = cell.PlatformFor(map.Plane.At(map.FromU + i * map.Step, map.FromV + j * map.Step), 0, 0);
                Assert.Equal(0, p.Y, 1e-12);
                var q = robot.Inverse(p);
                double left = robot.Chains.Select((c, k) => Math.Min(q[k] - c.TravelFrom, c.TravelTo - q[k]) / (0.5 * (c.TravelTo - c.TravelFrom))).Min();
                Assert.Equal(left, map.At(i, j), 1e-9);
            }

        double area = ReachableVolume.VerticalSection(new(robot), Vec3.Zero, 0).Area();
        Assert.Equal(area, held * map.Step * map.Step, 0.03 * area);
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Cabling;

/// <summary>
/// A loop that hangs between a point of the frame and the platform. How far apart its ends come is found twice. Over the stations: their boxes'
/// corners span a convex body that holds all moves between them that stay within their heights, and the distance from a point is
/// largest at a corner and nowhere smaller than to the box about them all. Everywhere: at the readings of a grid over the drives' whole travel, since homing and
/// moving by hand lead there too.
/// </summary>
/// <param name="Farthest">Over the stations, metres; not a number where none is described.</param>
/// <param name="Nearest">A bound from below.</param>
/// <param name="FarthestEver">At the readings tried; not a number without a robot.</param>
public sealed record PlatformLoop(double Farthest, double Nearest, double FarthestEver)
{
    /// <summary>A loop is this much longer than the farthest distance (common practice, no source).</summary>
    public const double Reserve = 0.1;

    /// <summary>Readings tried of each drive.</summary>
    private const int Readings = 7;

    /// <param name="anchor_C">Its point on the frame, cell frame.</param>
    /// <param name="p_P">Its point on the platform from the platform reference point.</param>
    public static PlatformLoop? Of(Cell cell, Vec3 anchor_C, Vec3 p_P, Reading reading)
    {
        var mount = PlacingInputs.Mount(cell.Mount, reading);
        var tcp = PlacingInputs.Tcp(cell.Tool, reading);
        var robot = RobotInputs.Geometry(cell.Robot, reading).Robot;
        var rail_C = PlacingInputs.LinearDirection(cell.Robot.LinearAxis, reading);
        var (low, high, most) = (new Vec3(1, 1, 1) * double.PositiveInfinity, new Vec3(1, 1, 1) * double.NegativeInfinity, double.NaN);
        reading.Used("/stations", string.Join('\n', cell.Stations.Keys));
        foreach (var (id, _) in cell.Stations)
        {
            var own = new Reading();
            var box = StationInputs.Read(cell, id, own).Box;
            reading.Used(own);
            if (box is null) continue;
            // The tool may be turned any way where it stands off the axis.
            double aside = new Vec3(tcp.X, tcp.Y, 0).Norm;
            for (int corner = 0; corner < 8; corner++)
            {
                var s = new Vec3((corner & 1) == 0 ? box.Low.X : box.High.X, (corner & 2) == 0 ? box.Low.Y : box.High.Y, (corner & 4) == 0 ? box.Low.Z : box.High.Z);
                var platform_C = box.X_CS * s + mount.R * (p_P - new Vec3(0, 0, tcp.Z));
                // What carries the robot carries the anchor too.
                var d = platform_C - box.LinearAxisAt * rail_C - anchor_C;
                low = Vec3.Min(low, d - aside * new Vec3(1, 1, 1));
                high = Vec3.Max(high, d + aside * new Vec3(1, 1, 1));
                most = double.IsNaN(most) ? d.Norm + aside : Math.Max(most, d.Norm + aside);
            }
        }
        if (!reading.Complete) return null;
        double nearest = double.IsNaN(most) ? double.NaN : Vec3.Max(low, Vec3.Max(-high, Vec3.Zero)).Norm;
        return new(most, nearest, robot is null ? double.NaN : Ever(robot, mount, anchor_C, p_P));
    }

    private static double Ever(DeltaRobot robot, Pose x_CB, Vec3 anchor_C, Vec3 p_P)
    {
        var anchor_B = x_CB.R.Transpose() * (anchor_C - x_CB.P);
        double most = double.NaN;
        int third = robot.Planar ? 1 : Readings;
        for (int i = 0; i < Readings; i++)
            for (int j = 0; j < Readings; j++)
                for (int k = 0; k < third; k++)
                {
                    var p = ForwardPose.Of(robot, new(Q(0, i), Q(1, j), robot.Planar ? 0 : Q(2, k)));
                    if (p.Closure != Closure.Closes) continue;
                    double d = (p.Working + p_P - anchor_B).Norm;
                    most = double.IsNaN(most) ? d : Math.Max(most, d);
                }
        return most;

        double Q(int chain, int step) => robot.Chains[chain].TravelFrom + (robot.Chains[chain].TravelTo - robot.Chains[chain].TravelFrom) * step / (Readings - 1);
    }

    /// <summary>
    /// Radius of the arc of a circle with a length and a chord, metres: of all curves between two points at that distance this one bends least where it bends most (Schur's
    /// comparison of curves), so a loop that hangs bends at least as sharply. Infinite for a straight one, not a number for a chord longer than the arc.
    /// </summary>
    public static double ArcRadius(double length, double chord)
    {
        if (!(length > 0) || !(chord >= 0) || chord > length) return double.NaN;
        if (chord == length) return double.PositiveInfinity;
        // chord/length = sin(x)/x with x = half the angle, falling from 1 to 0 over (0, π].
        double low = 0, high = Math.PI, share = chord / length;
        for (int i = 0; i < 60; i++)
        {
            double x = (low + high) / 2;
            if (Math.Sin(x) / x > share) low = x;
            else high = x;
        }
        return length / (low + high);
    }
}

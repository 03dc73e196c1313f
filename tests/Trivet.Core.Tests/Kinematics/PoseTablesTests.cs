using System.Globalization;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Kinematics;

/// <summary>500 poses each of tests/reference/poses-rail.csv and poses-crank.csv, computed outside Trivet with numpy (README-kinematics.md).</summary>
public class PoseTablesTests
{
    /// <summary>The tables carry 12 digits.</summary>
    private const double Printed = 2e-11;

    private static IEnumerable<(Vec3 P, Vec3 Q, double Condition)> Table(string name) =>
        File.ReadLines(ReferenceData.Path(name)).SkipWhile(l => !char.IsAsciiDigit(l[0]) && l[0] != '-')
            .Select(l => l.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray())
            .Select(v => (new Vec3(v[0], v[1], v[2]), new Vec3(v[3], v[4], v[5]), v[6]));

    /// <summary>The rail table counts upward from z = 0; Trivet counts downward from the upper stop, which is at z = 0 here.</summary>
    [Fact]
    public void Rail_poses_agree() => AssertAgrees("poses-rail.csv", Robots.Rail(0.3, 0.05, 0.5, azimuths: Robots.EvenAzimuths), sign: -1);

    [Fact]
    public void Crank_poses_agree() => AssertAgrees("poses-crank.csv", Robots.Crank(0.2, 0.045, 0.24, 0.6, Robots.EvenAzimuths), sign: 1);

    private static void AssertAgrees(string table, DeltaRobot robot, double sign)
    {
        int rows = 0;
        foreach (var (p, q, condition) in Table(table))
        {
            rows++;
            var pose = PoseResult.At(robot, p);
            Assert.True((sign * q - pose.Q).Norm < Printed && Math.Abs(pose.Condition - condition) < Printed * condition, $"row {rows}: {pose.Q}, {pose.Condition}");
            Assert.True((ForwardPose.Of(robot, sign * q).Working - p).Norm < Printed, $"row {rows}: {ForwardPose.Of(robot, sign * q).Working}");
        }
        Assert.Equal(500, rows);
    }
}

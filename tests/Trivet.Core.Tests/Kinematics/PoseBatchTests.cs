using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Numerics.Lanes;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Kinematics;

/// <summary>The batch against its slow twin: one pose after the other by <see cref="PoseResult.At(DeltaRobot, Vec3)"/>.</summary>
public class PoseBatchTests
{
    private sealed record Batch(double[] X, double[] Y, double[] Z, double[] Q1, double[] Q2, double[] Q3, double[] Condition)
    {
        public static Batch Around(Vec3 p, int count)
        {
            var b = new Batch(new double[count], new double[count], new double[count], new double[count], new double[count], new double[count], new double[count]);
            var random = new Random(7);
            for (int i = 0; i < count; i++)
                (b.X[i], b.Y[i], b.Z[i]) = (p.X + 0.05 * (random.NextDouble() - 0.5), p.Y + 0.05 * (random.NextDouble() - 0.5), p.Z + 0.05 * (random.NextDouble() - 0.5));
            return b;
        }

        public void Run(DeltaRobot robot) => PoseBatch.Inverse(robot, X, Y, Z, Q1, Q2, Q3, Condition);

        public int Run<T>(DeltaRobot robot) where T : struct, ILanes<T> => PoseBatch.Inverse<T>(robot, X, Y, Z, Q1, Q2, Q3, Condition);

        public void AssertAgrees(DeltaRobot robot, int count)
        {
            for (int i = 0; i < count; i++)
            {
                var pose = PoseResult.At(robot, new(X[i], Y[i], Z[i]));
                Vec3 q = new(Q1[i], Q2[i], Q3[i]);
                Assert.True((q - pose.Q).Norm < 1e-14, $"{i}: {q} for {pose.Q}");
                Assert.True(Math.Abs(Condition[i] - pose.Condition) < 1e-12 * pose.Condition, $"{i}: {Condition[i]} for {pose.Condition}");
            }
        }
    }

    [Fact]
    public void Rails_in_any_width_agree_with_one_by_one() => RandomRobots.Rails.Holds(200, c => AssertEveryWidth(c.Robot, c.P));

    [Fact]
    public void Cranks_in_any_width_agree_with_one_by_one() => RandomRobots.Cranks.Holds(200, c => AssertEveryWidth(c.Robot, c.P));

    private static void AssertEveryWidth(DeltaRobot robot, Vec3 p)
    {
        var batch = Batch.Around(p, 21);
        Assert.Equal(16, batch.Run<Lanes512>(robot));
        batch.AssertAgrees(robot, 16);
        Assert.Equal(20, batch.Run<Lanes256>(robot));
        batch.AssertAgrees(robot, 20);
        Assert.Equal(21, batch.Run<Lanes1>(robot));
        batch.AssertAgrees(robot, 21);
        batch.Run(robot);
        batch.AssertAgrees(robot, 21);
    }

    [Fact]
    public void Two_chains_run_one_by_one_with_zero_for_the_third() => RandomRobots.PlanarCranks.Holds(20, c =>
    {
        var batch = Batch.Around(c.P, 5);
        Array.Clear(batch.Y);
        Array.Fill(batch.Q3, double.NaN);
        batch.Run(c.Robot);
        batch.AssertAgrees(c.Robot, 5);
        Assert.All(batch.Q3, q => Assert.Equal(0, q));
    });

    /// <summary>On the axis of a symmetrical robot two singular values are equal: where a careless closed form loses half its digits.</summary>
    [Fact]
    public void The_axis_of_a_symmetrical_robot_keeps_its_digits()
    {
        foreach (var robot in new[] { Robots.Rail(0.35, 0.05, 0.5), Robots.Crank(0.2, 0.05, 0.3, 0.7), Robots.Rail(0.5 * Math.Sqrt(2.0 / 3) + 0.05, 0.05, 0.5) })
        {
            var batch = Batch.Around(new(0, 0, -0.6), 16);
            Array.Clear(batch.X);
            Array.Clear(batch.Y);
            batch.Run(robot);
            batch.AssertAgrees(robot, 16);
        }
    }

    [Fact]
    public void Out_of_reach_is_not_a_number_and_leaves_its_neighbours_alone()
    {
        foreach (var robot in new[] { Robots.Rail(0.35, 0.05, 0.5), Robots.Crank(0.2, 0.05, 0.3, 0.7) })
        {
            var batch = Batch.Around(new(0, 0, -0.6), 19);
            batch.X[3] = batch.X[17] = 2;
            batch.Run(robot);
            for (int i = 0; i < 19; i++) Assert.Equal(i is 3 or 17, double.IsNaN(batch.Condition[i]));
            Assert.True(double.IsNaN(batch.Q1[3]) && double.IsNaN(batch.Q1[17]));
        }
    }

    [Fact]
    public void Nothing_is_allocated()
    {
        foreach (var robot in new[] { Robots.Rail(0.35, 0.05, 0.5), Robots.Crank(0.2, 0.05, 0.3, 0.7), Robots.Rail(0.35, 0.05, 0.5, azimuths: [0, 180]) })
        {
            var batch = Batch.Around(new(0, 0, -0.6), 1000);
            batch.Run(robot);
            long before = GC.GetAllocatedBytesForCurrentThread();
            batch.Run(robot);
            Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        }
    }

    [Fact]
    public void Spans_of_unequal_length_are_refused() =>
        Assert.Throws<ArgumentException>(() => PoseBatch.Inverse(Robots.Rail(0.35, 0.05, 0.5), new double[9], new double[9], new double[8], new double[9], new double[9], new double[9], new double[9]));
}

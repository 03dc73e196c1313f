using Trivet.Dynamics;
using Trivet.Numerics;
using Trivet.Numerics.Lanes;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Dynamics;

/// <summary>The batch against its slow twin, one state after the other by <see cref="RobotDynamics.Inverse"/>.</summary>
public class DynamicsBatchTests
{
    private sealed class Batch
    {
        private readonly double[][] _given;
        public readonly double[] F1, F2, F3;

        public Batch(MotionState around, int count)
        {
            var random = new Random(5);
            double Near(double middle, double spread) => middle + spread * (random.NextDouble() - 0.5);
            Vec3[] start = [around.P, around.V, around.A];
            double[] spread = [0.02, 1, 20];
            _given = [.. Enumerable.Range(0, 9).Select(k => Enumerable.Range(0, count).Select(_ => Near(start[k / 3][k % 3], spread[k / 3])).ToArray())];
            (F1, F2, F3) = (new double[count], new double[count], new double[count]);
        }

        public double[] X => _given[0];

        public void Rest(int i)
        {
            for (int k = 3; k < 6; k++) _given[k][i] = 0;
        }

        public void Flatten()
        {
            for (int k = 1; k < 9; k += 3) Array.Clear(_given[k]);
        }

        public void Run(RobotDynamics d) =>
            DynamicsBatch.Inverse(d, _given[0], _given[1], _given[2], _given[3], _given[4], _given[5], _given[6], _given[7], _given[8], F1, F2, F3);

        public int Run<T>(RobotDynamics d) where T : struct, ILanes<T> => DynamicsBatch.Inverse<T>(
            d, new(_given[0], _given[1], _given[2], _given[3], _given[4], _given[5], _given[6], _given[7], _given[8]), F1, F2, F3);

        public void AssertAgrees(RobotDynamics d, int count)
        {
            for (int i = 0; i < count; i++)
            {
                var force = d.Inverse(Of(0, i), Of(3, i), Of(6, i));
                Vec3 found = new(F1[i], F2[i], F3[i]);
                Assert.True((found - force).Norm < 1e-11 * (1 + force.Norm), $"{i}: {found} for {force}");
            }
        }

        private Vec3 Of(int k, int i) => new(_given[k][i], _given[k + 1][i], _given[k + 2][i]);
    }

    [Fact]
    public void Rails_in_any_width_agree_with_one_by_one() => RandomDynamics.Rails.Holds(150, c => AssertEveryWidth(c.Dynamics, c.State));

    [Fact]
    public void Cranks_in_any_width_agree_with_one_by_one() => RandomDynamics.Cranks.Holds(150, c => AssertEveryWidth(c.Dynamics, c.State));

    [Fact]
    public void The_lumped_splits_run_in_a_batch_too() => RandomDynamics.Spatial.Holds(50, c => AssertEveryWidth(c.Dynamics.With(RodShares.TwoThirds), c.State));

    private static void AssertEveryWidth(RobotDynamics d, MotionState state)
    {
        var batch = new Batch(state, 21);
        batch.Rest(2); // at rest Coulomb friction has no direction
        Assert.Equal(16, batch.Run<Lanes512>(d));
        batch.AssertAgrees(d, 16);
        Assert.Equal(20, batch.Run<Lanes256>(d));
        batch.AssertAgrees(d, 20);
        Assert.Equal(21, batch.Run<Lanes1>(d));
        batch.AssertAgrees(d, 21);
        batch.Run(d);
        batch.AssertAgrees(d, 21);
    }

    [Fact]
    public void Two_chains_run_one_by_one_with_zero_for_the_third() => RandomDynamics.Planar.Holds(20, c =>
    {
        var batch = new Batch(c.State, 5);
        batch.Flatten();
        Array.Fill(batch.F3, double.NaN);
        batch.Run(c.Dynamics);
        batch.AssertAgrees(c.Dynamics, 5);
        Assert.All(batch.F3, f => Assert.Equal(0, f));
    });

    [Fact]
    public void Out_of_reach_is_not_a_number_and_leaves_its_neighbours_alone() => RandomDynamics.Spatial.Holds(10, c =>
    {
        var batch = new Batch(c.State, 19);
        batch.X[3] = batch.X[17] = 5;
        batch.Run(c.Dynamics);
        for (int i = 0; i < 19; i++) Assert.Equal(i is 3 or 17, double.IsNaN(batch.F1[i]) && double.IsNaN(batch.F2[i]) && double.IsNaN(batch.F3[i]));
    });

    [Fact]
    public void Nothing_is_allocated() => RandomDynamics.All.Holds(6, c =>
    {
        var batch = new Batch(c.State, 1000);
        batch.Run(c.Dynamics);
        long before = GC.GetAllocatedBytesForCurrentThread();
        batch.Run(c.Dynamics);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    });

    [Fact]
    public void Spans_of_unequal_length_are_refused() => RandomDynamics.Rails.Holds(1, c =>
    {
        var nine = new double[9];
        Assert.Throws<ArgumentException>(() => DynamicsBatch.Inverse(c.Dynamics, nine, nine, new double[8], nine, nine, nine, nine, nine, nine, nine, nine, nine));
        Assert.Throws<ArgumentException>(() => DynamicsBatch.Inverse(c.Dynamics, nine, nine, nine, nine, nine, nine, nine, nine, nine, nine, nine, new double[8]));
    });
}

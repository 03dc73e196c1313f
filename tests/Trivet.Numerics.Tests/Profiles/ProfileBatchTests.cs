using CsCheck;
using Trivet.Numerics.Lanes;
using Trivet.Numerics.Profiles;
using Trivet.Testing;
using Xunit;
using static Trivet.Testing.FixedCases;

namespace Trivet.Numerics.Tests.Profiles;

/// <summary>Every width of the batch against the profiles one by one.</summary>
public sealed class ProfileBatchTests
{
    private static readonly Gen<double> Distance = Gen.OneOf(Between(-0.5, 0.5), Between(-0.01, 0.01), Gen.Const(0.0), Gen.Const(double.NaN));
    private static readonly Gen<double> Velocity = Gen.OneOf(Between(0.05, 4), Between(0.05, 4), Gen.Const(0.0));
    private static readonly Gen<double> Acceleration = Gen.OneOf(Between(5, 100), Between(5, 100), Gen.Const(double.PositiveInfinity), Gen.Const(-1.0));
    private static readonly Gen<double> Jerk = Gen.OneOf(Between(300, 10_000), Gen.Const(double.PositiveInfinity), Gen.Const(double.NaN));

    [Fact]
    public void Durations_agree_with_the_profiles_one_by_one() =>
        Gen.Select(Distance.Array[19], Velocity.Array[19], Acceleration.Array[19], Jerk.Array[19]).Holds(2_000, c =>
        {
            var (d, v, a, j) = c;
            double[] all = new double[19], four = new double[19], one = new double[19];
            ProfileBatch.RestToRest(d, v, a, j, all);
            Assert.Equal(16, ProfileBatch.RestToRest<Lanes256>(d, v, a, j, four));
            Assert.Equal(19, ProfileBatch.RestToRest<Lanes1>(d, v, a, j, one));
            for (int i = 0; i < 19; i++)
            {
                double expected = AxisProfiles.FastestDuration(new(0, d[i]), new(v[i], a[i], j[i]));
                AssertClose(expected, all[i]);
                AssertClose(expected, one[i]);
                if (i < 16) AssertClose(expected, four[i]);
            }
        });

    private static void AssertClose(double expected, double actual) => Assert.Equal(expected, actual, double.IsNaN(expected) ? 0 : 1e-12 * expected);
}

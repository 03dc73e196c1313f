using BenchmarkDotNet.Attributes;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Numerics.Lanes;

namespace Trivet.Benchmarks;

/// <summary>
/// Drive readings and condition number, nanoseconds a pose. Budget: 5 ns for rails, 11 ns for cranks in a batch; 70 ns one double
/// wide. Random poses, the geometries of tests/reference/poses-rail.csv and poses-crank.csv.
/// </summary>
public class PoseBenchmarks
{
    private const int Poses = 4096;

    private readonly double[] _x = new double[Poses], _y = new double[Poses], _z = new double[Poses];
    private readonly double[] _q1 = new double[Poses], _q2 = new double[Poses], _q3 = new double[Poses], _condition = new double[Poses];
    private DeltaRobot _robot = null!;

    [Params(RobotFamily.RailDelta, RobotFamily.CrankDelta)]
    public RobotFamily Family { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        bool rail = Family == RobotFamily.RailDelta;
        var chains = Keyed.Empty<ChainDescription>();
        for (int i = 0; i < 3; i++) chains = chains.Add(((char)('a' + i)).ToString(), new() { Azimuth = i * Math.Tau / 3 });
        _robot = RobotInputs.Geometry(new()
        {
            Family = Family,
            Common = rail
                ? new() { BaseRadius = 0.3, BaseHeight = 0, PlatformRadius = 0.05, Rod = 0.5, TravelFrom = 0, TravelTo = 0.4 }
                : new() { BaseRadius = 0.2, BaseHeight = 0, PlatformRadius = 0.045, UpperArm = 0.24, Rod = 0.6, TravelFrom = -1, TravelTo = 1.5 },
            Chains = chains,
        }, new Reading()).Robot ?? throw new InvalidOperationException("The benchmark's robot is incomplete.");

        var random = new Random(1);
        for (int i = 0; i < Poses; i++)
            (_x[i], _y[i], _z[i]) = (0.3 * (random.NextDouble() - 0.5), 0.3 * (random.NextDouble() - 0.5), (rail ? -0.45 : -0.55) - 0.15 * random.NextDouble());
    }

    [Benchmark(OperationsPerInvoke = Poses)]
    public void As_wide_as_the_processor_allows() => PoseBatch.Inverse(_robot, _x, _y, _z, _q1, _q2, _q3, _condition);

    [Benchmark(OperationsPerInvoke = Poses)]
    public int Four_doubles_wide() => PoseBatch.Inverse<Lanes256>(_robot, _x, _y, _z, _q1, _q2, _q3, _condition);

    [Benchmark(OperationsPerInvoke = Poses, Baseline = true)]
    public int One_double_wide() => PoseBatch.Inverse<Lanes1>(_robot, _x, _y, _z, _q1, _q2, _q3, _condition);

    /// <summary>Everything about a pose: rates, their inverse, gains, both measures of singularity.</summary>
    [Benchmark(OperationsPerInvoke = Poses)]
    public double One_by_one_with_all_results()
    {
        double sum = 0;
        for (int i = 0; i < Poses; i++) sum += PoseResult.At(_robot, new(_x[i], _y[i], _z[i])).Condition;
        return sum;
    }

    /// <summary>The textbook's way in plain doubles, to compare by ratio: a hand-written one takes 68 ns where a hand-written batch takes 4.7 ns
    ///, which is 14.5 times as long.</summary>
    [Benchmark(OperationsPerInvoke = Poses)]
    public double Plain_doubles_and_arc_cosine()
    {
        double sum = 0;
        for (int i = 0; i < Poses; i++)
        {
            var p = new Vec3(_x[i], _y[i], _z[i]);
            double xx = 0, yy = 0, zz = 0, xy = 0, xz = 0, yz = 0;
            foreach (ref readonly var chain in _robot.Chains.AsSpan())
            {
                double q = chain.Inverse(p);
                var rod = chain.RodVector(p, q);
                var row = rod / rod.Dot(chain.JointRate(q));
                (xx, yy, zz) = (xx + row.X * row.X, yy + row.Y * row.Y, zz + row.Z * row.Z);
                (xy, xz, yz) = (xy + row.X * row.Y, xz + row.X * row.Z, yz + row.Y * row.Z);
            }
            // Eigenvalues of the symmetric 3 × 3 matrix by the trigonometric formula (Smith 1961, from memory).
            double mean = (xx + yy + zz) / 3, a = xx - mean, b = yy - mean, c = zz - mean;
            double size = Math.Sqrt((a * a + b * b + c * c + 2 * (xy * xy + xz * xz + yz * yz)) / 6);
            double determinant = a * (b * c - yz * yz) - xy * (xy * c - yz * xz) + xz * (xy * yz - b * xz);
            double angle = Math.Acos(Math.Clamp(determinant / (2 * size * size * size), -1, 1)) / 3;
            sum += Math.Sqrt((mean + 2 * size * Math.Cos(angle)) / (mean + 2 * size * Math.Cos(angle + Math.Tau / 3)));
        }
        return sum;
    }

    [Benchmark(OperationsPerInvoke = Poses)]
    public Vec3 Inverse_alone()
    {
        var sum = Vec3.Zero;
        for (int i = 0; i < Poses; i++) sum += _robot.Inverse(new(_x[i], _y[i], _z[i]));
        return sum;
    }

    [Benchmark(OperationsPerInvoke = Poses)]
    public Vec3 Forward_alone()
    {
        var sum = Vec3.Zero;
        for (int i = 0; i < Poses; i++) sum += ForwardPose.Of(_robot, new(0.1 + 0.1 * _x[i], 0.1 + 0.1 * _y[i], 0.1)).Working;
        return sum;
    }
}

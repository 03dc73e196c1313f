using BenchmarkDotNet.Attributes;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Numerics.Lanes;

namespace Trivet.Benchmarks;

/// <summary>
/// Forces of the drives, nanoseconds a state. Budget for rails: 5 ns in a batch, 20 ns one by one. Random states, the rail delta of
/// tests/reference/rail-forces.json and a crank delta of the same size.
/// </summary>
public class DynamicsBenchmarks
{
    private const int States = 4096;

    private readonly double[] _x = new double[States], _y = new double[States], _z = new double[States];
    private readonly double[] _vx = new double[States], _vy = new double[States], _vz = new double[States];
    private readonly double[] _ax = new double[States], _ay = new double[States], _az = new double[States];
    private readonly double[] _f1 = new double[States], _f2 = new double[States], _f3 = new double[States];
    private RobotDynamics _dynamics = null!;

    [Params(RobotFamily.RailDelta, RobotFamily.CrankDelta)]
    public RobotFamily Family { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        bool rail = Family == RobotFamily.RailDelta;
        var chains = Keyed.Empty<ChainDescription>();
        for (int i = 0; i < 3; i++) chains = chains.Add(((char)('a' + i)).ToString(), new() { Azimuth = i * Math.Tau / 3 });
        var robot = RobotInputs.Geometry(new()
        {
            Family = Family,
            Common = rail
                ? new() { BaseRadius = 0.3, BaseHeight = 0, PlatformRadius = 0.05, Rod = 0.5, TravelFrom = 0, TravelTo = 0.4 }
                : new() { BaseRadius = 0.2, BaseHeight = 0, PlatformRadius = 0.045, UpperArm = 0.24, Rod = 0.6, TravelFrom = -1, TravelTo = 1.5 },
            Chains = chains,
        }, new Reading()).Robot ?? throw new InvalidOperationException("The benchmark's robot is incomplete.");
        var bodies = (rail ? ChainBodies.Rail(0.8, 0.05, 0.08) : ChainBodies.Crank(0.9, 0.1, 0.02, 0.05, 0.08)) with { Viscous = 2, Coulomb = 3 };
        _dynamics = new(robot, [bodies, bodies, bodies], new(1, Vec3.Zero), -RobotDynamics.StandardGravity * Vec3.UnitZ);

        var random = new Random(1);
        double Any(double size) => 2 * size * (random.NextDouble() - 0.5);
        for (int i = 0; i < States; i++)
        {
            (_x[i], _y[i], _z[i]) = (Any(0.15), Any(0.15), (rail ? -0.52 : -0.62) + Any(0.07));
            (_vx[i], _vy[i], _vz[i]) = (Any(1.5), Any(1.5), Any(1.5));
            (_ax[i], _ay[i], _az[i]) = (Any(30), Any(30), Any(30));
        }
    }

    [Benchmark(OperationsPerInvoke = States)]
    public void As_wide_as_the_processor_allows() =>
        DynamicsBatch.Inverse(_dynamics, _x, _y, _z, _vx, _vy, _vz, _ax, _ay, _az, _f1, _f2, _f3);

    [Benchmark(OperationsPerInvoke = States)]
    public int Four_doubles_wide() =>
        DynamicsBatch.Inverse<Lanes256>(_dynamics, new(_x, _y, _z, _vx, _vy, _vz, _ax, _ay, _az), _f1, _f2, _f3);

    [Benchmark(OperationsPerInvoke = States)]
    public int One_double_wide() =>
        DynamicsBatch.Inverse<Lanes1>(_dynamics, new(_x, _y, _z, _vx, _vy, _vz, _ax, _ay, _az), _f1, _f2, _f3);

    [Benchmark(OperationsPerInvoke = States, Baseline = true)]
    public Vec3 One_by_one()
    {
        var sum = Vec3.Zero;
        for (int i = 0; i < States; i++) sum += _dynamics.Inverse(new(_x[i], _y[i], _z[i]), new(_vx[i], _vy[i], _vz[i]), new(_ax[i], _ay[i], _az[i]));
        return sum;
    }

    /// <summary>Speeds, accelerations and the rotary axis along with the forces.</summary>
    [Benchmark(OperationsPerInvoke = States)]
    public Vec3 One_by_one_with_the_rotary_axis()
    {
        var sum = Vec3.Zero;
        for (int i = 0; i < States; i++)
            sum += _dynamics.Demand(new(new(_x[i], _y[i], _z[i]), new(_vx[i], _vy[i], _vz[i]), new(_ax[i], _ay[i], _az[i]), new(0.3, 1, 10))).Force;
        return sum;
    }

    [Benchmark(OperationsPerInvoke = States)]
    public double Rods_and_mount()
    {
        double sum = 0;
        for (int i = 0; i < States; i++) sum += Loads.Of(_dynamics, new(new(_x[i], _y[i], _z[i]), new(_vx[i], _vy[i], _vz[i]), new(_ax[i], _ay[i], _az[i]))).One.Most;
        return sum;
    }
}

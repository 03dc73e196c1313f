using BenchmarkDotNet.Attributes;
using Trivet.Numerics.Profiles;
using Trivet.Numerics.Tests.Profiles;

namespace Trivet.Benchmarks;

/// <summary>The gate path of tests/reference/path-timing.json with velocity, acceleration and force of three rails. Budget: 0.15 ms for 1,000 points.</summary>
public class PathTimingBenchmarks
{
    private readonly PathTiming _timing = new();
    private PathLimits _limits = null!, _falling = null!;

    [GlobalSetup]
    public void Setup()
    {
        var path = new GatePath(1000);
        _limits = path.Limits(force: true);
        _falling = path.Limits(force: true, new SpeedCurve((0.4, 60), (1.0, 45), (2.0, 38)));
    }

    [Benchmark(Baseline = true)]
    public PathTraversal Gate() => _timing.Solve(_limits);

    [Benchmark]
    public PathTraversal Gate_with_force_that_falls_with_speed() => _timing.Solve(_falling);
}

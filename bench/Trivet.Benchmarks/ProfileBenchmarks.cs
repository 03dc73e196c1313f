using BenchmarkDotNet.Attributes;
using Trivet.Numerics.Profiles;

namespace Trivet.Benchmarks;

/// <summary>
/// Moves of three axes, nanoseconds a case. Budget: the full answer 1,000 ns at rest and 2,500 ns with moving ends, durations alone 30 ns at
/// rest. Random cases in the ranges of tests/reference/jerk-limited-cases.json.
/// </summary>
public class ProfileBenchmarks
{
    private const int Cases = 1024, Axes = 3;

    private readonly AxisMove[] _moves = new AxisMove[Cases * Axes];
    private readonly AxisLimits[] _limits = new AxisLimits[Cases * Axes];
    private readonly Profile[] _profiles = new Profile[Axes];
    private double[] _distance = [], _velocity = [], _acceleration = [], _jerk = [], _duration = [];

    [Params(false, true)]
    public bool MovingEnds { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        var random = new Random(1);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        for (int i = 0; i < _moves.Length; i++)
        {
            double v = Between(0.5, 4);
            _limits[i] = new(v, Between(10, 120), Between(500, 12_000));
            _moves[i] = new(Between(-0.3, 0.3), Between(-0.3, 0.3), MovingEnds ? Between(-0.9, 0.9) * v : 0, MovingEnds ? Between(-0.9, 0.9) * v : 0);
        }

        _distance = [.. _moves.Select(m => m.Distance)];
        _velocity = [.. _limits.Select(l => l.Velocity)];
        _acceleration = [.. _limits.Select(l => l.Acceleration)];
        _jerk = [.. _limits.Select(l => l.Jerk)];
        _duration = new double[_moves.Length];
    }

    /// <summary>As from rest to rest, whatever the ends.</summary>
    [Benchmark(OperationsPerInvoke = Cases)]
    public void Batch_of_durations_from_rest_to_rest() => ProfileBatch.RestToRest(_distance, _velocity, _acceleration, _jerk, _duration);

    [Benchmark(OperationsPerInvoke = Cases)]
    public double Synchronised_profiles()
    {
        double sum = 0;
        for (int i = 0; i < _moves.Length; i += Axes) sum += Synchronised.Solve(_moves.AsSpan(i, Axes), _limits.AsSpan(i, Axes), _profiles).Duration;
        return sum;
    }

    [Benchmark(OperationsPerInvoke = Cases)]
    public double Synchronised_durations()
    {
        double sum = 0;
        for (int i = 0; i < _moves.Length; i += Axes) sum += Synchronised.Duration(_moves.AsSpan(i, Axes), _limits.AsSpan(i, Axes));
        return sum;
    }
}

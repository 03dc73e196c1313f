using System.Collections.Immutable;

namespace Trivet.Numerics.Profiles;

/// <summary>
/// A largest effort (force, torque) over speed, piecewise linear between points and never rising: what a motor still gives at speed.
/// Before the first point it is the first effort; beyond the last speed there is none.
/// </summary>
public sealed class SpeedCurve
{
    private readonly ImmutableArray<(double Speed, double Effort)> _points;

    /// <param name="points">Speeds rising from zero or more, efforts not rising, all finite.</param>
    public SpeedCurve(params ImmutableArray<(double Speed, double Effort)> points)
    {
        if (points.IsEmpty) throw new ArgumentException("A curve has a point at least.", nameof(points));
        for (int i = 0; i < points.Length; i++)
        {
            var (speed, effort) = points[i];
            if (!double.IsFinite(speed) || !double.IsFinite(effort) || speed < 0 || (i > 0 && !(speed > points[i - 1].Speed && effort <= points[i - 1].Effort)))
                throw new ArgumentException($"Speeds rise and efforts do not, and all are finite: not so at point {i}.", nameof(points));
        }

        _points = points;
    }

    /// <summary>Effort at standstill.</summary>
    public double AtRest => _points[0].Effort;

    /// <summary>Speed from which on there is no effort.</summary>
    public double Fastest => _points[^1].Speed;

    /// <summary>Effort at a speed, from zero to <see cref="Fastest"/>; not a number beyond.</summary>
    public double At(double speed)
    {
        if (!(speed <= Fastest)) return double.NaN;
        for (int i = 1; i < _points.Length; i++)
        {
            if (speed >= _points[i].Speed) continue;
            var (v0, f0) = _points[i - 1];
            var (v1, f1) = _points[i];
            return speed <= v0 ? f0 : f0 + (f1 - f0) * ((speed - v0) / (v1 - v0));
        }

        return _points[^1].Effort;
    }

    /// <summary>
    /// Falls k ≥ 0 of two lines effort = At(speed) − k·(v − speed) whose lower envelope lies nowhere above the curve and touches it at
    /// this speed: the first rules slower speeds, the second faster ones. Where the curve bulges inward one line serves for both.
    /// </summary>
    public (double Slower, double Faster) Falls(double speed)
    {
        double here = At(speed), slower = double.PositiveInfinity, faster = 0;
        foreach (var (v, f) in _points)
        {
            if (v < speed) slower = Math.Min(slower, (f - here) / (speed - v));
            else if (v > speed) faster = Math.Max(faster, (here - f) / (v - speed));
        }

        // The level stretch before the first point.
        if (speed > 0 && _points[0].Speed > 0) slower = Math.Min(slower, (AtRest - here) / speed);
        return slower < faster ? (slower, faster) : (faster, faster);
    }
}

using System.Collections.Immutable;
using Trivet.Dynamics;
using Trivet.Numerics.Profiles;

namespace Trivet.Motion;

/// <summary>
/// What a path asks of every limit whatever the profile of s, prepared once so that many settings can be tried on it: derivatives of the axes by s and
/// the forces' A, B and C at even places, straight between them.
/// </summary>
internal sealed class PathDemand
{
    private const int Places = 160, Times = 120;

    private readonly PlatformPath _path;
    private readonly ImmutableArray<AxisCapacity> _axes;
    private readonly (double[] D1, double[] D2, double[] D3)[] _rates;
    private readonly (double[] A, double[] B, double[] C, double Viscous, double Coulomb)[]? _forces;

    public PathDemand(PlatformPath path, ImmutableArray<AxisCapacity> axes, RobotDynamics? dynamics)
    {
        (_path, _axes) = (path, axes);
        var along = new PlatformPoint[Places + 1];
        for (int i = 0; i <= Places; i++) along[i] = path.At(path.Length * i / Places);
        _rates = [.. axes.Select((axis, k) =>
        {
            var points = along.Select(p => axis.Axis == AxisCapacity.Rotary ? new AxisPoint(p.Angle, p.Angle1, p.Angle2, p.Angle3) : path.Axis(k, p.Platform)).ToArray();
            return (points.Select(p => p.D1).ToArray(), points.Select(p => p.D2).ToArray(), points.Select(p => p.D3).ToArray());
        })];
        if (dynamics is null) return;
        var forces = ForcesAlong.Of(dynamics.WithoutFriction(), along, rods: false);
        _forces = [.. axes.Select((axis, k) =>
        {
            bool rotary = axis.Axis == AxisCapacity.Rotary;
            var (a, b, c) = rotary ? forces.Rotary : forces.Drives[k];
            return (a, b, c, rotary ? 0 : dynamics.Chains[k].Viscous, rotary ? dynamics.Platform.Turning.Friction : dynamics.Chains[k].Coulomb);
        })];
    }

    /// <summary>Duration and the largest use of any limit but the rods'; infinite where the settings give no motion.</summary>
    public (double Duration, double Use) Under(ControllerSettings settings, double startSpeed, double endSpeed)
    {
        var found = AxisProfiles.Fastest(new(0, _path.Length, startSpeed, endSpeed), new(settings.Speed, settings.Acceleration, settings.Jerk));
        if (!found.Found) return (double.PositiveInfinity, double.PositiveInfinity);
        double worst = 0, began = 0;
        bool jerkCounts = double.IsFinite(settings.Jerk);
        foreach (var phase in found.Profile.Phases)
        {
            var start = found.Profile.At(began);
            int parts = Math.Max(2, (int)Math.Ceiling(Times * phase.Duration / found.Profile.Duration));
            for (int i = 0; i <= parts; i++)
            {
                double t = i * phase.Duration / parts, a = phase.Acceleration + phase.Jerk * t;
                double v = start.Velocity + t * (phase.Acceleration + a) / 2;
                double s = start.Position + t * (start.Velocity + t * (phase.Acceleration / 2 + t * phase.Jerk / 6));
                double use = UseAt(s, v, a, phase.Jerk, jerkCounts);
                if (!(use <= worst)) worst = double.IsNaN(use) ? double.PositiveInfinity : use;
            }
            began += phase.Duration;
        }
        return (found.Profile.Duration, worst);
    }

    private double UseAt(double s, double v, double a, double j, bool jerkCounts)
    {
        double place = Math.Clamp(s / _path.Length, 0, 1) * Places;
        int k = Math.Min(Places - 1, (int)place);
        double part = place - k, worst = 0, v2 = v * v;
        for (int i = 0; i < _axes.Length; i++)
        {
            var (d1s, d2s, d3s) = _rates[i];
            double d1 = At(d1s), d2 = At(d2s), d3 = At(d3s), speed = d1 * v;
            var limits = _axes[i].Limits;
            worst = Math.Max(worst, Math.Abs(speed) / limits.Speed);
            worst = Math.Max(worst, Math.Abs(d2 * v2 + d1 * a) / limits.Acceleration);
            if (jerkCounts) worst = Math.Max(worst, Math.Abs(d3 * v2 * v + 3 * d2 * v * a + d1 * j) / limits.Jerk);
            if (_forces is null || _axes[i].Force is not { } envelope) continue;
            var f = _forces[i];
            double force = At(f.A) * a + At(f.B) * v2 + At(f.C) + f.Viscous * speed + f.Coulomb * Math.Sign(speed);
            worst = Math.Max(worst, Math.Abs(force) / envelope.At(speed));
        }
        return worst;

        double At(double[] values) => values[k] + part * (values[k + 1] - values[k]);
    }
}

using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Numerics;
using Trivet.Views.Drawings;

namespace Trivet.Views.Motion;

/// <summary>A part of the robot that moves, as one view shows it: an outline that goes along with a point, or a bar between two.</summary>
/// <param name="Style">Class of the drawings' inks.</param>
/// <param name="Outline">Points about <paramref name="From"/> as x, up, x, up …, metres; empty for a bar.</param>
/// <param name="From">Number of the point, or −1 where <paramref name="FromOffset"/> is a fixed place.</param>
/// <param name="FromOffset">x, up, metres.</param>
/// <param name="Radius">Of a bar with round ends, metres.</param>
public sealed record MovingPart(
    string Style, ImmutableArray<double> Outline, int From, ImmutableArray<double> FromOffset, int To, ImmutableArray<double> ToOffset, double Radius);

/// <summary>
/// A cycle for playing: where everything is at even steps of time. A script draws between the steps and computes nothing else.
/// </summary>
/// <param name="Duration">Seconds.</param>
/// <param name="Points">Moving points, cell frame, metres: each x, y, z for every step.</param>
/// <param name="Plan">Parts in the order in which they are drawn, seen from above.</param>
/// <param name="Elevation">And along y.</param>
/// <param name="Tracks">Values at every step in the units of the charts, by name; see <see cref="MotionChart.Tracks"/>.</param>
/// <param name="Stretch">By how much the curve at the voltage of the first step is to be stretched along the speed, at every step; empty without voltage.</param>
public sealed record Playback(
    double Duration, int Steps, ImmutableArray<ImmutableArray<double>> Points, ImmutableArray<MovingPart> Plan, ImmutableArray<MovingPart> Elevation,
    ImmutableSortedDictionary<string, ImmutableArray<double>> Tracks, ImmutableArray<double> Stretch)
{
    private const double StepTime = 0.005;
    private const int LeastSteps = 60, MostSteps = 300;

    public static Playback Of(Assessed assessed, MotionRun run)
    {
        var trace = run.Trace;
        int steps = Math.Clamp((int)Math.Ceiling(trace.Duration / StepTime), LeastSteps, MostSteps);
        var times = MotionCharts.Even(trace.Duration, steps);
        var (x, y, z) = (At(p => p.X), At(p => p.Y), At(p => p.Z));
        var angle = run.At(trace.Angle, times);
        double along = run.Sheet.Result!.Input.Plan.Loaded.LinearAxisAt;
        var postures = times.Select((_, i) => Posture.At(assessed, new(x[i], y[i], z[i]), angle[i], along)!).ToArray();
        int chains = postures[0].Chains.Length;
        ImmutableArray<ImmutableArray<double>> points =
        [
            .. Enumerable.Range(0, chains).SelectMany(c => new[] { Moving(p => p.Chains[c].Joint), Moving(p => p.Chains[c].PlatformJoint) }),
            Moving(p => p.Platform), Moving(p => p.Tcp),
        ];
        var voltage = run.Voltage.IsEmpty ? [] : run.At(run.Voltage, times);
        return new(
            trace.Duration, steps, points, CellParts.Moving(Seen.FromAbove, postures[0]), CellParts.Moving(Seen.AlongY, postures[0]), TracksOf(run, times, voltage),
            [.. voltage.Select(v => Math.Round(v / run.Voltage[0], 5))]);

        ImmutableArray<double> At(Func<Vec3, double> part) => run.At([.. trace.Tool_C.Select(part)], times);

        ImmutableArray<double> Moving(Func<Posture, Vec3> of) => [.. postures.Select(of).SelectMany(p => new[] { Metres(p.X), Metres(p.Y), Metres(p.Z) })];
    }

    private static ImmutableSortedDictionary<string, ImmutableArray<double>> TracksOf(MotionRun run, ImmutableArray<double> times, ImmutableArray<double> voltage)
    {
        var tracks = ImmutableSortedDictionary.CreateBuilder<string, ImmutableArray<double>>(StringComparer.Ordinal);
        foreach (var chart in MotionCharts.OverTime(run, rotary: false).Concat(MotionCharts.OverTime(run, rotary: true)))
            foreach (var (name, series) in chart.Tracks.Zip(chart.Chart.Series)) tracks[name] = Rounded(run.At(series.Y, times));
        foreach (string axis in run.Drives?.Axes.Keys ?? [])
        {
            var (speed, torque) = MotionCharts.Shaft(run, axis, times);
            (tracks[$"shaft:{axis}"], tracks[$"torque:{axis}"]) = (Rounded(speed), Rounded(torque));
        }

        return tracks.ToImmutable();
    }

    private static double Metres(double v) => Math.Round(v, 5);

    private static ImmutableArray<double> Rounded(ImmutableArray<double> values) => [.. values.Select(v => double.IsFinite(v) ? Math.Round(v, 3) : 0)];
}

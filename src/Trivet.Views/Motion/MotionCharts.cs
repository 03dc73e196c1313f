using System.Collections.Immutable;
using Trivet.Drives;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Views.Charts;
using Trivet.Views.Words;

namespace Trivet.Views.Motion;

/// <summary>A chart of the motion sheet.</summary>
/// <param name="Id">Stable name, for files and scripts: <c>tool-speed</c>.</param>
/// <param name="Tracks">Names of the tracks of <see cref="Playback"/> that the present instant is marked on.</param>
/// <param name="Across">Track of the horizontal axis; empty where that is time.</param>
public sealed record MotionChart(string Id, Chart Chart, ImmutableArray<string> Tracks, string Across = "");

/// <summary>The charts of a cycle. Those over time share one cursor.</summary>
public static class MotionCharts
{
    public const string TimeCursor = "time";

    /// <summary>The present instant of a torque cloud stretches this line by the voltage.</summary>
    public const string CurveNow = "curve-now";

    private static readonly string[] Directions = ["x", "y", "z"];

    private const int CloudPoints = 400, WarmingPoints = 200;
    private const double TimeConstantsShown = 5, SecondsPerHour = 3600;

    /// <summary>The cycle time of each law; the marked one in the accent, the time that the brief's peak rate leaves as a line.</summary>
    public static Chart Laws(MotionSheet sheet, TimingLaw marked, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Motion;
        var laws = (sheet.Result?.Laws ?? []).ToImmutableArray();
        Series Bars(bool strong)
        {
            var chosen = laws.Where(l => l.Law == marked == strong).ToImmutableArray();
            return new(strong ? words.Laws[(int)marked] : "", SeriesKind.Bars, [.. chosen.Select(l => (double)l.Law)], [.. chosen.Select(l => l.CycleTime)], strong);
        }

        return new(words.LawChart, new(""), new(words.CycleTime, "s"), [Bars(false), Bars(true)])
        {
            Categories = words.Laws,
            Guides = sheet.Cell.Brief.PeakRate is { } peak and > 0
                ? [new(Locale.Fill(words.PeakGuide, ("rate", Numbers.Quantity(peak, "1/s", locale))), 1 / peak)]
                : [],
        };
    }

    /// <summary>Speed of the tool over the loaded move under each law.</summary>
    public static Chart Speeds(MotionSheet sheet, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Motion;
        var loaded = (sheet.Result?.Laws ?? []).Where(l => l.Found).Select(l => (l.Law, Trace: CycleTrace.Of(sheet.Result!, l.Law)!)).Select(l =>
        {
            int[] within = [.. Enumerable.Range(0, l.Trace.Times.Length).Where(i => l.Trace.Times[i] >= l.Trace.Begins[1] && l.Trace.Times[i] <= l.Trace.Begins[2])];
            return new Series(
                words.Laws[(int)l.Law], SeriesKind.Line, [.. within.Select(i => l.Trace.Times[i] - l.Trace.Begins[1])], [.. within.Select(i => l.Trace.ToolSpeed[i])],
                l.Law == TimingLaw.Controller);
        });
        return new(words.Speeds, new(words.Time, "s", 0), new(words.ToolSpeed, "m/s"), [.. loaded]);
    }

    /// <summary>All charts over time, those of the chains or of the rotary axis among them.</summary>
    public static ImmutableArray<MotionChart> OverTime(MotionRun run, bool rotary, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Motion;
        var trace = run.Trace;
        int[] axes = [.. run.AxesOf(rotary)];
        bool turns = axes.Length > 0 && run.Sheet.Result!.Input.Axes[axes[0]].Turns;
        var charts = ImmutableArray.CreateBuilder<MotionChart>();
        charts.Add(One("tool-speed", words.ToolSpeed, "m/s", words.Tool, trace.ToolSpeed));
        charts.Add(One("tool-acceleration", words.ToolAcceleration, "m/s²", words.Tool, trace.ToolAcceleration));
        charts.Add(Each("position", words.Position, turns ? "°" : "mm", turns ? Degrees : 1000, i => trace.Series.Axes[i].Position));
        charts.Add(Each("speed", words.Speed, turns ? "°/s" : "m/s", turns ? Degrees : 1, i => trace.Series.Axes[i].Speed));
        charts.Add(Each("acceleration", words.Acceleration, turns ? "rad/s²" : "m/s²", 1, i => trace.Series.Axes[i].Acceleration));
        if (axes.Length > 0 && trace.Force[axes[0]].All(double.IsFinite))
            charts.Add(Each("force", turns ? words.Torque : words.Force, turns ? "N·m" : "N", 1, i => trace.Force[i]));
        if (!run.Voltage.IsEmpty)
        {
            var supply = run.Sheet.Cell.Drives.Supply;
            charts.Add(One("voltage", words.Voltage, "V", words.Supply, run.Voltage, [.. Allowed(words.LowestAllowed, supply.LowestVoltage), .. Allowed(words.HighestAllowed, supply.HighestVoltage)]));
        }
        if (run.Drives?.Power is { } power) charts.Add(One("power", words.Power, "W", words.Drives, power.Power));
        if (trace.Reaction is { } reaction)
        {
            charts.Add(OnMount("mount-force", words.MountForce, "N", reaction.Force_B));
            charts.Add(OnMount("mount-moment", words.MountMoment, "N·m", reaction.Moment_B));
        }
        return charts.ToImmutable();

        MotionChart OnMount(string id, string title, string unit, ImmutableArray<Vec3> values) => new(
            id, OverTime(run, title, unit, [.. Directions.Select((d, k) => new Series(d, SeriesKind.Line, trace.Times, [.. values.Select(v => v[k])]))], [], words),
            [.. Directions.Select(d => $"{id}:{d}")]);

        MotionChart One(string id, string title, string unit, string name, ImmutableArray<double> values, ImmutableArray<Guide> guides = default) =>
            new(id, OverTime(run, title, unit, [new(name, SeriesKind.Line, trace.Times, values, Strong: true)], guides.IsDefault ? [] : guides, words), [id]);

        MotionChart Each(string id, string title, string unit, double perSi, Func<int, ImmutableArray<double>> of) => new(
            id,
            OverTime(run, title, unit, [.. axes.Select(i => new Series(AxisName(run, i, locale), SeriesKind.Line, trace.Times, Scaled(of(i), perSi)))], [], words),
            [.. axes.Select(i => $"{id}:{trace.Series.Axes[i].Axis}")]);

        static IEnumerable<Guide> Allowed(string name, double? volts) => volts is { } v ? [new(name, v)] : [];
    }

    /// <summary>
    /// Temperature of each axis' winding from a cold start to the end of the shift, or until it no longer rises, with what each motor bears. Null where no
    /// motor's heat is described.
    /// </summary>
    public static MotionChart? Warming(MotionRun run, Locale? locale = null)
    {
        if (run.Drives is not { } judged) return null;
        var warm = judged.Axes.Where(a => a.Value.Warming is not null).Select(a => (Axis: a.Key, Warming: a.Value.Warming!.Value)).ToArray();
        if (warm.Length == 0) return null;
        var language = (locale ?? Locale.English).Language;
        var words = language.Motion;
        var cell = run.Sheet.Cell;
        double shift = warm[0].Warming.Shift, settled = TimeConstantsShown * warm.Max(w => w.Warming.TimeConstant);
        double to = double.IsFinite(shift) ? Math.Max(shift, settled) : settled;
        var times = Even(to, WarmingPoints);
        var hours = Scaled(times, 1.0 / SecondsPerHour);
        string? worst = warm.MaxBy(w => w.Warming.AtEnd).Axis;
        var limits = warm.Select(w => cell.Drives.Axes.GetValueOrDefault(w.Axis)?.Motor ?? cell.Drives.Common.Motor).OfType<string>().Distinct()
            .Select(id => (Id: id, cell.Drives.Motors[id].LargestTemperature)).Where(m => m.LargestTemperature is not null);
        return new("warming", new(
            words.Warming, new(words.TimeOfShift, "h", 0, to / SecondsPerHour), new(words.Temperature, "°C"),
            [.. warm.Select(w => new Series(Fields.Axis(cell, w.Axis, language), SeriesKind.Line, hours, [.. times.Select(w.Warming.At)], w.Axis == worst))])
        {
            Guides =
            [
                .. limits.Select(m => new Guide(Locale.Fill(words.LargestOf, ("motor", Fields.Words(cell, $"/drives/motors/{m.Id}", locale))), m.LargestTemperature!.Value)),
                .. double.IsFinite(shift) ? [new Guide(words.EndOfShift, shift / SecondsPerHour, Upright: true)] : Array.Empty<Guide>(),
            ],
        }, []);
    }

    /// <summary>
    /// Torque at the motor's shaft against its speed at even steps of time, with the motor's curve at the voltage without load, at the lowest of the
    /// cycle, and at that of the present instant. Null where the axis has no drive described.
    /// </summary>
    public static MotionChart? Cloud(MotionRun run, string axis, Locale? locale = null)
    {
        if (run.Drives is not { } judged || !judged.Axes.TryGetValue(axis, out var result)) return null;
        var language = (locale ?? Locale.English).Language;
        var words = language.Motion;
        var times = Even(run.Trace.Duration, CloudPoints);
        var curve = result.Load.Drive.Curve;
        var (speed, torque) = Shaft(run, axis, times);
        double without = run.Sheet.Cell.Drives.Supply.Voltage ?? curve.Voltage;
        var series = ImmutableArray.CreateBuilder<Series>();
        series.Add(new(words.Moves, SeriesKind.Points, speed, torque));
        Add(without, Locale.Fill(words.CurveAt, ("voltage", Numbers.Quantity(without, "V", locale))));
        if (!run.Voltage.IsEmpty)
        {
            series.Add(Line(words.CurveNow, curve, run.Voltage[0], 1, true, CurveNow));
            series.Add(Line("", curve, run.Voltage[0], -1, true, CurveNow));
        }

        return new(
            $"cloud-{axis}",
            new(Locale.Fill(words.Cloud, ("axis", Fields.Axis(run.Sheet.Cell, axis, language))), new(words.ShaftSpeed, "1/min", 0), new(words.ShaftTorque, "N·m"), series.ToImmutable()),
            [$"torque:{axis}"], $"shaft:{axis}");

        void Add(double voltage, string name)
        {
            series.Add(Line(name, curve, voltage, 1, false));
            series.Add(Line("", curve, voltage, -1, false));
        }
    }

    /// <summary>Speed of the shaft, 1/min, not negative, and its torque, N·m, below zero where it brakes.</summary>
    internal static (ImmutableArray<double> Speed, ImmutableArray<double> Torque) Shaft(MotionRun run, string axis, ImmutableArray<double> times)
    {
        var load = run.Drives!.Axes[axis].Load;
        ImmutableArray<double> speed = run.At(load.Speed, times), torque = run.At(load.Torque, times);
        return ([.. speed.Select(s => Math.Abs(s) * TurnsPerMinute)], [.. torque.Zip(speed, (t, s) => s < 0 ? -t : t)]);
    }

    internal static ImmutableArray<double> Even(double duration, int steps) => [.. Enumerable.Range(0, steps + 1).Select(i => duration * i / steps)];

    internal static ImmutableArray<double> Scaled(ImmutableArray<double> values, double perSi) => perSi == 1 ? values : [.. values.Select(v => v * perSi)];

    internal static string AxisName(MotionRun run, int i, Locale? locale) =>
        Fields.Axis(run.Sheet.Cell, run.Trace.Series.Axes[i].Axis, (locale ?? Locale.English).Language);

    internal const double Degrees = 180 / Math.PI;
    private const double TurnsPerMinute = 30 / Math.PI;

    private static Series Line(string name, TorqueCurve curve, double voltage, int sign, bool strong, string id = "")
    {
        // The last point falls to zero: nothing is stated beyond.
        ImmutableArray<double> speeds = [.. curve.Speeds, curve.Speeds[^1]], torques = [.. curve.Torques, 0];
        return new(name, SeriesKind.Line, [.. speeds.Select(s => s * voltage / curve.Voltage * TurnsPerMinute)], Scaled(torques, sign), strong, id);
    }

    private static Chart OverTime(MotionRun run, string title, string unit, ImmutableArray<Series> series, ImmutableArray<Guide> guides, MotionWords words) =>
        new(title, new(words.Time, "s", 0, run.Trace.Duration), new(title, unit), series)
        {
            Cursor = TimeCursor,
            Guides = [.. guides, .. Enumerable.Range(1, 3).Select(i => new Guide(words.Parts[i], run.Trace.Begins[i], Upright: true))],
        };
}

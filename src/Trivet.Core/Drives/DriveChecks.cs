using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Drives;

/// <summary>What a cycle asks of one axis, for charts and for other trades.</summary>
/// <param name="Use">Share of the curve's torque at the voltage of each time; empty while the voltage is not known.</param>
/// <param name="Warming">The winding over a shift; null where not described.</param>
/// <param name="Resonance">Lowest natural frequency with the largest load, Hz; not a number where stiffness or load is unknown.</param>
public sealed record AxisResult(AxisLoad Load, double RmsTorque, ImmutableArray<double> Use, Warming? Warming, double Resonance);

/// <summary>A cycle judged.</summary>
/// <param name="Supply">The supply over the cycle; null while it is not described.</param>
/// <param name="Power">What the electrical trade takes; null while the supply is not described.</param>
/// <param name="Axes">By chain id, "rotary" or "linear".</param>
public sealed record DriveJudgement(
    string Cycle, ImmutableArray<Finding> Findings, SupplyRun? Supply, PowerSeries? Power, ImmutableSortedDictionary<string, AxisResult> Axes);

/// <summary>All that the drives say of a cell and its cycles.</summary>
public sealed record DriveReport(ImmutableArray<Finding> Findings, ImmutableArray<NotApplicable> Coverage, ImmutableArray<DriveJudgement> Cycles);

/// <summary>Holds what a motion asks of the drives against what they are.</summary>
public static class DriveChecks
{
    /// <summary>Load per rotor beyond which a drive is hard to tune. Common practice, no source.</summary>
    private const double LargestInertiaRatio = 10;

    /// <summary>Load angle at 71 % of the torque at which a stepper motor falls out of step. Common practice, no source.</summary>
    private const double LargestLoadAngle = Math.PI / 4;

    /// <summary>Everything at once: the drives as described, and each cycle that motion has made a series of.</summary>
    public static DriveReport Of(Cell cell, ImmutableArray<CycleSeries> cycles)
    {
        var drives = DriveCase.Of(cell);
        ImmutableArray<DriveJudgement> judged = [.. cycles.Select(c => Judge(drives, c))];
        return new([.. drives.Findings, .. judged.SelectMany(j => j.Findings)], drives.Coverage, judged);
    }

    /// <summary>One cycle against the drives. An axis that the series does not have stands still. A motion whose forces are not known stays open.</summary>
    public static DriveJudgement Judge(DriveCase drives, CycleSeries series)
    {
        if (!series.Axes.All(a => a.Force.All(double.IsFinite) && a.Speed.All(double.IsFinite) && a.Acceleration.All(double.IsFinite)))
        {
            var open = new Unjudged(DriveRules.Torque, About(series), Pointers.Joined(series.Inputs), OpenReason.NotComputed, [], DriveReasons.ForceUnknown);
            return new(series.Cycle, [open], null, null, ImmutableSortedDictionary<string, AxisResult>.Empty);
        }

        var axes = drives.Axes.ToImmutableSortedDictionary(a => a.Axis, a => Load(a, series), StringComparer.Ordinal);
        var (supply, power) = drives.VoltageKnown ? Feed(drives, series, axes) : default;
        if (supply is { Usable: true })
        {
            axes = axes.ToImmutableSortedDictionary(
                a => a.Key, a => a.Value with { Use = [.. supply.Voltage.Select((v, i) => a.Value.Load.Use(i, v))] }, StringComparer.Ordinal);
        }

        var findings = ImmutableArray.CreateBuilder<Finding>();
        var voltage = supply is null ? [] : VoltageInputs(drives, series);
        foreach (var axis in drives.Axes)
        {
            if (series.Axes.FirstOrDefault(a => a.Axis == axis.Axis) is { } motion)
                findings.AddRange(new AxisJudge(drives, axis, series, motion, axes[axis.Axis], supply, voltage).All());
        }

        if (supply is not null) findings.AddRange(new SupplyJudge(drives, series, supply, voltage).All());
        return new(series.Cycle, findings.ToImmutable(), supply, power, axes);
    }

    private static AxisResult Load(AxisCase axis, CycleSeries series)
    {
        var motion = series.Axes.FirstOrDefault(a => a.Axis == axis.Axis) ?? Still(axis.Axis, series.Times.Length);
        var load = AxisLoad.Of(axis.Drive.Value, series.Times, motion);
        double rms = load.RmsTorque;
        Warming? warming = axis.Heat is { Value: var heat }
            ? Warming.Of(heat.Ambient, heat.Rise, heat.TimeConstant, axis.OpenLoop ? 1 : rms * rms / (heat.Continuous * heat.Continuous), heat.Shift)
            : null;
        return new(load, rms, [], warming, axis.Yield?.Value.Resonance(motion.LoadInertia) ?? double.NaN);
    }

    private static AxisSeries Still(string axis, int count)
    {
        var zero = ImmutableArray.Create(new double[count]);
        return new(axis, zero, zero, zero, zero);
    }

    /// <summary>The power of all drives together and the supply that feeds them.</summary>
    private static (SupplyRun, PowerSeries) Feed(DriveCase drives, CycleSeries series, ImmutableSortedDictionary<string, AxisResult> axes)
    {
        var supply = drives.Supply!.Supply.Value;
        var power = ImmutableArray.CreateBuilder<double>(series.Times.Length);
        for (int i = 0; i < series.Times.Length; i++)
        {
            double sum = supply.IdlePower;
            foreach (var axis in drives.Axes) sum += axes[axis.Axis].Load.Power(i, axis.Electric!.Value);
            power.Add(sum);
        }

        var all = power.MoveToImmutable();
        var run = SupplySimulation.Run(supply, series.Times, all);
        return (run, new(series.Cycle, series.Times, all, run.Voltage));
    }

    private static Subject About(CycleSeries series, string part = "") => new($"/motion/cycles/{series.Cycle}", part);

    private static Source Stated(string pointer) => new(SourceKind.Cell, pointer);

    /// <summary>Everything that the voltage depends on.</summary>
    private static ImmutableArray<string> VoltageInputs(DriveCase drives, CycleSeries series) => Pointers.Joined(
        [series.Inputs, drives.Supply!.Supply.Inputs, .. drives.Axes.Select(a => a.Drive.Inputs), .. drives.Axes.Select(a => a.Electric!.Inputs)]);

    private static T At<T>(T finding, CycleSeries series, int i) where T : Finding =>
        finding with { WorstTime = series.Times[i], Worst = series.Places.IsDefaultOrEmpty ? null : series.Places[i] };

    /// <summary>Index of the largest value; of the first that is not a number, so that none of those passes.</summary>
    private static int Largest(int count, Func<int, double> value)
    {
        int most = 0;
        for (int i = 0; i < count; i++)
        {
            double v = value(i);
            if (double.IsNaN(v)) return i;
            if (v > value(most)) most = i;
        }

        return most;
    }

    private sealed record AxisJudge(DriveCase Drives, AxisCase Axis, CycleSeries Series, AxisSeries Motion, AxisResult Result, SupplyRun? Supply, ImmutableArray<string> VoltageInputs)
    {
        private readonly ImmutableArray<string> _inputs = Pointers.Joined(Series.Inputs, Axis.Drive.Inputs);

        private int Count => Series.Times.Length;

        public IEnumerable<Finding> All() =>
            [.. Torque(), .. LostStep(), .. Bearing(), .. Belt(), .. Transmission(), .. Inertia(), .. Yield()];

        private IEnumerable<Finding> Torque()
        {
            if (Supply is null) yield break;
            var inputs = VoltageInputs;
            if (!Supply.Usable)
            {
                yield return new Unjudged(DriveRules.Torque, About(Series, Axis.Axis), inputs, OpenReason.Failed, [],
                    Supply.End == SupplyEnd.Collapsed ? DriveReasons.VoltageCollapsed : DriveReasons.VoltageNotPeriodic);
                yield break;
            }

            var curve = Axis.Drive.Value.Curve;
            var limit = Limit.AtMost(1, Stated($"{Axis.MotorAt}/curve"));
            int most = Largest(Count, i => Result.Use[i]);
            yield return double.IsInfinity(Result.Use[most])
                ? At(new Unjudged(DriveRules.Torque, About(Series, Axis.Axis), inputs, OpenReason.Failed, [], DriveReasons.BeyondCurve), Series, most)
                : At(new Judged(DriveRules.Torque, About(Series, Axis.Axis), inputs, Result.Use[most], limit, Assurance.Sampled), Series, most);

            double Speed(int i) => Math.Abs(Result.Load.Speed[i]) / curve.LargestSpeed(Supply.Voltage[i]);
            most = Largest(Count, Speed);
            yield return At(new Judged(DriveRules.Speed, About(Series, Axis.Axis), inputs, Speed(most), limit, Assurance.Sampled), Series, most);
        }

        private IEnumerable<Finding> LostStep()
        {
            if (!Axis.OpenLoop || Supply is not { Usable: true }) yield break;
            int most = Largest(Count, i => Result.Use[i]);
            yield return At(
                new Judged(DriveRules.LostStep, About(Series, Axis.Axis), VoltageInputs, Math.Asin(Math.Min(Result.Use[most], 1)),
                    Limit.AtMost(LargestLoadAngle, new(SourceKind.CommonPractice, "", "three tenths of the torque in reserve")), Assurance.Sampled),
                Series, most);
        }

        private IEnumerable<Finding> Bearing()
        {
            if (Axis.Continuous is { } continuous)
                yield return Judge(DriveRules.Continuous, continuous.Inputs, Result.RmsTorque, Limit.AtMost(continuous.Value, Stated($"{Axis.MotorAt}/continuousTorque")));
            if (Axis.Heat is { } heat && Result.Warming is { } warming)
            {
                var judged = Judge(
                    DriveRules.Temperature, heat.Inputs, warming.AtEnd, Limit.AtMost(heat.Value.Largest, Stated($"{Axis.MotorAt}/largestTemperature")), Assurance.Estimated);
                // Where the run ends before, what it would come to is named.
                yield return double.IsFinite(warming.Shift) ? judged with { Beside = new("drive.steady", warming.Steady) } : judged;
            }
        }

        private IEnumerable<Finding> Belt()
        {
            int most = Largest(Count, i => Math.Abs(Motion.Force[i]));
            double force = Math.Abs(Motion.Force[most]);
            if (Axis.Pull is { Value: var pull } p)
            {
                double half = force * pull.ForcePerDrive / 2;
                yield return At(Judge(DriveRules.Strand, p.Inputs, pull.Pretension + half, Limit.AtMost(pull.LargestStrand, Stated(Own("largestStrandForce")))), Series, most);
                yield return At(Judge(DriveRules.Slack, p.Inputs, half / pull.Pretension, Limit.AtMost(1, Stated(Own("pretension")))), Series, most);
            }

            if (Axis.Teeth is { Value: var teeth } t)
            {
                yield return At(Judge(
                    DriveRules.Tooth, t.Inputs, force * teeth.ForcePerDrive / teeth.InMesh, Limit.AtMost(teeth.Largest, Stated(Own("largestToothForce")))), Series, most);
            }
        }

        private IEnumerable<Finding> Transmission()
        {
            if (Axis.LargestForce is not { Value: var (limit, pointer) } part) yield break;
            int most = Largest(Count, i => Math.Abs(Motion.Force[i]));
            yield return At(Judge(DriveRules.Transmission, part.Inputs, Math.Abs(Motion.Force[most]) / limit, Limit.AtMost(1, Stated(pointer))), Series, most);
        }

        private IEnumerable<Finding> Inertia()
        {
            if (!(Axis.Drive.Value.ReflectedInertia > 0)) yield break;
            yield return double.IsNaN(Motion.LoadInertia)
                ? Unknown(DriveRules.InertiaRatio, [])
                : Judge(
                    DriveRules.InertiaRatio, [], Motion.LoadInertia / Axis.Drive.Value.ReflectedInertia,
                    Limit.AtMost(LargestInertiaRatio, new(SourceKind.CommonPractice, "")));
        }

        private IEnumerable<Finding> Yield()
        {
            if (Axis is not { Yield: { } yield, Arm: { } arm } || Drives.Tolerance is not { Value: var (tolerance, pointer) } stated) yield break;
            var inputs = Pointers.Joined(yield.Inputs, arm.Inputs, stated.Inputs);
            var limit = Limit.AtMost(tolerance, Stated(pointer));
            int most = Largest(Count, i => Math.Abs(Motion.Force[i]));
            yield return At(Judge(DriveRules.Following, inputs, arm.Value * yield.Value.Deflection(Math.Abs(Motion.Force[most])), limit), Series, most);
            if (double.IsNaN(Motion.LoadInertia))
            {
                yield return Unknown(DriveRules.Resonance, inputs);
                yield break;
            }

            most = Largest(Count, i => Math.Abs(Motion.Acceleration[i]));
            double swing = Math.Abs(Motion.Acceleration[most]) / Math.Pow(Math.Tau * Result.Resonance, 2);
            yield return At(Judge(DriveRules.Resonance, inputs, arm.Value * swing, limit), Series, most);
        }

        private string Own(string name) => Drives.Used.GetValueOrDefault($"/drives/axes/{Axis.Axis}/{name}") is not null ? $"/drives/axes/{Axis.Axis}/{name}" : $"/drives/common/{name}";

        private Judged Judge(Rule rule, ImmutableArray<string> inputs, double value, Limit limit, Assurance assurance = Assurance.Sampled) =>
            new(rule, About(Series, Axis.Axis), Pointers.Joined(_inputs, inputs), value, limit, assurance);

        private Unjudged Unknown(Rule rule, ImmutableArray<string> inputs) => new(
            rule, About(Series, Axis.Axis), Pointers.Joined(_inputs, inputs), OpenReason.NotComputed, [], DriveReasons.LoadUnknown);
    }

    private sealed record SupplyJudge(DriveCase Drives, CycleSeries Series, SupplyRun Run, ImmutableArray<string> Inputs)
    {
        public IEnumerable<Finding> All()
        {
            var supply = Drives.Supply!;
            if (supply.Lowest is { } lowest)
                yield return Judge(DriveRules.VoltageLow, lowest.Inputs, Run.Lowest, Limit.AtLeast(lowest.Value, Stated("/drives/supply/lowestVoltage")), Run.End != SupplyEnd.NotPeriodic);
            if (supply.Highest is { } highest)
                yield return Judge(DriveRules.VoltageHigh, highest.Inputs, Run.Highest, Limit.AtMost(highest.Value, Stated("/drives/supply/highestVoltage")), Run.Usable);
            if (supply.BrakingPower is { } braking)
                yield return Judge(DriveRules.Braking, braking.Inputs, (Run.MeanBrakingPower, double.NaN), Limit.AtMost(braking.Value, Stated("/drives/supply/brakingPower")), Run.Usable);
            yield return Judge(DriveRules.SupplyPower, [], Run.PeakSourcePower, Limit.AtMost(supply.Supply.Value.LargestPower, Stated("/drives/supply/largestPower")), Run.Usable);

            // What already falls short does so; a value of a cycle that does not repeat proves nothing else.
            Finding Judge(Rule rule, ImmutableArray<string> own, (double Value, double Time) worst, Limit limit, bool usable)
            {
                var all = Pointers.Joined(Inputs, own);
                var judged = new Judged(rule, About(Series), all, worst.Value, limit, Assurance.Sampled);
                if (!usable && judged.Verdict != Verdict.FallsShort)
                {
                    return new Unjudged(rule, About(Series), all, OpenReason.Failed, [],
                        Run.End == SupplyEnd.Collapsed ? DriveReasons.VoltageCollapsed : DriveReasons.VoltageNotPeriodic);
                }

                if (double.IsNaN(worst.Time)) return judged;
                int at = Series.Times.BinarySearch(worst.Time);
                int nearest = Math.Clamp(at < 0 ? ~at : at, 0, Series.Times.Length - 1);
                return judged with { WorstTime = worst.Time, Worst = Series.Places.IsDefaultOrEmpty ? null : Series.Places[nearest] };
            }
        }
    }
}

using System.Collections.Immutable;
using Trivet.Drives;
using Trivet.Motion;

namespace Trivet.Views.Motion;

/// <summary>A cycle under one law over time, with what it asks of drives and supply.</summary>
/// <param name="Drives">Null while masses or drives are not described.</param>
public sealed record MotionRun(MotionSheet Sheet, CycleTrace Trace, DriveJudgement? Drives)
{
    /// <summary>Null where the law has no motion.</summary>
    public static MotionRun? Of(MotionSheet sheet, TimingLaw law)
    {
        if (sheet.Result is not { } result || CycleTrace.Of(result, law) is not { } trace) return null;
        return new(sheet, trace, result.Input.Loaded is null ? null : DriveChecks.Judge(DriveCase.Of(sheet.Cell), trace.Series));
    }

    public TimingLaw Law => Trace.Law;

    /// <summary>Voltage at the drives over the times of the trace; empty while it is not known or does not repeat.</summary>
    public ImmutableArray<double> Voltage => Drives?.Supply is { Usable: true } supply ? supply.Voltage : [];

    /// <summary>As a table, see <see cref="CycleForms.Series"/>.</summary>
    public string Csv => CycleForms.Series(Trace, Sheet.Result!.Input, Drives);

    /// <summary>The axis that uses most of its torque, or the first; null without drives.</summary>
    public string? WorstAxis => Drives?.Axes.Keys.MaxBy(a => Drives.Axes[a].Use.DefaultIfEmpty(0).Max());

    public IEnumerable<int> AxesOf(bool rotary) =>
        Enumerable.Range(0, Trace.Series.Axes.Length).Where(i => Trace.Series.Axes[i].Axis == AxisCapacity.Rotary == rotary);

    /// <summary>A series of the trace at other times, straight between its own. Of two entries at one time the later counts.</summary>
    public ImmutableArray<double> At(ImmutableArray<double> values, ImmutableArray<double> times)
    {
        var at = ImmutableArray.CreateBuilder<double>(times.Length);
        int i = 0;
        var own = Trace.Times;
        foreach (double t in times)
        {
            while (i < own.Length - 2 && own[i + 1] <= t) i++;
            double length = own[i + 1] - own[i], part = length > 0 ? Math.Clamp((t - own[i]) / length, 0, 1) : 1;
            at.Add(values[i] + part * (values[i + 1] - values[i]));
        }

        return at.MoveToImmutable();
    }
}

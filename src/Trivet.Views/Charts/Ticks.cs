using System.Collections.Immutable;

namespace Trivet.Views.Charts;

/// <summary>Round values along an axis: steps of 1, 2 or 5 times a power of ten.</summary>
/// <param name="From">First value of the axis, a multiple of the step where the data left it open.</param>
/// <param name="Decimals">Decimals that tell neighbours apart.</param>
internal sealed record Ticks(double From, double To, double Step, int Decimals, ImmutableArray<double> Values)
{
    /// <param name="most">The most ticks wanted, two at least.</param>
    /// <param name="keepFrom">The axis begins exactly at <paramref name="from"/>; otherwise it is widened to a tick.</param>
    public static Ticks For(double from, double to, int most, bool keepFrom = false, bool keepTo = false)
    {
        if (!double.IsFinite(from) || !double.IsFinite(to)) (from, to) = (0, 1);
        if (from > to) (from, to) = (to, from);
        if (to - from <= 1e-12 * Math.Max(Math.Abs(from), Math.Abs(to)) || to == from)
        {
            double pad = from == 0 ? 1 : 0.1 * Math.Abs(from);
            (from, to) = (from - pad, to + pad);
        }

        double rough = (to - from) / Math.Max(most - 1, 1);
        int power = (int)Math.Floor(Math.Log10(rough));
        double step = ((double[])[1, 2, 5, 10]).Select(m => m * Math.Pow(10, power)).First(s => s >= rough * (1 - 1e-12));
        if (!keepFrom) from = step * Math.Floor(from / step + 1e-9);
        if (!keepTo) to = step * Math.Ceiling(to / step - 1e-9);
        long first = (long)Math.Ceiling(from / step - 1e-9), last = (long)Math.Floor(to / step + 1e-9);
        int decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 12);
        var values = ImmutableArray.CreateBuilder<double>();
        for (long i = first; i <= last; i++) values.Add(Math.Round(i * step, 12));
        return new(from, to, step, decimals, values.ToImmutable());
    }
}

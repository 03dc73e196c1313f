using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Reach;

/// <summary>What of the mount may be moved, and how far from where it is, each way.</summary>
/// <param name="Within">Metres.</param>
/// <param name="TurnWithin">Radians.</param>
public sealed record MountFreedom(bool X = true, bool Y = true, bool Z = true, bool Yaw = false, double Within = 0.3, double TurnWithin = Math.PI / 3);

public enum MountStop
{
    /// <summary>No step of the smallest size improves the worst margin any more.</summary>
    NoBetterNearby,
    /// <summary>A climb used up the number of judgements allowed to it; the best so far is given.</summary>
    Budget,
    /// <summary>The caller cancelled; the best so far is given.</summary>
    Cancelled,
    /// <summary>Nothing to move, or nothing about the stations can be judged.</summary>
    NothingToDo,
}

/// <summary>The outcome of a search for the mount.</summary>
/// <param name="Mount">The best found, to whole millimetres and tenths of a degree; the given one when nothing better was found.</param>
/// <param name="WorstMargin">Worst margin of the stations' findings there, sampled; minus infinity where one could not be judged.</param>
/// <param name="Before">The same for the given mount.</param>
/// <param name="Evaluations">Judgements made.</param>
public sealed record MountResult(Mount Mount, double WorstMargin, double Before, int Evaluations, MountStop Stop);

/// <summary>The worst margin of each rule against the height of the mount: what is won and what is paid.</summary>
/// <param name="Heights">Mount z, metres, growing.</param>
/// <param name="Curves">One per rule, in the order of their ids.</param>
/// <param name="Worst">Worst of all rules at each height; not a number where something could not be judged.</param>
public sealed record MountTrade(ImmutableArray<double> Heights, ImmutableArray<RuleCurve> Curves, ImmutableArray<double> Worst);

/// <param name="Margins">Worst margin of the rule over all stations at each height; not a number where it was not judged.</param>
public sealed record RuleCurve(Rule Rule, ImmutableArray<double> Margins);

/// <summary>
/// Places the mount for the largest worst margin over all findings of all stations.
/// <para>
/// Method: pattern search from the best few of a coarse set of starts; it polls along each free coordinate and along the diagonals
/// of each pair, and halves its step when none is better. No derivatives, since the worst margin has edges where one finding takes
/// over from another; no chance, so that the same cell gives the same answer. It can stop on a lesser hill, or on an edge that runs
/// along none of its directions.
/// </para>
/// </summary>
public static class MountSearch
{
    private const int MostEvaluations = 700;
    private const int Climbs = 3;
    private const double FirstStep = 0.04;
    private const double LastStep = 0.0005;

    /// <summary>Stands for the margin of a finding that could not be judged: no judged margin is that bad.</summary>
    private const double Unreached = 1000;

    /// <param name="judge">The ledger of a cell, fast; asked from several threads.</param>
    /// <param name="progress">Fraction of the climbs done, 0 to 1.</param>
    public static MountResult Best(Cell cell, MountFreedom free, Func<Cell, Ledger> judge, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        double before = Worth(cell.Mount);
        Axis[] axes = [.. Axes(cell.Mount, free)];
        if (axes.Length == 0 || double.IsNaN(before)) return new(cell.Mount, Told(before), Told(before), 1, MountStop.NothingToDo);

        (double[] At, double Worth)[] starts = [.. Starts(axes).Select(at => (at, double.NaN))];
        Parallel.For(0, starts.Length, n => starts[n].Worth = Worth(At(starts[n].At)));
        // Each climb has its own number of judgements, so that the answer does not depend on which of them is faster.
        Top[] tops = [.. starts.OrderByDescending(s => s.Worth).Take(Climbs - 1).Prepend((At: new double[axes.Length], Worth: before)).Select(s => new Top(s.At, s.Worth, 0))];
        int done = 0;
        Parallel.For(0, tops.Length, n =>
        {
            tops[n] = Climb(tops[n]);
            progress?.Report(Interlocked.Increment(ref done) / (double)tops.Length);
        });

        var best = tops.Aggregate((a, b) => b.Worth > a.Worth ? b : a);
        var rounded = Rounded(At(best.At), cell.Mount);
        double there = Worth(rounded);
        int evaluations = 2 + starts.Length + tops.Sum(t => t.Evaluations);
        var why = stop.IsCancellationRequested ? MountStop.Cancelled : tops.Any(t => t.Evaluations >= MostEvaluations) ? MountStop.Budget : MountStop.NoBetterNearby;
        return there > before
            ? new(rounded, Told(there), Told(before), evaluations, why)
            : new(cell.Mount, Told(before), Told(before), evaluations, why);

        Top Climb(Top from)
        {
            var (at, worth, evaluations) = from;
            for (double step = FirstStep; step >= LastStep && !Spent(); step /= 2)
            {
                for (bool better = true; better && !Spent();)
                {
                    better = false;
                    foreach (double[] direction in Directions(axes.Length))
                    {
                        double[] next = [.. at.Select((v, k) => Math.Clamp(v + step * axes[k].Scale * direction[k], -axes[k].Within, axes[k].Within))];
                        evaluations++;
                        double then = Worth(At(next));
                        if (!(then > worth + 1e-9)) continue;
                        (at, worth, better) = (next, then, true);
                    }
                }
            }

            return new(at, worth, evaluations);

            bool Spent() => evaluations >= MostEvaluations || stop.IsCancellationRequested;
        }

        double Worth(Mount mount) => WorstOf(judge(cell with { Mount = mount }));

        Mount At(double[] moved)
        {
            var mount = cell.Mount;
            for (int k = 0; k < axes.Length; k++) mount = axes[k].Moved(mount, moved[k]);
            return mount;
        }
    }

    /// <summary>Worst margins per rule over a range of mount heights, for a chart. Cancelling gives the heights reached so far.</summary>
    public static MountTrade OverHeight(Cell cell, double from, double to, int steps, Func<Cell, Ledger> judge, CancellationToken stop = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(steps, 1);
        var ledgers = new List<Ledger>();
        var heights = ImmutableArray.CreateBuilder<double>();
        for (int n = 0; n <= steps && !stop.IsCancellationRequested; n++)
        {
            heights.Add(from + (to - from) * n / steps);
            ledgers.Add(judge(cell with { Mount = cell.Mount with { Z = heights[^1] } }));
        }

        var rules = ledgers.SelectMany(OfStations).Select(f => f.Rule).Distinct().OrderBy(r => r.Id, StringComparer.Ordinal);
        return new(
            heights.DrainToImmutable(),
            [.. rules.Select(rule => new RuleCurve(rule, [.. ledgers.Select(l => Least(OfStations(l).Where(f => f.Rule == rule)))]))],
            [.. ledgers.Select(WorstOf).Select(w => double.IsFinite(w) ? w : double.NaN)]);
    }

    /// <summary>The penalty of what could not be judged steers the search; told is only that it could not.</summary>
    private static double Told(double worst) => worst < -Unreached / 2 ? double.NegativeInfinity : worst;

    /// <summary>
    /// Worst margin of the stations' findings. One that could not be judged, because the rods do not even reach, is worse than any margin;
    /// how many there are still tells which way is better. Not a number when there is nothing to go by.
    /// </summary>
    private static double WorstOf(Ledger ledger)
    {
        var findings = OfStations(ledger).ToList();
        int undefined = findings.Count(f => f is Unjudged { Reason: OpenReason.Failed });
        double least = Least(findings);
        return undefined > 0 && !double.IsNaN(least) ? least - Unreached * undefined : least;
    }

    private static IEnumerable<Finding> OfStations(Ledger ledger) =>
        ledger.Findings.Where(f => f.Rule.Trade == Trade.Reach && f.Subject.Pointer.StartsWith("/stations/", StringComparison.Ordinal));

    private static double Least(IEnumerable<Finding> findings) =>
        findings.Select(f => f.Margin).Where(m => !double.IsNaN(m)).DefaultIfEmpty(double.NaN).Min();

    /// <summary>Where a climb is, by how much each axis is moved.</summary>
    private sealed record Top(double[] At, double Worth, int Evaluations);

    private sealed record Axis(double Within, double Scale, Func<Mount, double, Mount> Moved);

    private static IEnumerable<Axis> Axes(Mount mount, MountFreedom free)
    {
        if (free.X && mount.X is { } x) yield return new(free.Within, 1, (m, d) => m with { X = x + d });
        if (free.Y && mount.Y is { } y) yield return new(free.Within, 1, (m, d) => m with { Y = y + d });
        if (free.Z && mount.Z is { } z) yield return new(free.Within, 1, (m, d) => m with { Z = z + d });
        // A turn of 1 rad moves a place half a metre off by as much as half a metre: steps of like effect.
        if (free.Yaw) yield return new(free.TurnWithin, 2, (m, d) => m with { Yaw = (mount.Yaw ?? 0) + d });
    }

    /// <summary>A coarse set of starts: half and all of the range along each axis, and the corners of half the range.</summary>
    private static IEnumerable<double[]> Starts(Axis[] axes)
    {
        for (int k = 0; k < axes.Length; k++)
        {
            foreach (double share in new[] { -1, -0.5, 0.5, 1 })
            {
                var at = new double[axes.Length];
                at[k] = share * axes[k].Within;
                yield return at;
            }
        }

        for (int corner = 0; corner < 1 << axes.Length; corner++)
            yield return [.. axes.Select((a, k) => (corner >> k & 1) == 0 ? -a.Within / 2 : a.Within / 2)];
    }

    private static IEnumerable<double[]> Directions(int n)
    {
        for (int k = 0; k < n; k++)
        {
            foreach (double sign in new[] { 1, -1 })
            {
                var along = new double[n];
                along[k] = sign;
                yield return along;
                for (int j = 0; j < k; j++)
                {
                    foreach (double other in new[] { 1, -1 })
                    {
                        var across = new double[n];
                        (across[k], across[j]) = (sign, other);
                        yield return across;
                    }
                }
            }
        }
    }

    /// <summary>Only what was moved is rounded.</summary>
    private static Mount Rounded(Mount mount, Mount given)
    {
        const double Tenth = Math.PI / 1800;
        return mount with
        {
            X = Round(mount.X, given.X, 0.001),
            Y = Round(mount.Y, given.Y, 0.001),
            Z = Round(mount.Z, given.Z, 0.001),
            Yaw = Round(mount.Yaw, given.Yaw, Tenth),
        };

        static double? Round(double? v, double? before, double grain) => v is { } x && v != before ? Math.Round(x / grain) * grain : v;
    }
}

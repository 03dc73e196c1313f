using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Trivet.Numerics.Profiles;

/// <summary>
/// The fastest traversal of a sampled path under limits linear in u = s̈ and x = ṡ². Backward it finds, point by point, the x from which the
/// end can still be reached; forward it takes the largest u that stays among them. Limits are kept at the middle of each step, where the
/// coefficient of u is near zero at both its ends, and bounds of x at each point; durations converge with the square of the step.
/// Between those places a limit may be passed by what it bends within a step.
/// <para>
/// The two passes are reachability analysis: [Pham2018], from memory; the discretisation and the elimination are this
/// project's.
/// </para>
/// <para>Keeps its memory between calls and moves the lines of limits that fall with speed: one instance, and one set of limits, for each thread.</para>
/// </summary>
public sealed class PathTiming
{
    /// <summary>Rounds with limits that fall with speed end where one wins less than this part of the duration.</summary>
    private const double EnoughGain = 1e-6;
    private const int MostRounds = 8;

    /// <summary>A speed given at an end may be above what is allowed by this much of ṡ².</summary>
    private const double Rounding = 1e-9;

    // By points: the x from which the end can be reached, and what bounds it.
    private double[] _least = [], _most = [];
    private int[] _mostLimit = [];

    // By steps: the stripes of each step's wedge.
    private double[] _high = [], _low = [], _slope = [];
    private int[] _limit = [], _count = [];

    public PathTraversal Solve(PathLimits limits)
    {
        if (limits.Broken is { } broken) return PathTraversal.No(PathProblem.NotFinite, limits.S, broken.Point, broken.Limit);
        foreach (var effort in limits.Efforts) effort.Relax();
        var found = Round(limits);
        if (limits.Efforts.Count == 0 || !found.Found) return found;

        // The first round had the effort at standstill throughout: too fast, but a place to put the tangents.
        var gains = ImmutableArray.CreateBuilder<double>();
        double last = double.PositiveInfinity;
        for (int i = 0; i < MostRounds; i++)
        {
            double floor = 0;
            foreach (double x in found.X) floor = Math.Max(floor, 1e-6 * x);
            double[] touch = [.. found.X.Select(x => Math.Max(x, floor))];
            foreach (var effort in limits.Efforts) effort.Touch(touch);
            var next = Round(limits);
            if (!next.Found) return next with { Gains = gains.ToImmutable() };
            if (double.IsFinite(last)) gains.Add(last - next.Duration);
            found = next;
            if (last - next.Duration <= EnoughGain * next.Duration) break;
            last = next.Duration;
        }

        return found with { Gains = gains.ToImmutable() };
    }

    private PathTraversal Round(PathLimits limits)
    {
        Prepare(limits);
        var problem = Backward(limits, out int point, out int limit);
        if (problem != PathProblem.None) return PathTraversal.No(problem, limits.S, point, limit);

        double start = limits.StartSpeed * limits.StartSpeed;
        if (!(start <= _most[0] * (1 + Rounding))) return PathTraversal.No(PathProblem.StartTooFast, limits.S, 0, _mostLimit[0]);
        if (start < _least[0] * (1 - Rounding)) return PathTraversal.No(PathProblem.StartTooSlow, limits.S, 0, PathTraversal.NoLimit);
        return Forward(limits, Math.Min(start, _most[0]));
    }

    private void Prepare(PathLimits limits)
    {
        int n = limits.Points, stripes = n * Room(limits);
        if (_least.Length < n) (_least, _most, _mostLimit, _count) = (new double[n], new double[n], new int[n], new int[n]);
        if (_high.Length < stripes) (_high, _slope, _limit) = (new double[stripes], new double[stripes], new int[stripes]);
        if (_low.Length < Room(limits)) _low = new double[Room(limits)];
    }

    /// <summary>Stripes of one step: at most two for each row.</summary>
    private static int Room(PathLimits limits) => 2 * limits.Rows.Length;

    private Wedge WedgeOf(int step, int room, int count = 0)
    {
        int at = step * room;
        return new(_high.AsSpan(at, room), _low.AsSpan(0, room), _slope.AsSpan(at, room), _limit.AsSpan(at, room), count);
    }

    /// <summary>From the end to the start: least and most x at each point from which the end can be reached.</summary>
    private PathProblem Backward(PathLimits limits, out int point, out int limit)
    {
        int n = limits.Points, room = Room(limits);
        var s = limits.S;
        double length = s[^1] - s[0], end = limits.EndSpeed * limits.EndSpeed;
        (int, int) pair = (-1, -1);

        point = n - 1;
        double cap = PointCap(limits, n - 1, length, out limit);
        if (double.IsNaN(cap)) return PathProblem.Contradiction;
        if (!(end <= cap * (1 + Rounding))) return PathProblem.EndTooFast;
        end = Math.Min(end, cap);
        (_least[n - 1], _most[n - 1], _mostLimit[n - 1]) = (end, end, PathTraversal.NoLimit);

        for (int i = n - 2; i >= 0; i--)
        {
            point = i;
            (cap, limit) = (limits.Cap[i], limits.CapLimit[i]);
            if (limits.Faint[i] || (i > 0 && limits.Faint[i - 1])) cap = PointCap(limits, i, length, out limit);
            if (double.IsNaN(cap)) return PathProblem.Contradiction;

            double h = s[i + 1] - s[i];
            var wedge = WedgeOf(i, room);
            foreach (var row in limits.Rows) wedge.Along(row, i, h, length);
            wedge.Lead(_least[i + 1], _most[i + 1], 2 * h);
            wedge.Cap(cap, limit);
            _count[i] = wedge.Count;
            double most = wedge.LargestX(ref pair, out limit);
            if (double.IsNaN(most)) return PathProblem.Contradiction;
            (_least[i], _most[i], _mostLimit[i]) = (wedge.SmallestX(most), most, limit);
        }

        return PathProblem.None;
    }

    /// <summary>The largest x for which the limits at the point itself allow any u: what keeps x from swinging about where u hardly counts.</summary>
    private double PointCap(PathLimits limits, int point, double length, out int limit)
    {
        var wedge = WedgeOf(Math.Max(point - 1, 0), Room(limits));
        foreach (var row in limits.Rows) wedge.At(row.Points[point], 0, length, row.Limit);
        wedge.Cap(limits.Cap[point], limits.CapLimit[point]);
        (int, int) pair = (-1, -1);
        return wedge.LargestX(ref pair, out limit);
    }

    /// <summary>From the start to the end: always the largest u that leads to an x from which the end can be reached.</summary>
    private PathTraversal Forward(PathLimits limits, double start)
    {
        int n = limits.Points, room = Room(limits);
        var s = limits.S;
        double[] x = new double[n], u = new double[n - 1], t = new double[n];
        int[] limiting = new int[n - 1];
        x[0] = start;
        double root = Math.Sqrt(start);
        for (int i = 0; i < n - 1; i++)
        {
            double h = s[i + 1] - s[i];
            var wedge = WedgeOf(i, room, _count[i]);
            wedge.Lead(_least[i + 1], _most[i + 1], 2 * h);
            double highest = wedge.Highest(x[i], out int limit);
            // Held back by what comes: where it already runs at its most, by this step, else by the next.
            limiting[i] = limit != Wedge.Ahead ? limit : _mostLimit[x[i] >= _most[i] * (1 - Rounding) ? i : i + 1];
            x[i + 1] = Math.Clamp(x[i] + 2 * h * highest, _least[i + 1], _most[i + 1]);
            u[i] = (x[i + 1] - x[i]) / (2 * h);
            double next = Math.Sqrt(x[i + 1]), ahead = root + next;
            if (!(ahead > 0)) return PathTraversal.No(PathProblem.Stuck, s, i, limiting[i]);
            t[i + 1] = t[i] + 2 * h / ahead;
            root = next;
        }

        return new(PathProblem.None, [.. s], ImmutableCollectionsMarshal.AsImmutableArray(x), ImmutableCollectionsMarshal.AsImmutableArray(u),
            ImmutableCollectionsMarshal.AsImmutableArray(t), ImmutableCollectionsMarshal.AsImmutableArray(limiting), [], -1, PathTraversal.NoLimit);
    }
}

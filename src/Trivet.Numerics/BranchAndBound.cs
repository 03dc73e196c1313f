using System.Runtime.CompilerServices;

namespace Trivet.Numerics;

/// <summary>
/// A function of one to four variables that can be evaluated at a point and bounded over a box. Implementations hold no state
/// that a call changes, except scratch that no result depends on.
/// </summary>
public interface IBoundable
{
    /// <summary>The value at x; not a number (or infinite) where the function is not defined.</summary>
    double At(ReadOnlySpan<double> x);

    /// <summary>
    /// Bounds the function over the box from <paramref name="low"/> to <paramref name="high"/>.
    /// </summary>
    /// <param name="rise">Filled with the direction in which the function grows along each variable; the corner it points to is tried.</param>
    /// <param name="spread">
    /// Filled with how much each variable contributes to the gap between the bound and the function; the largest is halved. It
    /// starts at zero; all zero halves the widest.
    /// </param>
    /// <param name="monotone">Bit k is set when the function surely grows (or surely falls) along variable k, as the sign of rise[k] says.</param>
    /// <returns>A number that no value in the box exceeds; infinity when nothing is known.</returns>
    double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone);
}

public enum SearchStop
{
    /// <summary>Bound and attained value are as close as asked.</summary>
    WithinTolerance,
    /// <summary>The limit is decided and the gap is small against the distance to it.</summary>
    LimitDecided,
    /// <summary>The number of boxes allowed was used up. The bound is valid, but wide.</summary>
    Budget,
    /// <summary>The function is not defined at a point of the box, so nothing bounds it.</summary>
    Undefined,
    /// <summary>The caller cancelled. The bound is valid, but wide.</summary>
    Cancelled,
}

/// <summary>How far a search goes.</summary>
/// <param name="Limit">The value that must not be exceeded; infinity when there is none.</param>
/// <param name="Tolerance">Largest gap between bound and attained value, absolute.</param>
/// <param name="FarTolerance">Once the limit is decided, a gap up to this fraction of the distance to the limit is enough.</param>
/// <param name="MaxBoxes">Boxes that may be bounded.</param>
public readonly record struct SearchLimits(double Limit, double Tolerance, double FarTolerance = 0, int MaxBoxes = 20_000);

/// <summary>Up to four coordinates.</summary>
[InlineArray(4)]
public struct Coordinates
{
    private double _first;
}

/// <summary>The outcome of a search.</summary>
/// <param name="Attained">Largest value found; not a number when the function is defined at none of the points tried.</param>
/// <param name="At">Where it was found.</param>
/// <param name="Bound">No value in the box exceeds this; infinity when nothing is known.</param>
/// <param name="Boxes">Boxes bounded.</param>
/// <param name="Stop">Why the search ended.</param>
/// <param name="UndefinedAt">A place where the function is not defined, when <paramref name="Stop"/> says so.</param>
public readonly record struct SearchResult(double Attained, Coordinates At, double Bound, int Boxes, SearchStop Stop, Coordinates UndefinedAt);

/// <summary>
/// The largest value of a function over a box, between a value attained and a guaranteed bound: best-first subdivision.
/// The same call gives the same result on every machine with the same arithmetic; nothing depends on time or threads.
/// </summary>
public static class BranchAndBound
{
    /// <summary>Searches the box from low to high (one to four variables; equal ends fix a variable).</summary>
    public static SearchResult Maximise<T>(T f, ReadOnlySpan<double> low, ReadOnlySpan<double> high, SearchLimits limits, CancellationToken stop = default)
        where T : IBoundable
    {
        if (low.Length != high.Length || low.Length is < 1 or > 4)
            throw new ArgumentException("A box has one to four variables, with as many lower as upper ends.", nameof(low));
        return new Search<T>(f, low, high, limits).Run(stop);
    }

    private struct Node
    {
        public Coordinates Low, High;
        public double Upper;
        public int Split;
    }

    /// <summary>Largest bound first; of equal bounds the older box.</summary>
    private readonly record struct Rank(double Upper, int Age) : IComparable<Rank>
    {
        public int CompareTo(Rank other)
        {
            int byBound = other.Upper.CompareTo(Upper);
            return byBound != 0 ? byBound : Age.CompareTo(other.Age);
        }
    }

    private ref struct Search<T>(T f, ReadOnlySpan<double> low, ReadOnlySpan<double> high, SearchLimits limits) where T : IBoundable
    {
        private readonly ReadOnlySpan<double> _low = low, _high = high;
        private readonly PriorityQueue<Node, Rank> _open = new();
        private double _best = double.NaN;
        private Coordinates _at, _undefinedAt;
        private bool _undefined;
        private int _boxes, _age;

        // Largest bound among boxes too small to halve: they can not be improved, only reported.
        private double _residue = double.NegativeInfinity;

        public SearchResult Run(CancellationToken stop)
        {
            var root = new Node { Upper = double.PositiveInfinity };
            _low.CopyTo(root.Low);
            _high.CopyTo(root.High);
            TryCorners(root);
            if (!_undefined) Bound(root, double.PositiveInfinity);

            while (!_undefined)
            {
                double bound = Math.Max(Math.Max(_open.TryPeek(out _, out var top) ? top.Upper : double.NegativeInfinity, _residue), _best);
                if (Done(bound) is { } why) return new(_best, _at, bound, _boxes, why, default);
                if (_open.Count == 0 || _boxes >= limits.MaxBoxes) return new(_best, _at, bound, _boxes, SearchStop.Budget, default);
                if (stop.IsCancellationRequested) return new(_best, _at, bound, _boxes, SearchStop.Cancelled, default);

                var parent = _open.Dequeue();
                Span<double> low = parent.Low, high = parent.High;
                double middle = low[parent.Split] + 0.5 * (high[parent.Split] - low[parent.Split]);
                Node left = parent, right = parent;
                left.High[parent.Split] = middle;
                right.Low[parent.Split] = middle;
                Bound(left, parent.Upper);
                Bound(right, parent.Upper);
            }
            return new(_best, _at, double.PositiveInfinity, _boxes, SearchStop.Undefined, _undefinedAt);
        }

        private readonly SearchStop? Done(double bound)
        {
            double gap = bound - _best;
            if (gap <= limits.Tolerance) return SearchStop.WithinTolerance;
            if (double.IsInfinity(limits.Limit)) return null;
            double distance = bound <= limits.Limit ? limits.Limit - bound : _best > limits.Limit ? _best - limits.Limit : -1;
            return distance >= 0 && gap <= limits.FarTolerance * distance ? SearchStop.LimitDecided : null;
        }

        /// <summary>Bounds a box, tries the corner it points to, and keeps it when it may hold something larger.</summary>
        private void Bound(Node node, double inherited)
        {
            int n = _low.Length;
            Span<double> low = ((Span<double>)node.Low)[..n], high = ((Span<double>)node.High)[..n];
            Span<double> rise = stackalloc double[n], spread = stackalloc double[n], x = stackalloc double[n];
            double upper = double.PositiveInfinity;

            // A variable along which the function is monotone is fixed at the end where it is largest; then once more, now tighter.
            for (int pass = 0; pass < 2; pass++)
            {
                rise.Clear();
                spread.Clear();
                _boxes++;
                double bound = f.UpperBound(low, high, rise, spread, out int monotone);
                if (!double.IsNaN(bound)) upper = Math.Min(upper, bound);
                bool fixedOne = false;
                for (int k = 0; k < n; k++)
                {
                    if ((monotone >> k & 1) == 0 || low[k] == high[k]) continue;
                    if (rise[k] >= 0) low[k] = high[k];
                    else high[k] = low[k];
                    fixedOne = true;
                }
                if (!fixedOne) break;
            }
            node.Upper = Math.Min(upper, inherited);

            for (int k = 0; k < n; k++) x[k] = rise[k] > 0 ? high[k] : rise[k] < 0 ? low[k] : low[k] + 0.5 * (high[k] - low[k]);
            Try(x);
            if (node.Upper <= _best) return;

            node.Split = Widest(low, high, spread);
            if (node.Split < 0) _residue = Math.Max(_residue, node.Upper);
            else _open.Enqueue(node, new(node.Upper, _age++));
        }

        /// <summary>The variable that contributes most to the gap; where none is known to, the relatively widest; −1 when all are spent.</summary>
        private readonly int Widest(scoped ReadOnlySpan<double> low, scoped ReadOnlySpan<double> high, scoped ReadOnlySpan<double> spread)
        {
            int widest = -1;
            double most = 0, mostWidth = 0;
            for (int k = 0; k < low.Length; k++)
            {
                double width = (high[k] - low[k]) / (_high[k] - _low[k]);
                if (!(width > 1e-9)) continue;
                double weight = double.IsFinite(spread[k]) ? spread[k] : 0;
                if (widest >= 0 && (weight < most || (weight == most && width <= mostWidth))) continue;
                (widest, most, mostWidth) = (k, weight, width);
            }
            return widest;
        }

        private void TryCorners(Node root)
        {
            int n = _low.Length;
            Span<double> x = stackalloc double[n];
            for (int k = 0; k < n; k++) x[k] = _low[k] + 0.5 * (_high[k] - _low[k]);
            Try(x);
            for (int corner = 0; corner < 1 << n; corner++)
            {
                for (int k = 0; k < n; k++) x[k] = (corner >> k & 1) == 0 ? _low[k] : _high[k];
                Try(x);
            }
        }

        private void Try(scoped ReadOnlySpan<double> x)
        {
            double value = f.At(x);
            if (!double.IsFinite(value))
            {
                if (!_undefined) x.CopyTo(_undefinedAt);
                _undefined = true;
            }
            else if (!(value <= _best))
            {
                _best = value;
                x.CopyTo(_at);
            }
        }
    }
}

using System.Collections.Immutable;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// One question about a station or a path: the worst value of one quantity over its whole volume or length, held against one limit. It
/// can be answered two ways: sampled at once, or bounded rigorously.
/// </summary>
/// <param name="Rule">The rule it serves.</param>
/// <param name="Subject">What is asked about, and the chain or the kind of obstacle.</param>
/// <param name="Motion">The volume or the path.</param>
/// <param name="Function">What is bounded: grows with how bad the value is; a monotone function of it.</param>
/// <param name="FunctionLimit">The limit in the function's terms.</param>
/// <param name="Tolerance">Gap between attained value and bound that is close enough, in the function's terms.</param>
/// <param name="ToValue">From the function's value, and the place where it was attained, to the rule's value.</param>
/// <param name="Limit">The limit in the rule's terms.</param>
/// <param name="Inputs">Everything the answer depends on.</param>
internal sealed record ReachSearch(
    Rule Rule, Subject Subject, IPlatformMotion Motion, IBoundable Function, double FunctionLimit, double Tolerance,
    Func<double, Coordinates, double> ToValue, Limit Limit, ImmutableArray<string> Inputs)
{
    /// <summary>Boxes that one question may bound before it stays open.</summary>
    private const int MostBoxes = 40_000;

    /// <summary>Once the limit is decided, a bound within this fraction of the distance to the limit is close enough.</summary>
    private const double FarTolerance = 0.1;

    /// <summary>Places that are sampled along a path.</summary>
    private const int AlongPath = 33;

    /// <summary>The worst of an even grid, ends included: three places along each variable, more along a path. Shows a violation at once, proves nothing.</summary>
    public Finding Sample()
    {
        int n = Motion.Variables;
        Span<double> x = stackalloc double[n];
        double worst = double.NaN;
        bool undefined = false;
        var at = new Coordinates();
        int along = n == 1 ? AlongPath : 3, points = (int)Math.Round(Math.Pow(along, n));
        for (int i = 0; i < points; i++)
        {
            for (int k = 0, code = i; k < n; k++, code /= along)
                x[k] = Motion.Low[k] + code % along * (Motion.High[k] - Motion.Low[k]) / (along - 1);
            double value = Function.At(x);
            undefined |= !double.IsFinite(value);
            if (!double.IsFinite(value) || value <= worst) continue;
            worst = value;
            x.CopyTo(at);
        }
        return undefined && !(worst > FunctionLimit) ? Undefined() : Judge(worst, worst, at, Assurance.Sampled);
    }

    /// <summary>The worst value with a bound that holds over the whole volume.</summary>
    public Finding Prove(CancellationToken stop)
    {
        var limits = new SearchLimits(FunctionLimit, Tolerance, FarTolerance, MostBoxes);
        var found = BranchAndBound.Maximise(Function, Motion.Low, Motion.High, limits, stop);
        if (found.Attained > FunctionLimit)
        {
            // One place beyond the limit settles it; where nothing bounds the rest, the value is the worst of those seen.
            return double.IsFinite(found.Bound)
                ? Judge(found.Attained, found.Bound, found.At, Assurance.Proved)
                : Judge(found.Attained, found.Attained, found.At, Assurance.Sampled);
        }
        return found.Stop switch
        {
            SearchStop.Undefined => Undefined(),
            SearchStop.Cancelled => new Unjudged(Rule, Subject, Inputs, OpenReason.NotComputed, [], CommonReasons.Stopped),
            _ => Judge(found.Attained, found.Bound, found.At, Assurance.Proved),
        };
    }

    private Judged Judge(double attained, double bound, Coordinates at, Assurance assurance)
    {
        ReadOnlySpan<double> x = at;
        return new(Rule, Subject, Inputs, ToValue(attained, at), Limit, assurance)
        {
            Bound = ToValue(bound, at),
            Worst = Motion.PlaceAt(x[..Motion.Variables]),
        };
    }

    private Unjudged Undefined() => new(Rule, Subject, Inputs, OpenReason.Failed, [], ReachReasons.NotReached);
}

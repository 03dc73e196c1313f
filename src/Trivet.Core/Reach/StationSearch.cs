using System.Collections.Immutable;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// One question about a station: the worst value of one quantity over its whole volume, held against one limit. It can be answered
/// two ways: sampled at once, or bounded rigorously.
/// </summary>
/// <param name="Rule">The rule it serves.</param>
/// <param name="Case">Chain id, or empty.</param>
/// <param name="Motion">The volume.</param>
/// <param name="Function">What is bounded: grows with how bad the value is; a monotone function of it.</param>
/// <param name="FunctionLimit">The limit in the function's terms.</param>
/// <param name="Tolerance">Gap between attained value and bound that is close enough, in the function's terms.</param>
/// <param name="ToValue">From the function's value, and the place where it was attained, to the rule's value.</param>
/// <param name="Limit">The limit in the rule's terms.</param>
/// <param name="Inputs">Everything the answer depends on.</param>
internal sealed record StationSearch(
    Rule Rule, string Case, StationMotion Motion, IBoundable Function, double FunctionLimit, double Tolerance,
    Func<double, Coordinates, double> ToValue, Limit Limit, ImmutableArray<string> Inputs)
{
    /// <summary>Boxes that one question may bound before it stays open.</summary>
    private const int MostBoxes = 40_000;

    /// <summary>Once the limit is decided, a bound within this fraction of the distance to the limit is close enough.</summary>
    private const double FarTolerance = 0.1;

    private Subject Subject => new(StationInputs.Pointer(Motion.Box.Id), Case);

    /// <summary>The worst of the corners, the middles of edges and faces, and the centre: shows a violation at once, proves nothing.</summary>
    public Finding Sample()
    {
        int n = Motion.Variables;
        Span<double> x = stackalloc double[n];
        double worst = double.NaN;
        bool undefined = false;
        var at = new Coordinates();
        int points = (int)Math.Round(Math.Pow(3, n));
        for (int i = 0; i < points; i++)
        {
            for (int k = 0, code = i; k < n; k++, code /= 3)
                x[k] = Motion.Low[k] + code % 3 * 0.5 * (Motion.High[k] - Motion.Low[k]);
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

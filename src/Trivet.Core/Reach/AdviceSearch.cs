using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Reach;

/// <summary>
/// Looks for the single change that turns a finding which falls short or is tight into one that holds.
/// <para>
/// Each stated field that bears on reach is moved both ways, in doubling steps, until the finding reaches its comfort band; then the
/// smallest such change is closed in on by bisection, in steps a workshop can build. The margin promised is always the one computed
/// with the change in place, and a change that makes another finding fall short, or more so, is not offered.
/// </para>
/// How it goes wrong: margins are taken from the fast, sampled judgement handed in, so that an advice taken still waits for its proof.
/// A remedy beyond a stretch where the margin gets worse first is not found.
/// </summary>
public static class AdviceSearch
{
    private const int MostOffered = 6;

    /// <summary>The changes that help, the one that leaves the best worst margin first; empty when none does.</summary>
    /// <param name="judge">The ledger of a cell, fast; it must judge the finding's rule and subject.</param>
    public static ImmutableArray<Advice> For(Cell cell, Finding finding, Func<Cell, Ledger> judge, CancellationToken stop = default)
    {
        double target = Math.Max(finding.Rule.ComfortBand, 0.01);
        var now = Outcome.Of(judge(cell), finding.Id);
        if (now.Margin >= target) return [];

        var found = new List<(Advice Advice, double Change)>();
        foreach (var lever in Lever.Of(cell, StationOf(finding)))
        {
            foreach (int sense in new[] { 1, -1 })
            {
                if (stop.IsCancellationRequested) return Best(found);
                if (!lever.Ways.HasFlag(sense > 0 ? LeverWays.Up : LeverWays.Down)) continue;
                if (Pull(cell, finding.Id, judge, lever, sense, target, now) is { } advice) found.Add((advice, Math.Abs(advice.To - advice.From)));
            }
        }

        return Best(found);
    }

    private static ImmutableArray<Advice> Best(List<(Advice Advice, double Change)> found) =>
        [.. found.OrderByDescending(f => Math.Min(f.Advice.MarginThen, double.IsNaN(f.Advice.WorstElsewhere) ? 1 : f.Advice.WorstElsewhere))
            .ThenBy(f => f.Change).ThenBy(f => f.Advice.Pointer, StringComparer.Ordinal).Select(f => f.Advice).Take(MostOffered)];

    private static Advice? Pull(Cell cell, string id, Func<Cell, Ledger> judge, Lever lever, int sense, double target, Outcome now)
    {
        // In grains: too few is what does not reach the target, enough is what does.
        int most = (int)Math.Floor(lever.Farthest / lever.Grain + 1e-9), tooFew = 0, enough = 0;
        double last = now.Margin;
        for (int n = Math.Min(8, most); n > 0; n = n < most ? Math.Min(2 * n, most) : 0)
        {
            var then = At(n);
            if (then.Margin >= target)
            {
                enough = n;
                break;
            }

            // No effect at all, or the wrong way: further on it will hardly turn round. What can not be judged yet may be once the rods reach.
            if (double.IsFinite(then.Margin) && !(then.Margin > last) && n >= 16) return null;
            last = then.Margin;
            tooFew = n;
        }

        if (enough == 0) return null;
        while (enough - tooFew > 1)
        {
            int middle = (enough + tooFew) / 2;
            if (At(middle).Margin >= target) enough = middle;
            else tooFew = middle;
        }

        var outcome = At(enough);
        bool harms = outcome.Elsewhere < Math.Min(0, now.Elsewhere) || outcome.Undefined > now.Undefined;
        return harms ? null : new(lever.Pointer, lever.From, To(enough), outcome.Margin, outcome.Elsewhere);

        double To(int grains)
        {
            // From an odd value the first step goes to the nearest whole one beyond.
            double from = lever.From / lever.Grain;
            return lever.Grain * (sense > 0 ? Math.Floor(from + 1e-6) + grains : Math.Ceiling(from - 1e-6) - grains);
        }

        Outcome At(int grains) => Outcome.Of(judge(lever.With(cell, To(grains))), id);
    }

    private static string? StationOf(Finding finding)
    {
        string[] parts = finding.Subject.Pointer.Split('/');
        return parts.Length == 3 && parts[1] == "stations"
            ? parts[2].Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal)
            : null;
    }

    /// <summary>What a ledger says of one finding, and of all others.</summary>
    /// <param name="Margin">Of the finding; minus infinity where it could not be judged.</param>
    /// <param name="Elsewhere">Worst of the others; not a number when there are none.</param>
    /// <param name="Undefined">Findings that could not be judged.</param>
    private readonly record struct Outcome(double Margin, double Elsewhere, int Undefined)
    {
        public static Outcome Of(Ledger ledger, string id)
        {
            double own = double.NegativeInfinity, elsewhere = double.NaN;
            int undefined = 0;
            foreach (var f in ledger.Findings)
            {
                if (f is Unjudged) undefined++;
                if (double.IsNaN(f.Margin)) continue;
                if (f.Id == id) own = f.Margin;
                else if (!(f.Margin >= elsewhere)) elsewhere = f.Margin;
            }

            return new(own, elsewhere, undefined);
        }
    }
}

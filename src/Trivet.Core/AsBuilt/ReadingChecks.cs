using Trivet.Findings;
using Trivet.Journal;
using Trivet.Procedures;

namespace Trivet.AsBuilt;

/// <summary>Holds what was answered against what is accepted.</summary>
public static class ReadingChecks
{
    /// <summary>Guard band in standard uncertainties, about 95 % (JCGM 106, from memory).</summary>
    private const double Guard = 2;

    /// <summary>
    /// Standard uncertainty of a reading: what can be told apart by reading to a step is uniform over that step, so step/√12
    /// (JCGM 100, 4.3.7, from memory). Not a number where the step is not known.
    /// </summary>
    public static double UncertaintyOf(Measured reading) => reading.Step > 0 ? reading.Step / Math.Sqrt(12) : double.NaN;

    /// <summary>
    /// Outside the limit: falls short. Nearer to it than the guard band, or read to an unknown step: tight. A reading in another unit than
    /// asked, or with nothing to hold it against, is open.
    /// </summary>
    public static Verdict Of(AskedValue asked, Measured reading)
    {
        if (asked.Accepted is not { } limit || reading.Unit != asked.Unit) return Verdict.Open;
        double distance = Math.Min(reading.Value - limit.Lower, limit.Upper - reading.Value);
        if (double.IsNaN(distance)) return Verdict.Open;
        if (distance < 0) return Verdict.FallsShort;
        return distance >= Guard * UncertaintyOf(reading) ? Verdict.Holds : Verdict.Tight;
    }

    /// <summary>
    /// Whether a step before now says something else, as far as what came after rests on it: a reading that is judged counts by whether it is
    /// accepted, one that is only kept by its value beyond what the readings can tell apart, all else by what was answered.
    /// </summary>
    public static bool Differs(Asked asked, Answer then, Answer now) => (asked, then, now) switch
    {
        (AskedValue { Accepted: not null } value, Measured a, Measured b) => IsAccepted(value, a) != IsAccepted(value, b),
        (AskedValue, Measured a, Measured b) => a.Unit != b.Unit || (a.Value != b.Value && !(Math.Abs(a.Value - b.Value) <= Guard * CombinedOf(a, b))),
        (AskedPhotograph, Photographed, Photographed) or (AskedSignature, Signed, Signed) => false,
        _ => then != now,
    };

    private static bool IsAccepted(AskedValue asked, Measured reading) => Of(asked, reading) is Verdict.Holds or Verdict.Tight;

    /// <summary>Not a number where a step is not known: any difference then counts.</summary>
    private static double CombinedOf(Measured a, Measured b) =>
        Math.Sqrt(UncertaintyOf(a) * UncertaintyOf(a) + UncertaintyOf(b) * UncertaintyOf(b));
}

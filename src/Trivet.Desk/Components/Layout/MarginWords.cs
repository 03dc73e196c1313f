using Trivet.Views.Words;

namespace Trivet.Desk.Components.Layout;

internal static class MarginWords
{
    /// <summary>A cell's worst margin; without a judged finding there is none, and where a rod does not reach it has no number.</summary>
    public static string Of(double margin) => margin switch
    {
        double.NaN => "none yet",
        double.NegativeInfinity => "not reached",
        _ => Numbers.SignedPercent(margin),
    };
}

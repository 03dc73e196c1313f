using System.Collections.Immutable;
using Trivet.Frames;
using Trivet.Motion;
using Trivet.Views.Charts;
using Trivet.Views.Words;

namespace Trivet.Views.Frames;

/// <summary>The charts of a frame.</summary>
public static class FrameCharts
{
    private const int Points = 500;

    /// <summary>Each mode between softest and stiffest joints, and the smallest frequency allowed.</summary>
    public static Chart Band(FrameReport report, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Frame;
        var study = report.Study!;
        int count = study.Soft.Modes.Length;
        ImmutableArray<double> numbers = [.. Enumerable.Range(1, count).Select(i => (double)i)];
        return new(words.BandChart, new(words.Modes, "", 0, count + 1), new(words.Frequency, "Hz", 0),
        [
            // Lines from end to end of each band, parted by what is not a number.
            new("", SeriesKind.Line, [.. numbers.SelectMany(n => new[] { n, n, double.NaN })], [.. Enumerable.Range(0, count).SelectMany(i => new[] { study.Band(i).Low, study.Band(i).High, double.NaN })]),
            new(words.BandLow, SeriesKind.Points, numbers, [.. Enumerable.Range(0, count).Select(i => study.Band(i).Low)], Strong: true),
            new(words.BandHigh, SeriesKind.Points, numbers, [.. Enumerable.Range(0, count).Select(i => study.Band(i).High)]),
        ])
        {
            Guides = report.Cell.Frame.Limits.LowestFrequency is { } lowest ? [new(Numbers.Quantity(lowest, "Hz", locale), lowest)] : [],
        };
    }

    /// <summary>How the tool swings after a move: softest, stiffest and worst sampled joints, with the tolerance and the planned settling time.</summary>
    public static Chart Settle(FrameReport report, FrameUnder under, Settling settling, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Frame;
        var study = report.Study!;
        var wait = under.Load.Waits.Single(w => w.Name == settling.Wait);
        var arm = wait.Tool_C - study.Mesh.Mount!.P;
        double planned = report.Cell.Motion.Cycles.GetValueOrDefault(under.Load.Name)?.Settle ?? 0;
        double until = Math.Max(0.2, Math.Max(1.5 * planned, double.IsFinite(settling.Worst.Wait) ? 1.3 * settling.Worst.Wait : 0));
        ImmutableArray<double> times = [.. Enumerable.Range(0, Points + 1).Select(i => until * i / Points)];
        (string Name, double Joint, bool Strong)[] shown =
        [
            (words.SettleSoft, study.Joints.From, false),
            .. study.Joints.To > study.Joints.From ? [(words.SettleStiff, study.Joints.To, false)] : Array.Empty<(string, double, bool)>(),
            (words.SettleWorst, settling.Worst.Joint, true),
        ];
        return new(
            Locale.Fill(words.SettleChart, ("wait", words.Waits.GetValueOrDefault(settling.Wait, settling.Wait)), ("cycle", under.Load.Name)), new(words.SettleTime, "s", 0, until), new(words.SettleSwing, "mm", 0),
            [.. shown.Select(s =>
            {
                var response = FrameResponse.Of(study.At(s.Joint), settling.Damping, under.Load.Reaction);
                return new Series(s.Name, SeriesKind.Line, times, [.. times.Select(t => 1000 * response.Swing(wait.Index, t).At(arm).Norm)], s.Strong);
            })])
        {
            Guides = [new(words.SettleTolerance, 1000 * settling.Tolerance, Strong: true), .. planned > 0 ? [new Guide(words.SettlePlanned, planned, Upright: true)] : Array.Empty<Guide>()],
        };
    }
}

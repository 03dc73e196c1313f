using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Views.Words;

namespace Trivet.Views.Motion;

/// <summary>One law's line in the table, in finished texts.</summary>
/// <param name="ToPeak">How far the rate is above the peak rate of the brief, in percent; empty where none is stated.</param>
/// <param name="Why">Why there is no motion; empty where there is.</param>
public sealed record LawRow(TimingLaw Law, string Name, string Loaded, string Empty, string Waits, string CycleTime, string Rate, string ToPeak, string Why);

/// <summary>The tool's ways of a cycle, cell frame, metres, and where it starts: what a drawing shows of it.</summary>
/// <param name="Rotary">Angle of the rotary axis at the start, radians.</param>
public sealed record CycleWay(ImmutableArray<Vec3> Loaded, ImmutableArray<Vec3> Empty, double Rotary, double LinearAxisAt);

/// <summary>
/// One cycle timed by the three laws, or what keeps it from being timed: what the motion sheet, a command and a paper show of it.
/// </summary>
/// <param name="Input">Null while it can not be timed.</param>
/// <param name="Controller">The controller's law.</param>
/// <param name="Result">All three laws; null in a quick answer too.</param>
/// <param name="Missing">Pointers of fields that are not stated.</param>
/// <param name="Wrong">What contradicts itself.</param>
/// <param name="NotJudged">Why a cycle of this kind is not judged.</param>
public sealed record MotionSheet(
    Cell Cell, string Cycle, CycleInput? Input, LawResult? Controller, CycleResult? Result, ImmutableArray<string> Missing, ImmutableArray<Contradiction> Wrong,
    Reason? NotJudged)
{
    private const int WayPoints = 160;

    public static MotionSheet Of(Cell cell, string cycle) => Read(cell, cycle, quick: false);

    /// <summary>The controller's law alone, while a station is being dragged: a tenth of the time.</summary>
    public static MotionSheet Quick(Cell cell, string cycle) => Read(cell, cycle, quick: true);

    private static MotionSheet Read(Cell cell, string cycle, bool quick)
    {
        var reading = new Reading();
        var (input, wrong, notJudged) = CycleInput.Read(cell, cycle, reading);
        // A path that is not reached has no motion; finding out is a part of solving.
        var result = input is null || quick && Reached(input) ? null : CycleTiming.Solve(input);
        var controller = input is null ? null : result?.Controller ?? CycleTiming.Controller(input, input.Plan.Pick.Duration + input.Plan.Place.Duration);
        return new(cell, cycle, input, controller, result, reading.MissingFields, wrong, notJudged);
    }

    /// <summary>Of the controller's law, seconds; not a number while there is none.</summary>
    public double CycleTime => Controller?.CycleTime ?? double.NaN;

    public string Name => Cell.Motion.Cycles[Cycle].Name ?? Cycle;

    public CycleWay? Way => Input?.Plan is { } plan
        ? new(Points(plan.Loaded), Points(plan.Empty), plan.Pick.Angle, plan.Loaded.LinearAxisAt)
        : null;

    public ImmutableArray<LawRow> Laws(Locale? locale = null)
    {
        if (Result is null) return [];
        var words = (locale ?? Locale.English).Language.Motion;
        return
        [
            .. Result.Laws.Select(l => new LawRow(
                l.Law, words.Laws[(int)l.Law], Seconds(l.Loaded.Duration, locale), Seconds(l.Empty.Duration, locale), Seconds(l.Waits, locale),
                Seconds(l.CycleTime, locale), l.Found ? Numbers.Quantity(l.Rate, "1/s", locale) : "",
                l.Found && Cell.Brief.PeakRate is { } peak and > 0 ? Numbers.SignedPercent(l.Rate / peak - 1, locale) : "",
                l.Why is { } why ? Sentences.Of(why, Cell, locale) : "")),
        ];
    }

    /// <summary>By how much the bound is shorter, as a sentence.</summary>
    public string Gap(Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Motion;
        return Result is { } r && double.IsFinite(r.Gap) ? Locale.Fill(words.Gap, ("gap", Numbers.Percent(r.Gap, locale))) : words.GapUnknown;
    }

    /// <summary>What holds the bound of the loaded move back, the largest share first: "force of chain a, 41 % of the time".</summary>
    public ImmutableArray<string> HeldBack(Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        return
        [
            .. (Result?.HeldBack ?? []).Select(h => Locale.Fill(language.Motion.HeldBackBy,
                ("limit", language.Motion.Limits[(int)h.Kind]), ("axis", Fields.Axis(Cell, h.Axis, language)), ("share", Numbers.Percent(h.Share, locale)))),
        ];
    }

    /// <summary>To the millisecond; a dash where there is no time.</summary>
    public static string Seconds(double seconds, Locale? locale = null) => double.IsFinite(seconds) ? $"{Numbers.Plain(seconds, 3, locale)} s" : "–";

    private static bool Reached(CycleInput input) =>
        new[] { input.Plan.Loaded, input.Plan.Empty }.All(path =>
            Enumerable.Range(0, WayPoints + 1).All(i => path.Robot.Inverse(path.At(path.Length * i / WayPoints).Platform.P).IsFinite));

    private static ImmutableArray<Vec3> Points(PlatformPath path) =>
        [.. Enumerable.Range(0, WayPoints + 1).Select(i => path.Path.At(path.Length * i / WayPoints).P)];
}

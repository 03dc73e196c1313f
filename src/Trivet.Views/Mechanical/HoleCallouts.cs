using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Views.Words;

namespace Trivet.Views.Mechanical;

/// <summary>Holes of one kind and size, lettered: A1, A2, …</summary>
public sealed record HoleGroup(string Letter, string Callout, string Screw, ImmutableArray<AdapterHole> Holes);

/// <summary>What a drawing calls the holes of a plate.</summary>
public static class HoleCallouts
{
    /// <summary>The groups, screw holes first, in the order of the plate's holes.</summary>
    public static ImmutableArray<HoleGroup> Of(AdapterPlate plate, Locale locale)
    {
        var groups = plate.Holes.OrderBy(h => h.Fitted is null).GroupBy(h => (Callout(h, plate.Thickness, locale), h.Serves)).ToArray();
        return [.. groups.Select((g, i) => new HoleGroup(((char)('A' + i)).ToString(), g.Key.Item1, ScrewOf(g.First(), locale), [.. g]))];
    }

    /// <summary>A length in millimetres as drawings print it.</summary>
    public static string Millimetres(double metres, Locale locale) => Numbers.Plain(1000 * metres, 2, locale);

    private static string Callout(AdapterHole hole, double t, Locale locale)
    {
        var words = locale.Language.Plate;
        double narrow = hole.Steps.Min(s => Math.Min(s.RadiusTop, s.RadiusBottom)), wide = hole.Steps.Max(s => s.Widest);
        string D(double radius) => Millimetres(2 * radius, locale);
        string face = words.FromFace[(int)hole.From];
        switch (hole.Kind)
        {
            case HoleKind.Counterbored:
            case HoleKind.Countersunk:
                var sunk = hole.From == PlateFace.Above ? hole.Steps[0] : hole.Steps[^1];
                return Locale.Fill(hole.Kind == HoleKind.Counterbored ? words.Counterbored : words.Countersunk,
                    ("d", D(narrow)), ("wide", D(wide)), ("depth", Millimetres(sunk.Top - sunk.Bottom, locale)), ("face", face));
            case HoleKind.Tapped:
                return Locale.Fill(words.Tapped, ("thread", hole.Thread!.Name));
            case HoleKind.Dowel:
            case HoleKind.Pilot:
                return Fit(hole, t, words, D, locale);
            default:
                return Locale.Fill(words.Through, ("d", D(narrow)));
        }
    }

    private static string Fit(AdapterHole hole, double t, PlateWords words, Func<double, string> diameter, Locale locale)
    {
        var recesses = hole.Steps.Where(s => s.Top - s.Bottom < t - 1e-9 && (s.Top >= t || s.Bottom <= 0) && (hole.Steps.Length == 1 || s.Widest > hole.Steps.Min(x => x.Widest)));
        string[] blind = [.. recesses.Select(s => Locale.Fill(words.FitBlind,
            ("d", diameter(s.Widest)), ("depth", Millimetres(s.Top - s.Bottom, locale)), ("face", words.FromFace[(int)(s.Top >= t ? PlateFace.Above : PlateFace.Below)])))];
        bool through = hole.Steps[0].Top >= t && hole.Steps[^1].Bottom <= 0;
        double narrow = hole.Steps.Min(s => s.Widest);
        if (blind.Length == 0) return Locale.Fill(words.Fit, ("d", diameter(narrow)));
        string joined = string.Join(", ", blind);
        return through ? Locale.Fill(words.AndThrough, ("hole", joined), ("d", diameter(narrow))) : joined;
    }

    private static string ScrewOf(AdapterHole hole, Locale locale)
    {
        var words = locale.Language.Plate;
        if (hole.Kind == HoleKind.Dowel) return Locale.Fill(words.Pin, ("d", Millimetres(2 * hole.Steps[0].Widest, locale)), ("length", Millimetres(PlatePins.LengthIn(hole), locale)));
        if (hole.Fitted is not { } fitted) return "";
        if (double.IsNaN(fitted.Length)) return Locale.Fill(words.ScrewUnknown, ("thread", fitted.Screw.Thread.Name));
        return Locale.Fill(fitted.Screw.Head == ScrewHead.Countersunk ? words.ScrewCountersunk : words.Screw,
            ("thread", fitted.Screw.Thread.Name), ("length", Millimetres(fitted.Length, locale)));
    }
}

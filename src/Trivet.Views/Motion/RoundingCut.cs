using System.Collections.Immutable;
using Trivet.Motion;
using Trivet.Views.Words;

namespace Trivet.Views.Motion;

/// <summary>A move whose corners are rounded by less than was asked for, since legs are too short: it takes longer than the blend typed in promises.</summary>
/// <param name="Loaded">The move with the part; else the way back.</param>
/// <param name="Corners">How many corners.</param>
/// <param name="Asked">Half length of the rounding asked for, metres.</param>
/// <param name="Least">The smallest that one of them got.</param>
public sealed record RoundingCut(bool Loaded, int Corners, double Asked, double Least)
{
    /// <summary>The moves of a cycle that lose rounding; none where every corner gets what was asked for.</summary>
    public static ImmutableArray<RoundingCut> Of(CyclePlan plan) =>
        [.. new[] { (Loaded: true, Move: plan.Loaded), (Loaded: false, Move: plan.Empty) }
            .Select(m => (m.Loaded, Cut: m.Move.Path.Corners.Where(c => c.Limited).ToArray()))
            .Where(m => m.Cut.Length > 0)
            .Select(m => new RoundingCut(m.Loaded, m.Cut.Length, m.Cut.Max(c => c.Asked), m.Cut.Min(c => c.Half)))];

    /// <summary>"Smallest rounding of the loaded move".</summary>
    public string What => Loaded ? Words.RoundingLoaded : Words.RoundingEmpty;

    /// <summary>"asked for 40 mm, cut short at 2 corners since a leg is too short".</summary>
    public string Why => Locale.Fill(Corners == 1 ? Words.RoundingCutOne : Words.RoundingCut, ("asked", Numbers.Quantity(Asked, "m")), ("corners", $"{Corners}"));

    private static CycleWords Words => Locale.English.Language.Motion.Cycle;
}

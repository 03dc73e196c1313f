using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Motion;
using Trivet.Views.Words;

namespace Trivet.Views.Motion;

/// <summary>One variant of the controller's law in finished texts.</summary>
/// <param name="Leaves">How far the tool leaves the planned path; empty where it does not.</param>
/// <param name="Worst">The limit that is used most: "force of chain a, 84 %".</param>
/// <param name="Beyond">That limit is not kept.</param>
/// <param name="Why">Why there is no motion; empty where there is.</param>
public sealed record VariantRow(LawVariant Of, string Name, string Loaded, string Empty, string CycleTime, string Leaves, string Worst, bool Beyond, string Why);

/// <summary>The four variants of the controller's law for one cycle.</summary>
public static class VariantSheet
{
    public static ImmutableArray<VariantRow> Of(Cell cell, CycleInput input, Locale? locale = null) =>
        [.. LawVariants.Of(cell, input).Select(v => Row(cell, v, locale))];

    /// <summary>Finished texts for variants that were computed already.</summary>
    public static VariantRow Row(Cell cell, LawVariant v, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.Motion;
        return new(
            v, Name(v, words), MotionSheet.Seconds(v.Law.Loaded.Duration, locale), MotionSheet.Seconds(v.Law.Empty.Duration, locale), MotionSheet.Seconds(v.Law.CycleTime, locale),
            v.Leaves > 0 ? Numbers.Quantity(v.Leaves, "m", locale) : "",
            v.Worst is { } w ? Locale.Fill(words.UseOf, ("limit", words.Limits[(int)w.Kind]), ("axis", Fields.Axis(cell, w.Axis, language)), ("share", Numbers.Percent(w.Use, locale))) : "",
            v.Worst is { } most && !(most.Use <= 1), v.Law.Why is { } why ? Sentences.Of(why, cell, locale) : "");
    }

    public static string Name(LawVariant v, MotionWords words) =>
        Locale.Fill(words.Variant, ("profile", words.Profiles[(int)v.Profile]), ("along", words.Alongs[(int)v.Along]));
}

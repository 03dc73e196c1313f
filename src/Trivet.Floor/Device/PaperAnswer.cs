using System.Globalization;
using Trivet.Files.Floor;
using Trivet.Journal;
using Trivet.Procedures;

namespace Trivet.Floor.Device;

/// <summary>What was written by hand in a field of a card, typed in.</summary>
public static class PaperAnswer
{
    /// <summary>The answer a text gives; null where it gives none: a value in a unit that does not fit, an option that is none.</summary>
    public static Answer? Of(Asked asked, string text)
    {
        string typed = text.Trim();
        if (typed.Length == 0) return null;
        switch (asked)
        {
            case AskedValue value when TypedReading.DimensionOf(value.Unit) is { } dimension:
                var units = TypedReading.UnitsFor(dimension);
                var read = TypedReading.Of(typed, units.Length > 0 ? units[0] : "", dimension);
                return read.Quantity.Ok ? new Measured(read.Text, value.Unit, read.Quantity.Value, read.Step) : null;
            case AskedChoice choice:
                return int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out int n) && n >= 1 && n <= choice.Options.Length ? new Chosen(choice.Options[n - 1]) : null;
            case AskedCount:
                return long.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out long count) && count <= 1_000_000 ? new Counted(count) : null;
            case AskedText: return new Written(typed);
            case AskedTick: return typed is "x" or "X" ? new Ticked() : null;
            default: return null;
        }
    }
}

using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Settings;

/// <summary>The rules by which the parameters of the controller are judged.</summary>
public static class SettingRules
{
    /// <summary>A parameter says all that its value to type needs. Appears only while it does not.</summary>
    public static Rule Described { get; } = new(
        "settings.described", "The parameters of the controller are described and do not contradict themselves", Trade.Electrical, "1", Sense.AtLeast, 0, new(SourceKind.CommonPractice, ""));

    /// <summary>Value: how far the rounding of one parameter moves the platform, metres.</summary>
    public static Rule Accuracy { get; } = new(
        "settings.accuracy", "Rounding to the controller's step costs little accuracy", Trade.Electrical, "m", Sense.AtMost, 0, new(SourceKind.Derived, "", "docs/electrical.md"));

    /// <summary>Value: how far the rounding moves the quantity, as a share of what it may.</summary>
    public static Rule Rounding { get; } = new(
        "settings.rounding", "Rounding to the controller's step changes the value little", Trade.Electrical, "1", Sense.AtMost, 0, new(SourceKind.CommonPractice, ""));

    public static ImmutableArray<Rule> Rules { get; } = [Described, Accuracy, Rounding];
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Settings;

/// <summary>Holds the rounding of a parameter against what it may cost.</summary>
internal static class SettingChecks
{
    /// <summary>Rounding of one parameter may take a tenth of the tightest tolerance, since calibration, play and wear want theirs (common practice, no source).</summary>
    public const double ShareOfTolerance = 0.1;

    /// <summary>What does not decide where the platform goes may be off by a hundredth (common practice, no source).</summary>
    public const double ShareOfValue = 0.01;

    /// <summary>The tightest tolerance of the brief and its field; null where none is stated.</summary>
    public static (double Tolerance, string Pointer)? Tightest(Brief brief, Reading reading)
    {
        (double Tolerance, string Pointer)? tightest = null;
        reading.Used("/brief/requirements", string.Join('\n', brief.Requirements.Keys));
        foreach (var (id, requirement) in brief.Requirements)
        {
            string at = $"/brief/requirements/{id}/tolerance";
            reading.Used(at, requirement.Tolerance);
            if (requirement.Tolerance is > 0 and var tolerance && !(tolerance >= tightest?.Tolerance)) tightest = (tolerance, at);
        }
        return tightest;
    }

    public static Finding Accuracy(PlannedSetting setting, double shift, (double Tolerance, string Pointer) tightest, ImmutableArray<string> inputs) =>
        new Judged(SettingRules.Accuracy, new(setting.Pointer), inputs, shift, Limit.AtMost(ShareOfTolerance * tightest.Tolerance, new(SourceKind.Cell, tightest.Pointer)), Assurance.Sampled);

    public static Finding Rounding(PlannedSetting setting, Reading reading)
    {
        string at = setting.Pointer + "/tolerance";
        reading.Used(at, setting.Stated.Tolerance);
        bool stated = setting.Stated.Tolerance is not null;
        double may = stated ? setting.Stated.Tolerance!.Value : ShareOfValue * setting.Span, off = Math.Abs(setting.Off);
        // What is not moved at all needs no room.
        double used = off == 0 ? 0 : off / may;
        return new Judged(
            SettingRules.Rounding, new(setting.Pointer), reading.Inputs, used, Limit.AtMost(1, stated ? new(SourceKind.Cell, at) : new(SourceKind.CommonPractice, "")), Assurance.Exact);
    }
}

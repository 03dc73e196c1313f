using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.BringUp;

/// <summary>What is measured, and so how.</summary>
public enum MeasuredLength
{
    /// <summary>Floor to the mounting plane of the robot.</summary>
    MountHeight,
    /// <summary>Between the joints of two carriages, or two shoulders, at the upper end of travel.</summary>
    ChainDistance,
    /// <summary>Ball centre to ball centre of one rod.</summary>
    RodLength,
    /// <summary>Floor to the place where the tool picks or places.</summary>
    StationHeight,
    /// <summary>First to last pocket of a tray along its columns.</summary>
    TrayAlongColumns,
    /// <summary>First to last pocket of a tray along its rows.</summary>
    TrayAlongRows,
}

/// <summary>A length to measure at the machine and the limits it is held against.</summary>
/// <param name="Id">Stable, from what is measured and where.</param>
/// <param name="Inputs">Fields the planned length comes from, sorted.</param>
/// <param name="Planned">The length as described, metres.</param>
/// <param name="Limit">Smallest and largest length accepted, metres, with their source.</param>
public sealed record Measuring(string Id, MeasuredLength What, Subject Subject, ImmutableArray<string> Inputs, double Planned, Limit Limit);

/// <summary>Holds a reading against the plan.</summary>
public static class MeasuringChecks
{
    public static Rule Measured { get; } = new(
        "bringup.measured", "The length measured at the machine lies within its tolerance of the plan", Trade.BringUp, "m", Sense.Within,
        ComfortBand: 0.1, new Source(SourceKind.FromMemory, "JCGM-106", "8.3"));

    /// <summary>
    /// Judges one reading. What can be told apart by reading to a step is uniform over that step, so its standard uncertainty is
    /// step/√12 (JCGM 100, 4.3.7, from memory); a reading too coarse for its tolerance is then tight, never holds.
    /// </summary>
    /// <param name="value">The length read, metres.</param>
    /// <param name="step">Smallest step the reading tells apart, metres.</param>
    public static Judged Judge(Measuring measuring, double value, double step) =>
        new(Measured, measuring.Subject, measuring.Inputs, value, measuring.Limit, Assurance.Exact) { Uncertainty = step / Math.Sqrt(12) };
}

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

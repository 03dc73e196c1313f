using Trivet.Findings;

namespace Trivet.Procedures;

/// <summary>When a supply counts as measured dead: for the steps that ask for it and for the journal that hears it declared.</summary>
public static class MeasuredDead
{
    /// <summary>
    /// Volts either way, since the leads may be the wrong way round. Common practice, no source: far below any supply of motors, and above what a meter shows of nothing.
    /// The 60 V of IEC 60204-1, 6.2.4 are what a touch may find after the time of discharging; a supply of 48 V would pass for dead by them while it is on.
    /// </summary>
    public const double Volts = 5;

    public static AskedValue Ask { get; } = new("dead", "V", 0, Limit.Between(-Volts, Volts, new(SourceKind.CommonPractice, "")));
}

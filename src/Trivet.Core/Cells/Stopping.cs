using System.Collections.Immutable;

namespace Trivet.Cells;

/// <summary>How bad the harm is (ISO 13849-1, annex A): slight and usually reversible, or serious, usually irreversible, death included.</summary>
public enum RiskSeverity
{
    S1,
    S2,
}

/// <summary>How often or how long people are exposed: seldom to less often or for a short time; frequent to continuous or for a long time.</summary>
public enum RiskExposure
{
    F1,
    F2,
}

/// <summary>Whether people can avoid or limit the harm: possible under specific conditions; scarcely possible.</summary>
public enum RiskAvoidance
{
    P1,
    P2,
}

/// <summary>Performance level (ISO 13849-1), the lowest first.</summary>
public enum PerformanceLevel
{
    A,
    B,
    C,
    D,
    E,
}

/// <summary>Designated architecture (ISO 13849-1).</summary>
public enum SafetyCategory
{
    B,
    One,
    Two,
    Three,
    Four,
}

/// <summary>Categories of stop functions (IEC 60204-1): power removed at once; stopped under control, then power removed; stopped under control, power stays.</summary>
public enum StopCategory
{
    Zero,
    One,
    Two,
}

/// <summary>What a person estimates of a risk. A person estimates it, Trivet never does.</summary>
public sealed record RiskEstimate
{
    public RiskSeverity? Severity { get; init; }
    public RiskExposure? Exposure { get; init; }
    public RiskAvoidance? Avoidance { get; init; }
    /// <summary>What the estimate rests on.</summary>
    public string? Note { get; init; }
}

public enum SafetyKind
{
    EmergencyStop,
    GuardInterlock,
    /// <summary>A device that sees people come: a light curtain, a scanner.</summary>
    ProtectiveDevice,
    EnablingDevice,
    Muting,
    ModeSelection,
    /// <summary>Keeps the machine from starting while people are at work in it.</summary>
    UnexpectedStart,
    Other,
}

/// <summary>How the cell is brought to rest, and what becomes of what it carries.</summary>
public sealed record StopPlan
{
    public string? Note { get; init; }
    /// <summary>What the risk assessment allows the tool to sink at a stop, metres.</summary>
    public double? LargestSink { get; init; }
    /// <summary>The gripper keeps its part without air and control supply: a spring, or a check valve before cups that seal.</summary>
    public bool? GripHolds { get; init; }
    public ImmutableSortedDictionary<string, SafetyFunction> Functions { get; init; } = Keyed.Empty<SafetyFunction>();
}

/// <summary>One safety function.</summary>
public sealed record SafetyFunction : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    public SafetyKind? Kind { get; init; }
    /// <summary>What sets it off, in words.</summary>
    public string? Trigger { get; init; }
    /// <summary>Ids of guards or devices of the guarding that it watches, commas between.</summary>
    public string? Guards { get; init; }
    public ImmutableSortedDictionary<string, SafetyChannel> Channels { get; init; } = Keyed.Empty<SafetyChannel>();
    public RiskEstimate Risk { get; init; } = new();
    public PerformanceLevel? Level { get; init; }
    public SafetyCategory? Category { get; init; }
    /// <summary>Where level and category come from.</summary>
    public string? LevelSource { get; init; }
    /// <summary>Mean frequency of a dangerous failure, 1/s, and where it comes from.</summary>
    public double? FailureRate { get; init; }
    public string? FailureRateSource { get; init; }
    public StopCategory? StopCategory { get; init; }
    /// <summary>Category 1: from its trigger until everything stands, seconds.</summary>
    public double? RampTime { get; init; }
    /// <summary>Category 1: how long torque stays on at standstill before it is cut, so that brakes can close, seconds.</summary>
    public double? TorqueTime { get; init; }
    /// <summary>What it isolates, in words.</summary>
    public string? Isolates { get; init; }
    /// <summary>It takes compressed air away too.</summary>
    public bool? AirOff { get; init; }
    /// <summary>How it is reset, in words.</summary>
    public string? ResetBy { get; init; }
    /// <summary>The whole zone is seen from where it is reset.</summary>
    public bool? ResetSees { get; init; }
    /// <summary>The reset also starts motion.</summary>
    public bool? ResetStarts { get; init; }
}

/// <summary>One way by which a safety function hears of its trigger.</summary>
public sealed record SafetyChannel : IOrdered
{
    public int? Order { get; init; }
    public string? Name { get; init; }
    public string? Note { get; init; }
    /// <summary>Id of the signal; it ends at that signal's bank.</summary>
    public string? Signal { get; init; }
    /// <summary>Where it ends if no signal of the controller carries it: a relay, a safe input of the drives; in words.</summary>
    public string? Device { get; init; }
    /// <summary>That device is made for safety functions, and by which paper.</summary>
    public bool? Safety { get; init; }
    public string? Source { get; init; }
}

using Trivet.Cells;

namespace Trivet.Stopping;

/// <summary>Risk graph, bands and architectures of ISO 13849-1. A person estimates S, F and P; the graph only follows the way.</summary>
public static class RiskGraph
{
    /// <summary>Required performance level (annex A).</summary>
    public static PerformanceLevel Required(RiskSeverity severity, RiskExposure exposure, RiskAvoidance avoidance) =>
        (PerformanceLevel)(severity == RiskSeverity.S1
            ? (int)exposure + (int)avoidance
            : 2 + (int)exposure + (int)avoidance);

    /// <summary>Null while one of the three is not estimated.</summary>
    public static PerformanceLevel? Required(RiskEstimate risk) =>
        risk is { Severity: { } s, Exposure: { } f, Avoidance: { } p } ? Required(s, f, p) : null;

    /// <summary>Band of the mean frequency of a dangerous failure, 1/s: from the first up to below the second.</summary>
    public static (double From, double To) Band(PerformanceLevel level)
    {
        const double Hour = 3600;
        return level switch
        {
            PerformanceLevel.A => (1e-5 / Hour, 1e-4 / Hour),
            PerformanceLevel.B => (3e-6 / Hour, 1e-5 / Hour),
            PerformanceLevel.C => (1e-6 / Hour, 3e-6 / Hour),
            PerformanceLevel.D => (1e-7 / Hour, 1e-6 / Hour),
            _ => (1e-8 / Hour, 1e-7 / Hour),
        };
    }

    /// <summary>The highest level that a category can come to, with the best of parts and diagnosis (figure 5, from memory).</summary>
    public static PerformanceLevel Highest(SafetyCategory category) => category switch
    {
        SafetyCategory.B => PerformanceLevel.B,
        SafetyCategory.One => PerformanceLevel.C,
        SafetyCategory.Two => PerformanceLevel.D,
        _ => PerformanceLevel.E,
    };

    /// <summary>Channels that a category asks for (clause 6.2, from memory).</summary>
    public static int Channels(SafetyCategory category) => category >= SafetyCategory.Three ? 2 : 1;
}

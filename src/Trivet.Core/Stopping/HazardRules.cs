using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Stopping;

/// <summary>The rules by which the hazard register is judged. They look for what is forgotten or contradicts itself; none says more than tight, since only a person assesses a risk.</summary>
public static class HazardRules
{
    public static Rule Described { get; } = Of("hazard.described", "The hazard is described, estimated and owned", "clause 5");

    /// <summary>A hazard that the cell shows is in the register.</summary>
    public static Rule Registered { get; } = Of("hazard.registered", "What the cell shows is in the hazard register", "5.4");

    public static Rule Measure { get; } = Of("hazard.measure", "Something is done against the hazard", "clause 6");

    /// <summary>A measure that names a safety function names one that is there.</summary>
    public static Rule Function { get; } = Of("hazard.function", "The safety function of the measure exists", "6.3");

    /// <summary>Information for use stands alone only where it is said why.</summary>
    public static Rule Order { get; } = Of("hazard.order", "Design and safeguards come before information", "6.1");

    public static Rule Reduced { get; } = Of("hazard.reduced", "The measures reduce the risk", "6.1");

    public static Rule Proof { get; } = Of("hazard.proof", "It is said how the measures are proven", "clause 7");

    public static ImmutableArray<Rule> Rules { get; } = [Described, Registered, Measure, Function, Order, Reduced, Proof];

    private static Rule Of(string id, string title, string place) =>
        new(id, title, Trade.Electrical, "1", Sense.AtLeast, double.PositiveInfinity, new(SourceKind.FromMemory, "ISO-12100", place));
}

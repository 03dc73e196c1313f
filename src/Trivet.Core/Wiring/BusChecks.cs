using Trivet.Findings;

namespace Trivet.Wiring;

/// <summary>Holds the bus against what its bit rate allows.</summary>
internal static class BusChecks
{
    private const string At = "/cabinet/network";

    public static IEnumerable<Finding> Of(BusCase bus)
    {
        foreach (var wrong in bus.Wrong) yield return wrong;
        if (!bus.Capable) yield break;
        if (double.IsNaN(bus.LargestLength))
            yield return new Unjudged(WiringRules.BusLength, new(At), bus.Inputs, OpenReason.Failed, [], WiringReasons.TooFast);
        else
            yield return new Judged(WiringRules.BusLength, new(At), bus.Inputs, bus.Length, Limit.AtMost(bus.LargestLength, WiringRules.BusLength.Method), Assurance.Exact);
        yield return new Judged(WiringRules.Stub, new(At), bus.Inputs, bus.Stub, Limit.AtMost(bus.LargestStub, WiringRules.Stub.Method), Assurance.Exact);
        yield return new YesNo(WiringRules.Terminators, new(At), bus.Inputs, bus.Terminators == 2, [At + "/terminators"])
        {
            Advice = bus.Terminators == 2 ? [] : [new(At + "/terminators", bus.Terminators ?? double.NaN, 2, double.NaN)],
        };
        if (!bus.Traffic.IsEmpty && bus.Wrong.IsEmpty)
            yield return new Judged(WiringRules.Load, new(At), bus.Inputs, bus.Load, Limit.AtMost(bus.LargestLoad, new(SourceKind.Cell, At + "/largestLoad")), Assurance.Exact)
            {
                Beside = double.IsNaN(bus.ExactLoad) ? null : new("wiring.exact-load", bus.ExactLoad),
            };
    }
}

using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Wiring;

/// <summary>Holds each module's address against its class, its neighbours, its switches and the bus.</summary>
internal static class AddressChecks
{
    public static IEnumerable<Finding> Of(ImmutableArray<AddressedClass> classes, AddressRange legal)
    {
        var holders = classes.SelectMany(c => c.Modules.Where(m => m.Set is not null).Select(m => (c.Range, Address: m.Set!.Value, m.At)))
            .ToLookup(h => (h.Range, h.Address), h => h.At);
        foreach (var @class in classes)
        {
            foreach (var finding in Apart(@class, classes)) yield return finding;
            ImmutableArray<string> sameRange = [.. classes.Where(c => c.Range == @class.Range).SelectMany(c => c.Inputs), .. classes.Select(c => c.At + "/range")];
            var plan = @class.Plan;
            for (int i = 0; i < @class.Modules.Length; i++)
            {
                var module = @class.Modules[i];
                string field = module.At + "/address";
                if (module.Set is not { } address)
                {
                    yield return new Unjudged(WiringRules.InClass, new(module.At), @class.Inputs, OpenReason.Missing, [field]) { Advice = Advised(field, null, plan, i) };
                    continue;
                }
                ImmutableArray<string> others = [.. holders[(@class.Range, address)].Where(at => at != module.At).Select(at => at + "/address")];
                var advice = plan is { } p && p[i] != address ? Advised(field, address, plan, i) : [];
                var unique = Judge(WiringRules.Unique, module, @class, others.IsEmpty, [field, .. others], advice);
                // Whoever shares the range was looked at, also where nobody has the same.
                yield return unique with { Inputs = [.. unique.Inputs.Union(sameRange).Order(StringComparer.Ordinal)] };
                yield return Judge(WiringRules.Legal, module, @class, address >= legal.Lowest && address <= legal.Highest, [field, .. legal.Inputs], advice);
                // Kept by the plan that changes least: at its place. Where none can be made the block is too small, and what lies in it still fits.
                bool fits = plan is { } planned ? planned[i] == address : @class.Block.IndexOf(address) is not null;
                yield return Judge(WiringRules.InClass, module, @class, fits, [field, @class.At], advice);
                if (@class.Switches is { } switches)
                    yield return Judge(WiringRules.Switches, module, @class, switches.For(address) is not null, [field, @class.At + "/switches"], advice);
            }
        }
    }

    private static YesNo Judge(Rule rule, AddressedModule module, AddressedClass @class, bool good, ImmutableArray<string> evidence, ImmutableArray<Advice> advice) =>
        new(rule, new(module.At), @class.Inputs.Union(evidence).Order(StringComparer.Ordinal).ToImmutableArray(), good, evidence) { Advice = good ? [] : advice };

    private static ImmutableArray<Advice> Advised(string field, int? from, ImmutableArray<int>? plan, int i) =>
        plan is { } p ? [new(field, from ?? double.NaN, p[i], double.NaN)] : [];

    /// <summary>A class against those after it: whether they share an address, and whether it holds its modules at all.</summary>
    private static IEnumerable<Finding> Apart(AddressedClass @class, ImmutableArray<AddressedClass> classes)
    {
        ImmutableArray<string> shared = [.. classes.Where(o => o != @class && o.Range == @class.Range && Meet(o.Block, @class.Block)).Select(o => o.At)];
        bool enough = @class.Block.Count >= @class.Modules.Length;
        yield return new YesNo(WiringRules.Classes, new(@class.At), [.. classes.SelectMany(c => c.Inputs).Distinct().Order(StringComparer.Ordinal)],
            shared.IsEmpty && enough, enough ? [@class.At, .. shared] : [@class.At + "/last", .. @class.Modules.Select(m => m.At)]);
    }

    private static bool Meet(AddressBlock a, AddressBlock b)
    {
        for (int i = 0; i < a.Count; i++)
            if (b.IndexOf(a.At(i)) is not null) return true;
        return false;
    }
}

/// <summary>The addresses that the bus allows.</summary>
/// <param name="Inputs">Fields that say so.</param>
public sealed record AddressRange(int Lowest, int Highest, ImmutableArray<string> Inputs)
{
    /// <summary>CANopen: 1 to 127 (CiA 301, from memory), or what is stated; another bus: what is stated. Null while it is not.</summary>
    public static AddressRange? Read(Network network, Reading reading)
    {
        const string at = "/cabinet/network";
        bool can = reading.Need(network.Protocol, at + "/protocol", BusProtocol.Other) == BusProtocol.CanOpen;
        int lowest = can ? reading.Or(network.LowestAddress, at + "/lowestAddress", 1) : reading.Need(network.LowestAddress, at + "/lowestAddress", 0);
        int highest = can ? reading.Or(network.HighestAddress, at + "/highestAddress", 127) : reading.Need(network.HighestAddress, at + "/highestAddress", 0);
        return reading.Complete ? new(can ? Math.Max(1, lowest) : lowest, can ? Math.Min(127, highest) : highest, reading.Inputs) : null;
    }
}

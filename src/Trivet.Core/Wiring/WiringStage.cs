using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Wiring;

/// <summary>What the cabinet's addresses and bus have to say of a cell. Closed forms, so nothing is left to a task.</summary>
public static class WiringStage
{
    public static StagePlan Of(Cell cell)
    {
        var cabinet = cell.Cabinet;
        if (cabinet.Modules.IsEmpty) return new([], [new(WiringRules.Described, new("/cabinet"), WiringReasons.NoModules)], []);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        var depth = new Reading();
        bool asked = depth.Or(cell.Depth, "/depth", Depth.Quote) >= Depth.Build;

        Addresses();
        Bus();
        return new(findings.ToImmutable(), coverage.ToImmutable(), []);

        void Addresses()
        {
            foreach (var (id, module) in cabinet.Modules.InOrder())
                if (module.AddressClass is { } name && !cabinet.AddressClasses.ContainsKey(name))
                    Wrong($"/cabinet/modules/{id}/addressClass", WiringReasons.NoSuchClass.Naming([.. cabinet.AddressClasses.Keys.Select(c => $"/cabinet/addressClasses/{c}")]));
            foreach (var (id, c) in cabinet.AddressClasses.InOrder())
                if (c is { First: { } first, Last: { } last } && new AddressBlock(first, c.Stride ?? 1, last).Count == 0) Wrong($"/cabinet/addressClasses/{id}/last", WiringReasons.EmptyClass);
                else if (c.Positions is not (null or 10 or 16)) Wrong($"/cabinet/addressClasses/{id}/positions", WiringReasons.Positions);
            if (cabinet.AddressClasses.IsEmpty)
            {
                coverage.Add(new(WiringRules.InClass, new("/cabinet"), WiringReasons.NoClasses));
                return;
            }
            var (reading, range) = (new Reading(), new Reading());
            var classes = AddressInputs.Read(cell, reading);
            var legal = AddressRange.Read(cabinet.Network, range);
            Missing(reading, WiringRules.InClass);
            Missing(range, WiringRules.Legal);
            if (legal is not null) findings.AddRange(AddressChecks.Of(classes, legal));
        }

        void Bus()
        {
            var reading = new Reading();
            var bus = BusCase.Read(cell, reading);
            Missing(reading, WiringRules.BusLength);
            if (bus is null) return;
            findings.AddRange(BusChecks.Of(bus));
            if (!bus.Capable) coverage.Add(new(WiringRules.BusLength, new("/cabinet/network"), WiringReasons.OtherBus));
            else if (bus.Traffic.IsEmpty) coverage.Add(new(WiringRules.Load, new("/cabinet/network"), WiringReasons.NoMessages));
        }

        // Asked for once the cell is to be built; before that it waits.
        void Missing(Reading reading, Rule rule)
        {
            if (reading.Complete) return;
            if (asked) findings.Add(new Unjudged(rule, new("/cabinet"), [.. reading.Inputs.Append("/depth").Order(StringComparer.Ordinal)], OpenReason.Missing, reading.MissingFields));
            else coverage.Add(new(rule, new("/cabinet"), CommonReasons.NotAskedYet));
        }

        void Wrong(string pointer, Reason reason) => findings.Add(new Unjudged(WiringRules.Described, new(pointer), [pointer], OpenReason.Failed, [], reason));
    }
}

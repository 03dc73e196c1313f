using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Signals;

/// <summary>What inputs, outputs and travel switches have to say of a cell.</summary>
public static class SignalStage
{
    public static StagePlan Of(Cell cell)
    {
        var io = cell.Io;
        if (io.Signals.IsEmpty && io.Switches.IsEmpty && io.Nodes.IsEmpty) return new([], [new(SignalRules.Described, new("/io"), SignalReasons.NoSignals)], []);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        bool asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;
        findings.AddRange(Impossible(cell));

        var reading = new Reading();
        var channels = SignalInputs.Channels(cell, reading);
        if (asked) findings.AddRange(SignalChecks.Channels(cell, channels));
        else coverage.Add(new(SignalRules.Channel, new("/io"), CommonReasons.NotAskedYet));
        if (!reading.Complete)
        {
            if (asked) findings.Add(new Unjudged(SignalRules.Described, new("/io"), [.. reading.Inputs.Append("/depth").Order(StringComparer.Ordinal)], OpenReason.Missing, reading.MissingFields));
            else coverage.Add(new(SignalRules.Described, new("/io"), CommonReasons.NotAskedYet));
        }
        foreach (var (id, signal) in io.Signals.InOrder())
        {
            findings.AddRange(SignalChecks.Contact(cell, id));
            findings.AddRange(signal.Direction == SignalDirection.Output ? SignalChecks.Output(cell, id) : SignalChecks.Input(cell, id));
        }
        foreach (var (id, _) in io.Banks.InOrder())
            if (SignalChecks.Group(cell, id) is { } group) findings.Add(group);
        findings.AddRange(NodeChecks.Mapped(cell));
        foreach (var (id, _) in io.Nodes.InOrder()) findings.AddRange(NodeChecks.Of(cell, id));
        foreach (var (id, _) in io.Switches.InOrder()) findings.AddRange(SwitchChecks.Of(cell, id, asked, coverage.Add));
        return new(findings.ToImmutable(), coverage.ToImmutable(), []);
    }

    private static IEnumerable<Finding> Impossible(Cell cell)
    {
        foreach (var (id, bank) in cell.Io.Banks)
        {
            if (bank.Channels is not null && !SignalInputs.Possible(bank)) yield return Wrong($"/io/banks/{id}/channels", SignalReasons.NoChannels);
            if (bank.Module is { } module && !cell.Cabinet.Modules.ContainsKey(module))
                yield return Wrong($"/io/banks/{id}/module", SignalReasons.NoSuchModule.Naming([.. cell.Cabinet.Modules.Keys.Select(m => $"/cabinet/modules/{m}")]));
        }
        foreach (var (id, signal) in cell.Io.Signals)
        {
            if (signal.Bank is { } bank && !cell.Io.Banks.ContainsKey(bank)) yield return Wrong($"/io/signals/{id}/bank", SignalReasons.NoSuchBank.Naming([.. cell.Io.Banks.Keys.Select(b => $"/io/banks/{b}")]));
            if (signal.Cable is { } cable && !cell.Cables.ContainsKey(cable)) yield return Wrong($"/io/signals/{id}/cable", SignalReasons.NoSuchCable);
        }
        foreach (var (id, s) in cell.Io.Switches)
        {
            if (s.Signal is { } signal && !cell.Io.Signals.ContainsKey(signal)) yield return Wrong($"/io/switches/{id}/signal", SignalReasons.NoSuchSignal);
            if (s.Deceleration <= 0) yield return Wrong($"/io/switches/{id}/deceleration", SignalReasons.NotPositive);
            if (s.RatedDistance <= 0) yield return Wrong($"/io/switches/{id}/ratedDistance", SignalReasons.NotPositive);
            if (s.TargetFactor <= 0) yield return Wrong($"/io/switches/{id}/targetFactor", SignalReasons.NotPositive);
        }
    }

    private static Unjudged Wrong(string pointer, Reason reason) => new(SignalRules.Described, new(pointer), [pointer], OpenReason.Failed, [], reason);
}

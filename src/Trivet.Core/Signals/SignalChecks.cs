using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Conductors;
using Trivet.Findings;

namespace Trivet.Signals;

/// <summary>Holds signals against their channels.</summary>
internal static class SignalChecks
{
    /// <summary>24 V less 15 % (common practice of control supplies).</summary>
    public const double UsualLowest = 20.4;

    public static IEnumerable<Finding> Channels(Cell cell, ChannelCase channels)
    {
        var holders = channels.Signals.Where(s => cell.Io.Signals[s].Channel is not null).ToLookup(s => (cell.Io.Signals[s].Bank, cell.Io.Signals[s].Channel));
        foreach (string id in channels.Signals)
        {
            var signal = cell.Io.Signals[id];
            string at = $"/io/signals/{id}";
            var plan = channels.For(id);
            var bank = channels.Banks.FirstOrDefault(b => b.Id == signal.Bank);
            // Advice is a number, so it can be given where the bank stays.
            ImmutableArray<Advice> advice = plan is { } p && p.Bank == signal.Bank && p.Channel != signal.Channel ? [new(at + "/channel", signal.Channel ?? double.NaN, p.Channel, double.NaN)] : [];
            if (signal.Bank is null || signal.Channel is null)
            {
                ImmutableArray<string> missing = [.. new[] { (signal.Bank is null, at + "/bank"), (signal.Channel is null, at + "/channel") }.Where(m => m.Item1).Select(m => m.Item2)];
                yield return new Unjudged(SignalRules.Channel, new(at), channels.Inputs, OpenReason.Missing, missing) { Advice = advice };
                continue;
            }
            ImmutableArray<string> others = [.. holders[(signal.Bank, signal.Channel)].Where(o => o != id).Select(o => $"/io/signals/{o}/channel")];
            bool within = bank is not null && signal.Channel >= bank.First && signal.Channel < bank.First + bank.Channels;
            bool good = within && bank!.Direction == signal.Direction && others.IsEmpty;
            ImmutableArray<string> evidence = good ? [at + "/channel"] : bank is null ? [at + "/bank"] : bank.Direction != signal.Direction ? [at + "/direction", bank.At + "/direction"] : [at + "/channel", .. others];
            yield return new YesNo(SignalRules.Channel, new(at), channels.Inputs, good, evidence) { Advice = good ? [] : advice };
        }
    }

    public static IEnumerable<Finding> Input(Cell cell, string id)
    {
        var signal = cell.Io.Signals[id];
        string at = $"/io/signals/{id}";
        if (signal.Bank is not { } name || !cell.Io.Banks.TryGetValue(name, out var bank)) yield break;
        string of = $"/io/banks/{name}";
        if (signal.Switching is { } sensor && bank.Switching is { } input)
            yield return Yes(SignalRules.Switching, at, sensor == input, [at + "/switching", of + "/switching"], [at + "/bank", at + "/direction", at + "/switching", of + "/switching"]);
        if (bank.InputType is not { } type) yield break;
        var levels = InputLevels.Of(type);
        var source = new Source(SourceKind.FromMemory, "IEC-61131-2", type == InputType.Type1 ? "type 1" : "type 3");
        if (signal.SensorDrop is { } drop)
        {
            var reading = new Reading();
            reading.Used(at + "/bank", name);
            reading.Used(at + "/direction", signal.Direction);
            reading.Used(of + "/inputType", type);
            reading.Used(at + "/sensorDrop", drop);
            double lowest = reading.Or(cell.Io.LowestVoltage, "/io/lowestVoltage", UsualLowest);
            reading.Used(at + "/cable", signal.Cable);
            double wire = 0;
            if (signal.Cable is { } cable && cell.Cables.TryGetValue(cable, out var c))
            {
                double area = reading.Or(c.CoreArea, $"/cables/{cable}/coreArea", double.NaN), length = reading.Or(c.Length, $"/cables/{cable}/length", double.NaN);
                wire = Copper.Drop(area, length, levels.OnCurrent);
                if (double.IsNaN(wire)) wire = 0;
            }
            yield return new Judged(SignalRules.OnLevel, new(at), reading.Inputs, lowest - drop - wire, Limit.AtLeast(levels.OnFrom, source), Assurance.Exact);
        }
        if (signal.OffCurrent is { } off)
            yield return new Judged(SignalRules.OffCurrent, new(at), [at + "/bank", at + "/direction", at + "/offCurrent", of + "/inputType"], off, Limit.AtMost(levels.OffCurrent, source), Assurance.Exact);
    }

    /// <summary>A stop must also happen when its wire breaks: only a contact that opens tells that.</summary>
    public static IEnumerable<Finding> Contact(Cell cell, string id)
    {
        var signal = cell.Io.Signals[id];
        string at = $"/io/signals/{id}";
        if (signal.Direction != SignalDirection.Input) yield break;
        if (signal.Stops == true)
        {
            ImmutableArray<string> used = [at + "/contact", at + "/direction", at + "/stops"];
            yield return signal.Contact is { } contact
                ? new YesNo(SignalRules.BrokenWire, new(at), used, contact == ContactKind.NormallyClosed, [at + "/contact"])
                : new Unjudged(SignalRules.BrokenWire, new(at), used, OpenReason.Missing, [at + "/contact"]);
        }
        if (signal.Contact is { } kind && signal.OnAtRest is { } rest && signal.OnWhenActed is { } acted)
        {
            bool closed = kind == ContactKind.NormallyClosed;
            yield return Yes(SignalRules.Rest, at, rest == closed && acted == !closed, [at + "/onAtRest", at + "/onWhenActed"], [at + "/contact", at + "/direction", at + "/onAtRest", at + "/onWhenActed"]);
        }
    }

    public static IEnumerable<Finding> Output(Cell cell, string id)
    {
        var signal = cell.Io.Signals[id];
        string at = $"/io/signals/{id}";
        if (signal.SafeOn is { } on) yield return Yes(SignalRules.SafeState, at, !on, [at + "/safeOn"], [at + "/direction", at + "/safeOn"]);
        if (signal.Bank is not { } name || !cell.Io.Banks.TryGetValue(name, out var bank)) yield break;
        string of = $"/io/banks/{name}";
        if (signal.Load is { } load && bank.ChannelCurrent is { } most)
            yield return new Judged(SignalRules.Load, new(at), [at + "/bank", at + "/direction", at + "/load", of + "/channelCurrent"], load, Limit.AtMost(most, new(SourceKind.Cell, of + "/channelCurrent")), Assurance.Exact);
        if (signal.Inrush is { } inrush && bank.ChannelInrush is { } peak)
            yield return new Judged(SignalRules.Inrush, new(at), [at + "/bank", at + "/direction", at + "/inrush", of + "/channelInrush"], inrush, Limit.AtMost(peak, new(SourceKind.Cell, of + "/channelInrush")), Assurance.Exact);
        if (signal.Inductive == true)
        {
            bool good = signal.Suppressed == true || bank.Suppresses == true;
            yield return Yes(SignalRules.Suppression, at, good, [at + "/suppressed", of + "/suppresses"], [at + "/bank", at + "/direction", at + "/inductive", at + "/suppressed", of + "/suppresses"]);
        }
    }

    /// <summary>All loads of a bank at once.</summary>
    public static Finding? Group(Cell cell, string id)
    {
        var bank = cell.Io.Banks[id];
        string at = $"/io/banks/{id}";
        if (bank.GroupCurrent is not { } most) return null;
        var reading = new Reading();
        reading.Used(at + "/groupCurrent", most);
        reading.Used("/io/signals", string.Join('\n', cell.Io.Signals.Keys));
        double sum = 0;
        foreach (var (signal, s) in cell.Io.Signals)
        {
            string on = $"/io/signals/{signal}";
            reading.Used(on + "/bank", s.Bank);
            reading.Used(on + "/direction", s.Direction);
            if (s.Bank != id || s.Direction != SignalDirection.Output) continue;
            sum += reading.Or(s.Load, on + "/load", 0);
        }
        return new Judged(SignalRules.Group, new(at), reading.Inputs, sum, Limit.AtMost(most, new(SourceKind.Cell, at + "/groupCurrent")), Assurance.Exact);
    }

    private static YesNo Yes(Rule rule, string at, bool good, ImmutableArray<string> evidence, ImmutableArray<string> inputs) => new(rule, new(at), inputs, good, evidence);
}

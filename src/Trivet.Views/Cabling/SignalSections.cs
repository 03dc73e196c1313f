using System.Collections.Immutable;
using System.Globalization;
using Trivet.Cells;
using Trivet.Signals;
using Trivet.Views.Cabinets;
using Trivet.Views.Words;

namespace Trivet.Views.Cabling;

/// <summary>Inputs, outputs, terminals and travel switches in finished texts.</summary>
public static class SignalSections
{
    public static ImmutableArray<Section> Of(Cell cell, Locale? locale = null)
    {
        var writer = new Writer(cell, locale);
        var section = new Section(
            "signals", writer.Words.Signals, writer.Words.SignalCautions, [], [writer.Signals(), writer.Terminals(), writer.Switches()], [.. SignalRules.Rules.Select(r => r.Id)]);
        return section.IsEmpty ? [] : [section];
    }

    /// <summary>The cell with every signal on the channel of the plan, and how many that changes.</summary>
    public static (Cell Cell, int Changes) AsPlanned(Cell cell)
    {
        var channels = SignalInputs.Channels(cell, new());
        int changes = 0;
        foreach (string id in channels.Signals)
        {
            var signal = cell.Io.Signals[id];
            if (channels.For(id) is not { } plan || (plan.Bank, (int?)plan.Channel) == (signal.Bank, signal.Channel)) continue;
            changes++;
            cell = cell with { Io = cell.Io with { Signals = cell.Io.Signals.SetItem(id, signal with { Bank = plan.Bank, Channel = plan.Channel }) } };
        }
        return (cell, changes);
    }

    private sealed class Writer(Cell cell, Locale? locale)
    {
        private readonly ChannelCase _channels = SignalInputs.Channels(cell, new());

        public CablingWords Words { get; } = (locale ?? Locale.English).Language.Cabling;

        public SheetTable Signals()
        {
            var signals = cell.Io.Signals.InOrder().ToArray();
            return new(
                "signals", Words.Signals,
                [
                    new("name", Words.HeadSignal), new("direction", Words.HeadDirection), new("device", Words.HeadDevice), new("cable", Words.HeadCable), new("terminal", Words.HeadTerminal),
                    new("planned", Words.HeadPlanned), new("switching", Words.HeadSwitching), new("contact", Words.HeadContactKind), new("atRest", Words.HeadRest), new("acted", Words.HeadActed),
                    new("safeState", Words.HeadSafe), new("load", Words.HeadLoad, "A"), new("filter", Words.HeadFilter, "s"), new("object", Words.HeadObject),
                ],
                [
                    .. signals.Select(s =>
                    {
                        var v = s.Value;
                        var plan = _channels.For(s.Key);
                        return ImmutableArray.Create<Entry>(
                            new(v.Name ?? s.Key), new(v.Direction is { } d ? Words.Directions[(int)d] : "–"), new(CableSections.PlaceOf(cell, v.Device)),
                            new(v.Cable is { } cable ? cell.Cables.ContainsKey(cable) ? CableSections.LabelOf(cell, cable) : cable : "–"), new(Terminal(v.Bank, v.Channel)),
                            new(plan is { } p ? Terminal(p.Bank, p.Channel) : "–"), new(v.Switching is { } w ? w == Switching.Pnp ? "PNP" : "NPN" : "–"),
                            new(v.Contact is { } contact ? Words.Contacts[(int)contact] : "–"), State(v.OnAtRest), State(v.OnWhenActed), State(v.SafeOn),
                            v.Load is { } load ? new(Numbers.Quantity(load, "A", locale), load) : new("–"),
                            v.FilterTime is { } filter ? new($"{Numbers.Plain(filter * 1000, 2, locale)} ms", filter) : new("–"), new(ObjectOf(v)));
                    }),
                ],
                [.. signals.Select(s => $"/io/signals/{s.Key}")]);
        }

        /// <summary>Every channel of every bank, also those that are free.</summary>
        public SheetTable Terminals()
        {
            var rows = ImmutableArray.CreateBuilder<ImmutableArray<Entry>>();
            var pointers = ImmutableArray.CreateBuilder<string>();
            var held = cell.Io.Signals.InOrder().ToLookup(s => (s.Value.Bank, s.Value.Channel), s => s.Key);
            foreach (var bank in _channels.Banks)
                for (int i = 0; i < Math.Min(bank.Channels, 512); i++)
                {
                    string[] here = [.. held[(bank.Id, bank.First + i)]];
                    string? module = cell.Io.Banks[bank.Id].Module;
                    rows.Add(
                    [
                        new(Terminal(bank.Id, bank.First + i)), new(CableSections.PlaceOf(cell, module)), new(Words.Directions[(int)bank.Direction]),
                        new(here.Length == 0 ? Words.Free : string.Join(", ", here.Select(s => cell.Io.Signals[s].Name ?? s))),
                        new(here.Length == 0 ? "–" : string.Join(", ", here.Select(s => cell.Io.Signals[s].Cable).OfType<string>().Select(c => cell.Cables.ContainsKey(c) ? CableSections.LabelOf(cell, c) : c))),
                    ]);
                    pointers.Add(here.Length == 1 ? $"/io/signals/{here[0]}" : bank.At);
                }
            return new(
                "terminals", Words.Terminals,
                [new("terminal", Words.HeadTerminal), new("module", Words.HeadModule), new("direction", Words.HeadDirection), new("signal", Words.HeadSignal), new("cable", Words.HeadCable)],
                rows.ToImmutable(), pointers.ToImmutable());
        }

        public SheetTable Switches()
        {
            var switches = cell.Io.Switches.InOrder().ToArray();
            return new(
                "switches", Words.Switches,
                [new("name", Words.HeadName), new("axis", Words.HeadAxis), new("at", Words.HeadAt), new("toStop", Words.HeadStop), new("needed", Words.HeadStopNeeded), new("best", Words.HeadBest)],
                [
                    .. switches.Select(s =>
                    {
                        var v = s.Value;
                        string unit = v.Axis == "linear" || v.Axis != "rotary" && cell.Robot.Family != RobotFamily.CrankDelta ? "m" : "rad";
                        double nan = double.NaN, at = v.At ?? nan, hard = v.HardStop ?? nan;
                        var stop = TravelStop.Of(v.HomingSpeed ?? nan, v.Deceleration ?? nan, v.Delay ?? nan, v.Hysteresis ?? 0, v.Tolerance ?? 0);
                        double end = SwitchTravel.End(cell, v.Axis, hard > at, new()) ?? nan;
                        return ImmutableArray.Create<Entry>(
                            new(v.Name ?? s.Key), new(v.Axis is { } axis ? Fields.Axis(cell, axis, (locale ?? Locale.English).Language) : "–"), Q(at), Q(Math.Abs(hard - at)), Q(stop.Needed), Q(stop.Place(end, hard)));

                        Entry Q(double x) => double.IsFinite(x) ? new(Numbers.Quantity(x, unit, locale), x) : new("–");
                    }),
                ],
                [.. switches.Select(s => $"/io/switches/{s.Key}")]);
        }

        private string Terminal(string? bank, int? channel)
        {
            if (bank is null || channel is not { } n) return "–";
            string name = cell.Io.Banks.TryGetValue(bank, out var b) ? b.Terminal ?? bank + " " : bank + " ";
            return name + n.ToString(CultureInfo.InvariantCulture);
        }

        /// <summary>Index, sub-index and bit: 6000h/1.3.</summary>
        private static string ObjectOf(Signal s) => s.ObjectIndex is not { } index ? "–"
            : string.Create(CultureInfo.InvariantCulture, $"{index:X4}h/{s.SubIndex ?? 0}") + (s.Bit is { } bit ? string.Create(CultureInfo.InvariantCulture, $".{bit}") : "");

        private Entry State(bool? on) => new(on is { } v ? v ? Words.On : Words.Off : "–");
    }
}

using System.Collections.Immutable;
using Trivet.Cabinets;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Views.Words;
using Trivet.Wiring;

namespace Trivet.Views.Wiring;

/// <summary>A module along the rail in finished texts.</summary>
/// <param name="Place">Along the rail, as planned.</param>
/// <param name="PlaceNow">Along the rail, as stated.</param>
/// <param name="Gap">Free width that it keeps to the module on its left, metres.</param>
/// <param name="Address">The address stated; null where none is.</param>
/// <param name="Planned">The address of the plan that changes least; null where it has none to have, or the class is too small.</param>
/// <param name="SetBy">What its switches must read for the planned address; empty where nothing is to be set.</param>
/// <param name="Digits">The same as single digits or levers, in reading order; empty for software.</param>
/// <param name="LeversUp">For levers: which are on; empty otherwise.</param>
/// <param name="Verdict">What is to be done: keep, or change to which; empty for a module without class.</param>
public sealed record WiringRow(
    string Id, int Place, int PlaceNow, string Name, string Role, double Width, double Gap, int? Address, int? Planned, string SetBy, ImmutableArray<string> Digits, ImmutableArray<bool> LeversUp, string Verdict)
{
    public bool Changes => Planned is { } planned && planned != Address;

    public bool Moves => Place != PlaceNow;
}

/// <summary>A repeated message, and what a node says when it starts.</summary>
public sealed record TrafficRow(BusTraffic Of, string Identifier, string Name, string From, string Cause, string Period, string Exact, string Load);

public sealed record StartUpRow(StartUpMessage Of, string Module, string Identifier, string Cause, string BusTime);

/// <summary>A line of the bus: what, and how much of it.</summary>
public sealed record BusLine(string What, string Value);

/// <summary>The cabinet in finished texts: modules in order, the plan of addresses, the bus.</summary>
/// <param name="ChangesWords">How many addresses are to be set anew, in words.</param>
/// <param name="Waits">Why something is left out; empty otherwise.</param>
public sealed record WiringSheet(
    Cell Cell, string Title, ImmutableArray<WiringRow> Modules, ImmutableArray<BusLine> Bus, ImmutableArray<TrafficRow> Traffic, ImmutableArray<StartUpRow> StartUp,
    string ChangesWords, ImmutableArray<string> Waits)
{
    public int Changes => Modules.Count(m => m.Changes);

    public bool Moves => Modules.Any(m => m.Moves);

    /// <summary>The cell with every module in its place and every address as planned.</summary>
    public Cell AsPlanned()
    {
        var ordered = RailCase.AsPlanned(Cell);
        return ordered with
        {
            Cabinet = ordered.Cabinet with
            {
                Modules = Modules.Where(m => m.Changes).Aggregate(ordered.Cabinet.Modules, (all, m) => all.SetItem(m.Id, all[m.Id] with { Address = m.Planned })),
            },
        };
    }

    /// <summary>Modules in the nearest order that their rules allow, and their addresses along it.</summary>
    public static WiringSheet Of(Cell stated, Locale? locale = null)
    {
        var cell = RailCase.AsPlanned(stated);
        var rail = RailCase.Read(cell, new());
        string[] now = [.. stated.Cabinet.Modules.InOrder().Select(m => m.Key)];
        var language = (locale ?? Locale.English).Language;
        var words = language.Wiring;
        var (reading, busReading) = (new Reading(), new Reading());
        var classes = AddressInputs.Read(cell, reading);
        var planned = classes.SelectMany(c => c.Modules.Select((m, i) => (m.Id, Class: c, Address: c.Plan is { } p ? p[i] : (int?)null))).ToDictionary(m => m.Id);
        // What is to be heard follows the plan.
        var addressed = cell with
        {
            Cabinet = cell.Cabinet with { Modules = planned.Where(m => m.Value.Address is not null).Aggregate(cell.Cabinet.Modules, (all, m) => all.SetItem(m.Key, all[m.Key] with { Address = m.Value.Address })) },
        };
        var bus = BusCase.Read(addressed, busReading);
        var missing = reading.MissingFields.Union(busReading.MissingFields).ToArray();
        ImmutableArray<WiringRow> rows = [.. cell.Cabinet.Modules.InOrder().Select((m, i) => Row(m.Key, m.Value, i))];
        int changes = rows.Count(r => r.Changes);
        return new(
            stated, cell.Name ?? language.UnnamedCell, rows, Lines(), Messages(), Starts(),
            changes == 0 ? words.NoChanges : Locale.Fill(words.Changes, ("count", Text(changes))),
            cell.Cabinet.Modules.IsEmpty ? [words.NoModules]
            : missing.Length > 0 ? [Locale.Fill(words.Waits, ("fields", Fields.List(missing.Select(p => Fields.Words(cell, p, locale)), locale)))] : []);

        WiringRow Row(string id, Module module, int i)
        {
            bool has = planned.TryGetValue(id, out var plan);
            int? address = has ? plan.Address : null;
            var digits = address is { } a && plan.Class.Switches is { } switches ? switches.For(a) : null;
            ImmutableArray<string> shown = digits is not { } d ? []
                : plan.Class.Switches!.Levers ? [.. d.Select(on => on == 1 ? words.LeverOn : words.LeverOff)] : [.. d.Select(v => v.ToString("X", System.Globalization.CultureInfo.InvariantCulture))];
            string set = address is null ? ""
                : plan.Class.Switches is not { } by ? words.SetBy[(int)AddressSetting.Software]
                : digits is null ? words.NotOnSwitches
                : by.Levers ? Locale.Fill(words.SetBy[(int)AddressSetting.DipSwitches], ("levers", string.Join(' ', shown)))
                : Locale.Fill(words.SetBy[(int)AddressSetting.RotarySwitches], ("digits", string.Join(' ', shown)));
            string verdict = !has ? "" : address is null ? words.NoRoom : address == module.Address ? words.Keep : Locale.Fill(words.Change, ("address", Text(address.Value)));
            double gap = i > 0 ? rail.Gap(rail.Modules[i - 1], rail.Modules[i]) : 0;
            return new(id, i + 1, Array.IndexOf(now, id) + 1, module.Name ?? id, module.Role ?? "", module.Width ?? double.NaN, gap, module.Address, address, set, shown, digits is { } l && plan.Class.Switches!.Levers ? [.. l.Select(on => on == 1)] : [], verdict);
        }

        ImmutableArray<BusLine> Lines()
        {
            if (bus is not { Capable: true }) return [];
            var lines = ImmutableArray.CreateBuilder<BusLine>();
            lines.Add(new(words.BitRate, $"{Numbers.Plain(bus.BitRate / 1000, 0, locale)} kbit/s"));
            lines.Add(new(words.Length, Locale.Fill(words.LengthOf, ("length", Metres(bus.Length)), ("limit", Metres(bus.LargestLength)))));
            string ohms = bus.Terminators is > 0 and { } n ? Numbers.Quantity(BusCase.Ohms(n), "Ω", locale) : "∞ Ω";
            lines.Add(new(words.Ohms, $"{Locale.Fill(words.OhmsOf, ("ohms", ohms), ("fitted", Text(bus.Terminators ?? 0)))}; {words.OhmsRight}"));
            if (!bus.Traffic.IsEmpty)
            {
                lines.Add(new(words.Load, Locale.Fill(words.LoadOf, ("load", Numbers.Percent(bus.Load, locale)), ("limit", Numbers.Percent(bus.LargestLoad, locale)))));
                if (!double.IsNaN(bus.ExactLoad)) lines.Add(new(words.ExactLoad, Numbers.Percent(bus.ExactLoad, locale)));
            }
            return lines.ToImmutable();
        }

        string Metres(double metres) => $"{Numbers.Plain(metres, 1, locale)} m";

        ImmutableArray<TrafficRow> Messages() => bus is not { Capable: true } ? [] :
        [
            .. bus.Traffic.Select(t => new TrafficRow(
                t, t.Identifier is { } known ? $"{known:X3}h" : "–", cell.Cabinet.Network.Messages[t.Id].Name ?? t.Id, t.From.Length > 0 ? NameOf(t.From) : "–", t.Cause.Length > 0 ? t.Cause : "–",
                $"{Numbers.Plain(t.Period * 1000, 1, locale)} ms", t.ExactBits is { } bits ? Text(bits) : "–", Numbers.Percent(t.Load(bus.BitRate), locale))),
        ];

        ImmutableArray<StartUpRow> Starts() => bus is not { Capable: true } ? [] :
        [
            .. cell.Cabinet.Modules.InOrder().Where(m => planned.TryGetValue(m.Key, out var p) && p.Address is >= 1 and <= 127)
                .Select(m => StartUpMessage.Of(m.Key, planned[m.Key].Address!.Value))
                .Select(s => new StartUpRow(s, NameOf(s.Module), $"{s.Identifier:X3}h", words.StartUpCause, $"{Numbers.Plain(s.Bits / bus.BitRate * 1e6, 0, locale)} µs")),
        ];

        string NameOf(string module) => cell.Cabinet.Modules.GetValueOrDefault(module)?.Name ?? module;

        static string Text(int value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }
}

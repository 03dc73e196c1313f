using System.Collections.Immutable;
using System.Globalization;
using Trivet.Cabling;
using Trivet.Cells;
using Trivet.Conductors;
using Trivet.Findings;
using Trivet.Views.Cabinets;
using Trivet.Views.Words;

namespace Trivet.Views.Cabling;

/// <summary>Cables, their ways and their connectors in finished texts, in order of installation.</summary>
public static class CableSections
{
    public static ImmutableArray<Section> Of(Cell cell, Locale? locale = null)
    {
        var writer = new Writer(cell, locale);
        var section = new Section(
            "cables", writer.Words.Cables, writer.Words.CableCautions, [], [writer.Cables(), writer.Installation(), writer.Ways(), writer.Connectors(), writer.Swaps()], [.. CablingRules.Rules.Select(r => r.Id)]);
        return section.IsEmpty ? [] : [section];
    }

    /// <summary>Text on both ends of a cable.</summary>
    public static string LabelOf(Cell cell, string cable) => cell.Cables[cable].Label is { Length: > 0 } label ? label : cable;

    /// <summary>What an end leads to: the name of the module or the device, or the words that stand there.</summary>
    public static string PlaceOf(Cell cell, string? place) => place is null ? "–"
        : cell.Cabinet.Modules.TryGetValue(place, out var module) ? module.Name ?? place
        : cell.Cabling.Devices.TryGetValue(place, out var device) ? device.Name ?? place : place;

    /// <summary>For each cable the labels of those whose plugs fit its sockets and that it must not be swapped with.</summary>
    public static ImmutableDictionary<string, ImmutableArray<string>> NotWith(Cell cell)
    {
        var all = new Dictionary<string, SortedSet<string>>(StringComparer.Ordinal);
        foreach (var group in SwapGroups.Of(cell, new()))
            foreach (var a in group.Ends)
                foreach (var b in group.Ends)
                    if (a.Cable != b.Cable) (all.TryGetValue(a.Cable, out var set) ? set : all[a.Cable] = new(StringComparer.Ordinal)).Add(LabelOf(cell, b.Cable));
        return all.ToImmutableDictionary(e => e.Key, e => e.Value.ToImmutableArray());
    }

    private sealed class Writer(Cell cell, Locale? locale)
    {
        private readonly ImmutableDictionary<string, Way> _ways =
            cell.Cabling.Ways.Keys.Select(w => WayInputs.Read(cell, w, new())).OfType<Way>().ToImmutableDictionary(w => w.Id);

        private RailPlaces? _rail;

        public CablingWords Words { get; } = (locale ?? Locale.English).Language.Cabling;

        public SheetTable Cables()
        {
            var cables = cell.Cables.InOrder().ToArray();
            return new(
                "cables", Words.Cables,
                [
                    new("label", Words.HeadLabel), new("name", Words.HeadName), new("kind", Words.HeadKind), new("axis", Words.HeadAxis), new("from", Words.HeadFrom), new("to", Words.HeadTo),
                    new("type", Words.HeadType), new("shield", Words.HeadShield), new("length", Words.HeadLength, "m"), new("needed", Words.HeadNeeded, "m"), new("drop", Words.HeadDrop, "V"),
                    new("route", Words.HeadRoute), new("mark", Words.HeadMark),
                ],
                [.. cables.Select(c => Row(c.Key, c.Value))], [.. cables.Select(c => $"/cables/{c.Key}")]);
        }

        /// <summary>To be filled in beside the work: what is not known yet is left blank.</summary>
        public SheetTable Installation()
        {
            var cables = cell.Cables.InOrder().ToArray();
            return new(
                "installation", Words.Installation,
                [
                    new("label", Words.HeadLabel), new("name", Words.HeadName), new("length", Words.HeadLength, "m"), new("cutLength", Words.HeadCut, "m"), new("fittedLength", Words.HeadFitted, "m"),
                    new("installedBy", Words.HeadInstalledBy), new("installedOn", Words.HeadInstalledOn),
                ],
                [
                    .. cables.Select(c => ImmutableArray.Create<Entry>(
                        new(LabelOf(cell, c.Key)), new(c.Value.Name ?? c.Key), Metres(c.Value.Length ?? double.NaN), Blank(c.Value.CutLength), Blank(c.Value.FittedLength),
                        new(c.Value.InstalledBy ?? ""), new(c.Value.InstalledOn ?? ""))),
                ],
                [.. cables.Select(c => $"/cables/{c.Key}")]);

            Entry Blank(double? metres) => metres is { } m ? Metres(m) : new("");
        }

        private ImmutableArray<Entry> Row(string id, Cable c)
        {
            var (route, why) = CableRoute.Of(cell, id, w => _ways.GetValueOrDefault(w), new());
            double needed = (why == NoRoute.WithinCabinet ? (_rail ??= RailPlaces.Read(cell)).Between(cell, id, new()) : route)?.Needed ?? double.NaN;
            double drop = c is { Current: { } current, CoreArea: { } area, Length: { } length } ? Copper.Drop(area, length, current) : double.NaN;
            string shield = c.Shielded != true ? "–" : (c.FromEnd.Bonded, c.ToEnd.Bonded) switch
            {
                (true, true) => Words.Both,
                (true, _) => Place(c.From),
                (_, true) => Place(c.To),
                _ => Words.None,
            };
            return
            [
                new(LabelOf(cell, id)), new(c.Name ?? id), new(c.Kind is { } kind ? Words.Kinds[(int)kind] : "–"), new(c.Axis is { } axis ? Fields.Axis(cell, axis, (locale ?? Locale.English).Language) : "–"),
                new(Place(c.From)), new(Place(c.To)), new(c.Type ?? "–"), new(shield), Metres(c.Length ?? double.NaN), Metres(needed), Volts(drop),
                new(c.Route is null ? "–" : string.Join(", ", WayInputs.Ids(c.Route))), new(c.Mark ?? "–"),
            ];
        }

        public SheetTable Ways()
        {
            var laid = cell.Cables.InOrder().SelectMany(c => WayInputs.Ids(c.Value.Route).Distinct().Select(w => (Way: w, c.Key))).ToLookup(p => p.Way, p => p.Key);
            var ways = cell.Cabling.Ways.InOrder().ToArray();
            return new(
                "ways", Words.Ways,
                [new("way", Words.HeadWay), new("name", Words.HeadName), new("kind", Words.HeadKind), new("length", Words.HeadLength, "m"), new("fill", Words.HeadFill, "1"), new("bendRadius", Words.HeadBend, "m"), new("holds", Words.HeadHolds)],
                [
                    .. ways.Select(w =>
                    {
                        double length = _ways.TryGetValue(w.Key, out var read) ? read.Kind switch { CableWayKind.Duct => read.Line.Length, CableWayKind.EnergyChain => read.InChain, _ => read.Hanging } : double.NaN;
                        double area = laid[w.Key].Sum(c => cell.Cables[c].Diameter is { } d ? Math.PI / 4 * d * d : double.NaN), fill = area / (w.Value.Width * w.Value.Height) ?? double.NaN;
                        return ImmutableArray.Create<Entry>(
                            new(w.Key), new(w.Value.Name ?? "–"), new(Words.WayKinds[(int)(w.Value.Kind ?? CableWayKind.Duct)]), Metres(length), new(Numbers.Percent(fill, locale), fill),
                            w.Value.BendRadius is { } r ? new(Numbers.Quantity(r, "m", locale), r) : new("–"), new(string.Join(", ", laid[w.Key].Select(c => LabelOf(cell, c)))));
                    }),
                ],
                [.. ways.Select(w => $"/cabling/ways/{w.Key}")]);
        }

        public SheetTable Connectors()
        {
            var rows = ImmutableArray.CreateBuilder<ImmutableArray<Entry>>();
            var pointers = ImmutableArray.CreateBuilder<string>();
            foreach (var (id, c) in cell.Cables.InOrder())
                foreach (bool from in (ReadOnlySpan<bool>)[true, false])
                {
                    var (end, place, far) = from ? (c.FromEnd, c.From, c.ToEnd) : (c.ToEnd, c.To, c.FromEnd);
                    string connector = string.Join(' ', new[] { end.Connector, end.Coding, end.Gender is { } g ? Words.Genders[(int)g] : null, end.Contacts?.ToString(CultureInfo.InvariantCulture) }.OfType<string>());
                    if (connector.Length == 0 && c.Cores.IsEmpty) continue;
                    var cores = c.Cores.InOrder().Select(k => k.Value).DefaultIfEmpty(new()).ToArray();
                    foreach (var core in cores)
                    {
                        rows.Add(
                        [
                            new(LabelOf(cell, id)), new(Place(place)), new(end.Socket ?? "–"), new(connector.Length > 0 ? connector : "–"), new((from ? core.FromPin : core.ToPin) ?? "–"), new(core.Colour ?? "–"),
                            new(core.Function ?? "–"), new((from ? core.ToPin : core.FromPin) ?? "–"),
                        ]);
                        pointers.Add($"/cables/{id}");
                    }
                }
            return new(
                "connectors", Words.Connectors,
                [
                    new("label", Words.HeadLabel), new("at", Words.HeadPlace), new("socket", Words.HeadSocket), new("connector", Words.HeadConnector), new("contact", Words.HeadContact), new("core", Words.HeadColour),
                    new("function", Words.HeadFunction), new("farContact", Words.HeadFarContact),
                ],
                rows.ToImmutable(), pointers.ToImmutable());
        }

        public SheetTable Swaps()
        {
            var not = NotWith(cell);
            var cables = cell.Cables.InOrder().Where(c => not.ContainsKey(c.Key)).ToArray();
            return new(
                "swaps", Words.Swaps, [new("label", Words.HeadLabel), new("name", Words.HeadName), new("mark", Words.HeadMark), new("notWith", Words.HeadNotWith)],
                [.. cables.Select(c => ImmutableArray.Create<Entry>(new(LabelOf(cell, c.Key)), new(c.Value.Name ?? c.Key), new(c.Value.Mark ?? "–"), new(string.Join(", ", not[c.Key]))))],
                [.. cables.Select(c => $"/cables/{c.Key}")]);
        }

        private string Place(string? place) => PlaceOf(cell, place);

        private Entry Metres(double value) => double.IsFinite(value) ? new($"{Numbers.Plain(value, 2, locale)} m", value) : new("–");

        private Entry Volts(double value) => double.IsFinite(value) ? new($"{Numbers.Plain(value, 2, locale)} V", value) : new("–");
    }
}

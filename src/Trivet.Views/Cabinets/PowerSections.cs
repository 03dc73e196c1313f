using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Powering;
using Trivet.Views.Words;

namespace Trivet.Views.Cabinets;

/// <summary>Supplies, branches and wires in finished texts.</summary>
public static class PowerSections
{
    public static ImmutableArray<Section> Of(Cell cell, Locale? locale = null)
    {
        var feed = Feed.Read(cell);
        if (feed.Sources.IsEmpty && feed.Branches.IsEmpty) return [];
        var writer = new Writer(cell, feed, locale);
        return [writer.Budget(), writer.Branches()];
    }

    private sealed class Writer(Cell cell, Feed feed, Locale? locale)
    {
        private readonly PowerWords _words = (locale ?? Locale.English).Language.Power;

        public Section Budget()
        {
            var sources = feed.Sources.Where(s => feed.Branches.Any(b => b.Source.Id == s.Id)).ToArray();
            var loads = feed.Branches.SelectMany(b => b.Loads.Select(l => (Branch: b, Load: l))).ToArray();
            return new("supplies", _words.Budget, [], [],
            [
                new("sources", _words.Sources,
                    [
                        new("source", _words.HeadSource), new("voltage", _words.HeadVoltage, "V"), new("gives", _words.HeadGives, "A"), new("drawn", _words.HeadDrawn, "A"),
                        new("reserve", _words.HeadReserve, "1"), new("peak", _words.HeadPeak, "A"), new("peakBorne", _words.HeadPeakBorne, "A"),
                    ],
                    [.. sources.Select(Source)], [.. sources.Select(s => s.At)]),
                new("consumers", _words.Consumers,
                    [
                        new("consumer", _words.HeadConsumer), new("branch", _words.HeadBranch), new("purpose", _words.HeadPurpose), new("count", _words.HeadCount, "1"),
                        new("steady", _words.HeadSteady, "A"), new("peak", _words.HeadPeak, "A"), new("lasting", _words.HeadFor, "s"), new("together", _words.HeadTogether, "1"),
                        new("backedUp", _words.HeadBackedUp), new("voltage", _words.HeadThere, "V"),
                    ],
                    [.. loads.Select(l => Consumer(l.Branch, l.Load))], [.. loads.Select(l => l.Load.At)]),
            ],
            ["power.reserve", "power.peak", "power.separate", "power.voltage", "power.backed-up", "power.hold-time", "power.described"]);
        }

        public Section Branches()
        {
            var surges = feed.Branches.Select(b => (Branch: b, Loads: b.Loads.Where(l => l.Inrush > 0).ToArray())).Where(b => b.Loads.Length > 0).ToArray();
            return new("branches", _words.Branches, _words.Cautions, [],
            [
                new("branches", _words.BranchTable,
                    [
                        new("branch", _words.HeadBranch), new("protection", _words.HeadProtection), new("load", _words.HeadLoad, "A"), new("rating", _words.HeadRating, "A"),
                        new("bears", _words.HeadBears, "A"), new("weakest", _words.HeadWeakest), new("wire", _words.HeadWire), new("short", _words.HeadShort, "A"), new("trips", _words.HeadTrips, "A"),
                    ],
                    [.. feed.Branches.Select(Branch)], [.. feed.Branches.Select(b => b.At)]),
                new("inrush", _words.InrushTable,
                    [
                        new("branch", _words.HeadBranch), new("supplies", _words.HeadSupplies, "1"), new("surge", _words.HeadSurge, "A"), new("passes", _words.HeadPasses, "A"), new("most", _words.HeadMost, "1"),
                    ],
                    [.. surges.Select(s => Surge(s.Branch, s.Loads))], [.. surges.Select(s => s.Branch.At)]),
            ],
            ["power.load", "power.wire", "power.trip", "power.inrush"]);
        }

        private ImmutableArray<Entry> Source(FeedSource source)
        {
            var own = feed.Branches.Where(b => b.Source.Id == source.Id).ToArray();
            double drawn = own.Sum(b => b.Steady), reserve = source.Current / drawn - 1;
            return
            [
                new(Name(source.At)), A(source.Voltage, "V"), A(source.Current, "A"), A(drawn, "A"),
                double.IsFinite(reserve) ? new(Numbers.Percent(reserve, locale), reserve) : new("–"), A(own.Sum(b => b.Peak), "A"), A(source.PeakCurrent, "A"),
            ];
        }

        private ImmutableArray<Entry> Consumer(FeedBranch branch, FeedLoad load) =>
        [
            new(Name(load.At)), new(Name(branch.At)), new(_words.Purposes[(int)load.Purpose]), new(Numbers.Plain(load.Count, 0, locale), load.Count), A(load.Steady, "A"), A(load.Peak, "A"),
            load.PeakTime > 0 ? new($"{Numbers.Plain(load.PeakTime * 1000, 0, locale)} ms", load.PeakTime) : new("–"), new(Numbers.Percent(load.Simultaneity, locale), load.Simultaneity),
            new(load.BackedUp ? _words.Yes : _words.No), branch.Source.Alternating ? new("–") : A(branch.VoltageAt(load), "V"),
        ];

        private ImmutableArray<Entry> Branch(FeedBranch branch)
        {
            var (at, wire) = branch.Wires.OrderBy(w => double.IsNaN(w.Wire.Capacity) ? double.NegativeInfinity : w.Wire.Capacity).First();
            return
            [
                new(Name(branch.At)), new(_words.Protections[(int)branch.Protection]), A(branch.Steady, "A"), A(branch.Rating, "A"), A(wire.Capacity, "A"),
                new(at == branch.At ? _words.OwnWire : Name(at)), new($"{Numbers.Plain(wire.Section * 1e6, 2, locale)} mm², {wire.Laying}, {Numbers.Plain(wire.Length, 1, locale)} m"),
                A(branch.LeastShort.Current, "A"), A(branch.Trip, "A"),
            ];
        }

        private ImmutableArray<Entry> Surge(FeedBranch branch, FeedLoad[] loads)
        {
            double passes = Tripping.LetsPass(branch.Protection, branch.Rating, branch.Trip, 0), most = Math.Floor(passes / loads.Max(l => l.Inrush));
            return
            [
                new(Name(branch.At)), new(Numbers.Plain(loads.Length, 0, locale), loads.Length), A(loads.Sum(l => l.Inrush), "A"), A(passes, "A"),
                double.IsFinite(most) ? new(Numbers.Plain(most, 0, locale), most) : new("–"),
            ];
        }

        private string Name(string pointer) => Fields.Words(cell, pointer, locale);

        private Entry A(double value, string unit) => double.IsFinite(value) ? new(Numbers.Quantity(value, unit, locale), value) : new("–");
    }
}

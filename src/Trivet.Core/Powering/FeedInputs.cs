using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Conductors;
using Trivet.Drives;
using Trivet.Findings;

namespace Trivet.Powering;

/// <summary>A source of power as far as it is stated; not numbers where it is not.</summary>
public sealed record FeedSource(string Id, bool Alternating, double Voltage, double Current, double PeakCurrent, double PeakTime, double ShortCircuit)
{
    public string At => $"/cabinet/sources/{Id}";

    /// <summary>Amperes into a short circuit behind a loop. Mains have their own impedance in series; a supply is held to its limit.</summary>
    public double Short(double loop) => Alternating ? Voltage / (loop + Voltage / ShortCircuit) : Math.Min(Voltage / loop, ShortCircuit);
}

/// <summary>Something that a branch feeds.</summary>
/// <param name="At">Consumer, module or source.</param>
/// <param name="Count">Alike.</param>
/// <param name="Steady">Amperes of one.</param>
/// <param name="Wire">From the branch to one; null where it is not stated, as within the cabinet.</param>
/// <param name="Lowest">Volts that it works at.</param>
/// <param name="Inrush">Amperes when switched on; not a number where not stated.</param>
public sealed record FeedLoad(
    string At, LoadPurpose Purpose, int Count, double Steady, double Peak, double PeakTime, double Simultaneity, bool BackedUp, Wire? Wire, double Lowest, double Inrush)
{
    /// <summary>Seconds that it has to go on when the mains fail.</summary>
    public double HoldTime { get; init; }

    public double SteadySum => Count * Simultaneity * Steady;
    public double PeakSum => Count * Simultaneity * Peak;
}

/// <summary>A branch with what protects it and all it feeds.</summary>
/// <param name="Trip">Amperes that switch it off for certain.</param>
/// <param name="Inputs">Everything of it, of its source and of its loads.</param>
public sealed record FeedBranch(
    string Id, FeedSource Source, Protection Protection, double Rating, double Trip, Wire Wire, ImmutableArray<FeedLoad> Loads, ImmutableArray<string> Inputs)
{
    public string At => $"/cabinet/branches/{Id}";
    public double Steady => Loads.Sum(l => l.SteadySum);
    public double Peak => Loads.Sum(l => l.PeakSum);

    /// <summary>Volts at a load while all of the branch draw their peak.</summary>
    public double VoltageAt(FeedLoad load) => Source.Voltage - Peak * Wire.Loop - load.Peak * (load.Wire?.Loop ?? 0);

    /// <summary>Its own wire and those behind, each with whose it is.</summary>
    public IEnumerable<(string At, Wire Wire)> Wires => [(At, Wire), .. Loads.Where(l => l.Wire is not null).Select(l => (l.At, l.Wire!))];

    /// <summary>The least current into a short circuit, and where.</summary>
    public (string At, double Current) LeastShort => Wires.Select(w => (w.At, Source.Short(Wire.Loop + (w.At == At ? 0 : w.Wire.Loop)))).MinBy(w => w.Item2);
}

/// <summary>All sources and branches of a cabinet.</summary>
/// <param name="Lacking">Branches and sources of which something is missing.</param>
public sealed record Feed(
    ImmutableArray<FeedSource> Sources, ImmutableArray<FeedBranch> Branches, ImmutableArray<Contradiction> Wrong, ImmutableArray<(string At, Reading Reading)> Lacking)
{
    public static Feed Read(Cell cell) => new Reader(cell).Read();

    private sealed class Reader(Cell cell)
    {
        /// <summary>Seconds that cover a stop and the writing down of a state (common practice, no source).</summary>
        private const double UsualHold = 1;

        private readonly Cabinet _cabinet = cell.Cabinet;
        private readonly List<Contradiction> _wrong = [];
        private readonly List<(string, Reading)> _lacking = [];
        private ImmutableArray<string> _hanging;

        public Feed Read()
        {
            Named();
            _hanging = Hanging();
            var branches = _cabinet.Branches.InOrder().Select(b => Branch(b.Key, b.Value)).OfType<FeedBranch>().ToImmutableArray();
            ImmutableArray<FeedSource> sources = [.. _cabinet.Sources.InOrder().Select(s => Source(s.Key, new()))];
            return new(sources, branches, [.. _wrong], [.. _lacking]);
        }

        /// <summary>What says who hangs on which branch: every branch rests on all of it.</summary>
        private ImmutableArray<string> Hanging()
        {
            var all = new List<string> { "/cabinet/consumers", "/cabinet/modules", "/cabinet/sources" };
            all.AddRange(_cabinet.Consumers.Keys.Select(c => $"/cabinet/consumers/{c}/branch"));
            foreach (string m in _cabinet.Modules.Keys) all.AddRange([$"/cabinet/modules/{m}/branch", $"/cabinet/modules/{m}/motorBranch"]);
            all.AddRange(_cabinet.Sources.Keys.Select(s => $"/cabinet/sources/{s}/fedBy"));
            all.Sort(StringComparer.Ordinal);
            return [.. all];
        }

        /// <summary>What names something that is not there, or is no number that can be.</summary>
        private void Named()
        {
            foreach (var (id, s) in _cabinet.Sources)
            {
                string at = $"/cabinet/sources/{id}";
                if (s.FedBy is { } by && !_cabinet.Branches.ContainsKey(by)) _wrong.Add(new(at + "/fedBy", PowerReasons.NoSuchBranch));
                Positive(at, ("voltage", s.Voltage), ("current", s.Current), ("peakCurrent", s.PeakCurrent), ("shortCircuitCurrent", s.ShortCircuitCurrent));
                NotNegative(at, ("holdTime", s.HoldTime), ("peakTime", s.PeakTime), ("inputCurrent", s.InputCurrent), ("inrush", s.Inrush));
            }
            foreach (var (id, b) in _cabinet.Branches)
            {
                string at = $"/cabinet/branches/{id}";
                if (b.From is { } from && !_cabinet.Sources.ContainsKey(from)) _wrong.Add(new(at + "/from", PowerReasons.NoSuchSource));
                Section(at, b.Section);
                Positive(at, ("rating", b.Rating), ("tripCurrent", b.TripCurrent), ("grouped", b.Grouped));
                NotNegative(at, ("length", b.Length));
            }
            foreach (var (id, c) in _cabinet.Consumers)
            {
                string at = $"/cabinet/consumers/{id}";
                if (c.Branch is { } branch && !_cabinet.Branches.ContainsKey(branch)) _wrong.Add(new(at + "/branch", PowerReasons.NoSuchBranch));
                if (c.Cable is { } cable && !cell.Cables.ContainsKey(cable)) _wrong.Add(new(at + "/cable", PowerReasons.NoSuchCable));
                if (c.Simultaneity is < 0 or > 1) _wrong.Add(new(at + "/simultaneity", PowerReasons.NotAShare));
                Section(at, c.Section);
                NotNegative(at, ("count", c.Count), ("steady", c.Steady), ("peak", c.Peak), ("peakTime", c.PeakTime), ("holdTime", c.HoldTime), ("length", c.Length));
            }
            foreach (var (id, m) in _cabinet.Modules)
            {
                foreach (var (name, branch) in new[] { ("branch", m.Branch), ("motorBranch", m.MotorBranch) })
                    if (branch is not null && !_cabinet.Branches.ContainsKey(branch)) _wrong.Add(new($"/cabinet/modules/{id}/{name}", PowerReasons.NoSuchBranch));
                NotNegative($"/cabinet/modules/{id}", ("controlCurrent", m.ControlCurrent), ("motorCurrent", m.MotorCurrent));
            }
        }

        private void Section(string at, double? section)
        {
            if (section is { } s && double.IsNaN(Copper.Resistance(s, 20))) _wrong.Add(new(at + "/section", PowerReasons.NoSuchSection));
        }

        private void Positive(string at, params (string Name, double? Value)[] fields) => _wrong.AddRange(fields.Where(f => f.Value <= 0).Select(f => new Contradiction($"{at}/{f.Name}", PowerReasons.NotPositive)));

        private void NotNegative(string at, params (string Name, double? Value)[] fields) => _wrong.AddRange(fields.Where(f => f.Value < 0).Select(f => new Contradiction($"{at}/{f.Name}", PowerReasons.Negative)));

        private FeedSource Source(string id, Reading reading)
        {
            var s = _cabinet.Sources[id];
            string at = $"/cabinet/sources/{id}";
            bool alternating = reading.Or(s.Alternating, at + "/alternating", false);
            double current = reading.Or(s.Current, at + "/current", double.NaN);
            return new(id, alternating, reading.Need(s.Voltage, at + "/voltage"), current, reading.Or(s.PeakCurrent, at + "/peakCurrent", current),
                reading.Or(s.PeakTime, at + "/peakTime", 0), reading.Need(s.ShortCircuitCurrent, at + "/shortCircuitCurrent"));
        }

        private FeedBranch? Branch(string id, PowerBranch b)
        {
            string at = $"/cabinet/branches/{id}";
            var reading = new Reading();
            reading.Used(at + "/from", b.From);
            FeedSource? source = null;
            if (b.From is not { } from) reading.Missing(at + "/from");
            else if (_cabinet.Sources.ContainsKey(from)) source = Source(from, reading);
            var protection = reading.Need(b.Protection, at + "/protection", Protection.Fuse);
            double rating = reading.Need(b.Rating, at + "/rating"), trip = reading.Or(b.TripCurrent, at + "/tripCurrent", double.NaN);
            double temperature = reading.Or(b.ConductorTemperature, at + "/conductorTemperature", 70);
            var wire = new Wire(
                reading.Need(b.Section, at + "/section"), reading.Need(b.Length, at + "/length"), reading.Or(b.Laying, at + "/laying", WireLaying.B2),
                reading.Or(b.Grouped, at + "/grouped", 1), reading.Or(b.Ambient, at + "/ambient", 40), temperature);
            double usualLowest = 0.85 * (source?.Voltage ?? double.NaN);
            var loads = ImmutableArray.CreateBuilder<FeedLoad>();
            Consumers();
            Modules();
            Sources();
            if (!reading.Complete) _lacking.Add((at, reading));
            var inputs = Pointers.Joined(_hanging, reading.Inputs);
            bool wrong = _wrong.Any(w => inputs.BinarySearch(w.Pointer, StringComparer.Ordinal) >= 0);
            return source is null || !reading.Complete || wrong
                ? null
                : new(id, source, protection, rating, Tripping.Certain(protection, rating, trip, source.Alternating), wire, loads.ToImmutable(), inputs);

            void Consumers()
            {
                foreach (var (key, c) in _cabinet.Consumers.InOrder())
                {
                    if (c.Branch != id) continue;
                    string own = $"/cabinet/consumers/{key}";
                    double steady = reading.Need(c.Steady, own + "/steady");
                    reading.Used(own + "/cable", c.Cable);
                    reading.Used(own + "/section", c.Section);
                    reading.Used(own + "/length", c.Length);
                    double? length = c.Length;
                    if (length is null && c.Cable is { } cable && cell.Cables.TryGetValue(cable, out var hangs))
                    {
                        reading.Used($"/cables/{cable}/length", hangs.Length);
                        length = hangs.Length;
                    }
                    if (c.Section is not null && length is null) reading.Missing(own + "/length");
                    // Single conductors become a cable where they leave the cabinet.
                    Wire? behind = c.Section is { } s && length is { } l ? wire with { Section = s, Length = l, Laying = wire.Laying == WireLaying.B1 ? WireLaying.B2 : wire.Laying } : null;
                    loads.Add(new(own, reading.Or(c.Purpose, own + "/purpose", LoadPurpose.Logic), reading.Or(c.Count, own + "/count", 1), steady, reading.Or(c.Peak, own + "/peak", steady),
                        reading.Or(c.PeakTime, own + "/peakTime", 0), reading.Or(c.Simultaneity, own + "/simultaneity", 1), reading.Or(c.BackedUp, own + "/backedUp", false), behind,
                        reading.Or(c.LowestVoltage, own + "/lowestVoltage", usualLowest), double.NaN)
                    { HoldTime = reading.Or(c.HoldTime, own + "/holdTime", UsualHold) });
                }
            }

            void Modules()
            {
                foreach (var (key, m) in _cabinet.Modules.InOrder())
                {
                    if (m.Branch != id && m.MotorBranch != id) continue;
                    string own = $"/cabinet/modules/{key}";
                    if (m.Branch == id) Add(own, LoadPurpose.Logic, reading.Need(m.ControlCurrent, own + "/controlCurrent"));
                    if (m.MotorBranch == id) Add(own, LoadPurpose.Motors, reading.Need(m.MotorCurrent, own + "/motorCurrent"));
                }
            }

            void Sources()
            {
                foreach (var (key, s) in _cabinet.Sources.InOrder())
                {
                    if (s.FedBy != id) continue;
                    string own = $"/cabinet/sources/{key}";
                    Add(own, LoadPurpose.Mains, reading.Need(s.InputCurrent, own + "/inputCurrent"), reading.Or(s.Inrush, own + "/inrush", double.NaN));
                }
            }

            void Add(string own, LoadPurpose purpose, double current, double inrush = double.NaN) =>
                loads.Add(new(own, purpose, 1, current, current, 0, 1, false, null, usualLowest, inrush));
        }
    }
}

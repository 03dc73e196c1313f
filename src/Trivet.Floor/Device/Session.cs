using System.Collections.Immutable;
using System.Globalization;
using Trivet.AsBuilt;
using Trivet.Files.Floor;
using Trivet.Journal;
using Trivet.Procedures;
using Trivet.Views.Journals;
using Trivet.Views.Words;

namespace Trivet.Floor.Device;

/// <summary>The work on this device: its bundle, its chain, what others wrote, and the procedure with all of that laid over it.</summary>
public sealed class Session(DeviceStore store, TimeProvider clock)
{
    /// <summary>After so long without an entry the page asks what happened to the machine meanwhile. Common practice, no source: longer than a break.</summary>
    public static readonly TimeSpan Long = TimeSpan.FromMinutes(30);

    private ImmutableArray<DeviceEntry> _chain = [];
    private readonly List<Kept> _others = [];
    private string _device = "";
    private long? _clockOffset;

    public event Action? Changed;

    /// <summary>The browser keeps things at all.</summary>
    public bool Keeps { get; private set; } = true;

    /// <summary>The chain on this device cannot be read, or does not hang together: nothing is added to it.</summary>
    public bool Damaged { get; private set; }

    public FloorBundle? Bundle { get; private set; }
    public Progress? Progress { get; private set; }
    public ImmutableArray<string> Inside { get; private set; } = [];
    public string Device => _device;
    public string Person { get; private set; } = "";
    public FloorWords Words { get; private set; } = FloorWords.All[0];
    public ImmutableArray<DeviceEntry> Chain => _chain;

    /// <summary>Number of the newest receipt that everything is here up to.</summary>
    public long Head { get; private set; }

    /// <summary>Number of the newest receipt of an entry of this device; 0 where there is none.</summary>
    public long LastReceipt { get; private set; }

    /// <summary>Hash of the newest receipt known here; empty where there is none.</summary>
    public string HeadHash { get; private set; } = "";

    public int Waiting => _chain.Count(e => e.Receipt.Length == 0);

    /// <summary>What the desk would not take, counted by why.</summary>
    public IEnumerable<(string Problem, int Count)> HeldBack => _chain.Where(e => e.Receipt.Length == 0 && e.Problem.Length > 0).GroupBy(e => e.Problem, StringComparer.Ordinal).Select(g => (g.Key, g.Count()));

    /// <summary>Why an entry was not kept, in words; empty after one that was.</summary>
    public string Problem { get; private set; } = "";

    /// <summary>What was measured with last: it is offered again.</summary>
    public string Instrument { get; set; } = "";

    /// <summary>Minutes that the device's local time is ahead of UTC, as the browser says: the page itself carries no time zones.</summary>
    public int LocalOffset { get; set; }

    /// <summary>A newer entry than this is missing for long: the page asks what happened.</summary>
    public TimeSpan? Away { get; private set; }

    /// <param name="spoken">BCP 47 tags of the languages that the person reads, the best first; what was chosen on the page goes before.</param>
    public async Task LoadAsync(string[] spoken)
    {
        Keeps = await store.StartAsync();
        Words = FloorWords.Of(Keeps && await store.GetAsync("language") is { } chosen ? spoken.Prepend(chosen) : spoken);
        if (!Keeps) return;
        Person = await store.GetAsync("person") ?? "";
        _clockOffset = long.TryParse(await store.GetAsync("clock offset"), NumberStyles.Integer, CultureInfo.InvariantCulture, out long offset) ? offset : null;
        Head = long.TryParse(await store.GetAsync("head"), NumberStyles.Integer, CultureInfo.InvariantCulture, out long head) ? head : 0;
        _device = await store.GetAsync("device") ?? "";
        if (await store.ChainAsync() is { } chain && DeviceChain.IsWhole(chain)) _chain = chain;
        else Damaged = true;
        if (_device.Length == 0) await store.PutAsync("device", _device = Guid.NewGuid().ToString("n"));
        AddOthers(await store.OthersAsync());
        Bundle = await store.BundleAsync();
        Renew();
        if (Last() is { } last && clock.GetUtcNow().UtcTicks - last.Entry.Ticks is var away && away > Long.Ticks) Away = TimeSpan.FromTicks(away);
    }

    /// <summary>Takes a bundle in. Empty when it is kept, else the browser's error; it is used all the same.</summary>
    public async Task<string> TakeAsync(FloorBundle bundle)
    {
        Bundle = bundle;
        Renew();
        return Keeps ? await store.KeepAsync(bundle) : "nothing is kept";
    }

    public async Task SetPersonAsync(string person)
    {
        Person = person.Trim();
        if (Keeps) await store.PutAsync("person", Person);
        Changed?.Invoke();
    }

    public async Task ChangeLanguageAsync()
    {
        int at = FloorWords.All.IndexOf(Words);
        Words = FloorWords.All[(at + 1) % FloorWords.All.Length];
        if (Keeps) await store.PutAsync("language", Words.Tag);
        Changed?.Invoke();
    }

    public async Task SetClockOffsetAsync(long offset)
    {
        _clockOffset = offset;
        await store.PutAsync("clock offset", offset.ToString(CultureInfo.InvariantCulture));
    }

    /// <summary>Writes one entry: kept on disk when this returns true, and judged. False where it was not kept, <see cref="Problem"/> then says why.</summary>
    /// <param name="by">Who says so; the person who holds the device where it is left out.</param>
    public async Task<bool> WriteAsync(Statement says, string step = "", string ask = "", string instrument = "", string note = "", string? by = null)
    {
        var now = clock.GetUtcNow();
        var entry = new Entry
        {
            Device = _device, Sequence = 1, Previous = "", Ticks = now.UtcTicks, LocalOffset = LocalOffset,
            ClockOffset = _clockOffset, Person = by ?? Person, Cell = Bundle!.CellId, Revision = Bundle.Revision, Step = step, Ask = ask, Instrument = instrument, Note = note, Says = says,
        };
        if (await AddAsync(entry) is { Length: > 0 } error)
        {
            Problem = error == DeviceStore.NoRoom ? Words.NoRoom : Words.NoStorage;
            Changed?.Invoke();
            return false;
        }
        Problem = "";
        if (instrument.Length > 0) Instrument = instrument;
        Renew();
        return true;
    }

    /// <summary>What is burnt in below a photograph taken now.</summary>
    public string PhotographLine(string step) => JournalSentences.BurntIn(Bundle!.CellId, step, clock.GetUtcNow().ToOffset(TimeSpan.FromMinutes(LocalOffset)), Person);

    /// <summary>The words of the interruption are answered, or work goes on.</summary>
    public void GoOn()
    {
        Away = null;
        Changed?.Invoke();
    }

    /// <summary>Lays the desk's answer beside the chain.</summary>
    public async Task ConfirmAsync(ImmutableArray<DeviceEntry> sent, EntriesAnswer answer)
    {
        var changed = DeviceChain.Confirm(sent, answer);
        if (changed.IsEmpty || await store.LayAsync(changed) is not "") return;
        foreach (var entry in changed) _chain = _chain.SetItem((int)entry.Sequence - 1, entry);
        Renew();
    }

    /// <summary>Takes in what was received after the last known receipt.</summary>
    public async Task ReceiveAsync(ImmutableArray<ReceivedEntry> entries, long head)
    {
        var others = entries.Where(e => DeviceChain.Read(e.Entry, e.Receipt) is { } kept && kept.Entry.Device != _device).ToImmutableArray();
        if (await store.AddOthersAsync(others, head) is not "") return;
        Head = head;
        AddOthers(others);
        Renew();
    }

    /// <summary>The words of a step in the language of the page.</summary>
    public FloorText TextOf(FloorStep step) => step.Words.GetValueOrDefault(Words.Tag) ?? step.Words.Values.First();

    public string TitleOf(string step) => Bundle?.Steps.FirstOrDefault(s => s.Step.Id == step) is { } known ? TextOf(known).Title : step;

    /// <summary>Entries of this device as lines, to be carried away.</summary>
    public string AsFile() => string.Concat(_chain.Select(e => e.Text + "\n"));

    private async Task<string> AddAsync(Entry entry)
    {
        if (!Keeps || Damaged) return "nothing is kept";
        for (int tries = 0; ; tries++)
        {
            var next = DeviceChain.Next(_chain.IsEmpty ? null : _chain[^1], entry);
            string error = await store.AddAsync(next);
            if (error.Length == 0) _chain = _chain.Add(next);
            // A second window of the page wrote first: its entry is the one to go on from.
            if (error != DeviceStore.Taken || tries == 5 || await store.ChainAsync() is not { } chain) return error;
            _chain = chain;
        }
    }

    private void AddOthers(IEnumerable<ReceivedEntry> entries) => _others.AddRange(entries.Select(e => DeviceChain.Read(e.Entry, e.Receipt)).OfType<Kept>());

    private Kept? Last() => Ordering.Of(All()).LastOrDefault();

    private ImmutableArray<Kept> All() =>
        [.. _chain.Select(e => DeviceChain.Read(e.Text, e.Receipt)).OfType<Kept>().Concat(_others).Where(k => k.Entry.Cell == Bundle?.CellId).DistinctBy(k => k.Hash)];

    private void Renew()
    {
        LastReceipt = _chain.Where(e => e.Receipt.Length > 0).Select(e => DeviceChain.Read(e.Text, e.Receipt)?.Receipt?.Number ?? 0).DefaultIfEmpty(0).Max();
        if (Bundle is { } bundle)
        {
            var all = All();
            HeadHash = all.Where(k => k.Receipt is not null).MaxBy(k => k.Receipt!.Number)?.ReceiptHash ?? "";
            Progress = Fold.Of(bundle.Procedure, all, bundle.Releasing, bundle.Moves.Add(bundle.Revision, []));
            Inside = Journal.Inside.Of(all);
        }
        Changed?.Invoke();
    }
}

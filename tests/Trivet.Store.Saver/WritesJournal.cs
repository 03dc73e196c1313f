using Trivet.Files.Entries;
using Trivet.Journal;

namespace Trivet.Store.Saver;

/// <summary>
/// Several devices at once, each sending its chain in parcels of one to five, and saying for each entry that was acknowledged:
///   received HASH RECEIPT-NUMBER RECEIPT-HASH
/// Where the store fails (a full disk) it says "failed" and sends the same parcel again.
/// </summary>
internal static class WritesJournal
{
    public static Task ForEverAsync(JobStore store, string[] devices) => Task.WhenAll(devices.Select((d, i) => Task.Run(() => DeviceAsync(store, d, i))));

    private static async Task DeviceAsync(JobStore store, string device, int seed)
    {
        var random = new Random(seed);
        var noon = new DateTimeOffset(2030, 5, 6, 12, 0, 0, TimeSpan.Zero);
        long sequence = 0;
        string previous = "";
        while (true)
        {
            var parcel = new List<Arrival>();
            for (int i = random.Next(1, 6); i > 0; i--)
            {
                sequence++;
                var kept = EntryText.Keep(new Entry
                {
                    Device = device,
                    Sequence = sequence,
                    Previous = previous,
                    Ticks = noon.AddSeconds(sequence).Ticks,
                    LocalOffset = 0,
                    Person = "saver",
                    Cell = "saved",
                    Revision = "",
                    Says = new Measured($"{sequence} mm", "m", sequence / 1000.0, 0.001),
                });
                previous = kept.Hash;
                parcel.Add(new Arrival(EntryText.Of(kept.Entry), kept.Hash));
            }
            while (!await SendAsync(store, parcel, noon.AddSeconds(sequence))) await Task.Delay(20);
        }
    }

    private static async Task<bool> SendAsync(JobStore store, List<Arrival> parcel, DateTimeOffset received)
    {
        try
        {
            foreach (var outcome in (await store.AppendAsync(parcel, received)).Cast<AppendOutcome.Received>())
                Lines.Say($"received {outcome.Receipt.Entry} {outcome.Receipt.Number} {outcome.ReceiptHash}");
            return true;
        }
        catch (StoreFailedException)
        {
            Lines.Say("failed");
            return false;
        }
    }
}

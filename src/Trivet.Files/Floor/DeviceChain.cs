using System.Collections.Immutable;
using Trivet.Files.Entries;
using Trivet.Journal;

namespace Trivet.Files.Floor;

/// <summary>An entry as a device keeps it: its canonical text, and the receipt's where the desk has confirmed it.</summary>
/// <param name="Text">Canonical text of the entry.</param>
/// <param name="Receipt">Canonical text of the receipt; empty while it waits.</param>
/// <param name="Problem">Why the desk would not take it, for now: an id of <see cref="EntryRefusals"/>, or words; empty otherwise.</param>
public sealed record DeviceEntry(long Sequence, string Hash, string Text, string Receipt = "", string Problem = "");

/// <summary>
/// The chain of one device and what of it still waits to be sent. Pure: the browser's storage keeps what comes out. An entry is written once;
/// afterwards only its receipt is laid beside it.
/// </summary>
public static class DeviceChain
{
    /// <summary>Most entries sent in one go, and most characters: a request that is cut has little to repeat.</summary>
    public const int LargestBatch = 50, LargestText = 512 * 1024;

    /// <summary>The entry that follows on the newest of the chain.</summary>
    /// <param name="entry">Device, sequence and previous hash are put in here, whatever it says of them.</param>
    public static DeviceEntry Next(DeviceEntry? newest, Entry entry)
    {
        var next = entry with { Sequence = (newest?.Sequence ?? 0) + 1, Previous = newest?.Hash ?? "" };
        string text = EntryText.Of(next);
        return new(next.Sequence, EntryText.Hash(text), text);
    }

    /// <summary>
    /// What is to be sent now: what has no receipt, in order. What the desk would not take yet is tried again with the rest.
    /// </summary>
    public static ImmutableArray<DeviceEntry> ToSend(IEnumerable<DeviceEntry> chain)
    {
        var batch = ImmutableArray.CreateBuilder<DeviceEntry>();
        int length = 0;
        foreach (var entry in chain.Where(e => e.Receipt.Length == 0).OrderBy(e => e.Sequence))
        {
            length += entry.Text.Length;
            if (batch.Count > 0 && (batch.Count == LargestBatch || length > LargestText)) break;
            batch.Add(entry);
        }
        return batch.ToImmutable();
    }

    /// <summary>
    /// Lays an answer of the desk beside what was sent: only what changed comes back. A receipt that is not of the entry is not believed.
    /// </summary>
    public static ImmutableArray<DeviceEntry> Confirm(ImmutableArray<DeviceEntry> sent, EntriesAnswer answer)
    {
        var changed = ImmutableArray.CreateBuilder<DeviceEntry>();
        foreach (var (entry, outcome) in sent.Zip(answer.Outcomes))
        {
            if (outcome.Receipt is { Length: > 0 } text && EntryReader.Read(text) is { Receipt: { } receipt } && receipt.Entry == entry.Hash)
                changed.Add(entry with { Receipt = text, Problem = "" });
            else if ((outcome.Reason is { Length: > 0 } reason ? reason : outcome.Problem) is { Length: > 0 } problem && problem != entry.Problem)
                changed.Add(entry with { Problem = problem });
        }
        return changed.ToImmutable();
    }

    /// <summary>As the fold wants it; null for a text that is damaged.</summary>
    public static Kept? Read(string text, string receiptText)
    {
        var read = EntryReader.Read(text);
        if (read.Entry is not { } entry) return null;
        var receipt = receiptText.Length == 0 ? null : EntryReader.Read(receiptText);
        return new(entry, read.Hash, receipt?.Receipt, receipt?.Receipt is null ? "" : receipt.Hash);
    }

    /// <summary>Whether the chain hangs together from its first entry on; false where one is missing, altered or out of place.</summary>
    public static bool IsWhole(IReadOnlyList<DeviceEntry> chain)
    {
        string previous = "";
        for (int i = 0; i < chain.Count; i++)
        {
            var read = EntryReader.Read(chain[i].Text);
            if (read.Entry is not { } entry || read.Hash != chain[i].Hash || entry.Sequence != i + 1 || entry.Previous != previous) return false;
            previous = read.Hash;
        }
        return true;
    }

    /// <summary>
    /// What must be added to the device's clock to get the desk's, ticks: the desk's time against the middle of asking and answer, so wrong by at
    /// most half of the way there and back (RFC 5905, 8, from memory). Null where that took longer than two seconds: then it tells too little.
    /// </summary>
    public static long? ClockOffset(long sent, long received, long desk) =>
        received >= sent && received - sent <= 2 * TimeSpan.TicksPerSecond ? desk - (sent + (received - sent) / 2) : null;
}

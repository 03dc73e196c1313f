using System.Collections.Immutable;

namespace Trivet.Journal;

/// <summary>
/// The order in which entries of several devices are read: by corrected time, and on one device always by sequence. It is the same in
/// whatever order they came. A clock that ran ahead is held back by the receipt, for nothing was written after it was received; one that
/// jumped back is held at the entry before.
/// </summary>
public static class Ordering
{
    public static ImmutableArray<Kept> Of(IEnumerable<Kept> entries)
    {
        var timed = new List<(long Ticks, Kept Kept)>();
        foreach (var device in entries.GroupBy(k => k.Entry.Device, StringComparer.Ordinal))
        {
            long latest = long.MinValue;
            foreach (var kept in device.OrderBy(k => k.Entry.Sequence).ThenBy(k => k.Hash, StringComparer.Ordinal))
            {
                latest = Math.Max(latest, TicksOf(kept));
                timed.Add((latest, kept));
            }
        }
        return
        [
            .. timed.OrderBy(t => t.Ticks)
                .ThenBy(t => t.Kept.Entry.Device, StringComparer.Ordinal)
                .ThenBy(t => t.Kept.Entry.Sequence)
                .ThenBy(t => t.Kept.Hash, StringComparer.Ordinal)
                .Select(t => t.Kept),
        ];
    }

    /// <summary>When it was written, UTC ticks: by the device's clock as far as that can be believed.</summary>
    public static long TicksOf(Kept kept) =>
        kept.Receipt is { } receipt ? Math.Min(kept.Entry.CorrectedTicks, receipt.Ticks) : kept.Entry.CorrectedTicks;
}

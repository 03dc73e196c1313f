using System.Collections.Immutable;

namespace Trivet.Journal;

/// <summary>What in the journal does not fit together. None of it keeps an entry out.</summary>
public enum MismatchKind
{
    /// <summary>Entries of a device are not here, or not yet.</summary>
    Gap,
    /// <summary>A device wrote two entries under one sequence: its storage was copied or put back.</summary>
    Fork,
    /// <summary>An entry does not name the one before it.</summary>
    BrokenChain,
    /// <summary>A device's clock stood earlier than at its entry before.</summary>
    ClockBack,
    /// <summary>A device's clock stood later than when the entry was received.</summary>
    ClockAhead,
    /// <summary>A correction or release names an entry that is not here.</summary>
    NamesNothing,
    /// <summary>Written by a later program; kept, not understood.</summary>
    Unread,
    /// <summary>The entry is about a step that the procedure does not have.</summary>
    UnknownStep,
    /// <summary>The entry answers something that its step does not ask.</summary>
    UnknownAsk,
    /// <summary>A step that needs less energy was worked on while the journal says more was on, or does not say.</summary>
    MorePowerThanAllowed,
    /// <summary>A step was worked on before one that holds it up was done.</summary>
    BeforeHoldPoint,
    /// <summary>Who released is who wrote what was released, or has not the role.</summary>
    ReleaseDoesNotCount,
    /// <summary>Two devices answered the same otherwise, and neither could have known of the other.</summary>
    AnsweredApart,
    /// <summary>A supply was declared off without having been measured dead.</summary>
    NotMeasuredDead,
}

/// <param name="Entries">Hashes of the entries it is about.</param>
/// <param name="First">First sequence missing, for a gap; ticks of the jump, for a clock; else 0.</param>
/// <param name="Last">Last sequence missing, for a gap; else 0.</param>
public sealed record Mismatch(MismatchKind Kind, string Device, long Sequence, ImmutableArray<string> Entries, long First = 0, long Last = 0);

/// <summary>Looks through the chains of the devices. The chain of receipts is the store's own to look through.</summary>
public static class Mismatches
{
    /// <summary>A clock ahead by less is taken for the time of the way, ticks: two minutes, by common practice.</summary>
    public const long Allowed = 2 * TimeSpan.TicksPerMinute;

    /// <param name="entries">All entries of a job, of all its cells: a device has one chain.</param>
    public static ImmutableArray<Mismatch> Of(IReadOnlyCollection<Kept> entries)
    {
        var found = ImmutableArray.CreateBuilder<Mismatch>();
        foreach (var device in entries.GroupBy(k => k.Entry.Device, StringComparer.Ordinal).OrderBy(d => d.Key, StringComparer.Ordinal))
            OfDevice(device.Key, device, found);

        var known = entries.Select(k => k.Hash).ToHashSet(StringComparer.Ordinal);
        foreach (var kept in entries.OrderBy(k => k.Entry.Device, StringComparer.Ordinal).ThenBy(k => k.Entry.Sequence).ThenBy(k => k.Hash, StringComparer.Ordinal))
        {
            if (Named(kept.Entry.Says) is { } named && !known.Contains(named)) Add(MismatchKind.NamesNothing, kept);
            if (kept.Entry.Says is Unread) Add(MismatchKind.Unread, kept);
            if (kept.Receipt is { } receipt && kept.Entry.CorrectedTicks - receipt.Ticks is > Allowed and var ahead) Add(MismatchKind.ClockAhead, kept, ahead);
        }
        return found.ToImmutable();

        void Add(MismatchKind kind, Kept kept, long first = 0) => found.Add(new(kind, kept.Entry.Device, kept.Entry.Sequence, [kept.Hash], first));
    }

    private static string? Named(Statement says) => says switch
    {
        Released released => released.Entry,
        Corrected corrected => corrected.Entry,
        _ => null,
    };

    private static void OfDevice(string device, IEnumerable<Kept> entries, ImmutableArray<Mismatch>.Builder found)
    {
        long next = 1;
        Kept[] before = [];
        foreach (var place in entries.GroupBy(k => k.Entry.Sequence).OrderBy(p => p.Key))
        {
            Kept[] here = [.. place.OrderBy(k => k.Hash, StringComparer.Ordinal)];
            ImmutableArray<string> hashes = [.. here.Select(k => k.Hash)];
            bool gap = place.Key > next;
            if (gap) found.Add(new(MismatchKind.Gap, device, place.Key, hashes, next, place.Key - 1));
            if (here.Length > 1) found.Add(new(MismatchKind.Fork, device, place.Key, hashes));
            foreach (var kept in here)
            {
                bool follows = place.Key == 1 ? kept.Entry.Previous.Length == 0 : gap || before.Any(b => b.Hash == kept.Entry.Previous);
                if (!follows) found.Add(new(MismatchKind.BrokenChain, device, place.Key, [kept.Hash]));
                if (!gap && before.Length > 0 && before.Min(b => b.Entry.Ticks) - kept.Entry.Ticks is > 0 and var back)
                    found.Add(new(MismatchKind.ClockBack, device, place.Key, [kept.Hash], back));
            }
            before = here;
            next = place.Key + 1;
        }
    }
}

using Trivet.AsBuilt;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Journal;
using Trivet.Store;
using Trivet.Views.Journals;

namespace Trivet.Desk.Sessions;

/// <summary>Where the work at a cell stood when it was looked at.</summary>
/// <param name="Head">The newest revision: what people work by.</param>
/// <param name="Recorded">Whether anything has been recorded about it.</param>
/// <param name="Draft">What it would cost to save the draft; null where the draft is the newest revision.</param>
/// <param name="Journal">Head of the journal that this was computed from; null while it is empty.</param>
public sealed record WorkSeen(Cell Head, bool Recorded, Progress Progress, DryRun? Draft, JournalHead? Journal);

/// <summary>The work at one cell as one page follows it: computed anew only where the journal, the newest revision or the draft has moved. One look at a time.</summary>
public sealed class CellWork(JobStore store, string cellId)
{
    private (JournalHead? Journal, string Revision, Cell? Draft) _of;

    /// <summary>Null before the first look, and where the cell has no revision that can be read.</summary>
    public WorkSeen? Seen { get; private set; }

    /// <returns>True where <see cref="Seen"/> is another than before.</returns>
    /// <exception cref="StoreFailedException">The store did not answer; what was seen stays.</exception>
    public async Task<bool> LookAsync(Cell draft, CancellationToken stop)
    {
        if (await store.HeadAsync(cellId, stop) is not { } head || head.Read().Cell is not { } cell) return false;
        var of = (await store.JournalHeadAsync(stop), head.Revision.Hash, draft);
        if (of.Item1 == _of.Journal && of.Hash == _of.Revision && ReferenceEquals(draft, _of.Draft)) return false;

        var (journal, revisions) = await store.JournalOfAsync(cellId, stop);
        var entries = AboutIt(journal);
        bool edited = CellFile.Hash(draft) != head.Revision.Hash;
        // The procedures take longer to compute than a page may stand still.
        Seen = await Task.Run(
            () => new WorkSeen(cell, entries.Length > 0, Work.Of(cell, cellId, entries, revisions), edited && entries.Length > 0 ? Work.Against(cell, draft, cellId, entries, revisions) : null, journal.Head), stop);
        _of = of;
        return true;
    }

    /// <summary>What it would cost at the machine if the newest revision said what another cell says; null where nothing is recorded, so that nothing can be lost.</summary>
    /// <exception cref="StoreFailedException">The store did not answer.</exception>
    public async Task<DryRun?> AgainstAsync(Cell then, CancellationToken stop)
    {
        if (await store.HeadAsync(cellId, stop) is not { } head || head.Read().Cell is not { } now) return null;
        var (journal, revisions) = await store.JournalOfAsync(cellId, stop);
        var entries = AboutIt(journal);
        return entries.Length == 0 ? null : await Task.Run(() => Work.Against(now, then, cellId, entries, revisions), stop);
    }

    private Kept[] AboutIt(JournalPart journal) => [.. journal.Lines.Select(l => l.Kept).Where(k => k.Entry.Cell == cellId)];
}

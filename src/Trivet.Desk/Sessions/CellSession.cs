using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Store;

namespace Trivet.Desk.Sessions;

/// <summary>
/// One cell open in one page: the draft on disk, and the snapshot that every part of the page shows. An edit gives a new snapshot
/// at once (a preview), is then kept on disk, and is proved in the background once the hand rests; a newer edit stops that proof.
/// Used from the page's own context only, except where said.
/// </summary>
public sealed class CellSession : IAsyncDisposable
{
    /// <summary>The hand counts as resting after this long without an edit, so that a drag does not start a proof at every step.</summary>
    private static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(150);

    private readonly JobStore _store;
    private readonly Assessor _assessor;
    private readonly TimeProvider _clock;
    private readonly SynchronizationContext? _page = SynchronizationContext.Current;
    private CancellationTokenSource _proof = new();
    private Task _keeping = Task.CompletedTask;
    private (Cell? Cell, string Hash) _hashed;
    private bool _disposed;

    public CellSession(JobStore store, Assessor assessor, TimeProvider clock, Draft draft, Cell cell)
    {
        (_store, _assessor, _clock, Draft) = (store, assessor, clock, draft);
        Now = _assessor.Preview(cell);
        Prove();
    }

    /// <summary>Raised in the page's context after any change of what is shown, but for the progress of a proof.</summary>
    public event Action? Changed;

    /// <summary>Raised in the page's context as a proof goes on: for what shows that alone, since a whole sheet takes longer to draw.</summary>
    public event Action? Progressed;

    /// <summary>Readings taken while the frame is set up, as long as the cell is open; a person saves them as a table.</summary>
    public ImmutableArray<SetUpRow> SetUp { get; set; } = [];

    /// <summary>BCP 47 tag of the language of the sheets for the work at the machine, as long as the cell is open.</summary>
    public string Language { get; set; } = "en";

    public Assessed Now { get; private set; }
    public Cell Cell => Now.Cell;
    public Draft Draft { get; private set; }

    /// <summary>The job folder, that mesh files are looked for in; null where the job is in a database.</summary>
    public string? Folder => _store.Location is JobLocation.Folder { Path: var path } ? path : null;

    /// <summary>Grows with each snapshot; a drawing or a test can tell by it whether it shows the newest.</summary>
    public int Serial { get; private set; }

    /// <summary>Fraction of the running proof, 0 to 1; null when none runs.</summary>
    public double? Progress { get; private set; }

    /// <summary>True while single changes that would help are being looked for.</summary>
    public bool Advising { get; private set; }

    /// <summary>True when everything about what is shown has been worked out.</summary>
    public bool Settled => Now.Proved && !Advising;

    /// <summary>What could not be kept on disk, in words; empty when all is well.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>The files this cell was read from or written to, as they were last looked at.</summary>
    public ImmutableArray<CellFileState> Files { get; private set; } = [];

    /// <summary>The file edited outside whose content is not what is shown; null where there is none.</summary>
    public CellFileState.Edited? Offered => Files.OfType<CellFileState.Edited>().FirstOrDefault(f => !Says(f));

    /// <summary>True when what is shown is what the file says.</summary>
    public bool Says(CellFileState.Edited file)
    {
        if (!ReferenceEquals(_hashed.Cell, Cell)) _hashed = (Cell, CellFile.Hash(Cell));
        return _hashed.Hash == file.Hash;
    }

    /// <summary>Shows a cell without keeping it: a station in the middle of a drag.</summary>
    public void Show(Cell cell)
    {
        if (cell == Cell) return;
        Take(cell);
        Raise();
    }

    /// <summary>Shows a cell and keeps it as one edit that can be undone.</summary>
    public Task EditAsync(Cell cell, string words)
    {
        Show(cell);
        return _keeping = AfterAsync(_keeping, async () => Settle(await _store.EditAsync(Draft, cell, _clock.GetUtcNow(), words), follow: false));
    }

    public Task UndoAsync() => MoveAsync(d => _store.UndoAsync(d));
    public Task RedoAsync() => MoveAsync(d => _store.RedoAsync(d));
    public Task DiscardAsync() => MoveAsync(d => _store.DiscardAsync(d));
    public Task RebaseAsync() => MoveAsync(d => _store.RebaseAsync(d));

    /// <summary>Takes what a file edited outside says into the draft, as one edit.</summary>
    public Task TakeFileAsync(CellFileState.Edited file) => MoveAsync(d => _store.TakeFileAsync(d, file, _clock.GetUtcNow()));

    /// <summary>Writes the newest revision into the job folder.</summary>
    public async Task<ExportOutcome> WriteFileAsync()
    {
        var outcome = await _store.ExportHeadAsync(Draft.CellId);
        await LookAtFilesAsync();
        return outcome;
    }

    /// <summary>Looks whether this cell was edited elsewhere, in another window or in its file, and raises <see cref="Changed"/> where it was.</summary>
    public async Task LookAsync()
    {
        await LookAtDraftAsync();
        await LookAtFilesAsync();
    }

    /// <summary>A page opened while the edit of another was on its way to the disk shows the state before it: it must not stay there.</summary>
    private async Task LookAtDraftAsync()
    {
        try
        {
            await _keeping;
            var seen = Draft;
            if (await _store.DraftAsync(seen.CellId, seen.Person) is not { } now || (now.Version, now.Head) == (seen.Version, seen.Head)) return;
            // An edit made here during the read is settled by its own outcome.
            if (!_keeping.IsCompleted || !ReferenceEquals(seen, Draft)) return;
            Follow(now);
            Raise();
        }
        catch (StoreFailedException)
        {
            // The next look may succeed; an edit that can not be kept is told by itself.
        }
    }

    /// <summary>Looks whether a file of this cell was edited outside, and raises <see cref="Changed"/> where anything about them has.</summary>
    public async Task LookAtFilesAsync()
    {
        try
        {
            var files = await _store.FilesAsync(Draft.CellId);
            if (files.Select(Sign).SequenceEqual(Files.Select(Sign))) return;
            Files = files;
            Raise();
        }
        catch (StoreFailedException)
        {
            // The next look may succeed; an edit that can not be kept is told by itself.
        }
    }

    /// <summary>What tells one state of a file from another.</summary>
    private static (Type, string, int, string) Sign(CellFileState state) => state switch
    {
        CellFileState.Edited edited => (typeof(CellFileState.Edited), edited.File, edited.Base, edited.Hash),
        CellFileState.Older older => (typeof(CellFileState.Older), older.File, older.Holds.Number, ""),
        CellFileState.Unreadable bad => (typeof(CellFileState.Unreadable), bad.File, bad.Errors.Length, string.Join('\n', bad.Errors)),
        _ => (state.GetType(), state.File, 0, ""),
    };

    /// <summary>Saves the draft as a revision.</summary>
    public async Task<SaveOutcome> SaveAsync(string words)
    {
        await _keeping;
        var outcome = await _store.SaveDraftAsync(Draft, _clock.GetUtcNow(), words);
        await ReadAgainAsync();
        await LookAtFilesAsync();
        return outcome;
    }

    /// <summary>Reads draft and head anew, after something changed them elsewhere. An edit on its way to the disk gets there first.</summary>
    public async Task ReadAgainAsync()
    {
        await _keeping;
        if (await _store.DraftAsync(Draft.CellId, Draft.Person) is { } draft) Follow(draft);
        Raise();
    }

    public async ValueTask DisposeAsync()
    {
        _disposed = true;
        await _proof.CancelAsync();
        await _keeping.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _proof.Dispose();
    }

    private Task MoveAsync(Func<Draft, Task<DraftOutcome>> move) =>
        _keeping = AfterAsync(_keeping, async () => Settle(await move(Draft), follow: true));

    /// <summary>Store calls of one page follow each other, since each names the version the one before it left.</summary>
    private async Task AfterAsync(Task before, Func<Task> act)
    {
        try
        {
            await before;
            Trouble = "";
            await act();
        }
        catch (StoreFailedException e)
        {
            Trouble = $"The last edit is shown but not on disk: {e.Message}";
        }
        Raise();
    }

    private void Settle(DraftOutcome outcome, bool follow)
    {
        switch (outcome)
        {
            case DraftOutcome.Kept kept when follow:
                Follow(kept.Draft);
                break;
            case DraftOutcome.Kept kept:
                Draft = kept.Draft;
                break;
            case DraftOutcome.Moved moved:
                Follow(moved.Now);
                Trouble = "This cell was edited in another window meanwhile; its state is shown now, and your last step here was not kept.";
                break;
            case DraftOutcome.NotFound:
                Trouble = "This cell is no longer in the job.";
                break;
            case DraftOutcome.Refused refused:
                Trouble = $"Not kept: {refused.Problem} {refused.Remedy}";
                break;
        }
    }

    private void Follow(Draft draft)
    {
        Draft = draft;
        if (draft.Read().Cell is not { } cell)
            Trouble = "The draft holds something this program cannot read; it was left as it is.";
        else if (cell != Cell)
            Take(cell);
    }

    private void Take(Cell cell)
    {
        _proof.Cancel();
        Now = _assessor.Preview(cell);
        Serial++;
        Prove();
    }

    private void Prove()
    {
        Progress = Now.Proved ? null : 0;
        Advising = FallsShort;
        _proof.Dispose();
        _proof = new CancellationTokenSource();
        _ = ProveAsync(Cell, _proof.Token);
    }

    private async Task ProveAsync(Cell cell, CancellationToken stop)
    {
        try
        {
            await Task.Delay(Rest, _clock, stop);
            if (!Now.Proved)
            {
                var proved = await Task.Run(() => _assessor.Prove(cell, new ProofReport(this, stop), stop, withAdvice: false), stop);
                if (stop.IsCancellationRequested) return;
                Progress = null;
                Swap(proved);
            }
            if (!FallsShort) return;
            Advising = true;
            var advised = await Task.Run(() => _assessor.Prove(cell, null, stop), stop);
            if (stop.IsCancellationRequested) return;
            Advising = false;
            Swap(advised);
        }
        catch (OperationCanceledException)
        {
            // A newer edit took over; its own proof follows.
        }
        catch (Exception e) when (!stop.IsCancellationRequested)
        {
            // A fault of ours in a proof must neither stop the page nor leave it waiting for ever.
            Progress = null;
            Advising = false;
            Trouble = $"The proof ended with a fault of the program ({e.GetType().Name}: {e.Message}); what is shown is the preview.";
            Raise();
        }
    }

    private bool FallsShort => Now.Ledger.Count(Verdict.FallsShort) > 0;

    private void Swap(Assessed now)
    {
        Now = now;
        Serial++;
        if (!FallsShort) Advising = false;
        Raise();
    }

    private void Raise()
    {
        if (!_disposed) Changed?.Invoke();
    }

    /// <summary>Brings the progress from the proving thread into the page, a few times a second.</summary>
    private sealed class ProofReport(CellSession session, CancellationToken stop) : IProgress<double>
    {
        private const double Step = 0.05;
        private double _last;

        public void Report(double value)
        {
            if (value < _last + Step || stop.IsCancellationRequested) return;
            _last = value;
            session._page?.Post(_ =>
            {
                if (stop.IsCancellationRequested) return;
                session.Progress = value;
                if (!session._disposed) session.Progressed?.Invoke();
            }, null);
        }
    }
}

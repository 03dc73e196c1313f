using Trivet.Assessment;
using Trivet.Desk.Access;
using Trivet.Store;

namespace Trivet.Desk.Sessions;

/// <summary>The cells one page has open, so that going from sheet to sheet keeps snapshot and running proof.</summary>
public sealed class OpenCells(JobStore store, Assessor assessor, TimeProvider clock, Acting acting) : IAsyncDisposable
{
    private readonly Dictionary<string, CellSession> _open = [];

    /// <summary>The cell, or why it cannot be shown; neither where there is no such cell.</summary>
    public async Task<(CellSession? Session, Files.CellRead? Unreadable)> OpenAsync(string id)
    {
        if (_open.TryGetValue(id, out var open))
        {
            await open.ReadAgainAsync();
            return (open, null);
        }
        if (await store.DraftAsync(id, acting.Person) is not { } draft) return (null, null);
        var read = draft.Read();
        if (read.Cell is not { } cell) return (null, read);
        return (_open[id] = new CellSession(store, assessor, clock, draft, cell) { Language = acting.Language }, null);
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var session in _open.Values) await session.DisposeAsync();
        _open.Clear();
    }
}

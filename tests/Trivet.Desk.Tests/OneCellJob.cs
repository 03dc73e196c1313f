using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Desk.Sessions;
using Trivet.Files;
using Trivet.Store;

namespace Trivet.Desk;

/// <summary>A job folder of its own with one cell, open in one session, as a page has it. Gone when disposed.</summary>
internal sealed class OneCellJob : IAsyncDisposable
{
    private static readonly DateTimeOffset Day = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    private OneCellJob(string folder, JobStore store) => (Folder, Store) = (folder, store);

    public string Folder { get; }
    public JobStore Store { get; }

    /// <summary>The cell opened last; null before the first.</summary>
    public CellSession? Session { get; private set; }

    public static async Task<OneCellJob> StartAsync()
    {
        string folder = Directory.CreateTempSubdirectory("trivet-desk-").FullName;
        return new(folder, Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(folder))).Store);
    }

    public async Task<CellSession> OpenAsync(Cell cell)
    {
        Assert.IsType<SaveOutcome.Saved>(await Store.CreateAsync("lids", cell, new Stamp("ada", Day), "first"));
        return Session = new(Store, new Assessor(), TimeProvider.System, (await Store.DraftAsync("lids", "ada"))!, cell);
    }

    public static Cell Sample(string name) => CellFile.Read(System.Text.Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    public async ValueTask DisposeAsync()
    {
        if (Session is not null) await Session.DisposeAsync();
        await Store.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }
}

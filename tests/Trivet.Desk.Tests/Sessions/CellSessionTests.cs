using Trivet.Assessment;
using Trivet.Desk.Sessions;
using Trivet.Files;
using Trivet.Store;

namespace Trivet.Desk.Sessions;

public sealed class CellSessionTests : IAsyncLifetime
{
    private static readonly DateTimeOffset Day = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
    private readonly string _folder = Directory.CreateTempSubdirectory("trivet-session-").FullName;
    private JobStore _store = null!;

    public async ValueTask InitializeAsync()
    {
        _store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(_folder))).Store;
        Assert.IsType<SaveOutcome.Saved>(await _store.CreateAsync("lids", Made.Cell, new Stamp("ada", Day), "first"));
    }

    public async ValueTask DisposeAsync()
    {
        await _store.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task An_edit_is_shown_at_once_and_on_disk_when_acknowledged()
    {
        await using var session = await OpenAsync();
        var edited = session.Cell with { Name = "Jar lids" };
        var kept = session.EditAsync(edited, "renamed");
        Assert.Equal("Jar lids", session.Cell.Name);
        await kept;
        Assert.Equal("Jar lids", (await _store.DraftAsync("lids", "ada", TestContext.Current.CancellationToken))!.Read().Cell!.Name);
    }

    [Fact]
    public async Task Edits_in_a_row_are_kept_in_their_order_and_undone_one_by_one()
    {
        await using var session = await OpenAsync();
        var first = session.EditAsync(session.Cell with { Name = "one" }, "one");
        var second = session.EditAsync(session.Cell with { Name = "two" }, "two");
        await Task.WhenAll(first, second);
        await session.UndoAsync();
        Assert.Equal("one", session.Cell.Name);
        await session.UndoAsync();
        Assert.Equal(Made.Cell.Name, session.Cell.Name);
        await session.RedoAsync();
        Assert.Equal("one", session.Cell.Name);
    }

    [Fact]
    public async Task A_cell_only_shown_is_not_kept()
    {
        await using var session = await OpenAsync();
        session.Show(session.Cell with { Name = "in the hand" });
        Assert.Equal("in the hand", session.Cell.Name);
        Assert.False((await _store.DraftAsync("lids", "ada", TestContext.Current.CancellationToken))!.HasEdits);
    }

    [Fact]
    public async Task An_edit_made_in_another_window_meanwhile_is_shown_and_told()
    {
        await using var here = await OpenAsync();
        await using var there = await OpenAsync();
        await there.EditAsync(there.Cell with { Name = "there" }, "there");
        await here.EditAsync(here.Cell with { Name = "here" }, "here");
        Assert.Equal("there", here.Cell.Name);
        Assert.Contains("another window", here.Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_window_that_only_looks_follows_the_edits_of_another()
    {
        await using var here = await OpenAsync();
        await using var there = await OpenAsync();
        int told = 0;
        here.Changed += () => told++;
        await here.LookAsync();
        Assert.Equal(0, told);
        await there.EditAsync(there.Cell with { Name = "there" }, "there");
        await here.LookAsync();
        Assert.Equal(1, told);
        Assert.Equal("there", here.Cell.Name);
        Assert.True(here.Draft.HasEdits);

        await here.EditAsync(here.Cell with { Name = "here" }, "here");
        Assert.Equal("here", here.Cell.Name);
        Assert.Empty(here.Trouble);
        Assert.IsType<SaveOutcome.Saved>(await here.SaveAsync("both"));
        await there.LookAsync();
        Assert.Equal(2, there.Draft.Base);
        Assert.Equal("here", there.Cell.Name);
    }

    [Fact]
    public async Task An_edit_on_its_way_to_the_disk_is_not_taken_back_by_going_to_another_sheet()
    {
        await using var session = await OpenAsync();
        for (int i = 0; i < 20; i++)
        {
            string name = $"edit {i}";
            var kept = session.EditAsync(session.Cell with { Name = name }, name);
            await session.ReadAgainAsync();
            Assert.Equal(name, session.Cell.Name);
            Assert.Equal(name, session.Draft.Read().Cell!.Name);
            await kept;
        }
    }

    [Fact]
    public async Task A_file_edited_outside_is_offered_and_taken_as_one_edit()
    {
        await using var session = await OpenAsync();
        string file = Assert.IsType<ExportOutcome.Written>(await session.WriteFileAsync()).File;
        Assert.Equal(Path.Combine(_folder, "lids.json"), file);
        Assert.Null(session.Offered);
        int told = 0;
        session.Changed += () => told++;
        await session.LookAtFilesAsync();
        Assert.Equal(0, told);

        await File.WriteAllTextAsync(file, CellFile.Write(Made.Cell with { Name = "edited outside" }), TestContext.Current.CancellationToken);
        await session.LookAtFilesAsync();
        Assert.Equal(1, told);
        Assert.Equal("/name", Assert.Single(session.Offered!.Changes).Pointer);
        Assert.IsType<ExportOutcome.Refused>(await session.WriteFileAsync());

        await session.TakeFileAsync(session.Offered);
        Assert.Equal("edited outside", session.Cell.Name);
        Assert.Null(session.Offered);
        await session.UndoAsync();
        Assert.NotNull(session.Offered);
        await session.RedoAsync();
        Assert.IsType<SaveOutcome.Saved>(await session.SaveAsync("taken"));
        Assert.IsType<CellFileState.InStep>(Assert.Single(session.Files));
    }

    [Fact]
    public async Task Saving_makes_the_draft_a_revision_and_empties_it()
    {
        await using var session = await OpenAsync();
        await session.EditAsync(session.Cell with { Name = "saved" }, "renamed");
        var saved = Assert.IsType<SaveOutcome.Saved>(await session.SaveAsync("renamed for the customer"));
        Assert.Equal(2, saved.Revision.Number);
        Assert.False(session.Draft.HasEdits);
        Assert.Equal(2, session.Draft.Base);
    }

    [Fact]
    public async Task The_proof_follows_an_edit_and_a_newer_edit_takes_its_place()
    {
        await using var session = await OpenAsync();
        var proved = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        session.Changed += () =>
        {
            if (session.Now.Proved && session.Cell.Name == "b") proved.TrySetResult();
        };
        await session.EditAsync(session.Cell with { Name = "a" }, "a");
        await session.EditAsync(session.Cell with { Name = "b" }, "b");
        await proved.Task.WaitAsync(TimeSpan.FromMinutes(2), TestContext.Current.CancellationToken);
        Assert.Equal("b", session.Now.Cell.Name);
    }

    private async Task<CellSession> OpenAsync()
    {
        var draft = (await _store.DraftAsync("lids", "ada", TestContext.Current.CancellationToken))!;
        return new CellSession(_store, new Assessor(), TimeProvider.System, draft, draft.Read().Cell!);
    }
}

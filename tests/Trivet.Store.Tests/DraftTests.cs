using Trivet.Files;

namespace Trivet.Store.Tests;

public sealed class DraftTests(Databases databases)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, OnBoth]
    public async Task Undo_and_redo_work_across_opening_again(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "zero");
        var draft = (await store.DraftAsync("jar-lids", "ada", Stop))!;
        Assert.False(draft.HasEdits || draft.CanUndo || draft.CanRedo);
        foreach (string name in (string[])["one", "two", "three"]) draft = await store.EditAsync(draft, name);

        store = await job.OpenAsync();
        draft = (await store.DraftAsync("jar-lids", "ada", Stop))!;
        Assert.Equal("three", draft.Read().Cell?.Name);
        Assert.Equal(["named one", "named two", "named three"], draft.Edits.Select(e => e.Words));
        draft = await store.UndoAsync(draft, Stop).KeptAsync();
        draft = await store.UndoAsync(draft, Stop).KeptAsync();

        store = await job.OpenAsync();
        draft = (await store.DraftAsync("jar-lids", "ada", Stop))!;
        Assert.Equal("one", draft.Read().Cell?.Name);
        draft = await store.UndoAsync(draft, Stop).KeptAsync();
        Assert.Equal("zero", draft.Read().Cell?.Name);
        Assert.False(draft.CanUndo || draft.HasEdits);
        draft = await store.RedoAsync(draft, Stop).KeptAsync();
        draft = await store.RedoAsync(draft, Stop).KeptAsync();
        Assert.Equal("two", draft.Read().Cell?.Name);
        Assert.True(draft.CanUndo && draft.CanRedo);
    }

    [Theory, OnBoth]
    public async Task An_edit_after_undo_drops_what_was_undone(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "zero");
        var draft = (await store.DraftAsync("jar-lids", "ada", Stop))!;
        foreach (string name in (string[])["one", "two", "three"]) draft = await store.EditAsync(draft, name);
        draft = await store.UndoAsync(draft, Stop).KeptAsync();
        draft = await store.UndoAsync(draft, Stop).KeptAsync();

        draft = await store.EditAsync(draft, "other");

        Assert.Equal(["named one", "named other"], draft.Edits.Select(e => e.Words));
        Assert.False(draft.CanRedo);
        Assert.Empty(await store.CheckAsync(Stop));
    }

    [Theory, OnBoth]
    public async Task Saving_a_draft_makes_a_revision_and_empties_it(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "zero");
        var draft = await store.EditAsync((await store.DraftAsync("jar-lids", "ada", Stop))!, "one");

        var saved = Assert.IsType<SaveOutcome.Saved>(await store.SaveDraftAsync(draft, Invented.Noon, "renamed", Stop)).Revision;

        Assert.Equal((2, "ada", "renamed", CellFile.Hash(Invented.Named("one"))), (saved.Number, saved.By.Person, saved.Words, saved.Hash));
        var after = (await store.DraftAsync("jar-lids", "ada", Stop))!;
        Assert.False(after.HasEdits || after.CanUndo || after.CanRedo || after.Behind);
        Assert.Equal((2, 2), (after.Base, after.Head));
        Assert.Equal("one", Assert.Single(await store.CellsAsync(Stop)).Name);
    }

    [Theory, OnBoth]
    public async Task A_draft_begun_before_someone_saved_is_refused_until_it_is_placed_on_the_head(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "zero");
        await store.EditAsync((await store.DraftAsync("jar-lids", "ada", Stop))!, "mine");
        var theirs = await store.SaveAsync("jar-lids", 1, "theirs");

        var draft = (await store.DraftAsync("jar-lids", "ada", Stop))!;
        Assert.True(draft.Behind);
        Assert.Equal(new SaveOutcome.Conflict(theirs), await store.SaveDraftAsync(draft, Invented.Noon, "", Stop));
        Assert.True((await store.DraftAsync("jar-lids", "ada", Stop))!.HasEdits);

        draft = await store.RebaseAsync(draft, Stop).KeptAsync();
        Assert.False(draft.Behind);
        Assert.Equal(3, Assert.IsType<SaveOutcome.Saved>(await store.SaveDraftAsync(draft, Invented.Noon, "", Stop)).Revision.Number);
    }

    [Theory, OnBoth]
    public async Task A_change_on_an_older_version_of_the_draft_is_refused_with_the_present_one(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "zero");
        var read = (await store.DraftAsync("jar-lids", "ada", Stop))!;
        var now = await store.EditAsync(read, "first page");

        var moved = Assert.IsType<DraftOutcome.Moved>(await store.EditAsync(read, Invented.Named("second page"), Invented.Noon, "", Stop));
        Assert.Equal(now.Version, moved.Now.Version);
        Assert.Equal("first page", moved.Now.Read().Cell?.Name);
        Assert.IsType<DraftOutcome.Moved>(await store.DiscardAsync(read, Stop));
        Assert.IsType<SaveOutcome.Conflict>(await store.SaveDraftAsync(read, Invented.Noon, "", Stop));

        // Neither after the draft was saved and begun anew: a version is never given twice.
        Assert.IsType<SaveOutcome.Saved>(await store.SaveDraftAsync(now, Invented.Noon, "", Stop));
        await store.EditAsync((await store.DraftAsync("jar-lids", "ada", Stop))!, "anew");
        Assert.IsType<DraftOutcome.Moved>(await store.UndoAsync(now, Stop));
    }

    [Theory, OnBoth]
    public async Task Persons_have_drafts_of_their_own(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "zero");
        await store.EditAsync((await store.DraftAsync("jar-lids", "ada", Stop))!, "of ada");
        var grace = await store.EditAsync((await store.DraftAsync("jar-lids", "grace", Stop))!, "of grace");

        await store.DiscardAsync(grace, Stop).KeptAsync();

        Assert.Equal("of ada", (await store.DraftAsync("jar-lids", "ada", Stop))!.Read().Cell?.Name);
        Assert.Equal("zero", (await store.DraftAsync("jar-lids", "grace", Stop))!.Read().Cell?.Name);
        Assert.Equal(["ada"], Assert.Single(await store.CellsAsync(Stop)).Drafting);
    }

    [Theory, OnBoth]
    public async Task The_depth_of_undo_is_bounded_and_the_latest_edits_are_kept(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "zero");
        var draft = (await store.DraftAsync("jar-lids", "ada", Stop))!;
        for (int i = 1; i <= Draft.LargestDepth + 5; i++) draft = await store.EditAsync(draft, $"edit {i}");
        Assert.Equal(Draft.LargestDepth, draft.Edits.Length);

        while (draft.CanUndo) draft = await store.UndoAsync(draft, Stop).KeptAsync();

        Assert.Equal("edit 6", draft.Read().Cell?.Name);
        Assert.True(draft.HasEdits);
        Assert.Empty(await store.CheckAsync(Stop));
    }
}

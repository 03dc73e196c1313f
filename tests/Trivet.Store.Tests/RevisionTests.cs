using System.Security.Cryptography;
using System.Text;
using Trivet.Cells;
using Trivet.Files;

namespace Trivet.Store.Tests;

public sealed class RevisionTests(Databases databases)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, OnBoth]
    public async Task A_saved_revision_comes_back_as_it_was_after_opening_again(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var first = await (await job.OpenAsync()).CreateAsync("jar-lids", "Jar lids, “ä 机” ½");

        var stored = await (await job.OpenAsync()).HeadAsync("jar-lids", Stop);

        Assert.NotNull(stored);
        Assert.Equal(first, stored.Revision);
        Assert.Equal(CellFile.Canonical(Invented.Named("Jar lids, “ä 机” ½")), stored.Text);
        Assert.Equal(new Revision("jar-lids", 1, first.Hash, "", Invented.By("ada"), "made", null), stored.Revision);
        Assert.Equal("Jar lids, “ä 机” ½", stored.Read().Cell?.Name);
    }

    [Theory, OnBoth]
    public async Task The_hash_is_the_sha256_of_the_canonical_text(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var revision = await store.CreateAsync("jar-lids", "Jar lids");
        var stored = await store.HeadAsync("jar-lids", Stop);

        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(stored!.Text))), revision.Hash);
        Assert.Equal(CellFile.Hash(Invented.Named("Jar lids")), revision.Hash);
    }

    [Theory, OnBoth]
    public async Task Each_save_names_its_parent_and_moves_the_head(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var first = await store.CreateAsync("jar-lids", "one");
        var second = await store.SaveAsync("jar-lids", 1, "two");
        var third = await store.SaveAsync("jar-lids", 2, "three");

        Assert.Equal(first.Hash, second.ParentHash);
        Assert.Equal(second.Hash, third.ParentHash);
        Assert.Equal([third, second, first], await store.RevisionsAsync("jar-lids", Stop));
        Assert.Empty(await store.CheckAsync(Stop));
    }

    [Theory, OnBoth]
    public async Task A_save_on_an_older_head_is_refused_with_the_present_one(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "one");
        var second = await store.SaveAsync("jar-lids", 1, "two");

        var outcome = await store.SaveAsync("jar-lids", 1, Invented.Named("other"), Invented.By("grace"), "", Stop);

        Assert.Equal(new SaveOutcome.Conflict(second), outcome);
        Assert.Equal(2, (await store.RevisionsAsync("jar-lids", Stop)).Length);
    }

    [Theory, OnBoth]
    public async Task Of_many_saves_on_one_head_exactly_one_is_taken(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var other = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "one");

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 12).Select(i =>
            (i % 2 == 0 ? store : other).SaveAsync("jar-lids", 1, Invented.Named($"of {i}"), Invented.By($"person-{i}"), "", Stop)));

        var saved = Assert.Single(outcomes.OfType<SaveOutcome.Saved>());
        Assert.All(outcomes.Where(o => o is not SaveOutcome.Saved), o => Assert.Equal(new SaveOutcome.Conflict(saved.Revision), o));
        Assert.Empty(await store.CheckAsync(Stop));
    }

    [Theory, OnBoth]
    public async Task Of_many_cells_made_under_one_id_exactly_one_is_taken(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(i =>
            store.CreateAsync("jar-lids", Invented.Named($"of {i}"), Invented.By($"person-{i}"), "", Stop)));

        var saved = Assert.Single(outcomes.OfType<SaveOutcome.Saved>());
        Assert.All(outcomes.Where(o => o is not SaveOutcome.Saved), o => Assert.Equal(new SaveOutcome.Taken(saved.Revision), o));
    }

    [Theory, OnBoth]
    public async Task Saving_what_the_head_says_already_writes_nothing(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var first = await store.CreateAsync("jar-lids", "one");

        Assert.Equal(new SaveOutcome.Unchanged(first), await store.SaveAsync("jar-lids", 1, Invented.Named("one"), Invented.By("grace"), "", Stop));
        Assert.Single(await store.RevisionsAsync("jar-lids", Stop));
    }

    [Theory, OnBoth]
    public async Task Restoring_makes_a_new_revision_that_names_the_old_one(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var first = await store.CreateAsync("jar-lids", "one");
        var second = await store.SaveAsync("jar-lids", 1, "two");

        var outcome = await store.RestoreAsync("jar-lids", 2, 1, Invented.By("grace"), "back", Stop);

        Assert.Equal(new SaveOutcome.Saved(new Revision("jar-lids", 3, first.Hash, second.Hash, Invented.By("grace"), "back", 1)), outcome);
        Assert.Equal("one", Assert.Single(await store.CellsAsync(Stop)).Name);
        Assert.IsType<SaveOutcome.NotFound>(await store.RestoreAsync("jar-lids", 3, 9, Invented.By("grace"), "", Stop));
    }

    [Theory, OnBoth]
    public async Task Comparing_two_revisions_lists_the_fields_that_differ(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "one");
        await store.SaveAsync("jar-lids", 1, "two");

        var difference = await store.CompareAsync("jar-lids", 1, 2, Stop);

        Assert.Equal(new FieldChange("/name", "one", "two"), Assert.Single(difference!.Changes));
        Assert.Null(await store.CompareAsync("jar-lids", 1, 3, Stop));
    }

    [Theory, OnBoth]
    public async Task Cells_are_listed_by_id_with_their_name_and_who_is_drafting(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("tubes", "Tubes");
        var lids = await store.CreateAsync("jar-lids", "Jar lids");
        await store.CreateAsync("b9", "");
        await store.EditAsync((await store.DraftAsync("tubes", "grace", Stop))!, "Tubes again");

        var cells = await store.CellsAsync(Stop);

        Assert.Equal(["b9", "jar-lids", "tubes"], cells.Select(c => c.Id));
        Assert.Equal(["b9", "Jar lids", "Tubes"], cells.Select(c => c.Name));
        Assert.Equal(lids, cells[1].Head);
        Assert.Equal(["grace"], cells[2].Drafting);
        Assert.Empty(cells[1].Drafting);
    }

    [Theory, OnBoth]
    public async Task What_is_not_there_is_an_answer(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();

        Assert.Empty(await store.CellsAsync(Stop));
        Assert.Null(await store.HeadAsync("none", Stop));
        Assert.Null(await store.DraftAsync("none", "ada", Stop));
        Assert.Empty(await store.RevisionsAsync("none", Stop));
        Assert.IsType<SaveOutcome.NotFound>(await store.SaveAsync("none", 1, Cell.Empty, Invented.By("ada"), "", Stop));
    }

    [Theory, OnBoth]
    public async Task Inputs_without_a_sane_bound_are_refused(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "one");
        var long16 = Cell.Empty with { Note = new string('x', 16 * 1024 * 1024) };

        string[] badIds = ["", "Jar", "jar--lids", "-jar", "jar-", "../jar", "jar lids", "jär", new('a', 65), "jar\n"];
        foreach (string id in badIds)
            Assert.IsType<SaveOutcome.Refused>(await store.CreateAsync(id, Cell.Empty, Invented.By("ada"), "", Stop));
        Assert.Contains("16 MB", Assert.IsType<SaveOutcome.Refused>(await store.SaveAsync("jar-lids", 1, long16, Invented.By("ada"), "", Stop)).Problem, StringComparison.Ordinal);
        foreach (string person in (string[])["", "a\0b", "\ud800", new('p', 129)])
            Assert.IsType<SaveOutcome.Refused>(await store.SaveAsync("jar-lids", 1, Cell.Empty, Invented.By(person), "", Stop));
        foreach (string words in (string[])["a\0b", "\udc00", new('w', 2001)])
            Assert.IsType<SaveOutcome.Refused>(await store.SaveAsync("jar-lids", 1, Cell.Empty, Invented.By("ada"), words, Stop));
        Assert.Single(await store.RevisionsAsync("jar-lids", Stop));
    }

    [Theory, OnBoth]
    public async Task A_text_of_several_megabytes_is_kept(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var large = Cell.Empty with { Note = new string('ü', 3_000_000) };

        Assert.IsType<SaveOutcome.Saved>(await store.CreateAsync("jar-lids", large, Invented.By("ada"), "", Stop));
        Assert.Equal(CellFile.Canonical(large), (await store.HeadAsync("jar-lids", Stop))!.Text);
    }
}

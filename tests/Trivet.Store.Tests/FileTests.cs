using System.Text;
using Trivet.Files;

namespace Trivet.Store.Tests;

public sealed class FileTests(Databases databases)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, OnBoth]
    public async Task A_cell_goes_out_to_a_file_and_comes_in_again_equal(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        var made = await store.CreateAsync("jar-lids", "Jar lids");
        string file = Path.Combine(job.Folder, "jar-lids.json");

        Assert.Equal(made, await store.ExportAsync("jar-lids", 1, file, Stop));
        var back = Assert.IsType<ImportOutcome.Imported>(await store.ImportAsync(file, "copy", Invented.By("ada"), Stop)).Revision;

        Assert.Equal(made.Hash, back.Hash);
        Assert.Equal("read from jar-lids.json", back.Words);
        Assert.Equal(["jar-lids.json"], Directory.GetFiles(job.Folder, "jar-lids*").Select(Path.GetFileName));
        Assert.IsType<SaveOutcome.Taken>(Assert.IsType<ImportOutcome.NotSaved>(await store.ImportAsync(file, "copy", Invented.By("ada"), Stop)).Outcome);
    }

    [Theory, OnBoth]
    public async Task An_outside_edit_is_offered_as_a_draft_with_its_difference(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "one");
        string file = Path.Combine(job.Folder, "jar-lids.json");
        await store.ExportAsync("jar-lids", 1, file, Stop);
        Assert.Equal(new CellFileState.InStep(file), Assert.Single(await store.FilesAsync("jar-lids", Stop)));

        await File.WriteAllTextAsync(file, CellFile.Write(Invented.Named("edited outside")), Stop);

        var edited = Assert.IsType<CellFileState.Edited>(Assert.Single(await store.FilesAsync("jar-lids", Stop)));
        Assert.Equal(new FieldChange("/name", "one", "edited outside"), Assert.Single(edited.Changes));
        var draft = await store.TakeFileAsync((await store.DraftAsync("jar-lids", "ada", Stop))!, edited, Invented.Noon, Stop).KeptAsync();
        Assert.Equal("taken from jar-lids.json", Assert.Single(draft.Edits).Words);
        Assert.IsType<SaveOutcome.Saved>(await store.SaveDraftAsync(draft, Invented.Noon, "taken", Stop));
        Assert.Equal(new CellFileState.InStep(file), Assert.Single(await store.FilesAsync("jar-lids", Stop)));
    }

    [Theory, OnBoth]
    public async Task An_outside_edit_of_an_older_revision_does_not_hide_what_was_saved_since(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "one");
        string file = Path.Combine(job.Folder, "jar-lids.json");
        await store.ExportAsync("jar-lids", 1, file, Stop);
        var second = await store.SaveAsync("jar-lids", 1, "two");
        Assert.IsType<CellFileState.Older>(Assert.Single(await store.FilesAsync("jar-lids", Stop)));

        await File.WriteAllTextAsync(file, CellFile.Write(Invented.Named("edited outside")), Stop);
        var edited = Assert.IsType<CellFileState.Edited>(Assert.Single(await store.FilesAsync("jar-lids", Stop)));
        var draft = await store.TakeFileAsync((await store.DraftAsync("jar-lids", "ada", Stop))!, edited, Invented.Noon, Stop).KeptAsync();

        Assert.True(draft.Behind);
        Assert.Equal(new SaveOutcome.Conflict(second), await store.SaveDraftAsync(draft, Invented.Noon, "", Stop));
    }

    [Theory, OnBoth]
    public async Task A_file_that_is_gone_broken_or_too_long_is_an_answer(Database database)
    {
        await using var job = await databases.NewJobAsync(database);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "one");
        string file = Path.Combine(job.Folder, "jar-lids.json");
        await store.ExportAsync("jar-lids", 1, file, Stop);

        await File.WriteAllTextAsync(file, "{ \"name\": ", Stop);
        Assert.NotEmpty(Assert.IsType<CellFileState.Unreadable>(Assert.Single(await store.FilesAsync("jar-lids", Stop))).Errors);
        await File.WriteAllBytesAsync(file, Encoding.ASCII.GetBytes(new string(' ', 16 * 1024 * 1024 + 1)), Stop);
        Assert.Contains("16 MB", Assert.Single(Assert.IsType<ImportOutcome.Unreadable>(await store.ImportAsync(file, "copy", Invented.By("ada"), Stop)).Errors).Problem, StringComparison.Ordinal);
        File.Delete(file);
        Assert.Equal(new CellFileState.Gone(file), Assert.Single(await store.FilesAsync("jar-lids", Stop)));
        Assert.Single(Assert.IsType<ImportOutcome.Unreadable>(await store.ImportAsync(file, "copy", Invented.By("ada"), Stop)).Errors);
    }

    [Fact]
    public async Task The_head_goes_into_the_job_folder_and_overwrites_nothing_that_no_revision_says()
    {
        await using var job = await databases.NewJobAsync(Database.Sqlite);
        var store = await job.OpenAsync();
        await store.CreateAsync("jar-lids", "one");
        string file = Path.Combine(job.Folder, "jar-lids.json");
        await File.WriteAllTextAsync(file, "somebody's", Stop);
        Assert.Equal(["jar-lids.json"], await store.OtherFilesAsync(Stop));
        Assert.IsType<ExportOutcome.Refused>(await store.ExportHeadAsync("jar-lids", Stop));
        Assert.Equal("somebody's", await File.ReadAllTextAsync(file, Stop));

        File.Delete(file);
        Assert.Equal(file, Assert.IsType<ExportOutcome.Written>(await store.ExportHeadAsync("jar-lids", Stop)).File);
        Assert.Empty(await store.OtherFilesAsync(Stop));
        await store.SaveAsync("jar-lids", 1, "two");
        Assert.Equal(2, Assert.IsType<ExportOutcome.Written>(await store.ExportHeadAsync("jar-lids", Stop)).Revision.Number);
        Assert.Equal(new CellFileState.InStep(file), Assert.Single(await store.FilesAsync("jar-lids", Stop)));

        await File.WriteAllTextAsync(file, CellFile.Write(Invented.Named("edited outside")), Stop);
        Assert.Contains("edited outside", Assert.IsType<ExportOutcome.Refused>(await store.ExportHeadAsync("jar-lids", Stop)).Problem, StringComparison.Ordinal);
        Assert.Contains("edited outside", await File.ReadAllTextAsync(file, Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_folder_that_was_moved_still_knows_its_files()
    {
        string parent = Directory.CreateTempSubdirectory("trivet-store-").FullName;
        string before = Path.Combine(parent, "before"), after = Path.Combine(parent, "after");
        Directory.CreateDirectory(before);
        await using (var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(before), Stop)).Store)
        {
            await store.CreateAsync("jar-lids", "one");
            await store.ExportAsync("jar-lids", 1, Path.Combine(before, "jar-lids.json"), Stop);
        }
        Directory.Move(before, after);
        await using (var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(after), Stop)).Store)
            Assert.Equal(new CellFileState.InStep(Path.Combine(after, "jar-lids.json")), Assert.Single(await store.FilesAsync("jar-lids", Stop)));
        Directory.Delete(parent, recursive: true);
    }
}

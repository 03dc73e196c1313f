using System.Collections.Immutable;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Assessment;
using Trivet.Desk.Access;
using Trivet.Desk.Components.Pages;
using Trivet.Files;
using Trivet.Store;

namespace Trivet.Desk.Sessions;

/// <summary>The job page: what it says of the store and of the files that lie in its folder.</summary>
public sealed class JobFolderTests : BunitContext, IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("trivet-job-page-").FullName;
    private JobStore _store = null!;

    public async ValueTask InitializeAsync() =>
        _store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(_folder))).Store;

    async ValueTask IAsyncDisposable.DisposeAsync()
    {
        await base.DisposeAsync();
        await _store.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void A_store_that_is_not_sound_is_told_with_each_fault_and_what_to_do()
    {
        var page = Page("lids: revision 2 is missing before 3.");
        page.WaitForAssertion(() => Assert.Contains("revision 2 is missing", page.Find("[role=alert]").TextContent, StringComparison.Ordinal));
        Assert.Contains("from a backup", page.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Contains("1 fault", page.Find(".title-block").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cell_file_in_the_folder_is_offered_and_added_and_one_with_errors_is_refused_in_sight()
    {
        await File.WriteAllTextAsync(Path.Combine(_folder, "a-lids.json"), CellFile.Write(Made.Cell), Xunit.TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(Path.Combine(_folder, "wrong.json"), "{ \"naem\": 1 }", Xunit.TestContext.Current.CancellationToken);
        JSInterop.Mode = JSRuntimeMode.Loose;
        var page = Page();
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll(".others li").Count));
        Assert.Contains("sound when opened", page.Find(".title-block").TextContent, StringComparison.Ordinal);

        // Found and pressed in the page's own turn: it may be drawn anew at any moment.
        await page.InvokeAsync(() => page.FindAll(".others button")[1].Click());
        page.WaitForAssertion(() => Assert.Contains("wrong.json was refused", page.Find(".refused").TextContent, StringComparison.Ordinal));
        // The focus follows once the refusal is drawn.
        page.WaitForAssertion(() => Assert.Contains(JSInterop.Invocations, i => i.Identifier.EndsWith("focus", StringComparison.Ordinal)));

        await page.InvokeAsync(() => page.FindAll(".others button")[0].Click());
        page.WaitForAssertion(() => Assert.EndsWith("/cell/a-lids", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal));
        Assert.IsType<CellFileState.InStep>(Assert.Single(await _store.FilesAsync("a-lids", Xunit.TestContext.Current.CancellationToken)));
    }

    private IRenderedComponent<JobFolder> Page(params ImmutableArray<string> faults)
    {
        Services.AddSingleton(_store);
        Services.AddSingleton(new Assessor());
        Services.AddSingleton(TimeProvider.System);
        Services.AddSingleton(new Acting { Person = "ada" });
        Services.AddSingleton(new OutsideDoor(null));
        Services.AddSingleton(new StoreCheck(faults));
        return Render<JobFolder>();
    }
}

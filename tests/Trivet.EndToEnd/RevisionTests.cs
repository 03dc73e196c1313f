using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Trivet.EndToEnd;

/// <summary>What becomes of a cell over time: revisions compared, opened and restored, and a file that someone edits outside.</summary>
[Collection(Chromium.One)]
public sealed class RevisionTests(Chromium chromium, SharedDesk desk)
{
    [Fact]
    public async Task Revisions_are_compared_opened_and_restored()
    {
        var page = await chromium.PageAsync();
        var sheet = await CellPage.FromSampleAsync(page, desk.Address, "labels");
        await sheet.GoAsync("description/mount");
        var height = page.Locator("[data-field='/mount/z']");
        string stood = await height.InputValueAsync();
        await height.FillAsync("1.234 m");
        await height.PressAsync("Enter");
        await Assertions.Expect(page.Locator("textarea")).ToHaveValueAsync(new Regex("1234 mm|1.234 m"));

        await sheet.GoAsync("revisions");
        await page.GetByLabel("What changed, in your words").FillAsync("hung lower");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save revision 2" }).ClickAsync();
        await Assertions.Expect(page.Locator(".answer")).ToHaveTextAsync("Saved as revision 2.");
        await Assertions.Expect(page.Locator(".notice")).ToHaveCountAsync(0);

        var rows = page.Locator(".revisions-table tbody tr");
        await rows.Nth(1).GetByLabel("from").CheckAsync();
        await rows.Nth(0).GetByLabel("to").CheckAsync();
        var compared = page.Locator("section[aria-labelledby='compare-title'] tbody tr");
        await Assertions.Expect(compared).ToHaveCountAsync(1);
        await Assertions.Expect(compared).ToContainTextAsync(stood);
        await sheet.ShotAsync("revisions");

        await page.GetByRole(AriaRole.Button, new() { Name = "Restore revision 1" }).ClickAsync();
        await Assertions.Expect(page.Locator(".answer")).ToHaveTextAsync("Saved as revision 3.");
        await Assertions.Expect(rows.First).ToContainTextAsync("restores 1");
        await page.GetByRole(AriaRole.Link, new() { Name = "Open revision 2" }).ClickAsync();
        await Assertions.Expect(page.Locator(".title-block")).ToContainTextAsync("2, read only");
        await Assertions.Expect(page.Locator(".findings tbody tr").First).ToBeVisibleAsync();
        await sheet.GoAsync("description/mount");
        Assert.Equal(stood, await height.InputValueAsync());
    }

    [Fact]
    public async Task A_file_edited_outside_is_noticed_shown_and_taken_as_a_draft()
    {
        var page = await chromium.PageAsync();
        var sheet = await CellPage.FromSampleAsync(page, desk.Address, "labels");
        await sheet.GoAsync("revisions");
        await page.GetByRole(AriaRole.Button, new() { Name = $"Write revision 1 to {sheet.Id}.json" }).ClickAsync();
        await Assertions.Expect(page.Locator(".files .answer")).ToContainTextAsync("Wrote revision 1");
        await Assertions.Expect(page.Locator(".files .file")).ToContainTextAsync("says what revision 1 says");

        // Someone edits it while the page is open, on whichever sheet.
        await sheet.GoAsync("");
        string file = Path.Combine(desk.Job, $"{sheet.Id}.json");
        string text = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(file, new Regex("\"name\": \"[^\"]*\"").Replace(text, "\"name\": \"Edited outside\"", 1), TestContext.Current.CancellationToken);
        await Assertions.Expect(page.Locator(".notice")).ToContainTextAsync("was edited outside", new() { Timeout = 30_000 });
        await page.GetByRole(AriaRole.Link, new() { Name = "See the difference" }).ClickAsync();
        await Assertions.Expect(page.Locator(".files .changes tbody tr")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator(".files .changes")).ToContainTextAsync("Edited outside");
        await sheet.ShotAsync("file-edited-outside");

        await page.GetByRole(AriaRole.Button, new() { Name = "Take it as my draft" }).ClickAsync();
        await Assertions.Expect(page.Locator(".heading h1")).ToHaveTextAsync("Edited outside");
        await Assertions.Expect(page.Locator(".notice")).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Save revision 2" }).ClickAsync();
        await Assertions.Expect(page.Locator(".files .file")).ToContainTextAsync("says what revision 2 says");

        // The job page tells it too, for whoever opens that first.
        await File.WriteAllTextAsync(file, text, TestContext.Current.CancellationToken);
        File.Delete(file);
        await page.GotoAsync(desk.Address.ToString());
        await Assertions.Expect(page.Locator(".cells tr", new() { HasText = sheet.Id })).ToContainTextAsync("is gone");
        await Assertions.Expect(page.Locator(".title-block")).ToContainTextAsync("sound when opened");
    }
}

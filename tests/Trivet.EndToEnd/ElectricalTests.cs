using Microsoft.Playwright;

namespace Trivet.EndToEnd;

/// <summary>The electrical sheet: one address changed in one place renews plan, strip and what is to be heard.</summary>
[Collection(Chromium.One)]
public sealed class ElectricalTests(Chromium chromium, SharedDesk desk)
{
    [Fact]
    public async Task An_address_changed_by_hand_shows_in_the_strip_and_the_plan_puts_it_right()
    {
        var page = await chromium.PageAsync();
        var sheet = await CellPage.FromSampleAsync(page, desk.Address);
        await sheet.GoAsync("electrical");
        await Assertions.Expect(page.Locator("[data-addresses]")).ToContainTextAsync("rotary switches 1 2");
        await Assertions.Expect(page.Locator("[data-action-addresses]")).ToHaveCountAsync(0);
        await sheet.ShotAsync("electrical");

        await sheet.GoAsync("description/cabinet");
        var address = page.Locator("[data-field='/cabinet/modules/axis-b/address']");
        await address.FillAsync("11");
        await address.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Undo" })).ToBeEnabledAsync();

        await sheet.GoAsync("electrical");
        var row = page.Locator("[data-addresses] tr.short");
        await Assertions.Expect(row).ToHaveCountAsync(1);
        await Assertions.Expect(row).ToContainTextAsync("change to 12");
        await sheet.ShotAsync("electrical-change");
        await page.Locator("[data-action-addresses]").ClickAsync();
        await Assertions.Expect(row).ToHaveCountAsync(0);
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Undo" })).ToBeEnabledAsync();
    }

    [Fact]
    public async Task Cables_are_shown_by_axis_and_an_edited_list_is_a_difference_first()
    {
        var page = await chromium.PageAsync();
        var sheet = await CellPage.FromSampleAsync(page, desk.Address);
        await sheet.GoAsync("electrical");
        var cables = page.Locator("[data-table='cables'] tbody tr");
        await Assertions.Expect(cables).ToHaveCountAsync(23);
        await page.Locator("svg a[href*='axis-b']").First.ClickAsync();
        await Assertions.Expect(page.Locator("[data-module='axis-b'] .opened li").First).ToContainTextAsync("W1B");
        await page.SelectOptionAsync("#cables-axis", "b");
        await Assertions.Expect(cables).ToHaveCountAsync(4);
        await Assertions.Expect(page.Locator("[data-section='diagram'] polyline")).ToHaveCountAsync(4);

        var download = await page.RunAndWaitForDownloadAsync(() => page.Locator("[data-download='edit.xlsx']").ClickAsync());
        string book = Path.Combine(Path.GetTempPath(), $"trivet-{Guid.NewGuid():n}.xlsx"), list = Path.ChangeExtension(book, "cables.csv");
        try
        {
            await download.SaveAsAsync(book);
            await page.WaitForFunctionAsync("document.querySelector('#edited-list')?._blazorInputFileNextFileId !== undefined");
            await page.SetInputFilesAsync("#edited-list", book);
            await Assertions.Expect(page.Locator("[data-edited]")).ToContainTextAsync("says what the cell says");
            await File.WriteAllTextAsync(list, "id;length\r\nmotor-b;5,5 m\r\n", TestContext.Current.CancellationToken);
            await page.SetInputFilesAsync("#edited-list", list);
            var changes = page.Locator("[data-table='edited'] tbody tr");
            await Assertions.Expect(changes).ToHaveCountAsync(1);
            await Assertions.Expect(changes).ToContainTextAsync("5.5 m");
            await sheet.ShotAsync("electrical-edited");
            await page.Locator("[data-action-edited]").ClickAsync();
            await Assertions.Expect(cables.Filter(new() { HasText = "W1B" })).ToContainTextAsync("5.5 m");
            await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Undo" })).ToBeEnabledAsync();
        }
        finally
        {
            File.Delete(book);
            File.Delete(list);
        }
    }

    [Theory]
    [InlineData("biscuits", 1440, 900, ColorScheme.Dark)]
    [InlineData("jar-lids", 390, 844, ColorScheme.Light)]
    [InlineData("tight-corner", 1024, 768, ColorScheme.Light)]
    public async Task It_fits_the_screen_with_any_cabinet_or_none(string sample, int width, int height, ColorScheme scheme)
    {
        var page = await chromium.PageAsync(width, height, scheme);
        var sheet = await CellPage.FromSampleAsync(page, desk.Address, sample);
        await sheet.GoAsync("electrical");
        await Assertions.Expect(page.Locator("main h2").First).ToBeVisibleAsync();
        await sheet.ShotAsync($"electrical-{sample}");
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"), "the page scrolls sideways");
    }
}

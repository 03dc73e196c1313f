using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Trivet.EndToEnd;

/// <summary>A cell in the browser, by what a person sees and does there.</summary>
internal sealed class CellPage(IPage page, Uri desk, string id)
{
    public string Id => id;

    /// <summary>Adds the complete rail delta of the samples to the job and opens it.</summary>
    public static async Task<CellPage> FromSampleAsync(IPage page, Uri desk, string sample = "jar-lids")
    {
        await page.GotoAsync(desk.ToString());
        string id = $"{sample}-{Guid.NewGuid().ToString("N")[..6]}";
        await page.Locator($"input[type=radio][value='{sample}']").CheckAsync();
        await page.GetByLabel("Id of the new cell").FillAsync(id);
        await page.GetByRole(AriaRole.Button, new() { Name = "Add", Exact = true }).ClickAsync();
        await page.WaitForURLAsync(new Regex($"/cell/{id}$"));
        return new(page, desk, id);
    }

    public static async Task<CellPage> OpenAsync(IPage page, Uri desk, string id)
    {
        var sheet = new CellPage(page, desk, id);
        await sheet.GoAsync("");
        return sheet;
    }

    /// <summary>Goes to a sheet of the cell.</summary>
    public async Task GoAsync(string sheet)
    {
        await page.GotoAsync(new Uri(desk, $"/cell/{id}{(sheet.Length > 0 ? "/" + sheet : "")}").ToString());
        await Assertions.Expect(page.Locator(".heading nav")).ToBeVisibleAsync();
    }

    /// <summary>Waits until the ledger shown is the proved one, with its advice.</summary>
    public Task ProvedAsync() =>
        Assertions.Expect(page.Locator("[data-settled='yes']")).ToBeAttachedAsync(new() { Timeout = 300_000 });

    /// <summary>Presses something that changes the cell, and waits for the new ledger, proved.</summary>
    public async Task PressAsync(ILocator button)
    {
        string before = (await page.Locator(".findings").GetAttributeAsync("data-serial"))!;
        await button.ClickAsync();
        await Assertions.Expect(page.Locator(".findings")).Not.ToHaveAttributeAsync("data-serial", before);
        await ProvedAsync();
    }

    public Task UndoAsync() => PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Undo" }));
    public Task RedoAsync() => PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Redo" }));

    /// <summary>How many findings have a verdict, as the ledger's own count says.</summary>
    public async Task<int> CountAsync(string verdict) =>
        int.Parse(await page.Locator(".ledger .choice button", new() { HasText = verdict }).Locator("b").InnerTextAsync(), CultureInfo.InvariantCulture);

    /// <summary>Opens findings that fall short, worst first, until one has advice; its button to apply it.</summary>
    public async Task<ILocator> OpenFirstWithAdviceAsync()
    {
        var rows = page.Locator("tr.short [data-row]");
        int count = await rows.CountAsync();
        var apply = page.Locator("[data-advice]").First;
        for (int i = 0; i < count; i++)
        {
            if (await rows.Nth(i).GetAttributeAsync("aria-expanded") != "true") await rows.Nth(i).ClickAsync();
            await Assertions.Expect(rows.Nth(i)).ToHaveAttributeAsync("aria-expanded", "true");
            if (await apply.CountAsync() > 0) return apply;
        }
        Assert.Fail("No finding that falls short has advice.");
        return apply;
    }

    public async Task ShotAsync(string name) =>
        await page.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screens, $"{name}.png") });
}

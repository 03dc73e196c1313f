using Microsoft.Playwright;

namespace Trivet.EndToEnd;

/// <summary>The 3-D drawing in a real browser, by software WebGL.</summary>
[Collection(Chromium.Two)]
public sealed class SpaceTests(Chromium chromium, SharedDesk desk)
{
    [Fact]
    public async Task The_cell_is_drawn_and_the_robot_follows_the_tool_point()
    {
        var page = await chromium.PageAsync();
        var sheet = await CellPage.FromSampleAsync(page, desk.Address);
        await sheet.ProvedAsync();
        await page.Locator("[data-drawing='Space']").ClickAsync();
        var canvas = page.Locator(".canvas");
        await Assertions.Expect(canvas).ToHaveAttributeAsync("data-reached", "true");
        await page.WaitForTimeoutAsync(500);
        Assert.True(await DistinctColoursAsync(page) > 12, "the drawing is blank");
        await sheet.ShotAsync("space");

        string before = await page.Locator(".tool-at").InnerTextAsync();
        await canvas.FocusAsync();
        await page.Keyboard.PressAsync("Alt+ArrowRight");
        await Assertions.Expect(page.Locator(".tool-at")).Not.ToHaveTextAsync(before);
    }

    [Fact]
    public async Task A_station_is_moved_in_the_drawing_and_that_is_one_edit()
    {
        var page = await chromium.PageAsync();
        var sheet = await CellPage.FromSampleAsync(page, desk.Address);
        await sheet.ProvedAsync();
        await page.Locator("[data-drawing='Space']").ClickAsync();
        var canvas = page.Locator(".canvas");
        await Assertions.Expect(canvas).ToHaveAttributeAsync("data-reached", "true");
        await page.GetByRole(AriaRole.Button, new() { Name = "Above" }).ClickAsync();
        await page.WaitForTimeoutAsync(500);
        var box = (await canvas.BoundingBoxAsync())!;
        string undo = "button:has-text('Undo')";
        await Assertions.Expect(page.Locator(undo)).ToBeDisabledAsync();

        var (x, y) = await StationAsync(page, box);
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x + 12, y, new() { Steps = 4 });
        await sheet.ShotAsync("space-station-in-hand");
        await page.Mouse.UpAsync();
        await Assertions.Expect(page.Locator(".space [role=status]")).ToContainTextAsync(" at x ");
        await Assertions.Expect(page.Locator(undo)).ToBeEnabledAsync();
        await sheet.UndoAsync();
        await Assertions.Expect(page.Locator(undo)).ToBeDisabledAsync();
    }

    /// <summary>Feels over the picture until a station is in the hand.</summary>
    private static async Task<(float X, float Y)> StationAsync(IPage page, LocatorBoundingBoxResult box)
    {
        for (int row = 2; row < 18; row++)
        {
            for (int column = 2; column < 18; column++)
            {
                float x = box.X + box.Width * column / 20, y = box.Y + box.Height * row / 20;
                await page.Mouse.MoveAsync(x, y);
                await page.Mouse.DownAsync();
                string? held = await page.Locator(".canvas").GetAttributeAsync("data-grasped");
                await page.Mouse.UpAsync();
                if (held?.StartsWith("/stations/", StringComparison.Ordinal) == true) return (x, y);
            }
        }
        throw new Xunit.Sdk.XunitException("No station was felt in the picture.");
    }

    [Fact]
    public async Task Past_an_end_stop_the_robot_stands_in_the_drawing_with_that_chain_marked()
    {
        var page = await chromium.PageAsync();
        var sheet = await CellPage.FromSampleAsync(page, desk.Address, "tight-corner");
        var travel = page.Locator("tr.short [data-row]", new() { HasTextString = "travel" }).First;
        await travel.ClickAsync();
        await Assertions.Expect(travel).ToHaveAttributeAsync("aria-expanded", "true");
        await page.Locator("[data-drawing='Space']").ClickAsync();
        await Assertions.Expect(page.Locator(".canvas")).ToHaveAttributeAsync("data-beyond", "true");
        await Assertions.Expect(page.Locator(".tool-at")).ToContainTextAsync("past an end stop");
        await page.WaitForTimeoutAsync(500);
        await sheet.ShotAsync("space-past-an-end-stop");
        await page.GetByRole(AriaRole.Link, new() { Name = "how it is judged" }).ClickAsync();
        await Assertions.Expect(page.Locator(".heading h1")).ToContainTextAsync("travel");
        await sheet.GoAsync("mount");
        await Assertions.Expect(page.Locator(".trade svg.tv")).ToBeVisibleAsync(new() { Timeout = 180_000 });
        await sheet.ShotAsync("mount-heights");
    }

    [Fact]
    public async Task Without_WebGL_the_page_says_so_and_the_rest_works()
    {
        var page = await chromium.PageAsync();
        await page.AddInitScriptAsync("HTMLCanvasElement.prototype.getContext = () => null;");
        await CellPage.FromSampleAsync(page, desk.Address);
        await page.Locator("[data-drawing='Space']").ClickAsync();
        await Assertions.Expect(page.Locator(".no-space")).ToBeVisibleAsync();
        await page.Locator("[data-drawing='Plan']").ClickAsync();
        await Assertions.Expect(page.Locator(".plan svg.tv")).ToBeVisibleAsync();
    }

    private static Task<int> DistinctColoursAsync(IPage page) => page.EvaluateAsync<int>("""
        () => {
          const gl = document.querySelector('.canvas canvas');
          const copy = document.createElement('canvas');
          copy.width = 160; copy.height = 120;
          const pen = copy.getContext('2d');
          pen.drawImage(gl, 0, 0, 160, 120);
          const seen = new Set();
          const data = pen.getImageData(0, 0, 160, 120).data;
          for (let i = 0; i < data.length; i += 4) seen.add((data[i] >> 3) << 10 | (data[i + 1] >> 3) << 5 | data[i + 2] >> 3);
          return seen.size;
        }
        """);
}

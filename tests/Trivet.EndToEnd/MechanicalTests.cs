using Microsoft.Playwright;

namespace Trivet.EndToEnd;

/// <summary>The mechanical sheet, section by section.</summary>
[Collection(Chromium.Two)]
public sealed class MechanicalTests(Chromium chromium, SharedDesk desk)
{
    [Theory]
    [InlineData("jar-lids", 1440, 900, ColorScheme.Dark)]
    [InlineData("jar-lids", 390, 844, ColorScheme.Light)]
    [InlineData("tight-corner", 1024, 768, ColorScheme.Light)]
    public async Task It_fits_the_screen_with_all_sections_or_what_is_missing(string sample, int width, int height, ColorScheme scheme)
    {
        var page = await chromium.PageAsync(width, height, scheme);
        var sheet = await CellPage.FromSampleAsync(page, desk.Address, sample);
        await sheet.GoAsync("mechanical");
        await Assertions.Expect(page.Locator("[data-frame='there']")).ToBeVisibleAsync();
        // Parts that reach beyond the edge, and are not within one that scrolls by itself.
        string beyond = await page.EvaluateAsync<string>("""
            () => {
              const scrolls = e => e && e !== document.documentElement && (getComputedStyle(e).overflowX !== 'visible' || scrolls(e.parentElement));
              return document.documentElement.scrollWidth <= innerWidth ? '' : [...document.querySelectorAll('body *')]
                .filter(e => e.getBoundingClientRect().right > innerWidth + 1 && !scrolls(e.parentElement))
                .map(e => `${e.tagName}.${e.className.baseVal ?? e.className} in ${e.parentElement.className}`).slice(0, 6).join(', ');
            }
            """);
        Assert.True(beyond.Length == 0, $"the page scrolls sideways: {beyond}");
        var sections = await page.Locator("main section[aria-labelledby]").AllAsync();
        Assert.True(sections.Count >= 6, $"{sections.Count} sections");
        foreach (var section in sections)
        {
            await section.EvaluateAsync("part => part.scrollIntoView()");
            await sheet.ShotAsync($"mechanical-{sample}-{width}-{await section.GetAttributeAsync("aria-labelledby")}");
        }
    }
}

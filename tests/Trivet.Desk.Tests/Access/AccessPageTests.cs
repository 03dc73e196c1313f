using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Desk.Components.Pages;
using Trivet.Desk.Network;
using Trivet.Store;
using Trivet.Views.Words;

namespace Trivet.Desk.Access;

/// <summary>The page of people and devices: the labels for cabinet doors.</summary>
public sealed class AccessPageTests : BunitContext, IAsyncLifetime
{
    private static readonly AccessWords Words = Locale.English.Language.Access;

    private NetworkDesk _desk = null!;

    public async ValueTask InitializeAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        _desk = await NetworkDesk.StartAsync();
    }

    public new async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await _desk.DisposeAsync();
    }

    [Fact]
    public async Task On_the_network_each_cell_has_its_label()
    {
        var page = Show(_desk.Services.GetRequiredService<OutsideDoor>());
        page.WaitForAssertion(() => Assert.Single(page.FindAll(".door-labels li")));
        Assert.Contains(_desk.Network.ToString(), page.Markup, StringComparison.Ordinal);
        // Its port was a free one: what is printed now may lead nowhere tomorrow.
        Assert.Contains(Words.DoorLabelsPort, page.FindAll(".caution").Select(c => c.TextContent));
        await page.InvokeAsync(() => page.Find(".door-labels button").Click());
        var saved = Assert.Single(JSInterop.Invocations["trivet.save"]);
        Assert.Equal(["lids-door-label.pdf", "application/pdf"], saved.Arguments.Take(2));
        Assert.Equal("%PDF-"u8.ToArray(), ((byte[])saved.Arguments[2]!)[..5]);
    }

    [Fact]
    public void On_the_machine_alone_the_page_says_why_there_is_none_and_how_to_get_one()
    {
        var page = Show(new(null));
        page.WaitForAssertion(() => Assert.Contains(Words.DoorLabelsNone, page.FindAll(".note").Select(n => n.TextContent)));
        Assert.Contains("--network --host", Words.DoorLabelsNone, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".door-labels"));
        Assert.DoesNotContain(Words.DoorLabelsPort, page.FindAll(".caution").Select(n => n.TextContent));
    }

    private IRenderedComponent<AccessPage> Show(OutsideDoor door)
    {
        Services.AddSingleton(_desk.Store);
        Services.AddSingleton(_desk.Services.GetRequiredService<People>());
        Services.AddSingleton(_desk.Services.GetRequiredService<PairingCodes>());
        Services.AddSingleton(TimeProvider.System);
        Services.AddSingleton(new Acting { Person = "ada", AtTheMachine = true });
        Services.AddSingleton(door);
        return Render<AccessPage>();
    }
}

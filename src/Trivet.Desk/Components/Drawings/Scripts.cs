using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Trivet.Desk.Components.Drawings;

/// <summary>What the drawings ask of the page's script.</summary>
internal static class Scripts
{
    /// <summary>Lets the stations in a drawing be moved. The answer's <c>dispose</c> ends that.</summary>
    public static ValueTask<IJSObjectReference> MovableStationsAsync(this IJSRuntime page, ElementReference host, object self) =>
        page.InvokeAsync<IJSObjectReference>("trivet.movableStations", host, self);

    /// <summary>Plays a cycle in the drawings and charts within an element: <c>give(playback)</c>, <c>goTo(seconds)</c>.</summary>
    public static ValueTask<IJSObjectReference> PlayerAsync(this IJSRuntime page, ElementReference host) =>
        page.InvokeAsync<IJSObjectReference>("trivet.player", host);

    /// <summary>The 3-D drawing in an element; null where the browser cannot show it.</summary>
    public static async Task<IJSObjectReference?> OpenSceneAsync(this IJSRuntime page, ElementReference host, object self)
    {
        try
        {
            return await page.InvokeAsync<IJSObjectReference>("trivet.openScene", host, self);
        }
        catch (JSException)
        {
            return null;
        }
    }

    /// <summary>Ends what the script holds for a component; the page may be gone already.</summary>
    public static async ValueTask LetGoAsync(this IJSObjectReference? handle)
    {
        if (handle is null) return;
        try
        {
            await handle.InvokeVoidAsync("dispose");
            await handle.DisposeAsync();
        }
        catch (Exception e) when (e is JSDisconnectedException or OperationCanceledException or JSException)
        {
            // Nothing is left that could hold anything.
        }
    }
}

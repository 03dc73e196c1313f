using Microsoft.JSInterop;

namespace Trivet.Floor.Device;

/// <summary>What the browser tells the page, and the few things only a script can do.</summary>
public sealed class Browser(IJSRuntime script) : IAsyncDisposable
{
    private IJSObjectReference? _module;
    private DotNetObjectReference<Browser>? _self;

    /// <summary>The device has a network. It says nothing about what can be reached over it.</summary>
    public bool Online { get; private set; } = true;

    /// <summary>Everything the page needs is on this device, so it opens without a network.</summary>
    public bool Ready { get; private set; }

    /// <summary>A newer page has been fetched and waits to be taken.</summary>
    public bool NewerWaits { get; private set; }

    public event Action? Changed;

    public async Task StartAsync()
    {
        _module = await script.InvokeAsync<IJSObjectReference>("import", "./floor.js");
        _self = DotNetObjectReference.Create(this);
        await _module.InvokeVoidAsync("watch", _self);
    }

    [JSInvokable]
    public void Tell(bool online, bool ready, bool newerWaits)
    {
        (Online, Ready, NewerWaits) = (online, ready, newerWaits);
        Changed?.Invoke();
    }

    /// <summary>Changes over to the newer page and loads it.</summary>
    public async Task TakeNewerAsync() => await _module!.InvokeVoidAsync("takeNewer");

    public async Task SaveFileAsync(string name, string text) => await _module!.InvokeVoidAsync("saveFile", name, text);

    /// <summary>Begins the next screen at its top, also for those who hear it read.</summary>
    public async Task ToTopAsync() => await _module!.InvokeVoidAsync("toTop");

    public async ValueTask DisposeAsync()
    {
        if (_module is not null) await _module.DisposeAsync();
        _self?.Dispose();
    }
}

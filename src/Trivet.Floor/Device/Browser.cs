using Microsoft.JSInterop;

namespace Trivet.Floor.Device;

/// <summary>What the browser tells the page, and the few things only a script can do.</summary>
public sealed class Browser(IJSRuntime script) : IAsyncDisposable
{
    private IJSObjectReference? _module;
    private DotNetObjectReference<Browser>? _self;

    /// <summary>The device has a network. It says nothing about what can be reached over it.</summary>
    public bool Online { get; private set; } = true;

    /// <summary>The browser trusts the address: HTTPS under a certificate it knows, or this machine itself.</summary>
    public bool Secure { get; private set; }

    /// <summary>Everything the page needs is on this device, and its service worker answers for it, so it opens without a network.</summary>
    public bool Worker { get; private set; }

    /// <summary>The browser has promised not to clear what the page keeps when it runs short of room.</summary>
    public bool Kept { get; private set; }

    /// <summary>A newer page has been fetched and waits to be taken.</summary>
    public bool NewerWaits { get; private set; }

    /// <summary>Minutes that local time is ahead of UTC.</summary>
    public int LocalOffset { get; private set; }

    public event Action? Changed;

    public async Task StartAsync()
    {
        _module = await script.InvokeAsync<IJSObjectReference>("import", "./floor.js");
        _self = DotNetObjectReference.Create(this);
        await _module.InvokeVoidAsync("watch", _self);
    }

    [JSInvokable]
    public void Tell(bool online, bool secure, bool worker, bool kept, bool newerWaits, int localOffset)
    {
        (Online, Secure, Worker, Kept, NewerWaits, LocalOffset) = (online, secure, worker, kept, newerWaits, localOffset);
        Changed?.Invoke();
    }

    /// <summary>Changes over to the newer page and loads it.</summary>
    public async Task TakeNewerAsync() => await _module!.InvokeVoidAsync("takeNewer");

    public async Task SaveFileAsync(string name, string text) => await _module!.InvokeVoidAsync("saveFile", name, text);

    public async Task FocusAsync(string id) => await _module!.InvokeVoidAsync("focusOn", id);

    /// <returns>BCP 47 tags of the languages that the person reads, the best first.</returns>
    public async Task<string[]> SpokenAsync() => await _module!.InvokeAsync<string[]>("spoken");

    public async Task LanguageAsync(string tag) => await _module!.InvokeVoidAsync("language", tag);

    /// <summary>Begins the next screen at its top, also for those who hear it read.</summary>
    public async Task ToTopAsync() => await _module!.InvokeVoidAsync("toTop");

    public async ValueTask DisposeAsync()
    {
        if (_module is not null) await _module.DisposeAsync();
        _self?.Dispose();
    }
}

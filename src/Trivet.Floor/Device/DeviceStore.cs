using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Microsoft.JSInterop;
using Trivet.Files.Floor;

namespace Trivet.Floor.Device;

/// <summary>
/// What this browser keeps for the page: the bundle, the chain of this device, what other devices wrote. It survives reloading, closing and
/// being offline. A method that keeps something gives an empty text when it is on disk, else the name of the browser's error.
/// </summary>
public sealed class DeviceStore(IJSRuntime script)
{
    /// <summary>The error of a browser that has no room left, and of a sequence that another window took first.</summary>
    public const string NoRoom = "QuotaExceededError", Taken = "ConstraintError";

    private IJSObjectReference? _module;

    /// <summary>False where the browser keeps nothing (a private window, storage forbidden).</summary>
    public async Task<bool> StartAsync()
    {
        try
        {
            _module = await script.InvokeAsync<IJSObjectReference>("import", "./store.js");
            return await PutAsync("opened", "yes") is "";
        }
        catch (JSException)
        {
            return false;
        }
    }

    /// <summary>A text kept under a name; null where there is none, or it cannot be read.</summary>
    public async Task<string?> GetAsync(string key)
    {
        try
        {
            return await _module!.InvokeAsync<string?>("get", key);
        }
        catch (JSException)
        {
            return null;
        }
    }

    public async Task<string> PutAsync(string key, string text) => await _module!.InvokeAsync<string>("put", key, text);

    /// <summary>The bundle kept; null where there is none, or one that is damaged or of another version.</summary>
    public async Task<FloorBundle?> BundleAsync() =>
        await GetAsync("bundle") is { } text ? FloorBundleFile.Read(Encoding.UTF8.GetBytes(text)).Bundle : null;

    public Task<string> KeepAsync(FloorBundle bundle) => PutAsync("bundle", FloorBundleFile.Write(bundle));

    /// <summary>The chain of this device, oldest first; null where it cannot be read.</summary>
    public async Task<ImmutableArray<DeviceEntry>?> ChainAsync()
    {
        try
        {
            return [.. JsonSerializer.Deserialize(await _module!.InvokeAsync<string>("chain"), FloorJson.Default.DeviceEntryArray) ?? []];
        }
        catch (Exception e) when (e is JSException or JsonException)
        {
            return null;
        }
    }

    public async Task<string> AddAsync(DeviceEntry entry) => await _module!.InvokeAsync<string>("add", JsonSerializer.Serialize(entry, FloorJson.Default.DeviceEntry));

    /// <summary>Lays receipts beside entries that are kept.</summary>
    public async Task<string> LayAsync(ImmutableArray<DeviceEntry> entries) =>
        await _module!.InvokeAsync<string>("lay", JsonSerializer.Serialize([.. entries], FloorJson.Default.DeviceEntryArray));

    /// <summary>What other devices wrote, as far as it was fetched.</summary>
    public async Task<ImmutableArray<ReceivedEntry>> OthersAsync()
    {
        try
        {
            return [.. JsonSerializer.Deserialize(await _module!.InvokeAsync<string>("others"), FloorJson.Default.ReceivedEntryArray) ?? []];
        }
        catch (Exception e) when (e is JSException or JsonException)
        {
            return [];
        }
    }

    /// <param name="head">Number of the receipt up to which everything is here now.</param>
    public async Task<string> AddOthersAsync(ImmutableArray<ReceivedEntry> entries, long head) => await _module!.InvokeAsync<string>(
        "addOthers", JsonSerializer.Serialize([.. entries], FloorJson.Default.ReceivedEntryArray), head.ToString(System.Globalization.CultureInfo.InvariantCulture));

    /// <summary>Takes what a file input holds. Gives the hash, or empty where nothing was chosen, or the name of an error.</summary>
    /// <param name="line">Burnt in below the picture: what it shows.</param>
    public async Task<string> KeepPhotographAsync(Microsoft.AspNetCore.Components.ElementReference input, string line) => await _module!.InvokeAsync<string>("keepPhotograph", input, line);

    /// <returns>How many still wait, and how many the desk does not take.</returns>
    public async Task<(int Waiting, int Refused)> SendPhotographsAsync(string address, string token) =>
        await _module!.InvokeAsync<int[]>("sendPhotographs", address, token) is [var waiting, var refused] ? (waiting, refused) : default;

    /// <returns>How many the desk has not received.</returns>
    public async Task<int> PhotographsWaitingAsync() => await _module!.InvokeAsync<int>("photographsWaiting");

    /// <summary>A photograph to look at, as a data address; null where it is not on this device.</summary>
    public async Task<string?> PhotographAsync(string hash) => await _module!.InvokeAsync<string?>("photograph", hash);
}

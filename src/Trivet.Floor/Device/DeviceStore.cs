using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Microsoft.JSInterop;
using Trivet.Files.Floor;

namespace Trivet.Floor.Device;

/// <summary>What this browser keeps for the page: the bundle, and the entries typed. It survives reloading, closing and being offline.</summary>
public sealed class DeviceStore(IJSRuntime script)
{
    private const string BundleKey = "trivet-floor.bundle", EntriesKey = "trivet-floor.entries", DeviceKey = "trivet-floor.device";

    /// <summary>The bundle kept; null where there is none, or one that is damaged.</summary>
    public async Task<FloorBundle?> BundleAsync() =>
        await GetAsync(BundleKey) is { } text ? FloorBundleFile.Read(Encoding.UTF8.GetBytes(text)).Bundle : null;

    /// <summary>Keeps a bundle. False where the browser has no room for it or keeps nothing (a private window).</summary>
    public Task<bool> KeepAsync(FloorBundle bundle) => SetAsync(BundleKey, FloorBundleFile.Write(bundle));

    /// <summary>All entries of this device, oldest first. Null where what is kept cannot be read: then nothing is added to it either.</summary>
    public async Task<ImmutableArray<FloorEntry>?> EntriesAsync()
    {
        if (await EntriesTextAsync() is not { } text) return [];
        try
        {
            return [.. JsonSerializer.Deserialize(text, FloorEntryJson.Default.ListFloorEntry) ?? []];
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>The entries as they are kept, to be carried away as a file.</summary>
    public Task<string?> EntriesTextAsync() => GetAsync(EntriesKey);

    /// <summary>Adds one entry. Null where the browser did not keep it.</summary>
    public async Task<FloorEntry?> AddAsync(string bundle, string step, LengthReading reading, DateTimeOffset when)
    {
        // Read again first: a second window of the page may have added since.
        if (await EntriesAsync() is not { } entries) return null;
        var entry = new FloorEntry(await DeviceAsync(), entries.Length + 1, bundle, step, reading.Text, reading.Length.Value, reading.Step, when.UtcTicks);
        string text = JsonSerializer.Serialize([.. entries, entry], FloorEntryJson.Default.ListFloorEntry);
        return await SetAsync(EntriesKey, text) ? entry : null;
    }

    private async Task<string> DeviceAsync()
    {
        if (await GetAsync(DeviceKey) is { Length: > 0 } known) return known;
        string device = Guid.NewGuid().ToString("n");
        await SetAsync(DeviceKey, device);
        return device;
    }

    private async Task<string?> GetAsync(string key)
    {
        try
        {
            return await script.InvokeAsync<string?>("localStorage.getItem", key);
        }
        catch (JSException)
        {
            return null;
        }
    }

    private async Task<bool> SetAsync(string key, string text)
    {
        try
        {
            await script.InvokeVoidAsync("localStorage.setItem", key, text);
            return await GetAsync(key) == text;
        }
        catch (JSException)
        {
            return false;
        }
    }
}

using Microsoft.AspNetCore.Http;
using Trivet.Store;

namespace Trivet.Desk.Access;

/// <summary>How a paired device is known again: by a key in a cookie, of which the store has only the hash.</summary>
internal sealed class DeviceKeys(JobStore store, PairingCodes codes, TimeProvider clock)
{
    /// <summary>The prefix makes the browser insist on HTTPS, this host alone and the whole site (RFC 6265bis).</summary>
    public const string CookieName = "__Host-trivet-device";

    /// <summary>A device that is not used for so long has to be paired again.</summary>
    private static readonly TimeSpan Life = TimeSpan.FromDays(180);

    private const int IdLength = 32;

    /// <summary>Pairs the device that asks, if the code is right. Null where it is not.</summary>
    public async Task<(Device? Device, AccessOutcome.Refused? Refused)> PairAsync(HttpContext context, string code, string name, CancellationToken stop)
    {
        // Looked at first: a name that will not do must not use up the code.
        if (string.IsNullOrWhiteSpace(name) || Stamp.WhyNot(name) is not null) return (null, new("The name of the device is empty, too long or holds a control character.", "Write 1 to 128 characters."));
        if (codes.Use(code) is not { } used) return (null, null);
        var device = new Device(Guid.NewGuid().ToString("n"), name.Trim(), used.By, clock.GetUtcNow(), null);
        string key = Secrets.Key();
        if (await store.AddDeviceAsync(device, Secrets.Hash(key), stop) is AccessOutcome.Refused refused) return (null, refused);
        Give(context, device.Id + key);
        return (device, null);
    }

    /// <summary>The device that asks; null where it is not paired, or not any more.</summary>
    public async Task<Device?> ReadAsync(HttpContext context, CancellationToken stop)
    {
        if (context.Request.Cookies[CookieName] is not { Length: IdLength + 64 } cookie) return null;
        return await store.DeviceKeyAsync(cookie[..IdLength], stop) is { } known && Secrets.Same(Secrets.Hash(cookie[IdLength..]), known.KeyHash) ? known.Device : null;
    }

    /// <summary>Lets the device be known for another while.</summary>
    public static void Renew(HttpContext context)
    {
        if (context.Request.Cookies[CookieName] is { } cookie) Give(context, cookie);
    }

    private static void Give(HttpContext context, string cookie) => context.Response.Cookies.Append(CookieName, cookie, new CookieOptions
    {
        Secure = true,
        HttpOnly = true,
        SameSite = SameSiteMode.Strict,
        Path = "/",
        MaxAge = Life,
        IsEssential = true,
    });
}

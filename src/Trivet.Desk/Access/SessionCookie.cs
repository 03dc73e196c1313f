using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Store;

namespace Trivet.Desk.Access;

/// <summary>A person's session on a paired device: the framework's cookie scheme, asked again of the store at every request.</summary>
internal static class SessionCookie
{
    public const string Name = "session", CookieName = "__Host-trivet-session";

    /// <summary>Longest pause of a person; a tablet is passed on.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromHours(2);

    /// <summary>Longest session, however busy: one shift.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromHours(12);

    public static void Configure(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = CookieName;
        options.Cookie.HttpOnly = true;
        options.Cookie.SecurePolicy = CookieSecurePolicy.Always;
        options.Cookie.SameSite = SameSiteMode.Strict;
        options.Cookie.Path = "/";
        options.ExpireTimeSpan = Pause;
        options.SlidingExpiration = true;
        options.LoginPath = "/sign-in";
        options.AccessDeniedPath = "/refused";
        options.ReturnUrlParameter = "returnUrl";
        options.Events.OnValidatePrincipal = ValidateAsync;
        options.Events.OnRedirectToLogin = context => Answer(context, StatusCodes.Status401Unauthorized);
        options.Events.OnRedirectToAccessDenied = context => Answer(context, StatusCodes.Status403Forbidden);
    }

    /// <summary>Signs in or says why not. Counts the attempt first.</summary>
    public static async Task<PinAttempt?> SignInAsync(HttpContext context, Device device, string personId, string pin, CancellationToken stop)
    {
        var store = context.RequestServices.GetRequiredService<JobStore>();
        var now = context.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow();
        var attempt = await store.TryPinAsync(personId, now, stop);
        if (attempt is not PinAttempt.Allowed allowed) return attempt;
        if (!Pins.Right(personId, allowed.PinHash, pin)) return allowed.Person.LockedUntil is { } until ? new PinAttempt.Locked(until) : null;
        await store.PinWasRightAsync(personId, stop);
        DeviceKeys.Renew(context);
        var who = Known.OnDevice(allowed.Person.Id, allowed.Person.Name, StandingRoles.Of(allowed.Person), device.Id, Name);
        await context.SignInAsync(Name, who, new AuthenticationProperties { Items = { [Since] = now.UtcTicks.ToString(System.Globalization.CultureInfo.InvariantCulture) } });
        return allowed;
    }

    private const string Since = "since";

    private static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        var services = context.HttpContext.RequestServices;
        var stop = context.HttpContext.RequestAborted;
        bool young = context.Properties.Items.TryGetValue(Since, out string? text) && long.TryParse(text, out long since)
            && services.GetRequiredService<TimeProvider>().GetUtcNow().UtcTicks - since < Longest.Ticks;
        // The session belongs to the device it was begun on, which must still be paired; the roles are those of now.
        if (young && context.Principal is { } who
            && await services.GetRequiredService<DeviceKeys>().ReadAsync(context.HttpContext, stop) is { } device && device.Id == Known.DeviceOf(who)
            && await services.GetRequiredService<JobStore>().StandingAsync(Known.PersonOf(who), device.Id, stop) is { } person)
        {
            context.ReplacePrincipal(Known.OnDevice(person.Id, person.Name, StandingRoles.Of(person), device.Id, Name));
            return;
        }
        context.RejectPrincipal();
        await context.HttpContext.SignOutAsync(Name);
    }

    /// <summary>A person is led to a page; a program gets the status.</summary>
    private static Task Answer(RedirectContext<CookieAuthenticationOptions> context, int status)
    {
        if (ForPrograms(context.Request.Path)) context.Response.StatusCode = status;
        else context.Response.Redirect(context.RedirectUri);
        return Task.CompletedTask;
    }

    public static bool ForPrograms(PathString path) =>
        path.StartsWithSegments("/floor", StringComparison.Ordinal) || path.StartsWithSegments("/_blazor", StringComparison.Ordinal);
}

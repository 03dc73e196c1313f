using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Desk.Network;

namespace Trivet.Desk.Access;

/// <summary>Who comes, and what they may do: the framework's own authentication and authorization over the one table.</summary>
internal static class AccessServices
{
    private const string ByDoor = "by door";

    public static void Add(IServiceCollection services, DeskOptions options)
    {
        services.AddAuthentication(ByDoor)
            .AddPolicyScheme(ByDoor, null, o => o.ForwardDefaultSelector = context => context.IsAtTheMachine() ? MachineHandler.Name : SessionCookie.Name)
            .AddScheme<AuthenticationSchemeOptions, MachineHandler>(MachineHandler.Name, null)
            .AddCookie(SessionCookie.Name, SessionCookie.Configure);
        services.AddOptions<Microsoft.AspNetCore.Authentication.Cookies.CookieAuthenticationOptions>(SessionCookie.Name)
            .Configure<Sessions>((cookie, sessions) => cookie.SessionStore = sessions);
        var authorization = services.AddAuthorizationBuilder();
        foreach (var act in Enum.GetValues<Act>()) authorization.AddPolicy(act.ToString(), policy => Needs(policy, act));
        authorization.SetFallbackPolicy(Needs(new(), Act.UseDesk).Build());
        services.AddCascadingAuthenticationState();
        services.AddAntiforgery(o =>
        {
            o.Cookie.Name = "trivet-form";
            o.Cookie.SameSite = SameSiteMode.Strict;
            o.Cookie.HttpOnly = true;
            // The machine's own door speaks plain HTTP; on the network this is always HTTPS.
            o.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
            o.SuppressXFrameOptionsHeader = true;
        });
        services.AddRateLimiter(options.Limits.Configure);
        services.AddSingleton<PairingCodes>();
        services.AddSingleton<DeviceKeys>();
        services.AddSingleton<Sessions>();
        services.AddSingleton<OpenConnections>();
        services.AddSingleton<People>();
        services.AddScoped<Acting>();
    }

    /// <summary>Puts a handler behind a gate of the table.</summary>
    public static RouteHandlerBuilder Map(this WebApplication app, Gate gate, Delegate handler)
    {
        var endpoint = app.MapMethods(gate.Route, [gate.Method], handler);
        if (gate.Needs is { } act) endpoint.RequireAuthorization(act.ToString());
        else endpoint.AllowAnonymous();
        if (gate.Method != "GET") endpoint.AddEndpointFilter(WithToken);
        return endpoint;
    }

    /// <summary>What changes something must come from a page of this desk, not from another site that the person has open.</summary>
    private static async ValueTask<object?> WithToken(EndpointFilterInvocationContext context, EndpointFilterDelegate next) =>
        await HasTokenAsync(context.HttpContext)
            ? await next(context)
            : Results.Json(new { problem = "token" }, statusCode: StatusCodes.Status400BadRequest);

    /// <summary>Without the header the token is looked for in a form, and one that cannot be read has none.</summary>
    private static async Task<bool> HasTokenAsync(HttpContext context)
    {
        try
        {
            return await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context);
        }
        catch (AntiforgeryValidationException)
        {
            return false;
        }
    }

    private static AuthorizationPolicyBuilder Needs(AuthorizationPolicyBuilder policy, Act act) =>
        policy.RequireAuthenticatedUser().RequireAssertion(context => AccessTable.Allows(context.User, act));
}

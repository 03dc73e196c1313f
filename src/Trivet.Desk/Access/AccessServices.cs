using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Trivet.Desk.Access;

/// <summary>Who comes, and what they may do: the framework's own authentication and authorization over the one table.</summary>
internal static class AccessServices
{
    public static void Add(IServiceCollection services)
    {
        services.AddAuthentication(MachineHandler.Name).AddScheme<AuthenticationSchemeOptions, MachineHandler>(MachineHandler.Name, null);
        var authorization = services.AddAuthorizationBuilder();
        foreach (var act in Enum.GetValues<Act>()) authorization.AddPolicy(act.ToString(), policy => Needs(policy, act));
        authorization.SetFallbackPolicy(Needs(new(), Act.UseDesk).Build());
        services.AddCascadingAuthenticationState();
    }

    /// <summary>Puts a handler behind a gate of the table.</summary>
    public static void Map(this WebApplication app, Gate gate, Delegate handler)
    {
        var endpoint = app.MapMethods(gate.Route, [gate.Method], handler);
        if (gate.Needs is { } act) endpoint.RequireAuthorization(act.ToString());
        else endpoint.AllowAnonymous();
    }

    private static AuthorizationPolicyBuilder Needs(AuthorizationPolicyBuilder policy, Act act) =>
        policy.RequireAuthenticatedUser().RequireAssertion(context => AccessTable.Allows(context.User, act));
}

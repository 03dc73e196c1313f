using System.Collections.Immutable;
using System.Security.Claims;

namespace Trivet.Desk.Access;

/// <summary>What is known of whoever makes a request, as claims: the person's id and name, the roles, the device.</summary>
public static class Known
{
    private const string Machine = "trivet:machine", DeviceClaim = "trivet:device";

    /// <summary>The person who sits at the machine itself.</summary>
    public static ClaimsPrincipal AtTheMachine(string person, string scheme) =>
        new(new ClaimsIdentity([new(ClaimTypes.NameIdentifier, person), new(ClaimTypes.Name, person), new(Machine, "")], scheme));

    /// <summary>A person signed in on a paired device.</summary>
    public static ClaimsPrincipal OnDevice(string person, string name, IEnumerable<Role> roles, string device, string scheme) => new(new ClaimsIdentity(
        [
            new(ClaimTypes.NameIdentifier, person), new(ClaimTypes.Name, name), new(DeviceClaim, device),
            .. roles.Select(r => new Claim(ClaimTypes.Role, r.ToString())),
        ], scheme));

    public static bool IsAtTheMachine(ClaimsPrincipal who) => who.HasClaim(c => c.Type == Machine);

    public static ImmutableArray<Role> RolesOf(ClaimsPrincipal who) =>
        [.. who.FindAll(ClaimTypes.Role).Select(c => Enum.TryParse(c.Value, out Role role) && Enum.IsDefined(role) ? (Role?)role : null).OfType<Role>()];

    /// <summary>The person's id; empty where nobody is known.</summary>
    public static string PersonOf(ClaimsPrincipal who) => who.FindFirstValue(ClaimTypes.NameIdentifier) ?? "";

    /// <summary>The device's id; empty at the machine itself.</summary>
    public static string DeviceOf(ClaimsPrincipal who) => who.FindFirstValue(DeviceClaim) ?? "";
}

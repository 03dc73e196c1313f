using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;
using Trivet.Desk.Network;

namespace Trivet.Desk.Access;

/// <summary>Knows whoever comes in by the machine's own door as the person who started the desk, without a login.</summary>
internal sealed class MachineHandler(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, DeskOptions desk)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string Name = "machine";

    protected override Task<AuthenticateResult> HandleAuthenticateAsync() => Task.FromResult(Context.IsAtTheMachine()
        ? AuthenticateResult.Success(new AuthenticationTicket(Known.AtTheMachine(desk.Person, Name), Name))
        : AuthenticateResult.NoResult());
}

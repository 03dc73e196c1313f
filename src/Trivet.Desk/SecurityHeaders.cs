using Microsoft.AspNetCore.Http;

namespace Trivet.Desk;

/// <summary>What a page of the desk may load and who may embed it: nothing but itself, and nobody.</summary>
internal static class SecurityHeaders
{
    // Drawings carry their own styles as attributes, so styles in the page are allowed; scripts are not.
    // Connections to 'self' cover the page's own web socket. Pictures may be made in the page (export of a drawing).
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; font-src 'self'; img-src 'self' data: blob:; " +
        "connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    public static Task Add(HttpContext context, Func<Task> next)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=(), usb=(), serial=()";
        return next();
    }
}

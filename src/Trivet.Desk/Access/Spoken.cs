using Microsoft.AspNetCore.Http;
using Trivet.Views.Words;

namespace Trivet.Desk.Access;

/// <summary>The language that a browser asks for, as far as Trivet speaks it (RFC 9110, 12.5.4).</summary>
internal static class Spoken
{
    public static AccessWords Of(HttpContext context) =>
        AccessWords.In(context.Request.GetTypedHeaders().AcceptLanguage.Where(l => l.Quality != 0).OrderByDescending(l => l.Quality ?? 1).Select(l => l.Value.ToString()));
}

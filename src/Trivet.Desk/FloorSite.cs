using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.FileProviders;
using Trivet.Desk.Access;

namespace Trivet.Desk;

/// <summary>
/// Serves the floor page at <c>/floor/</c> from the folder <c>floor</c> beside the program. A build for development has no such folder; the page is then
/// not found. Its files are open, as they are the same for everyone; what they are about is behind <see cref="FloorApi"/>.
/// </summary>
internal static class FloorSite
{
    // As the desk's own, with what the page's runtime needs: compiled code of the same server, and its service worker.
    private const string Policy =
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; style-src 'self' 'unsafe-inline'; font-src 'self'; " +
        "img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    private static readonly FileExtensionContentTypeProvider Types = new();

    public static void Map(WebApplication app)
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "floor");
        if (!Directory.Exists(folder)) return;
        var files = new PhysicalFileProvider(folder);
        app.Map(AccessTable.FloorFiles, (HttpContext context, string? path) => Send(files, context, path));
    }

    private static IResult Send(PhysicalFileProvider files, HttpContext context, string? path)
    {
        // The page names its files relative to its own address, so that address must end in a slash.
        if (path is null && !context.Request.Path.Value!.EndsWith('/')) return Results.Redirect("/floor/");
        var file = files.GetFileInfo(path ?? "index.html");
        if (!file.Exists || file.PhysicalPath is not { } whole) return Results.NotFound();
        string type = Types.TryGetContentType(whole, out string? known) ? known : "application/octet-stream";

        context.Response.Headers.ContentSecurityPolicy = Policy;
        context.Response.Headers.CacheControl = "no-cache";
        context.Response.Headers.Vary = "Accept-Encoding";
        if (!context.Request.Headers.AcceptEncoding.ToString().Contains("br", StringComparison.Ordinal) || !File.Exists(whole + ".br"))
            return Results.File(whole, type);
        context.Response.Headers.ContentEncoding = "br";
        return Results.File(whole + ".br", type);
    }
}

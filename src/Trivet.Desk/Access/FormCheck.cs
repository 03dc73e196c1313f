using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Http;

namespace Trivet.Desk.Access;

/// <summary>A page takes forms only. What is sent to it as something else, or cut off, would count as a fault of the program; here it is refused.</summary>
internal static class FormCheck
{
    /// <summary>A person types a code, a name, a PIN; no page takes a file this way.</summary>
    private const long Largest = 64 * 1024;

    public static async Task Look(HttpContext context, Func<Task> next)
    {
        if (!HttpMethods.IsPost(context.Request.Method) || context.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>() is null)
        {
            await next();
            return;
        }
        if (!context.Request.HasFormContentType || context.Request.ContentLength > Largest)
        {
            context.Response.StatusCode = context.Request.HasFormContentType ? StatusCodes.Status413PayloadTooLarge : StatusCodes.Status415UnsupportedMediaType;
            return;
        }
        try
        {
            await context.Request.ReadFormAsync(new Microsoft.AspNetCore.Http.Features.FormOptions { BufferBody = false, ValueCountLimit = 32, ValueLengthLimit = (int)Largest, MultipartBodyLengthLimit = Largest }, context.RequestAborted);
        }
        catch (Exception e) when (e is InvalidDataException or IOException)
        {
            context.Response.StatusCode = StatusCodes.Status400BadRequest;
            return;
        }
        await next();
    }
}

using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Hosting.StaticWebAssets;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Trivet.Desk.Components;
using Trivet.Store;

namespace Trivet.Desk;

/// <summary>
/// Serves the desk over one job on this machine. It listens on the loopback addresses only and answers only to their names, so
/// that neither the network nor a page of another site reaches it.
/// </summary>
public static class DeskHost
{
    /// <summary>Runs until stopped. Null when it ended in good order, else why it could not start.</summary>
    public static async Task<DeskRefused?> RunAsync(DeskOptions options, CancellationToken stop)
    {
        JobStore store;
        switch (await JobStore.OpenAsync(JobLocation.Parse(options.Job), stop))
        {
            case OpenOutcome.Opened opened:
                store = opened.Store;
                break;
            case OpenOutcome.Refused refused:
                return new(refused.Problem, refused.Remedy);
            default:
                return new("A later program wrote this job, and this one would not understand all of it.", "Use that program; nothing was changed.");
        }

        await using var held = store;
        StoreCheck check;
        try
        {
            check = new(await store.CheckAsync(stop));
        }
        catch (StoreFailedException e)
        {
            return new($"The job store could not be looked through: {e.Message}", "Bring it back from a backup; keep the damaged file.");
        }

        await using var app = Build(options, store, check);
        try
        {
            await app.StartAsync(stop);
        }
        catch (Exception e) when (e is IOException or SocketException or UnauthorizedAccessException)
        {
            return new($"Port {options.Port} could not be opened: {e.GetBaseException().Message}", "Give another port, or 0 for any free one.");
        }

        options.Listening?.Invoke(AddressOf(app));
        await app.WaitForShutdownAsync(stop);
        return null;
    }

    private static WebApplication Build(DeskOptions options, JobStore store, StoreCheck check)
    {
        // Static files are found beside the program, wherever it was started from.
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Configuration["AllowedHosts"] = "localhost;127.0.0.1;[::1]";
        builder.Logging.ClearProviders().AddSimpleConsole(o => o.SingleLine = true).SetMinimumLevel(LogLevel.Warning)
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error)
            // A start that fails is told by what RunAsync returns.
            .AddFilter("Microsoft.Extensions.Hosting", LogLevel.None);
        builder.WebHost.ConfigureKestrel(k =>
        {
            if (options.Port == 0) k.Listen(IPAddress.Loopback, 0);
            else k.ListenLocalhost(options.Port);
            k.Limits.MaxRequestBodySize = DeskLimits.LargestFile;
            k.AddServerHeader = false;
        });
        // Run from a build rather than a published archive, the files lie in the projects' folders; the manifest knows where.
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration);
        DeskServices.Add(builder.Services, options, store, check);

        var app = builder.Build();
        app.UseExceptionHandler("/error", createScopeForErrors: true);
        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.Use(SecurityHeaders.Add);
        app.UseAntiforgery();
        app.MapStaticAssets();
        FloorSite.Map(app, store);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }

    private static Uri AddressOf(WebApplication app)
    {
        var addresses = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses;
        return new(addresses.First());
    }
}

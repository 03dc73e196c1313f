using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Hosting.StaticWebAssets;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Trivet.Desk.Access;
using Trivet.Desk.Components;
using Trivet.Desk.Network;
using Trivet.Store;

namespace Trivet.Desk;

/// <summary>
/// Serves the desk over one job. It listens on the loopback addresses, where nobody signs in, and, when asked to, on the network over HTTPS,
/// where only paired devices with a person signed in get further than the doorstep. Each door answers only to its own names.
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

        NetworkDoor? network = null;
        if (options.Network is { } wished)
        {
            (network, var why) = NetworkDoor.Open(wished, options.Clock);
            if (network is null) return why;
        }

        using var door = network;
        await using var app = Build(options, store, check, network);
        try
        {
            await app.StartAsync(stop);
        }
        catch (Exception e) when (e is IOException or SocketException or UnauthorizedAccessException)
        {
            string ports = options.Network is { } n ? $"Port {options.Port} or {n.Port}" : $"Port {options.Port}";
            return new($"{ports} could not be opened: {e.GetBaseException().Message}", "Give another port, or 0 for any free one.");
        }

        options.Listening?.Invoke(AddressesOf(app, network));
        await app.WaitForShutdownAsync(stop);
        return null;
    }

    internal static WebApplication Build(DeskOptions options, JobStore store, StoreCheck check, NetworkDoor? network)
    {
        // Static files are found beside the program, wherever it was started from.
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        // Each door has its own names, and the network's may change: see Doors.HostCheck.
        builder.Configuration["AllowedHosts"] = "*";
        builder.Logging.ClearProviders().AddSimpleConsole(o => o.SingleLine = true).SetMinimumLevel(LogLevel.Warning)
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error)
            // What strangers on the network send wrong is no news at the desk.
            .AddFilter("Microsoft.AspNetCore.Antiforgery", LogLevel.Error)
            // A start that fails is told by what RunAsync returns.
            .AddFilter("Microsoft.Extensions.Hosting", LogLevel.None);
        builder.WebHost.ConfigureKestrel(k =>
        {
            if (options.Port == 0) k.Listen(IPAddress.Loopback, 0, Doors.AtTheMachine);
            else k.ListenLocalhost(options.Port, Doors.AtTheMachine);
            network?.Listen(k);
            k.Limits.MaxRequestBodySize = DeskLimits.LargestFile;
            k.AddServerHeader = false;
        });
        // Run from a build rather than a published archive, the files lie in the projects' folders; the manifest knows where.
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration);
        DeskServices.Add(builder.Services, options, store, check, network);

        var app = builder.Build();
        app.UseExceptionHandler("/error", createScopeForErrors: true);
        // A program gets its status alone: a page, or the way to one, it could take for an answer.
        app.UseWhen(context => SessionCookie.ForPrograms(context.Request.Path), programs => programs.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = context => SecurityHeaders.Add(context, () => Task.CompletedTask),
            StatusCodeSelector = e => e is BadHttpRequestException bad ? bad.StatusCode : StatusCodes.Status500InternalServerError,
            SuppressDiagnosticsCallback = fault => fault.Exception is BadHttpRequestException,
        }));
        app.Use(SecurityHeaders.Add);
        app.Use(Doors.HostCheck(() => network?.Names ?? []));
        // What programs ask for, and what is sent, gets its status alone; a page of words is for people who look.
        app.UseWhen(context => HttpMethods.IsGet(context.Request.Method) && !SessionCookie.ForPrograms(context.Request.Path),
            pages => pages.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true));
        app.UseRouting();
        app.UseRateLimiter();
        app.UseAuthentication();
        app.UseAuthorization();
        app.Use(FormCheck.Look);
        app.UseAntiforgery();
        app.UseWhen(context => context.Request.Path.StartsWithSegments("/_blazor", StringComparison.Ordinal),
            pages => pages.Use((context, next) => context.RequestServices.GetRequiredService<OpenConnections>().HoldAsync(context, next)));
        app.MapStaticAssets().AllowAnonymous();
        FloorApi.Map(app);
        Sync.FloorLine.Map(app);
        FloorSite.Map(app);
        JournalSite.Map(app, store);
        if (network is not null) RootDownload.Map(app, network.Root);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }

    internal static DeskAddresses AddressesOf(WebApplication app, NetworkDoor? network)
    {
        var all = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses;
        if (network is not null) network.Port = new Uri(all.First(a => a.StartsWith("https:", StringComparison.Ordinal))).Port;
        return new(new(all.First(a => a.StartsWith("http:", StringComparison.Ordinal))), network is null ? [] : [.. network.Names.Select(network.AddressOf)], network?.Root);
    }
}

using System.Collections.Immutable;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.SignalR;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Assessment;
using Trivet.Desk.Access;
using Trivet.Desk.Network;
using Trivet.Desk.Sessions;
using Trivet.Store;

namespace Trivet.Desk;

/// <summary>What looking through the whole store found when the desk opened it.</summary>
/// <param name="Faults">In words; empty when the store is sound.</param>
public sealed record StoreCheck(ImmutableArray<string> Faults);

/// <summary>The door to the network, for pages that tell of it.</summary>
/// <param name="Network">Null where the desk is on this machine only.</param>
public sealed record OutsideDoor(NetworkDoor? Network);

/// <summary>What the pages are given.</summary>
internal static class DeskServices
{
    public static void Add(IServiceCollection services, DeskOptions options, JobStore store, StoreCheck check, NetworkDoor? network)
    {
        services.AddSingleton(options);
        services.AddSingleton(store);
        services.AddSingleton(check);
        services.AddSingleton(options.Clock);
        services.AddSingleton(new OutsideDoor(network));
        AccessServices.Add(services, options);
        // Shared by all pages: what one has proved no other proves again. One core is left to the pages themselves.
        services.AddSingleton(new Assessor { MostSideBySide = Math.Max(1, Environment.ProcessorCount - 1) });
        services.AddSingleton<Sync.LiveBoard>();
        services.AddSingleton<Sync.BundleShelf>();
        services.AddScoped<OpenCells>();
        // Pages do not outlive the program, so their keys need not either: nothing is written to the person's profile.
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        services.AddRazorComponents().AddInteractiveServerComponents(Limit).AddHubOptions(Limit);
    }

    private static void Limit(CircuitOptions circuit)
    {
        circuit.DetailedErrors = false;
        circuit.DisconnectedCircuitMaxRetained = DeskLimits.KeptPages;
        circuit.DisconnectedCircuitRetentionPeriod = DeskLimits.KeptFor;
        circuit.MaxBufferedUnacknowledgedRenderBatches = 10;
        circuit.JSInteropDefaultCallTimeout = TimeSpan.FromSeconds(20);
    }

    private static void Limit(HubOptions hub)
    {
        hub.EnableDetailedErrors = false;
        hub.MaximumReceiveMessageSize = DeskLimits.LargestMessage;
        hub.StreamBufferCapacity = 10;
    }
}

using System.Collections.Immutable;

namespace Trivet.Desk.Network;

/// <summary>How the desk is opened to the network, over HTTPS only.</summary>
public sealed record NetworkOptions
{
    public const int UsualPort = 5174;

    /// <summary>TCP port on all addresses of the machine; 0 takes a free one.</summary>
    public int Port { get; init; } = UsualPort;

    /// <summary>Names and addresses by which devices reach it, besides those the machine has by itself.</summary>
    public ImmutableArray<string> Hosts { get; init; } = [];

    /// <summary>Where the local root lies.</summary>
    public string Folder { get; init; } = LocalRoot.UsualFolder;
}

/// <summary>Where the desk answers.</summary>
/// <param name="Desk">On the machine itself.</param>
/// <param name="Network">On the network, by each name and address; empty where it was not asked for.</param>
/// <param name="Root">The root that devices have to install; null where the desk is not on the network.</param>
public sealed record DeskAddresses(Uri Desk, ImmutableArray<Uri> Network, LocalRoot? Root);

using Trivet.Desk.Access;
using Trivet.Desk.Network;

namespace Trivet.Desk;

/// <summary>What the desk is started with.</summary>
/// <param name="Job">A job folder, or a PostgreSQL connection string, as the person typed it.</param>
public sealed record DeskOptions(string Job)
{
    /// <summary>TCP port on the loopback addresses; 0 takes a free one.</summary>
    public int Port { get; init; } = 5173;

    /// <summary>Id of the person at the desk, written to each revision.</summary>
    public string Person { get; init; } = Environment.UserName;

    /// <summary>Opens the desk to the network as well; null leaves it to this machine.</summary>
    public NetworkOptions? Network { get; init; }

    /// <summary>How often the network may ask.</summary>
    public AccessLimits Limits { get; init; } = new();

    /// <summary>Called once with the addresses when the desk answers.</summary>
    public Action<DeskAddresses>? Listening { get; init; }

    /// <summary>What tells the time; tests bring their own.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;
}

/// <summary>Why the desk did not start, in words for the person who started it.</summary>
public sealed record DeskRefused(string Problem, string Remedy);

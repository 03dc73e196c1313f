using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Trivet.Files.Floor;

/// <summary>Entries sent to the desk, in the order of the device's chain.</summary>
/// <param name="Entries">Canonical texts.</param>
public sealed record EntriesSent(ImmutableArray<string> Entries);

/// <summary>What the desk says of one entry: the canonical text of its receipt, or why there is none.</summary>
/// <param name="Reason">Of <see cref="EntryRefusals"/>: the page tells it in its own language. Empty with a receipt, and from a desk that knew only words.</param>
public sealed record EntryOutcome(string Receipt, string Problem, string Remedy, string Reason = "");

/// <summary>Ids of why the desk does not take an entry.</summary>
public static class EntryRefusals
{
    /// <summary>Signed or released in another's name, or by someone who may not.</summary>
    public const string Signature = "signature";

    /// <summary>The text is not what an entry must be.</summary>
    public const string Damaged = "damaged";
}

/// <param name="Outcomes">One for each entry, in order.</param>
/// <param name="Now">The desk's clock when it answered, UTC ticks.</param>
public sealed record EntriesAnswer(ImmutableArray<EntryOutcome> Outcomes, long Now);

/// <summary>An entry with its receipt, both as canonical texts.</summary>
public sealed record ReceivedEntry(string Entry, string Receipt);

/// <param name="Entries">After the receipt asked for, in order of receiving; at most as many as the desk gives at once.</param>
/// <param name="UpTo">Number of the receipt up to which this is all.</param>
/// <param name="Head">Number of the newest receipt.</param>
public sealed record EntriesPart(ImmutableArray<ReceivedEntry> Entries, long UpTo, long Head);

/// <summary>What signing in at the desk takes.</summary>
public sealed record SignInSent(string Person, string Pin);

/// <summary>Where someone is working.</summary>
/// <param name="Step">Id of the step that is on the screen; empty for none.</param>
public sealed record AtWork(string Device, string Person, string Step);

/// <param name="Others">The other devices on the same cell that were heard of in the last seconds.</param>
/// <param name="Head">Number of the newest receipt: when it moves, there is something to fetch.</param>
/// <param name="Now">The desk's clock, UTC ticks.</param>
public sealed record LiveAnswer(ImmutableArray<AtWork> Others, long Head, long Now);

/// <summary>The messages between floor and desk, without reflection: the page is trimmed.</summary>
[JsonSerializable(typeof(EntriesSent))]
[JsonSerializable(typeof(EntriesAnswer))]
[JsonSerializable(typeof(EntriesPart))]
[JsonSerializable(typeof(AtWork))]
[JsonSerializable(typeof(LiveAnswer))]
[JsonSerializable(typeof(SignInSent))]
[JsonSerializable(typeof(DeviceEntry[]))]
[JsonSerializable(typeof(ReceivedEntry[]))]
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
public sealed partial class FloorJson : JsonSerializerContext;

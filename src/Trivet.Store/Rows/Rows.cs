namespace Trivet.Store.Rows;

// The rows of both databases: keys, canonical text and integer ticks, nothing a trade could mean. One reader and one writer (JobStore)
// turn them into the records of the public surface.

/// <summary>A cell: its id and which revision is its head.</summary>
internal sealed class CellRow
{
    public required string Id { get; init; }
    public required string Name { get; set; }
    public required int Head { get; set; }
}

/// <summary>A revision, known within its cell by number. The hash is that of the text.</summary>
internal sealed class RevisionRow
{
    public required string CellId { get; init; }
    public required int Number { get; init; }
    public required string Hash { get; init; }
    public required string ParentHash { get; init; }
    public required string Text { get; init; }
    public required string Person { get; init; }
    public required long Ticks { get; init; }
    public required string Words { get; init; }
    public int? Restores { get; init; }
}

/// <summary>The state of one person's draft. The row outlives its edits, so that a version is never given twice.</summary>
internal sealed class DraftRow
{
    public required string CellId { get; init; }
    public required string Person { get; init; }
    public required int Base { get; set; }
    public required int Cursor { get; set; }
    public required long Version { get; set; }
}

internal sealed class EditRow
{
    public required string CellId { get; init; }
    public required string Person { get; init; }
    public required int Number { get; init; }
    public required string Text { get; init; }
    public required long Ticks { get; init; }
    public required string Words { get; init; }
}

/// <summary>A file a cell was exported to, and which revision it then held.</summary>
internal sealed class ExportRow
{
    public required string CellId { get; init; }
    public required string Path { get; init; }
    public required int Number { get; set; }
}

/// <summary>
/// An entry of the journal as its canonical text, and of that what is looked for. The hash belongs to the key: where a device wrote twice
/// under one sequence both are kept.
/// </summary>
internal sealed class EntryRow
{
    public required string Device { get; init; }
    public required long Sequence { get; init; }
    public required string Hash { get; init; }
    public required string CellId { get; init; }
    public required long Ticks { get; init; }
    public required string Text { get; init; }
}

/// <summary>A link of the store's own chain: which entry was received, after which receipt, when.</summary>
internal sealed class ReceiptRow
{
    public required long Number { get; init; }
    public required string EntryHash { get; init; }
    public required string PreviousHash { get; init; }
    public required string Hash { get; init; }
    public required long Ticks { get; init; }
}

/// <summary>A photograph by the hash of its bytes. Where it was erased the row stays without them.</summary>
internal sealed class PhotographRow
{
    public required string Hash { get; init; }
    public required string Person { get; init; }
    public required long Ticks { get; init; }
    public byte[]? Content { get; set; }
}

/// <summary>A person who may sign in from the network. The row stays when the person leaves, so that the id is never given again.</summary>
internal sealed class PersonRow
{
    public required string Id { get; init; }
    public required string Name { get; set; }
    public required string Roles { get; set; }
    public required string PinHash { get; set; }
    public int Failures { get; set; }
    /// <summary>0 while not locked out.</summary>
    public long LockedUntil { get; set; }
    public required long Ticks { get; init; }
    public long? Ended { get; set; }
}

/// <summary>A paired device. Of its key only the hash.</summary>
internal sealed class DeviceRow
{
    public required string Id { get; init; }
    public required string Name { get; init; }
    public required string KeyHash { get; init; }
    public required string PairedBy { get; init; }
    public required long Ticks { get; init; }
    public long? Ended { get; set; }
}

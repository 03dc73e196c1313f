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

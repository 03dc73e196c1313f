namespace Trivet.Journal;

/// <summary>
/// One line of the journal: what happened, who says so, when and against which revision. Never edited: a mistake is corrected by another
/// entry that names it. Each device writes its entries into a chain of its own, so that a device at the machine needs no one to go on.
/// </summary>
public sealed record Entry
{
    /// <summary>Id of the device, made once when it first writes.</summary>
    public required string Device { get; init; }

    /// <summary>From 1, without gaps, in the order of writing on this device.</summary>
    public required long Sequence { get; init; }

    /// <summary>Hash of the entry before on this device; empty for the first.</summary>
    public required string Previous { get; init; }

    /// <summary>The device's clock, UTC ticks of 100 ns as of <see cref="DateTime.Ticks"/>.</summary>
    public required long Ticks { get; init; }

    /// <summary>Minutes that the device's local time was ahead of UTC.</summary>
    public required int LocalOffset { get; init; }

    /// <summary>What must be added to the device's clock to get the server's, ticks; null where it was never measured.</summary>
    public long? ClockOffset { get; init; }

    /// <summary>Id of the person, resolved outside the chain.</summary>
    public required string Person { get; init; }

    /// <summary>Id of the cell.</summary>
    public required string Cell { get; init; }

    /// <summary>Hash of the revision it was done against.</summary>
    public required string Revision { get; init; }

    /// <summary>Id of the step it is about; empty where it is about none.</summary>
    public string Step { get; init; } = "";

    /// <summary>Id of what the step asks and this answers; empty where it is about none.</summary>
    public string Ask { get; init; } = "";

    /// <summary>What it was measured with, as the person names it.</summary>
    public string Instrument { get; init; } = "";

    public string Note { get; init; } = "";

    public required Statement Says { get; init; }

    /// <summary>UTC ticks by the server's clock, as far as its difference is known.</summary>
    public long CorrectedTicks => Ticks + (ClockOffset ?? 0);
}

/// <summary>That the store has an entry: its number in the store's own chain.</summary>
/// <param name="Number">From 1, without gaps, in the order of receiving.</param>
/// <param name="Entry">Hash of the entry.</param>
/// <param name="Previous">Hash of the receipt before; empty for the first.</param>
/// <param name="Ticks">When it was received by the store's caller, UTC ticks.</param>
public sealed record Receipt(long Number, string Entry, string Previous, long Ticks);

/// <summary>An entry with the hash of its canonical text.</summary>
/// <param name="Hash">SHA-256 of the canonical text, lower-case hexadecimal.</param>
/// <param name="Receipt">Null where no store has it yet.</param>
/// <param name="ReceiptHash">Hash of the receipt; empty without one.</param>
public sealed record Kept(Entry Entry, string Hash, Receipt? Receipt = null, string ReceiptHash = "");

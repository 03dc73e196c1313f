using System.Collections.Immutable;
using Trivet.Files.Entries;
using Trivet.Journal;

namespace Trivet.Store;

/// <summary>An entry on its way into the store.</summary>
/// <param name="Text">Its canonical text.</param>
/// <param name="Hash">The hash its sender computed; null where the sender gives none.</param>
public sealed record Arrival(string Text, string? Hash = null);

/// <summary>What became of an arrival. Closed.</summary>
public abstract record AppendOutcome
{
    private AppendOutcome() { }

    /// <summary>The entry is on disk.</summary>
    /// <param name="Again">It was there before: this is the receipt it had then.</param>
    public sealed record Received(Receipt Receipt, string ReceiptHash, bool Again) : AppendOutcome;

    /// <summary>The text was damaged on its way. Nothing was written; the sender still has it.</summary>
    public sealed record Damaged(string Problem, string Remedy) : AppendOutcome;
}

/// <summary>An entry with its receipt, and both texts as they are hashed.</summary>
public sealed record JournalLine(Kept Kept, string Text, string ReceiptText);

/// <summary>A part of the journal, in the order of receipts.</summary>
/// <param name="Damaged">Receipts whose entry is no longer what was received: not shown, kept as it is.</param>
/// <param name="Head">The newest receipt of the whole journal; null while it is empty.</param>
public sealed record JournalPart(ImmutableArray<JournalLine> Lines, ImmutableArray<Receipt> Damaged, JournalHead? Head)
{
    /// <summary>The lines of an export: each entry and behind it its receipt, every line the text that is hashed (docs/journal.md).</summary>
    public IEnumerable<string> Export() =>
        Lines.Select(l => (l.Kept.Receipt!.Number, Text: $"{l.Text}\n{l.ReceiptText}"))
            .Concat(Damaged.Select(r => (r.Number, Text: EntryText.Of(r))))
            .OrderBy(l => l.Number)
            .Select(l => l.Text);
}

/// <summary>The newest receipt. Its hash stands for the whole journal up to it: a paper that prints it tells later whether anything was changed.</summary>
public sealed record JournalHead(long Number, string Hash);

/// <summary>How adding a photograph ended. Closed.</summary>
public abstract record PhotographOutcome
{
    private PhotographOutcome() { }

    /// <summary>The photograph is on disk under this hash.</summary>
    /// <param name="Again">It was there before.</param>
    public sealed record Stored(string Hash, bool Again) : PhotographOutcome;

    /// <summary>It was erased before: it is not taken again.</summary>
    public sealed record WasErased(string Hash) : PhotographOutcome;

    public sealed record Refused(string Problem, string Remedy) : PhotographOutcome;
}

/// <summary>What the store has under a hash.</summary>
/// <param name="Content">The bytes; null where they were erased.</param>
public sealed record StoredPhotograph(string Hash, Stamp By, byte[]? Content);
